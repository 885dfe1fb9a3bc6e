"""Parts that the job needs, has ordered, has fitted or has dropped. A set or kit is one."""

from __future__ import annotations

from dataclasses import dataclass, replace
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


@dataclass(frozen=True, slots=True)
class _About:
    """All that was said of one thing as a part."""

    name: str
    said: tuple[Statement, ...]

    @property
    def moves(self) -> list[PartStatement]:
        return [told for told in self.said if isinstance(told, PartStatement)]

    @property
    def prices(self) -> list[Prices]:
        return standing_prices(told for told in self.said if isinstance(told, Prices))

    @property
    def replaced(self) -> list[Works]:
        return [told for told in self.said if isinstance(told, Works)]

    @property
    def is_part(self) -> bool:
        """Needed, ordered, fitted or dropped; or priced and replaced. A price alone makes no part (see `unplaced`)."""
        return bool(self.moves or (self.prices and self.replaced))


def parts(talk: Talk, record: JobRecord) -> JobRecord:
    """ "Needs a new leather" ... "leather's in" ... "four fifty, that was" -> one part, fitted, 4.50."""
    about: dict[str, _About] = {}
    for said in talk.said:
        if said.name and _tells_of_part(said.statement):
            earlier = about.get(said.name, _About(said.name, ()))
            about[said.name] = replace(earlier, said=(*earlier.said, said.statement))
    return replace(record, parts=tuple(_part(told) for told in about.values() if told.is_part))


def _tells_of_part(told: Statement) -> bool:
    return isinstance(told, (PartStatement, Prices)) or (isinstance(told, Works) and told.action == "replace")


def _part(about: _About) -> Part:
    prices = about.prices
    entry = Part(
        name=about.name,
        qty=_quantity(about.moves),
        unit_price=prices[-1].price if prices else None,
        basis=prices[-1].basis if prices else None,
        prices=tuple(said.price for said in prices) if len(prices) > 1 else (),
        state=_state(about),
    )
    return resting_on(entry, (told for told in about.said if not (about.moves and isinstance(told, Works))))


def _quantity(moves: list[PartStatement]) -> Decimal:
    """The last number said: one needed, one more needed, then "ordered the two"."""
    told = [move.quantity for move in moves if move.quantity is not None and move.quantity > 0]
    return told[-1] if told else Decimal(1)


def _state(about: _About) -> PartState:
    """The last word decides. A part of which only the price was heard is in where it was said to be replaced."""
    if about.moves:
        return STATES[type(about.moves[-1])]
    return "fitted" if any(work.standing == "done" for work in about.replaced) else "needed"
