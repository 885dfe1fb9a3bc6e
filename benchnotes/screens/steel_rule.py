"""A rule laid along all the talk of a job, graduated in time: where an entry was said, what asks for a person, and
where nothing was made out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from benchnotes.record.heard import Evidence, Recording, Unheard

STEPS_S: Final = (10, 30, 60, 300, 600, 1800, 3600, 7200, 18000, 36000)
LEAST_CELLS: Final = 4
"""Between two graduations, so that they can be counted."""


@dataclass(frozen=True, slots=True)
class Marks:
    """What is marked under the rule."""

    here: Evidence | None = None
    also: Sequence[Evidence] = ()
    """Other moments of the same entry."""
    questions: Sequence[Evidence] = ()


def rule_lines(
    recordings: Sequence[Recording], unheard: Sequence[Unheard], marks: Marks, width: int
) -> tuple[str, str]:
    """The rule and the line of marks under it, each of `width` columns: ▲ here, • also here, ? asks; ░ not made out."""
    starts = _starts(recordings, width - len(_label(0)) - 8)
    if not starts:
        return "", ""
    end = max(start + cells for start, cells, _ in starts.values())
    step_s = _step_s(starts)
    rule, under = [" "] * end, [" "] * end
    for number, (start, cells, duration_s) in starts.items():
        rule[start : start + cells] = _graduated(number, cells, duration_s, step_s)
    for gap in unheard:
        for at in range(_cell(starts, gap.recording, gap.start_s), _cell(starts, gap.recording, gap.end_s) + 1):
            rule[at] = "░"
    for evidence, sign in [*((e, "?") for e in marks.questions), *((e, "•") for e in marks.also), (marks.here, "▲")]:
        if evidence is not None and evidence.recording in starts:
            under[_cell(starts, evidence.recording, evidence.start_s)] = sign
    return "".join(rule) + f" {_label(step_s)}", "".join(under)


Placed = dict[int, tuple[int, int, float]]
"""Number of a recording -> its first cell, how many cells it has, its seconds."""


def _starts(recordings: Sequence[Recording], room: int) -> Placed:
    total_s = sum(recording.duration_s for recording in recordings) or 1.0
    spare = max(0, room - 4 * len(recordings))
    placed: Placed = {}
    at = 0
    for recording in recordings:
        cells = 4 + int(spare * recording.duration_s / total_s)
        placed[recording.number] = (at, cells, recording.duration_s)
        at += cells
    return placed


def _step_s(starts: Placed) -> int:
    cells, seconds = sum(c for _, c, _ in starts.values()), sum(s for _, _, s in starts.values()) or 1.0
    return next((step for step in STEPS_S if step * cells / seconds >= LEAST_CELLS), STEPS_S[-1])


def _graduated(number: int, cells: int, duration_s: float, step_s: int) -> list[str]:
    per_cell = (duration_s or 1.0) / cells
    line = ["┴" if int((at + 1) * per_cell / step_s) > int(at * per_cell / step_s) else "─" for at in range(cells)]
    head = f"{number}├"
    line[: len(head)] = head
    line[-1] = "┤"
    return line


def _cell(starts: Placed, number: int, at_s: float) -> int:
    start, cells, duration_s = starts.get(number, (0, 1, 1.0))
    return start + min(cells - 1, int(cells * at_s / (duration_s or 1.0)))


def _label(step_s: int) -> str:
    if step_s < 60:
        return f"┴ {step_s} s"
    return f"┴ {step_s // 60} min" if step_s < 3600 else f"┴ {step_s // 3600} h"
