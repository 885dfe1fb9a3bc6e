"""Taking in is resumable at any stretch, and telling follows keeping."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from benchnotes.record.heard import Unheard, captioned
from benchnotes.session.events import Began, Ended, Event, Reached, Skipped, Warned
from benchnotes.session.facts import facts_of_job
from benchnotes.session.jobs import job_to_fill, open_workshop
from benchnotes.session.listening import Ears
from benchnotes.session.looking import look_at
from benchnotes.session.settings import Settings
from benchnotes.session.taking_in import hear_alone, take_in
from benchnotes.session.workshop import Workshop
from benchnotes.store.notebook import Notebook
from benchnotes.store.recordings import NewRecording
from benchnotes.store.talk import Stretch

CAPTIONS = "WEBVTT\n\n00:01.000 --> 00:03.000\nlid off\n\n00:03.000 --> 00:06.000\nbearing dry\n"


class ScriptedEars(Ears):
    """Stands in for the recogniser where it is not speech that is tried: a stretch every 10 s of a 30 s recording."""

    def __init__(self, stop_before_s: float = 99.0) -> None:
        self.stop_before_s = stop_before_s

    def listen(self, new: NewRecording, *, from_s: float) -> Iterator[Stretch]:
        for start in range(int(from_s), 30, 10):
            if start >= self.stop_before_s:
                raise KeyboardInterrupt
            yield Stretch(
                from_s=start,
                until_s=start + 10,
                utterances=(captioned(1, start + 1, start + 2, f"word {start}"),),
                unheard=(Unheard(1, start + 3, start + 4),) if start == 10 else (),
                warnings=("it crackles",) if start == 20 else (),
            )


@pytest.fixture
def notebook(tmp_path: Path) -> Iterator[Notebook]:
    with open_workshop(Workshop(tmp_path / "shop")) as opened:
        yield opened


@pytest.fixture
def sound(tmp_path: Path) -> NewRecording:
    return NewRecording(path=tmp_path / "bench.wav", name="bench.wav", kind="sound", duration_s=30.0, sha256="a" * 64)


def test_stopped_and_gone_on(notebook: Notebook, sound: NewRecording) -> None:
    job = job_to_fill(notebook, "churn", [])
    told: list[Event] = []
    with pytest.raises(KeyboardInterrupt):
        take_in(notebook, job, sound, ScriptedEars(stop_before_s=20.0), told.append)
    assert told == [Began("bench.wav", 0.0, 30.0), Reached(10), Reached(20)]
    facts = facts_of_job(notebook, job, Settings())
    assert [said.text for said in facts.heard.utterances] == ["word 0", "word 10"]
    assert facts.warned[0].text.startswith("bench.wav was taken in up to 20 s of 30 s.")
    told.clear()
    take_in(notebook, job, sound, ScriptedEars(), told.append)
    assert told == [
        Began("bench.wav", 20.0, 30.0), Warned("it crackles"), Reached(30), Reached(30), Ended("bench.wav"),
    ]  # fmt: skip
    facts = facts_of_job(notebook, job, Settings())
    assert [said.text for said in facts.heard.utterances] == ["word 0", "word 10", "word 20"]
    assert facts.heard.unheard == (Unheard(1, 13, 14),)
    assert [warning.text for warning in facts.warned] == ["it crackles"]
    told.clear()
    take_in(notebook, job, replace(sound, name="copy.wav"), ScriptedEars(), told.append)
    assert told == [Skipped("bench.wav")]


def test_every_stop_gives_the_same_in_the_end(notebook: Notebook, sound: NewRecording) -> None:
    """Stopped before any stretch: what is kept at last is what an unbroken run keeps."""
    whole = hear_alone(sound, ScriptedEars(), lambda _: None, currency="GBP", trades=())
    for number, stop in enumerate((0.0, 10.0, 20.0)):
        job = job_to_fill(notebook, f"churn {number}b", [])
        with pytest.raises(KeyboardInterrupt):
            take_in(notebook, job, sound, ScriptedEars(stop_before_s=stop), lambda _: None)
        take_in(notebook, job, sound, ScriptedEars(), lambda _: None)
        facts = facts_of_job(notebook, job, Settings(currency="GBP"))
        assert facts.heard == whole.heard
        assert facts.warned == whole.warned


def test_captions_need_no_recogniser(notebook: Notebook, tmp_path: Path) -> None:
    path = tmp_path / "visit.vtt"
    path.write_text(CAPTIONS)
    job = job_to_fill(notebook, "churn", [])
    ears = Ears(Workshop(tmp_path / "no weights here"), Settings(model_folder=tmp_path / "nor here"), ())
    take_in(notebook, job, look_at(path), ears, lambda _: None)
    facts = facts_of_job(notebook, job, Settings())
    assert [(said.start_s, said.end_s, said.text) for said in facts.heard.utterances] == [
        (1.0, 3.0, "lid off"), (3.0, 6.0, "bearing dry"),
    ]  # fmt: skip
    (recording,) = facts.heard.recordings
    assert (recording.kind, recording.duration_s, recording.started_at) == ("captions", 6.0, None)


def test_silence_is_said(notebook: Notebook, sound: NewRecording) -> None:
    class Deaf(ScriptedEars):
        def listen(self, new: NewRecording, *, from_s: float) -> Iterator[Stretch]:
            yield Stretch(from_s=from_s, until_s=30.0, utterances=())

    job = job_to_fill(notebook, "churn", [])
    told: list[Event] = []
    take_in(notebook, job, sound, Deaf(), told.append)
    assert Warned("Nothing was said in bench.wav, or nothing that could be heard.") in told
    alone = hear_alone(sound, Deaf(), lambda _: None, currency="GBP", trades=())
    assert facts_of_job(notebook, job, Settings(currency="GBP")).warned == alone.warned
