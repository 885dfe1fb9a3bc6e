"""A bill: lines, discounts and tax, added up by the rules of EN 16931-1 (BR-CO-10 to BR-CO-17). Decimal throughout."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from typing import Final, Literal

from benchnotes.exports.tax import Tax
from benchnotes.record.currencies import minor_digits

UnitCode = Literal["C62", "HUR", "MTR"]
"""UN/ECE Recommendation 20: one, hour, metre."""
UNIT_WORDS: Final[Mapping[UnitCode, str]] = {"C62": "", "HUR": "h", "MTR": "m"}
"""What stands after a number on paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One thing billed (BG-25). `price` (BT-146) is without tax, for `per` units (BT-149); so 3 h at 100 in all is
    a price of 100 for 3."""

    what: str
    quantity: Decimal
    unit: UnitCode = "C62"
    price: Decimal
    per: Decimal = Decimal(1)
    tax: Tax
    check: bool = False
    """Something in it was heard unsurely."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Discount:
    """Something taken off the whole (BG-20), for what is taxed alike. `amount` is above nothing."""

    reason: str
    amount: Decimal
    tax: Tax


@dataclass(frozen=True, slots=True, kw_only=True)
class Bill:
    """What is asked for one job, before it has a number, a date and names on it."""

    currency: str
    lines: tuple[Line, ...]
    discounts: tuple[Discount, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TaxSum:
    """What is taxed alike, and the tax on it (BG-23)."""

    tax: Tax
    taxable: Decimal
    amount: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Totals:
    """The sums of a bill (BG-22), each rounded to the currency's own digits."""

    lines: Decimal
    discounts: Decimal
    without_tax: Decimal
    taxes: tuple[TaxSum, ...]
    tax: Decimal
    with_tax: Decimal


def digits_of(currency: str) -> int:
    """Digits of the currency's minor unit (ISO 4217)."""
    return minor_digits(currency)


def rounded(value: Decimal, digits: int) -> Decimal:
    """Half up, as EN 16931 rounds: 0.125 -> 0.13, -0.125 -> -0.13."""
    return value.quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)


def line_amount(line: Line, currency: str) -> Decimal:
    """BT-131: quantity times price by the price's quantity, rounded."""
    return rounded(line.quantity * line.price / line.per, digits_of(currency))


def totals(bill: Bill) -> Totals:
    """Every sum of the bill.

    BR-CO-10: lines are added as rounded. BR-CO-11: discounts likewise. BR-CO-13: without tax = lines - discounts.
    BR-CO-17: tax of a category = taxable x rate / 100, rounded once. BR-CO-14: tax = the categories' taxes added.
    BR-CO-15: with tax = without tax + tax. BR-CO-12 and -16 need charges and prepayments, which a bill has none of.
    """
    lines = sum((line_amount(line, bill.currency) for line in bill.lines), _nothing(bill.currency))
    discounts = sum((each.amount for each in bill.discounts), _nothing(bill.currency))
    taxes = tax_sums(bill)
    tax = sum((each.amount for each in taxes), _nothing(bill.currency))
    without = lines - discounts
    return Totals(
        lines=lines, discounts=discounts, without_tax=without, taxes=taxes, tax=tax, with_tax=without + tax
    )  # fmt: skip


def tax_sums(bill: Bill) -> tuple[TaxSum, ...]:
    """One sum for each category and rate (BR-CO-18); taxable = its lines - its discounts (BR-S-08 and its like)."""
    taxable: dict[Tax, Decimal] = {}
    for line in bill.lines:
        taxable[line.tax] = taxable.get(line.tax, _nothing(bill.currency)) + line_amount(line, bill.currency)
    for discount in bill.discounts:
        taxable[discount.tax] = taxable.get(discount.tax, _nothing(bill.currency)) - discount.amount
    digits = digits_of(bill.currency)
    return tuple(
        TaxSum(tax=tax, taxable=amount, amount=rounded(amount * tax.rate / 100, digits))
        for tax, amount in sorted(taxable.items())
    )


def shared_out(amount: Decimal, over: Mapping[Tax, Decimal], digits: int) -> dict[Tax, Decimal]:
    """An amount shared out in proportion, to the last minor unit: what rounding leaves goes to the largest remainders.

    Nothing but what is above nothing takes a share; `over` must add up to more than nothing.
    """
    step = Decimal(1).scaleb(-digits)
    whole = sum(over.values())
    exact = {tax: amount * part / whole for tax, part in over.items() if part > 0}
    shares = {tax: part // step * step for tax, part in exact.items()}
    left = int((amount - sum(shares.values())) / step)
    for tax in sorted(exact, key=lambda each: (shares[each] - exact[each], each))[:left]:
        shares[tax] += step
    return {tax: share for tax, share in shares.items() if share}


def discounts_over(lines: Sequence[Line], taken_off: Iterable[tuple[str, Decimal]], currency: str) -> list[Discount]:
    """Each amount taken off, shared out over what is taxed differently; in all at most what the lines come to."""
    left = {each.tax: each.taxable for each in tax_sums(Bill(currency=currency, lines=tuple(lines)))}
    digits = digits_of(currency)
    discounts = []
    for reason, amount in taken_off:
        for tax, share in shared_out(rounded(amount, digits), left, digits).items():
            discounts.append(Discount(reason=reason, amount=share, tax=tax))
            left[tax] -= share
    return discounts


def _nothing(currency: str) -> Decimal:
    return Decimal(0).scaleb(-digits_of(currency))
