"""A disk that fills up while somebody talks: said in a sentence, everything before it kept, and it goes on later."""

from __future__ import annotations

import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from small_disk import mounted
from store.filled import AT, recording, said

from benchnotes.store.backup import back_up
from benchnotes.store.errors import FullDiskError
from benchnotes.store.jobs import open_job
from benchnotes.store.notebook import open_notebook
from benchnotes.store.recordings import add_recording, recordings_of
from benchnotes.store.talk import Stretch, keep_stretch, utterances_in


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    with mounted(tmp_path / "disk", "2m") as folder:
        yield folder


def test_full_while_listening(small_disk: Path) -> None:
    path = small_disk / "notebook.sqlite"
    notebook = open_notebook(path)
    job = open_job(notebook, "Corvane churn", at=AT, facts={})
    kept = add_recording(notebook, job.number, recording(), at=AT)
    at = 0
    with pytest.raises(FullDiskError, match=r"notebook\.sqlite is full or failing.*Make room"):
        while True:
            talk = tuple(said(f"the churn lid gasket {at} {n}", at, at + 1) for n in range(40))
            keep_stretch(notebook, kept.id, Stretch(from_s=at, until_s=at + 1, utterances=talk), at=AT)
            at += 1
    assert at > 10
    assert len(utterances_in(notebook, kept, 1)) == 40 * at
    notebook.close()
    subprocess.run(["mount", "-o", "remount,size=8m", small_disk], check=True)
    again = open_notebook(path)
    (kept,) = recordings_of(again, job.number)
    assert kept.until_s == at
    assert len(utterances_in(again, kept, 1)) == 40 * at
    keep_stretch(again, kept.id, Stretch(from_s=at, until_s=at + 1, utterances=(said("on again"),)), at=AT)
    assert again.db.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    again.close()


def test_full_before_anything_is_kept(small_disk: Path) -> None:
    (small_disk / "films").write_bytes(b"\0" * (2 << 20))
    with pytest.raises(FullDiskError, match="Make room"):
        open_notebook(small_disk / "notebook.sqlite")


def test_full_while_backing_up(small_disk: Path, tmp_path: Path) -> None:
    notebook = open_notebook(tmp_path / "notebook.sqlite")
    job = open_job(notebook, "Corvane churn", at=AT, facts={})
    kept = add_recording(notebook, job.number, recording(), at=AT)
    talk = tuple(said(f"the churn lid gasket {n}", n, n + 1) for n in range(9000))
    keep_stretch(notebook, kept.id, Stretch(from_s=0, until_s=1, utterances=talk), at=AT)
    with pytest.raises(FullDiskError, match=r"^No backup was made.*copy\.sqlite.*The notebook is unchanged"):
        back_up(notebook, small_disk / "copy.sqlite")
    assert list(small_disk.iterdir()) == []
    notebook.close()
