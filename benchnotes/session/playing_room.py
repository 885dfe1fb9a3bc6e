"""What the room with the loudspeaker is asked and answers; light, so that a screen can know it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Final

MODULE: Final = "benchnotes.session.playing_behind"
"""Runs behind the door."""


@dataclass(frozen=True, slots=True)
class Play:
    """Play these seconds; whatever is playing stops."""

    path: Path
    start_s: float
    end_s: float


@dataclass(frozen=True, slots=True)
class Stop:
    """Be quiet."""


@dataclass(frozen=True, slots=True)
class Played:
    """The seconds have been heard, or were stopped."""

    asked: Play
