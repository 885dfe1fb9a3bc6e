"""The notebook file: private, safe, brought up to date, refused where it is not ours to change."""

from __future__ import annotations

import shutil
import sqlite3
import stat
from pathlib import Path

import pytest
from store.filled import AT, fill

from benchnotes.store.edits import edits_of
from benchnotes.store.errors import BrokenNotebookError, LockedNotebookError, NewerNotebookError, ShutNotebookError
from benchnotes.store.jobs import card, job_called, job_lines, open_job
from benchnotes.store.migrations import APPLICATION_ID, LATEST, STEPS
from benchnotes.store.notebook import Notebook, open_notebook
from benchnotes.store.recordings import recordings_of
from benchnotes.store.search import find_said
from benchnotes.store.talk import unheard_in, utterances_in, warnings_in

OLD_FILES = sorted((Path(__file__).parent / "old_files").glob("v*.sqlite"))


def test_only_the_owner_may_read_it(notebook: Notebook) -> None:
    fill(notebook)
    assert stat.S_IMODE(notebook.path.parent.stat().st_mode) == 0o700
    files = sorted(notebook.path.parent.iterdir())
    assert [path.name for path in files] == ["notebook.sqlite", "notebook.sqlite-shm", "notebook.sqlite-wal"]
    assert {stat.S_IMODE(path.stat().st_mode) for path in files} == {0o600}


def test_a_commit_is_on_disk(notebook: Notebook) -> None:
    pragmas = {name: notebook.db.execute(f"PRAGMA {name}").fetchone()[0] for name in ("journal_mode", "synchronous")}
    assert pragmas == {"journal_mode": "wal", "synchronous": 2}  # 2 is FULL


def test_the_steps_are_numbered_and_the_last_is_the_version(notebook: Notebook) -> None:
    names = [step.name for step in STEPS.applied(notebook.db)]
    assert [int(name.split("_")[0]) for name in names] == list(range(1, LATEST + 1))
    assert notebook.db.execute("PRAGMA user_version").fetchone()[0] == LATEST


def test_there_is_a_file_of_every_version() -> None:
    assert [path.stem for path in OLD_FILES] == [f"v{number}" for number in range(1, LATEST + 1)]


@pytest.mark.parametrize("old", OLD_FILES, ids=lambda path: path.stem)
def test_a_file_of_an_older_version_loses_nothing(old: Path, tmp_path: Path) -> None:
    copy = tmp_path / "notebook.sqlite"
    shutil.copy(old, copy)
    notebook = open_notebook(copy)
    job = job_called(notebook, "corvane  CHURN")
    assert job is not None
    assert card(notebook, job.number) == {"currency": "GBP", "trade": "dairy"}
    (kept,) = recordings_of(notebook, job.number)
    assert (kept.name, kept.until_s, kept.finished, kept.started_at) == ("bench.flac", 30.0, False, AT)
    first, second = utterances_in(notebook, kept, 1)
    assert first.text == "Paddle's façade"
    assert [word.probability for word in first.words] == [0.91, 0.5]
    assert second.text == "the churn lid gasket has perished"
    assert [(gap.start_s, gap.end_s) for gap in unheard_in(notebook, kept, 1)] == [(12.0, 14.0)]
    assert warnings_in(notebook, kept) == ("bench.flac stutters at 0:12",)
    assert [kept_edit.edit["because"] for kept_edit in edits_of(notebook, job.number)] == ["owner declined"]
    assert [found.start_s for found in find_said(notebook, "gaskets")] == [6.0]
    notebook.close()


@pytest.mark.parametrize("old", OLD_FILES, ids=lambda path: path.stem)
def test_a_file_brought_up_is_made_like_a_new_one(old: Path, tmp_path: Path, notebook: Notebook) -> None:
    shutil.copy(old, tmp_path / "notebook.sqlite")
    brought_up = open_notebook(tmp_path / "notebook.sqlite")
    schemas = [
        sorted(" ".join(row[0].split()) for row in each.db.execute("SELECT sql FROM sqlite_master WHERE sql NOTNULL"))
        for each in (brought_up, notebook)
    ]
    assert schemas[0] == schemas[1]
    brought_up.close()


def test_a_newer_file_is_refused_and_stays_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "notebook.sqlite"
    open_notebook(path).close()
    connection = sqlite3.connect(path)
    connection.execute(f"PRAGMA user_version = {LATEST + 1}")
    connection.close()
    before = path.read_bytes()
    with pytest.raises(NewerNotebookError, match=r"newer Bench Notes.*Nothing was changed"):
        open_notebook(path)
    assert path.read_bytes() == before


def test_a_newer_file_in_use_is_refused_and_stays_as_it_is(tmp_path: Path) -> None:
    """The newer program has it open: its version is still in the write-ahead log only."""
    path = tmp_path / "notebook.sqlite"
    newer = open_notebook(path)
    newer.db.execute(f"PRAGMA user_version = {LATEST + 1}")
    before = {
        file.name: file.read_bytes() for file in tmp_path.glob("notebook.sqlite*") if file.suffix != ".sqlite-shm"
    }
    with pytest.raises(NewerNotebookError):
        open_notebook(path)
    assert before == {file: (tmp_path / file).read_bytes() for file in before}
    newer.close()


@pytest.mark.parametrize("content", [b"a shopping list\n" * 400, b"SQLite format 3\0" + b"\xff" * 4000])
def test_a_file_that_is_no_notebook_is_refused_and_stays_as_it_is(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "notebook.sqlite"
    path.write_bytes(content)
    with pytest.raises(BrokenNotebookError, match="no notebook"):
        open_notebook(path)
    assert path.read_bytes() == content


def test_the_file_of_another_program_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "notebook.sqlite"
    other = sqlite3.connect(path)
    other.execute("CREATE TABLE stamps (country TEXT)")
    other.close()
    with pytest.raises(BrokenNotebookError, match="another program"):
        open_notebook(path)


def test_a_folder_in_its_place_is_refused(tmp_path: Path) -> None:
    (tmp_path / "notebook.sqlite").mkdir()
    with pytest.raises(ShutNotebookError, match=r"notebook\.sqlite"):
        open_notebook(tmp_path / "notebook.sqlite")


def test_a_held_file_is_waited_for_and_then_said(notebook: Notebook) -> None:
    other = sqlite3.connect(notebook.path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(LockedNotebookError, match="Another program is holding"):
        open_job(notebook, "Tarn kettle", at=AT, facts={})
    other.execute("ROLLBACK")
    open_job(notebook, "Tarn kettle", at=AT, facts={})
    assert [line.job.name for line in job_lines(notebook)] == ["Tarn kettle"]
    other.close()


def test_facts_are_never_rewritten(notebook: Notebook) -> None:
    fill(notebook)
    for change in (
        "UPDATE utterances SET text = 'no'",
        "UPDATE recordings SET sha256 = 'no'",
        "UPDATE edits SET edit = 0",
    ):
        with pytest.raises(sqlite3.IntegrityError, match="never rewritten"):
            notebook.db.execute(change)


def test_the_application_is_named_in_the_header(notebook: Notebook) -> None:
    """sqlite.org/fileformat2.html: the application id lies at offset 68, big-endian."""
    fill(notebook)
    notebook.db.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    assert notebook.path.read_bytes()[68:72] == APPLICATION_ID.to_bytes(4, "big") == b"BNot"
