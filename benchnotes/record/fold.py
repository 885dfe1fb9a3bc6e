"""From statements to the job record: an ordered tuple of pure steps, and nothing else."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from benchnotes.record.entries import JobRecord
from benchnotes.record.notices.rules import notices
from benchnotes.record.statements import Statement
from benchnotes.record.steps.advice import advice
from benchnotes.record.steps.charges import charges
from benchnotes.record.steps.corrected import corrected
from benchnotes.record.steps.doubts import doubts
from benchnotes.record.steps.faults import faults
from benchnotes.record.steps.machine import machine
from benchnotes.record.steps.parts import parts
from benchnotes.record.steps.proof import proof
from benchnotes.record.steps.put_back import left_apart
from benchnotes.record.steps.readings import readings
from benchnotes.record.steps.trials import trials
from benchnotes.record.steps.unplaced import unplaced
from benchnotes.record.steps.work import work
from benchnotes.record.talk import Talk, talk_of

Step = Callable[[Talk, JobRecord], JobRecord]


def pointed_out(talk: Talk, record: JobRecord) -> JobRecord:
    """The trade checks, after what found no place."""
    return replace(record, notices=record.notices + notices(record))


STEPS: tuple[Step, ...] = (
    machine,  # first: a fault with no part named is of the machine
    faults,
    parts,
    charges,
    work,
    readings,
    trials,
    advice,
    left_apart,
    doubts,
    proof,  # what became of each fault follows from work and trials
    unplaced,
    pointed_out,  # last: it reads the record as it will stand
)


def fold(statements: Sequence[Statement], currency: str) -> JobRecord:
    """The record of one job. Statements may come in any order; `order` places them on the job's time line.

    `currency`: the job's own, ISO 4217. Any combination of statements gives a record; none raises.
    """
    talk = corrected(talk_of(statements, currency))
    record = JobRecord(currency=currency)
    for step in STEPS:
        record = step(talk, record)
    return record
