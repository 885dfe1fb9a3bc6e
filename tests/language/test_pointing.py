"""Which marks are about one thing: like names, what only points, and what the marker has learned of both."""

from __future__ import annotations

import pytest

from benchnotes.language.belonging.pointing import FAR, things
from benchnotes.language.marking.marker import Mark, Pointer, Span


def told(*sayings: tuple[str, str | None]) -> tuple[list[Mark], list[str]]:
    """(kind, what names the thing), one utterance each."""
    texts = [f"{part} here" if part else "here" for _, part in sayings]
    marks = [
        Mark(kind, Span(at, len(texts[at]) - 4, len(texts[at])), Span(at, 0, len(part)) if part else None, {}, 0.9)
        for at, (kind, part) in enumerate(sayings)
    ]
    return marks, texts


@pytest.mark.parametrize(
    ("sayings", "expected"),
    [
        ([("fault", "the gland nut"), ("work", "Gland nuts")], (0, 0)),
        ([("fault", "the gland nut"), ("work", "the rod")], (0, 1)),
        ([("fault", "the gland nut"), ("price", "it")], (0, 0)),
        ([("fault", "the gland nut"), ("fault", "the rod"), ("price", "those")], (0, 1, 1)),
        ([("fault", "the rod"), ("test", None)], (0, 0)),
        ([("fault", "the rod"), ("advice", "the rod")], (0, None)),
    ],
)
def test_by_the_plain_rule(sayings: list[tuple[str, str | None]], expected: tuple[int | None, ...]) -> None:
    marks, texts = told(*sayings)
    assert things(marks, None, texts) == expected


def test_what_only_points_means_nothing_from_long_ago() -> None:
    marks = [Mark("fault", Span(0, 0, 3), Span(0, 0, 3), {}, 0.9), Mark("price", Span(FAR + 1, 0, 2), None, {}, 0.9)]
    assert things(marks, None, ["rod", *["talk"] * FAR, "it"]) == (0, 1)


def test_learned_choice_joins_names_that_are_not_alike() -> None:
    marks, texts = told(("fault", "the gland nut"), ("fault", "the rod"), ("work", "that brass collar"))
    pointers = [[Pointer(-1, 0.0)], [Pointer(-1, 0.0)], [Pointer(0, -0.1), Pointer(-1, -2.0)]]
    assert things(marks, pointers, texts) == (0, 1, 0)


def test_learned_choice_keeps_like_names_apart() -> None:
    marks, texts = told(("fault", "the nut"), ("fault", "the nut"))
    assert things(marks, [[Pointer(-1, 0.0)], [Pointer(-1, -0.1), Pointer(0, -2.0)]], texts) == (0, 1)


def test_what_only_points_means_the_thing_named_last_whatever_was_learned() -> None:
    marks, texts = told(("fault", "the nut"), ("fault", "the rod"), ("price", "it"))
    assert things(marks, [[Pointer(-1, 0.0)], [Pointer(-1, 0.0)], [Pointer(0, 0.0)]], texts) == (0, 1, 1)
