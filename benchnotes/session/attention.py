"""What of a record needs a person: each question once, with its reason, the surest trouble first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from benchnotes.exports.entry_lines import SECTIONS
from benchnotes.record.by_ear import is_number
from benchnotes.record.edit_fields import ListName
from benchnotes.record.edits import CorrectEntry, address_of
from benchnotes.record.entries import Entry, JobRecord, Notice, Part
from benchnotes.record.heard import Evidence, Unheard
from benchnotes.session.edit_json import HandEdit, Listened, Seen
from benchnotes.session.editing import Edited

SURE_ENOUGH: Final = 0.7
"""Under this about half of what the learned reader finds is not so, over 0.9 one in ten (14 narrations that it never
saw, 603 entries): four entries a job are asked about."""


@dataclass(frozen=True, slots=True)
class Question:
    """Something that a person should look at or listen to."""

    why: str
    about: Entry | Unheard
    where: ListName | None = None
    """The list of the record that the entry is in; None for a notice and for speech without words."""
    number: bool = False
    """It is about a number: the moments in which most of it was said come first."""

    @property
    def evidence(self) -> tuple[Evidence, ...]:
        if isinstance(self.about, Unheard):
            return (Evidence(self.about.recording, self.about.start_s, self.about.end_s, ""),)
        if not self.number:
            return self.about.evidence
        return tuple(sorted(self.about.evidence, key=lambda evidence: -_numbers_said(evidence)))


def questions(now: Edited) -> tuple[Question, ...]:
    """Numbers heard unsurely, prices said more than one way, speech without words, notices, then uncertain entries."""
    entries = tuple(_entries(now.record))
    return (
        *(Question("a number was heard unsurely", entry, where, True) for where, entry in entries if entry.check),
        *(Question("priced more than one way", part, "parts", True) for part in _priced_two_ways(now.record)),
        *(Question("spoken, but not made out", gap) for gap in now.unheard),
        *(Question("worth a look", notice) for notice in _notices(now.record)),
        *(Question("read with little certainty", entry, where) for where, entry in entries if _uncertain(entry)),
    )


def accepted(question: Question) -> HandEdit:
    """The edit that says: it is right as it stands."""
    about = question.about
    if isinstance(about, Unheard):
        return Listened(about.recording, about.start_s)
    if question.where is None:
        assert isinstance(about, Notice)
        return Seen(about.kind, about.about)
    return entry_accepted(question.where, about)


def entry_accepted(where: ListName, entry: Entry) -> CorrectEntry:
    """An entry that somebody has listened to. Of several prices the last is the one that was meant."""
    fields: dict[str, str | None] = {}
    if isinstance(entry, Part) and len(entry.prices) > 1 and entry.unit_price is not None:
        fields["unit_price"] = str(entry.unit_price.amount)
    return CorrectEntry(address=address_of(where, entry), fields=fields)


def _numbers_said(evidence: Evidence) -> int:
    """ "Four pounds fifty" says more of a price than "a new one"."""
    return sum(is_number(word) for word in evidence.heard.split())


def _entries(record: JobRecord) -> Iterator[tuple[ListName, Entry]]:
    yield "machine", record.machine
    for _, where in SECTIONS:
        for entry in getattr(record, where):
            yield where, entry


def _priced_two_ways(record: JobRecord) -> Iterable[Part]:
    return (part for part in record.parts if len(part.prices) > 1 and not part.check)


def _notices(record: JobRecord) -> Iterable[Notice]:
    # what is marked at its entry, or told of the recording itself, is asked nowhere twice
    return (notice for notice in record.notices if notice.kind not in ("check_by_ear", "recording"))


def _uncertain(entry: Entry) -> bool:
    several = isinstance(entry, Part) and len(entry.prices) > 1
    return entry.sure < SURE_ENOUGH and not entry.check and not several
