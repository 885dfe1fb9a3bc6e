"""What all screens share: the notebook, the jobs at a glance, the job that lies open, and the rooms behind."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from benchnotes.record.heard import Evidence
from benchnotes.session.back_room import BackRoom, Failed
from benchnotes.session.edit_json import HandEdit
from benchnotes.session.evidence import sound_of
from benchnotes.session.glances import Glance, glance_at, keep_glances, read_glances, state_now
from benchnotes.session.jobs import Hit, all_jobs, search
from benchnotes.session.open_job import OpenJob, done, done_again, opened, taken_back
from benchnotes.session.playing_room import Play, Stop
from benchnotes.session.reading_room import HasRead, ReadIt
from benchnotes.session.workshop import Workshop
from benchnotes.store.job_states import job_states
from benchnotes.store.jobs import Job, JobLine, job_numbered
from benchnotes.store.notebook import Notebook

AROUND_S: Final = 0.4
"""So much is played before and after the words, since recognisers cut them close."""


class Desk:
    """Decides nothing: hands on what is asked to session, and remembers what is in view."""

    def __init__(self, workshop: Workshop, notebook: Notebook, reading: BackRoom, playing: BackRoom) -> None:
        self.workshop, self.notebook = workshop, notebook
        self._reading, self._playing = reading, playing
        self.glances: dict[int, Glance] = read_glances(workshop)
        self.lying: OpenJob | None = None
        self.number: int | None = None
        """Of the job that lies open; it may still be being read."""
        self._read: dict[int, tuple[str, HasRead]] = {}
        self._asked: set[int] = set()
        self._tried: set[int] = set()

    def job_lines(self) -> Sequence[JobLine]:
        """Every job, the newest first. Raises StoreError."""
        return all_jobs(self.notebook)

    def job_numbered(self, number: int) -> Job | None:
        """The job of that number. Raises StoreError."""
        return job_numbered(self.notebook, number)

    def hits(self, words: str) -> Sequence[Hit]:
        """Where all the words were said. Raises StoreError."""
        return search(self.notebook, words)

    def lay_open(self, number: int) -> None:
        """Lays a job open; it is read behind, unless it has been since it last changed. Raises StoreError."""
        self.number, self.lying = number, None
        state, read = self._read.get(number, ("", None))
        if read is not None and state == self._state(number):
            self.lying = opened(self.notebook, read)
            return
        self._ask(number)

    def take(self, read: HasRead) -> None:
        """A job has been read. Raises StoreError."""
        number = read.job.number
        self._asked.discard(number)
        lying = opened(self.notebook, read)
        if number == self.number:
            self.lying = lying
        self._glance(lying)
        self._read[number] = (self._state(number), read)

    def take_failed(self, failed: Failed) -> None:
        """Something could not be done behind the screens."""
        if isinstance(failed.request, ReadIt):
            self._asked.discard(failed.request.job.number)

    def read_next(self) -> None:
        """Has one job read of which nothing is known at a glance, or too old a thing; each is tried once."""
        if self._asked:
            return
        states = job_states(self.notebook)
        for number in sorted(states, reverse=True):
            known = self.glances.get(number)
            if number not in self._tried and (known is None or known.state != state_now(states[number])):
                self._ask(number)
                return

    def do(self, edit: HandEdit) -> None:
        """Keeps one thing done by hand. Raises StoreError."""
        assert self.lying is not None
        self._stands(done(self.notebook, self.lying, edit))

    def undo(self) -> bool:
        """Takes back what was done last; False where there is nothing. Raises StoreError."""
        return self._stands(taken_back(self.notebook, self.lying) if self.lying else None)

    def redo(self) -> bool:
        """Does again what was taken back last; False where there is nothing. Raises StoreError."""
        return self._stands(done_again(self.notebook, self.lying) if self.lying else None)

    def hear(self, evidence: Evidence) -> None:
        """Plays the seconds of an evidence. Raises NoSoundError where there is no sound."""
        assert self.lying is not None
        path = sound_of(evidence, self.lying.facts.heard.recordings, self.lying.files)
        self._playing.ask(Play(path, max(0.0, evidence.start_s - AROUND_S), evidence.end_s + AROUND_S))

    def be_quiet(self) -> None:
        """Stops what is playing."""
        self._playing.ask(Stop())

    def _ask(self, number: int) -> None:
        job = job_numbered(self.notebook, number)
        if job is not None and number not in self._asked:
            self._asked.add(number)
            self._tried.add(number)
            self._reading.ask(ReadIt(self.workshop, job))

    def _stands(self, lying: OpenJob | None) -> bool:
        if lying is None:
            return False
        self.lying = lying
        self._glance(lying)
        _, read = self._read.get(lying.job.number, ("", None))
        if read is not None:
            # an edit is no reason to read again: what was read stays the same
            self._read[lying.job.number] = (self._state(lying.job.number), read)
        return True

    def _glance(self, lying: OpenJob) -> None:
        self.glances[lying.job.number] = glance_at(lying.now, self._state(lying.job.number))
        keep_glances(self.workshop, self.glances)

    def _state(self, number: int) -> str:
        return job_states(self.notebook).get(number, "")
