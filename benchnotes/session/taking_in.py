"""A file into a job, stretch by stretch: what has been heard is on disk before the next stretch begins."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from benchnotes.record.heard import Recording, Unheard, Utterance
from benchnotes.record.job import Heard
from benchnotes.session.events import Began, Ended, Reached, Skipped, Tell, Warned
from benchnotes.session.facts import JobFacts, RecordingWarning
from benchnotes.session.jobs import now
from benchnotes.session.listening import Ears
from benchnotes.store.jobs import Job
from benchnotes.store.notebook import Notebook
from benchnotes.store.recordings import KeptRecording, NewRecording, add_recording, recordings_of
from benchnotes.store.talk import Stretch, keep_stretch, unheard_in, utterances_in


def take_in(notebook: Notebook, job: Job, new: NewRecording, ears: Ears, tell: Tell) -> None:
    """Takes a file into a job, from where an earlier run stopped. Cut off at any moment, it keeps what it told."""
    kept = _in_job(notebook, job, new) or add_recording(notebook, job.number, new, at=now())
    if kept.finished:
        tell(Skipped(kept.name))
        return
    # the file may have been moved since an earlier run: what was given now is what is read
    kept = replace(kept, path=new.path)
    tell(Began(kept.name, kept.until_s, kept.duration_s))
    until_s = kept.until_s
    for stretch in ears.listen(kept, from_s=kept.until_s):
        _keep(notebook, kept, stretch, tell)
        until_s = stretch.until_s
    silent = not utterances_in(notebook, kept, 1) and not unheard_in(notebook, kept, 1)
    _keep(notebook, kept, _end(kept, until_s, silent=silent), tell)
    tell(Ended(kept.name))


def hear_alone(new: NewRecording, ears: Ears, tell: Tell, *, currency: str | None, trades: tuple[str, ...]) -> JobFacts:
    """The facts of a job that is this one file; keeps nothing."""
    utterances: list[Utterance] = []
    unheard: list[Unheard] = []
    warned: list[RecordingWarning] = []
    tell(Began(new.name, 0.0, new.duration_s))
    for stretch in _to_the_end(new, ears):
        utterances.extend(stretch.utterances)
        unheard.extend(stretch.unheard)
        warned.extend(RecordingWarning(1, text) for text in stretch.warnings)
        _tell(stretch, tell)
    tell(Ended(new.name))
    return JobFacts(
        heard=Heard((_alone(new),), tuple(utterances), tuple(unheard)),
        currency=currency,
        trades=trades,
        warned=tuple(warned),
    )


def _to_the_end(new: NewRecording, ears: Ears) -> Iterator[Stretch]:
    silent, until_s = True, 0.0
    for stretch in ears.listen(new, from_s=0.0):
        silent = silent and not stretch.utterances and not stretch.unheard
        until_s = stretch.until_s
        yield stretch
    yield _end(new, until_s, silent=silent)


def _end(new: NewRecording, until_s: float, *, silent: bool) -> Stretch:
    warnings = (f"Nothing was said in {new.name}, or nothing that could be heard.",) if silent else ()
    return Stretch(from_s=until_s, until_s=until_s, utterances=(), warnings=warnings, finished=True)


def _in_job(notebook: Notebook, job: Job, new: NewRecording) -> KeptRecording | None:
    return next((kept for kept in recordings_of(notebook, job.number) if kept.sha256 == new.sha256), None)


def _keep(notebook: Notebook, kept: KeptRecording, stretch: Stretch, tell: Tell) -> None:
    keep_stretch(notebook, kept.id, stretch, at=now())
    _tell(stretch, tell)


def _tell(stretch: Stretch, tell: Tell) -> None:
    for text in stretch.warnings:
        tell(Warned(text))
    tell(Reached(stretch.until_s))


def _alone(new: NewRecording) -> Recording:
    return Recording(
        number=1,
        name=new.name,
        kind=new.kind,
        duration_s=new.duration_s,
        sha256=new.sha256,
        started_at=new.started_at,
        started_from=new.started_from,
    )
