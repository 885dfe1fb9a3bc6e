"""The jobs of the workshop by number or name; what a list of them and a search over them show."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from benchnotes.session.errors import JobNameError, NoSuchJobError
from benchnotes.session.time_line import in_time_order
from benchnotes.session.workshop import Workshop
from benchnotes.store.backup import back_up
from benchnotes.store.jobs import Job, JobLine, job_called, job_lines, job_numbered, open_job
from benchnotes.store.notebook import Notebook, open_notebook
from benchnotes.store.recordings import recordings_like, recordings_of
from benchnotes.store.search import Found, find_said


@dataclass(frozen=True, slots=True)
class Hit:
    """One breath of talk that a search found."""

    job: int
    job_name: str
    recording: int
    """Number on the job's time line."""
    start_s: float
    text: str


def now() -> datetime:
    """With its zone, so that a notebook carried to another country stays right."""
    return datetime.now(UTC).astimezone()


@contextmanager
def open_workshop(workshop: Workshop) -> Iterator[Notebook]:
    """The workshop's notebook, made where it is missing, closed at the end."""
    workshop.make()
    notebook = open_notebook(workshop.notebook)
    try:
        yield notebook
    finally:
        notebook.close()


def all_jobs(notebook: Notebook) -> tuple[JobLine, ...]:
    """Every job, the newest first."""
    return job_lines(notebook)


def find_job(notebook: Notebook, named: str) -> Job:
    """The job of that number or name. Raises NoSuchJobError."""
    job = _job_or_none(notebook, named)
    if job is None:
        raise NoSuchJobError(
            f'There is no job "{named}". "benchnotes jobs" lists the jobs with their numbers and names.'
        )
    return job


def job_to_fill(notebook: Notebook, named: str | None, files: Sequence[tuple[Path, str]]) -> Job:
    """The job that `files` (path and sha256) go into: the one named, the one that has them already, or a new one."""
    if named is not None:
        return _job_or_none(notebook, named) or open_job(notebook, _usable(named), at=now(), facts={})
    for _, sha256 in files:
        for kept in recordings_like(notebook, sha256):
            job = job_numbered(notebook, kept.job)
            if job is not None:
                return job
    return open_job(notebook, _free_name(notebook, files[0][0].stem), at=now(), facts={})


def search(notebook: Notebook, words: str) -> tuple[Hit, ...]:
    """Where all the words were said, newest job first, each job in time order."""
    found = find_said(notebook, words)
    numbers = {job: _numbers(notebook, job) for job in {hit.job for hit in found}}
    hits = [_hit(hit, numbers[hit.job][hit.recording]) for hit in found]
    return tuple(sorted(hits, key=lambda hit: (-hit.job, hit.recording, hit.start_s)))


def back_up_to(notebook: Notebook, target: Path, *, overwrite: bool) -> None:
    """A consistent copy of the notebook, also while another window is listening."""
    back_up(notebook, target, overwrite=overwrite)


def _job_or_none(notebook: Notebook, named: str) -> Job | None:
    by_number = job_numbered(notebook, int(named)) if named.strip().isdecimal() else None
    return by_number or job_called(notebook, named)


def _usable(name: str) -> str:
    if not name.strip():
        raise JobNameError("A job needs a name with at least one letter. Nothing was kept.")
    if name.strip().isdecimal():
        raise JobNameError(
            f"There is no job {name.strip()}, and a new job cannot be called by a number alone. "
            "Nothing was kept. Give it a name with a letter in it."
        )
    return name


def _free_name(notebook: Notebook, wish: str) -> str:
    wish = f"job {wish}" if wish.strip().isdecimal() else wish.strip() or "job"
    name, count = wish, 1
    while job_called(notebook, name) is not None:
        count += 1
        name = f"{wish} ({count})"
    return name


def _numbers(notebook: Notebook, job: int) -> dict[int, int]:
    return {kept.id: number for number, kept in enumerate(in_time_order(recordings_of(notebook, job)), 1)}


def _hit(found: Found, number: int) -> Hit:
    return Hit(found.job, found.job_name, number, found.start_s, found.text)
