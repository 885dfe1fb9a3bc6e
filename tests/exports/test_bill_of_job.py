"""From a record to a bill: what is fitted and charged is billed, what is open is named."""

from __future__ import annotations

from decimal import Decimal

import pytest
from exports.records import ITEMS, records
from hypothesis import given, settings

from benchnotes.exports.bill import Bill, totals
from benchnotes.exports.bill_of_job import Prices, Unsettled, bill_of_job
from benchnotes.exports.tax import Tax, TaxRules
from benchnotes.record.entries import Charge, Item, JobRecord, Part
from benchnotes.record.money import Money

FULL, LOW = Tax("S", Decimal(20)), Tax("S", Decimal(5))
PRICES = Prices(
    tax=TaxRules(usual=FULL, apart={"postage": LOW}),
    labour_an_hour=Money(Decimal(38), "GBP"),
    by_the_metre=("flex",),
)


def pounds(amount: str) -> Money:
    return Money(Decimal(amount), "GBP")


def part(name: str, price: str | None = "4.50", state: str = "fitted", **fields: object) -> Part:
    return Part(name=name, unit_price=pounds(price) if price else None, state=state, **fields)  # type: ignore[arg-type]


def billed(*entries: Part | Charge, prices: Prices = PRICES, items: tuple[Item, ...] = ()) -> Bill | Unsettled:
    record = JobRecord(
        currency="GBP",
        parts=tuple(each for each in entries if isinstance(each, Part)),
        charges=tuple(each for each in entries if isinstance(each, Charge)),
    )
    return bill_of_job(record, items, prices)


def test_a_whole_bill() -> None:
    bill = billed(
        part("lid gasket", qty=Decimal(2)),
        part("twisted flex", "3.20", qty=Decimal("0.5")),
        part("hoop", None, state="not_needed"),
        Charge(kind="labour", what="labour", hours=Decimal("2.5")),
        Charge(kind="labour", what="paddle", hours=Decimal(3), amount=pounds("100"), check=True),
        Charge(kind="outside_work", what="thread insert", amount=pounds("35"), basis="exact"),
        Charge(kind="postage", what="postage", amount=pounds("6.40")),
        Charge(kind="discount", what="discount", amount=pounds("-5")),
    )
    assert isinstance(bill, Bill)
    assert [(each.what, each.quantity, each.unit, each.price, each.per, each.tax) for each in bill.lines] == [
        ("lid gasket", 2, "C62", Decimal("4.50"), 1, FULL),
        ("twisted flex", Decimal("0.5"), "MTR", Decimal("3.20"), 1, FULL),
        ("Labour", Decimal("2.5"), "HUR", 38, 1, FULL),
        ("Labour: paddle", 3, "HUR", 100, 3, FULL),
        ("Outside work: thread insert", 1, "C62", 35, 1, FULL),
        ("Postage", 1, "C62", Decimal("6.40"), 1, LOW),
    ]
    assert [each.what for each in bill.lines if each.check] == ["Labour: paddle"]
    assert sum(each.amount for each in bill.discounts) == 5
    assert totals(bill).without_tax == Decimal("9.00") + Decimal("1.60") + 95 + 100 + 35 + Decimal("6.40") - 5


@pytest.mark.parametrize(
    ("entry", "said"),
    [
        (part("belt", state="ordered"), "belt is not fitted."),
        (part("belt", None), "belt has no price. Say or type it; nothing if it is free."),
        (part("belt", basis="about"), "belt is only about 4.50 GBP."),
        (part("belt", qty=Decimal(0)), "belt: 0 of them cannot be billed."),
        (part("belt", "-1"), "belt is priced below nothing (-1 GBP)."),
        (Part(name="belt", state="fitted", unit_price=Money(Decimal(1), "EUR")), "belt is priced in EUR"),
        (Charge(kind="outside_work", what="rebore"), "Outside work: rebore has no price."),
        (Charge(kind="discount", what="discount", amount=pounds("5"), basis="about"), "Discount is only about 5 GBP."),
        (Charge(kind="discount", what="discount", amount=pounds("50")), "More is taken off than is asked."),
    ],
)
def test_what_is_open_is_named(entry: Part | Charge, said: str) -> None:
    refused = billed(part("lid"), entry)
    assert isinstance(refused, Unsettled)
    assert len(refused.because) == 1
    assert refused.because[0].startswith(said)


def test_every_open_point_is_named_at_once() -> None:
    refused = billed(part("belt", None), part("lid", state="needed"), prices=Prices())
    assert isinstance(refused, Unsettled)
    assert len(refused.because) == 3
    assert "[tax]" in refused.because[2]


def test_hours_need_a_rate_in_the_currency_of_the_job() -> None:
    for rate in (None, Money(Decimal(38), "EUR")):
        refused = billed(
            Charge(kind="labour", what="labour", hours=Decimal(2)), prices=Prices(tax=PRICES.tax, labour_an_hour=rate)
        )
        assert isinstance(refused, Unsettled)
        assert "an hour has no price in GBP" in refused.because[0]


def test_two_prices_stand_until_a_person_says_which() -> None:
    belt = part("belt", prices=(pounds("4"), pounds("4.50")))
    differs = Item(kind="price_differs", about="belt", why="priced twice")
    assert isinstance(billed(belt, items=(differs,)), Unsettled)
    assert isinstance(billed(belt), Bill)


def test_nothing_is_no_bill() -> None:
    assert billed() == Unsettled(("There is nothing to bill: no part was fitted, and no work was charged.",))


@settings(max_examples=200, deadline=None)
@given(record=records(), items=ITEMS)
def test_any_record_is_billed_or_says_why_not(record: JobRecord, items: tuple[Item, ...]) -> None:
    result = bill_of_job(record, items, PRICES)
    if isinstance(result, Unsettled):
        assert result.because
        assert all(each.endswith((".", '"20 %".')) and each.isprintable() for each in result.because)
    else:
        assert totals(result).with_tax >= 0
        assert not [each for each in record.parts if each.state == "fitted" and each.basis == "about"]
