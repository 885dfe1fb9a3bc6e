"""The seconds of an evidence: the right ones are taken out, and a machine that cannot play says so."""

from __future__ import annotations

import importlib
import wave
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from benchnotes.capture.loudspeaker import LoudspeakerError, play, seconds_of
from benchnotes.capture.media import RATE


@pytest.fixture
def rising(tmp_path: Path) -> Path:
    """Ten seconds, each a tenth louder than the one before."""
    path = tmp_path / "rising.wav"
    loud = np.repeat(np.arange(10) * 3000, RATE).astype("<i2")
    with wave.open(str(path), "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(RATE)
        out.writeframes(loud.tobytes())
    return path


def test_the_right_seconds_are_taken(rising: Path) -> None:
    sound = seconds_of(rising, 4.0, 6.0)
    assert len(sound) == 2 * RATE
    assert sound[RATE // 2] == pytest.approx(4 * 3000 / 32768, abs=1e-3)
    assert sound[RATE + RATE // 2] == pytest.approx(5 * 3000 / 32768, abs=1e-3)


def test_seconds_after_the_end_are_a_sentence(rising: Path) -> None:
    with pytest.raises(LoudspeakerError, match=r"rising\.wav ends before 20 s"):
        seconds_of(rising, 20.0, 21.0)


def test_a_missing_sound_system_is_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(name: str) -> Any:
        raise OSError("PortAudio library not found")

    monkeypatch.setattr(importlib, "import_module", missing)
    with pytest.raises(LoudspeakerError, match="Install PortAudio"):
        play(np.zeros(10, np.float32), lambda: True)
