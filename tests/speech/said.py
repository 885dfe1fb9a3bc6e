"""Words and sounds for tests, written short."""

from __future__ import annotations

from collections.abc import Sequence

import jiwer
import numpy as np
from whisper_normalizer.english import EnglishTextNormalizer

from benchnotes.record.heard import Utterance, Word
from benchnotes.speech.transcriber import Reading
from benchnotes.speech.voice_activity import FRAME, Voice, Voiced

NORMAL = EnglishTextNormalizer()


def words(text: str, *, at: float = 0.0, each: float = 0.3, p: float = 0.9) -> tuple[Word, ...]:
    """One word after another without a pause."""
    return tuple(Word(w, at + i * each, at + (i + 1) * each, p) for i, w in enumerate(text.split()))


def reading(said: Sequence[Word], *, confidence: float = 0.8, no_speech_p: float = 0.0) -> Reading:
    return Reading(tuple(said), confidence, no_speech_p)


def voiced_all(until_s: float) -> Voice:
    """Somebody speaks from 0 to `until_s` without a break."""
    return Voice((Voiced(0.0, until_s),), np.ones(round(until_s * 16_000 / FRAME), np.float32))


def text(utterances: Sequence[Utterance]) -> str:
    return " ".join(utterance.text for utterance in utterances)


def lost_runs(known: Sequence[dict], heard: str, *, least: int = 3) -> list[tuple[float, str]]:
    """Runs of known words that were not heard at all: when each was said, and what.

    Both sides go through Whisper's English normaliser, and numbers are taken apart into digits, so that a number
    written otherwise is no loss; jiwer aligns them.
    """
    spoken = [(w, u["start"]) for u in known for w in plain(u["text"])]
    aligned = jiwer.process_words(" ".join(w for w, _ in spoken), " ".join(plain(heard))).alignments[0]
    return [
        (spoken[a.ref_start_idx][1], " ".join(w for w, _ in spoken[a.ref_start_idx : a.ref_end_idx]))
        for a in aligned
        if a.type == "delete" and a.ref_end_idx - a.ref_start_idx >= least
    ]


def plain(said: str) -> list[str]:
    pieces: list[str] = []
    for word in NORMAL(said).split():
        pieces += [c for c in word if c.isdigit()] if any(c.isdigit() for c in word) else [word]
    return pieces


def wer(known: Sequence[str], heard: Sequence[str]) -> float:
    return float(jiwer.wer([NORMAL(k) for k in known], [NORMAL(h) or "-" for h in heard]))
