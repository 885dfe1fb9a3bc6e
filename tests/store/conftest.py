"""A real notebook file for each test."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

from benchnotes.store.jobs import Job, open_job
from benchnotes.store.notebook import Notebook, open_notebook

AT = datetime(2026, 3, 2, 9, 30, tzinfo=UTC)


@pytest.fixture
def notebook(tmp_path: Path) -> Iterator[Notebook]:
    opened = open_notebook(tmp_path / "shop" / "notebook.sqlite", wait_s=0.3)
    yield opened
    opened.close()


@pytest.fixture
def job(notebook: Notebook) -> Job:
    return open_job(notebook, "Corvane churn", at=AT, facts={"currency": "GBP"})
