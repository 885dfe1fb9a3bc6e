"""The recordings of a job, as they were given; how far each has been taken in. Append-only."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from benchnotes.record.heard import DateSource, RecordingKind
from benchnotes.store.notebook import Notebook


@dataclass(frozen=True, slots=True, kw_only=True)
class NewRecording:
    """What is known of a file before anything was heard in it."""

    path: Path
    """Where the file lies; it stays there."""
    name: str
    kind: RecordingKind
    duration_s: float
    sha256: str
    started_at: datetime | None = None
    started_from: DateSource = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptRecording(NewRecording):
    """A recording of a job. Its number on the time line is derived, its `id` is not."""

    id: int
    job: int
    until_s: float = 0.0
    """Taken in up to here; a later run goes on from there."""
    finished: bool = False


KEPT = """
    SELECT r.*, coalesce(max(p.until_s), 0) AS until_s, coalesce(max(p.finished), 0) AS finished
    FROM recordings r LEFT JOIN progress p ON p.recording = r.id
"""


def add_recording(notebook: Notebook, job: int, new: NewRecording, *, at: datetime) -> KeptRecording:
    """Adds a recording to a job; the same sound twice in one job is refused by the file itself."""
    row = {
        "job": job,
        "path": os.fsencode(new.path).decode("utf-8", errors="replace"),
        "name": new.name,
        "kind": new.kind,
        "duration_s": new.duration_s,
        "sha256": new.sha256,
        "started_at": new.started_at.isoformat() if new.started_at else None,
        "started_from": new.started_from,
        "added_at": at.isoformat(),
    }
    with notebook.writing() as db:
        kept_id = db.table("recordings").insert(row, pk="id").last_pk
    return next(kept for kept in recordings_of(notebook, job) if kept.id == kept_id)


def recordings_of(notebook: Notebook, job: int) -> tuple[KeptRecording, ...]:
    """The recordings of a job in the order in which they were given."""
    with notebook.reading() as db:
        rows = db.query(f"{KEPT} WHERE r.job = ? GROUP BY r.id ORDER BY r.id", [job])
        return tuple(_kept(row) for row in rows)


def recordings_like(notebook: Notebook, sha256: str) -> tuple[KeptRecording, ...]:
    """The recordings of any job that are this very file, newest first."""
    with notebook.reading() as db:
        rows = db.query(f"{KEPT} WHERE r.sha256 = ? GROUP BY r.id ORDER BY r.id DESC", [sha256])
        return tuple(_kept(row) for row in rows)


def _kept(row: Mapping[str, Any]) -> KeptRecording:
    return KeptRecording(
        id=row["id"],
        job=row["job"],
        path=Path(row["path"]),
        name=row["name"],
        kind=row["kind"],
        duration_s=row["duration_s"],
        sha256=row["sha256"],
        started_at=datetime.fromisoformat(row["started_at"]) if row["started_at"] else None,
        started_from=row["started_from"],
        until_s=row["until_s"],
        finished=bool(row["finished"]),
    )
