"""Captions to a record, through the command line, with the real reader."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

import pytest
from commands.conftest import Run
from jsonschema import Draft202012Validator

from benchnotes.exports.job_json import published_schema

pytestmark = pytest.mark.whole

VALIDATOR = Draft202012Validator(published_schema())


def documents(text: str) -> list[dict[str, Any]]:
    """Every JSON document in `text`, each checked against the published schema."""
    found, at, decoder = [], 0, json.JSONDecoder()
    while text[at:].strip():
        document, at = decoder.raw_decode(text, at + len(text[at:]) - len(text[at:].lstrip()))
        VALIDATOR.validate(document)
        found.append(document)
    return found


def test_json_of_one_file_and_nothing_else(run: Run, home: Path, first_visit: Path) -> None:
    ended = run("read", first_visit, "--json", "--currency", "GBP")
    assert ended.returncode == 0
    (document,) = documents(ended.stdout)
    assert document["currency"] == "GBP"
    assert [recording["file"] for recording in document["recordings"]] == ["first visit.vtt"]
    assert document["transcript"][1]["text"] == "The lid gasket is split right round, so I need a new lid gasket."
    assert any(fault["kind"] == "cracked" for fault in document["faults"])
    assert any(part["unit_price"] == "4.50" for part in document["parts"])
    for evidence in (said for fault in document["faults"] for said in fault["evidence"]):
        assert 0 <= evidence["start"] < evidence["end"] <= 20
    assert not (home / "notebook.sqlite").exists()


def test_one_bad_file_stops_no_other(run: Run, tmp_path: Path, first_visit: Path, second_visit: Path) -> None:
    (tmp_path / "empty.vtt").touch()
    (tmp_path / "letter.mp4").write_text("Dear Mrs Quillby, the churn is done.")
    ended = run(
        "read",
        tmp_path / "empty.vtt",
        first_visit,
        tmp_path / "letter.mp4",
        tmp_path / "gone.wav",
        second_visit,
        "--json",
    )
    assert ended.returncode == 1
    read = documents(ended.stdout)
    assert [document["recordings"][0]["file"] for document in read] == ["first visit.vtt", "second visit.vtt"]
    assert read[0]["currency"] == "GBP", "nobody named a currency, and pounds were said"
    for name in ("empty.vtt", "letter.mp4", "gone.wav"):
        assert name in ended.stderr
    assert "Traceback" not in ended.stderr


def test_json_into_a_folder(run: Run, tmp_path: Path, first_visit: Path, second_visit: Path) -> None:
    out = tmp_path / "out"
    ended = run("read", first_visit, second_visit, "--json", "--out", out)
    assert (ended.returncode, ended.stdout) == (0, "")
    assert sorted(path.name for path in out.iterdir()) == ["first visit.json", "second visit.json"]
    before = {path: path.read_text() for path in out.iterdir()}
    assert all(documents(text) for text in before.values())
    again = run("read", first_visit, "--json", "--out", out)
    assert again.returncode == 1
    assert "is there already" in again.stderr
    assert run("read", first_visit, "--json", "--out", out, "--overwrite").returncode == 0
    assert before == {path: path.read_text() for path in out.iterdir()}


def test_two_visits_on_one_time_line(run: Run, tmp_path: Path, first_visit: Path, second_visit: Path) -> None:
    ended = run("read", first_visit, "--job", "Corvane churn", "--currency", "GBP")
    assert ended.returncode == 0
    assert ended.stdout.startswith("Job 1, Corvane churn")
    assert "lid gasket" in run("left", "1").stdout
    ended = run("read", second_visit, "--job", "1")
    assert ended.returncode == 0
    assert run("export", "corvane churn", "--to", tmp_path / "out").returncode == 0
    (document,) = documents((tmp_path / "out" / "record.json").read_text(encoding="utf-8"))
    assert [(r["number"], r["file"]) for r in document["recordings"]] == [
        (1, "first visit.vtt"),
        (2, "second visit.vtt"),
    ]
    assert {said["recording"] for said in document["transcript"]} == {1, 2}
    assert document["currency"] == "GBP"
    rows = list(csv.DictReader((tmp_path / "out" / "parts.csv").open(encoding="utf-8", newline="")))
    assert [row["name"] for row in rows] == [part["name"] for part in document["parts"]]
    again = run("export", "1", "--to", tmp_path / "out")
    assert (again.returncode, again.stdout) == (1, "")
    assert "there already" in again.stderr


def test_what_a_job_shows(run: Run, first_visit: Path) -> None:
    run("read", first_visit)
    shown = run("show", "first visit").stdout
    assert "visit 1: first visit.vtt, 0:20, no date" in shown
    assert "visit 1, 0:05: “" in shown
    assert max(len(line) for line in shown.splitlines()) <= 80
    left = run("left", "1").stdout
    assert "Closed by: " in left
    assert max(len(line) for line in left.splitlines()) <= 80
    assert "first visit" in run("jobs").stdout


def test_finding_words(run: Run, first_visit: Path, second_visit: Path) -> None:
    run("read", first_visit, second_visit, "--job", "Corvane churn")
    found = run("find", "gaskets").stdout.splitlines()
    assert found[0] == "Job 1, Corvane churn"
    assert [line.split(": ")[0].strip() for line in found if line.startswith("  visit")] == [
        "visit 1, 0:05", "visit 1, 0:10", "visit 2, 0:00",
    ]  # fmt: skip


def test_the_same_file_twice_is_taken_in_once(run: Run, tmp_path: Path, first_visit: Path) -> None:
    copy = tmp_path / "copy.vtt"
    copy.write_bytes(first_visit.read_bytes())
    first = run("read", first_visit, copy)
    assert first.returncode == 0
    assert "copy.vtt" in first.stderr or "has that recording already" in first.stderr
    again = run("read", copy)
    assert again.stdout == first.stdout
    assert "has that recording already" in again.stderr
    assert len(run("find", "serial").stdout.splitlines()) == 2


def test_a_copy_while_it_is_used(
    run: Run, home: Path, tmp_path: Path, first_visit: Path, environment: dict[str, str]
) -> None:
    run("read", first_visit)
    assert run("backup", tmp_path / "saved.sqlite").returncode == 0
    (tmp_path / "other").mkdir()
    (tmp_path / "saved.sqlite").rename(tmp_path / "other" / "notebook.sqlite")
    environment["BENCHNOTES_HOME"] = str(tmp_path / "other")
    assert "first visit" in run("jobs").stdout
