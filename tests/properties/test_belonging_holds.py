"""What holds for names and for what may be pointed back at, whatever a thing is called."""

from __future__ import annotations

import math
from collections.abc import Sequence

from hypothesis import given, settings
from hypothesis import strategies as st

from benchnotes.language.belonging.candidates import POINTING_KINDS, RECENT, WIDTH, Mention, Things
from benchnotes.language.belonging.likeness import DETERMINERS, likeness, singular, taken_apart

WORDS = st.sampled_from(
    ["the", "a", "left", "other", "cap", "caps", "filler", "it", "one", "those", "spring", "of", "new"]
)
SAID = st.none() | st.text(max_size=25) | st.lists(WORDS, max_size=5).map(" ".join)

LIKEST, COUNT = slice(16, 21), 22
"""Places in a row: how like the likest name of the thing is, how often it was named."""


@st.composite
def mentions(draw: st.DrawFn) -> list[tuple[Mention, int]]:
    """Mentions in order of the talk, each with a number that says which thing it is of."""
    made, utterance = [], 0
    for said in draw(st.lists(SAID, max_size=20)):
        utterance += draw(st.integers(0, 50))
        place = None if said is None else (utterance, draw(st.integers(0, 3)), 9)
        made.append(
            (Mention.of(draw(st.sampled_from(POINTING_KINDS)), utterance, said, place), draw(st.integers(0, 4)))
        )
    return made


def told(things: Things, talk: Sequence[tuple[Mention, int]]) -> list[list[list[float]]]:
    """The rows of every mention, taken in one after the other."""
    numbers: dict[int, int] = {}
    rows = []
    for mention, thing in talk:
        rows.append(things.rows(mention))
        numbers[thing] = things.add(mention, numbers.get(thing))
    return rows


@given(mentions())
@settings(deadline=None)
def test_rows_are_all_as_wide_and_all_numbers(talk: list[tuple[Mention, int]]) -> None:
    for at, rows in enumerate(told(Things(), talk)):
        assert len(rows) == min(at, RECENT)
        assert {len(row) for row in rows} <= {WIDTH}
        assert all(math.isfinite(number) for row in rows for number in row)


@given(mentions(), st.integers(0, 20))
@settings(deadline=None)
def test_rows_know_nothing_of_what_comes_later(talk: list[tuple[Mention, int]], size: int) -> None:
    assert told(Things(), talk[:size]) == told(Things(), talk)[:size]


@given(mentions())
@settings(deadline=None)
def test_mentions_of_one_thing_share_what_is_told_of_the_thing(talk: list[tuple[Mention, int]]) -> None:
    """The likest name, and how many mentions a thing has had, are the same in all rows of the thing."""
    things = Things()
    told(things, talk)
    rows = things.rows(Mention.of("fault", 10_000, "the filler cap", None))
    of_thing: dict[int, set[tuple[float, ...]]] = {}
    for at, row in enumerate(rows):
        of_thing.setdefault(things.thing_of(at), set()).add((*row[LIKEST], row[COUNT]))
    assert all(len(different) == 1 for different in of_thing.values())


@given(SAID)
def test_a_name_taken_apart(said: str | None) -> None:
    name = taken_apart(said)
    assert name.said == (said or "")
    assert not set(name.words) & DETERMINERS
    assert name.head == (name.words[-1] if name.words else "")


@given(SAID, SAID)
def test_likeness_is_a_share_and_goes_both_ways(one: str | None, two: str | None) -> None:
    first, second = taken_apart(one), taken_apart(two)
    like, back = likeness(first, second), likeness(second, first)
    numbers = (like.overlap, like.inside, like.around, like.head, like.letters, like.best)
    assert all(0 <= number <= 1 for number in numbers)
    assert (like.overlap, like.head) == (back.overlap, back.head)
    assert (like.inside, like.around) == (back.around, back.inside)


@given(SAID)
def test_a_name_is_like_itself(said: str | None) -> None:
    name = taken_apart(said)
    assert likeness(name, name).best == (0 if name.points else 1)


@given(st.text("abcdefghijklmnopqrstuvwxyz", max_size=12))
def test_a_singular_is_never_longer_nor_nothing(word: str) -> None:
    one = singular(word)
    assert len(one) <= len(word)
    assert one[:2] == word[:2]
    assert bool(one) == bool(word)
