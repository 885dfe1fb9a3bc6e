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
from benchnotes.record.steps.proof_signs import signs
from benchnotes.record.steps.proof_weights import STATUSES, Weights
from benchnotes.record.talk import talk_of
from training.imperfect import imperfectly_heard
from training.known_statements import Narration, known_statements, train_narrations

FOLDS = 10
RIDGE = 3e-4
STEPS = 600
LESSONS: dict[str, tuple[str | None, ...]] = {"WEIGHTS": (None,), "WEIGHTS_READ": ("first", "second", "third")}
"""Table -> seeds: as known, and three times as a reader would hear it."""
Numbers = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Known:
    """One fault of the known records, less those left as they are."""

    fold: int
    signs: dict[str, float]
    status: int


def known_faults(told: Narration, fold: int, seed: str | None) -> list[Known]:
    """The faults of one narration with their signs: as known, or with a seed as a reader would hear them."""
    statements = known_statements(told)
    if seed is not None:
        statements = imperfectly_heard(statements, f"{seed} {told.id}")
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


def written(tables: dict[str, Weights]) -> None:
    """Puts the tables into `proof_weights.py`, everything else of it as it was."""
    path = Path(proof_weights.__file__)
    text = path.read_text(encoding="utf-8")
    for name, table in tables.items():
        start = text.index(f"{name}: Weights = {{\n")
        rows = (f'    "{sign}": ({", ".join(f"{weight:.3f}" for weight in row)}),\n' for sign, row in table.items())
        body = f"{name}: Weights = {{\n" + "".join(rows)
        text = text[:start] + body + text[text.index("}\n", start) :]
    path.write_text(text, encoding="utf-8")


@dataclass(frozen=True)
class Lesson:
    """All known faults as numbers: signs, statuses, folds; and the names of the signs."""

    known: list[Known]
    names: list[str]
    x: Numbers
    y: Numbers
    folds: npt.NDArray[np.int_]


def lesson(*seeds: str | None) -> Lesson:
    """Every known fault of train, once for each seed; the fold of a narration goes round by its place."""
    narrations = train_narrations()
    every = ((seed, at, told) for seed in seeds for at, told in enumerate(narrations))
    known = [fault for seed, at, told in every for fault in known_faults(told, at % FOLDS, seed)]
    names = list(known[0].signs)
    x = np.array([[fault.signs[name] for name in names] for fault in known])
    y = np.eye(len(STATUSES))[[fault.status for fault in known]]
    return Lesson(known, names, x, y, np.array([fault.fold for fault in known]))


def weights_without(fold: int, of: Lesson) -> Weights:
    """The table that is learned from all other folds; -1 is none, so from all."""
    table = fitted(of.x[of.folds != fold], of.y[of.folds != fold])
    return {name: (float(a), float(b), float(c)) for name, (a, b, c) in zip(of.names, table, strict=True)}


def main() -> None:
    """Cross-validates, reports, fits all and writes."""
    tables: dict[str, Weights] = {}
    for table, seeds in LESSONS.items():
        learned = lesson(*seeds)
        guessed = cross_validated(learned.x, learned.y, learned.folds)
        pairs = ((STATUSES[f.status], STATUSES[g]) for f, g in zip(learned.known, guessed, strict=True))
        wrong = Counter(pair for pair in pairs if len(set(pair)) > 1)
        right = 1 - wrong.total() / len(learned.known)
        print(f"{table}: {len(learned.known)} faults, {len(learned.names)} signs, held out {right:.4f} right")
        print({f"{known} read as {got}": count for (known, got), count in wrong.most_common()})
        tables[table] = weights_without(-1, learned)
    if "--check" not in sys.argv:
        written(tables)


if __name__ == "__main__":
    main()
