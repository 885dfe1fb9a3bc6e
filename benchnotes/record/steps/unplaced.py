"""What was said and found no place in the record: kept as a notice, so that nothing heard is silently lost."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import JobRecord, Notice
from benchnotes.record.statements import PartStatement, Prices, Statement, Works
from benchnotes.record.talk import Talk, resting_on


def unplaced(talk: Talk, record: JobRecord) -> JobRecord:
    """ "That'll be twelve quid", and nobody knows what -> a notice with the price and the words."""
    lost = [said.statement for said in talk.said if not said.name and _needs_name(said.statement)]
    return replace(record, notices=record.notices + tuple(_notice(statement) for statement in lost))


def _needs_name(statement: Statement) -> bool:
    return isinstance(statement, (PartStatement, Prices, Works))


def _notice(statement: Statement) -> Notice:
    about = f"{statement.price.amount} {statement.price.currency}" if isinstance(statement, Prices) else statement.words
    why = f"Heard ({statement.say}: {about}), but not what it is of. Say or type what is meant."
    return resting_on(Notice(kind="unplaced", about=about, why=why), [statement])
