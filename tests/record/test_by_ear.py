"""Numbers that may be misheard are marked, words and captions are not."""

from __future__ import annotations

from dataclasses import replace

import pytest
from record.telling import charge, fit, machine, price, reading, work

from benchnotes.record.by_ear import checked_by_ear, is_number, words_of
from benchnotes.record.heard import Utterance, Word
from benchnotes.record.statements import Statement


def utterance(*words: tuple[str, float | None]) -> Utterance:
    return Utterance(1, 0.0, 5.0, tuple(Word(text, 0.0, 1.0, p) for text, p in words))


def checks(statement: Statement, said: Utterance) -> bool:
    return checked_by_ear([statement], [said])[0].check


SURE = utterance(("nine", 0.9), ("fifty", 0.95), ("for", 0.2), ("the", 0.9), ("belt", 0.3))
UNSURE = utterance(("nine", 0.9), ("fifty", 0.4), ("for", 0.9), ("the", 0.9), ("belt", 0.9))


def test_an_unsure_number_is_to_be_checked() -> None:
    """ "Nine fifty for the belt", or was it nine fifteen?"""
    said = replace(price("belt", "9.50"), words="nine fifty")
    assert checks(said, UNSURE) and not checks(said, SURE)


def test_only_the_words_of_the_number_count() -> None:
    said = replace(price("belt", "9"), words="nine")
    assert not checks(said, UNSURE)


def test_captions_have_no_probability() -> None:
    said = replace(price("belt", "9.50"), words="nine fifty")
    assert not checks(said, utterance(("nine", None), ("fifty", None)))


@pytest.mark.parametrize(
    ("statement", "number"),
    [
        (machine("mixer"), False), (machine("four", "serial"), True), (fit("belt"), False), (fit("belt", 50), True),
        (reading("belt", "50", "mm"), True), (charge("labour", "50"), True), (work("clean", "belt"), False),
    ],
)  # fmt: skip
def test_which_statements_rest_on_a_number(statement: Statement, number: bool) -> None:
    assert checks(replace(statement, words="not there"), UNSURE) is number


def test_a_statement_of_no_utterance_is_left_alone() -> None:
    assert not checks(replace(price("belt", "9.50"), order=7), UNSURE)


def test_what_says_a_number() -> None:
    assert all(map(is_number, ["7.2", "fifty", "M6", "forty-two", "£9", "2k2"]))
    assert not any(map(is_number, ["belt", "often", "tension", "money"]))


def test_a_stretch_that_is_not_there_is_the_whole_utterance() -> None:
    assert words_of("ninety", SURE) == SURE.words
    assert [w.text for w in words_of("fifty for", SURE)] == ["fifty", "for"]
