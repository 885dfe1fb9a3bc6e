"""Unit words as data: read strictly, and their factors beside pint (which carries the published definitions)."""

from __future__ import annotations

from decimal import Decimal

import pint
import pytest
from iso4217 import Currency
from language.amounts.narrated import unit_words

from benchnotes.language.amounts.readings import read_reading
from benchnotes.language.amounts.unit_words import UnitWords, UnitWordsError

PINT_NAMES = {
    "mm": "millimeter", "in": "inch", "thou": "thou", "bar": "bar", "psi": "psi", "kPa": "kilopascal", "V": "volt",
    "A": "ampere", "mA": "milliampere", "W": "watt", "ohm": "ohm", "kohm": "kiloohm", "Mohm": "megaohm",
    "uF": "microfarad", "nF": "nanofarad", "pF": "picofarad", "N.m": "newton * meter", "lbf.ft": "force_pound * foot",
    "Hz": "hertz", "s": "second", "min": "minute", "h": "hour", "g": "gram", "kg": "kilogram", "ml": "milliliter",
    "l": "liter",
}  # fmt: skip
SPOKEN = {
    "centimetre": "centimeter", "metre": "meter", "micron": "micron", "foot": "foot", "millibar": "millibar",
    "megapascal": "megapascal", "pascal": "pascal", "millivolt": "millivolt", "kilovolt": "kilovolt",
    "microamp": "microampere", "milliwatt": "milliwatt", "kilowatt": "kilowatt", "milliohm": "milliohm",
    "kilohm": "kiloohm", "megohm": "megaohm", "gigohm": "gigaohm", "kilohertz": "kilohertz", "megahertz": "megahertz",
    "ounce": "ounce", "millisecond": "millisecond", "pint": "imperial_pint", "inch pound": "force_pound * inch",
    "foot pound": "force_pound * foot", "litre": "liter", "milliamp": "milliampere", "microfarad": "microfarad",
    "thou": "thou", "inch": "inch", "psi": "psi", "minute": "minute", "hour": "hour",
}  # fmt: skip


@pytest.mark.parametrize("spoken", SPOKEN)
def test_conversion_factors_are_those_of_pint(spoken: str) -> None:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    found = read_reading(f"3 {spoken}", words=unit_words())
    assert found is not None
    theirs = registry.Quantity(3, SPOKEN[spoken]).to(PINT_NAMES[found.unit]).magnitude
    assert float(found.value) == pytest.approx(theirs, rel=1e-9)


def test_a_pound_of_weight_is_pints_pound() -> None:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    found = read_reading("3 pounds", words=unit_words(), before="on the scales it weighs ")
    assert found is not None
    assert found.unit == "kg"
    assert float(found.value) == pytest.approx(registry.Quantity(3, "pound").to("kilogram").magnitude)


def test_every_currency_is_one_of_iso_4217() -> None:
    listed = {currency.code for currency in Currency}
    for meaning in unit_words().money.values():
        assert set(meaning.currencies) <= listed
    assert unit_words().hundreds_said_in_two <= listed


@pytest.mark.parametrize(
    ("data", "told"),
    [
        ({"unit": [{"words": ["mil"], "symbol": "furlong"}]}, "furlong"),
        ({"unit": [{"words": ["mil"], "symbol": "mm", "factor": "2"}]}, "factor"),
        ({"unit": [{"words": ["mil"], "symbol": "mm", "times": "-1"}]}, "times"),
        ({"unit": [{"words": ["mil"], "symbol": "mm", "times": "lots"}]}, "times"),
        ({"unit": [{"symbol": "mm"}]}, "words"),
        ({"money": [{"words": ["groat"]}]}, "currencies"),
        ({"units": []}, "'units'"),
        ({"usual": {"mm": ["1"]}}, "mm"),
        ({"temperature": {"kelvin": []}}, "kelvin"),
    ],
)
def test_what_is_wrong_is_named(data: dict[str, object], told: str) -> None:
    with pytest.raises(UnitWordsError, match=told):
        UnitWords.from_mapping(data)


def test_a_users_own_word_reads_like_ours() -> None:
    words = UnitWords.from_mapping({"unit": [{"words": ["gnat"], "symbol": "mm", "times": "0.05"}]})
    found = read_reading("two gnats", words=words)
    assert found is not None
    assert (found.value, found.unit) == (Decimal("0.1"), "mm")


def test_a_later_meaning_takes_the_place_of_an_earlier_and_leaves_the_rarer_ones() -> None:
    ours = [{"words": ["mil"], "symbol": "mm"}, {"words": ["mil"], "symbol": "ml", "near": ["oil"]}]
    words = UnitWords.from_mapping({"unit": [*ours, {"words": ["mil"], "symbol": "thou"}]})
    assert read_reading("3 mil", words=words).unit == "thou"  # type: ignore[union-attr]
    assert read_reading("3 mil", words=words, before="oil, ").unit == "ml"  # type: ignore[union-attr]
