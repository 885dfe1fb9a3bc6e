"""The jobs of the workshop: number, name, and the facts of each job's card.

Append-only; the last fact of a field holds.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from sqlite_utils import Database

from benchnotes.store.notebook import Notebook

CardField = Literal[
    "currency", "trade", "owner", "received", "gone_back", "agreed_limit", "quote", "agreed", "sign_off",
    "owner_street", "owner_town", "owner_postcode", "owner_country", "owner_tax_number", "owner_company_number",
    "owner_phone", "owner_email",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Job:
    """One machine that came in, over all its visits."""

    number: int
    name: str
    opened_at: datetime


@dataclass(frozen=True, slots=True)
class JobLine:
    """A job with what a list of jobs shows."""

    job: Job
    recordings: int
    unfinished: int
    """Recordings not yet taken in to their end."""
    duration_s: float
    last_added: datetime | None


def name_key(name: str) -> str:
    """What makes two names one: capitals and spaces do not count."""
    return " ".join(name.split()).casefold()


def open_job(notebook: Notebook, name: str, *, at: datetime, facts: Mapping[CardField, str]) -> Job:
    """Opens a job under a name that no other job has."""
    kept = " ".join(name.split())
    row = {"name": kept, "name_key": name_key(kept), "opened_at": at.isoformat()}
    with notebook.writing() as db:
        number = db.table("jobs").insert(row, pk="number").last_pk
        assert isinstance(number, int)
        for field, value in facts.items():
            _note(db, number, field, value, at)
    return Job(number, kept, at)


def note(notebook: Notebook, job: int, field: CardField, value: str, *, at: datetime) -> None:
    """Adds one fact to a job's card."""
    with notebook.writing() as db:
        _note(db, job, field, value, at)


def card(notebook: Notebook, job: int) -> dict[str, str]:
    """What holds today on a job's card."""
    with notebook.reading() as db:
        rows = db.query("SELECT field, value FROM job_facts WHERE job = ? ORDER BY id", [job])
        return {row["field"]: row["value"] for row in rows}


def job_numbered(notebook: Notebook, number: int) -> Job | None:
    """The job of that number."""
    return _one_job(notebook, "number = ?", number)


def job_called(notebook: Notebook, name: str) -> Job | None:
    """The job of that name."""
    return _one_job(notebook, "name_key = ?", name_key(name))


def job_lines(notebook: Notebook) -> tuple[JobLine, ...]:
    """Every job, the newest first."""
    sql = """
        SELECT j.*, count(r.id) AS recordings, total(r.duration_s) AS duration_s, max(r.added_at) AS last_added,
            count(r.id) - count(p.recording) AS unfinished
        FROM jobs j
        LEFT JOIN recordings r ON r.job = j.number
        LEFT JOIN (SELECT DISTINCT recording FROM progress WHERE finished) p ON p.recording = r.id
        GROUP BY j.number ORDER BY j.number DESC
    """
    with notebook.reading() as db:
        return tuple(_line(row) for row in db.query(sql))


def _note(db: Database, job: int, field: str, value: str, at: datetime) -> None:
    db.table("job_facts").insert({"job": job, "noted_at": at.isoformat(), "field": field, "value": value})


def _one_job(notebook: Notebook, where: str, key: int | str) -> Job | None:
    with notebook.reading() as db:
        return next((_job(row) for row in db.table("jobs").rows_where(where, [key])), None)


def _job(row: Mapping[str, object]) -> Job:
    return Job(int(str(row["number"])), str(row["name"]), datetime.fromisoformat(str(row["opened_at"])))


def _line(row: Mapping[str, object]) -> JobLine:
    last = row["last_added"]
    return JobLine(
        job=_job(row),
        recordings=int(str(row["recordings"])),
        unfinished=int(str(row["unfinished"])),
        duration_s=float(str(row["duration_s"])),
        last_added=datetime.fromisoformat(str(last)) if last else None,
    )
