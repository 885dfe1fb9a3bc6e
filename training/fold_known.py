"""How well the fold turns known statements into known records.

`python -m training.fold_known` scores with weights that never saw the narration scored; `--shipped` with those of
`proof_weights.py`, which saw them all; `--as-heard` with the errors of a reader
put into the statements; `--details` lists what is missed, extra and wrong.
"""

from __future__ import annotations

import sys
from collections.abc import Mapping
from typing import Any

from benchnotes.record.fold import fold
from benchnotes.record.steps.proof import proof
from benchnotes.record.steps.proof_weights import WEIGHTS, WEIGHTS_READ, Weights
from benchnotes.record.still_to_do.rules import still_to_do
from benchnotes.record.talk import talk_of
from training import fit_proof, score
from training.imperfect import imperfectly_heard
from training.known_statements import Narration, known_statements, printed, train_narrations


def folded(told: Narration, weights: Weights = WEIGHTS, *, seed: str | None = None) -> dict[str, Any]:
    """The record that the fold makes of a narration's known statements, as JSON for `score.py`. With a seed: of the
    statements as a reader would hear them."""
    statements = known_statements(told)
    if seed is not None:
        statements = imperfectly_heard(statements, f"{seed} {told.id}")
    record = proof(talk_of(statements, told.currency), fold(statements, told.currency), weights)
    return printed(record, still_to_do(record))


def scores(*, shipped: bool = False, seed: str | None = None) -> dict[str, dict[str, Any]]:
    """Narration -> what `score.py` counts, over all of train."""
    table, name = (WEIGHTS, "WEIGHTS") if seed is None else (WEIGHTS_READ, "WEIGHTS_READ")
    tables: list[Weights] = [table] * fit_proof.FOLDS if shipped else _held_out(name)
    narrations = enumerate(train_narrations())
    return {
        told.id: score.score_one(dict(told.raw), folded(told, tables[at % fit_proof.FOLDS], seed=seed))
        for at, told in narrations
    }


def strict(counted: Mapping[str, Mapping[str, Any]]) -> dict[str, float]:
    """Strict F1 of each category over all narrations, and their mean."""
    categories = ["machine", *score.CATEGORIES]
    sums = {
        cat: [sum(result[cat][key] for result in counted.values()) for key in ("strict", "known", "printed")]
        for cat in categories
    }
    each = {cat: float(score.f1(*counts)) for cat, counts in sums.items()}
    return {**each, "mean": sum(each.values()) / len(each)}


def _held_out(name: str) -> list[Weights]:
    learned = fit_proof.lesson(*fit_proof.LESSONS[name])
    return [fit_proof.weights_without(fold_, learned) for fold_ in range(fit_proof.FOLDS)]


if __name__ == "__main__":
    error_seed = "measured" if "--as-heard" in sys.argv else None
    score.report(scores(shipped="--shipped" in sys.argv, seed=error_seed), details="--details" in sys.argv)
