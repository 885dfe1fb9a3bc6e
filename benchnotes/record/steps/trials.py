"""What was tried on purpose, and how it went."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import JobRecord, Trial
from benchnotes.record.statements import Fits, Statement, Tries, Works
from benchnotes.record.talk import Said, Talk, resting_on


def trials(talk: Talk, record: JobRecord) -> JobRecord:
    """Tries of one kind with the same outcome and no work between are one: before and after a repair are two."""
    made: list[list[tuple[Said, Tries]]] = []
    worked_at = [said.at for said in talk.said if _is_work(said.statement)]
    for said, trial in talk.of(Tries):
        last = next((group for group in reversed(made) if group[0][1].kind == trial.kind), None)
        if last and _same_trial(last[-1], (said, trial), worked_at):
            last.append((said, trial))
        else:
            made.append([(said, trial)])
    return replace(record, tests=tuple(_trial(group) for group in made))


def _is_work(statement: Statement) -> bool:
    return isinstance(statement, Fits) or (isinstance(statement, Works) and statement.standing != "planned")


def _same_trial(last: tuple[Said, Tries], now: tuple[Said, Tries], worked_at: list[int]) -> bool:
    (last_said, last_trial), (said, trial) = last, now
    between = any(last_said.at < at < said.at for at in worked_at)
    return last_trial.result == trial.result and not between and last_said.name == said.name


def _trial(group: list[tuple[Said, Tries]]) -> Trial:
    _, first = group[0]
    of = next((said.name for said, _ in group if said.name), None)
    return resting_on(Trial(what=first.kind, result=first.result, of=of), (trial for _, trial in group))
