"""Plays some seconds of a recording; one of the two files that open the sound system."""

from __future__ import annotations

import importlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

from benchnotes.capture.errors import CaptureError
from benchnotes.capture.media import RATE, Sound, sound_windows


class LoudspeakerError(CaptureError):
    """Nothing can be heard; the text says why and what to do."""


def seconds_of(path: Path, start_s: float, end_s: float) -> Sound:
    """The sound between two moments: float32, mono, 16 kHz. Raises MediaError."""
    window = next(sound_windows(path, window_s=end_s - start_s, from_s=start_s), None)
    if window is None:
        raise LoudspeakerError(f"{path.name} ends before {start_s:.0f} s, so nothing of it can be played there.")
    return window.samples


def play(sound: Sound, until: Callable[[], bool], *, look_every_s: float = 0.05) -> None:
    """Plays to the end, or until `until` says so. Raises LoudspeakerError."""
    device = _sound_system()
    try:
        device.play(sound, samplerate=RATE)
        stream = device.get_stream()
        while stream.active and not until():
            device.sleep(round(look_every_s * 1000))
        device.stop()
    except device.PortAudioError as error:
        raise LoudspeakerError(
            f"The loudspeaker cannot be opened ({error}). Plug one in, or choose one in your system's sound settings."
        ) from error


def _sound_system() -> Any:
    # opened by name and only when something is played: importing it fails where its system library is missing
    try:
        return importlib.import_module("sounddevice")
    except OSError as error:
        raise LoudspeakerError(
            "Nothing can be played, since the sound system's library is missing. "
            "Install PortAudio (Debian: libportaudio2); everything else works without it."
        ) from error
