"""E-invoices before the official judges: OASIS's schemas, CEN's EN 16931 schematron."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from exports.bills import bills
from exports.invoices import BILL, FIRST, LATER, LID, OWNER, SHOP, TRADER, invoice, of_bill
from exports.official_rules import SCHEMATRON, judged
from hypothesis import given, settings
from hypothesis import strategies as st
from lxml import etree

from benchnotes.exports.bill import Bill, Line, discounts_over
from benchnotes.exports.countries import COUNTRIES, TAX_PREFIXES
from benchnotes.exports.e_invoice import e_invoice
from benchnotes.exports.invoice import DRAFT, Invoice, Issued, Party, Payment, what_is_missing
from benchnotes.exports.tax import Tax

PAID_LATER = Payment(days=14, terms="Within two weeks", account="GB33BUKB20201555555555")
SMALL = replace(SHOP, tax_number="", tax_registration="12/345")
DRAFTED = Issued(DRAFT, date(2026, 3, 2))
FULL, LOW = Tax("S", Decimal(20)), Tax("S", Decimal("5.5"))
SEVERAL = Bill(
    currency="GBP",
    lines=(
        LID,
        Line(what="flex", quantity=Decimal("0.5"), unit="MTR", price=Decimal("3.20"), tax=LOW),
        Line(what="Labour", quantity=Decimal("2.5"), unit="HUR", price=Decimal(38), tax=FULL),
        Line(what="Labour: paddle", quantity=Decimal(3), unit="HUR", price=Decimal(100), per=Decimal(3), tax=FULL),
        Line(what="Outside work: rebore", quantity=Decimal(1), price=Decimal(35), tax=Tax("E")),
        Line(what="Postage", quantity=Decimal(1), price=Decimal("6.40"), tax=Tax("Z")),
    ),
)
DISCOUNTED = replace(SEVERAL, discounts=tuple(discounts_over(SEVERAL.lines, [("Discount", Decimal("7.77"))], "GBP")))


def text_of(content: bytes, path: str) -> list[str]:
    """Texts of the elements at `path` under the root, whatever their namespace."""
    anywhere = "/".join(f"{{*}}{name}" for name in path.split("/"))
    return [each.text or "" for each in etree.fromstring(content).iterfind(anywhere)]


def untaxed(category: str) -> Bill:
    return Bill(currency="EUR", lines=(replace(LID, tax=Tax(category)),))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "whole",
    [
        invoice(),
        invoice(SEVERAL, exempt_because="Exempt by its kind", payment=PAID_LATER),
        invoice(DISCOUNTED, exempt_because="Exempt by its kind"),
        invoice(DISCOUNTED, exempt_because="Exempt by its kind", kind="credit_note", takes_back=FIRST),
        invoice(untaxed("E"), exempt_because="Small business", seller=SMALL),
        invoice(untaxed("AE"), buyer=TRADER),
        invoice(untaxed("O"), seller=replace(SHOP, tax_number="")),
        invoice(untaxed("O"), buyer=TRADER),
        invoice(untaxed("Z")),
        invoice(replace(BILL, currency="JPY")),
        invoice(Bill(currency="KWD", lines=(replace(LID, price=Decimal("1.250")),))),
    ],
)  # fmt: skip
def test_valid(whole: Invoice) -> None:
    assert what_is_missing(whole) == ()
    assert judged(e_invoice(whole, LATER)) == []


@settings(max_examples=150, deadline=None)
@given(whole=bills(("EUR", "GBP", "JPY")).flatmap(of_bill), issued=st.sampled_from([FIRST, DRAFTED]))
def test_any_bill_is_valid(whole: Invoice, issued: Issued) -> None:
    if any(line.tax.category == "O" for line in whole.bill.lines):
        whole = replace(whole, seller=replace(SHOP, tax_number=""))
    assert what_is_missing(whole) == ()
    assert judged(e_invoice(whole, issued)) == []


def test_the_judges_find_what_is_wrong() -> None:
    """Each change breaks one rule by name: judges that pass everything would be none."""
    good = e_invoice(invoice(), FIRST).decode()
    for change, rule in (
        (("9.00</cbc:LineExt", "9.01</cbc:LineExt"), "BR-CO-10"),
        (("10.80</cbc:TaxIncl", "10.81</cbc:TaxIncl"), "BR-CO-15"),
        (("<cbc:Percent>20", "<cbc:Percent>21"), "BR-S-0"),
        (("GB999000117", "QQ999000117"), "BR-CO-09"),
        (('unitCode="C62"', 'unitCode="PIECE"'), "BR-CL-23"),
        (("<cbc:ID>2026-0001</cbc:ID>", ""), "ID"),
    ):
        assert change[0] in good
        wrong = judged(good.replace(*change, 1).encode())
        assert any(rule in each for each in wrong), (rule, wrong)


def test_what_stands_on_it() -> None:
    content = e_invoice(invoice(SEVERAL, payment=PAID_LATER), FIRST)
    assert text_of(content, "ID") == ["2026-0001"]
    assert text_of(content, "IssueDate") + text_of(content, "DueDate") == ["2026-03-02", "2026-03-16"]
    assert text_of(content, "InvoiceLine/Item/Name") == [line.what for line in SEVERAL.lines]
    assert re.findall(r'InvoicedQuantity unitCode="(\w+)">([\d.]+)', content.decode()) == [
        ("C62", "2"), ("MTR", "0.5"), ("HUR", "2.5"), ("HUR", "3"), ("C62", "1"), ("C62", "1"),
    ]  # fmt: skip
    assert text_of(content, "AccountingSupplierParty/Party/PartyLegalEntity/RegistrationName") == [SHOP.name]
    assert text_of(content, "LegalMonetaryTotal/PayableAmount") == ["287.89"]
    assert text_of(content, "TaxTotal/TaxSubtotal/TaxAmount") == ["0.00", "0.09", "40.80", "0.00"]


def test_a_draft_says_that_it_is_one() -> None:
    content = e_invoice(invoice(), DRAFTED)
    assert text_of(content, "ID") == ["DRAFT"]
    assert text_of(content, "InvoiceTypeCode") == ["325"]  # UNTDID 1001: pro-forma invoice
    assert text_of(content, "Note")[0].startswith("Draft")


def test_a_credit_note_names_the_bill_it_takes_back() -> None:
    content = e_invoice(invoice(kind="credit_note", takes_back=FIRST), LATER)
    assert etree.QName(etree.fromstring(content)).localname == "CreditNote"
    assert text_of(content, "BillingReference/InvoiceDocumentReference/ID") == ["2026-0001"]


def test_text_of_others_stays_text() -> None:
    hostile = '</cbc:Name><x y="&lt;">]]>\x00\x1b[31m\u202e\n--> & café'
    content = e_invoice(
        invoice(Bill(currency="GBP", lines=(replace(LID, what=hostile),)), buyer=replace(OWNER, name=hostile)), FIRST
    )
    assert judged(content) == []
    (name,) = text_of(content, "InvoiceLine/Item/Name")
    assert name == '</cbc:Name><x y="&lt;">]]> [31m --> & café'
    assert text_of(content, "AccountingCustomerParty/Party/PartyLegalEntity/RegistrationName") == [name]


@pytest.mark.parametrize(
    ("whole", "said"),
    [
        (invoice(seller=Party()), ["no name", "no country", "no tax number"]),
        (invoice(buyer=Party()), ["owner has no name", "owner has no country"]),
        (invoice(seller=replace(SHOP, tax_number="999000117")), ["must begin with its country"]),
        (invoice(seller=replace(SHOP, tax_number="", company_number="", tax_registration="1")), ["no company number"]),
        (invoice(untaxed("O"), seller=replace(SHOP, company_number="")), ["no company number"]),
        (invoice(untaxed("E")), ["Why it is exempt"]),
        (invoice(untaxed("AE")), ["the owner needs a tax number"]),
        (invoice(Bill(currency="GBP", lines=(LID, replace(LID, tax=Tax("O"))))), ["a bill of its own"]),
        (invoice(Bill(currency="KWD", lines=(replace(LID, price=Decimal("1.1115")),))), ["two digits after the point"]),
    ],
)
def test_what_is_missing_is_named(whole: Invoice, said: list[str]) -> None:
    missing = what_is_missing(whole)
    assert len(missing) == len(said)
    assert all(words in each for words, each in zip(said, missing, strict=True))


def test_countries_are_those_of_the_rules() -> None:
    """CEN's lists also hold 1A, a code for Kosovo, which ISO 3166-1 has not, and XI for Northern Ireland."""
    lists = {frozenset(each.split()) for each in re.findall(r"contains\( ?' (1A AD [^']*)'", SCHEMATRON.read_text())}
    assert lists == {COUNTRIES | {"1A", "XI"}, TAX_PREFIXES | {"1A"}}
