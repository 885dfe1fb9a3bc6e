"""Parts and prices on the job sheet: as said, and added up as billed where the bill is settled."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from typing import Final

from benchnotes.exports.bill import digits_of, line_amount, totals
from benchnotes.exports.bill_of_job import CALLED, Unsettled
from benchnotes.exports.bill_words import asked, in_money, tax_words
from benchnotes.exports.currencies import plain_amount, plain_decimal
from benchnotes.exports.invoice import Invoice
from benchnotes.exports.plain_words import one_line
from benchnotes.exports.sheet import CHECK, Table
from benchnotes.exports.tax import Tax
from benchnotes.record.entries import Charge, JobRecord, Part
from benchnotes.record.money import Money
from benchnotes.record.terms import Basis, PartState

STATE_WORDS: Final[dict[PartState, str]] = {
    "needed": "needed", "ordered": "on order", "fitted": "fitted", "not_needed": "not needed",
}  # fmt: skip
OPEN: Final = "open"


def money_table(record: JobRecord, bill: Invoice | Unsettled) -> Table:
    """As billed, with the sums, where the bill is settled; else as said, without: a sum of what is open would be taken
    for a price."""
    return billed_table(bill) if isinstance(bill, Invoice) else _said(record)


def billed_table(invoice: Invoice) -> Table:
    """Lines, discounts, tax and what is to be paid, or given back; each line with its rate."""
    bill = invoice.bill
    lines = [
        (
            line.what + (CHECK if line.check else ""),
            _rate(line.tax),
            asked(line, bill.currency),
            in_money(line_amount(line, bill.currency), bill.currency),
        )
        for line in bill.lines
    ]
    discounts = [
        (each.reason, _rate(each.tax), "", f"-{in_money(each.amount, bill.currency)}") for each in bill.discounts
    ]
    sums = list(_sums(invoice))
    return Table(
        heading=f"Parts and prices in {bill.currency}",
        columns=("What", "Tax", "How many", "Together"),
        rows=(*lines, *discounts, *sums),
        numbers=(1, 2, 3),
        sums=len(sums),
    )


def _rate(tax: Tax) -> str:
    return f"{plain_decimal(tax.rate)} %"


def _said(record: JobRecord) -> Table:
    rows = (*(_part(part) for part in record.parts), *(_charge(charge) for charge in record.charges))
    return Table(
        heading=f"Parts and prices in {record.currency}, as far as they are known",
        columns=("What", "State", "Number", "Each", "Together"),
        rows=rows,
        numbers=(2, 3, 4),
    )


def _part(part: Part) -> tuple[str, ...]:
    name = one_line(part.name) + (CHECK if part.check else "")
    number = plain_decimal(part.qty)
    if part.state == "not_needed":
        return name, STATE_WORDS[part.state], number, "", ""
    together = part.unit_price.times(part.qty) if part.unit_price else None
    return name, STATE_WORDS[part.state], number, _price(part.unit_price, part.basis), _price(together, part.basis)


def _charge(charge: Charge) -> tuple[str, ...]:
    called, what = CALLED[charge.kind], one_line(charge.what)
    name = called if not what or what.casefold() == called.casefold() else f"{called}: {what}"
    hours = f"{plain_decimal(charge.hours)} h" if charge.hours else ""
    amount = charge.amount
    if amount is not None and charge.kind == "discount":
        amount = Money(-abs(amount.amount), amount.currency)
    return name + (CHECK if charge.check else ""), "", hours, "", _price(amount, charge.basis)


def _price(money: Money | None, basis: Basis | None) -> str:
    if money is None:
        return OPEN
    digits = digits_of(money.currency)
    rounded = Money(round(money.amount, max(digits, 4)), money.currency)
    return ("about " if basis == "about" else "") + plain_amount(rounded)


def _sums(invoice: Invoice) -> Iterator[tuple[str, ...]]:
    currency = invoice.bill.currency
    summed = totals(invoice.bill)
    yield _sum("Without tax", summed.without_tax, currency)
    for each in summed.taxes:
        yield _sum(tax_words(each, invoice), each.amount, currency)
    yield _sum("Given back" if invoice.kind == "credit_note" else "To pay", summed.with_tax, currency)


def _sum(what: str, amount: Decimal, currency: str) -> tuple[str, ...]:
    return what, "", "", in_money(amount, currency)
