"""What was heard is kept whole and in order, found again, and never kept twice."""

from __future__ import annotations

import os
import signal
import sqlite3
import subprocess
import sys
import textwrap
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from store.filled import AT, fill, recording, said

from benchnotes.record.heard import Utterance, Word
from benchnotes.store.backup import back_up
from benchnotes.store.errors import BackupError, BusyRecordingError
from benchnotes.store.jobs import Job, card, job_lines, note
from benchnotes.store.notebook import Notebook, open_notebook
from benchnotes.store.recordings import add_recording, recordings_like, recordings_of
from benchnotes.store.search import find_said
from benchnotes.store.talk import Stretch, keep_stretch, utterances_in

TEXT = st.text(st.characters(exclude_categories=("Cs", "Zs", "Zl", "Zp", "Cc")), min_size=1, max_size=12)
SECONDS = st.integers(0, 3_600_000).map(lambda ms: ms / 1000)
WORDS = st.lists(st.builds(Word, TEXT, SECONDS, SECONDS, st.none() | st.floats(0, 1)), min_size=1, max_size=6)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(words=WORDS)
def test_what_was_said_comes_back_letter_by_letter(notebook: Notebook, job: Job, words: list[Word]) -> None:
    sha = f"{len(recordings_of(notebook, job.number)):064x}"
    kept = add_recording(notebook, job.number, replace(recording(), sha256=sha), at=AT)
    utterance = Utterance(3, words[0].start_s, words[-1].end_s, tuple(words))
    keep_stretch(notebook, kept.id, Stretch(from_s=0.0, until_s=9.0, utterances=(utterance,)), at=AT)
    assert utterances_in(notebook, kept, 3) == (utterance,)


def test_a_stretch_goes_on_where_the_last_ended(notebook: Notebook, job: Job) -> None:
    kept = add_recording(notebook, job.number, recording(), at=AT)
    keep_stretch(notebook, kept.id, Stretch(from_s=0.0, until_s=20.0, utterances=(said("lid off"),)), at=AT)
    with pytest.raises(BusyRecordingError, match="further along"):
        keep_stretch(notebook, kept.id, Stretch(from_s=0.0, until_s=20.0, utterances=(said("lid off"),)), at=AT)
    last = Stretch(from_s=20.0, until_s=60.0, utterances=(said("lid on", 30, 31),), finished=True)
    keep_stretch(notebook, kept.id, last, at=AT)
    (again,) = recordings_of(notebook, job.number)
    assert (again.until_s, again.finished) == (60.0, True)
    assert [utterance.text for utterance in utterances_in(notebook, kept, 1)] == ["lid off", "lid on"]


def test_one_file_once_in_a_job(notebook: Notebook, job: Job) -> None:
    add_recording(notebook, job.number, recording(), at=AT)
    with pytest.raises(Exception, match="UNIQUE"):
        add_recording(notebook, job.number, recording("copy of bench.flac"), at=AT)
    assert [kept.name for kept in recordings_like(notebook, "a" * 64)] == ["bench.flac"]


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("gasket", 1),
        ("gaskets", 1),  # the Porter stem
        ("GASKET lid", 1),
        ('"lid gasket"', 1),
        ('"gasket lid"', 0),
        ("facade", 1),  # accents do not count
        ("gasket OR", 0),  # an operator of FTS5 is a word like any other here
        ("gas*", 0),
        ('"', 0),
        ("churn) NEAR(", 0),
        ("text:gasket", 0),
    ],
)
def test_finding_what_was_said(notebook: Notebook, words: str, found: int) -> None:
    fill(notebook)
    assert len(find_said(notebook, words)) == found


def test_search_follows_an_erasure(notebook: Notebook) -> None:
    fill(notebook)
    with notebook.writing() as db:
        db.execute("DELETE FROM utterances")
    assert find_said(notebook, "gasket") == ()
    notebook.db.execute("INSERT INTO utterances_fts(utterances_fts) VALUES ('integrity-check')")


def test_the_last_fact_of_a_field_holds(notebook: Notebook, job: Job) -> None:
    note(notebook, job.number, "currency", "EUR", at=AT)
    note(notebook, job.number, "owner", "Mrs Quillby", at=AT)
    assert card(notebook, job.number) == {"currency": "EUR", "owner": "Mrs Quillby"}
    assert notebook.db.execute("SELECT count(*) FROM job_facts").fetchone()[0] == 3


def test_a_list_of_jobs_tells_what_is_not_finished(notebook: Notebook) -> None:
    fill(notebook)
    (line,) = job_lines(notebook)
    assert (line.recordings, line.unfinished, line.duration_s, line.last_added) == (1, 1, 60.0, AT)


def test_a_backup_of_a_notebook_in_use(notebook: Notebook, tmp_path: Path) -> None:
    fill(notebook)
    with notebook.writing() as db:
        db.execute("INSERT INTO warnings (recording, text) VALUES (1, 'not yet committed')")
        back_up(Notebook(notebook.path, open_notebook(notebook.path).db), tmp_path / "copy.sqlite")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["copy.sqlite", "shop"]
    copy = open_notebook(tmp_path / "copy.sqlite")
    assert copy.db.execute("SELECT text FROM warnings").fetchall() == [("bench.flac stutters at 0:12",)]
    assert len(find_said(copy, "gasket")) == 1
    copy.close()


def test_a_backup_writes_over_nothing_without_a_yes(notebook: Notebook, tmp_path: Path) -> None:
    target = tmp_path / "copy.sqlite"
    target.write_text("mine")
    with pytest.raises(BackupError, match="there already"):
        back_up(notebook, target)
    assert target.read_text() == "mine"
    back_up(notebook, target, overwrite=True)
    assert sqlite3.connect(target).execute("PRAGMA application_id").fetchone()[0]
    with pytest.raises(BackupError, match="notebook itself"):
        back_up(notebook, notebook.path, overwrite=True)
    with pytest.raises(BackupError, match="cannot be written"):
        back_up(notebook, tmp_path / "nowhere" / "copy.sqlite")


def test_killed_while_keeping_every_stretch_is_whole(tmp_path: Path) -> None:
    """kill -9 in the middle of writing: what was told is there, what is there is whole, and it goes on."""
    path = tmp_path / "notebook.sqlite"
    script = textwrap.dedent("""
        import sys
        from pathlib import Path
        from store.filled import AT, recording, said
        from benchnotes.store.jobs import open_job
        from benchnotes.store.notebook import open_notebook
        from benchnotes.store.recordings import add_recording
        from benchnotes.store.talk import Stretch, keep_stretch
        notebook = open_notebook(Path(sys.argv[1]))
        job = open_job(notebook, "Corvane churn", at=AT, facts={})
        kept = add_recording(notebook, job.number, recording(), at=AT)
        for second in range(100_000):
            talk = tuple(said(f"word {second} {n}", second + n / 10, second + n / 10 + 0.1) for n in range(10))
            keep_stretch(notebook, kept.id, Stretch(from_s=second, until_s=second + 1, utterances=talk), at=AT)
            print(second + 1, flush=True)
    """)
    environment = {**os.environ, "PYTHONPATH": str(Path(__file__).parents[1])}
    run = subprocess.Popen(
        [sys.executable, "-c", script, str(path)], stdout=subprocess.PIPE, text=True, env=environment
    )
    assert run.stdout is not None
    told = 0
    for line in run.stdout:
        told = int(line)
        if told == 30:
            run.send_signal(signal.SIGKILL)
    run.wait()
    run.stdout.close()
    notebook = open_notebook(path)
    (kept,) = recordings_of(notebook, 1)
    assert kept.until_s >= told >= 30
    assert len(utterances_in(notebook, kept, 1)) == 10 * kept.until_s
    keep_stretch(
        notebook, kept.id, Stretch(from_s=kept.until_s, until_s=kept.until_s, utterances=(), finished=True), at=AT
    )
    assert notebook.db.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    notebook.close()
