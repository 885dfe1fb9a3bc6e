"""What the reading room is asked and answers; light, so that a screen can know it without loading a reader."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from benchnotes.record.entries import JobRecord
from benchnotes.session.facts import JobFacts
from benchnotes.session.workshop import Workshop
from benchnotes.store.jobs import Job

MODULE: Final = "benchnotes.session.reading_behind"
"""Runs behind the door."""


@dataclass(frozen=True, slots=True)
class ReadIt:
    """Read this job."""

    workshop: Workshop
    job: Job


@dataclass(frozen=True, slots=True)
class HasRead:
    """A job as read; what was done to it by hand is not in it."""

    job: Job
    facts: JobFacts
    record: JobRecord
