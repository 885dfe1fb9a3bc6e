"""What holds for marking whatever was said, however windows are cut, whatever the weights."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays
from language.marking.sealed import PlainTokenizer, any_marker, talk_of

from benchnotes.language.marking.heads import Array, log_softmax, softmax
from benchnotes.language.marking.tags import tagged_spans, whole_words
from benchnotes.language.marking.windows import LONGEST_PIECE, Cut, Token, pieces, windows

TEXTS = st.lists(
    st.text(max_size=60) | st.sampled_from(["", "...", "🔧 ok", "the lid is bent", "a" * 700]), max_size=12
)
LONG = st.lists(st.integers(0, 420).map(lambda words: " ".join(f"w{n}" for n in range(words))), max_size=9)
CUTS = st.builds(Cut, limit=st.integers(LONGEST_PIECE + 2, 500), before=st.integers(0, 5), after=st.integers(0, 5))


@given(LONG, CUTS, st.none() | st.integers(1, 6))
@settings(deadline=None)
def test_every_token_is_in_one_core(texts: Sequence[str], cut: Cut, first_core: int | None) -> None:
    """In order, none twice, none lost, and with its own id."""
    talk = pieces(texts, PlainTokenizer())
    there = [(p.utterance, *place, id_) for p in talk for id_, place in zip(p.ids, p.offsets, strict=True)]
    made = windows(talk, cut, first_core=first_core)
    cores = [
        (token.utterance, token.start, token.end, id_)
        for window in made
        for token, id_ in zip(window.tokens[slice(*window.core)], window.ids[slice(*window.core)], strict=True)
        if token.utterance >= 0
    ]
    assert cores == there


@given(LONG, CUTS)
@settings(deadline=None)
def test_no_window_is_too_long_and_all_are_talk_in_order(texts: Sequence[str], cut: Cut) -> None:
    for window in windows(pieces(texts, PlainTokenizer()), cut):
        assert len(window.ids) == len(window.tokens) <= cut.limit
        assert window.ids[0] == cut.start_id
        assert window.ids[-1] == cut.end_id
        assert 1 <= window.core[0] < window.core[1] < len(window.ids)
        said = [token for token in window.tokens if token.utterance >= 0]
        assert said == sorted(said, key=lambda token: (token.utterance, token.start))


@given(TEXTS)
@settings(deadline=None)
def test_pieces_hold_all_that_the_tokenizer_gives(texts: Sequence[str]) -> None:
    talk = pieces(texts, PlainTokenizer())
    assert all(0 < len(piece.ids) <= LONGEST_PIECE for piece in talk)
    for number, text in enumerate(texts):
        mine = [place for piece in talk if piece.utterance == number for place in piece.offsets]
        assert mine == PlainTokenizer().encode(text, add_special_tokens=False).offsets


@given(TEXTS, st.integers(0, 2**32 - 1), st.floats(0.05, 0.95))
@settings(deadline=None)
def test_spans_are_words_of_their_utterance(texts: Sequence[str], seed: int, at_least: float) -> None:
    tokens = tuple(Token(p.utterance, *place) for p in pieces(texts, PlainTokenizer()) for place in p.offsets)
    tags = np.random.default_rng(seed).dirichlet([1, 1, 1], size=len(tokens)).astype(np.float32)
    spans = tagged_spans(tags, tokens, texts, at_least=at_least)
    assert [each.span for each in spans] == sorted(each.span for each in spans)
    assert not any(one.span.overlaps(two.span) for one, two in pairwise(spans))
    for each in spans:
        text, (first, last) = texts[each.span.utterance], each.pieces
        assert 0 <= each.span.start < each.span.end <= len(text)
        assert {token.utterance for token in tokens[first:last]} == {each.span.utterance}
        assert at_least - 1e-5 <= each.sure <= 1 or last - first > 1
        assert not _cuts_a_word(text, each.span.start)
        assert not _cuts_a_word(text, each.span.end)
        assert text[each.span.start : each.span.end].strip(" ") == text[each.span.start : each.span.end]


def _cuts_a_word(text: str, at: int) -> bool:
    return 0 < at < len(text) and text[at - 1].isalnum() and text[at].isalnum()


@given(st.text(min_size=1, max_size=40), st.data())
def test_growing_to_whole_words_is_done_at_once(text: str, data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(text) - 1))
    end = data.draw(st.integers(start + 1, len(text)))
    grown = whole_words(text, start, end)
    assert 0 <= grown[0] < grown[1] <= len(text)
    assert whole_words(text, *grown) == grown


NUMBERS = arrays.arrays(
    np.float32, st.tuples(st.integers(0, 5), st.integers(1, 7)), elements=st.floats(-1e4, 1e4, width=32)
)


@given(NUMBERS, st.floats(-100, 100))
def test_softmax_shares_out_one(scores: Array, more: float) -> None:
    shares = softmax(scores)
    assert shares.shape == scores.shape
    assert np.all((shares >= 0) & (shares <= 1))
    assert np.allclose(shares.sum(axis=-1), 1, atol=1e-5)
    assert np.allclose(softmax(scores + np.float32(more)), shares, atol=2e-2)  # 1e4 holds steps of 0.001 in 32 bits
    assert np.all(np.isfinite(log_softmax(scores)))
    assert np.allclose(np.exp(log_softmax(scores)), shares, atol=1e-4)


@given(TEXTS, st.integers(0, 50))
@settings(deadline=None, max_examples=30)
def test_marks_of_any_talk(texts: Sequence[str], seed: int) -> None:
    """In order, inside the talk, the same again; pointers only point back."""
    talk = talk_of(*texts)
    said, marker = [utterance.text for utterance in talk], any_marker(seed)
    marked = marker.mark(talk)
    assert marker.mark(talk) == marked
    assert [mark.span for mark in marked.marks] == sorted(mark.span for mark in marked.marks)
    assert max(Counter((mark.kind, mark.span) for mark in marked.marks).values(), default=1) == 1
    for at, mark in enumerate(marked.marks):
        for span in (mark.span, mark.part):
            assert span is None or said[span.utterance][span.start : span.end].strip(" ")
        assert mark.part is None or abs(mark.part.utterance - mark.span.utterance) <= 1
        assert all(-1 <= p.earlier < at and np.isfinite(p.score) for p in (marked.pointers or ())[at])


@given(TEXTS, TEXTS, st.integers(0, 50))
@settings(deadline=None, max_examples=30)
def test_what_comes_later_changes_no_pointer(texts: Sequence[str], later: Sequence[str], seed: int) -> None:
    """For an encoder without context and a breath between, marks and pointers of the first talk stay as they were."""
    marker = any_marker(seed)
    first = marker.mark(talk_of(*texts, "", ""))
    both = marker.mark(talk_of(*texts, "", "", *later))
    size = len(first.marks)
    assert [replace(m, sure=0) for m in both.marks[:size]] == [replace(m, sure=0) for m in first.marks]
    for one, two in zip(first.pointers or (), (both.pointers or ())[:size], strict=True):
        assert np.allclose([p.score for p in one], [p.score for p in two], atol=1e-2)
