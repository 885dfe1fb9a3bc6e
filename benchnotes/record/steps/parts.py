"""Parts that the job needs, has ordered, has fitted or has dropped. A set or kit is one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal

from benchnotes.record.entries import JobRecord, Part
from benchnotes.record.statements import Drops, Fits, Needs, Orders, PartStatement, Prices, Statement, Works
from benchnotes.record.steps.prices import standing_prices
from benchnotes.record.talk import Talk, resting_on
from benchnotes.record.terms import PartState

STATES: dict[type[PartStatement], PartState] = {
    Needs: "needed",
    Orders: "ordered",
    Fits: "fitted",
    Drops: "not_needed",
}


def parts(talk: Talk, record: JobRecord) -> JobRecord:
    """ "Needs a new leather" ... "leather's in" ... "four fifty, that was" -> one part, fitted, 4.50."""
    about: dict[str, list[Statement]] = {}
    for said in talk.said:
        if said.name and isinstance(said.statement, (PartStatement, Prices)):
            about.setdefault(said.name, []).append(said.statement)
    replaced = [(said.name, work) for said, work in talk.named(Works) if work.action == "replace"]
    entries = (_part(name, said, (w for n, w in replaced if n == name)) for name, said in about.items())
    return replace(record, parts=tuple(entries))


def _part(name: str, said: list[Statement], replaced: Iterable[Works]) -> Part:
    moves = [statement for statement in said if isinstance(statement, PartStatement)]
    prices = standing_prices(statement for statement in said if isinstance(statement, Prices))
    entry = Part(
        name=name,
        qty=_quantity(moves),
        unit_price=prices[-1].price if prices else None,
        basis=prices[-1].basis if prices else None,
        prices=tuple(said.price for said in prices) if len(prices) > 1 else (),
        state=_state(moves, replaced),
    )
    return resting_on(entry, said)


def _quantity(moves: list[PartStatement]) -> Decimal:
    """The last number said: one needed, one more needed, then "ordered the two"."""
    told = [move.quantity for move in moves if move.quantity is not None and move.quantity > 0]
    return told[-1] if told else Decimal(1)


def _state(moves: list[PartStatement], replaced: Iterable[Works]) -> PartState:
    """The last word decides. A part of which only the price was heard is in where it was said to be replaced."""
    if moves:
        return STATES[type(moves[-1])]
    return "fitted" if any(work.standing == "done" for work in replaced) else "needed"
