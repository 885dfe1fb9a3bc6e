"""Entries with a number or a name that was heard unsurely."""

from __future__ import annotations

from collections.abc import Iterable

from benchnotes.record.entries import Charge, JobRecord, Notice, Part, Reading
from benchnotes.record.notices.notice import notice_of


def numbers_to_listen_to(record: JobRecord) -> Iterable[Notice]:
    """A price of which the recogniser was unsure -> listen to it, or type it."""
    entries: tuple[Part | Charge | Reading, ...] = (*record.parts, *record.charges, *record.readings)
    for entry in entries:
        if entry.check:
            about = entry.name if isinstance(entry, Part) else entry.what
            yield notice_of(
                "check_by_ear", about, f"A number for {about} was heard unsurely: listen, or type it.", entry
            )
