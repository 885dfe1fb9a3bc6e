"""The app in a real terminal: from the command line, on a job read from captions, with the reader behind it."""

from __future__ import annotations

import os
import re
import shlex
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

TALK = """\
WEBVTT

00:00.000 --> 00:05.000
This is a Corvane No. 6 butter churn, serial 4471.

00:05.000 --> 00:10.000
The lid gasket is split right round, so I need a new lid gasket.

00:10.000 --> 00:15.000
Lid gasket is four pounds fifty. The left paddle bearing is seized solid.
"""
PATIENCE_S = 60.0
"""A reader is loaded behind, on a machine that may be busy."""


class Terminal:
    """A terminal of tmux, with a server of its own."""

    def __init__(self, name: str) -> None:
        self._name, self._lives = name, 0

    @property
    def _server(self) -> str:
        return f"{self._name}-{self._lives}"

    def kill(self) -> None:
        """Ends all that runs in it. The next has another server, since this one may still be ending."""
        self.run("kill-server")
        self._lives += 1

    def run(self, *arguments: str) -> str:
        command = ["tmux", "-L", self._server, "-f", "/dev/null", *arguments]
        return subprocess.run(command, capture_output=True, text=True, check=False, timeout=20).stdout

    def press(self, *keys: str) -> None:
        self.run("send-keys", "-t", "bench", *keys)

    def screen(self) -> str:
        return self.run("capture-pane", "-p", "-t", "bench")

    def wait_for(self, words: str) -> str:
        until = time.monotonic() + PATIENCE_S
        while not re.search(words, seen := self.screen()):
            assert time.monotonic() < until, f"never saw {words!r}:\n{seen}"
            time.sleep(0.05)
        return seen


@pytest.fixture
def terminal(tmp_path: Path) -> Iterator[Terminal]:
    if shutil.which("tmux") is None:
        pytest.skip("tmux is not here")
    made = Terminal(f"benchnotes-test-{os.getpid()}")
    yield made
    made.kill()


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """A workshop with one job in it."""
    captions = tmp_path / "churn.vtt"
    captions.write_text(TALK, encoding="utf-8")
    folder = tmp_path / "shop"
    command = [sys.executable, "-m", "benchnotes", "read", str(captions), "--job", "butter churn", "--currency", "GBP"]
    subprocess.run(command, env={**os.environ, "BENCHNOTES_HOME": str(folder)}, check=True, capture_output=True)
    return folder


def opened(terminal: Terminal, home: Path, columns: int, lines: int) -> None:
    app = f"{shlex.quote(sys.executable)} -m benchnotes; echo left with $?; sleep 600"
    terminal.run(
        "new-session", "-d", "-s", "bench", "-x", str(columns), "-y", str(lines),
        "-e", f"BENCHNOTES_HOME={home}", "-e", "LC_ALL=C.UTF-8", app,
    )  # fmt: skip


def test_start_open_step_correct_resize_quit(terminal: Terminal, home: Path) -> None:
    opened(terminal, home, 80, 24)
    terminal.wait_for("butter churn")
    terminal.wait_for(r"GBP 4\.50")  # the reader has read it behind the list
    terminal.press("Enter")
    terminal.wait_for("Faults|For you|Nothing asks")
    assert "lid gasket" in terminal.screen()
    terminal.press("Down")
    terminal.press("c")
    terminal.wait_for("Enter keeps it")
    terminal.press("Escape")
    terminal.wait_for(r"(?s)^(?!.*Enter keeps)")  # an escape with a letter right behind it would be another key
    terminal.press("x")
    terminal.wait_for("Struck")
    terminal.press("u")
    terminal.wait_for("Taken back")
    terminal.run("resize-window", "-t", "bench", "-x", "160", "-y", "48")
    terminal.wait_for("left paddle bearing: seized")
    assert all(len(line) <= 160 for line in terminal.screen().splitlines())
    terminal.press("g")
    terminal.wait_for("Parts to fit")
    terminal.press("C-q")
    seen = terminal.wait_for("left with 0")
    assert "Traceback" not in seen


def test_killed_and_opened_again_with_all_that_was_done(terminal: Terminal, home: Path) -> None:
    opened(terminal, home, 80, 24)
    terminal.wait_for(r"GBP 4\.50")
    terminal.press("Enter")
    terminal.wait_for("Faults|For you|Nothing asks")
    terminal.press("End")
    terminal.press("x")
    gone = re.search(r"Struck: (.{1,20})", terminal.wait_for("Struck"))
    assert gone is not None
    terminal.kill()
    opened(terminal, home, 80, 24)
    terminal.wait_for("butter churn")
    terminal.press("Enter")
    terminal.wait_for("Faults|For you|Nothing asks")
    terminal.press("u")
    terminal.wait_for("Taken back")
