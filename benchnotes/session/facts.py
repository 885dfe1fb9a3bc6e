"""The facts of one job as the store holds them: what its record is read from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from benchnotes.record.heard import Recording, Unheard, Utterance
from benchnotes.record.job import Heard
from benchnotes.session.settings import Settings
from benchnotes.session.time_line import in_time_order, numbered
from benchnotes.store.jobs import Job, card, note
from benchnotes.store.notebook import Notebook
from benchnotes.store.recordings import recordings_of
from benchnotes.store.talk import unheard_in, utterances_in, warnings_in


@dataclass(frozen=True, slots=True)
class RecordingWarning:
    """Something that went wrong with a recording while it was taken in."""

    recording: int
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JobFacts:
    """All that one job's record is derived from."""

    heard: Heard
    currency: str | None = None
    """ISO 4217, where somebody named one for this job or this workshop; else the talk tells."""
    trades: tuple[str, ...] = ()
    warned: tuple[RecordingWarning, ...] = ()


def facts_of_job(notebook: Notebook, job: Job, settings: Settings) -> JobFacts:
    """What is known of a job, its visits in the order of their time line."""
    recordings: list[Recording] = []
    utterances: list[Utterance] = []
    unheard: list[Unheard] = []
    warned: list[RecordingWarning] = []
    for number, kept in enumerate(in_time_order(recordings_of(notebook, job.number)), 1):
        recordings.append(numbered(kept, number))
        utterances.extend(utterances_in(notebook, kept, number))
        unheard.extend(unheard_in(notebook, kept, number))
        warned.extend(RecordingWarning(number, text) for text in warnings_in(notebook, kept))
        if not kept.finished:
            warned.append(RecordingWarning(number, _unfinished(kept.name, kept.until_s, kept.duration_s)))
    noted = card(notebook, job.number)
    return JobFacts(
        heard=Heard(tuple(recordings), tuple(utterances), tuple(unheard)),
        currency=noted.get("currency") or settings.currency,
        trades=trades_of_job(notebook, job, settings),
        warned=tuple(warned),
    )


def note_on_card(
    notebook: Notebook, job: Job, settings: Settings, *, currency: str | None, trade: str | None, at: datetime
) -> None:
    """Adds to a job's card what was said of it with this command; what the workshop has set, where nothing was."""
    noted = card(notebook, job.number)
    currency = currency or noted.get("currency") or settings.currency
    if currency is not None and noted.get("currency") != currency:
        note(notebook, job.number, "currency", currency, at=at)
    if trade is not None and noted.get("trade") != trade:
        note(notebook, job.number, "trade", trade, at=at)


def trades_of_job(notebook: Notebook, job: Job, settings: Settings) -> tuple[str, ...]:
    """Whose words to listen for in this job."""
    trade = card(notebook, job.number).get("trade")
    return (trade,) if trade else settings.trades


def _unfinished(name: str, until_s: float, duration_s: float) -> str:
    return (
        f"{name} was taken in up to {until_s:.0f} s of {duration_s:.0f} s. "
        "Give the file to the same job again and it goes on from there."
    )
