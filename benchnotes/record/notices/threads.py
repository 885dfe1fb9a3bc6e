"""Metric threads that do not exist, and tapping drills that do not fit."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from decimal import Decimal

from benchnotes.record.entries import JobRecord, Notice, Reading
from benchnotes.record.notices.notice import notice_of, told_together
from benchnotes.record.notices.thread_table import pitches, tapping_drill
from benchnotes.record.same_thing import name_words

SIZE_WORDS = frozenset(("thread", "pitch", "drill", "tap", "tapping", "tapped", "hole", "size", "diameter"))
"""Words of a reading's name that say which size it is, not of what."""
INSERTS = frozenset(("insert", "helicoil", "coil", "sleeve"))
"""A thread insert takes a drill of its own, larger than the thread's."""
BREATH_S = 20.0
"""A thread and its drill or pitch are told within this time of each other."""

# ISO 68-1: the basic minor diameter of an internal thread is D - 1.0825 P; a smaller drill leaves nothing for the tap.
# At D - 0.65 P half of the flank is gone (60 % of 1.0825 P; handbooks advise 60 to 75 %; from memory).
TIGHTEST, LOOSEST = Decimal("1.0825"), Decimal("0.65")


def thread_that_is_none(record: JobRecord) -> Iterable[Notice]:
    """ "M8 by one and a half" -> ISO 261 has M8 with 1.25, 0.75 and 1 mm only."""
    for thread, pitch in _pairs(record, "pitch"):
        known = pitches(thread.value)
        if known and pitch.value not in known and pitch.value < thread.value / 2:
            listed = ", ".join(f"{p.normalize():f}" for p in known)
            why = (
                f"M{thread.value.normalize():f} x {pitch.value.normalize():f} is no thread of ISO 261, which has "
                f"{listed} mm for that diameter. Check the size, or it is a thread of another kind."
            )
            yield notice_of("thread_unknown", thread.what, why, thread, pitch)


def drill_that_does_not_fit(record: JobRecord) -> Iterable[Notice]:
    """ "Drilled it seven mil, tapped it M8" -> a drill of 6.8 mm is meant for M8 (ISO 2306)."""
    for thread, drill in _pairs(record, "drill"):
        known = _pitch_told(record, thread) or pitches(thread.value)
        if known and not _for_insert(thread, drill) and not any(_fits(thread.value, p, drill.value) for p in known):
            right = " or ".join(f"{tapping_drill(thread.value, p).normalize():f}" for p in known)
            why = (
                f"A {drill.value.normalize():f} mm drill does not suit an M{thread.value.normalize():f} thread: "
                f"ISO 2306 gives {right} mm."
            )
            yield notice_of("tapping_drill", thread.what, why, thread, drill)


def _fits(diameter: Decimal, pitch: Decimal, drill: Decimal) -> bool:
    return diameter - TIGHTEST * pitch <= drill <= diameter - LOOSEST * pitch


def _pairs(record: JobRecord, role: str) -> Iterator[tuple[Reading, Reading]]:
    """Every metric thread with the pitch, or drill, told of the same thing in the same breath."""
    sizes = [reading for reading in record.readings if reading.unit == "mm" and not reading.about]
    for thread in sizes:
        for other in sizes:
            if _is_thread(thread) and role in name_words(other.what) and _same_place(thread, other):
                yield thread, other


def _pitch_told(record: JobRecord, thread: Reading) -> tuple[Decimal, ...]:
    return tuple(pitch.value for metric, pitch in _pairs(record, "pitch") if metric == thread)


def _is_thread(reading: Reading) -> bool:
    """A size said as "M8": the letter tells it from any other length."""
    size = re.compile(rf"\bm ?{re.escape(f'{reading.value.normalize():f}')}\b", re.IGNORECASE)
    roles = {"pitch", "drill"} & set(name_words(reading.what))
    return not roles and any(size.search(heard.heard) for heard in reading.evidence)


def _same_place(thread: Reading, other: Reading) -> bool:
    mine, others = (set(name_words(reading.what)) - SIZE_WORDS for reading in (thread, other))
    same = not mine or not others or mine <= others or others <= mine
    return other != thread and same and told_together(thread, other, BREATH_S)


def _for_insert(*readings: Reading) -> bool:
    heard = " ".join([*(r.what for r in readings), *(e.heard for r in readings for e in r.evidence)])
    return bool(INSERTS & set(name_words(heard)))
