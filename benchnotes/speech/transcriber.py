"""Transcriber: what every recogniser keeps, so that another can take Whisper's place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from benchnotes.record.heard import Word
from benchnotes.speech.sound import Sound


@dataclass(frozen=True, slots=True)
class Way:
    """One way of reading a sound. Two ways lose different things, so each checks the other."""

    hotwords: str = ""
    """Words to lean towards; none where empty."""
    beam: int = 1
    """How many guesses are followed at once."""
    timestamps: bool = False
    """Whether the recogniser writes times among its words: the same sound reads a little differently then."""


@dataclass(frozen=True, slots=True)
class Reading:
    """What one way made of one sound."""

    words: tuple[Word, ...]
    """Times in seconds from the start of the sound, in order; the recogniser's own punctuation."""
    confidence: float
    """Mean probability of what was written, 0 to 1."""
    no_speech_p: float
    """How sure the recogniser is that nobody speaks, 0 to 1."""


class Transcriber(Protocol):
    """Sounds in, words out. The same sounds give the same words."""

    @property
    def longest_s(self) -> float:
        """The longest sound it reads whole."""

    def read(self, sounds: Sequence[Sound], ways: Sequence[Way]) -> tuple[tuple[Reading, ...], ...]:
        """For each way, a reading of each sound. Raises SpeechError."""
