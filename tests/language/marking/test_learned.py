"""The learned marker's mechanics on a sealed encoder of fixed vectors: what a handful of known words make of talk."""

from __future__ import annotations

import warnings
from dataclasses import replace

import numpy as np
import pytest
from language.marking.sealed import FixedEncoder, any_marker, small_reader, talk_of

from benchnotes.language.belonging.candidates import POINTING_KINDS
from benchnotes.language.marking.heads import ATTRIBUTES, ATTRIBUTES_OF, Heads
from benchnotes.language.marking.learned import POINTERS_KEPT, LearnedMarker, Thresholds, mention_of
from benchnotes.language.marking.marker import Mark, Span
from benchnotes.language.marking.windows import LONGEST_PIECE, Cut
from benchnotes.record.heard import Utterance

KINDS = {"bent": "fault", "worn": "fault", "fine": "clear", "oil": "work", "quid": "price"}
NARROW = Cut(limit=LONGEST_PIECE + 2, before=0, after=0)


@pytest.fixture(scope="module")
def reader() -> LearnedMarker:
    return small_reader(KINDS, ["lid", "gear", "top", "it"], faults=["worn"])


def told(marks: tuple[Mark, ...], *texts: str) -> list[tuple[str, str, str | None]]:
    said = [None if m.part is None else texts[m.part.utterance][m.part.start : m.part.end] for m in marks]
    return [
        (m.kind, texts[m.span.utterance][m.span.start : m.span.end], part) for m, part in zip(marks, said, strict=True)
    ]


def test_statements_with_the_nearest_thing_named(reader: LearnedMarker) -> None:
    talk = ("the top gear is worn, the lid is fine", "nothing here", "I will oil it")
    assert told(reader.mark(talk_of(*talk)).marks, *talk) == [
        ("fault", "worn", "top gear"),
        ("clear", "fine", "lid"),
        ("work", "oil", "it"),
    ]


def test_a_thing_named_in_the_next_breath_is_taken_and_one_farther_off_is_not(reader: LearnedMarker) -> None:
    near, far = ("bent", "the lid"), ("bent", "well now", "the lid")
    assert told(reader.mark(talk_of(*near)).marks, *near) == [("fault", "bent", "lid")]
    assert told(reader.mark(talk_of(*far)).marks, *far) == [("fault", "bent", None)]


def test_attributes_are_those_of_the_kind(reader: LearnedMarker) -> None:
    worn, oil = reader.mark(talk_of("the lid is worn and I will oil it")).marks
    assert worn.attributes == {"kind": "worn"}
    assert set(oil.attributes) == {"action", "standing", "by"}


def test_a_like_name_points_back_and_another_is_new(reader: LearnedMarker) -> None:
    marked = reader.mark(talk_of("the lid is bent", "the gear is worn", "eight quid, the lid"))
    assert marked.pointers is not None
    assert [pointers[0].earlier for pointers in marked.pointers] == [-1, -1, 0]
    assert {pointer.earlier for pointer in marked.pointers[2]} == {-1, 0, 1}


def test_talk_of_one_thing_is_all_one_thing(reader: LearnedMarker) -> None:
    """The third mention may point at either of the two before; both are the same thing."""
    marked = reader.mark(talk_of("the lid is bent", "the lid is worn", "oil the lid"))
    assert marked.pointers is not None
    assert [pointers[0].earlier >= 0 for pointers in marked.pointers] == [False, True, True]


@pytest.mark.parametrize(
    "talk",
    [
        (),
        ("",),
        ("", "  ", ""),
        ("...",),
        ("?!", "—", "…"),
        ("🔧🔩", "👍🏽"),
        ("\u200b", "\u0301"),
    ],
)
def test_talk_without_words_gives_nothing(reader: LearnedMarker, talk: tuple[str, ...]) -> None:
    assert reader.mark(talk_of(*talk)).marks == ()
    assert any_marker().mark([Utterance(1, 0.0, 1.0, ())]).marks == ()


def test_breaths_without_words_shift_nothing(reader: LearnedMarker) -> None:
    (mark,) = reader.mark(talk_of("", "...", "the lid is bent", "")).marks
    assert (mark.span, mark.part) == (Span(2, 11, 15), Span(2, 4, 7))


def test_ten_thousand_words_in_one_breath(reader: LearnedMarker) -> None:
    """Everything is found, and at its place."""
    text = " ".join(["the lid is fine" + " and so on" * 32] * 100)
    marks = reader.mark(talk_of(text)).marks
    assert len(text.split()) == 10_000
    assert len(marks) == 100
    assert {text[m.span.start : m.span.end] for m in marks} == {"fine"}
    assert len({m.span for m in marks}) == 100


@pytest.mark.parametrize(("cut", "batch"), [(NARROW, 1), (NARROW, 3), (Cut(limit=140, before=2, after=1), 2)])
def test_where_windows_are_cut_changes_nothing_for_an_encoder_without_context(cut: Cut, batch: int) -> None:
    talk = talk_of(*(f"w{n} lid bent x{n * 7 % 11} gear worn fine " * (n % 4 + 1) for n in range(16)))
    whole, cut_up = any_marker().mark(talk), replace(any_marker(), cut=cut, batch=batch).mark(talk)
    assert [replace(m, sure=0) for m in whole.marks] == [replace(m, sure=0) for m in cut_up.marks]
    assert [m.sure for m in whole.marks] == pytest.approx([m.sure for m in cut_up.marks], abs=1e-5)
    assert len(whole.marks) > 40
    assert len({mark.kind for mark in whole.marks}) > 5


def test_batches_are_as_large_as_asked() -> None:
    marker = replace(any_marker(), cut=NARROW, batch=3)
    marker.mark(talk_of(*["lid " * 100] * 7))
    assert isinstance(marker.encoder, FixedEncoder)
    assert [rows for rows, _ in marker.encoder.shapes] == [3, 3, 1]


def test_a_threshold_nobody_reaches_leaves_nothing(reader: LearnedMarker) -> None:
    talk = talk_of("the lid is bent")
    assert replace(reader, thresholds=Thresholds(statement=1.1)).mark(talk).marks == ()
    (mark,) = replace(reader, thresholds=Thresholds(part=1.1)).mark(talk).marks
    assert mark.part is None


@pytest.mark.parametrize("seed", range(5))
def test_what_holds_for_any_weights(seed: int) -> None:
    texts = tuple(f"the lid {n} is bent, eight quid; oil it or don't {'on' * n}" for n in range(12))
    marked = any_marker(seed).mark(talk_of(*texts))
    assert marked.pointers is not None
    assert len(marked.pointers) == len(marked.marks) > 0
    for at, (mark, pointers) in enumerate(zip(marked.marks, marked.pointers, strict=True)):
        assert {f"{name.split('.')[1]}" for name in ATTRIBUTES_OF[mark.kind]} == set(mark.attributes)
        assert all(value in {v for vs in ATTRIBUTES.values() for v in vs} for value in mark.attributes.values())
        assert bool(pointers) == (mark.kind in POINTING_KINDS)
        assert len(pointers) <= POINTERS_KEPT
        assert all(-1 <= pointer.earlier < at for pointer in pointers)
        assert all(marked.marks[p.earlier].kind in POINTING_KINDS for p in pointers if p.earlier >= 0)
        assert [p.score for p in pointers] == sorted((p.score for p in pointers), reverse=True)
        assert len({p.earlier for p in pointers}) == len(pointers)
        assert sum(np.exp(p.score) for p in pointers) <= 1 + 1e-5


def test_scores_far_apart_are_still_numbers() -> None:
    """A pointer that cannot be: its probability is nothing, its score stays a number, and nobody is warned."""
    marker = any_marker()
    weights = dict(marker.heads.weights) | {"point_score.weight": marker.heads.weights["point_score.weight"] * 1e4}
    weights["rows_score.weight"] = weights["rows_score.weight"] * 1e4
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        marked = replace(marker, heads=Heads(weights)).mark(talk_of(*["the lid is bent, oil it"] * 4))
    assert all(np.isfinite(pointer.score) for pointers in marked.pointers or () for pointer in pointers)


def test_a_mark_as_a_mention() -> None:
    texts = ("the top gear's lid is bent", "oil that")
    named = mention_of(Mark("fault", Span(0, 22, 26), Span(0, 0, 18)), texts)
    assert (named.kind, named.utterance, named.name.words, named.part_at) == (
        "fault",
        0,
        ("top", "gear", "lid"),
        (0, 0, 18),
    )
    pointed = mention_of(Mark("work", Span(1, 0, 3), None), texts)
    assert (pointed.name.points, pointed.part_at) == (True, None)
