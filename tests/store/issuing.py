"""`python tests/store/issuing.py FILE NAME`: a program that issues bills, one job each, until it is killed."""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from itertools import count
from pathlib import Path

from benchnotes.store.issued import issue
from benchnotes.store.jobs import open_job
from benchnotes.store.notebook import open_notebook

AT = datetime(2026, 3, 2, 9, 30, tzinfo=UTC)

if __name__ == "__main__":
    notebook = open_notebook(Path(sys.argv[1]))
    for turn in count():
        job = open_job(notebook, f"{sys.argv[2]} {turn}", at=AT, facts={})
        said = issue(notebook, job.number, sys.argv[2] * 2000, at=AT, shown=lambda number: f"B{number}")
        print(said.number, flush=True)
