"""Recordings and talk to fill a notebook with; also makes a file of the present version for `old_files/`.

`python tests/store/filled.py FILE` writes one; a released version's file is kept for good and never made again.
"""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from pathlib import Path

from benchnotes.record.heard import Unheard, Utterance, Word, captioned
from benchnotes.store.edits import add_edit
from benchnotes.store.issued import issue
from benchnotes.store.jobs import open_job
from benchnotes.store.notebook import Notebook, open_notebook
from benchnotes.store.recordings import KeptRecording, NewRecording, add_recording
from benchnotes.store.talk import Stretch, keep_stretch

AT = datetime(2026, 3, 2, 9, 30, tzinfo=UTC)


def recording(name: str = "bench.flac", sha: str = "a", started_at: datetime | None = AT) -> NewRecording:
    return NewRecording(
        path=Path("/recordings") / name,
        name=name,
        kind="sound",
        duration_s=60.0,
        sha256=sha * 64,
        started_at=started_at,
        started_from="container" if started_at else "unknown",
    )


def said(text: str, start_s: float = 0.0, end_s: float = 4.0) -> Utterance:
    return captioned(1, start_s, end_s, text)


def fill(notebook: Notebook) -> KeptRecording:
    """A job with one recording, half taken in."""
    job = open_job(notebook, "Corvane churn", at=AT, facts={"currency": "GBP", "trade": "dairy"})
    kept = add_recording(notebook, job.number, recording(), at=AT)
    spoken = Utterance(1, 3.0, 5.0, (Word("Paddle's", 3.0, 3.5, 0.91), Word("façade", 3.5, 5.0, 0.5)))
    first = Stretch(
        from_s=0.0,
        until_s=30.0,
        utterances=(spoken, said("the churn lid gasket has perished", 6.0, 9.0)),
        unheard=(Unheard(1, 12.0, 14.0),),
        warnings=("bench.flac stutters at 0:12",),
    )
    keep_stretch(notebook, kept.id, first, at=AT)
    issue(notebook, job.number, '{"bill": "as it left"}', at=AT, shown=lambda number: f"B{number}")
    add_edit(notebook, job.number, {"close": "fault_open", "about": "lid gasket", "because": "owner declined"}, at=AT)
    return kept


if __name__ == "__main__":
    opened = open_notebook(Path(sys.argv[1]))
    fill(opened)
    # one file, so that it can be kept in the repository
    opened.db.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    opened.close()
