"""What was said and found no place in the record: kept as a notice, so that nothing heard is silently lost."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import JobRecord, Notice
from benchnotes.record.statements import PartStatement, Prices, Works
from benchnotes.record.talk import Said, Talk, resting_on


def unplaced(talk: Talk, record: JobRecord) -> JobRecord:
    """ "That'll be twelve quid", and nobody knows what -> a notice with the price and the words."""
    parts = {part.name for part in record.parts}
    lost = [said for said in talk.said if _has_no_place(said, parts)]
    return replace(record, notices=record.notices + tuple(_notice(said) for said in lost))


def _has_no_place(said: Said, parts: set[str]) -> bool:
    if isinstance(said.statement, Prices):
        return said.name not in parts
    return not said.name and isinstance(said.statement, (PartStatement, Works))


def _notice(said: Said) -> Notice:
    told = said.statement
    about = f"{told.price.amount} {told.price.currency}" if isinstance(told, Prices) else told.words
    why = f"Heard {about}, but not what it is of. Say or type what is meant."
    if said.name:
        why = f"Heard {about} for {said.name}, but not whether that is needed, on order or fitted. Say or type which."
    return resting_on(Notice(kind="unplaced", about=said.name or about, why=why), [told])
