"""Which names mean one thing."""

from __future__ import annotations

import pytest

from benchnotes.record.same_thing import is_name, name_words, names_alike, settled_names, singular, within


@pytest.mark.parametrize(
    ("said", "one"),
    [
        ("bushes", "bush"), ("hinges", "hinge"), ("assemblies", "assembly"), ("boxes", "box"), ("seals", "seal"),
        ("glass", "glass"), ("chassis", "chassis"), ("radius", "radius"), ("brass", "brass"),
    ],
)  # fmt: skip
def test_one_of_the_things(said: str, one: str) -> None:
    assert singular(said) == one


@pytest.mark.parametrize(
    ("one", "other"),
    [("the cap", "cap"), ("Pump leathers", "pump leather"), ("pump-leather", "pump leather"), ("a new belt", "belt")],
)
def test_spelled_or_counted_another_way(one: str, other: str) -> None:
    assert names_alike(one, other)


@pytest.mark.parametrize(
    ("one", "other"), [("cap", "filler cap"), ("left hinge", "right hinge"), ("", ""), ("it", "it")]
)
def test_two_things_or_none(one: str, other: str) -> None:
    assert not names_alike(one, other)


def test_the_spelling_said_most_often_stands() -> None:
    names = settled_names(["Pump leathers", "the pump leather", "pump leather", "pump leather", "cap"])
    assert set(names.values()) == {"pump leather", "cap"}


def test_words_that_only_point_are_no_name() -> None:
    assert not any(map(is_name, ["those", "it", "this one", "the same", ""]))
    assert all(map(is_name, ["the other pinion", "it switch"]))


def test_names_within_names() -> None:
    assert within("tank", "tank seam")
    assert not within("tank", "tap seat")
    assert not within("tank", "tap seat washer")


def test_letters_of_any_script_make_words() -> None:
    assert name_words("Düse Ø4") == ("düse", "ø4")
