"""One job with its notebook open, while files are taken into it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

from benchnotes.session.editing import events_of
from benchnotes.session.events import Tell
from benchnotes.session.facts import facts_of_job, note_on_card, trades_of_job
from benchnotes.session.job import ReadJob
from benchnotes.session.jobs import job_to_fill, now, open_workshop
from benchnotes.session.listening import Ears
from benchnotes.session.looking import LookedAt
from benchnotes.session.read_with_edits import read_with_edits
from benchnotes.session.reading_tools import open_reading_tools
from benchnotes.session.settings import Settings, read_settings
from benchnotes.session.taking_in import take_in
from benchnotes.session.workshop import Workshop
from benchnotes.store.jobs import Job
from benchnotes.store.notebook import Notebook
from benchnotes.trades.shelf import load


@dataclass(frozen=True, slots=True)
class Sitting:
    """A job that is being filled."""

    workshop: Workshop
    settings: Settings
    notebook: Notebook
    job: Job
    ears: Ears

    def take_in(self, file: LookedAt, tell: Tell) -> None:
        """Takes one more file into the job."""
        take_in(self.notebook, self.job, file, self.ears, tell)

    def read(self) -> ReadJob:
        """The record as it stands now."""
        facts = facts_of_job(self.notebook, self.job, self.settings)
        by_hand = events_of(self.notebook, self.job.number)
        return read_with_edits(facts, by_hand, open_reading_tools(self.workshop, facts.trades))


@contextmanager
def open_sitting(
    workshop: Workshop, files: Sequence[LookedAt], *, named: str | None, currency: str | None, trade: str | None
) -> Iterator[Sitting]:
    """Opens the job that `files` go into. Raises StoreError, SessionError, VocabularyError."""
    settings = read_settings(workshop.settings)
    if trade is not None:
        load(workshop.trades, (trade,))  # a trade that is not on the shelf is refused before anything is kept
    with open_workshop(workshop) as notebook:
        job = job_to_fill(notebook, named, [(file.path, file.sha256) for file in files])
        note_on_card(notebook, job, settings, currency=currency, trade=trade, at=now())
        trades = trades_of_job(notebook, job, settings)
        yield Sitting(workshop, settings, notebook, job, Ears(workshop, settings, trades))
