"""The grammar of numbers, beside num2words (what people say for a number) and hand-written talk of the bench."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words

from benchnotes.language.amounts.numbers import number_at
from benchnotes.language.amounts.tokens import tokens


def read(text: str) -> Decimal | None:
    """The number that is the whole of `text`."""
    said = tokens(text)
    found = number_at(said, 0)
    return found.value if found is not None and found.end == len(said) else None


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("two and a half", "2.5"),
        ("twenty-five", "25"),
        ("twenty five", "25"),
        ("nought point two five", "0.25"),
        ("point four", "0.4"),
        ("oh point six", "0.6"),
        ("naught point naught five", "0.05"),
        ("point oh three", "0.03"),
        ("twelve point double four", "12.44"),
        ("nineteen comma nine five", "19.95"),
        ("a hundred and forty", "140"),
        ("'undred and forty", "140"),
        ("one hundred fifty", "150"),
        ("twelve hundred", "1200"),
        ("a thousand and two", "1002"),
        ("2 hundred", "200"),
        ("2.5 lakh", "250000"),
        ("1,250", "1250"),
        ("14,50", "14.50"),
        ("1.250,00", "1250.00"),
        ("6 3/4", "6.75"),
        ("2-1/2", "2.5"),
        ("2½", "2.5"),
        ("5/16", "0.3125"),
        ("three eighths", "0.375"),
        ("three and three eighths", "3.375"),
        ("three thirty-seconds", "0.09375"),
        ("two and half", "2.5"),
        ("168 and a half", "168.5"),
        ("three and a half grand", "3500"),
        ("a dozen", "12"),
        ("half a dozen", "6"),
        ("a couple of", "2"),
        ("minus 40", "-40"),
        ("four fifty", "450"),
        ("one oh five", "105"),
        ("nine thirty eight", "938"),
        ("twenty-nine eighty", "2980"),
    ],
)
def test_numbers_as_they_are_said(said: str, value: str) -> None:
    assert read(said) == Decimal(value)


@pytest.mark.parametrize(
    "said", ["twenty-fifth", "hundred and first", "3rd", "10.4.2026", "1/2/2026", "first", "oh well"]
)
def test_what_is_no_number(said: str) -> None:
    assert number_at(tokens(said), 0) is None


def test_a_run_of_two_keeps_both_readings() -> None:
    found = number_at(tokens("four ninety-nine"), 0)
    assert found is not None
    assert (found.value, found.pair) == (499, (4, 99))


def test_one_second_is_a_time_and_twenty_second_spaced_is_not_read_on() -> None:
    found = number_at(tokens("one second"), 0)
    assert found is not None
    assert (found.value, found.end) == (1, 1)


@given(st.integers(0, 100_000))
def test_every_whole_number_spoken_reads_back(number: int) -> None:
    assert read(num2words(number)) == number


@given(st.integers(0, 10**9))
def test_indian_and_american_ways_read_back(number: int) -> None:
    assert read(num2words(number).replace(" and ", " ").replace(",", "")) == number
    assert read(num2words(number, lang="en_IN")) == number


@given(st.integers(1, 9_999_999).map(lambda number: Decimal(number) / 1000))
def test_every_decimal_spoken_reads_back(number: Decimal) -> None:
    assert read(num2words(number)) == number


@given(st.integers(1, 100_000))
def test_ordinals_are_refused(number: int) -> None:
    spoken = num2words(number, to="ordinal")
    # "one hundredth" is a fraction as well.
    if not spoken.endswith(("hundredth", "thousandth")):
        found = number_at(tokens(spoken), 0)
        assert found is None, spoken
    assert number_at(tokens(num2words(number, to="ordinal_num")), 0) is None


@given(st.decimals("0.01", "99999.99", places=2))
def test_figures_read_as_written(number: Decimal) -> None:
    assert read(f"{number:,}") == number
    assert read(str(number)) == number
