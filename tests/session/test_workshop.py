"""Everything that a workshop keeps is in one folder."""

from __future__ import annotations

import stat
from pathlib import Path

import pytest

from benchnotes.session.currency import usual_currency
from benchnotes.session.errors import JobNameError, NoSuchJobError, NotSavedError
from benchnotes.session.jobs import all_jobs, find_job, job_to_fill, open_workshop
from benchnotes.session.workshop import Workshop, find_workshop


def test_the_folder_is_named_or_the_usual_one(tmp_path: Path) -> None:
    assert find_workshop({"BENCHNOTES_HOME": str(tmp_path)}).folder == tmp_path
    assert find_workshop({"BENCHNOTES_HOME": " "}).folder == find_workshop({}).folder
    assert "benchnotes" in str(find_workshop({}).folder)


def test_it_is_made_for_its_owner_alone(tmp_path: Path) -> None:
    workshop = Workshop(tmp_path / "deep" / "shop")
    with open_workshop(workshop):
        assert stat.S_IMODE(workshop.folder.stat().st_mode) == 0o700


def test_a_file_in_its_place_is_said(tmp_path: Path) -> None:
    (tmp_path / "shop").touch()
    with pytest.raises(NotSavedError, match="cannot be made"), open_workshop(Workshop(tmp_path / "shop")):
        pass


def test_a_job_is_named_by_number_or_name(tmp_path: Path) -> None:
    with open_workshop(Workshop(tmp_path)) as notebook:
        churn = job_to_fill(notebook, "Corvane churn", [])
        kettle = job_to_fill(notebook, None, [(Path("tarn kettle.vtt"), "0" * 64)])
        assert [find_job(notebook, name) for name in ("1", " corvane  CHURN ", "2", "tarn kettle")] == [
            churn, churn, kettle, kettle,
        ]  # fmt: skip
        assert job_to_fill(notebook, "1", []) == churn
        assert job_to_fill(notebook, "Corvane Churn", []) == churn
        assert job_to_fill(notebook, None, [(Path("Tarn Kettle.mp4"), "1" * 64)]).name == "Tarn Kettle (2)"
        assert job_to_fill(notebook, None, [(Path("0042.wav"), "2" * 64)]).name == "job 0042"
        assert [line.job.number for line in all_jobs(notebook)] == [4, 3, 2, 1]
        with pytest.raises(NoSuchJobError, match='no job "7"'):
            find_job(notebook, "7")
        for name in ("7", "  "):
            with pytest.raises(JobNameError, match="Nothing was kept"):
                job_to_fill(notebook, name, [])


def test_money_is_that_of_the_locale(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("LC_ALL", "C")
    assert usual_currency() == "EUR"
