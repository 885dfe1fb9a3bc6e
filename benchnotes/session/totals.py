"""What the prices of a job add up to, as far as they were said: no tax, no mark-up, no labour by the hour."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from benchnotes.exports.entry_lines import as_money
from benchnotes.record.entries import JobRecord
from benchnotes.record.money import Money


@dataclass(frozen=True, slots=True)
class Said:
    """The sum of all that was priced, a currency each."""

    sums: tuple[Money, ...]
    about: bool
    """Some of it is only about."""

    def __str__(self) -> str:
        return ("about " if self.about else "") + " + ".join(as_money(money) for money in self.sums)


def money_said(record: JobRecord) -> Said:
    """Parts that are needed, ordered or fitted, and charges that have an amount; a discount is taken off."""
    sums: dict[str, Decimal] = {}
    about = False
    for money, basis in _lines(record):
        sums[money.currency] = sums.get(money.currency, Decimal(0)) + money.amount
        about = about or basis == "about"
    return Said(tuple(Money(amount, currency) for currency, amount in sums.items()), about)


def _lines(record: JobRecord) -> list[tuple[Money, str | None]]:
    parts = [
        (part.unit_price.times(part.qty), part.basis)
        for part in record.parts
        if part.unit_price is not None and part.state != "not_needed"
    ]
    charges = [
        (charge.amount.times(-1 if charge.kind == "discount" and charge.amount.amount > 0 else 1), charge.basis)
        for charge in record.charges
        if charge.amount is not None
    ]
    return [*parts, *charges]
