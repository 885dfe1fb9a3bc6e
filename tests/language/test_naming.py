"""What a thing is called: the repairer's own words, plain, and told apart from its neighbours."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchnotes.language.belonging.name_choices import NamingScene, choices
from benchnotes.language.belonging.name_signs import signs_of
from benchnotes.language.belonging.naming import best_name, plain_name
from benchnotes.language.belonging.phrases import phrases
from benchnotes.language.belonging.thing_names import thing_names
from benchnotes.language.marking.marker import Mark, Span


def mark(kind: str, texts: list[str], at: int, part: str | None, words: str, **attributes: str) -> Mark:
    """A mark on `words` of utterance `at`, about `part` of the same utterance."""
    text = texts[at]
    named = Span(at, text.index(part), text.index(part) + len(part)) if part else None
    return Mark(kind, Span(at, text.index(words), text.index(words) + len(words)), named, attributes, 0.9)


@pytest.mark.parametrize(
    ("said", "plain"),
    [
        ("Those two new hose tails", "hose tail"),
        ("the shaft of the cam", "cam shaft"),
        ("this one", ""),
        ("the other side", "other side"),
        ("its other", ""),
    ],
)
def test_plain_names(said: str, plain: str) -> None:
    assert plain_name(said) == plain


def test_the_name_said_most_often_stands() -> None:
    assert best_name(["the ram", "lift ram", "it", "the lift ram"]) == "lift ram"
    assert best_name(["it", None]) is None


def test_phrases_stop_at_stops_and_small_words() -> None:
    assert [p.name for p in phrases("The lift ram, and seals")] == ["lift", "lift ram", "ram", "seal"]
    assert [(p.name, p.first, p.last) for p in phrases("lift ram")] == [
        ("lift", True, False),
        ("lift ram", True, True),
        ("ram", False, True),
    ]


def test_a_value_may_be_called_by_what_its_unit_measures() -> None:
    texts = ["Bellows next.", "Holding at 30 kPa."]
    marks = [mark("clear", texts, 0, "Bellows", "next"), mark("reading", texts, 1, None, "30 kPa", unit="kPa")]
    told = choices(NamingScene(texts, marks, (0, 1)), 1)
    assert {"pressure", "bellow pressure", "bellow"} <= told.keys()


def test_a_short_name_may_take_its_neighbour_along() -> None:
    texts = ["Windings, I checked them.", "The start is open."]
    marks = [mark("clear", texts, 0, "Windings", "checked"), mark("fault", texts, 1, "The start", "open")]
    assert "start winding" in choices(NamingScene(texts, marks, (0, 1)), 1)


def test_a_plain_case_goes_by_its_own_name() -> None:
    texts = ["The outlet valve is cracked.", "New outlet valve is in.", "Outlet valve was nine pounds."]
    marks = [
        mark("fault", texts, 0, "The outlet valve", "cracked"),
        mark("fit", texts, 1, "New outlet valve", "is in"),
        mark("price", texts, 2, "Outlet valve", "nine pounds"),
    ]
    assert thing_names(marks, (0, 0, 0), texts) == {0: "outlet valve"}


def test_where_nothing_is_said_there_is_no_name() -> None:
    texts = ["It is."]
    assert thing_names([mark("test", texts, 0, "It", "is")], (0,), texts) == {0: None}


def test_weights_decide_among_the_choices() -> None:
    texts = ["The lift ram is bent."]
    marks = [mark("fault", texts, 0, "The lift ram", "bent")]
    assert thing_names(marks, (0,), texts, {"own": 1.0}) == {0: "lift ram"}
    assert thing_names(marks, (0,), texts, {"own_end": 1.0}) == {0: "ram"}


@given(st.lists(st.text("abc ,.'-0é", max_size=30), min_size=1, max_size=4))
def test_whatever_was_said_names_and_signs_can_be_weighed(texts: list[str]) -> None:
    marks = [Mark("fault", Span(at, 0, len(text)), Span(at, 0, len(text)), {}, 0.9) for at, text in enumerate(texts)]
    thing = tuple(at // 2 for at in range(len(texts)))
    scene = NamingScene(texts, marks, thing)
    for each in scene.members:
        told = signs_of(scene, each, choices(scene, each))
        assert all(name == name.strip() and name for name in told)
    assert set(thing_names(marks, thing, texts)) == set(thing)
