"""A job lying open: as it was read, and as it stands after each thing done by hand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from benchnotes.record.entries import JobRecord
from benchnotes.session.edit_json import HandEdit
from benchnotes.session.editing import Edited, edited, events_of, keep_edit, redo, undo
from benchnotes.session.evidence import files_of_job
from benchnotes.session.facts import JobFacts
from benchnotes.session.reading_room import HasRead
from benchnotes.store.jobs import Job
from benchnotes.store.notebook import Notebook


@dataclass(frozen=True, slots=True)
class OpenJob:
    """What a screen shows of one job."""

    job: Job
    facts: JobFacts
    as_read: JobRecord
    files: Mapping[int, Path]
    """Number of a recording -> where its file lies."""
    now: Edited


def opened(notebook: Notebook, read: HasRead) -> OpenJob:
    """A job that was just read, with everything done to it by hand. Raises StoreError."""
    now = edited(read.record, read.facts.heard, events_of(notebook, read.job.number))
    return OpenJob(read.job, read.facts, read.record, files_of_job(notebook, read.job.number), now)


def done(notebook: Notebook, lying: OpenJob, edit: HandEdit) -> OpenJob:
    """The job after one more hand edit, which is kept. Raises StoreError; then nothing has changed."""
    keep_edit(notebook, lying.job.number, edit, lying.facts.heard.recordings)
    return _as_it_stands(notebook, lying)


def taken_back(notebook: Notebook, lying: OpenJob) -> OpenJob | None:
    """The job without its last hand edit; None where there is none. Raises StoreError."""
    return _as_it_stands(notebook, lying) if undo(notebook, lying.job.number) else None


def done_again(notebook: Notebook, lying: OpenJob) -> OpenJob | None:
    """The job with what was taken back last; None where there is nothing. Raises StoreError."""
    return _as_it_stands(notebook, lying) if redo(notebook, lying.job.number) else None


def _as_it_stands(notebook: Notebook, lying: OpenJob) -> OpenJob:
    return replace(lying, now=edited(lying.as_read, lying.facts.heard, events_of(notebook, lying.job.number)))
