"""Tags of word pieces become spans of words: whole words, within one utterance, each once."""

from __future__ import annotations

import numpy as np
import pytest
from language.marking.sealed import PlainTokenizer

from benchnotes.language.marking.heads import Array
from benchnotes.language.marking.tags import tagged_spans, whole_words
from benchnotes.language.marking.windows import Token, pieces


def tokens_of(*texts: str) -> tuple[Token, ...]:
    return tuple(Token(p.utterance, *place) for p in pieces(texts, PlainTokenizer()) for place in p.offsets)


def tags(letters: str) -> Array:
    """One letter a piece: b begins, i inside, o outside; B and I are sure of it, the small ones only just."""
    rows = {"B": (0.05, 0.9, 0.05), "b": (0.45, 0.4, 0.15), "I": (0.05, 0.05, 0.9), "i": (0.45, 0.15, 0.4),
            "O": (0.9, 0.05, 0.05)}  # fmt: skip
    return np.array([rows[letter] for letter in letters], np.float32).reshape(len(letters), 3)


def found(letters: str, *texts: str, at_least: float = 0.5) -> list[str]:
    spans = tagged_spans(tags(letters), tokens_of(*texts), texts, at_least=at_least)
    return [texts[each.span.utterance][each.span.start : each.span.end] for each in spans]


@pytest.mark.parametrize(
    ("letters", "text", "spans"),
    [
        ("OBIO", "the lid was bent", ["lid was"]),
        ("OOOO", "the lid was bent", []),
        ("BBBB", "the lid was bent", ["the", "lid", "was", "bent"]),
        ("BIII", "the lid was bent", ["the lid was bent"]),
        ("OIOI", "the lid was bent", ["lid", "bent"]),
        # a word in pieces is one word, however its pieces are tagged
        ("BBB", "perishedness", ["perishedness"]),
        ("OIO", "perishedness", ["perishedness"]),
        ("BIO", "perishedness", ["perishedness"]),
        ("IOI", "perishedness", ["perishedness"]),
        ("BOBO", "seizedup now", ["seizedup", "now"]),
        # what stands at the ends of words is left outside
        ("OBI", "the lid.", ["lid"]),
        ("OBII", "the lid...", ["lid"]),
        ("IIII", ", lid , ,", ["lid"]),
        ("BOB", "... lid", []),
        ("III", "—?!", []),
    ],
)
def test_spans_of_words(letters: str, text: str, spans: list[str]) -> None:
    size = len(tokens_of(text))
    assert found(letters.ljust(size, "O")[:size], text) == spans


def test_a_span_ends_with_its_utterance() -> None:
    assert found("OIIO", "the lid", "fell off") == ["lid", "fell"]


def test_two_breaths_that_meet_letter_to_letter_are_two() -> None:
    """Places are characters of each text: "ab" ends where "cd" of the next would begin, and still is another word."""
    assert found("BB", "ab", "cd") == ["ab", "cd"]
    assert found("IB", "ab", "cd") == ["ab", "cd"]


def test_how_sure_is_enough_can_be_set() -> None:
    assert found("bi", "worn out", at_least=0.5) == ["worn out"]
    assert found("bi", "worn out", at_least=0.6) == []
    (span,) = tagged_spans(tags("bi"), tokens_of("worn out"), ["worn out"], at_least=0.5)
    assert span.sure == pytest.approx(0.55)
    assert span.pieces == (0, 2)


def test_pieces_count_through_the_whole_talk() -> None:
    talk = ("the lid", "is bent")
    (span,) = tagged_spans(tags("OOOB"), tokens_of(*talk), talk, at_least=0.5)
    assert span.pieces == (3, 4)
    assert (span.span.utterance, span.span.start, span.span.end) == (1, 3, 7)


def test_no_pieces_no_spans() -> None:
    assert tagged_spans(tags(""), (), (), at_least=0.5) == ()


@pytest.mark.parametrize(
    ("text", "inside", "whole"),
    [
        ("the gland weeps", (5, 7), "gland"),
        ("the gland weeps", (4, 12), "gland weeps"),
        ("gland.", (0, 6), "gland"),
        (" . gland .", (0, 10), "gland"),
        ("4.5 mm", (0, 6), "4.5 mm"),
        ("...", (0, 3), "."),
        ("café's", (0, 2), "café"),
        ("🔧 ok", (0, 4), "🔧 ok"),
    ],
)
def test_whole_words(text: str, inside: tuple[int, int], whole: str) -> None:
    start, end = whole_words(text, *inside)
    assert text[start:end] == whole
