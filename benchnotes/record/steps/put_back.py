"""What was taken off and never said to be put back."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import JobRecord, LeftApart
from benchnotes.record.statements import Fits, PutsBack, Statement, TakesOff, Works
from benchnotes.record.talk import Talk, resting_on


def left_apart(talk: Talk, record: JobRecord) -> JobRecord:
    """ "Top cover's off" ... "cover back on" -> nothing left; without the second, the cover is left apart."""
    off: dict[str, list[Statement]] = {}
    for said in talk.said:
        if not said.name:
            continue
        if isinstance(said.statement, TakesOff):
            off.setdefault(said.name, []).append(said.statement)
        elif _puts_back(said.statement):
            off.pop(said.name, None)
    return replace(record, left_apart=tuple(resting_on(LeftApart(part=part), told) for part, told in off.items()))


def _puts_back(statement: Statement) -> bool:
    if isinstance(statement, Works):
        return statement.action in ("refit", "replace") and statement.standing == "done"
    return isinstance(statement, (PutsBack, Fits))
