"""Measured values as said at the bench."""

from __future__ import annotations

import csv
from decimal import Decimal
from pathlib import Path

import pytest
from language.amounts.narrated import unit_words

from benchnotes.language.amounts.readings import SpokenReading, read_reading


def read(text: str, **around: str) -> SpokenReading | None:
    return read_reading(text, words=unit_words(), **around)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("said", "value", "unit"),
    [
        ("3.5 mil", "3.5", "mm"),
        ("three and a half mil", "3.5", "mm"),
        ("a mil and a half", "1.5", "mm"),
        ("half a mil", "0.5", "mm"),
        ("0.4 of a mil", "0.4", "mm"),
        ("three tenths of a millimetre", "0.3", "mm"),
        ("12.5mm", "12.5", "mm"),
        ("two centimetres", "20", "mm"),
        ("forty microns", "0.04", "mm"),
        ("M6", "6", "mm"),
        ("m twelve", "12", "mm"),
        ("three eighths", "0.375", "in"),
        ("half-inch", "0.5", "in"),
        ("an inch", "1", "in"),
        ("2 1/2 inches", "2.5", "in"),
        ("five thou", "5", "thou"),
        ("sixty thousandths", "60", "thou"),
        ("a thou and a half", "1.5", "thou"),
        ("2k2", "2.2", "kohm"),
        ("4R7", "4.7", "ohm"),
        ("47 K", "47", "kohm"),
        ("200 meg", "200", "Mohm"),
        ("half a meg", "0.5", "Mohm"),
        ("0.1 microfarad", "0.1", "uF"),
        ("36 mike", "36", "uF"),
        ("1.5 bar", "1.5", "bar"),
        ("a hundred and forty p.s.i.", "140", "psi"),
        ("two hundred millivolts", "0.2", "V"),
        ("2.1 kv", "2100", "V"),
        ("two-twenty volts", "220", "V"),
        ("twelve point six volts", "12.6", "V"),
        ("fifteen amp", "15", "A"),
        ("62 milliamps", "62", "mA"),
        ("ten newton metres", "10", "N.m"),
        ("25 foot pounds", "25", "lbf.ft"),
        ("90 degrees", "90", "C"),
        ("minus 40 dB", "-40", "dB"),
        ("3,000 rpm", "3000", "rpm"),
        ("fifteen hundred revs a minute", "1500", "rpm"),
        ("20 minutes", "20", "min"),
        ("an hour and a half", "1.5", "h"),
        ("85 percent", "85", "%"),
        ("nine, no, sorry, eleven mil", "11", "mm"),
    ],
)
def test_value_and_unit(said: str, value: str, unit: str) -> None:
    found = read(said)
    assert found is not None
    assert (found.value, found.unit) == (Decimal(value), unit)


@pytest.mark.parametrize("said", ["a gnat's whisker", "not a lot", "", "spot on", "the third"])
def test_what_is_no_reading(said: str) -> None:
    assert read(said) is None


def test_mil_is_millilitres_where_oil_is_poured() -> None:
    assert read("six hundred mil", before="filled her up with fresh oil, ").unit == "ml"  # type: ignore[union-attr]
    assert read("6 mil", before="the drill for it is ").unit == "mm"  # type: ignore[union-attr]
    assert read("22 mil", what="oil seal bore").unit == "mm"  # type: ignore[union-attr]


def test_pounds_are_of_pressure_on_a_gauge_and_of_turning_on_a_wrench() -> None:
    assert read("forty pounds", before="the tyre gauge says ").unit == "psi"  # type: ignore[union-attr]
    assert read("forty pounds", before="torqued the head down to ").unit == "lbf.ft"  # type: ignore[union-attr]


def test_degrees_follow_the_country_and_what_is_said() -> None:
    assert read("250 degrees", currency="USD").unit == "F"  # type: ignore[union-attr]
    assert read("250 degrees", currency="NZD").unit == "C"  # type: ignore[union-attr]
    assert read("90 degrees celsius", currency="USD").unit == "C"  # type: ignore[union-attr]


def test_a_bare_number_takes_the_unit_of_its_neighbour() -> None:
    assert read("24.9", before="it's 25.6 volts resting and sags to ").unit == "V"  # type: ignore[union-attr]
    assert read("point five one", after=". Millimetres.").unit == "mm"  # type: ignore[union-attr]


def test_a_bare_number_takes_the_unit_of_what_is_measured() -> None:
    assert read("0.08", what="earth").unit == "ohm"  # type: ignore[union-attr]
    assert read("3,440", before="tacho on the shaft says ").unit == "rpm"  # type: ignore[union-attr]
    assert read("65", like="psi").unit == "psi"  # type: ignore[union-attr]
    assert read("65") is None


def test_a_size_keeps_all_its_numbers() -> None:
    assert read("M6 by 1").beside == (Decimal(1),)  # type: ignore[union-attr]
    assert read("6 by 1").unit == "mm"  # type: ignore[union-attr]


def test_about_and_ranges() -> None:
    assert read("about eight mil").about  # type: ignore[union-attr]
    assert read("eight mil", after=" or so, no more").about  # type: ignore[union-attr]
    assert not read("eight mil", after=". About time too.").about  # type: ignore[union-attr]
    found = read("between six and eight bar")
    assert found is not None
    assert (found.value, found.upper, found.unit, found.about) == (6, 8, "bar", True)


def test_every_iso_metric_thread_reads_as_its_nominal_size(root: Path) -> None:
    """Nominal sizes and pitches: ISO 261 as carried by tests/published/threads (its SOURCE.md names the carrier)."""
    table = root / "tests" / "published" / "threads" / "iso_metric_threads.csv"
    rows = list(csv.DictReader(table.read_text("utf-8").splitlines()))
    assert len(rows) >= 100
    for row in rows:
        nominal, pitch = Decimal(row["nominal_mm"]).normalize(), Decimal(row["pitch_mm"]).normalize()
        found = read(f"M{nominal:f} by {pitch:f}")
        assert found is not None
        assert (found.value, found.unit, found.beside) == (nominal, "mm", (pitch,))
