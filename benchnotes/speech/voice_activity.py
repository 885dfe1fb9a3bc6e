"""Where somebody speaks: Silero's voice activity (it ships inside faster-whisper) cuts sound into utterances."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from faster_whisper.vad import VadOptions, get_speech_timestamps, get_vad_model
from numpy.typing import NDArray

from benchnotes.speech.sound import RATE, Sound

SILENCE_MS = 500
"""As long a silence ends an utterance (speech-settings: 500 ms, measured)."""
LONGEST_S = 15.0
"""A longer utterance is cut at its last short silence."""
PAD_MS = 200
FRAME = 512
"""Samples for each voice probability: 32 ms."""
THRESHOLD = 0.5


@dataclass(frozen=True, slots=True)
class Voiced:
    """A stretch in which somebody speaks, in seconds; half-open, a little silence at both ends."""

    start_s: float
    end_s: float

    @property
    def length_s(self) -> float:
        return self.end_s - self.start_s


@dataclass(frozen=True, slots=True)
class Voice:
    """What voice activity hears in a sound."""

    utterances: tuple[Voiced, ...]
    probabilities: NDArray[np.float32]
    """One for each 32 ms."""

    def voiced_s(self, start_s: float, end_s: float) -> float:
        """How many of these seconds carry a voice."""
        a, b = round(start_s * RATE / FRAME), round(end_s * RATE / FRAME)
        return float((self.probabilities[max(0, a) : max(0, b)] >= THRESHOLD).sum()) * FRAME / RATE


def listen(samples: Sound) -> Voice:
    """Utterances in order, none overlapping, none longer than 15 s."""
    if not len(samples):
        return Voice((), np.zeros(0, np.float32))
    options = VadOptions(
        threshold=THRESHOLD,
        min_silence_duration_ms=SILENCE_MS,
        max_speech_duration_s=LONGEST_S,
        speech_pad_ms=PAD_MS,
    )
    found = get_speech_timestamps(samples, options)
    padded = np.pad(samples, (0, -len(samples) % FRAME))
    probabilities = np.asarray(get_vad_model()(padded), np.float32).reshape(-1)
    utterances = tuple(Voiced(clip["start"] / RATE, clip["end"] / RATE) for clip in found)
    return Voice(tuple(voiced for voiced in utterances if voiced.length_s > 0), probabilities)
