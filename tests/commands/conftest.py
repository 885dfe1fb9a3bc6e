"""The program as a user runs it: a process of its own, a workshop folder of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

Run = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "shop"


@pytest.fixture
def environment(home: Path) -> dict[str, str]:
    return {**os.environ, "BENCHNOTES_HOME": str(home), "LC_ALL": "C.UTF-8", "COLUMNS": "80"}


@pytest.fixture
def run(environment: dict[str, str]) -> Run:
    def run_it(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
        command = [sys.executable, "-m", "benchnotes", *map(str, arguments)]
        return subprocess.run(command, env=environment, capture_output=True, text=True, check=False, timeout=300)

    return run_it


FIRST_VISIT = """\
WEBVTT

00:00.000 --> 00:05.000
This is a Corvane No. 6 butter churn, serial 4471.

00:05.000 --> 00:10.000
The lid gasket is split right round, so I need a new lid gasket.

00:10.000 --> 00:15.000
Lid gasket is four pounds fifty. The left paddle bearing is seized solid.

00:15.000 --> 00:20.000
I've cleaned the drive gear.
"""

SECOND_VISIT = """\
WEBVTT

00:00.000 --> 00:05.000
Back to the churn. The new lid gasket has come and I've fitted it.

00:05.000 --> 00:10.000
Filled it with water and there is no leak, not a drop, so the leak test passes.
"""


@pytest.fixture
def first_visit(tmp_path: Path) -> Path:
    path = tmp_path / "first visit.vtt"
    path.write_text(FIRST_VISIT, encoding="utf-8")
    return path


@pytest.fixture
def second_visit(tmp_path: Path) -> Path:
    path = tmp_path / "second visit.vtt"
    path.write_text(SECOND_VISIT, encoding="utf-8")
    return path
