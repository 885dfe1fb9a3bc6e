"""The bill for the eye says what the e-invoice says."""

from __future__ import annotations

import re
from datetime import date

from exports.bills import bills
from exports.invoices import FIRST, LATER, SHOP, invoice, of_bill
from exports.sheets import HOSTILE
from exports.test_sheet import Seen, pdf_text, squeezed
from hypothesis import given, settings

from benchnotes.exports.bill_on_paper import DRAFT_MEANS, bill_on_paper
from benchnotes.exports.e_invoice import e_invoice
from benchnotes.exports.invoice import DRAFT, Invoice, Issued, Party, Payment
from benchnotes.exports.sheet_html import sheet_html
from benchnotes.exports.sheet_pdf import sheet_pdf


def test_what_the_owner_reads() -> None:
    whole = invoice(payment=Payment(days=14, account="GB33BUKB20201555555555"))
    sheet = bill_on_paper(whole, FIRST)
    assert sheet.title == "Bill 2026-0001"
    facts = dict(sheet.facts)
    assert (facts["Date"], facts["To be paid by"], facts["Tax number"]) == ("2026-03-02", "2026-03-16", SHOP.tax_number)
    assert facts["To"] == "Mrs Quillby, Mill End, Oldmere, GB"
    assert sheet.tables[0].rows[-1] == ("To pay", "", "", "10.80")
    assert sheet.notes == ()
    paper = pdf_text(sheet_pdf(sheet))
    for said in (*facts.values(), "10.80", "2026-0001"):
        assert squeezed(said) in paper


def test_a_draft_says_so() -> None:
    sheet = bill_on_paper(invoice(), Issued(DRAFT, date(2026, 3, 2)))
    assert (sheet.title, sheet.notes) == ("Bill, draft", (DRAFT_MEANS,))


def test_a_credit_note_gives_back() -> None:
    sheet = bill_on_paper(invoice(kind="credit_note", takes_back=FIRST), LATER)
    assert sheet.title == "Credit note 2026-0002"
    assert ("Takes back", "bill 2026-0001 of 2026-03-02") in sheet.facts
    assert sheet.tables[0].rows[-1] == ("Given back", "", "", "10.80")
    assert not [label for label, _ in sheet.facts if label == "To be paid by"]


def test_text_of_others_stays_text() -> None:
    sheet = bill_on_paper(invoice(buyer=Party(name=HOSTILE, street=HOSTILE, country="GB")), FIRST)
    assert "script" not in Seen(sheet_html(sheet)).tags
    assert squeezed("#panic() *bold* </td>") in pdf_text(sheet_pdf(sheet))


@settings(max_examples=100, deadline=None)
@given(whole=bills(("EUR", "GBP", "JPY")).flatmap(of_bill))
def test_its_sums_are_those_of_the_e_invoice(whole: Invoice) -> None:
    payable = re.search(r"PayableAmount[^>]*>([\d.]+)<", e_invoice(whole, FIRST).decode())
    assert payable is not None
    sheet = bill_on_paper(whole, FIRST)
    assert sheet.tables[0].rows[-1][-1] == payable[1]
    assert len(sheet.tables[0].rows) - sheet.tables[0].sums == len(whole.bill.lines) + len(whole.bill.discounts)
