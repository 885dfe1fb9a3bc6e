"""Serial and model numbers from how they are read out; beside num2words for whole numbers in the middle of one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words

from benchnotes.language.number_plates import as_written


@pytest.mark.parametrize(
    ("said", "written"),
    [
        ("five four one three", "5413"),
        ("M K two", "MK2"),
        ("B T seven oh two", "BT702"),
        ("oh oh seven", "007"),
        ("zero nine", "09"),
        ("double four one", "441"),
        ("one treble six", "1666"),
        ("double oh four one seven B", "00417B"),
        ("2 double oh 6 1", "20061"),
        ("double A three", "AA3"),
        ("K four nine dash two", "K49-2"),
        ("88 dash 31702", "88-31702"),
        ("six stroke one", "6/1"),
        ("B for Bruce, six two one", "B621"),
        ("P as in Peter nine", "P9"),
        ("six, four, two", "642"),
        ("SK-two", "SK-2"),
        ("forty-two", "42"),
        ("twenty one B", "21B"),
        ("nineteen eighty four", "1984"),
        ("Mark two", "Mark 2"),
        ("Lathe dash", None),
        ("MK2 dash four", "MK2-4"),
    ],
)
def test_as_it_is_read_out(said: str, written: str | None) -> None:
    assert as_written(said) == written


@pytest.mark.parametrize(
    "said", ["", " ", "...", "MK2", "5413", "A 12", "1 2 3", "X J S", "the brass plate", "🔧", "oh well"]
)
def test_what_is_written_already_stays_as_it_is(said: str) -> None:
    assert as_written(said) is None


NOUGHTS = st.sampled_from(["oh", "zero", "nought"])
SIGNS = st.text("0123456789", min_size=2, max_size=10)


@given(SIGNS, st.data())
def test_any_number_read_out_sign_by_sign(number: str, data: st.DataObject) -> None:
    said = [data.draw(NOUGHTS) if sign == "0" else num2words(int(sign)) for sign in number]
    assert as_written(" ".join(said)) == number


@given(st.from_regex(r"[A-HJ-NP-Z]{2}[0-9]{2,6}", fullmatch=True))
def test_letters_before_the_figures(number: str) -> None:
    said = [num2words(int(sign)) if sign.isdigit() else sign for sign in number]
    assert as_written(" ".join(said)) == number


@given(st.from_regex(r"([0-9])\1[1-9]{1,4}", fullmatch=True))
def test_doubles(number: str) -> None:
    first, *rest = (num2words(int(sign)) for sign in number[1:])
    assert as_written(" ".join(["double", first, *rest])) == number


@given(st.integers(10, 99), st.sampled_from("BCDGK"))
def test_a_number_and_a_letter(number: int, letter: str) -> None:
    assert as_written(f"{letter} {num2words(number)}") == f"{letter}{number}"


@given(st.text(max_size=40))
def test_nothing_is_too_odd_and_writing_twice_changes_nothing(said: str) -> None:
    """Whatever was said; and what came out is written already."""
    written = as_written(said)
    if written is not None and written.isascii():
        assert as_written(written) in {None, written}
