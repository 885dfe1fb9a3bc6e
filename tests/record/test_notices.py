"""Trade checks, beside the published tables that they rest on."""

from __future__ import annotations

import csv
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest
from record.telling import fit, job, machine, need, order, price, reading, trial

from benchnotes.record.entries import JobRecord
from benchnotes.record.notices.resistors import preferred
from benchnotes.record.notices.rules import notices
from benchnotes.record.notices.thread_table import COARSE, FINE, pitches, tapping_drill

TABLE = Path(__file__).resolve().parents[1] / "published" / "threads" / "iso_metric_threads.csv"


def kinds(record: JobRecord) -> list[str]:
    return [notice.kind for notice in record.notices]


def test_the_thread_table_is_the_published_one() -> None:
    """ISO 261 and ISO 2306, row for row; the source of the rows is named beside the file."""
    with TABLE.open(encoding="utf-8", newline="") as file:
        rows = [
            (r["series"], *(Decimal(r[k]) for k in ("nominal_mm", "pitch_mm", "tap_drill_mm")))
            for r in csv.DictReader(file)
        ]
    assert len(rows) == len(COARSE) + sum(map(len, FINE.values()))
    for series, diameter, pitch, drill in rows:
        assert isinstance(diameter, Decimal) and isinstance(pitch, Decimal)
        assert pitch in pitches(diameter)
        assert tapping_drill(diameter, pitch) == drill
        assert (COARSE.get(diameter, (None,))[0] == pitch) == (series == "coarse")


def test_a_thread_of_no_standard() -> None:
    """It's M8 by one and a half."""
    record = job((reading("stud thread", "8", "mm", words="M8"), reading("stud thread pitch", "1.5", "mm")))
    assert kinds(record) == ["thread_unknown"]
    assert "M8 x 1.5 is no thread of ISO 261, which has 1.25, 0.75, 1 mm" in record.notices[0].why


@pytest.mark.parametrize("pitch", ["1.25", "1", "0.75", "1.0"])
def test_a_thread_that_there_is(pitch: str) -> None:
    """It's M8 by one and a quarter."""
    assert kinds(job((reading("stud thread", "8", "mm", words="M8"), reading("stud pitch", pitch, "mm")))) == []


def test_a_size_that_is_no_thread_has_no_pitch() -> None:
    """Shaft's eight mil. Chain's half-inch pitch, twelve point seven."""
    assert kinds(job((reading("shaft", "8", "mm", words="eight mil"), reading("chain pitch", "12.7", "mm")))) == []


def test_a_tapping_drill_too_big() -> None:
    """Drilled it seven point seven, tapped it M8."""
    record = job((reading("tapping drill", "7.7", "mm"), reading("hole thread", "8", "mm", words="tapped it M8")))
    assert kinds(record) == ["tapping_drill"]
    assert "7.7 mm drill does not suit an M8 thread" in record.notices[0].why


@pytest.mark.parametrize("drill", ["6.7", "6.8", "7", "7.25"])
def test_a_tapping_drill_for_some_pitch_of_that_thread(drill: str) -> None:
    """Drilled it six point eight, tapped it M8."""
    assert kinds(job((reading("drill", drill, "mm"), reading("thread", "8", "mm", words="M8")))) == []


def test_with_the_pitch_told_only_its_own_drill_will_do() -> None:
    """Drilled it seven and a quarter for M8 by one and a quarter."""
    told = (
        reading("drill", "7.25", "mm"), reading("thread", "8", "mm", words="M8"), reading("thread pitch", "1.25", "mm"),
    )  # fmt: skip
    assert kinds(job(told)) == ["tapping_drill"]


def test_a_drill_for_a_thread_insert_is_another_matter() -> None:
    """Drilled it eight point three for the M8 helicoil."""
    told = (reading("drill", "8.3", "mm", words="8.3 for the helicoil"), reading("thread", "8", "mm", words="M8"))
    assert kinds(job(told)) == []


def test_a_drill_told_long_after_is_of_something_else() -> None:
    """M8, that. ... ... Drill's seven point seven."""
    lines = [reading("thread", "8", "mm", words="M8"), *[trial("function")] * 5, reading("drill", "7.7", "mm")]
    assert kinds(job(*lines)) == []


def test_insulation_under_the_usual_limit() -> None:
    """Kettle. Megger: nought point two of a meg."""
    record = job(machine("kettle", power="mains"), reading("insulation", "0.2", "Mohm", "before"))
    assert kinds(record) == ["insulation_low"]
    assert "Local rules decide" in record.notices[0].why


def test_insulation_that_came_good_is_not_pointed_out() -> None:
    """Nought point two. Dried it out. Two hundred meg."""
    before, after = reading("insulation", "200", "kohm", "before"), reading("insulation", "200", "Mohm", "after")
    assert kinds(job(machine("kettle", power="mains"), before, after)) == []
    assert kinds(job(machine("lamp", power="battery"), before)) == []


@pytest.mark.parametrize("name", ["4k9 resistor", "48 ohm resistor", "resistor 1.23k"])
def test_a_resistor_that_nobody_makes(name: str) -> None:
    """Needs a four k nine resistor."""
    expected = [] if name == "resistor 1.23k" else ["resistor_value"]  # 1.23 is in E192
    assert kinds(job(need(name), price(name, "0.10"))) == expected


def test_the_neighbours_of_such_a_value_are_named() -> None:
    (notice,) = job(order("4k9 resistor")).notices
    assert "4.7 and 5.1" in notice.why


def test_values_of_the_series() -> None:
    """IEC 60063, figures of E12 and E96 from memory; 920 is the one that the formula misses."""
    e12 = ["1", "1.2", "1.5", "1.8", "2.2", "2.7", "3.3", "3.9", "4.7", "5.6", "6.8", "8.2"]
    e96 = ["1.02", "1.33", "2.43", "3.32", "4.02", "4.99", "7.15", "9.76"]
    assert all(preferred(Decimal(value)) for value in [*e12, *e96, "9.20", "470", "0.22", "910000"])
    assert not any(preferred(Decimal(value)) for value in ["4.9", "4.8", "9.19", "0.55", "1234"])


@pytest.mark.parametrize("name", ["resistor", "wire wound resistor", "470 uF capacitor", "resistor board 2"])
def test_a_part_that_tells_no_resistance(name: str) -> None:
    assert kinds(job(fit(name))) == []


def test_a_number_heard_unsurely_is_to_be_listened_to() -> None:
    """Nine fifteen, or was it nine fifty?"""
    record = job(fit("belt"), replace(price("belt", "9.50"), check=True))
    assert record.parts[0].check
    assert [(n.kind, n.about) for n in record.notices] == [("check_by_ear", "belt")]


def test_the_fold_has_pointed_everything_out_already() -> None:
    record = job(machine("kettle", power="mains"), reading("insulation", "0.2", "Mohm"))
    assert record.notices == notices(record)


def test_a_price_in_another_currency_is_pointed_out() -> None:
    """ "Four pounds" in a job that counts in euros: nothing converts it, so somebody has to look."""
    record = job(need("lid spring"), price("lid spring", "4.00"), currency="EUR")
    (notice,) = record.notices
    assert (notice.kind, notice.about) == ("other_currency", "lid spring")
    assert "said in GBP" in notice.why and "counts in EUR" in notice.why
    assert notice.evidence
    assert job(need("lid spring"), price("lid spring", "4.00"), currency="GBP").notices == ()
