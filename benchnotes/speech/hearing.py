"""Sound becomes utterances, a minute at a time: voice activity, two readings, the audit, breaths of talk."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import islice

import numpy as np

from benchnotes.record.heard import Unheard, Utterance, Word
from benchnotes.speech.bias import hotwords
from benchnotes.speech.breaths import breaths
from benchnotes.speech.misheard import weighed
from benchnotes.speech.packing import Packed, packed, pieces_of
from benchnotes.speech.sound import Sound, SoundWindow, cut, seconds
from benchnotes.speech.transcriber import Reading, Transcriber, Way
from benchnotes.speech.unheard import HOLE_S, SUSPECT_S, Hole, agreed, fills, holes, usable
from benchnotes.speech.voice_activity import Voice, Voiced, listen

PACKS = 2
"""Sounds of up to 29 s that make one stretch: progress moves by a minute of sound."""
AT_ONCE = 8
"""Sounds read at once: a third faster than two (measured); a stop loses the ten seconds that it takes."""
TAIL_S = 1.0
"""An utterance that ends within this of a window's end may go on in the next, and waits for it."""
AROUND_S = 0.3
"""A hole is read again with so much of what is around it."""
BEST_BEAM, QUICK_BEAM = 5, 1


@dataclass(frozen=True, slots=True)
class HeardStretch:
    """What was heard in one stretch of a recording. Stretches follow one another in time."""

    utterances: tuple[Utterance, ...]
    unheard: tuple[Unheard, ...]
    until_s: float
    """All before this is done; reading can go on from here (`from_s`)."""
    warnings: tuple[str, ...] = ()


def hear(
    windows: Iterable[SoundWindow], *, recording: int, transcriber: Transcriber, bias: Sequence[str] = ()
) -> Iterator[HeardStretch]:
    """Stretch by stretch, so that a caller can keep each before the next is read. Raises SpeechError.

    `bias`: words of the trade and the job, the most important first.
    """
    ear = _Ear(recording, transcriber, hotwords(bias))
    tail, tail_s = np.zeros(0, np.float32), 0.0
    for window in windows:
        samples = np.concatenate([tail, window.samples]) if len(tail) else window.samples
        start_s = tail_s if len(tail) else window.start_s
        heard = _Window(start_s, samples, listen(samples))
        keep_s = heard.whole_until_s()
        yield from ear.stretches(heard, keep_s, window.warnings)
        tail, tail_s = cut(samples, keep_s, seconds(samples)).copy(), start_s + keep_s
    if len(tail):
        yield from ear.stretches(_Window(tail_s, tail, listen(tail)), seconds(tail), ())


@dataclass(frozen=True, slots=True)
class _Window:
    """A window of sound and where in it somebody speaks; times within it count from its start."""

    start_s: float
    samples: Sound
    voice: Voice

    def whole_until_s(self) -> float:
        """Up to where no utterance is cut off by the window's end."""
        length_s = seconds(self.samples)
        until = max(0.0, length_s - TAIL_S)
        last = self.voice.utterances[-1] if self.voice.utterances else None
        return min(until, last.start_s) if last and last.end_s > until else until


class _Ear:
    """Reads the packed sounds of a window; holds what stays the same for a recording."""

    def __init__(self, recording: int, transcriber: Transcriber, leaning: str) -> None:
        self._recording, self._transcriber = recording, transcriber
        self._ways = (Way(leaning, BEST_BEAM), Way("", QUICK_BEAM))

    def stretches(self, window: _Window, until_s: float, warnings: tuple[str, ...]) -> Iterator[HeardStretch]:
        """All that is said before `until_s`; the last stretch ends there, with the warnings."""
        utterances = [voiced for voiced in window.voice.utterances if voiced.end_s <= until_s]
        packs = packed(pieces_of(utterances, until_s), self._transcriber.longest_s)
        while some := tuple(islice(packs, AT_ONCE)):
            first, second = self._transcriber.read([pack.sound(window.samples) for pack in some], self._ways)
            read = list(zip(some, first, second, strict=True))
            for i in range(0, len(read), PACKS):
                yield self._stretch(window, read[i : i + PACKS])
        yield HeardStretch((), (), window.start_s + until_s, warnings)

    def _stretch(self, window: _Window, read: Sequence[tuple[Packed, Reading, Reading]]) -> HeardStretch:
        packs = [pack for pack, _, _ in read]
        words: list[Word] = []
        for pack, a, b in read:
            words += pack.placed(weighed(agreed(a, b), usable(b)))
        words, missing = self._audited(window, [piece.voiced for pack in packs for piece in pack.pieces], words)
        moved = [Word(w.text, w.start_s + window.start_s, w.end_s + window.start_s, w.probability) for w in words]
        unheard = tuple(
            Unheard(self._recording, hole.start_s + window.start_s, hole.end_s + window.start_s) for hole in missing
        )
        return HeardStretch(breaths(self._recording, moved), unheard, window.start_s + packs[-1].end_s)

    def _audited(
        self, window: _Window, utterances: Sequence[Voiced], words: Sequence[Word]
    ) -> tuple[list[Word], list[Hole]]:
        """The words with what a second listening to each hole added, and the holes that stay."""
        suspected = _holes(window, utterances, words, SUSPECT_S)
        readings = self._read_again(window, suspected)
        found = [
            word for hole, reading in zip(suspected, readings, strict=True) for word in _placed(hole, reading, words)
        ]
        whole = sorted([*words, *found], key=lambda word: (word.start_s, word.end_s))
        return whole, _holes(window, utterances, whole, HOLE_S)

    def _read_again(self, window: _Window, suspected: Sequence[Hole]) -> Sequence[Reading]:
        if not suspected:
            return ()
        sounds = [cut(window.samples, hole.start_s - AROUND_S, hole.end_s + AROUND_S) for hole in suspected]
        return self._transcriber.read(sounds, (Way("", QUICK_BEAM),))[0]


def _placed(hole: Hole, reading: Reading, words: Sequence[Word]) -> list[Word]:
    """What a second listening adds, timed within the hole."""
    before_s = max(0.0, hole.start_s - AROUND_S)
    moved = [Word(w.text, w.start_s + before_s, w.end_s + before_s, w.probability) for w in reading.words]
    added = fills(hole, Reading(tuple(moved), reading.confidence, reading.no_speech_p), words)
    # Only this listening has them: a number among them is to be checked by ear.
    return [
        Word(w.text, max(w.start_s, hole.start_s), max(min(w.end_s, hole.end_s), hole.start_s), w.probability)
        for w in weighed(added, ())
    ]


def _holes(window: _Window, utterances: Sequence[Voiced], words: Sequence[Word], least_s: float) -> list[Hole]:
    found: list[Hole] = []
    for voiced in utterances:
        inside = [w for w in words if voiced.start_s <= (w.start_s + w.end_s) / 2 <= voiced.end_s]
        found += holes(voiced, inside, window.voice, least_s=least_s)
    return found
