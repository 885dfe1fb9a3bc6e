"""What is told while a file is listened to: words without a terminal, nothing on standard output."""

from __future__ import annotations

import pytest

from benchnotes.commands.progress import shown_progress
from benchnotes.session.events import Began, Ended, Reached, Skipped, Warned


def test_without_a_terminal_only_words(capsys: pytest.CaptureFixture[str]) -> None:
    with shown_progress() as tell:
        tell(Began("bench [1].wav", 0.0, 60.0))
        tell(Reached(30.0))
        tell(Warned("bench [1].wav stutters at 0:12"))
        tell(Ended("bench [1].wav"))
        tell(Began("second.wav", 65.0, 0.0))
        tell(Reached(65.0))
        tell(Skipped("third.wav"))
    out, err = capsys.readouterr()
    assert out == ""
    assert err.splitlines() == [
        "bench [1].wav stutters at 0:12",
        "second.wav: going on from 1:05",
        "third.wav: this job has that recording already; it was not taken in again.",
    ]


def test_with_a_terminal_a_bar_and_the_time_left(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("FORCE_COLOR", "1")
    with shown_progress() as tell:
        tell(Began("bench.wav", 0.0, 3600.0))
        tell(Reached(1800.0))
    out, err = capsys.readouterr()
    assert out == ""
    assert "bench.wav" in err
    assert "of 1:00:00" in err
