"""Numbers to be checked by ear: which words are numbers, and when one is doubtful."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words
from speech.said import words

from benchnotes.record.heard import Utterance, Word
from benchnotes.speech.misheard import doubtful_words, number_words, weighed
from benchnotes.speech.number_sense import same_value, says_number


def numbers(text: str) -> list[str]:
    said = words(text)
    return [said[i].text for i in number_words(said)]


def test_digits_and_number_words_are_numbers() -> None:
    assert numbers("the M6 thread is twenty-five mil, £4.50 each") == ["M6", "twenty-five", "£4.50"]


def test_one_is_a_number_only_beside_another() -> None:
    assert numbers("this one takes one fifty, that one does not") == ["one", "fifty,"]


@given(st.integers(2, 999_999))
def test_every_number_that_num2words_writes_is_seen(n: int) -> None:
    said = words(num2words(n).replace(",", ""))
    seen = {said[i].text for i in number_words(said)}
    assert {word.text for word in said} - seen <= {"and"}


@pytest.mark.parametrize(
    ("piece", "rest"),
    [("40", "40"), (" forty", "40"), ("4", "4.50"), ("£", "4.50"), ("3", "three"), ("fifteen", "15"), ("38", "380")],
)
def test_pieces_of_the_same_value(piece: str, rest: str) -> None:
    assert same_value(piece, rest)


@pytest.mark.parametrize(
    ("piece", "rest"), [("14", "40"), ("fourteen", "40"), ("18", "80"), ("tin", "ten"), ("31", "380")]
)
def test_pieces_of_another_value(piece: str, rest: str) -> None:
    assert not same_value(piece, rest)


def test_what_says_a_number() -> None:
    assert says_number(" M6,")
    assert says_number("Forty.")
    assert not says_number("seal")


def test_a_number_is_as_sure_as_the_reading_that_knows() -> None:
    first, second = words("about 40 quid", p=1.0), words("about forty quid", p=0.9)
    assert [word.probability for word in weighed(first, second)] == pytest.approx([1.0, 0.729, 1.0])


def test_a_number_written_otherwise_is_the_same_number() -> None:
    first, second = words("fifty nine of 0.3 mil", p=1.0), words("59 of point 3 mil", p=1.0)
    assert {word.probability for word in weighed(first, second)} == {1.0}


def test_a_number_among_words_hardly_made_out_is_doubtful() -> None:
    first = (*words("reconversed", p=0.2), *words("47", p=1.0), *words("to euro", p=0.3))
    assert doubtful_words(Utterance(1, 0, 1, weighed(first, first))) == (1,)


def test_a_number_that_the_other_reading_has_not_is_doubtful() -> None:
    first, second = words("about 40 quid", p=0.9), words("about 14 quid", p=0.9)
    weighted = weighed(first, second)
    assert doubtful_words(Utterance(1, 0, 1, weighted)) == (1,)


def test_captions_know_no_probability_and_are_not_doubted() -> None:
    assert doubtful_words(Utterance(1, 0, 1, (Word("40", 0, 1),))) == ()
