"""Teaches pointing from how things are named and how far back they lie, without the encoder.

    python -m training.fit_pointing MARKS.json... [--out FILE.npz] [--seconds 90]

Learns from known marks and from the reader's own held-out marks (whose thing is that of the known part there). Cross-
validated over narrations in two halves; with --out it learns from all and writes `rows_*` heads.
"""

from __future__ import annotations

import argparse
import json
import random
import time
import zlib
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import torch
from torch import Tensor, nn

from benchnotes.language.belonging.candidates import POINTING_KINDS, WIDTH, Mention, Things
from benchnotes.language.marking.marker import Span
from training.known_spans import KnownMark, Narration, narration

NARRATIONS = Path(__file__).parent / "narrations"


@dataclass
class Lesson:
    """Choices of one narration: rows of all candidates, padded, and which are right; the last column is a new thing."""

    name: str
    rows: Tensor
    there: Tensor
    right: Tensor


Told = tuple[str, Span, Span | None, str | None]
"""Kind, words, part, the thing."""


def known(one: Narration) -> list[Told]:
    return [(m.kind, m.span, m.part, m.ref) for m in one.marks]


def heard(one: Narration, written: list[list]) -> list[Told]:
    """The reader's own marks; the thing of each is that of a known mark on the same words or part."""
    told: list[Told] = []
    for kind, span, part, _, sure in written:
        if sure < 0.5:
            continue
        words, named = Span(*span), Span(*part) if part else None
        told.append((kind, words, named, _ref(one.marks, kind, words, named)))
    return told


def _ref(marks: tuple[KnownMark, ...], kind: str, words: Span, part: Span | None) -> str | None:
    for mark in marks:
        if mark.kind == kind and mark.span.overlaps(words):
            return mark.ref
    for mark in marks:
        if part and mark.part and mark.part.overlaps(part):
            return mark.ref
    return None


def lesson(one: Narration, told: list[Told]) -> Lesson | None:
    things, by_ref, refs, asked = Things(), {}, [], []
    for kind, words, part, ref in told:
        if kind not in POINTING_KINDS:
            continue
        said = one.texts[part.utterance][part.start : part.end] if part else None
        mention = Mention.of(kind, words.utterance, said, part and (part.utterance, part.start, part.end))
        recent = refs[things.first :]
        if recent and ref:
            asked.append((things.rows(mention), [other == ref for other in recent]))
        key = ref or f"?{len(refs)}"
        by_ref[key] = things.add(mention, by_ref.get(key))
        refs.append(ref)
    if not asked:
        return None
    most = max(len(rows) for rows, _ in asked)
    rows = torch.zeros(len(asked), most, WIDTH)
    there = torch.zeros(len(asked), most, dtype=torch.bool)
    right = torch.zeros(len(asked), most + 1, dtype=torch.bool)
    for at, (candidates, same) in enumerate(asked):
        rows[at, : len(candidates)] = torch.tensor(candidates)
        there[at, : len(candidates)] = True
        right[at, : len(same)] = torch.tensor(same)
        right[at, -1] = not any(same)
    return Lesson(one.name, rows, there, right)


class Rows(nn.Module):
    def __init__(self) -> None:
        super().__init__()
        self.rows_state, self.rows_score = nn.Linear(WIDTH, 64), nn.Linear(64, 1)
        self.rows_new_state, self.rows_new_score = nn.Linear(WIDTH, 32), nn.Linear(32, 1)

    def forward(self, one: Lesson) -> Tensor:
        scores = self.rows_score(torch.relu(self.rows_state(one.rows)))[..., 0].masked_fill(~one.there, -1e4)
        top = one.rows.masked_fill(~one.there[..., None], -1e4).amax(1)
        new = self.rows_new_score(torch.relu(self.rows_new_state(top)))
        return torch.cat([scores, new], dim=1)


def teach(lessons: list[Lesson], seconds: float, seed: int) -> Rows:
    torch.manual_seed(seed)
    model = Rows()
    optimiser = torch.optim.AdamW(model.parameters(), lr=3e-3, weight_decay=0.02)
    generator, began = random.Random(seed), time.time()
    while (gone := (time.time() - began) / seconds) < 1:
        for group in optimiser.param_groups:
            group["lr"] = 3e-3 * (1 - gone)
        for one in generator.sample(lessons, len(lessons)):
            optimiser.zero_grad()
            scores = model(one)
            loss = (scores.logsumexp(1) - scores.masked_fill(~one.right, -1e4).logsumexp(1)).mean()
            loss.backward()
            optimiser.step()
    return model


def accuracy(model: Rows, lessons: list[Lesson]) -> float:
    hits = total = 0
    with torch.no_grad():
        for one in lessons:
            chosen = model(one).argmax(1)
            hits += int(one.right[torch.arange(len(chosen)), chosen].sum())
            total += len(chosen)
    return hits / max(1, total)


def half_of(name: str) -> int:
    return zlib.crc32(name.encode()) // 7 % 2


def main() -> None:
    ap = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ap.add_argument("marks", type=Path, nargs="+")
    ap.add_argument("--out", type=Path)
    ap.add_argument("--only-out", action="store_true", help="no cross-validation")
    ap.add_argument("--halves", type=Path, help="folder for the two halves' weights: half-K never saw half K")
    ap.add_argument("--seconds", type=float, default=90)
    a = ap.parse_args()
    torch.set_num_threads(1)
    narrations = {p.stem: narration(p) for folder in ("train", "more") for p in NARRATIONS.glob(f"{folder}/*.json")}
    written = {name: value["marks"] for p in a.marks for name, value in json.loads(p.read_text()).items()}
    pairs = [(one, known(one)) for one in narrations.values()]
    pairs += [(narrations[name], heard(narrations[name], marks)) for name, marks in written.items()]
    lessons = [made for one, told in pairs if (made := lesson(one, told))]
    of_heard = {id(made) for made in lessons[len(narrations) :]}
    halves = [[one for one in lessons if half_of(one.name) == half] for half in range(2)]
    for half in range(0 if a.only_out else 2):
        model = teach(halves[1 - half], a.seconds, 0)
        own = [one for one in halves[half] if id(one) in of_heard]
        plain = [one for one in halves[half] if id(one) not in of_heard]
        if a.halves:
            weights = {f"head/{name}": value.numpy() for name, value in model.state_dict().items()}
            np.savez(a.halves / f"half-{half}.npz", **weights)
        print(
            f"half {half}: known marks {accuracy(model, plain):.3f}, heard marks {accuracy(model, own):.3f}", flush=True
        )
    if a.out:
        model = teach(lessons, 2 * a.seconds, 0)
        np.savez(
            a.out, **{f"head/{name}": value.numpy().astype(np.float16) for name, value in model.state_dict().items()}
        )


if __name__ == "__main__":
    main()
