"""The record of a job as lines of at most 80 columns, each entry with the moments in which it was said."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

import click

from benchnotes.exports import wording
from benchnotes.exports.entry_lines import SECTIONS, entry_line
from benchnotes.record.entries import Entry, JobRecord
from benchnotes.record.heard import Recording

WIDTH: Final = 80
TOLD_ELSEWHERE: Final = ("recording", "check_by_ear")
"""Notices of what `not_heard_lines` tells, and of what is marked beside its entry."""


def record_lines(record: JobRecord) -> Iterator[str]:
    """Every list of the record that holds something."""
    yield ""
    yield "Machine"
    yield from wrapped(entry_line(record.machine), 2)
    for title, entries in SECTIONS:
        yield from _section(title, getattr(record, entries))
    told = [notice for notice in record.notices if notice.kind not in TOLD_ELSEWHERE]
    yield from _section("Worth a look", told)


def visit_lines(recordings: Iterable[Recording]) -> Iterator[str]:
    """One line a recording."""
    for recording in recordings:
        day = f", {recording.started_at:%d %B %Y %H:%M}" if recording.started_at else ", no date"
        yield from wrapped(f"visit {recording.number}: {recording.name}, {wording.clock(recording.duration_s)}{day}", 2)


def evidence_lines(entry: Entry, indent: int = 6, at_most: int = 3) -> Iterator[str]:
    """Where an entry was said, in the words heard there."""
    for said in entry.evidence[:at_most]:
        yield from wrapped(f"{wording.moment_of(said)}: “{_shortened(said.heard)}”", indent)
    if len(entry.evidence) > at_most:
        rest = ", ".join(wording.moment_of(said) for said in entry.evidence[at_most:])
        yield from wrapped(f"also {rest}", indent)


def headed(text: str) -> str:
    """A heading, as wide as the paper at most."""
    return click.style("\n".join(wrapped(text, 0)), bold=True)


def wrapped(text: str, indent: int) -> list[str]:
    """`text` in lines of at most WIDTH columns; what runs over is set two columns in."""
    return textwrap.wrap(text, WIDTH, initial_indent=" " * indent, subsequent_indent=" " * (indent + 2)) or [""]


def _section(title: str, entries: Sequence[Entry]) -> Iterator[str]:
    if not entries:
        return
    yield ""
    yield title
    for entry in entries:
        yield from wrapped(entry_line(entry) + ("  [check by ear]" if entry.check else ""), 2)
        yield from evidence_lines(entry)


def _shortened(heard: str) -> str:
    return textwrap.shorten(heard, 160, placeholder=" …")
