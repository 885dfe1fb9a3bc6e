"""The learned marker as it is shipped, on talk written for this test in several trades."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest
from language.marking.sealed import talk_of

from benchnotes.language.marking.heads import Heads
from benchnotes.language.marking.learned import LearnedMarker
from benchnotes.language.marking.marker import Mark, Marked
from benchnotes.language.marking.windows import Cut, pieces, windows
from benchnotes.record.heard import captioned
from benchnotes.session.learned_reader import open_learned_marker

pytestmark = pytest.mark.reader

LOOM = (
    "Right, next one is a treadle loom, made by Harwick and Sons.",
    "The left pedal is cracked right through.",
    "I glued it and clamped it overnight.",
    "The heddles are all fine, nothing wrong there.",
    "I'll need two new springs for the back beam.",
    "They're about four pounds each.",
)
KILN = (
    "okay this is an electric kiln from the school",
    "the lower element has burnt out",
    "i have ordered a new one thirty eight dollars",
    "measured two hundred and thirty volts at the socket",
    "so i fitted the new element",
)
ACCORDION = (
    "This accordion came in with a sticking key.",
    "The bellows are leaking at the bottom corner.",
    "Patched the corner with new tape.",
    "Tried it after, and it holds air now.",
)
STRIMMER = (
    "Carburettor is full of muck, cleaned it out.",
    "The fuel line has perished, so that wants replacing.",
    "Might be the coil as well.",
    "Tell her to drain the tank before winter.",
)
NO_REPAIR = (
    "People always ask me about sharpening, you know.",
    "I used to work on ships, years ago.",
    "Lovely weather today, isn't it.",
)
EVERYTHING = LOOM + KILN + ACCORDION + NO_REPAIR + STRIMMER


@pytest.fixture(scope="module")
def marker() -> LearnedMarker:
    opened = open_learned_marker()
    if opened is None:
        pytest.skip("the published encoder is not here: make weights")
    return opened


def told(marked: Marked, texts: Sequence[str]) -> list[tuple[str, str, str | None]]:
    """Kind, words, part."""
    said = lambda span: None if span is None else texts[span.utterance][span.start : span.end]  # noqa: E731
    return [(mark.kind, said(mark.span), said(mark.part)) for mark in marked.marks]


def of_kind(marker: LearnedMarker, texts: Sequence[str], kind: str) -> list[Mark]:
    return [mark for mark in marker.mark(talk_of(*texts)).marks if mark.kind == kind]


@pytest.mark.parametrize(
    ("texts", "kind", "words", "part"),
    [
        (LOOM, "machine", "loom", None),
        (LOOM, "machine", "Harwick and Sons", None),
        (LOOM, "fault", "cracked", "pedal"),
        (LOOM, "work", "glued", "it"),
        (LOOM, "clear", "fine", "heddles"),
        (LOOM, "need", "need", "springs"),
        (LOOM, "price", "four pounds", "They"),
        (KILN, "machine", "kiln", None),
        (KILN, "fault", "burnt", "element"),
        (KILN, "order", "ordered", "one"),
        (KILN, "price", "thirty eight dollars", "one"),
        (KILN, "reading", "two hundred and thirty volts", "socket"),
        (KILN, "fit", "fitted", "element"),
        (ACCORDION, "fault", "leaking", "bellows"),
        (ACCORDION, "work", "Patched", "corner"),
        (ACCORDION, "test", "holds air", "it"),
        (STRIMMER, "fault", "full of muck", "Carburettor"),
        (STRIMMER, "work", "cleaned", "Carburettor"),
        (STRIMMER, "fault", "perished", "fuel line"),
        (STRIMMER, "guess", "Might be", "coil"),
        (STRIMMER, "advice", "drain the tank", None),
    ],
)
def test_what_is_said_at_the_bench(
    marker: LearnedMarker, texts: Sequence[str], kind: str, words: str, part: str | None
) -> None:
    found = told(marker.mark(talk_of(*texts)), texts)
    right = [said for of_kind, said, of in found if of_kind == kind and words in said and (part or "") in (of or "")]
    assert right, found


@pytest.mark.parametrize(
    ("texts", "kind", "attributes"),
    [
        (LOOM, "fault", {"kind": "cracked"}),
        (KILN, "fault", {"kind": "burnt"}),
        (ACCORDION, "fault", {"kind": "leaking"}),
        (ACCORDION, "test", {"result": "pass"}),
        (STRIMMER, "work", {"action": "clean", "standing": "done", "by": "bench"}),
        (LOOM, "need", {"quantity": "2"}),
        (LOOM, "price", {"basis": "about"}),
        (KILN, "reading", {"unit": "V"}),
    ],
)
def test_what_kind_of_it(marker: LearnedMarker, texts: Sequence[str], kind: str, attributes: dict[str, str]) -> None:
    marks = of_kind(marker, texts, kind)
    assert any(attributes.items() <= dict(mark.attributes).items() for mark in marks), marks


def test_most_talk_says_nothing(marker: LearnedMarker) -> None:
    assert marker.mark(talk_of(*NO_REPAIR)).marks == ()


@pytest.mark.parametrize("talk", [("",), ("...", "?!"), ("🔧🔩",), ("\u200b",)])
def test_talk_without_words(marker: LearnedMarker, talk: tuple[str, ...]) -> None:
    assert marker.mark([captioned(1, 0.0, 1.0, text) for text in talk]).marks == ()


def test_the_same_talk_gives_the_same_marks(marker: LearnedMarker) -> None:
    """To the last bit: the encoder works in 32-bit numbers and in a fixed order."""
    assert marker.mark(talk_of(*EVERYTHING)) == marker.mark(talk_of(*EVERYTHING))


def test_how_many_windows_at_once_changes_no_mark(marker: LearnedMarker) -> None:
    one, three = (replace(marker, cut=Cut(limit=160), batch=size).mark(talk_of(*EVERYTHING * 2)) for size in (1, 3))
    assert [replace(m, sure=0) for m in one.marks] == [replace(m, sure=0) for m in three.marks]
    assert [m.sure for m in one.marks] == pytest.approx([m.sure for m in three.marks], abs=1e-3)


def test_a_film_and_the_part_of_it_that_a_window_sees(marker: LearnedMarker) -> None:
    """What is marked in a window hangs on that window alone: cut out of the film, its core gets the same marks."""
    cut, talk = Cut(limit=160), EVERYTHING * 2
    narrow = replace(marker, cut=cut)
    whole = narrow.mark(talk_of(*talk)).marks
    for window in windows(pieces(talk, marker.tokenizer), cut):
        first, last = (window.tokens[at].utterance for at in (1, len(window.tokens) - 2))
        alone = replace(marker, cut=Cut(limit=400)).mark(talk_of(*talk[first : last + 1])).marks
        inner = range(window.tokens[window.core[0]].utterance + 1, window.tokens[window.core[1] - 1].utterance)
        shifted = [replace(m, span=replace(m.span, utterance=m.span.utterance + first)) for m in alone]
        assert _places(shifted, inner) == _places(whole, inner)


def _places(marks: Sequence[Mark], inner: range) -> list[tuple[str, int, int, int]]:
    return [(m.kind, m.span.utterance, m.span.start, m.span.end) for m in marks if m.span.utterance in inner]


def test_heads_and_encoder_are_of_one_size(marker: LearnedMarker) -> None:
    hidden = marker.encoder(np.array([[0, 1996, 2]]), np.ones((1, 3), np.int64))
    assert hidden.shape == (1, 3, marker.heads.weights["tags.weight"].shape[1])
    assert isinstance(marker.heads, Heads)
    assert all(np.isfinite(value).all() for value in marker.heads.weights.values())
