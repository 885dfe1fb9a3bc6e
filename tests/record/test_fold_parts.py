"""Parts, their prices, and money that is no part's price."""

from __future__ import annotations

from decimal import Decimal

import pytest
from record.telling import charge, correction, drop, fit, job, need, order, price, work

from benchnotes.record.entries import JobRecord, Part
from benchnotes.record.statements import Statement


def the_part(record: JobRecord) -> Part:
    (part,) = record.parts
    return part


def amounts(part: Part) -> list[str]:
    return [str(money.amount) for money in part.prices]


@pytest.mark.parametrize(
    ("said", "state"),
    [
        ((need("belt"),), "needed"),
        ((need("belt"), order("belt")), "ordered"),
        ((need("belt"), order("belt"), fit("belt")), "fitted"),
        ((need("belt"), drop("belt")), "not_needed"),
    ],
)
def test_the_last_word_decides_a_part_s_state(said: tuple[Statement, ...], state: str) -> None:
    """Needs a belt. Belt's on order. Belt's in."""
    assert the_part(job(*said)).state == state


def test_a_set_is_counted_once_and_the_last_number_stands() -> None:
    """Needs a bushing this side. And one that side. So I've ordered the two."""
    assert the_part(job(need("bushing"), need("bushing"), order("bushing", 2))).qty == 2


def test_no_number_said_is_one() -> None:
    """Coupling's in."""
    assert the_part(job(fit("coupling", None))).qty == 1


def test_the_last_price_stands_and_both_are_kept() -> None:
    """Element's eighteen fifty. ... Slip says nineteen fifty."""
    part = the_part(job(order("element"), price("element", "18.50"), price("element", "19.50")))
    assert part.unit_price is not None and str(part.unit_price.amount) == "19.50"
    assert amounts(part) == ["18.50", "19.50"]


def test_an_estimate_and_the_price_near_it_are_one() -> None:
    """It'll be about twenty. ... Twenty-two, it was."""
    part = the_part(job(order("trough"), price("trough", "20", about=True), price("trough", "22")))
    assert part.unit_price is not None and part.unit_price.amount == 22
    assert (part.basis, amounts(part)) == ("exact", [])


def test_an_estimate_far_off_is_a_price_of_its_own() -> None:
    """About twenty. ... Thirty-four, the robber."""
    part = the_part(job(order("trough"), price("trough", "20", about=True), price("trough", "34")))
    assert amounts(part) == ["20", "34"]


def test_a_price_taken_back_in_the_same_breath_is_none() -> None:
    """Six quid, no, sorry, six seventy-five."""
    part = the_part(job(fit("seal"), (price("seal", "6"), correction(), price("seal", "6.75"))))
    assert part.unit_price is not None and str(part.unit_price.amount) == "6.75"
    assert amounts(part) == []


def test_a_price_corrected_later_is_two_prices() -> None:
    """Six quid. No, I tell a lie, the other hinge. ... The slip says seven."""
    part = the_part(job(fit("seal"), price("seal", "6"), correction(), fit("seal"), fit("seal"), price("seal", "7")))
    assert amounts(part) == ["6", "7"]


def test_a_priced_thing_that_was_replaced_is_a_part() -> None:
    """Put the other spindle in. ... Thirty, that spindle."""
    part = the_part(job(work("replace", "spindle"), price("spindle", "30")))
    assert (part.state, part.unit_price is not None) == ("fitted", True)


def test_a_price_of_nothing_known_is_pointed_out_and_makes_no_part() -> None:
    """Twelve quid, that."""
    record = job(price(None, "12"), price("gauge", "30"))
    assert record.parts == ()
    assert [(n.kind, n.about) for n in record.notices] == [("unplaced", "12 GBP"), ("unplaced", "gauge")]
    assert "30 GBP for gauge" in record.notices[1].why


def test_prices_in_two_currencies_are_two_prices() -> None:
    """Twenty euro from the maker. ... Twenty pounds here."""
    part = the_part(job(order("lens"), price("lens", "20", currency="EUR"), price("lens", "20")))
    assert [money.currency for money in part.prices] == ["EUR", "GBP"]


def test_hours_and_the_money_for_them_are_one_charge() -> None:
    """Three hours on this. ... Call it ninety for the labour."""
    (labour,) = job(charge("labour", hours="3"), charge("labour", "90")).charges
    assert labour.amount is not None and labour.amount.amount == 90
    assert (labour.what, labour.hours) == ("labour", Decimal(3))


def test_outside_work_on_two_things_is_two_charges() -> None:
    """Thirty for the insert. Seventy for the retinning."""
    assert len(job(charge("outside_work", "30", of="insert"), charge("outside_work", "70", of="drum")).charges) == 2
