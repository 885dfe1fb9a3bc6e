"""Sound to a record through the command line: stopped, killed, gone on with; nothing lost, nothing said twice."""

from __future__ import annotations

import json
import os
import shutil
import signal
import sqlite3
import subprocess
import sys
import time
from pathlib import Path

import pytest
import soundfile
from commands.conftest import Run
from small_disk import mounted

from benchnotes.capture.media import RATE, sound_windows

pytestmark = [pytest.mark.whole, pytest.mark.speech]

SOUND = "hat-steamer-1-inspection.opus"


def kept_until_s(home: Path) -> float:
    """How far the notebook says a recording has been taken in; read from the file itself, as another program would."""
    try:
        connection = sqlite3.connect(f"file:{home / 'notebook.sqlite'}?mode=ro", uri=True)
        (until_s,) = connection.execute("SELECT coalesce(max(until_s), 0) FROM progress").fetchone()
        connection.close()
    except sqlite3.Error:
        return 0.0
    return float(until_s)


def stopped(sound: Path, environment: dict[str, str], home: Path, how: signal.Signals) -> tuple[int, str]:
    """A run that is stopped as soon as it has kept something more; its exit code and what it said."""
    before = kept_until_s(home)
    command = [sys.executable, "-m", "benchnotes", "read", str(sound), "--job", "steamer"]
    run = subprocess.Popen(command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    end = time.monotonic() + 240
    while kept_until_s(home) <= before and run.poll() is None and time.monotonic() < end:
        time.sleep(0.05)
    run.send_signal(how)
    _, said = run.communicate(timeout=120)
    return run.returncode, said


@pytest.fixture
def long_sound(demo_audio: Path, tmp_path: Path) -> Path:
    """Eleven minutes, so that a run can be stopped between two readings: the demo's visits, one after another."""
    made = tmp_path / "visits.flac"
    with soundfile.SoundFile(made, "w", RATE, 1) as out:
        for name in (SOUND, "hat-steamer-2-repair.opus", SOUND):
            for window in sound_windows(demo_audio / name):
                out.write(window.samples)
    return made


def test_stopped_killed_and_gone_on(
    run: Run, environment: dict[str, str], home: Path, long_sound: Path, tmp_path: Path
) -> None:
    sound, whole_s = long_sound, soundfile.info(long_sound).duration
    alone = run("read", sound, "--json")
    assert alone.returncode == 0, alone.stderr
    assert not (home / "notebook.sqlite").exists()

    code, said = stopped(sound, environment, home, signal.SIGINT)
    assert code == 130
    assert "Stopped. What was heard up to here is kept in job 1, steamer" in said
    assert "Traceback" not in said
    first = kept_until_s(home)
    assert 0 < first < whole_s - 100

    code, _ = stopped(sound, environment, home, signal.SIGKILL)
    assert code == -signal.SIGKILL
    second = kept_until_s(home)
    assert first < second < whole_s - 1

    last = run("read", sound, "--job", "steamer")
    assert last.returncode == 0, last.stderr
    assert f"{sound.name}: going on from " in last.stderr
    run("export", "steamer", "--to", tmp_path / "out")
    kept = json.loads((tmp_path / "out" / "record.json").read_text(encoding="utf-8"))
    said_alone = " ".join(said["text"] for said in json.loads(alone.stdout)["transcript"]).split()
    said_kept = " ".join(said["text"] for said in kept["transcript"]).split()
    # where a run goes on the voice is cut anew, so a word at the seam may be heard a little otherwise
    assert abs(len(said_kept) - len(said_alone)) <= 0.03 * len(said_alone)
    starts = [said["start"] for said in kept["transcript"]]
    assert starts == sorted(starts)
    ends = [said["end"] for said in kept["transcript"]]
    assert all(end <= start + 0.05 for end, start in zip(ends, starts[1:], strict=False))


def test_a_full_disk_while_listening(run: Run, environment: dict[str, str], demo_audio: Path, tmp_path: Path) -> None:
    with mounted(tmp_path / "small", "400k") as small:
        environment["BENCHNOTES_HOME"] = str(small)
        (small / "films").write_bytes(os.urandom(120_000))
        ended = run("read", demo_audio / SOUND, "--job", "steamer")
        assert ended.returncode == 1
        assert "is full or failing" in ended.stderr
        assert "Traceback" not in ended.stderr
        (small / "films").unlink()
        subprocess.run(["mount", "-o", "remount,size=8m", small], check=True)
        again = run("read", demo_audio / SOUND, "--job", "steamer")
        assert again.returncode == 0, again.stderr
        assert again.stdout.startswith("Job 1, steamer")


def test_weights_with_one_byte_changed(run: Run, home: Path, demo_audio: Path, weights: Path, tmp_path: Path) -> None:
    """A folder of the user's own: refused and named, and left as it is."""
    mine = tmp_path / "mine"
    shutil.copytree(weights / "base", mine)
    home.mkdir()
    (home / "settings.toml").write_text(f'model_folder = "{mine}"\n')
    assert "speech model: works" in run("check").stdout
    with (mine / "config.json").open("r+b") as file:
        file.write(b" ")
    changed = (mine / "config.json").read_bytes()
    ended = run("read", demo_audio / SOUND, "--json")
    assert (ended.returncode, ended.stdout) == (1, "")
    assert str(mine / "config.json") in ended.stderr
    assert (mine / "config.json").read_bytes() == changed


def test_no_weights(run: Run, environment: dict[str, str], demo_audio: Path, tmp_path: Path, first_visit: Path) -> None:
    """Sound is refused with what to do; captions beside it are read all the same."""
    environment["XDG_CACHE_HOME"] = str(tmp_path / "empty")
    ended = run("read", demo_audio / SOUND, first_visit, "--json")
    assert ended.returncode == 1
    assert '"benchnotes weights fetch base" fetches it' in ended.stderr
    assert json.loads(ended.stdout)["recordings"][0]["file"] == "first visit.vtt"
    checked = run("check")
    assert checked.returncode == 1
    assert "speech model: does not work" in checked.stdout
