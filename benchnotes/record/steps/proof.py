"""What became of each fault: left as it is, put right, shown to be right."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import Fault, JobRecord
from benchnotes.record.statements import Clears, Finds, Fits, Leaves, Statement, Tries, Works
from benchnotes.record.steps.faults import fault_part
from benchnotes.record.talk import Talk
from benchnotes.record.terms import FaultStatus


def proof(talk: Talk, record: JobRecord) -> JobRecord:
    """ "Leather's split" ... "new one in" ... "holds a treat" -> open, then fixed, then verified."""
    return replace(record, faults=tuple(replace(f, status=_status(f, talk, record)) for f in record.faults))


def _status(fault: Fault, talk: Talk, record: JobRecord) -> FaultStatus:
    status: FaultStatus = "open"
    seen = False
    for said in talk.said:
        told = said.statement
        same = fault_part(said, record) == fault.part
        if isinstance(told, Finds) and same and told.kind == fault.kind:
            seen = True
        elif not seen:
            continue
        elif isinstance(told, Leaves) and same:
            status = "left"
        elif same and _remedy(told):
            status = "fixed"
        elif status == "fixed" and _shows_right(told, same):
            status = "verified"
    return status


def _remedy(told: Statement) -> bool:
    return isinstance(told, Fits) or (
        isinstance(told, Works) and told.standing == "done" and told.action not in ("remove", "send_out")
    )


def _shows_right(told: Statement, same: bool) -> bool:
    return (isinstance(told, Clears) and same) or (isinstance(told, Tries) and told.result == "pass")
