"""A bill or credit note as the owner reads it: the same tables as a job sheet, for the same HTML and PDF."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from benchnotes.exports.invoice import DRAFT, Invoice, Issued, Party
from benchnotes.exports.plain_words import one_line
from benchnotes.exports.sheet import Sheet
from benchnotes.exports.sheet_money import billed_table

DRAFT_MEANS: Final = "This is a draft. It was not issued, has no number, and nothing is to be paid on it."


def bill_on_paper(invoice: Invoice, issued: Issued) -> Sheet:
    """What EN 16931 puts into the e-invoice, for the eye. For a draft `issued` has DRAFT as number."""
    called = "Credit note" if invoice.kind == "credit_note" else "Bill"
    draft = issued.number == DRAFT
    return Sheet(
        title=f"{called}, draft" if draft else f"{called} {issued.number}",
        facts=tuple((label, one_line(text)) for label, text in _facts(invoice, issued) if one_line(text)),
        tables=(billed_table(invoice),),
        notes=(DRAFT_MEANS,) if draft else (),
    )


def _facts(invoice: Invoice, issued: Issued) -> Iterator[tuple[str, str]]:
    taken, payment = invoice.takes_back, invoice.payment
    yield "Date", issued.on.isoformat()
    if taken:
        yield "Takes back", f"bill {taken.number} of {taken.on.isoformat()}"
    yield "From", _party(invoice.seller)
    yield "Tax number", invoice.seller.tax_number or invoice.seller.tax_registration
    yield "Company", invoice.seller.company_number
    yield "Phone", invoice.seller.phone
    yield "E-mail", invoice.seller.email
    yield "To", _party(invoice.buyer)
    yield "Their tax no.", invoice.buyer.tax_number
    yield "For", invoice.about
    if not taken:
        yield "To be paid by", invoice.due(issued.on).isoformat()
        yield "Terms", payment.terms
        yield "To account", payment.account


def _party(party: Party) -> str:
    town = " ".join(word for word in (party.postcode, party.town) if word)
    return ", ".join(part for part in (party.name, party.street, town, party.country) if part)
