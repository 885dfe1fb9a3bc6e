"""Learns which name a thing goes by, from the known statements; writes `name_weights.py`.

`python -m training.fit_naming` fits all of train and more; `--without 0 1` leaves out folds (as train.py cuts them, by
narration), `--out FILE.json` writes the weights there instead. No seed is involved.
"""

from __future__ import annotations

import argparse
import json
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from multiprocessing import Pool
from pathlib import Path

import numpy as np
import numpy.typing as npt

from benchnotes.language.belonging import name_weights
from benchnotes.language.belonging.candidates import POINTING_KINDS
from benchnotes.language.belonging.name_choices import NamingScene, choices
from benchnotes.language.belonging.name_signs import signs_of
from benchnotes.language.marking.marker import Mark
from training.known_spans import Narration, narration
from training.score import alike

FOLDS = 5
RIDGE = 1e-3
STEPS = 250
RATE = 0.05
MOST = 4
"""A thing weighs as its mentions, up to so many."""
LEAST = 0.04
"""Weights under this are left out of the table."""
Numbers = npt.NDArray[np.float64]
Places = npt.NDArray[np.int64]


@dataclass(frozen=True)
class Lesson:
    """All names of all things, one after another, as signs that are not nought."""

    signs: list[str]
    sign: Places
    value: Numbers
    name_of: Places
    """Which name each sign is of."""
    thing_of: Places
    """Which thing each name is of; names of one thing stand together."""
    right: Numbers
    weight: Numbers
    """How much each thing weighs; sums to 1."""


def known_things(told: Narration) -> Iterator[tuple[list[dict[str, float]], list[bool], int]]:
    """For each thing of a narration: the signs of its possible names, which are right, how often it is mentioned."""
    refs: dict[str, int] = {}
    marks = [
        Mark(m.kind, m.span, m.part, {name.split(".")[1]: value for name, value in m.attributes.items()}, 1.0)
        for m in told.marks
    ]
    thing = [
        refs.setdefault(m.ref, len(refs)) if m.ref and m.kind in POINTING_KINDS and m.kind != "charge" else None
        for m in told.marks
    ]
    scene = NamingScene(told.texts, marks, thing)
    for ref, at in refs.items():
        signs = signs_of(scene, at, choices(scene, at))
        right = [alike(ref, name) > 0 for name in signs]
        if any(right):
            yield list(signs.values()), right, len(scene.members[at])


def things_of(path: Path) -> list[tuple[list[dict[str, float]], list[bool], int]]:
    return list(known_things(narration(path)))


def lesson(paths: list[Path]) -> Lesson:
    places: dict[str, int] = {}
    sign: list[int] = []
    value: list[float] = []
    name_of: list[int] = []
    thing_of: list[int] = []
    right: list[bool] = []
    weight: list[float] = []
    with Pool() as pool:
        taught = pool.map(things_of, paths, chunksize=4)
    for told in taught:
        for names, answers, mentions in told:
            for signs in names:
                sign += [places.setdefault(each, len(places)) for each in signs]
                value += signs.values()
                name_of += [len(thing_of)] * len(signs)
                thing_of.append(len(weight))
            right += answers
            weight.append(min(MOST, mentions))
    weights = np.array(weight, dtype=np.float64)
    return Lesson(
        list(places),
        np.array(sign),
        np.array(value),
        np.array(name_of),
        np.array(thing_of),
        np.array(right, dtype=np.float64),
        weights / weights.sum(),
    )


def fitted(of: Lesson) -> Numbers:
    """Weights under which the right names together are likeliest, with a ridge; Adam over everything at once."""
    weights, mean, square = (np.zeros(len(of.signs)) for _ in range(3))
    for step in range(1, STEPS + 1):
        slope = _slope(of, weights) + RIDGE * weights
        mean += 0.1 * (slope - mean)
        square += 0.01 * (slope**2 - square)
        rate = RATE * min(1.0, 2 * (1 - step / (STEPS + 1)))
        weights -= rate * (mean / (1 - 0.9**step)) / (np.sqrt(square / (1 - 0.99**step)) + 1e-8)
    return weights


def _slope(of: Lesson, weights: Numbers) -> Numbers:
    scores = np.bincount(of.name_of, of.value * weights[of.sign], minlength=len(of.thing_of))
    highest = np.full(len(of.weight), -np.inf)
    np.maximum.at(highest, of.thing_of, scores)
    share = np.exp(scores - highest[of.thing_of])
    share /= np.bincount(of.thing_of, share)[of.thing_of]
    among_right = share * of.right
    among_right /= np.maximum(np.bincount(of.thing_of, among_right), 1e-12)[of.thing_of]
    pull = of.weight[of.thing_of] * (share - among_right)
    return np.bincount(of.sign, of.value * pull[of.name_of], minlength=len(weights)).astype(np.float64)


def written(table: Mapping[str, float]) -> None:
    """Puts the table into `name_weights.py`, everything else of it as it was."""
    path = Path(name_weights.__file__)
    text = path.read_text(encoding="utf-8")
    head = text[: text.index("WEIGHTS: Mapping")]
    rows = "".join(f'    "{sign}": {weight:.3f},\n' for sign, weight in sorted(table.items()))
    path.write_text(f"{head}WEIGHTS: Mapping[str, float] = {{\n{rows}}}\n", encoding="utf-8")


def main() -> None:
    ap = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ap.add_argument("--without", type=int, nargs="*", default=[])
    ap.add_argument("--only", default="")
    ap.add_argument("--out", type=Path)
    a = ap.parse_args()
    folder = Path(__file__).parent / "narrations"
    paths = sorted([*folder.glob("train/*.json"), *folder.glob("more/*.json")])
    chosen = [p for p in paths if p.stem.startswith(a.only) and zlib.crc32(p.stem.encode()) % FOLDS not in a.without]
    of = lesson(chosen)
    weights = fitted(of)
    table = {sign: float(w) for sign, w in zip(of.signs, weights, strict=True) if abs(w) >= LEAST}
    print(f"{len(chosen)} narrations, {len(of.weight)} things, {len(of.thing_of)} names, {len(table)} signs")
    if a.out:
        a.out.write_text(json.dumps(table), encoding="utf-8")
    else:
        written(table)


if __name__ == "__main__":
    main()
