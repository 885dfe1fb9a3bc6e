"""Faults not put right, and faults put right that nobody has seen to be right."""

from __future__ import annotations

from collections.abc import Iterable

from benchnotes.record.entries import Fault, Item, JobRecord
from benchnotes.record.still_to_do.item import item_of
from benchnotes.record.terms import FaultKind

SPOKEN: dict[FaultKind, str] = {
    "wrong_part": "the wrong part",
    "misadjusted": "out of adjustment",
    "electrical": "electrically faulty",
    "other": "not right",
}
"""Kinds of fault that are no plain word in a sentence; all others are."""


def faults_open(record: JobRecord) -> Iterable[Item]:
    """ "Gong's loose on its block", and no more of it -> fault_open, gong."""
    for fault in record.faults:
        if fault.status == "open":
            yield item_of(
                fault,
                "fault_open",
                fault.part,
                why=f"{_found(fault)}, and nothing done about it was heard.",
                close_by="Put it right and say so, or say that it is left as it is.",
            )


def faults_not_retested(record: JobRecord) -> Iterable[Item]:
    """ "New leather's in", and no word how it does -> not_retested, pump leather."""
    for fault in record.faults:
        if fault.status == "fixed":
            yield item_of(
                fault,
                "not_retested",
                fault.part,
                why=f"{_found(fault)} and put right, but no trial or look since shows that it is right.",
                close_by="Try it or look at it again, and say how it does.",
            )


def _found(fault: Fault) -> str:
    return f"{fault.part}: {SPOKEN.get(fault.kind, fault.kind)}"
