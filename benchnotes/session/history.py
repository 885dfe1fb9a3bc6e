"""What holds of everything that was ever done by hand: an undo and a redo are events too, and nothing is forgotten."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

UNDO: Final[Mapping[str, Any]] = {"do": "undo"}
REDO: Final[Mapping[str, Any]] = {"do": "redo"}

Row = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class History:
    """The events that hold, oldest first, and those that were taken back, the last of them first to come again."""

    holds: tuple[Row, ...] = ()
    taken_back: tuple[Row, ...] = ()


def history(events: Iterable[Row]) -> History:
    """correct, strike, undo -> correct holds, strike can come again. A new edit ends what could come again."""
    holds: list[Row] = []
    taken_back: list[Row] = []
    for event in events:
        if event == UNDO:
            if holds:
                taken_back.append(holds.pop())
        elif event == REDO:
            if taken_back:
                holds.append(taken_back.pop())
        else:
            holds.append(event)
            taken_back.clear()
    return History(tuple(holds), tuple(taken_back))
