"""What is wrong with the machine: one entry per part and condition, however often it is mentioned."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import Fault, JobRecord
from benchnotes.record.statements import Finds
from benchnotes.record.talk import Said, Talk, resting_on
from benchnotes.record.terms import FaultKind

WHOLE = "machine"
"""What a fault is of where neither a part nor the machine was named."""


def faults(talk: Talk, record: JobRecord) -> JobRecord:
    """ "The hose tail's split" ... "that split tail" -> one fault, cracked, still open (`proof` settles its status)."""
    found: dict[tuple[str, FaultKind], list[Said]] = {}
    for said, statement in talk.of(Finds):
        found.setdefault((fault_part(said, record), statement.kind), []).append(said)
    entries = (
        resting_on(Fault(part=part, kind=kind), (said.statement for said in mentions))
        for (part, kind), mentions in found.items()
    )
    return replace(record, faults=tuple(entries))


def fault_part(said: Said, record: JobRecord) -> str:
    """The part that is at fault; where none was named, the machine itself."""
    return said.name or record.machine.kind or WHOLE
