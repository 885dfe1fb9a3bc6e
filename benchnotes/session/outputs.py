"""The files that leave for one job."""

from __future__ import annotations

from pathlib import Path

from benchnotes.exports.job_json import job_text
from benchnotes.exports.parts_list import parts_csv
from benchnotes.session.job import ReadJob
from benchnotes.session.saving import save_all


def save_outputs(job: ReadJob, folder: Path, *, overwrite: bool) -> tuple[Path, ...]:
    """Writes record.json and parts.csv into `folder`; the paths written."""
    files = {
        folder / "record.json": job_text(job.document()).encode("utf-8"),
        folder / "parts.csv": parts_csv(job.record),
    }
    save_all(files, overwrite=overwrite)
    return tuple(files)
