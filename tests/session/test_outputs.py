"""What leaves for a job: all that can be written, and a line for what cannot."""

from __future__ import annotations

from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from benchnotes.exports.bill_of_job import Unsettled
from benchnotes.record.entries import JobRecord
from benchnotes.record.heard import Recording, captioned
from benchnotes.record.job import Heard
from benchnotes.session.billing import JobBilling
from benchnotes.session.errors import FileThereError
from benchnotes.session.facts import JobFacts
from benchnotes.session.job import ReadJob
from benchnotes.session.job_by_name import KeptJob
from benchnotes.session.outputs import Leaving, save_outputs
from benchnotes.store.jobs import Job

FILM = Recording(1, "churn.mp4", "video", 60.0, "0" * 64)


def job(*said: str) -> Leaving:
    heard = Heard((FILM,), tuple(captioned(1, at * 4.0, at * 4.0 + 3, words) for at, words in enumerate(said)))
    read = ReadJob(
        facts=JobFacts(heard=heard, currency="GBP"), statements=(), record=JobRecord(currency="GBP"), items=()
    )
    open_points = Unsettled(("There is nothing to bill.", "The owner has no name."))
    kept = KeptJob(Job(1, "churn", datetime(2026, 3, 2, tzinfo=UTC)), read)
    return Leaving(kept, JobBilling(draft=open_points, papers=(), today=date(2026, 3, 2)))


def test_what_cannot_be_written_stops_nothing_else(tmp_path: Path) -> None:
    written = save_outputs(job(), tmp_path, overwrite=False)
    assert {path.name for path in written.paths} == {path.name for path in tmp_path.iterdir()}
    assert {"record.json", "parts.csv", "sheet.pdf", "sheet.html"} <= {path.name for path in written.paths}
    assert "film.vtt and film.srt: nothing was heard in this job yet. Take in a recording first." in written.left_out
    assert "invoice.xml and invoice.pdf: \n  There is nothing to bill.\n  The owner has no name." in written.left_out


def test_only_what_is_named(tmp_path: Path) -> None:
    written = save_outputs(job("the lid is split"), tmp_path, only=("film.srt",), overwrite=False)
    assert [path.name for path in written.paths] == [path.name for path in tmp_path.iterdir()] == ["film.srt"]
    assert written.left_out == ()


def test_a_file_that_is_there_keeps_all_from_being_written(tmp_path: Path) -> None:
    (tmp_path / "film.srt").write_text("mine")
    with pytest.raises(FileThereError):
        save_outputs(job("the lid is split"), tmp_path, overwrite=False)
    assert [path.name for path in tmp_path.iterdir()] == ["film.srt"]


def test_the_same_job_makes_the_same_bytes(tmp_path: Path) -> None:
    for folder in ("a", "b"):
        save_outputs(job("the lid is split"), tmp_path / folder, overwrite=False)
    for path in (tmp_path / "a").iterdir():
        assert path.read_bytes() == (tmp_path / "b" / path.name).read_bytes()
