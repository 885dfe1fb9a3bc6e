"""What is not sure enough is left out, and nothing points at it any more."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from benchnotes.language.keeping import LEAST, LEAST_OF, kept
from benchnotes.language.marking.marker import Mark, Marked, Pointer, Span


def marked(*sure: float, kind: str = "fault") -> Marked:
    """Marks one after another, each of which may point at every earlier one or at none."""
    marks = tuple(Mark(kind, Span(at, 0, 4), None, {}, each) for at, each in enumerate(sure))
    return Marked(marks, tuple(tuple(Pointer(j, -float(j)) for j in range(-1, at)) for at in range(len(sure))))


def test_what_is_sure_stays_as_it_was() -> None:
    said = marked(0.9, 0.8)
    assert kept(said) == said


def test_an_unsure_fault_is_left_out_and_pointers_follow() -> None:
    left = kept(marked(0.9, LEAST - 0.01, 0.9))
    assert [mark.span.utterance for mark in left.marks] == [0, 2]
    assert left.pointers is not None
    assert [pointer.earlier for pointer in left.pointers[1]] == [-1, 0]


def test_advice_must_be_surer_than_the_rest() -> None:
    between = (LEAST + LEAST_OF["advice"]) / 2
    assert len(kept(marked(between)).marks) == 1
    assert not kept(marked(between, kind="advice")).marks


def test_marks_from_a_list_of_words_stay() -> None:
    said = Marked(marked(0.9, 0.1).marks)
    assert kept(said) == said


@given(st.lists(st.floats(0, 1), max_size=12))
def test_kept_twice_is_kept_once_and_points_only_back(sure: list[float]) -> None:
    once = kept(marked(*sure))
    assert kept(once) == once
    assert all(p.earlier < at for at, each in enumerate(once.pointers or ()) for p in each)
