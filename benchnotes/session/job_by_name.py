"""A kept job, read with today's words."""

from __future__ import annotations

from dataclasses import dataclass

from benchnotes.session.editing import events_of
from benchnotes.session.facts import facts_of_job
from benchnotes.session.job import ReadJob
from benchnotes.session.jobs import find_job, open_workshop
from benchnotes.session.read_with_edits import read_with_edits
from benchnotes.session.reading_tools import open_reading_tools
from benchnotes.session.settings import read_settings
from benchnotes.session.workshop import Workshop
from benchnotes.store.jobs import Job


@dataclass(frozen=True, slots=True)
class KeptJob:
    """A job of the workshop and what follows from its facts."""

    job: Job
    read: ReadJob


def read_kept_job(workshop: Workshop, named: str) -> KeptJob:
    """The job of that number or name. Raises NoSuchJobError."""
    settings = read_settings(workshop.settings)
    with open_workshop(workshop) as notebook:
        job = find_job(notebook, named)
        facts = facts_of_job(notebook, job, settings)
        by_hand = events_of(notebook, job.number)
    return KeptJob(job, read_with_edits(facts, by_hand, open_reading_tools(workshop, facts.trades)))
