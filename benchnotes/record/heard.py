"""What was heard and when. All times are seconds from the start of a recording; ranges are half-open."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

RecordingKind = Literal["sound", "video", "captions"]
DateSource = Literal["container", "file", "typed", "unknown"]


@dataclass(frozen=True, slots=True)
class Recording:
    """One file of a job. `number` counts from 1 within the job, in the order of the time line."""

    number: int
    name: str
    kind: RecordingKind
    duration_s: float
    sha256: str
    started_at: datetime | None = None
    """With its zone; None where nothing tells."""
    started_from: DateSource = "unknown"


@dataclass(frozen=True, slots=True)
class Word:
    """One word as recognised or as captioned."""

    text: str
    start_s: float
    end_s: float
    probability: float | None = None
    """How sure the recogniser was, 0 to 1; None where nobody said (captions, typed text)."""


@dataclass(frozen=True, slots=True)
class Utterance:
    """One breath of talk."""

    recording: int
    start_s: float
    end_s: float
    words: tuple[Word, ...]

    @property
    def text(self) -> str:
        return " ".join(word.text for word in self.words)

    def word_spans(self) -> tuple[tuple[int, int], ...]:
        """Character range of every word in `text`."""
        spans, at = [], 0
        for word in self.words:
            spans.append((at, at + len(word.text)))
            at += len(word.text) + 1
        return tuple(spans)


@dataclass(frozen=True, slots=True)
class Evidence:
    """The seconds of a recording in which something was said, and the words heard there."""

    recording: int
    start_s: float
    end_s: float
    heard: str


@dataclass(frozen=True, slots=True)
class Unheard:
    """Speech that no word covers: it is in the recording, and nobody has read it."""

    recording: int
    start_s: float
    end_s: float


def captioned(recording: int, start_s: float, end_s: float, text: str) -> Utterance:
    """An utterance whose words share its time in proportion to their letters (captions carry no word times)."""
    parts = text.split()
    letters = sum(len(part) for part in parts) or 1
    words, at = [], start_s
    for part in parts:
        until = at + (end_s - start_s) * len(part) / letters
        words.append(Word(part, at, until))
        at = until
    return Utterance(recording, start_s, end_s, tuple(words))
