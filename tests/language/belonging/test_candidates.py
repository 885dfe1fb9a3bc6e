"""What may be pointed back at: rows of numbers about everything named so far, and nothing about what comes later."""

from __future__ import annotations

import math

import pytest

from benchnotes.language.belonging.candidates import POINTING_KINDS, RECENT, WIDTH, Mention, Things
from benchnotes.record.statements import KINDS

ABOUT_THE_MACHINE = {"machine", "advice", "correction", "cue"}
NAMES, KIND_OF_ASKER = 2 + 9, WIDTH - 3 * len(POINTING_KINDS)
"""Where in a row the likeness of the names begins, and where the kinds do."""


def mention(kind: str, utterance: int, said: str | None) -> Mention:
    return Mention.of(kind, utterance, said, None if said is None else (utterance, 0, len(said)))


def grown(*mentions: tuple[Mention, int | None]) -> Things:
    things = Things()
    for each, thing in mentions:
        things.add(each, thing)
    return things


def test_kinds_that_point() -> None:
    assert set(POINTING_KINDS) == {kind.say for kind in KINDS} - ABOUT_THE_MACHINE


def test_nothing_named_yet() -> None:
    assert Things().rows(mention("fault", 0, "the cap")) == []
    assert Things().first == 0


def test_things_are_counted_as_they_come() -> None:
    things = Things()
    assert [things.add(mention("fault", 0, "cap"), None), things.add(mention("need", 1, "seal"), None)] == [0, 1]
    assert things.add(mention("fit", 2, "it"), 1) == 1
    assert [things.thing_of(at) for at in range(3)] == [0, 1, 1]


def test_a_row_for_each_mention_oldest_first() -> None:
    things = grown((mention("fault", 0, "the filler cap"), None), (mention("fault", 1, "the mainspring"), None))
    cap, spring = things.rows(mention("price", 2, "that cap"))
    assert len(cap) == len(spring) == WIDTH
    assert cap[NAMES : NAMES + 5] == pytest.approx([0.5, 1, 0.5, 1, 0.5])
    assert spring[NAMES] == 0
    assert all(math.isfinite(number) for number in cap + spring)


def test_a_thing_is_as_like_as_the_likest_of_its_names() -> None:
    """Called a cap, then it; what is like the cap is like the second mention's thing too."""
    things = grown((mention("fault", 0, "the cap"), None), (mention("need", 1, "it"), 0))
    _, second = things.rows(mention("price", 2, "the cap"))
    assert second[NAMES] == 0
    assert second[NAMES + 5] == 1


def test_one_hot_places() -> None:
    things = grown((mention("fault", 0, "the cap"), None))
    for far, place in [(0, 0), (1, 1), (2, 2), (3, 3), (4, 3), (8, 4), (16, 5), (40, 6), (41, 7), (500, 7)]:
        (row,) = things.rows(mention("price", far, "it"))
        distances = row[NAMES + 15 : NAMES + 15 + 8]
        assert distances == [float(at == place) for at in range(8)]


def test_kinds_stand_in_the_row() -> None:
    things = grown((mention("fault", 0, "the cap"), None), (mention("need", 0, "the cap"), 0))
    first, _ = things.rows(mention("price", 1, "it"))
    size = len(POINTING_KINDS)
    asker, earlier, of_thing = (first[KIND_OF_ASKER + n * size :][:size] for n in range(3))
    told = [
        {kind for kind, there in zip(POINTING_KINDS, part, strict=True) if there} for part in (asker, earlier, of_thing)
    ]
    assert told == [{"price"}, {"fault"}, {"fault", "need"}]


def test_the_same_words_are_told_from_the_same_name() -> None:
    """Two statements about one and the same word of the talk."""
    things = grown((Mention.of("fault", 3, "cap", (3, 4, 7)), None))
    (same,) = things.rows(Mention.of("need", 3, "cap", (3, 4, 7)))
    (other,) = things.rows(Mention.of("need", 3, "cap", (3, 20, 23)))
    (none,) = things.rows(Mention.of("need", 3, None, None))
    assert [same[1], other[1], none[1]] == [1, 0, 0]


def test_only_so_many_are_weighed() -> None:
    things = grown(*((mention("fault", at, f"part {at}"), None) for at in range(RECENT + 30)))
    assert things.first == 30
    rows = things.rows(mention("need", RECENT + 30, "part 12"))
    assert len(rows) == RECENT
    assert {len(row) for row in rows} == {WIDTH}
    # what is farther back is not weighed, however like it is
    assert max(row[NAMES] for row in rows) < 1


def test_later_mentions_change_no_row_of_earlier_ones() -> None:
    talk = [mention("fault", at, said) for at, said in enumerate(["cap", "it", "mainspring", "the cap", None, "those"])]
    things, seen = Things(), []
    for each in talk:
        seen.append(things.rows(each))
        things.add(each, None)
    again = Things()
    for at, each in enumerate(talk[:4]):
        assert again.rows(each) == seen[at]
        again.add(each, None)


def test_asking_changes_nothing() -> None:
    things, asked = grown((mention("fault", 0, "cap"), None)), mention("need", 1, "it")
    assert things.rows(asked) == things.rows(asked)
