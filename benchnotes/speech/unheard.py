"""The audit: nothing said is silently lost.

A recogniser can leave out whole stretches without an error. Two readings of one sound lose different words, so
what only one has is put back; then every voiced stretch that no word accounts for is read again alone; and what
still has no words is Unheard, with its time.
"""

from __future__ import annotations

import zlib
from collections.abc import Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from benchnotes.record.heard import Word
from benchnotes.speech.transcriber import Reading
from benchnotes.speech.voice_activity import Voice, Voiced

LOST_RUN = 2
"""Words in a row that one reading has and the other has not, from which on they were lost rather than misheard."""
LOOP_RATIO = 2.4
"""Text that compresses better than this goes round in circles (Whisper's own threshold)."""
SURE_ENOUGH_P, SURE_OF_FEW_P = 0.35, 0.7
"""Words put back from one reading alone are on average at least this probable; in a short hole, where a recogniser
likes to invent, more."""
NO_SPEECH_P, UNSURE_P = 0.6, 0.37
"""Whisper's own thresholds: so sure of no speech and so unsure of the words (mean log probability -1)."""
SUSPECT_S, HOLE_S = 0.45, 0.9
"""Voice without words is read again from the one length on, and listed where it stays without from the other."""
LONGEST_WORD_S = 1.0
"""No word accounts for more sound than this, a short one for less: a stretched "it" can cover a lost sentence."""


@dataclass(frozen=True, slots=True)
class Hole:
    """A voiced stretch that no word accounts for."""

    start_s: float
    end_s: float
    voiced_s: float


def agreed(first: Reading, second: Reading) -> tuple[Word, ...]:
    """The words of the first reading, with what only the second has put back where it was said.

    "the thread on the tank is M6 and it leaks" beside "the thread leaks" gives the longer one, whichever way round.
    A reading that goes round in circles, or says that nobody speaks, counts for nothing beside one that does not.
    """
    a, b = usable(first), usable(second)
    if not a or not b:
        return a or b
    words: list[Word] = []
    for what, i, j, k, m in SequenceMatcher(None, keys(a), keys(b), autojunk=False).get_opcodes():
        ours, theirs = a[i:j], b[k:m]
        lost = len(theirs) - len(ours) >= LOST_RUN and what != "equal" and mean_p(theirs) >= SURE_ENOUGH_P
        words += _between(theirs, words, a[j:]) if lost else ours
    return tuple(words)


def usable(reading: Reading) -> tuple[Word, ...]:
    """The words of a reading; none where nobody speaks, and a loop only once."""
    if reading.no_speech_p > NO_SPEECH_P and reading.confidence < UNSURE_P:
        return ()
    if goes_round(reading.words):
        return ()
    return reading.words


def goes_round(words: Sequence[Word]) -> bool:
    text = " ".join(word.text for word in words).encode()
    return len(text) > 60 and len(text) / len(zlib.compress(text)) > LOOP_RATIO


def keys(words: Sequence[Word]) -> list[str]:
    """Words as they are compared: letters and digits only."""
    return ["".join(c for c in word.text.casefold() if c.isalnum()) for word in words]


def mean_p(words: Sequence[Word]) -> float:
    return sum(word.probability or 0.0 for word in words) / len(words) if words else 0.0


def _between(found: Sequence[Word], before: Sequence[Word], after: Sequence[Word]) -> list[Word]:
    """Words put back, their times kept in order with their neighbours'."""
    least = before[-1].start_s if before else 0.0
    most = after[0].end_s if after else float("inf")
    return [
        Word(w.text, min(max(w.start_s, least), most), min(max(w.end_s, least), most), w.probability) for w in found
    ]


def holes(voiced: Voiced, words: Sequence[Word], voice: Voice, *, least_s: float = HOLE_S) -> list[Hole]:
    """Where in an utterance voice has no word for `least_s`. `words` are those of the utterance, in order."""
    found, at = [], voiced.start_s
    ends = [(*_span(words, i), word) for i, word in enumerate(words)]
    for start_s, end_s, _ in [*ends, (voiced.end_s, voiced.end_s, None)]:
        carried = voice.voiced_s(at, start_s)
        if carried >= least_s:
            found.append(Hole(at, start_s, carried))
        at = max(at, end_s)
    return found


def _span(words: Sequence[Word], i: int) -> tuple[float, float]:
    """The seconds that a word accounts for: a stretched one keeps the end that its neighbour leaves free."""
    word, most = words[i], _longest_s(words[i].text)
    if word.end_s - word.start_s <= most:
        return word.start_s, word.end_s
    if i + 1 < len(words) and words[i + 1].start_s - word.end_s < 0.05:
        return word.end_s - most, word.end_s
    return word.start_s, word.start_s + most


def _longest_s(text: str) -> float:
    """At most a second a word; digits are read out one by one, so each counts as a word of its own."""
    digits = sum(c.isdigit() for c in text)
    one_s = min(LONGEST_WORD_S, 0.4 + 0.1 * sum(c.isalpha() for c in text))
    return max(1, digits) * one_s


def fills(hole: Hole, reading: Reading, around: Sequence[Word]) -> tuple[Word, ...]:
    """What a second listening to a hole adds: probable words that its neighbours do not already have."""
    words = usable(reading)
    known = set(keys([w for w in around if hole.start_s - 1.5 <= w.end_s and w.start_s <= hole.end_s + 1.5]))
    while words and keys(words[:1])[0] in known:
        words = words[1:]
    while words and keys(words[-1:])[0] in known:
        words = words[:-1]
    needed_p = SURE_ENOUGH_P if hole.voiced_s >= HOLE_S else SURE_OF_FEW_P
    return words if mean_p(words) >= needed_p else ()
