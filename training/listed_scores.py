"""How well the listed marker finds known statements: precision and recall by kind. `python -m training.listed_scores`.

A mark is right where its kind is that of a known statement of the same utterance and their spans share a letter;
beside it, how often the attributes and the part of a right mark are right too.
"""

from __future__ import annotations

import json
import sys
from collections import Counter, defaultdict
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from benchnotes.language.marking.listed import ListedMarker
from benchnotes.language.marking.marker import Mark
from benchnotes.language.pipeline import build
from benchnotes.record.heard import captioned
from benchnotes.trades.english import open_english
from benchnotes.trades.shelf import load

TRAIN = Path(__file__).parent / "narrations" / "train"
ATTRIBUTES = ("kind", "action", "standing", "by", "what", "result", "when", "field", "basis")


def main(folder: Path) -> None:
    vocabulary = load(None)
    marker = ListedMarker(build(open_english(), vocabulary), vocabulary)
    counts: dict[str, Counter[str]] = defaultdict(Counter)
    for path in sorted(folder.glob("*.json")):
        known = json.loads(path.read_text(encoding="utf-8"))
        talk = [captioned(1, u["start"], u["end"], u["text"]) for u in known["utterances"]]
        _count(counts, known["said"], [u.text for u in talk], marker.mark(talk).marks)
    _show(counts)


def _count(
    counts: dict[str, Counter[str]], said: Iterable[dict[str, Any]], texts: list[str], marks: Iterable[Mark]
) -> None:
    left = [s for s in said if _words(s)]
    for statement in left:
        counts[statement["say"]]["known"] += 1
    for mark in marks:
        counts[mark.kind]["marked"] += 1
        hit = next((s for s in left if s["say"] == mark.kind and _overlaps(s, mark, texts)), None)
        if hit is not None:
            left.remove(hit)
            counts[mark.kind]["right"] += 1
            counts[mark.kind]["part"] += _part_right(hit, mark, texts)
            for name in ATTRIBUTES:
                if name in hit and name in mark.attributes:
                    counts[mark.kind][f"{name} of"] += 1
                    counts[mark.kind][name] += hit[name] == mark.attributes[name]


def _words(statement: dict[str, Any]) -> str:
    return str(statement.get("words") or statement.get("amount") or "")


def _overlaps(statement: dict[str, Any], mark: Mark, texts: list[str]) -> bool:
    if statement["u"] != mark.span.utterance:
        return False
    start = texts[statement["u"]].find(_words(statement))
    return start < mark.span.end and mark.span.start < start + len(_words(statement))


def _part_right(statement: dict[str, Any], mark: Mark, texts: list[str]) -> bool:
    if statement.get("part") is None or mark.part is None:
        return (statement.get("part") is None) == (mark.part is None)
    at = statement.get("part_u", statement["u"])
    start = texts[at].find(statement["part"])
    return at == mark.part.utterance and start < mark.part.end and mark.part.start < start + len(statement["part"])


def _show(counts: dict[str, Counter[str]]) -> None:
    total: Counter[str] = Counter()
    print(f"{'kind':11} {'known':>6} {'marked':>6} {'P':>5} {'R':>5} {'F1':>5} {'part':>5}  attributes of right marks")
    for kind, count in sorted(counts.items(), key=lambda pair: -pair[1]["known"]):
        total.update(count)
        print(f"{kind:11} {_line(count)}  {_attributes(count)}")
    print(f"{'all':11} {_line(total)}")


def _line(count: Counter[str]) -> str:
    precision, recall = count["right"] / max(1, count["marked"]), count["right"] / max(1, count["known"])
    f1 = 2 * precision * recall / max(1e-9, precision + recall)
    part = count["part"] / max(1, count["right"])
    return f"{count['known']:6} {count['marked']:6} {precision:5.2f} {recall:5.2f} {f1:5.2f} {part:5.2f}"


def _attributes(count: Counter[str]) -> str:
    shares = {name: count[name] / count[f"{name} of"] for name in ATTRIBUTES if count[f"{name} of"]}
    return " ".join(f"{name} {share:.2f}" for name, share in shares.items())


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else TRAIN)
