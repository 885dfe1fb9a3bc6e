"""A frozen invoice comes back the same, to the last digit and letter."""

from __future__ import annotations

from dataclasses import replace

from exports.bills import bills
from exports.invoices import FIRST, LATER, invoice, of_bill
from hypothesis import given, settings

from benchnotes.exports.e_invoice import e_invoice
from benchnotes.exports.invoice import Invoice
from benchnotes.exports.invoice_json import frozen, thawed


@settings(max_examples=150, deadline=None)
@given(whole=bills().flatmap(of_bill))
def test_it_comes_back_the_same(whole: Invoice) -> None:
    again = thawed(frozen(whole))
    assert again == whole
    assert [str(line.price) for line in again.bill.lines] == [str(line.price) for line in whole.bill.lines]


def test_the_same_bytes_leave_for_it() -> None:
    whole = replace(invoice(), kind="credit_note", takes_back=FIRST)
    assert e_invoice(thawed(frozen(whole)), LATER) == e_invoice(whole, LATER)
