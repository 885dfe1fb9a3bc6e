"""How many, and how many hours."""

from __future__ import annotations

from decimal import Decimal

import pytest
from language.amounts.narrated import unit_words

from benchnotes.language.amounts.quantities import read_hours, read_quantity


@pytest.mark.parametrize(
    ("said", "many"),
    [
        ("four of them", 4),
        ("a pair", 2),
        ("both", 2),
        ("a couple of new ones", 2),
        ("half a dozen", 6),
        ("a set of six", 1),
        ("the seal kit", 1),
        ("two sets", 2),
        ("a new one", 1),
        ("three", 3),
        ("some", None),
        ("the third", None),
    ],
)
def test_how_many(said: str, many: int | None) -> None:
    assert read_quantity(said) == many


@pytest.mark.parametrize(
    ("said", "hours"),
    [
        ("an hour and a half", "1.5"),
        ("two hours and half", "2.5"),
        ("two and a quarter hours", "2.25"),
        ("hour and three quarters", "1.75"),
        ("forty-five minutes", "0.75"),
        ("half an hour", "0.5"),
        ("three quarters of an hour", "0.75"),
        ("two hours 30", "2.5"),
        ("hour forty-five", "1.75"),
        ("one hour 30 euros", "1"),
        ("Hour and a half on the clock, ninety an hour", "1.5"),
        ("four hours, no, I'm lying, three", "3"),
        ("my time", None),
    ],
)
def test_hours(said: str, hours: str | None) -> None:
    assert read_hours(said, words=unit_words()) == (None if hours is None else Decimal(hours))


def test_hours_that_captions_cut_in_two() -> None:
    assert read_hours("hours 70 bucks", words=unit_words(), before="and that was two") == 2
    assert read_hours("my time", words=unit_words(), before="three hours ago") is None
