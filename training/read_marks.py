"""Held-out marks -> records -> scores: `python -m training.read_marks MARKS.json... [--only PREFIX] [--details]`."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

from benchnotes.language.marking.marker import Mark, Marked, Pointer, Span
from benchnotes.language.reader import read_marks
from benchnotes.language.vocabulary import Vocabulary
from benchnotes.record.fold import fold
from benchnotes.record.still_to_do.rules import still_to_do
from benchnotes.trades.shelf import load
from training import score
from training.known_statements import NARRATIONS, narration, printed


def marked_of(written: dict[str, Any], at_least: float) -> Marked:
    """Marks as train.py wrote them, those that are sure enough; pointers to dropped marks are dropped with them."""
    kept = [at for at, mark in enumerate(written["marks"]) if mark[4] >= at_least]
    place = {old: new for new, old in enumerate(kept)} | {-1: -1}
    marks = tuple(
        Mark(kind, Span(*span), Span(*part) if part else None, attributes, sure)
        for kind, span, part, attributes, sure in (written["marks"][at] for at in kept)
    )
    pointers = tuple(
        tuple(Pointer(place[earlier], points) for earlier, points in written["pointers"][at] if earlier in place)
        for at in kept
    )
    return Marked(marks, pointers)


def record_of(name: str, written: dict[str, Any], vocabulary: Vocabulary, a: argparse.Namespace) -> tuple[Any, Any]:
    path = next(NARRATIONS.glob(f"*/{name}.json"))
    told = narration(path)
    marked = marked_of(written, a.at)
    if a.plain_pointing:
        marked = Marked(marked.marks)
    said = read_marks(told.talk, marked, currency=told.currency, vocabulary=vocabulary)
    record = fold(said, told.currency)
    return dict(told.raw), printed(record, still_to_do(record))


def main() -> None:
    ap = argparse.ArgumentParser(description=__doc__)
    ap.add_argument("marks", type=Path, nargs="+")
    ap.add_argument("--only", default="train")
    ap.add_argument("--at", type=float, default=0.5)
    ap.add_argument("--plain-pointing", action="store_true")
    ap.add_argument("--details", action="store_true")
    a = ap.parse_args()
    vocabulary = load(None)
    results = {}
    for path in a.marks:
        for name, written in json.loads(path.read_text(encoding="utf-8")).items():
            if name.startswith(a.only):
                told, record = record_of(name, written, vocabulary, a)
                results[name] = score.score_one(told, record)
    score.report(results, a.details)


if __name__ == "__main__":
    main()
