"""The small layers on top of the encoder, in numpy: what each word piece, span and pair of spans scores.

The encoder gives every word piece a vector; everything that is ours about marking is a handful of matrices. The
training script learns them under the same names.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchnotes.record import terms

Array = NDArray[np.float32]

MARK_KINDS = (
    "fault", "clear", "guess", "leave", "need", "order", "fit", "drop", "price", "charge", "work", "off", "back",
    "reading", "test", "advice", "doubt", "settled", "machine", "correction",
)  # fmt: skip
QUANTITIES = ("1", "2", "3", "4", "many")
ATTRIBUTES: Mapping[str, tuple[str, ...]] = {
    "fault.kind": terms.FAULT_KINDS,
    "work.action": terms.ACTIONS,
    "work.standing": terms.STANDINGS,
    "work.by": terms.PLACES,
    "test.what": terms.TRIAL_KINDS,
    "test.result": terms.TRIAL_RESULTS,
    "charge.kind": terms.CHARGE_KINDS,
    "reading.when": ("none", *terms.WHENS),
    "reading.unit": terms.UNITS,
    "machine.field": terms.MACHINE_FIELDS,
    "machine.power": ("none", *terms.POWERS),
    "machine.holds_pressure": ("no", "yes"),
    "price.basis": terms.BASES,
    "part.quantity": QUANTITIES,
}
"""What each kind of mark carries beside its span; the part before the dot says which kinds."""
ATTRIBUTES_OF: Mapping[str, tuple[str, ...]] = {
    kind: tuple(
        name
        for name in ATTRIBUTES
        if name.split(".")[0] == kind or (name == "part.quantity" and kind in ("need", "order", "fit", "drop"))
    )
    for kind in MARK_KINDS
}
LINK_WIDTH = 8


def link_row(words: tuple[int, int, int], part: tuple[int, int, int]) -> list[float]:
    """How a part span lies to the words of a statement: utterance and characters each. LINK_WIDTH numbers."""
    same = words[0] == part[0]
    before = part[1:] < words[1:] if same else part[0] < words[0]
    gap = max(part[1] - words[2], words[1] - part[2], 0) if same else 200
    inside = same and part[1] < words[2] and words[1] < part[2]
    return [
        float(same),
        float(before),
        float(inside),
        gap / 100,
        float(gap <= 1),
        float(gap <= 12),
        float(part[0] - words[0] == 1),
        float(part[0] - words[0] == -1),
    ]


def softmax(scores: Array) -> Array:
    shifted = np.exp(scores - scores.max(axis=-1, keepdims=True))
    return np.asarray(shifted / shifted.sum(axis=-1, keepdims=True), dtype=np.float32)


def log_softmax(scores: Array) -> Array:
    """A number even where the probability is too small for one."""
    shifted = scores - scores.max(axis=-1, keepdims=True)
    return np.asarray(shifted - np.log(np.exp(shifted).sum(axis=-1, keepdims=True)), dtype=np.float32)


def relu(values: Array) -> Array:
    return np.maximum(values, 0)


@dataclass(frozen=True)
class Heads:
    """Matrices by name: `NAME.weight` of shape (out, in) and `NAME.bias` of shape (out,)."""

    weights: Mapping[str, Array]
    vectors_weight: float = 0.4
    """How much the encoder's vectors count in pointing, beside the rows."""

    def _layer(self, name: str, values: Array) -> Array:
        return np.asarray(values @ self.weights[f"{name}.weight"].T + self.weights[f"{name}.bias"], dtype=np.float32)

    def tags(self, hidden: Array) -> Array:
        """(pieces, kinds, 3): probability of outside, beginning, inside for every kind."""
        return softmax(self._layer("tags", hidden).reshape(len(hidden), len(MARK_KINDS), 3))

    def parts(self, hidden: Array) -> Array:
        """(pieces, 3): the same for what names a thing."""
        return softmax(self._layer("parts", hidden))

    def present(self, utterances: Array) -> Array:
        """(utterances, kinds): probability that an utterance holds such a statement; from its mean vector."""
        return np.asarray(1 / (1 + np.exp(-self._layer("present", utterances))), dtype=np.float32)

    def links(self, words: Array, parts: Array, rows: Array) -> Array:
        """(parts + 1,): how well each part span belongs to one statement; the last score is for none of them.

        `words` (2 D,): mean of its words and of its utterance; `parts` (n, D); `rows` (n, LINK_WIDTH).
        """
        query, none = self._layer("link_query", words[None]), self._layer("link_none", words[None])[0]
        if not len(parts):
            return np.asarray(none, dtype=np.float32)
        keys = self._layer("link_key", parts)
        scores = (keys @ query[0]) / np.sqrt(query.shape[-1]) + self._layer("link_place", rows)[:, 0]
        return np.concatenate([scores, none]).astype(np.float32)

    def attributes(self, spans: Array) -> dict[str, Array]:
        """Of each span (n, 3 D): probabilities of every value of every attribute."""
        state = relu(self._layer("attribute_state", spans))
        return {name: softmax(self._layer(f"attribute_{name}", state)) for name in ATTRIBUTES}

    def pointing_vectors(self, spans: Array) -> tuple[Array, Array]:
        return self._layer("point_query", spans), self._layer("point_key", spans)

    def pointers(self, query: Array, keys: Array, rows: Sequence[Sequence[float]]) -> Array:
        """(earlier + 1,): how well each earlier mention is the same thing; the last score is for a new one.

        Log probabilities: what the encoder's vectors say and what the rows alone say, averaged.
        """
        if not len(keys):
            return np.zeros(1, dtype=np.float32)
        candidates = np.asarray(rows, dtype=np.float32)
        if self.vectors_weight == 0:
            return self.pointers_by_rows(candidates)
        by_vectors = self._pointers_by_vectors(query, keys, candidates)
        if self.vectors_weight == 1:  # while they are taught there are no others
            return by_vectors
        mixed = self.vectors_weight * by_vectors + (1 - self.vectors_weight) * self.pointers_by_rows(candidates)
        return np.asarray(mixed, dtype=np.float32)

    def _pointers_by_vectors(self, query: Array, keys: Array, candidates: Array) -> Array:
        pairs = np.concatenate([keys * query, candidates], axis=1)
        scores = self._layer("point_score", relu(self._layer("point_state", pairs)))[:, 0]
        summed = np.concatenate([query, candidates.max(axis=0)])[None]
        new = self._layer("new_score", relu(self._layer("new_state", summed)))[0]
        return log_softmax(np.concatenate([scores, new]))

    def pointers_by_rows(self, candidates: Array) -> Array:
        """The same from how things are named and how far back they lie, without the encoder."""
        scores = self._layer("rows_score", relu(self._layer("rows_state", candidates)))[:, 0]
        new = self._layer("rows_new_score", relu(self._layer("rows_new_state", candidates.max(axis=0)[None])))[0]
        return log_softmax(np.concatenate([scores, new]))
