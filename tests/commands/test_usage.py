"""Wrong usage ends with 2, what goes wrong with 1; never a traceback."""

from __future__ import annotations

import os
import pty
import sqlite3
import stat
import subprocess
import sys
import time
from pathlib import Path

import pytest
from commands.conftest import Run

from benchnotes.commands.main import COMMANDS
from benchnotes.session.errors import SessionError
from benchnotes.session.failing import sentence
from benchnotes.store.migrations import LATEST
from benchnotes.store.notebook import open_notebook


def test_help_names_every_command(run: Run) -> None:
    shown = run("--help")
    assert shown.returncode == 0
    for name, words in COMMANDS.items():
        assert name in shown.stdout
        assert words in shown.stdout, "one line each, at 80 columns"


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help(run: Run, name: str) -> None:
    shown = run(name, "--help")
    assert shown.returncode == 0
    assert "Usage: benchnotes" in shown.stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["reed"], 'There is no command "reed"'),
        (["read"], "Missing argument 'FILE...'"),
        (["read", "a.vtt", "--out", "x"], "--out and --overwrite go with --json"),
        (["read", "a.vtt", "--json", "--job", "x"], "--json keeps nothing"),
        (["read", "a.vtt", "--json", "--overwrite"], "--overwrite goes with --out"),
        (["read", "a.vtt", "b/a.vtt", "--json", "--out", "x"], "would both become x/a.json"),
        (["read", "a.vtt", "--currency", "QQQ"], "must be an ISO 4217 code"),
        (["show"], "Missing argument 'JOB'"),
        (["export", "1"], "Missing option '--to'"),
    ],
)
def test_wrong_usage(run: Run, home: Path, arguments: list[str], said: str) -> None:
    ended = run(*arguments)
    assert (ended.returncode, ended.stdout) == (2, "")
    assert said in ended.stderr
    assert not home.exists()


@pytest.mark.parametrize("arguments", [["show", "7"], ["left", "kettle"], ["export", "7", "--to", "out"]])
def test_a_job_that_is_not_there(run: Run, arguments: list[str]) -> None:
    ended = run(*arguments)
    assert (ended.returncode, ended.stdout) == (1, "")
    assert f'There is no job "{arguments[1]}"' in ended.stderr


def test_a_folder_that_cannot_be_is_said_before_listening(run: Run, first_visit: Path) -> None:
    ended = run("read", first_visit, "--json", "--out", first_visit)
    assert (ended.returncode, ended.stdout) == (1, "")
    assert ended.stderr.startswith(f"benchnotes: Nothing can be written into {first_visit}")


def test_on_a_terminal_no_word_is_broken(environment: dict[str, str]) -> None:
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "benchnotes", "show", "Harlow kettle base of the corner shop"]
    ended = subprocess.run(command, env=environment, stdout=subprocess.PIPE, stderr=theirs, check=False, timeout=300)
    os.close(theirs)
    said = os.read(ours, 10_000).decode().replace("\r\n", "\n")
    os.close(ours)
    assert ended.returncode == 1
    assert max(map(len, said.splitlines())) <= 80
    assert " ".join(said.split()) == (
        'benchnotes: There is no job "Harlow kettle base of the corner shop". '
        '"benchnotes jobs" lists the jobs with their numbers and names.'
    )


def test_an_empty_workshop(run: Run) -> None:
    assert run("jobs").stdout.startswith("No jobs yet.")
    assert run("find", "gasket").stdout == "Nobody said “gasket” in any job.\n"


def test_a_newer_notebook_is_said_and_not_touched(run: Run, home: Path) -> None:
    open_notebook(home / "notebook.sqlite").close()
    connection = sqlite3.connect(home / "notebook.sqlite")
    connection.execute(f"PRAGMA user_version = {LATEST + 1}")
    connection.close()
    before = (home / "notebook.sqlite").read_bytes()
    ended = run("jobs")
    assert ended.returncode == 1
    assert "newer Bench Notes" in ended.stderr
    assert "Traceback" not in ended.stderr
    assert (home / "notebook.sqlite").read_bytes() == before


def test_a_trade_that_is_not_there_opens_no_job(run: Run, first_visit: Path) -> None:
    ended = run("read", first_visit, "--trade", "alchemy")
    assert ended.returncode == 2
    assert 'There is no trade "alchemy". There are: ' in ended.stderr
    assert run("jobs").stdout.startswith("No jobs yet.")


def test_wrong_settings_are_said(run: Run, home: Path, first_visit: Path) -> None:
    home.mkdir()
    (home / "settings.toml").write_text('curency = "GBP"\n')
    ended = run("read", first_visit)
    assert ended.returncode == 1
    assert 'line 1: there is no setting "curency"' in ended.stderr


def test_an_unknown_failure_leaves_a_file_and_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("BENCHNOTES_HOME", str(tmp_path / "shop"))
    said = sentence(ZeroDivisionError("by no means"))
    (file,) = (tmp_path / "shop" / "crashes").iterdir()
    assert str(file) in said
    assert "ZeroDivisionError" in said
    assert "by no means" in file.read_text()
    assert stat.S_IMODE(file.stat().st_mode) == 0o600
    assert sentence(SessionError("The lid is off.")) == "The lid is off."


def test_no_room_for_a_crash_file_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "shop").touch()
    monkeypatch.setenv("BENCHNOTES_HOME", str(tmp_path / "shop"))
    assert sentence(ZeroDivisionError()).endswith("The details could not be written.")


def test_a_reader_that_goes_away_is_no_failure_to_tell(environment: dict[str, str]) -> None:
    command = f"{sys.executable} -m benchnotes --help | head -1"
    ended = subprocess.run(["bash", "-c", command], env=environment, capture_output=True, text=True, check=False)
    assert (ended.returncode, ended.stderr) == (0, "")


def test_a_list_of_jobs_waits_for_no_model(run: Run, environment: dict[str, str]) -> None:
    script = (
        "import sys; from benchnotes.commands.main import main\n"
        "try: main(['jobs'])\n"
        "except SystemExit: print(sorted({name.split('.')[0] for name in sys.modules}))"
    )
    ended = subprocess.run([sys.executable, "-c", script], env=environment, capture_output=True, text=True, check=True)
    # numpy is there: sqlite-utils takes it along where it is installed
    for heavy in ("spacy", "faster_whisper", "onnxruntime", "av", "ctranslate2"):
        assert f"'{heavy}'" not in ended.stdout
    started = time.perf_counter()
    run("jobs")
    # half a second on an idle machine of two cores; the limit leaves room for a busy one
    assert time.perf_counter() - started < 3
