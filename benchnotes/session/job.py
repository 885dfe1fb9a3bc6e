"""The facts of a job -> statements -> record and items still to do. Same facts in, same record out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial

from benchnotes.exports.job_json import Document, job_document
from benchnotes.language.reader import ReadingTools, read_marks
from benchnotes.record.by_ear import checked_by_ear
from benchnotes.record.entries import Item, JobRecord, Notice
from benchnotes.record.fold import fold
from benchnotes.record.statements import Statement
from benchnotes.record.still_to_do.rules import still_to_do
from benchnotes.session.currency import currency_told, usual_currency
from benchnotes.session.facts import JobFacts, RecordingWarning
from benchnotes.speech.misheard import CHECK_BELOW


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadJob:
    """A job with everything that follows from its facts."""

    facts: JobFacts
    statements: tuple[Statement, ...]
    record: JobRecord
    items: tuple[Item, ...]

    def document(self) -> Document:
        """The published JSON of this job."""
        return job_document(self.record, self.items, self.facts.heard)


def read_job(facts: JobFacts, tools: ReadingTools) -> ReadJob:
    """Reads all that was said in a job, and folds it."""
    talk = facts.heard.utterances
    reading = partial(read_marks, talk, tools.marker.mark(talk), vocabulary=tools.vocabulary)
    currency = facts.currency or currency_told(reading, usual_currency())
    statements = reading(currency=currency)
    statements = checked_by_ear(statements, talk, below_p=CHECK_BELOW)
    record = fold(statements, currency)
    record = replace(record, notices=record.notices + _about_recordings(facts.warned))
    return ReadJob(facts=facts, statements=statements, record=record, items=still_to_do(record))


def _about_recordings(warned: Sequence[RecordingWarning]) -> tuple[Notice, ...]:
    return tuple(
        Notice(kind="recording", about=f"recording {warning.recording}", why=warning.text) for warning in warned
    )
