"""An invoice or credit note as EN 16931 asks for it, in UBL 2.1 (OASIS): syntax binding of CEN/TS 16931-3-2."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from typing import Final
from xml.etree import ElementTree as ET

from benchnotes.exports.bill import Line, TaxSum, digits_of, line_amount, totals
from benchnotes.exports.currencies import plain_decimal
from benchnotes.exports.invoice import DRAFT, Invoice, Issued, Party, why_untaxed
from benchnotes.exports.plain_words import one_line
from benchnotes.exports.tax import Tax

UBL: Final = "urn:oasis:names:specification:ubl:schema:xsd:"
CUSTOMIZATION: Final = "urn:cen.eu:en16931:2017"
"""BT-24: the standard itself, no narrower use of it."""
INVOICE, CREDIT_NOTE, PRO_FORMA = "380", "381", "325"
"""UNTDID 1001; a draft says that it is one."""
CREDIT_TRANSFER: Final = "30"
"""UNTDID 4461."""


def e_invoice(invoice: Invoice, issued: Issued) -> bytes:
    """UTF-8 XML. For a draft `issued` has DRAFT as number, and today's date. `what_is_missing` must be empty."""
    root = "CreditNote" if _credits(invoice) else "Invoice"
    document = ET.Element(
        root,
        {
            "xmlns": f"{UBL}{root}-2",
            "xmlns:cac": f"{UBL}CommonAggregateComponents-2",
            "xmlns:cbc": f"{UBL}CommonBasicComponents-2",
        },
    )
    _head(document, invoice, issued)
    _party(_under(document, "cac:AccountingSupplierParty"), invoice.seller, invoice, seller=True)
    _party(_under(document, "cac:AccountingCustomerParty"), invoice.buyer, invoice, seller=False)
    _payment(document, invoice)
    _discounts(document, invoice)
    _sums(document, invoice)
    for number, line in enumerate(invoice.bill.lines, 1):
        _line(document, number, line, invoice)
    ET.indent(document, " ")
    text: bytes = ET.tostring(document, encoding="utf-8", xml_declaration=True)
    return text + b"\n"


def _credits(invoice: Invoice) -> bool:
    return invoice.kind == "credit_note"


def _head(document: ET.Element, invoice: Invoice, issued: Issued) -> None:
    _put(document, "cbc:CustomizationID", CUSTOMIZATION)
    _put(document, "cbc:ID", issued.number)
    _put(document, "cbc:IssueDate", issued.on.isoformat())
    if _credits(invoice):
        _put(document, "cbc:CreditNoteTypeCode", CREDIT_NOTE)
    else:
        _put(document, "cbc:DueDate", invoice.due(issued.on).isoformat())
        _put(document, "cbc:InvoiceTypeCode", PRO_FORMA if issued.number == DRAFT else INVOICE)
    for note in _notes(invoice, issued):
        _put(document, "cbc:Note", note)
    _put(document, "cbc:DocumentCurrencyCode", invoice.bill.currency)
    if invoice.takes_back:
        taken = _under(_under(document, "cac:BillingReference"), "cac:InvoiceDocumentReference")
        _put(taken, "cbc:ID", invoice.takes_back.number)
        _put(taken, "cbc:IssueDate", invoice.takes_back.on.isoformat())


def _notes(invoice: Invoice, issued: Issued) -> Iterator[str]:
    if issued.number == DRAFT:
        yield "Draft: not issued, nothing is to be paid on it."
    if invoice.about:
        yield invoice.about


def _party(parent: ET.Element, who: Party, invoice: Invoice, *, seller: bool) -> None:
    party = _under(parent, "cac:Party")
    address = _under(party, "cac:PostalAddress")
    for tag, text in (("StreetName", who.street), ("CityName", who.town), ("PostalZone", who.postcode)):
        _put(address, f"cbc:{tag}", text)
    _put(_under(address, "cac:Country"), "cbc:IdentificationCode", who.country)
    # BR-O-02: outside the scope of the tax nobody's VAT identifier may stand here
    in_scope = any(line.tax.category != "O" for line in invoice.bill.lines)
    if in_scope:
        _tax_scheme(party, who.tax_number, "VAT")
    if seller:
        _tax_scheme(party, who.tax_registration, "FC")
    entity = _under(party, "cac:PartyLegalEntity")
    _put(entity, "cbc:RegistrationName", who.name)
    _put(entity, "cbc:CompanyID", who.company_number)
    if who.phone or who.email:
        contact = _under(party, "cac:Contact")
        _put(contact, "cbc:Telephone", who.phone)
        _put(contact, "cbc:ElectronicMail", who.email)


def _tax_scheme(party: ET.Element, number: str, scheme: str) -> None:
    if one_line(number):
        registered = _under(party, "cac:PartyTaxScheme")
        _put(registered, "cbc:CompanyID", number)
        _put(_under(registered, "cac:TaxScheme"), "cbc:ID", scheme)


def _payment(document: ET.Element, invoice: Invoice) -> None:
    payment = invoice.payment
    if one_line(payment.account) and not _credits(invoice):
        means = _under(document, "cac:PaymentMeans")
        _put(means, "cbc:PaymentMeansCode", CREDIT_TRANSFER)
        _put(_under(means, "cac:PayeeFinancialAccount"), "cbc:ID", payment.account)
    taken = invoice.takes_back
    # BR-CO-25: a credit note has no date on which it is due, so it needs words
    terms = f"Takes back bill {taken.number}" if taken else payment.terms
    if one_line(terms):
        _put(_under(document, "cac:PaymentTerms"), "cbc:Note", terms)


def _discounts(document: ET.Element, invoice: Invoice) -> None:
    for discount in invoice.bill.discounts:
        allowance = _under(document, "cac:AllowanceCharge")
        _put(allowance, "cbc:ChargeIndicator", "false")
        _put(allowance, "cbc:AllowanceChargeReason", discount.reason)
        _money(allowance, "cbc:Amount", discount.amount, invoice)
        _category(allowance, "cac:TaxCategory", discount.tax)


def _sums(document: ET.Element, invoice: Invoice) -> None:
    summed = totals(invoice.bill)
    taxed = _under(document, "cac:TaxTotal")
    _money(taxed, "cbc:TaxAmount", summed.tax, invoice)
    for each in summed.taxes:
        _tax_sum(taxed, each, invoice)
    sums = _under(document, "cac:LegalMonetaryTotal")
    _money(sums, "cbc:LineExtensionAmount", summed.lines, invoice)
    _money(sums, "cbc:TaxExclusiveAmount", summed.without_tax, invoice)
    _money(sums, "cbc:TaxInclusiveAmount", summed.with_tax, invoice)
    if invoice.bill.discounts:
        _money(sums, "cbc:AllowanceTotalAmount", summed.discounts, invoice)
    _money(sums, "cbc:PayableAmount", summed.with_tax, invoice)


def _tax_sum(taxed: ET.Element, each: TaxSum, invoice: Invoice) -> None:
    subtotal = _under(taxed, "cac:TaxSubtotal")
    _money(subtotal, "cbc:TaxableAmount", each.taxable, invoice)
    _money(subtotal, "cbc:TaxAmount", each.amount, invoice)
    _category(subtotal, "cac:TaxCategory", each.tax, why_untaxed(each.tax, invoice))


def _line(document: ET.Element, number: int, line: Line, invoice: Invoice) -> None:
    root = "CreditNote" if _credits(invoice) else "Invoice"
    element = _under(document, f"cac:{root}Line")
    _put(element, "cbc:ID", str(number))
    quantity = "cbc:CreditedQuantity" if _credits(invoice) else "cbc:InvoicedQuantity"
    _put(element, quantity, plain_decimal(line.quantity), unitCode=line.unit)
    _money(element, "cbc:LineExtensionAmount", line_amount(line, invoice.bill.currency), invoice)
    item = _under(element, "cac:Item")
    _put(item, "cbc:Name", line.what)
    _category(item, "cac:ClassifiedTaxCategory", line.tax)
    price = _under(element, "cac:Price")
    digits = digits_of(invoice.bill.currency)
    _put(price, "cbc:PriceAmount", plain_decimal(line.price, digits), currencyID=invoice.bill.currency)
    if line.per != 1:
        _put(price, "cbc:BaseQuantity", plain_decimal(line.per), unitCode=line.unit)


def _category(parent: ET.Element, tag: str, tax: Tax, reason: str = "") -> None:
    category = _under(parent, tag)
    _put(category, "cbc:ID", tax.category)
    if tax.category != "O":  # BR-O-05: no rate
        _put(category, "cbc:Percent", plain_decimal(tax.rate))
    _put(category, "cbc:TaxExemptionReason", reason)
    _put(_under(category, "cac:TaxScheme"), "cbc:ID", "VAT")


def _money(parent: ET.Element, tag: str, amount: Decimal, invoice: Invoice) -> None:
    # BR-DEC-09 to -23: never more than two digits, which `what_is_missing` has made sure of
    digits = min(digits_of(invoice.bill.currency), 2)
    _put(parent, tag, f"{amount:.{digits}f}", currencyID=invoice.bill.currency)


def _put(parent: ET.Element, tag: str, text: str, **attributes: str) -> None:
    """An element with text, left out where there is none: an empty one is no valid UBL."""
    shown = one_line(text)
    if shown:
        ET.SubElement(parent, tag, attributes).text = shown


def _under(parent: ET.Element, tag: str) -> ET.Element:
    return ET.SubElement(parent, tag)
