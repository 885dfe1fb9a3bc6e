"""The learned marker: an encoder reads the talk, heads mark statements in it and say what they point back at."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from benchnotes.language.belonging.candidates import POINTING_KINDS, Mention, Things
from benchnotes.language.marking.heads import ATTRIBUTES, ATTRIBUTES_OF, MARK_KINDS, Array, Heads, link_row, log_softmax
from benchnotes.language.marking.marker import Mark, Marked, Pointer, Span
from benchnotes.language.marking.tags import TaggedSpan, tagged_spans
from benchnotes.language.marking.windows import Cut, Token, Tokenizer, Window, pieces, windows
from benchnotes.record.heard import Utterance

NEIGHBOURS = 1
"""A part may stand this many utterances from its statement."""
POINTERS_KEPT = 6


class Encoder(Protocol):
    """Word pieces in, one vector each out."""

    def __call__(self, ids: NDArray[np.int64], mask: NDArray[np.int64]) -> Array:
        """Both (windows, pieces); gives (windows, pieces, D)."""


@dataclass(frozen=True, slots=True)
class Thresholds:
    """How likely is likely enough."""

    piece: float = 0.5
    """A word piece is inside a span."""
    part: float = 0.4
    statement: float = 0.5
    """A statement is kept; of what span and utterance say together."""


DEFAULT_CUT = Cut()
DEFAULT_THRESHOLDS = Thresholds()


@dataclass(frozen=True, slots=True)
class _Read:
    """The talk as the encoder sees it: core pieces of all windows, in order."""

    texts: tuple[str, ...]
    tokens: tuple[Token, ...]
    hidden: Array
    utterances: Array
    """(utterances, D): mean vector of each; zeros where nothing was said."""


@dataclass(frozen=True)
class LearnedMarker:
    encoder: Encoder
    tokenizer: Tokenizer
    heads: Heads
    cut: Cut = DEFAULT_CUT
    thresholds: Thresholds = DEFAULT_THRESHOLDS
    batch: int = 1
    """Windows encoded at once: more is quicker where cores are many, and takes more memory."""

    def mark(self, talk: Sequence[Utterance]) -> Marked:
        if not talk:
            return Marked(())
        read = self._read(tuple(utterance.text for utterance in talk))
        if not read.tokens:  # breaths without a word: nothing went through the encoder
            return Marked(())
        marks, spans = self._marks(read)
        return Marked(marks, self._pointers(read, marks, spans))

    def _read(self, texts: tuple[str, ...]) -> _Read:
        cut = windows(pieces(texts, self.tokenizer), self.cut)
        hidden = [rows for at in range(0, len(cut), self.batch) for rows in self._encoded(cut[at : at + self.batch])]
        tokens = tuple(token for window in cut for token in window.tokens[slice(*window.core)])
        stacked = np.concatenate(hidden) if hidden else np.zeros((0, 1), np.float32)
        kept = np.array([token.utterance >= 0 for token in tokens], bool)
        stacked, tokens = stacked[kept], tuple(token for token in tokens if token.utterance >= 0)
        return _Read(texts, tokens, stacked, _means(stacked, tokens, len(texts)))

    def _encoded(self, batch: Sequence[Window]) -> list[Array]:
        longest = max(len(window.ids) for window in batch)
        ids = np.ones((len(batch), longest), np.int64)
        mask = np.zeros((len(batch), longest), np.int64)
        for row, window in enumerate(batch):
            ids[row, : len(window.ids)] = window.ids
            mask[row, : len(window.ids)] = 1
        hidden = self.encoder(ids, mask)
        return [hidden[row, slice(*window.core)] for row, window in enumerate(batch)]

    def _marks(self, read: _Read) -> tuple[tuple[Mark, ...], Array]:
        """Marks in order of the talk, and for each its vectors (words, part, utterance; 3 D)."""
        tags, present = self.heads.tags(read.hidden), self.heads.present(read.utterances)
        parts = tagged_spans(self.heads.parts(read.hidden), read.tokens, read.texts, at_least=self.thresholds.part)
        found: list[tuple[str, TaggedSpan, float]] = []
        for at, kind in enumerate(MARK_KINDS):
            for tagged in tagged_spans(tags[:, at], read.tokens, read.texts, at_least=self.thresholds.piece):
                sure = (tagged.sure + float(present[tagged.span.utterance, at])) / 2
                if sure >= self.thresholds.statement:
                    found.append((kind, tagged, sure))
        found.sort(key=lambda each: (each[1].span, MARK_KINDS.index(each[0])))
        named = np.array([_mean(read.hidden, part) for part in parts], np.float32)
        linked = [self._linked(read, tagged, parts, named) for _, tagged, _ in found]
        size = 3 * read.hidden.shape[1]
        spans = np.array([self._vector(read, each[1], part) for each, part in zip(found, linked, strict=True)])
        spans = spans.reshape(len(found), size).astype(np.float32)
        values = self.heads.attributes(spans)
        marks = tuple(
            Mark(kind, tagged.span, part.span if part else None, _attributes(kind, values, at), sure)
            for at, ((kind, tagged, sure), part) in enumerate(zip(found, linked, strict=True))
        )
        return marks, spans

    def _linked(self, read: _Read, tagged: TaggedSpan, parts: Sequence[TaggedSpan], named: Array) -> TaggedSpan | None:
        """The part that a statement is about; `named` (parts, D) are their mean vectors."""
        at = tagged.span.utterance
        near = [which for which, part in enumerate(parts) if abs(part.span.utterance - at) <= NEIGHBOURS]
        words = np.concatenate([_mean(read.hidden, tagged), read.utterances[at]])
        rows = np.array([link_row(_place(tagged.span), _place(parts[which].span)) for which in near], np.float32)
        best = int(self.heads.links(words, named[near], rows).argmax())
        return parts[near[best]] if best < len(near) else None

    @staticmethod
    def _vector(read: _Read, tagged: TaggedSpan, part: TaggedSpan | None) -> Array:
        named = _mean(read.hidden, part) if part else np.zeros(read.hidden.shape[1], np.float32)
        return np.concatenate([_mean(read.hidden, tagged), named, read.utterances[tagged.span.utterance]])

    def _pointers(self, read: _Read, marks: Sequence[Mark], spans: Array) -> tuple[tuple[Pointer, ...], ...]:
        """Best first; scores are log probabilities over everything the mark may point at."""
        queries, keys = self.heads.pointing_vectors(spans)
        things = Things()
        taken: list[int] = []
        pointers: list[tuple[Pointer, ...]] = []
        for at, mark in enumerate(marks):
            if mark.kind not in POINTING_KINDS:
                pointers.append(())
                continue
            mention = mention_of(mark, read.texts)
            first, recent = things.first, taken[things.first :]
            scores = log_softmax(self.heads.pointers(queries[at], keys[recent], things.rows(mention)))
            ranked = [(recent[j] if j < len(recent) else -1, float(scores[j])) for j in np.argsort(-scores)]
            pointers.append(tuple(Pointer(*each) for each in ranked[:POINTERS_KEPT]))
            best = int(scores.argmax())
            things.add(mention, things.thing_of(first + best) if best < len(recent) else None)
            taken.append(at)
        return tuple(pointers)


def mention_of(mark: Mark, texts: Sequence[str]) -> Mention:
    """The mark as far as pointing goes."""
    part = mark.part
    said = texts[part.utterance][part.start : part.end] if part else None
    return Mention.of(mark.kind, mark.span.utterance, said, _place(part) if part else None)


def _place(span: Span) -> tuple[int, int, int]:
    return span.utterance, span.start, span.end


def _mean(hidden: Array, tagged: TaggedSpan) -> Array:
    return np.asarray(hidden[slice(*tagged.pieces)].mean(axis=0), dtype=np.float32)


def _means(hidden: Array, tokens: Sequence[Token], utterances: int) -> Array:
    owner = np.array([token.utterance for token in tokens], dtype=np.int64)
    sums = np.zeros((utterances, hidden.shape[1]), np.float32)
    np.add.at(sums, owner, hidden)
    counts = np.bincount(owner, minlength=utterances).clip(min=1)[:, None]
    return np.asarray(sums / counts, dtype=np.float32)


def _attributes(kind: str, values: dict[str, Array], at: int) -> dict[str, str]:
    return {name.split(".")[1]: ATTRIBUTES[name][int(values[name][at].argmax())] for name in ATTRIBUTES_OF[kind]}
