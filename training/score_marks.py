"""How well marks are found: `python -m training.score_marks MARKS.json... [--at 0.5]`

MARKS is what train.py writes for held-out narrations. A statement counts where its kind is right and its span
overlaps; *full*: kind of fault, action, standing, kind of test and result are right too; *thing*: the earlier
mention it points at is one of the same thing (of statements found).
"""

from __future__ import annotations

import argparse
import collections
import json
from pathlib import Path

from benchnotes.language.marking.heads import MARK_KINDS
from training.known_spans import KnownMark, Narration, narration

NARRATIONS = Path(__file__).parent / "narrations"
SCORED = ("kind", "action", "standing", "what", "result", "field")


def f1(hit: int, printed: int, known: int) -> float:
    return 2 * hit / max(1, printed + known)


def place(span: list[int] | None) -> tuple[int, int, int] | None:
    return tuple(span) if span else None


def same_span(one: list[int], two: KnownMark) -> bool:
    return one[0] == two.span.utterance and one[1] < two.span.end and two.span.start < one[2]


def score(one: Narration, marked: dict, at: float, counts: dict) -> None:
    kept = [(number, mark) for number, mark in enumerate(marked["marks"]) if mark[4] >= at]
    used: dict[int, int] = {}
    for known_at, known in enumerate(one.marks):
        counts[known.kind][2] += 1
        hit = next(
            (n for n, m in kept if n not in used.values() and m[0] == known.kind and same_span(m[1], known)), None
        )
        if hit is None:
            continue
        used[known_at] = hit
        counts[known.kind][0] += 1
        attributes = marked["marks"][hit][3]
        right = all(
            attributes[name.split(".")[1]] == value
            for name, value in known.attributes.items()
            if name.split(".")[1] in SCORED
        )
        counts["=" + known.kind][0] += right
        part = marked["marks"][hit][2]
        known_part = known.part and [known.part.utterance, known.part.start, known.part.end]
        counts["#part"][0] += part == known_part or bool(
            part and known_part and part[0] == known_part[0] and part[1] < known_part[2] and known_part[1] < part[2]
        )
        counts["#part"][1] += 1
    for _, mark in kept:
        counts[mark[0]][1] += 1
    back = {hit: known_at for known_at, hit in used.items()}
    for known_at, hit in used.items():
        ref = one.marks[known_at].ref
        pointers = marked["pointers"][hit]
        if not ref or not pointers:
            continue
        earlier = pointers[0][0]
        seen = any(one.marks[other].ref == ref for other in used if used[other] < hit)
        counts["#thing"][1] += 1
        counts["#thing"][0] += one.marks[back[earlier]].ref == ref if earlier in back else earlier < 0 and not seen


def main() -> None:
    ap = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ap.add_argument("marks", type=Path, nargs="+")
    ap.add_argument("--at", type=float, nargs="+", default=[0.4, 0.5, 0.6])
    ap.add_argument("--only", default="", help="names that begin so")
    a = ap.parse_args()
    known = {path.stem: path for folder in ("train", "more") for path in (NARRATIONS / folder).glob("*.json")}
    marked = {
        name: value
        for path in a.marks
        for name, value in json.loads(path.read_text(encoding="utf-8")).items()
        if name.startswith(a.only)
    }
    for at in a.at:
        counts: dict[str, list[int]] = collections.defaultdict(lambda: [0, 0, 0])
        for name, value in marked.items():
            score(narration(known[name]), value, at, counts)
        total = [sum(counts[kind][n] for kind in MARK_KINDS) for n in range(3)]
        full = sum(counts["=" + kind][0] for kind in MARK_KINDS)
        part, thing = (counts[name][0] / max(1, counts[name][1]) for name in ("#part", "#thing"))
        precision, recall = total[0] / max(1, total[1]), total[0] / max(1, total[2])
        print(
            f"{len(marked)} narrations, at {at}: statement {f1(*total):.3f} precision {precision:.3f} "
            f"recall {recall:.3f} full {f1(full, *total[1:]):.3f} part {part:.3f} thing {thing:.3f}"
        )
    for kind in MARK_KINDS:
        hit, printed, there = counts[kind]
        print(
            f"  {kind:11} {f1(hit, printed, there):.2f} attributes {counts['=' + kind][0] / max(1, hit):.2f} of {there}"
        )


if __name__ == "__main__":
    main()
