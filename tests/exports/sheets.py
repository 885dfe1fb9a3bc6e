"""A whole job of an invented workshop, for the sheet; and one whose every text is hostile."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from decimal import Decimal

from exports.invoices import OWNER, SHOP

from benchnotes.exports.bill import Bill
from benchnotes.exports.bill_of_job import Prices, Unsettled, bill_of_job
from benchnotes.exports.invoice import Invoice
from benchnotes.exports.sheet import Sheet
from benchnotes.exports.sheet_tables import About, job_sheet
from benchnotes.exports.tax import Tax, TaxRules
from benchnotes.record.entries import (
    Advice,
    Charge,
    Fault,
    Item,
    JobRecord,
    Machine,
    Part,
    Reading,
    Trial,
    Work,
)
from benchnotes.record.heard import Recording, Unheard
from benchnotes.record.money import Money

HOSTILE = '#panic() *bold* </td><script>alert(1)</script> $x$ "\\\x1b[31m` @ref <lab> // /* [#] & = _ \u202e\r\n- x'
PRICES = Prices(tax=TaxRules(usual=Tax("S", Decimal(20))), labour_an_hour=Money(Decimal(38), "GBP"))


def pounds(amount: str) -> Money:
    return Money(Decimal(amount), "GBP")


RECORD = JobRecord(
    currency="GBP",
    machine=Machine(kind="butter churn", make="Corvane", model="No. 6", serial="4471", power="manual"),
    faults=(
        Fault(part="lid gasket", kind="cracked", status="verified"),
        Fault(part="left paddle bearing", kind="seized", status="fixed", check=True),
        Fault(part="stave", kind="other", status="left"),
    ),
    parts=(
        Part(name="lid gasket", unit_price=pounds("4.50"), basis="exact", state="fitted", qty=Decimal(2)),
        Part(name="hoop", state="not_needed"),
    ),
    charges=(
        Charge(kind="labour", what="labour", hours=Decimal("2.5")),
        Charge(kind="outside_work", what="bearing bored", amount=pounds("35"), basis="exact"),
        Charge(kind="discount", what="discount", amount=pounds("5"), basis="exact"),
    ),
    work=(
        Work(action="replace", target="lid gasket"),
        Work(action="machine", target="bearing seat", by="outside"),
        Work(action="paint", target="stand", status="planned"),
    ),
    readings=(
        Reading(what="end play", value=Decimal("0.8"), unit="mm", when="before"),
        Reading(what="end play", value=Decimal("0.10"), unit="mm", when="after", about=True),
        Reading(what="shaft", value=Decimal("12"), unit="mm", check=True),
    ),
    tests=(Trial(what="leak", result="pass", of="lid"), Trial(what="function", result="unclear")),
    advice=(Advice(text="oil the bearings every month"),),
)
ITEMS = (Item(kind="not_retested", about="left paddle bearing", why="It was put right, and not tried since."),)
ABOUT = About(
    job=7,
    name="Corvane churn",
    workshop=SHOP,
    owner=OWNER,
    recordings=(Recording(1, "a.flac", "sound", 60.0, "0" * 64, datetime(2026, 3, 2, 9, tzinfo=UTC), "container"),),
    unheard=(Unheard(1, 12.0, 14.0),),
)


def billed(record: JobRecord) -> Invoice | Unsettled:
    bill = bill_of_job(record, (), PRICES)
    return Invoice(bill=bill, seller=SHOP, buyer=OWNER) if isinstance(bill, Bill) else bill


def whole() -> Sheet:
    return job_sheet(RECORD, ITEMS, ABOUT, billed(RECORD))


def hostile() -> Sheet:
    """Every name and saying is an attack on whatever sets it."""
    record = replace(
        RECORD,
        machine=Machine(kind=HOSTILE, make=HOSTILE, serial=HOSTILE),
        faults=(Fault(part=HOSTILE, kind="other"),),
        parts=(Part(name=HOSTILE, unit_price=pounds("1"), state="fitted"),),
        advice=(Advice(text=HOSTILE),),
    )
    owner = replace(OWNER, name=HOSTILE, street=HOSTILE)
    return job_sheet(record, ITEMS, replace(ABOUT, name=HOSTILE, owner=owner), billed(record))
