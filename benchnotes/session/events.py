"""What taking in a file tells whoever watches: frozen, small, in order."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Began:
    """A file is being listened to."""

    name: str
    from_s: float
    """Above 0 where an earlier run came so far."""
    duration_s: float


@dataclass(frozen=True, slots=True)
class Reached:
    """Everything up to here is kept."""

    until_s: float


@dataclass(frozen=True, slots=True)
class Warned:
    """Something that the user should know; the run goes on."""

    text: str


@dataclass(frozen=True, slots=True)
class Skipped:
    """The job has this file already, whole."""

    name: str


@dataclass(frozen=True, slots=True)
class Ended:
    """The file has been listened to, to its end."""

    name: str


Event = Began | Reached | Warned | Skipped | Ended
Tell = Callable[[Event], None]
