"""What a job comes to: its record becomes a bill, or a list of what must be settled first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from benchnotes.exports.bill import Bill, Line, digits_of, discounts_over, line_amount, rounded
from benchnotes.exports.plain_words import one_line
from benchnotes.exports.tax import TaxedThing, TaxRules
from benchnotes.record.entries import Charge, Item, JobRecord, Part
from benchnotes.record.money import Money
from benchnotes.record.terms import ChargeKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """What the workshop has set about what it asks."""

    tax: TaxRules | None = None
    labour_an_hour: Money | None = None
    """Without tax."""
    by_the_metre: tuple[str, ...] = ()
    """Last words of parts that are sold by length: 0.5 of them is half a metre."""


@dataclass(frozen=True, slots=True)
class Unsettled:
    """Why there is no bill yet, a sentence for each thing to settle."""

    because: tuple[str, ...]


TAXED_AS: Final[dict[ChargeKind, TaxedThing]] = {
    "labour": "labour", "outside_work": "outside_work", "postage": "postage", "other": "other",
}  # fmt: skip
CALLED: Final[dict[ChargeKind, str]] = {
    "labour": "Labour", "outside_work": "Outside work", "postage": "Postage", "discount": "Discount", "other": "Charge",
}  # fmt: skip


def bill_of_job(record: JobRecord, items: Sequence[Item], prices: Prices) -> Bill | Unsettled:
    """The bill for parts fitted and all charges. `items` are those still open: one that a person closed is settled."""
    open_points = [*_unsettled_parts(record, items), *_unsettled_charges(record, prices)]
    if prices.tax is None:
        open_points.append('How the workshop taxes is not set. Set it under [tax] in settings.toml: usual = "20 %".')
    if open_points or prices.tax is None:
        return Unsettled(tuple(open_points))
    lines = tuple(_lines(record, prices, prices.tax))
    if not lines:
        return Unsettled(("There is nothing to bill: no part was fitted, and no work was charged.",))
    taken_off = [
        (_named(each), abs(each.amount.amount)) for each in record.charges if _is_discount(each) and each.amount
    ]
    if sum(amount for _, amount in taken_off) > sum(line_amount(line, record.currency) for line in lines):
        return Unsettled(("More is taken off than is asked. Put the discount right.",))
    discounts = discounts_over(lines, taken_off, record.currency)
    return Bill(currency=record.currency, lines=lines, discounts=tuple(discounts))


def _taken_off(record: JobRecord) -> Iterator[tuple[str, Decimal]]:
    for charge in record.charges:
        if _is_discount(charge) and charge.amount is not None and charge.amount.amount:
            yield _named(charge), rounded(abs(charge.amount.amount), digits_of(record.currency))


def _lines(record: JobRecord, prices: Prices, tax: TaxRules) -> Iterator[Line]:
    for part in record.parts:
        if part.state == "fitted" and part.unit_price is not None:
            metres = one_line(part.name).casefold().endswith(prices.by_the_metre) if prices.by_the_metre else False
            yield Line(
                what=one_line(part.name) or "Part",
                quantity=part.qty,
                unit="MTR" if metres else "C62",
                price=part.unit_price.amount,
                tax=tax.of("parts"),
                check=part.check,
            )
    for charge in record.charges:
        if not _is_discount(charge):
            yield _charged(charge, prices, tax)


def _charged(charge: Charge, prices: Prices, tax: TaxRules) -> Line:
    """Hours count where there are any: at what was said for them in all, else at the workshop's rate."""
    hours = charge.hours or Decimal(0)
    asked = charge.amount or prices.labour_an_hour
    assert asked is not None, "what has no price is unsettled"
    return Line(
        what=_named(charge),
        quantity=hours or Decimal(1),
        unit="HUR" if hours else "C62",
        price=asked.amount,
        per=hours if hours and charge.amount is not None else Decimal(1),
        tax=tax.of(TAXED_AS[charge.kind]),
        check=charge.check,
    )


def _unsettled_parts(record: JobRecord, items: Sequence[Item]) -> Iterator[str]:
    differing = {item.about for item in items if item.kind == "price_differs"}
    for part in record.parts:
        name = one_line(part.name)
        if part.state in ("needed", "ordered"):
            yield f"{name} is not fitted. Say that it is, or that it is not needed."
        elif part.state == "fitted":
            yield from _open_price(name, part.unit_price, part.basis == "about", record.currency)
            yield from _odd_quantity(part)
            if part.name in differing:
                yield f"{name} was priced differently. Say which price is right."


def _odd_quantity(part: Part) -> Iterator[str]:
    if part.qty <= 0:
        yield f"{one_line(part.name)}: {part.qty} of them cannot be billed. Put the number right."


def _unsettled_charges(record: JobRecord, prices: Prices) -> Iterator[str]:
    for charge in record.charges:
        name = _named(charge)
        if charge.amount is None and charge.hours and not _is_discount(charge):
            rate = prices.labour_an_hour
            if rate is None or rate.currency != record.currency:
                yield (
                    f"{name} is {charge.hours} h, and an hour has no price in {record.currency}. "
                    "Set labour_an_hour under [bill] in settings.toml, or say what it comes to."
                )
            continue
        amount = charge.amount
        if amount is not None and _is_discount(charge):
            amount = Money(abs(amount.amount), amount.currency)
        yield from _open_price(name, amount, charge.basis == "about", record.currency)


def _open_price(name: str, price: Money | None, about: bool, currency: str) -> Iterator[str]:
    if price is None:
        yield f"{name} has no price. Say or type it; nothing if it is free."
    elif price.currency != currency:
        yield f"{name} is priced in {price.currency}, and the job is in {currency}. Say its price in {currency}."
    elif about:
        yield f"{name} is only about {price.amount} {price.currency}. Say or type the price that holds."
    elif price.amount < 0:
        yield f"{name} is priced below nothing ({price.amount} {price.currency}). Put the price right."


def _is_discount(charge: Charge) -> bool:
    return charge.kind == "discount"


def _named(charge: Charge) -> str:
    """ "Labour", "Outside work: thread insert"."""
    called, what = CALLED[charge.kind], one_line(charge.what)
    return called if not what or what.casefold() == called.casefold() else f"{called}: {what}"
