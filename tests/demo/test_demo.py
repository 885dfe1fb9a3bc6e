"""The demo recordings are what their README says, and their narrations keep to the guide."""

from __future__ import annotations

import json
import subprocess
import sys
from itertools import pairwise
from pathlib import Path
from typing import Any

import av
import numpy as np
import pytest

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_audio"
JOBS: list[dict[str, Any]] = [json.loads(path.read_text(encoding="utf-8")) for path in sorted(DEMO.glob("*.json"))]
RECORDINGS = [(job, number) for job in JOBS for number in range(1, len(job["recordings"]) + 1)]


def id_of(value: object) -> str | None:
    return value["id"] if isinstance(value, dict) else None


def test_narrations_keep_to_the_guide() -> None:
    files = sorted(DEMO.glob("*.json"))
    checked = subprocess.run(
        [sys.executable, ROOT / "training/score.py", "--check", *files], capture_output=True, text=True, check=False
    )
    assert checked.returncode == 0, checked.stdout


@pytest.mark.parametrize(("job", "number"), RECORDINGS, ids=id_of)
def test_three_minutes_of_speech_or_more(job: dict[str, Any], number: int) -> None:
    assert sum(u["end"] - u["start"] for u in job["utterances"] if u["recording"] == number) >= 180


@pytest.mark.parametrize(("job", "number"), RECORDINGS, ids=id_of)
def test_every_utterance_is_spoken_inside_its_recording(job: dict[str, Any], number: int) -> None:
    recording = job["recordings"][number - 1]
    begins, ends = recording["starts_at"], recording["starts_at"] + recording["duration"]
    assert all(begins <= u["start"] < u["end"] <= ends for u in job["utterances"] if u["recording"] == number)


@pytest.mark.parametrize(("job", "number"), RECORDINGS, ids=id_of)
def test_the_file_is_as_long_as_its_narration_says(job: dict[str, Any], number: int) -> None:
    recording = job["recordings"][number - 1]
    with av.open(str(DEMO / recording["file"])) as file:
        assert file.duration / av.time_base == pytest.approx(recording["duration"], abs=1.0)


def test_the_picture_changes_with_what_is_talked_about() -> None:
    """One frame well inside each scene: neighbours differ, and every scene has its own picture."""
    job = next(job for job in JOBS if "scenes" in job["recordings"][0])
    scenes = job["recordings"][0]["scenes"]
    with av.open(str(DEMO / job["recordings"][0]["file"])) as film:
        seen = [frame_at(film, job["utterances"][scene["u"]]["end"]) for scene in scenes]
    for before, after in pairwise(seen):
        assert np.abs(before - after).mean() > 2
    assert len({scene["picture"] for scene in scenes}) >= 6


def frame_at(film: Any, at_s: float) -> np.ndarray:
    stream = film.streams.video[0]
    film.seek(int(at_s / stream.time_base), stream=stream)
    frame = next(frame for frame in film.decode(stream) if frame.time >= at_s)
    return frame.to_ndarray(format="gray").astype(float)


def test_two_voices_and_small_files() -> None:
    assert len({recording["voice"] for job in JOBS for recording in job["recordings"]}) == 2
    assert sum(path.stat().st_size for path in DEMO.iterdir()) < 10 * 2**20


def test_something_only_the_two_visits_together_tell() -> None:
    """A cover taken off in the first visit, and a fault found there, of which the second says nothing."""
    steamer = next(job for job in JOBS if len(job["recordings"]) == 2)
    second = {i for i, u in enumerate(steamer["utterances"]) if u["recording"] == 2}
    left = [entry["part"] for entry in steamer["gold"]["left_apart"] if not second & set(entry["u"])]
    never_again = [f["part"] for f in steamer["gold"]["faults"] if f["status"] == "open" and not second & set(f["u"])]
    assert left == ["side cover"]
    assert never_again == ["sight glass"]
    text = " ".join(steamer["utterances"][i]["text"].lower() for i in second)
    assert "cover" not in text
    assert "sight glass" not in text
