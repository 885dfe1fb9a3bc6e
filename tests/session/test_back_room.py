"""Work behind the screen: answers, failures in words, a process that dies and is started again."""

from __future__ import annotations

import os
import queue
import signal
import wave
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from store.filled import AT, recording, said

from benchnotes.session.back_room import BackRoom, Failed
from benchnotes.session.playing_room import MODULE as PLAYING
from benchnotes.session.playing_room import Play, Played
from benchnotes.session.reading_room import MODULE as READING
from benchnotes.session.reading_room import HasRead, ReadIt
from benchnotes.session.workshop import Workshop
from benchnotes.store.jobs import Job, open_job
from benchnotes.store.notebook import open_notebook
from benchnotes.store.recordings import add_recording
from benchnotes.store.talk import Stretch, keep_stretch

PATIENCE_S = 60.0


class Room:
    """A back room and everything that it told."""

    def __init__(self, module: str) -> None:
        self._told: queue.Queue[Any] = queue.Queue()
        self.room = BackRoom(module, self._told.put)

    def next(self) -> Any:
        return self._told.get(timeout=PATIENCE_S)


@pytest.fixture
def reading() -> Iterator[Room]:
    made = Room(READING)
    yield made
    made.room.close()


@pytest.fixture
def playing() -> Iterator[Room]:
    made = Room(PLAYING)
    yield made
    made.room.close()


def filled(folder: Path) -> tuple[Workshop, Job]:
    """A workshop with one job, in which two things were said."""
    workshop = Workshop(folder)
    workshop.make()
    notebook = open_notebook(workshop.notebook)
    job = open_job(notebook, "butter churn", at=AT, facts={"currency": "GBP"})
    kept = add_recording(notebook, job.number, recording(), at=AT)
    talk = (said("the lid gasket is split"), said("I have cleaned the drive gear", 4.0, 8.0))
    keep_stretch(notebook, kept.id, Stretch(from_s=0.0, until_s=60.0, utterances=talk, finished=True), at=AT)
    notebook.close()
    return workshop, job


def test_a_job_is_read_and_a_dead_reader_starts_again(reading: Room, tmp_path: Path) -> None:
    workshop, job = filled(tmp_path / "shop")
    reading.room.ask(ReadIt(workshop, job))
    read = reading.next()
    assert isinstance(read, HasRead)
    assert read.job == job
    assert read.facts.heard.utterances
    process = reading.room._process
    assert process is not None
    os.kill(process.pid, signal.SIGKILL)
    process.wait()
    reading.room.ask(ReadIt(workshop, job))
    assert isinstance(reading.next(), HasRead)


def test_a_reader_that_dies_at_its_work_is_told_of(reading: Room, tmp_path: Path) -> None:
    workshop, job = filled(tmp_path / "shop")
    reading.room.ask(ReadIt(workshop, job))
    process = reading.room._process
    assert process is not None
    os.kill(process.pid, signal.SIGKILL)
    failed = reading.next()
    assert isinstance(failed, Failed)
    assert "Nothing kept is lost" in failed.why


def test_what_cannot_be_read_is_a_sentence(reading: Room, tmp_path: Path) -> None:
    workshop, job = filled(tmp_path / "shop")
    workshop.settings.write_text("curency = 'GBP'\n", encoding="utf-8")
    reading.room.ask(ReadIt(workshop, job))
    failed = reading.next()
    assert isinstance(failed, Failed)
    assert "curency" in failed.why


def test_playing_ends_or_says_why_not(playing: Room, tmp_path: Path) -> None:
    """A machine without a loudspeaker says so; one with plays. Either way there is an answer, and another after it."""
    sound = tmp_path / "tone.wav"
    with wave.open(str(sound), "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(8000)
        out.writeframes(bytes(16000))
    for _ in range(2):
        playing.room.ask(Play(sound, 0.0, 0.2))
        answer = playing.next()
        assert isinstance(answer, Played) or "loudspeaker" in answer.why or "PortAudio" in answer.why


def test_a_file_that_is_no_sound_is_a_sentence(playing: Room, tmp_path: Path) -> None:
    (tmp_path / "note.wav").write_text("not sound", encoding="utf-8")
    playing.room.ask(Play(tmp_path / "note.wav", 0.0, 1.0))
    failed = playing.next()
    assert isinstance(failed, Failed)
    assert "note.wav is a text file" in failed.why
