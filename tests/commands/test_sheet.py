"""The record on paper width: every list of it, every entry, no line over 80 columns."""

from __future__ import annotations

from decimal import Decimal

import click
import pytest
from exports.records import records
from hypothesis import given, settings
from hypothesis import strategies as st

from benchnotes.commands.left import item_lines
from benchnotes.commands.sheet import WIDTH, evidence_lines, headed, record_lines, wrapped
from benchnotes.exports import wording
from benchnotes.exports.wording import item_title
from benchnotes.record import entries, terms
from benchnotes.record.heard import Evidence
from benchnotes.record.money import Money


@settings(max_examples=80, deadline=None)
@given(record=records())
def test_no_line_is_too_long(record: entries.JobRecord) -> None:
    lines = list(record_lines(record))
    assert max(map(len, lines)) <= WIDTH


@given(st.text(min_size=1), st.integers(0, 10))
def test_wrapping_loses_no_word(text: str, indent: int) -> None:
    assert "".join("".join(wrapped(text, indent)).split()) == "".join(text.split())


def test_a_record_as_the_workshop_writes_it() -> None:
    said = Evidence(2, 65.0, 70.0, "the gasket has split, that's four fifty")
    gasket = entries.Part(
        name="lid gasket", qty=Decimal(2), unit_price=Money(Decimal("4.5"), "GBP"), basis="about", state="ordered",
        prices=(Money(Decimal(4), "GBP"), Money(Decimal("4.5"), "GBP")), evidence=(said,),
    )  # fmt: skip
    record = entries.JobRecord(
        currency="GBP",
        machine=entries.Machine(kind="churn", make="Corvane", model="No. 6", serial="4471", power="manual"),
        faults=(entries.Fault(part="lid gasket", kind="cracked", evidence=(said,), check=True),),
        parts=(gasket,),
        charges=(entries.Charge(kind="labour", what="labour", hours=Decimal("1.5")),),
        work=(entries.Work(action="send_out", target="drum", status="planned", by="outside"),),
        readings=(entries.Reading(what="winding", value=Decimal("2.20"), unit="kohm", when="before", about=True),),
        tests=(entries.Trial(what="leak", result="fail", of="lid"),),
        advice=(entries.Advice(text="keep the lid dry"),),
        left_apart=(entries.LeftApart(part="side cover"),),
        unsure=(entries.Unsure(about="which bearing it takes"),),
        notices=(
            entries.Notice(kind="thread", about="M7 thread", why="a thread of that size is rare"),
            entries.Notice(kind="recording", about="recording 1", why="told below the record"),
            entries.Notice(kind="check_by_ear", about="lid gasket", why="told beside it"),
        ),
    )
    assert "\n".join(record_lines(record)) == SHEET


SHEET = """
Machine
  churn, Corvane No. 6, serial 4471, worked by hand

Faults
  lid gasket: cracked; not put right  [check by ear]
      visit 2, 1:05: “the gasket has split, that's four fifty”

Parts
  2 × lid gasket: on order, about GBP 4.50 each (said: GBP 4.00, GBP 4.50)
      visit 2, 1:05: “the gasket has split, that's four fifty”

Charges
  labour, 1.5 h

Work
  send out drum (outside): still to do

Readings
  winding: about 2.2 kΩ, as it came in

Tests
  leak test of lid: failed

Told to the owner
  keep the lid dry

Taken off and not put back
  side cover

Unanswered
  which bearing it takes

Worth a look
  M7 thread: a thread of that size is rare"""


def test_a_long_name_of_a_job_stays_on_the_paper() -> None:
    head = headed("Job 2, the big dough mixer of the bakery by the bridge, second time in: 2 things still to do")
    assert [len(line) <= WIDTH for line in click.unstyle(head).splitlines()] == [True, True]


def test_what_is_left_stands_under_its_number() -> None:
    said = Evidence(1, 5.0, 9.0, "plug it in and see, another day")
    left = entries.Item(
        kind="safety_check", about="electrical", why="No passed electrical test was heard.",
        close_by="Make the test and say how it went.", evidence=(said,),
    )  # fmt: skip
    assert list(item_lines(10, left)) == [
        "10. electrical test (safety)",
        "    No passed electrical test was heard.",
        "    Closed by: Make the test and say how it went.",
        "    visit 1, 0:05: “plug it in and see, another day”",
    ]
    assert item_title(entries.Item(kind="test_failed", about="other", why="It failed.")) == "test (not passed)"
    assert item_title(entries.Item(kind="left_apart", about="lid", why="Never put back.")) == "lid (left off)"


def test_much_evidence_is_named_and_not_all_quoted() -> None:
    said = tuple(Evidence(1, 60.0 * minute, 60.0 * minute + 4, "it leaks") for minute in range(5))
    lines = list(evidence_lines(entries.Fault(part="lid", kind="leaking", evidence=said)))
    assert [line.strip() for line in lines] == [
        "visit 1, 0:00: “it leaks”", "visit 1, 1:00: “it leaks”", "visit 1, 2:00: “it leaks”",
        "also visit 1, 3:00, visit 1, 4:00",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("words", "known"),
    [
        (wording.FAULT_STATUS, terms.FAULT_STATUSES),
        (wording.PART_STATE, terms.PART_STATES),
        (wording.STANDING, terms.STANDINGS),
        (wording.RESULT, terms.TRIAL_RESULTS),
        (wording.POWER, terms.POWERS),
        (wording.WHEN, terms.WHENS),
        (wording.ITEM, terms.ITEM_KINDS),
    ],
)
def test_every_term_has_its_words(words: dict[str, str], known: tuple[str, ...]) -> None:
    assert sorted(words) == sorted(known)


@pytest.mark.parametrize(
    ("words", "known"),
    [
        (wording.FAULT, terms.FAULT_KINDS),
        (wording.ACTION, terms.ACTIONS),
        (wording.CHARGE, terms.CHARGE_KINDS),
        (wording.UNIT, terms.UNITS),
    ],
)
def test_what_is_no_plain_word_has_one(words: dict[str, str], known: tuple[str, ...]) -> None:
    assert set(words) <= set(known)
    assert not [term for term in known if "_" in words.get(term, term)]


@pytest.mark.parametrize(
    ("seconds", "shown"), [(0.0, "0:00"), (59.99, "0:59"), (65.2, "1:05"), (3600.0, "1:00:00"), (10_921.0, "3:02:01")]
)
def test_moments_as_people_write_them(seconds: float, shown: str) -> None:
    assert wording.clock(seconds) == shown
