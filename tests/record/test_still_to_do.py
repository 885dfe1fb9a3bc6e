"""What keeps the machine here: one rule, one test. The table is that of the narrations' guide."""

from __future__ import annotations

import pytest
from record.telling import (
    charge,
    clear,
    doubt,
    drop,
    fault,
    fit,
    item,
    job,
    leave,
    left,
    machine,
    need,
    off,
    order,
    price,
    trial,
    work,
)

from benchnotes.record.statements import Statement
from benchnotes.record.still_to_do.rules import still_to_do
from benchnotes.record.terms import Power


def test_nothing_said_leaves_nothing_to_do() -> None:
    assert left(job()) == []


def test_a_fault_with_nothing_done() -> None:
    """Gong's loose on its block."""
    assert left(job(fault("gong", "loose"))) == [("fault_open", "gong")]


def test_a_fault_put_right_and_not_tried() -> None:
    """Handle's split. Epoxied it."""
    assert left(job(fault("handle", "cracked"), work("repair", "handle"))) == [("not_retested", "handle")]


def test_a_fault_left_or_shown_to_be_right_leaves_nothing() -> None:
    """Wee dent, that's to stay. Sole was rusty. Rubbed down. Gone."""
    record = job(
        fault("body", "deformed"), leave("body"), fault("sole", "corroded"), work("clean", "sole"), clear("sole")
    )
    assert left(record) == []


def test_only_the_last_trial_of_a_kind_counts() -> None:
    """Leak test: weeping. Nipped up. Leak test: dry. ... Does it run? Couldn't say."""
    record = job(
        trial("leak", "fail", "gland"), work("adjust", "gland"), trial("leak", "pass", "gland"),
        trial("function", "unclear", "motor"),
    )  # fmt: skip
    assert left(record) == [("test_failed", "function")]
    assert "(of motor) was unclear" in item(record, "test_failed").why


@pytest.mark.parametrize("said", [need("belt"), order("belt")])
def test_a_part_not_in_yet(said: Statement) -> None:
    """Belt's on order, nine pound."""
    assert left(job(said, price("belt", "9"))) == [("part_to_fit", "belt")]


def test_a_part_with_no_price() -> None:
    """New belt's in, out of the drawer."""
    assert left(job(fit("belt"))) == [("price_missing", "belt")]


def test_outside_work_with_no_price() -> None:
    """Retinning's at Rex's. He's not said what he wants."""
    assert left(job(charge("outside_work", of="drum"))) == [("price_missing", "drum")]


def test_a_part_with_two_prices() -> None:
    """Belt's in. Nine, the belt. ... Slip says nine fifty."""
    record = job(fit("belt"), price("belt", "9"), price("belt", "9.50"))
    assert left(record) == [("price_differs", "belt")]
    assert "GBP 9, then GBP 9.50" in item(record, "price_differs").why


def test_a_part_that_was_dropped_asks_for_nothing() -> None:
    """Needs a belt. Nine or nine fifty. ... Won't need it after all."""
    assert left(job(need("belt"), price("belt", "9"), price("belt", "9.50"), drop("belt"))) == []


def test_work_planned_and_never_done() -> None:
    """That tube wants a clean."""
    record = job(work("clean", "tube", "planned"))
    assert left(record) == [("work_to_do", "tube")]
    assert item(record, "work_to_do").why == "clean tube: planned, and not said to be done."
    other = item(job(work("other", "tube", "planned")), "work_to_do")
    assert other.why == "work on tube: planned, and not said to be done.", "no fixed word of ours is read out"


def test_taken_off_and_doubted() -> None:
    """Cover's off. No idea if that valve holds."""
    assert left(job(off("cover"), doubt("valve"))) == [("left_apart", "cover"), ("unsure", "valve")]


@pytest.mark.parametrize(
    ("power", "holds_pressure", "about"),
    [
        ("mains", False, ["electrical"]),
        ("gas", True, ["pressure", "gas"]),
        ("manual", True, ["pressure"]),
        (None, None, []),
    ],
)
def test_the_check_that_the_kind_of_machine_needs(
    power: Power | None, holds_pressure: bool | None, about: list[str]
) -> None:
    """A kettle, a gas ring, a garden sprayer, and something nobody named."""
    record = job(machine("thing", power=power, holds_pressure=holds_pressure))
    assert left(record) == [("safety_check", kind) for kind in about]


def test_checks_that_passed_last_are_made() -> None:
    """Gas urn off the mains: insulation passes, holds its pressure, no bubbles on the gas."""
    urn = (machine("urn", power="gas", holds_pressure=True), machine("plugs in", "power", power="mains"))
    assert left(job(*urn, trial("electrical"), trial("leak"))) == []
    assert left(job(*urn, trial("electrical"), fit("lead"), trial("electrical", "fail"), trial("pressure"))) == [
        ("test_failed", "electrical"), ("price_missing", "lead"), ("safety_check", "electrical"),
    ]  # fmt: skip


def test_every_item_has_its_reason_its_evidence_and_a_way_to_close_it() -> None:
    """All that can be left, left."""
    record = job(
        machine("urn", power="mains", holds_pressure=True), fault("tap", "leaking"), fault("lid", "cracked"),
        work("repair", "lid"), trial("leak", "fail"), order("tap"), fit("lid"), price("lid", "3"), price("lid", "4"),
        work("descale", "element", "planned"), off("base"), doubt("fuse"),
    )  # fmt: skip
    items = still_to_do(record)
    assert {i.kind for i in items} == {
        "fault_open", "not_retested", "test_failed", "part_to_fit", "price_missing", "price_differs", "work_to_do",
        "left_apart", "unsure", "safety_check",
    }  # fmt: skip
    assert all(i.why.endswith(".") and i.close_by and i.evidence for i in items)
