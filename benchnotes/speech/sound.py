"""Sound as the recogniser takes it: windows of a recording in order."""

from __future__ import annotations

from typing import Protocol

import numpy as np
from numpy.typing import NDArray

RATE = 16_000
"""Samples a second; Silero and Whisper know no other."""

Sound = NDArray[np.float32]
"""Mono, 16 kHz, -1 to 1."""


class SoundWindow(Protocol):
    """What a file or a microphone hands in. Windows of a recording follow one another without a gap."""

    @property
    def start_s(self) -> float: ...

    @property
    def samples(self) -> Sound: ...

    @property
    def warnings(self) -> tuple[str, ...]:
        """What could not be read, in sentences."""


def seconds(samples: Sound) -> float:
    return len(samples) / RATE


def cut(samples: Sound, start_s: float, end_s: float) -> Sound:
    """The samples from `start_s` to `end_s`, as far as there are any."""
    return samples[max(0, round(start_s * RATE)) : max(0, round(end_s * RATE))]
