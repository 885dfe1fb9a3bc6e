"""The time line of a job: its visits one after the other, numbered from 1."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime

from benchnotes.record.heard import Recording
from benchnotes.store.recordings import KeptRecording

LONG_AGO = datetime.min.replace(tzinfo=UTC)


def in_time_order(given: Sequence[KeptRecording]) -> tuple[KeptRecording, ...]:
    """By when each began, else as given; one that does not tell comes right after the one given before it."""
    keys, last = [], LONG_AGO
    for place, kept in enumerate(given):
        last = kept.started_at or last
        keys.append((last, place))
    return tuple(kept for _, kept in sorted(zip(keys, given, strict=True), key=lambda pair: pair[0]))


def numbered(kept: KeptRecording, number: int) -> Recording:
    """A kept recording as the record speaks of it."""
    return Recording(
        number=number,
        name=kept.name,
        kind=kept.kind,
        duration_s=kept.duration_s,
        sha256=kept.sha256,
        started_at=kept.started_at,
        started_from=kept.started_from,
    )
