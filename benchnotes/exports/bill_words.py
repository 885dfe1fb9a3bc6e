"""A bill in words, line by line, for a terminal: what somebody reads before it is issued."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from benchnotes.exports.bill import UNIT_WORDS, Line, TaxSum, digits_of, line_amount, totals
from benchnotes.exports.currencies import plain_decimal
from benchnotes.exports.invoice import Invoice, why_untaxed
from benchnotes.exports.plain_words import one_line

CHECK = "check by ear"


def bill_lines(invoice: Invoice) -> Iterator[str]:
    """One line for each thing billed, then the sums."""
    bill = invoice.bill
    yield one_line(f"{invoice.about}, for {invoice.buyer.name}")
    for line in bill.lines:
        unsure = f"  ({CHECK})" if line.check else ""
        amount = in_money(line_amount(line, bill.currency), bill.currency)
        yield f"  {amount}  {line.what}, {asked(line, bill.currency)}{unsure}"
    for discount in bill.discounts:
        yield f"  -{in_money(discount.amount, bill.currency)}  {discount.reason}"
    summed = totals(bill)
    for each in summed.taxes:
        yield f"  {in_money(each.amount, bill.currency)}  {tax_words(each, invoice)}"
    yield f"  {in_money(summed.with_tax, bill.currency)} {bill.currency} to pay"


def asked(line: Line, currency: str) -> str:
    """ "2 at 4.50", "2.5 h at 38.00", "3 h for 100.00"."""
    quantity = " ".join(part for part in (plain_decimal(line.quantity), UNIT_WORDS[line.unit]) if part)
    price = plain_decimal(line.price, digits_of(currency))
    if line.per == line.quantity and line.per != 1:
        return f"{quantity} for {price}"
    per = "" if line.per == 1 else f" for {plain_decimal(line.per)}"
    return f"{quantity} at {price}{per}"


def tax_words(each: TaxSum, invoice: Invoice) -> str:
    """ "20 % tax on 9.00"; the reason where none is asked."""
    reason = why_untaxed(each.tax, invoice)
    why = f" ({reason})" if reason else ""
    return f"{plain_decimal(each.tax.rate)} % tax on {in_money(each.taxable, invoice.bill.currency)}{why}"


def in_money(amount: Decimal, currency: str) -> str:
    """With the currency's own digits."""
    return plain_decimal(amount, digits_of(currency))
