"""Work on the machine: one entry per action and target; planned, done or failed; at the bench or outside."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from benchnotes.record.entries import JobRecord, Work
from benchnotes.record.same_thing import within
from benchnotes.record.statements import Fits, Statement, Works
from benchnotes.record.talk import Talk, resting_on
from benchnotes.record.terms import Action, Place, Standing


@dataclass(frozen=True, slots=True)
class _Job:
    """One action on one target while the talk goes on."""

    action: Action
    target: str
    by: Place
    status: Standing
    said: tuple[Statement, ...] = field(default=())

    def entry(self) -> Work:
        return resting_on(Work(action=self.action, target=self.target, status=self.status, by=self.by), self.said)


def work(talk: Talk, record: JobRecord) -> JobRecord:
    """ "I'll pop a new one on" ... "new one's on" -> replace, done. What failed and then went well is two entries."""
    jobs: list[_Job] = []
    for said in talk.said:
        told = said.statement
        if said.name and isinstance(told, Works):
            jobs = _told(jobs, _Job(told.action, said.name, told.by, told.standing, (told,)))
        elif said.name and isinstance(told, Fits):
            jobs = _told(jobs, _Job("replace", said.name, "bench", "done", (told,)))
    return replace(record, work=tuple(job.entry() for job in jobs))


def _told(jobs: list[_Job], now: _Job) -> list[_Job]:
    """The jobs after one more was told: a later word on the same job changes it, anything else is a job of its own."""
    for at, earlier in enumerate(jobs):
        if _continues(earlier, now):
            return [*jobs[:at], _continued(earlier, now), *jobs[at + 1 :]]
    return [*jobs, now]


def _continues(earlier: _Job, now: _Job) -> bool:
    if earlier.action == "send_out" and now.by == "outside":
        return within(earlier.target, now.target)
    if earlier.target != now.target or earlier.action != now.action:
        return False
    return now.status == "failed" or earlier.status != "failed"


def _continued(earlier: _Job, now: _Job) -> _Job:
    """Planned or done, then failed, is failed; done stays done whatever is planned after it. Sent out, then back: what
    was done there."""
    kept = earlier.status == "done" and now.status == "planned" and earlier.action == now.action
    by: Place = "outside" if "outside" in (earlier.by, now.by) else "bench"
    return _Job(now.action, now.target, by, "done" if kept else now.status, (*earlier.said, *now.said))
