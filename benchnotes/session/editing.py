"""A job as it stands after everything that a person did by hand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from benchnotes.record.edits import AddEntry, CloseItem, CorrectEntry, Edit, StrikeEntry, left_to_do, replay
from benchnotes.record.entries import Item, JobRecord, Notice
from benchnotes.record.heard import Recording, Unheard
from benchnotes.record.job import Heard
from benchnotes.record.still_to_do.rules import still_to_do
from benchnotes.session.edit_json import HandEdit, Listened, Seen, packed, unpacked
from benchnotes.session.history import REDO, UNDO, History, history
from benchnotes.session.jobs import now
from benchnotes.store.edits import add_edit, edits_of
from benchnotes.store.notebook import Notebook


@dataclass(frozen=True, slots=True, kw_only=True)
class Edited:
    """The record with all hand edits in it, and what that leaves."""

    record: JobRecord
    items: tuple[Item, ...]
    """Still to do, less what a person closed."""
    closed: tuple[CloseItem, ...] = ()
    """Closed by a person, with the reason."""
    unheard: tuple[Unheard, ...] = ()
    """Speech without words that nobody has listened to yet."""
    history: History = field(default_factory=History)


def edited(record: JobRecord, heard: Heard, events: Sequence[Mapping[str, Any]]) -> Edited:
    """The record as read, and everything done by hand since, in order. Same in, same out; no event makes it fail."""
    past = history(events)
    number = {recording.sha256: recording.number for recording in heard.recordings}
    by_hand = [edit for row in past.holds if (edit := unpacked(row, number)) is not None]
    edits = _of_the_record(by_hand)
    recording_notices = tuple(notice for notice in record.notices if notice.kind == "recording")
    if edits:
        # a replay works the notices out anew; those about recordings follow from no record
        record = replay(record, edits)
        record = replace(record, notices=(*(n for n in record.notices if n.kind != "recording"), *recording_notices))
    return Edited(
        record=replace(record, notices=_not_seen(record.notices, by_hand)),
        items=left_to_do(still_to_do(record), edits),
        closed=tuple(edit for edit in edits if isinstance(edit, CloseItem)),
        unheard=_not_listened_to(heard.unheard, by_hand),
        history=past,
    )


def events_of(notebook: Notebook, job: int) -> tuple[Mapping[str, Any], ...]:
    """Everything done by hand in a job, in order."""
    return tuple(kept.edit for kept in edits_of(notebook, job))


def keep_edit(notebook: Notebook, job: int, edit: HandEdit, recordings: Sequence[Recording]) -> None:
    """Adds one hand edit to a job. Raises StoreError."""
    add_edit(notebook, job, packed(edit, {r.number: r.sha256 for r in recordings}), at=now())


def undo(notebook: Notebook, job: int) -> bool:
    """Takes the last hand edit that holds back; False where there is none."""
    return _again(notebook, job, UNDO, bool(history(events_of(notebook, job)).holds))


def redo(notebook: Notebook, job: int) -> bool:
    """Does again what was taken back last; False where there is nothing."""
    return _again(notebook, job, REDO, bool(history(events_of(notebook, job)).taken_back))


def _again(notebook: Notebook, job: int, event: Mapping[str, Any], possible: bool) -> bool:
    if possible:
        add_edit(notebook, job, event, at=now())
    return possible


def _of_the_record(by_hand: Sequence[HandEdit]) -> list[Edit]:
    return [edit for edit in by_hand if isinstance(edit, (AddEntry, CorrectEntry, StrikeEntry, CloseItem))]


def _not_seen(notices: Sequence[Notice], by_hand: Sequence[HandEdit]) -> tuple[Notice, ...]:
    seen = {(edit.kind, edit.about) for edit in by_hand if isinstance(edit, Seen)}
    return tuple(notice for notice in notices if (notice.kind, notice.about) not in seen)


def _not_listened_to(unheard: Sequence[Unheard], by_hand: Sequence[HandEdit]) -> tuple[Unheard, ...]:
    listened = {(edit.recording, edit.start_s) for edit in by_hand if isinstance(edit, Listened)}
    return tuple(gap for gap in unheard if (gap.recording, gap.start_s) not in listened)
