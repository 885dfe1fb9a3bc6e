"""Nothing said is silently lost: the demo recordings through the real recogniser, against the words known to be said.

The judge aligns what was known to be spoken with what was heard (jiwer, Whisper's English normaliser).
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from speech.said import lost_runs, text, wer

from benchnotes.capture.media import SoundWindow, sound_windows
from benchnotes.record.heard import Unheard, Utterance
from benchnotes.speech.hearing import HeardStretch, hear
from benchnotes.speech.sound import RATE, Sound
from benchnotes.speech.transcriber import Reading, Way
from benchnotes.speech.whisper import Whisper

pytestmark = pytest.mark.speech

UNTIL_S = 120.0
TRADE = (
    "boiler", "brass spout", "thermostat", "O-ring", "gasket", "Quillmoor", "Plume Two", "element", "safety valve",
    "limescale", "lamp", "fuse", "flex", "earth", "insulation", "spindle", "thread", "M6", "quid", "bar", "grub screw",
    "washer", "solder", "verdigris", "bush", "seal",
)  # fmt: skip
"""Words as a trade and a job would lend them."""


@pytest.fixture(scope="module")
def known(demo_audio: Path) -> list[dict[str, Any]]:
    """What is said in the first two minutes of the first visit."""
    told = json.loads((demo_audio / "hat-steamer.json").read_text(encoding="utf-8"))
    return [u for u in told["utterances"] if u["recording"] == 1 and u["end"] < UNTIL_S - 1]


@pytest.fixture(scope="module")
def samples(demo_audio: Path) -> Sound:
    (window, *_) = sound_windows(demo_audio / "hat-steamer-1-inspection.opus", window_s=UNTIL_S)
    return window.samples


def windows(samples: Sound, window_s: float, from_s: float = 0.0) -> Iterator[SoundWindow]:
    start = round(from_s * RATE)
    for at in range(start, len(samples), round(window_s * RATE)):
        yield SoundWindow(at / RATE, samples[at : at + round(window_s * RATE)])


def heard(transcriber: Any, sound: Iterator[SoundWindow]) -> list[HeardStretch]:
    return list(hear(sound, recording=1, transcriber=transcriber, bias=TRADE))


def utterances(stretches: Sequence[HeardStretch]) -> list[Utterance]:
    return [utterance for stretch in stretches for utterance in stretch.utterances]


def unheard(stretches: Sequence[HeardStretch]) -> list[Unheard]:
    return [missing for stretch in stretches for missing in stretch.unheard]


@pytest.fixture(scope="module")
def whole(whisper: Whisper, samples: Sound) -> list[HeardStretch]:
    return heard(whisper, windows(samples, UNTIL_S))


def test_no_run_of_three_words_is_lost_and_little_is_listed_needlessly(
    whole: list[HeardStretch], known: list[dict[str, Any]]
) -> None:
    assert lost_runs(known, text(utterances(whole))) == []
    speech_s = sum(u["end"] - u["start"] for u in known)
    assert sum(missing.end_s - missing.start_s for missing in unheard(whole)) <= 0.02 * speech_s


def test_words_lie_in_order_inside_their_utterance_and_the_recording(whole: list[HeardStretch]) -> None:
    said = utterances(whole)
    assert all(1 <= len(u.words) <= 40 for u in said)
    assert all(a.start_s <= b.start_s for a, b in pairwise(said))
    assert all(0 <= u.start_s <= w.start_s <= w.end_s <= u.end_s <= UNTIL_S for u in said for w in u.words)
    assert all(0 <= (w.probability or 0) <= 1 for u in said for w in u.words)
    assert all(a.until_s <= b.until_s for a, b in pairwise(whole))
    assert whole[-1].until_s == pytest.approx(UNTIL_S, abs=0.01)


def test_reading_goes_on_where_it_was_stopped(
    whisper: Whisper, samples: Sound, whole: list[HeardStretch], known: list[dict[str, Any]]
) -> None:
    stopped = whole[:1]
    rest = heard(whisper, windows(samples, UNTIL_S, from_s=stopped[-1].until_s))
    assert lost_runs(known, text(utterances(stopped)) + " " + text(utterances(rest))) == []


def test_a_window_s_edge_cuts_no_word(
    whisper: Whisper, samples: Sound, whole: list[HeardStretch], known: list[dict[str, Any]]
) -> None:
    in_pieces = heard(whisper, windows(samples, 17.0))
    assert lost_runs(known, text(utterances(in_pieces))) == []
    assert wer([text(utterances(whole))], [text(utterances(in_pieces))]) < 0.12


class Lossy:
    """Whisper as it loses whole sentences: with hotwords and times among the words, and nothing to compare with."""

    def __init__(self, whisper: Whisper) -> None:
        self._whisper, self.longest_s = whisper, whisper.longest_s
        self.first: list[str] = []

    def read(self, sounds: Sequence[Sound], ways: Sequence[Way]) -> tuple[tuple[Reading, ...], ...]:
        if len(ways) == 1:
            return self._whisper.read(sounds, ways)
        (lossy,) = self._whisper.read(sounds, [Way(ways[0].hotwords, timestamps=True)])
        self.first += [word.text for reading in lossy for word in reading.words]
        return tuple(lossy for _ in ways)


def test_the_audit_catches_what_a_lossy_recogniser_leaves_out(
    whisper: Whisper, samples: Sound, known: list[dict[str, Any]]
) -> None:
    """The recogniser skips more than forty words in a row here, without an error; the audit brings them back."""
    lossy = Lossy(whisper)
    stretches = heard(lossy, windows(samples, UNTIL_S))
    lost = lost_runs(known, " ".join(lossy.first))
    assert max(len(words.split()) for _, words in lost) >= 20
    missing = unheard(stretches)
    still_lost = lost_runs(known, text(utterances(stretches)))
    assert [run for run in still_lost if not any(m.start_s - 1 <= run[0] <= m.end_s + 1 for m in missing)] == []


class Deaf:
    """A recogniser that never writes a word."""

    longest_s = 29.0

    def read(self, sounds: Sequence[Sound], ways: Sequence[Way]) -> tuple[tuple[Reading, ...], ...]:
        return tuple(tuple(Reading((), 0.9, 0.0) for _ in sounds) for _ in ways)


def test_speech_that_nobody_could_read_is_listed_as_unheard(samples: Sound, known: list[dict[str, Any]]) -> None:
    missing = unheard(heard(Deaf(), windows(samples, UNTIL_S)))
    middles = [(u["start"] + u["end"]) / 2 for u in known]
    assert all(any(m.start_s <= middle <= m.end_s for m in missing) for middle in middles)


def chords(seconds: float) -> Sound:
    """A slow tune of three-part chords with an attack and a decay, in equal temperament."""
    t = np.arange(round(seconds * RATE)) / RATE
    beat = t % 0.8
    root = 220.0 * 2 ** ((np.floor(t / 0.8) * 5 % 12) / 12)
    tune = sum(np.sin(2 * np.pi * np.cumsum(root * up) / RATE) for up in (1.0, 1.26, 1.498))
    return (0.15 * np.exp(-2 * beat) * tune).astype(np.float32)


@pytest.mark.parametrize(
    "sound",
    [
        np.zeros(40 * RATE, np.float32),
        (0.01 * np.random.default_rng(7).standard_normal(40 * RATE)).astype(np.float32),
        (0.3 * np.sin(2 * np.pi * 440 * np.arange(40 * RATE) / RATE)).astype(np.float32),
        chords(40.0),
    ],
    ids=["silence", "hiss", "tone", "music"],
)
def test_where_nobody_speaks_no_word_is_invented(whisper: Whisper, sound: Sound) -> None:
    stretches = heard(whisper, windows(sound, 60.0))
    assert utterances(stretches) == []
    assert sum(m.end_s - m.start_s for m in unheard(stretches)) <= 2.0
    assert stretches[-1].until_s == pytest.approx(40.0, abs=0.01)


def test_what_a_file_could_not_give_is_told_on(whisper: Whisper) -> None:
    cut_off = SoundWindow(0.0, np.zeros(5 * RATE, np.float32), ("film.mp4 is cut off",))
    assert [warning for stretch in heard(whisper, iter([cut_off])) for warning in stretch.warnings] == [
        "film.mp4 is cut off"
    ]


def test_no_sound_gives_no_stretch(whisper: Whisper) -> None:
    assert heard(whisper, iter([])) == []
