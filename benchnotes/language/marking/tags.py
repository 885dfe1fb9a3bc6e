"""From probabilities of word pieces to spans of words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from benchnotes.language.marking.heads import Array
from benchnotes.language.marking.marker import Span
from benchnotes.language.marking.windows import Token


@dataclass(frozen=True, slots=True)
class TaggedSpan:
    span: Span
    pieces: tuple[int, int]
    """Half-open range of word pieces of the whole talk."""
    sure: float
    """Mean probability that its pieces are inside."""


def tagged_spans(
    tags: Array, tokens: Sequence[Token], texts: Sequence[str], *, at_least: float
) -> tuple[TaggedSpan, ...]:
    """Spans of one tag set, in order, none over another. `tags` (pieces, 3): outside, beginning, inside. Spans end
    with their utterance.

    A piece is inside where outside is less likely than 1 - `at_least`.
    """
    inside = 1 - tags[:, 0]
    within = np.flatnonzero(inside >= at_least)
    runs: list[list[int]] = []
    for piece in within.tolist():
        follows = bool(runs) and runs[-1][1] == piece and tokens[piece].utterance == tokens[piece - 1].utterance
        begins = tags[piece, 1] > tags[piece, 2] and not _mid_word(tokens, piece)
        if follows and not begins:
            runs[-1][1] = piece + 1
        else:
            runs.append([piece, piece + 1])
    spans: list[TaggedSpan] = []
    for first, last in runs:
        span = _span(inside, tokens, texts, first, last)
        if spans and spans[-1].span.overlaps(span.span):  # two ends of one word, with a piece between that is outside
            span = _span(inside, tokens, texts, spans.pop().pieces[0], last)
        spans.append(span)
    return tuple(span for span in spans if _says_something(texts, span.span))


def _says_something(texts: Sequence[str], span: Span) -> bool:
    """Some letter or figure stands in it: nobody says a full stop."""
    return any(letter.isalnum() for letter in texts[span.utterance][span.start : span.end])


def _mid_word(tokens: Sequence[Token], piece: int) -> bool:
    before = tokens[piece - 1]
    return piece > 0 and before.utterance == tokens[piece].utterance and before.end == tokens[piece].start


def _span(inside: Array, tokens: Sequence[Token], texts: Sequence[str], first: int, last: int) -> TaggedSpan:
    utterance = tokens[first].utterance
    start, end = whole_words(texts[utterance], tokens[first].start, tokens[last - 1].end)
    return TaggedSpan(Span(utterance, start, end), (first, last), float(inside[first:last].mean()))


def whole_words(text: str, start: int, end: int) -> tuple[int, int]:
    """The range grown to word boundaries, without punctuation at its ends."""
    while start > 0 and text[start - 1].isalnum() and text[start : start + 1].isalnum():
        start -= 1
    while end < len(text) and text[end].isalnum() and text[end - 1 : end].isalnum():
        end += 1
    while end - start > 1 and text[end - 1] in ".,;:!? ":
        end -= 1
    while end - start > 1 and text[start] in ".,;:!? ":
        start += 1
    return start, end
