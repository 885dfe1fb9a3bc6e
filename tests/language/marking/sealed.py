"""A marker of our own making for tests of the mechanics: a plain tokenizer, an encoder of fixed vectors, heads by hand.

`small_reader` knows a handful of words and marks exactly those; `any_heads` are random and mark whatever they like.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from benchnotes.language.belonging.candidates import WIDTH
from benchnotes.language.marking.heads import ATTRIBUTES, LINK_WIDTH, MARK_KINDS, Array, Heads
from benchnotes.language.marking.learned import LearnedMarker
from benchnotes.record.heard import Utterance, captioned

LONGEST = 4
"""Letters; longer words come in several pieces, as an encoder's word pieces do."""
FIRST_ID, IDS = 10, 5000


@dataclass(frozen=True)
class Pieces:
    ids: list[int]
    offsets: list[tuple[int, int]]


class PlainTokenizer:
    """Words in pieces of at most LONGEST letters, every other mark a piece of its own. Ids by the letters alone."""

    def encode(self, sequence: str, *, add_special_tokens: bool) -> Pieces:
        assert not add_special_tokens
        offsets: list[tuple[int, int]] = []
        for found in re.finditer(r"\w+|[^\w\s]", sequence):
            start, end = found.span()
            offsets += [(at, min(at + LONGEST, end)) for at in range(start, end, LONGEST)]
        return Pieces([piece_id(sequence[start:end]) for start, end in offsets], offsets)


def piece_id(piece: str) -> int:
    return FIRST_ID + zlib.crc32(piece.lower().encode()) % IDS


class FixedEncoder:
    """One fixed vector for each piece, whatever stands around it; so where windows are cut cannot matter."""

    def __init__(self, table: Array) -> None:
        self.table = table
        self.shapes: list[tuple[int, int]] = []

    def __call__(self, ids: np.typing.NDArray[np.int64], mask: np.typing.NDArray[np.int64]) -> Array:
        assert ids.shape == mask.shape
        self.shapes.append((ids.shape[0], ids.shape[1]))
        return np.asarray(self.table[ids] * mask[..., None], dtype=np.float32)


def any_encoder(size: int = 12, seed: int = 0) -> FixedEncoder:
    return FixedEncoder(np.random.default_rng(seed).normal(size=(FIRST_ID + IDS, size)).astype(np.float32))


def layers(size: int, *, point: int = 3, state: int = 5) -> dict[str, tuple[int, int]]:
    """Name -> (inputs, outputs) of every layer that `Heads` reads, for vectors of `size`."""
    return {
        "tags": (size, len(MARK_KINDS) * 3),
        "parts": (size, 3),
        "present": (size, len(MARK_KINDS)),
        "link_query": (2 * size, 4),
        "link_key": (size, 4),
        "link_place": (LINK_WIDTH, 1),
        "link_none": (2 * size, 1),
        "attribute_state": (3 * size, 3 * size),
        "point_query": (3 * size, point),
        "point_key": (3 * size, point),
        "point_state": (point + WIDTH, state),
        "point_score": (state, 1),
        "new_state": (point + WIDTH, state),
        "new_score": (state, 1),
        "rows_state": (WIDTH, state),
        "rows_score": (state, 1),
        "rows_new_state": (WIDTH, state),
        "rows_new_score": (state, 1),
    } | {f"attribute_{name}": (3 * size, len(values)) for name, values in ATTRIBUTES.items()}


def nothing(size: int) -> dict[str, Array]:
    """Every matrix of `Heads`, all zeros."""
    weights: dict[str, Array] = {}
    for name, (inside, outside) in layers(size).items():
        weights[f"{name}.weight"] = np.zeros((outside, inside), np.float32)
        weights[f"{name}.bias"] = np.zeros(outside, np.float32)
    return weights


def any_heads(size: int = 12, seed: int = 1) -> Heads:
    """Most pieces are outside, so that there are some statements and not thousands."""
    dice = np.random.default_rng(seed)
    weights = {name: dice.normal(size=value.shape).astype(np.float32) for name, value in nothing(size).items()}
    weights["tags.bias"].reshape(len(MARK_KINDS), 3)[:, 0] += 7
    weights["parts.bias"][0] += 3
    return Heads(weights)


def any_marker(seed: int = 1) -> LearnedMarker:
    return LearnedMarker(any_encoder(), PlainTokenizer(), any_heads(seed=seed))


def talk_of(*texts: str) -> tuple[Utterance, ...]:
    return tuple(captioned(1, 4.0 * at, 4.0 * at + 4, text) for at, text in enumerate(texts))


OVERLAP = 2 + 9
"""Place in a candidate's row of how many words two names share."""


def small_reader(kinds: Mapping[str, str], parts: Sequence[str], faults: Sequence[str] = ()) -> LearnedMarker:
    """Marks each word of `kinds` as a statement of that kind and each run of words of `parts` as what names a thing.

    Words have at most LONGEST letters. A statement takes the nearest part; names that share their words are one thing;
    a word of `faults` is a fault of the kind that it begins.
    """
    known = [*kinds, *parts]
    assert all(len(word) <= LONGEST for word in known)
    size = len(known)
    table = np.zeros((FIRST_ID + IDS, size), np.float32)
    for at, word in enumerate(known):
        table[piece_id(word), at] = 1
    weights = nothing(size)
    _tagging(weights, kinds, known)
    weights["link_place.weight"][0, 3] = -1  # the farther the gap, the worse
    weights["link_none.bias"][0] = -100
    weights["attribute_state.weight"][:] = np.eye(3 * size)
    for word in faults:
        kind = next(at for at, value in enumerate(ATTRIBUTES["fault.kind"]) if value.startswith(word))
        weights["attribute_fault.kind.weight"][kind, known.index(word)] = 9
    weights["rows_state.weight"][0, OVERLAP] = weights["rows_score.weight"][0, 0] = 4
    weights["rows_new_score.bias"][0] = 8
    return LearnedMarker(FixedEncoder(table), PlainTokenizer(), Heads(weights))


def _tagging(weights: dict[str, Array], kinds: Mapping[str, str], known: Sequence[str]) -> None:
    tags = weights["tags.weight"].reshape(len(MARK_KINDS), 3, len(known))
    weights["tags.bias"].reshape(len(MARK_KINDS), 3)[:, 0] = weights["parts.bias"][0] = 9
    weights["present.bias"][:] = 5
    for at, word in enumerate(known):
        if word in kinds:
            tags[MARK_KINDS.index(kinds[word]), 2, at] = 18
        else:
            weights["parts.weight"][2, at] = 18
