"""What a job is made of before anything is derived: recordings, what was heard in them, what was not."""

from __future__ import annotations

from dataclasses import dataclass

from benchnotes.record.heard import Recording, Unheard, Utterance


@dataclass(frozen=True, slots=True)
class Heard:
    """All that was heard in one job, in the order of its time line (recordings by number, then by time)."""

    recordings: tuple[Recording, ...]
    utterances: tuple[Utterance, ...]
    unheard: tuple[Unheard, ...] = ()
