"""How well the fold turns known statements into known records: `python -m training.fold_known [--details]`."""

from __future__ import annotations

import sys
from typing import Any

from benchnotes.record.fold import fold
from benchnotes.record.still_to_do.rules import still_to_do
from training import score
from training.known_statements import Narration, known_statements, printed, train_narrations


def folded(told: Narration) -> dict[str, Any]:
    """The record that the fold makes of a narration's known statements, as JSON for `score.py`."""
    record = fold(known_statements(told), told.currency)
    return printed(record, still_to_do(record))


def scores() -> dict[str, dict[str, Any]]:
    """Narration -> what `score.py` counts, over all of train."""
    return {told.id: score.score_one(dict(told.raw), folded(told)) for told in train_narrations()}


if __name__ == "__main__":
    score.report(scores(), details="--details" in sys.argv)
