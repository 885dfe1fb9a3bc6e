"""An invoice: a bill with names, dates and terms on it; issued, or a draft. And what an invoice must still be told."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final, Literal

from benchnotes.exports.bill import Bill, totals
from benchnotes.exports.countries import COUNTRIES, TAX_PREFIXES
from benchnotes.exports.tax import REASONS, Tax, TaxCategory

InvoiceKind = Literal["bill", "credit_note"]
DRAFT: Final = "DRAFT"
"""Stands where the number will be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Party:
    """Who bills or is billed. Empty text: nobody said."""

    name: str = ""
    street: str = ""
    town: str = ""
    postcode: str = ""
    country: str = ""
    """ISO 3166-1 alpha-2."""
    tax_number: str = ""
    """VAT identifier, with the country in front (BT-31, BT-48)."""
    company_number: str = ""
    """In a public register (BT-30, BT-47)."""
    tax_registration: str = ""
    """Number at the tax office that is no VAT identifier (BT-32); of sellers only."""
    phone: str = ""
    email: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Payment:
    """How and when to pay."""

    days: int = 0
    """From the date of the bill; 0: at once."""
    terms: str = ""
    account: str = ""
    """IBAN or another account number (BT-84)."""


@dataclass(frozen=True, slots=True)
class Issued:
    """Number and date, taken once and for good."""

    number: str
    on: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Invoice:
    """Everything that stands on a bill or credit note. A credit note's amounts are what is given back."""

    bill: Bill
    seller: Party
    buyer: Party
    payment: Payment = Payment()
    exempt_because: str = ""
    about: str = ""
    """Which job and machine (BT-22)."""
    kind: InvoiceKind = "bill"
    takes_back: Issued | None = None
    """The bill that a credit note takes back (BG-3)."""

    def due(self, on: date) -> date:
        return on + timedelta(days=self.payment.days)


def why_untaxed(tax: Tax, invoice: Invoice) -> str:
    """BT-120: the reason for asking no tax; empty where there must be none (BR-S-10, BR-Z-10)."""
    if tax.category == "E":
        return invoice.exempt_because
    return REASONS.get(tax.category, "")


def what_is_missing(invoice: Invoice) -> tuple[str, ...]:
    """What EN 16931 asks for and nobody has said, a sentence each. Empty: the invoice can be written."""
    categories = {line.tax.category for line in invoice.bill.lines}
    return (
        *_of_seller(invoice.seller, categories),
        *_of_buyer(invoice.buyer, categories),
        *_of_taxes(invoice, categories),
        *_of_amounts(invoice.bill),
    )


def _of_seller(seller: Party, categories: set[TaxCategory]) -> Iterator[str]:
    if not seller.name:
        yield "The workshop has no name. Set name under [workshop] in settings.toml."  # BR-06
    if seller.country not in COUNTRIES:
        yield 'The workshop has no country. Set country under [workshop], such as "GB".'  # BR-09
    yield from _odd_tax_number(seller, "the workshop")
    if not categories:
        return
    asks_no_number = categories == {"O"}
    if not asks_no_number and not (seller.tax_number or seller.tax_registration):
        # BR-S-02, BR-Z-02, BR-E-02, BR-AE-02
        yield "The workshop has no tax number. Set tax_number or tax_registration under [workshop] in settings.toml."
    elif not (seller.company_number or (seller.tax_number and not asks_no_number)):
        # BR-CO-26; outside the scope of the tax no VAT identifier may stand on the bill (BR-O-02)
        yield "The workshop has no company number. Set company_number under [workshop] in settings.toml."


def _of_buyer(buyer: Party, categories: set[TaxCategory]) -> Iterator[str]:
    if not buyer.name:
        yield 'The owner has no name. "benchnotes owner JOB --name NAME" notes it.'  # BR-07
    if buyer.country not in COUNTRIES:
        yield 'The owner has no country. "benchnotes owner JOB --country GB" notes it.'  # BR-11
    yield from _odd_tax_number(buyer, "the owner")
    if "AE" in categories and not (buyer.tax_number or buyer.company_number):
        # BR-AE-02
        yield 'For a reverse charge the owner needs a tax number. "benchnotes owner JOB --tax-number NUMBER" notes it.'


def _odd_tax_number(party: Party, whose: str) -> Iterator[str]:
    if party.tax_number and party.tax_number[:2] not in TAX_PREFIXES:
        yield f'The tax number of {whose}, "{party.tax_number}", must begin with its country, such as GB.'  # BR-CO-09


def _of_taxes(invoice: Invoice, categories: set[TaxCategory]) -> Iterator[str]:
    if "O" in categories and len(categories) > 1:
        yield "What is outside the scope of the tax goes on a bill of its own. Set all under [tax] alike."  # BR-O-11
    if "E" in categories and not invoice.exempt_because:
        yield "Why it is exempt must be said. Set exempt_because under [tax] in settings.toml."  # BR-E-10


def _of_amounts(bill: Bill) -> Iterator[str]:
    summed = totals(bill)
    amounts = [summed.lines, summed.discounts, summed.tax, *(each.amount for each in summed.taxes)]
    if any(round(amount, 2) != amount for amount in amounts):
        # BR-DEC-09 to BR-DEC-23
        yield f"An e-invoice has two digits after the point, and sums of this bill in {bill.currency} have more."
