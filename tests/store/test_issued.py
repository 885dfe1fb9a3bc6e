"""Issued bills: numbers without gaps or doubles, whatever is killed; nothing changes or takes away what has left."""

from __future__ import annotations

import os
import random
import signal
import sqlite3
import subprocess
import sys
import threading
import time
from datetime import date, timedelta
from pathlib import Path

import pytest
from store.conftest import AT

from benchnotes.store.errors import AlreadyIssuedError
from benchnotes.store.issued import IssuedBill, issue, issued_for, standing
from benchnotes.store.jobs import Job, open_job
from benchnotes.store.notebook import Notebook, open_notebook

ROOT = Path(__file__).resolve().parents[2]


def on_paper(number: int) -> str:
    return f"B{number:03}"


def bill(notebook: Notebook, job: Job, takes_back: int | None = None) -> IssuedBill:
    return issue(notebook, job.number, "all that stands on it", at=AT, shown=on_paper, takes_back=takes_back)


def test_the_next_number_and_the_day(notebook: Notebook, job: Job) -> None:
    other = open_job(notebook, "Tarn kettle", at=AT, facts={})
    first, second = bill(notebook, job), bill(notebook, other)
    assert (first.number, first.shown, first.on, second.shown) == (1, "B001", date(2026, 3, 2), "B002")
    assert issued_for(notebook, job.number) == (first,)
    assert standing((first,)) == first


def test_a_job_has_one_bill_until_it_is_taken_back(notebook: Notebook, job: Job) -> None:
    first = bill(notebook, job)
    with pytest.raises(AlreadyIssuedError, match=r"Bill B001 of 2026-03-02 .*Nothing was issued now.*--credit"):
        bill(notebook, job)
    credit = bill(notebook, job, takes_back=first.number)
    assert standing(issued_for(notebook, job.number)) is None
    with pytest.raises(AlreadyIssuedError, match="taken back already"):
        bill(notebook, job, takes_back=first.number)
    again = bill(notebook, job)
    assert [first.number, credit.number, again.number] == [1, 2, 3]
    assert standing(issued_for(notebook, job.number)) == again


def test_what_has_left_stays_as_it_is(notebook: Notebook, job: Job) -> None:
    bill(notebook, job)
    for change in ("UPDATE issued SET frozen = ''", "DELETE FROM issued"):
        with pytest.raises(sqlite3.IntegrityError, match="an issued bill is never"):
            notebook.db.execute(change)


def test_two_windows_issue_one_bill(notebook: Notebook, job: Job) -> None:
    ended: list[str] = []

    def window() -> None:
        mine = open_notebook(notebook.path)
        try:
            bill(mine, job)
            ended.append("issued")
        except AlreadyIssuedError:
            ended.append("refused")
        mine.close()

    windows = [threading.Thread(target=window) for _ in range(6)]
    for each in windows:
        each.start()
    for each in windows:
        each.join()
    assert sorted(ended) == ["issued"] + ["refused"] * 5


def test_kill_leaves_no_gap_and_no_double(tmp_path: Path) -> None:
    """Real processes issue side by side and are killed with SIGKILL at any moment, time and again."""
    path = tmp_path / "notebook.sqlite"
    open_notebook(path).close()
    dice, told = random.Random(8), []
    for turn in range(5):
        logs = [tmp_path / f"window {turn}-{each}" for each in range(2)]
        running = [start(path, log) for log in logs]
        while not all(log.stat().st_size for log in logs):  # both are at work once each has issued one
            time.sleep(0.05)
            assert all(process.poll() is None for process in running)
        time.sleep(dice.random() * 0.5)
        for process in running:
            os.kill(process.pid, signal.SIGKILL)
            process.wait(timeout=30)
        # a last line may have been cut off
        told += [int(line) for log in logs for line in log.read_text().splitlines(keepends=True) if line.endswith("\n")]
    notebook = open_notebook(path)
    rows = notebook.db.execute("SELECT number, job, length(frozen) FROM issued ORDER BY number").fetchall()
    notebook.close()
    assert len(rows) >= 10
    assert [row[0] for row in rows] == list(range(1, len(rows) + 1))
    assert len({row[1] for row in rows}) == len(rows)
    assert min(row[2] for row in rows) > 2000
    assert len(set(told)) == len(told)
    assert set(told) <= {row[0] for row in rows}
    # what was issued and not told is at most the one in hand when each was killed
    assert len(rows) - len(told) <= 10


def start(path: Path, log: Path) -> subprocess.Popen[bytes]:
    with log.open("wb") as out:
        return subprocess.Popen(
            [sys.executable, ROOT / "tests" / "store" / "issuing.py", path, log.name],
            cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)}, stdout=out,
        )  # fmt: skip


def test_the_bill_of_an_older_file_is_still_there(tmp_path: Path) -> None:
    """v2.sqlite is the first file that could hold one."""
    old = tmp_path / "notebook.sqlite"
    old.write_bytes((Path(__file__).parent / "old_files" / "v2.sqlite").read_bytes())
    notebook = open_notebook(old)
    (kept,) = issued_for(notebook, 1)
    assert (kept.shown, kept.frozen, kept.on) == ("B1", '{"bill": "as it left"}', AT.date())
    with pytest.raises(AlreadyIssuedError):
        issue(notebook, 1, "", at=AT + timedelta(days=1), shown=on_paper)
    notebook.close()
