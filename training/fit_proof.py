"""Learns how much each sign tells about a fault's status, from the known records; writes `proof_weights.py`.

`python -m training.fit_proof` prints accuracy by cross-validation over narrations (never over faults), then fits all.
`python -m training.fit_proof --check` writes nothing. Softmax regression with a small ridge; no seed is involved.
"""

from __future__ import annotations

import sys
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import numpy.typing as npt

from benchnotes.record import fold as folding
from benchnotes.record.steps import proof_weights
from benchnotes.record.steps.fault_story import FaultStory
from benchnotes.record.steps.proof import Weights
from benchnotes.record.steps.proof_signs import signs
from benchnotes.record.steps.proof_weights import STATUSES
from benchnotes.record.talk import talk_of
from training.known_statements import Narration, known_statements, train_narrations

FOLDS = 10
RIDGE = 3e-4
STEPS = 600
Numbers = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Known:
    """One fault of the known records, less those left as they are."""

    fold: int
    signs: dict[str, float]
    status: int


def known_faults(told: Narration, fold: int) -> list[Known]:
    """The faults of one narration with their signs; which fold it is in goes by narration."""
    statements = known_statements(told)
    record, talk = folding.fold(statements, told.currency), talk_of(statements, told.currency)
    known = {(f["part"], f["kind"]): f["status"] for f in told.gold["faults"]}
    stories = (FaultStory(fault, talk, record) for fault in record.faults)
    return [
        Known(fold, dict(signs(story)), STATUSES.index(status))
        for story in stories
        if (status := known.get((story.fault.part, story.fault.kind))) in STATUSES
    ]


def fitted(x: Numbers, y: Numbers) -> Numbers:
    """Weights (signs x statuses) of least cross-entropy and ridge, by accelerated gradient descent."""
    weights = np.zeros((x.shape[1], y.shape[1]))
    ahead, momentum = weights.copy(), 1.0
    rate = 1 / (0.5 * np.linalg.norm(x, 2) ** 2 / len(x) + RIDGE)
    for _ in range(STEPS):
        scores = x @ ahead
        shares = np.exp(scores - scores.max(axis=1, keepdims=True))
        shares /= shares.sum(axis=1, keepdims=True)
        new = ahead - rate * (x.T @ (shares - y) / len(x) + RIDGE * ahead)
        faster = (1 + np.sqrt(1 + 4 * momentum**2)) / 2
        ahead, weights, momentum = new + (momentum - 1) / faster * (new - weights), new, faster
    return weights


def cross_validated(x: Numbers, y: Numbers, folds: npt.NDArray[np.int_]) -> npt.NDArray[np.int_]:
    """The status that each fault gets from weights that never saw its narration."""
    guessed = np.zeros(len(x), dtype=int)
    for fold in range(FOLDS):
        weights = fitted(x[folds != fold], y[folds != fold])
        guessed[folds == fold] = (x[folds == fold] @ weights).argmax(axis=1)
    return guessed


def written(names: list[str], weights: Numbers) -> None:
    """Puts the table into `proof_weights.py`, everything else of it as it was."""
    path = Path(proof_weights.__file__)
    text = path.read_text(encoding="utf-8")
    head = text[: text.index("WEIGHTS:")]
    rows = (
        f'    "{name}": ({", ".join(f"{w:.3f}" for w in row)}),\n' for name, row in zip(names, weights, strict=True)
    )
    table = "WEIGHTS: Mapping[str, tuple[float, float, float]] = {\n" + "".join(rows) + "}\n"
    path.write_text(head + table, encoding="utf-8")


@dataclass(frozen=True)
class Lesson:
    """All known faults as numbers: signs, statuses, folds; and the names of the signs."""

    known: list[Known]
    names: list[str]
    x: Numbers
    y: Numbers
    folds: npt.NDArray[np.int_]


def lesson() -> Lesson:
    """Every known fault of train; the fold of a narration goes round by its place."""
    known = [fault for at, told in enumerate(train_narrations()) for fault in known_faults(told, at % FOLDS)]
    names = list(known[0].signs)
    x = np.array([[fault.signs[name] for name in names] for fault in known])
    y = np.eye(len(STATUSES))[[fault.status for fault in known]]
    return Lesson(known, names, x, y, np.array([fault.fold for fault in known]))


def weights_without(fold: int, of: Lesson) -> Weights:
    """The table that is learned from all other folds."""
    table = fitted(of.x[of.folds != fold], of.y[of.folds != fold])
    return {name: (float(a), float(b), float(c)) for name, (a, b, c) in zip(of.names, table, strict=True)}


def main() -> None:
    """Cross-validates, reports, fits all and writes."""
    learned = lesson()
    known, names, x, y = learned.known, learned.names, learned.x, learned.y
    guessed = cross_validated(x, y, learned.folds)
    wrong = Counter((STATUSES[f.status], STATUSES[g]) for f, g in zip(known, guessed, strict=True) if f.status != g)
    print(f"{len(known)} faults, {len(names)} signs, right by cross-validation {1 - wrong.total() / len(known):.4f}")
    print({f"{known_status} read as {got}": count for (known_status, got), count in wrong.most_common()})
    if "--check" not in sys.argv:
        written(names, fitted(x, y))


if __name__ == "__main__":
    main()
