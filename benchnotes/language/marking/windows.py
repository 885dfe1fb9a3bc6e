"""Talk cut into windows of word pieces: every utterance is marked once, with its neighbours around it.

Times matter less than context here: a window is a run of whole utterances, its core is what is marked in it,
the rest is there to be understood with.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

LONGEST_PIECE = 128
"""Tokens; a longer utterance is marked as several pieces, so that nothing said falls off a window's end."""


class Encoding(Protocol):
    @property
    def ids(self) -> list[int]: ...
    @property
    def offsets(self) -> list[tuple[int, int]]: ...


class Tokenizer(Protocol):
    """The encoder's own word pieces; offsets are character ranges of the text."""

    def encode(self, sequence: str, *, add_special_tokens: bool) -> Encoding: ...


@dataclass(frozen=True, slots=True)
class Piece:
    """Word pieces of (a stretch of) one utterance."""

    utterance: int
    ids: tuple[int, ...]
    offsets: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Token:
    """Where a word piece of a window stands in the talk; utterance -1 for a separator."""

    utterance: int
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Window:
    ids: tuple[int, ...]
    tokens: tuple[Token, ...]
    core: tuple[int, int]
    """Half-open range of `ids` that is marked in this window."""


@dataclass(frozen=True, slots=True)
class Cut:
    """How talk is cut; in word pieces and pieces of talk."""

    limit: int = 384
    before: int = 3
    after: int = 2
    start_id: int = 0
    end_id: int = 2


SEPARATOR = Token(-1, 0, 0)


def pieces(texts: Sequence[str], tokenizer: Tokenizer) -> tuple[Piece, ...]:
    """Word pieces of every utterance, in order; an utterance without any gives none."""
    found = []
    for number, text in enumerate(texts):
        encoding = tokenizer.encode(text, add_special_tokens=False)
        ids, offsets = tuple(encoding.ids), tuple(encoding.offsets)
        for at in range(0, len(ids), LONGEST_PIECE):
            until = at + LONGEST_PIECE
            found.append(Piece(number, ids[at:until], offsets[at:until]))
    return tuple(found)


def windows(talk: Sequence[Piece], cut: Cut, *, first_core: int | None = None) -> tuple[Window, ...]:
    """Windows whose cores together hold every piece once. `first_core` bounds the pieces of the first core."""
    made, at = [], 0
    while at < len(talk):
        until = _core_end(talk, at, cut, first_core if at == 0 else None)
        made.append(_window(talk, at, until, cut))
        at = until
    return tuple(made)


def _size(talk: Sequence[Piece]) -> int:
    return sum(len(piece.ids) + 1 for piece in talk)


def _core_end(talk: Sequence[Piece], at: int, cut: Cut, at_most: int | None) -> int:
    room = cut.limit - 1 - _size(talk[max(0, at - cut.before) : at])
    until = at + 1
    while until < len(talk) and (at_most is None or until - at < at_most):
        if _size(talk[at : until + 1 + cut.after]) > room:
            break
        until += 1
    return until


def _window(talk: Sequence[Piece], at: int, until: int, cut: Cut) -> Window:
    """Context is given up, farthest first, where the core leaves no room for it."""
    first, last = max(0, at - cut.before), min(len(talk), until + cut.after)
    while first < at and _size(talk[first:last]) + 1 > cut.limit:
        first += 1
    while last > until and _size(talk[first:last]) + 1 > cut.limit:
        last -= 1
    ids: list[int] = [cut.start_id]
    tokens: list[Token] = [SEPARATOR]
    core_start = core_end = 1
    for number in range(first, last):
        if number == at:
            core_start = len(ids)
        piece = talk[number]
        ids.extend(piece.ids)
        tokens.extend(Token(piece.utterance, start, end) for start, end in piece.offsets)
        if number == until - 1:
            core_end = len(ids)
        ids.append(cut.end_id)
        tokens.append(SEPARATOR)
    return Window(tuple(ids), tuple(tokens), (core_start, core_end))
