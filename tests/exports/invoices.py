"""Invoices of an invented workshop, whole and Hypothesis-made."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from hypothesis import strategies as st

from benchnotes.exports.bill import Bill, Line
from benchnotes.exports.invoice import Invoice, Issued, Party, Payment
from benchnotes.exports.tax import Tax

SHOP = Party(
    name="Tarn & Daughter <Repairs>",
    street="3 Weir Lane",
    town="Oldmere",
    postcode="OM1 2AB",
    country="GB",
    tax_number="GB999000117",
    company_number="0012345",
    phone="01632 960111",
    email="bench@tarn.example",
)
OWNER = Party(name="Mrs Quillby", street="Mill End", town="Oldmere", country="GB")
TRADER = Party(name='Quillby "Dairy" Ltd', country="DE", tax_number="DE123456789", company_number="HRB 1")
FIRST = Issued("2026-0001", date(2026, 3, 2))
LATER = Issued("2026-0002", date(2026, 3, 9))
LID = Line(what="lid gasket", quantity=Decimal(2), price=Decimal("4.50"), tax=Tax("S", Decimal(20)))
BILL = Bill(currency="GBP", lines=(LID,))


def invoice(bill: Bill = BILL, **fields: object) -> Invoice:
    whole: dict[str, object] = {"seller": SHOP, "buyer": OWNER, "about": "Job 1, Corvane churn", **fields}
    return Invoice(bill=bill, **whole)  # type: ignore[arg-type]


PAYMENTS = st.builds(
    Payment,
    days=st.integers(0, 90),
    terms=st.sampled_from(["", "On collection"]),
    account=st.sampled_from(["", "GB33BUKB20201555555555"]),
)


def of_bill(bill: Bill) -> st.SearchStrategy[Invoice]:
    return st.builds(
        Invoice,
        bill=st.just(bill),
        seller=st.just(SHOP),
        buyer=st.just(TRADER),
        payment=PAYMENTS,
        exempt_because=st.just("Exempt by its kind"),
        about=st.text(st.characters(exclude_categories=("Cs",)), max_size=20),
        kind=st.sampled_from(["bill", "credit_note"]),
        takes_back=st.none() | st.just(FIRST),
    )
