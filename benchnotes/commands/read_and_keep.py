"""`read`: files into a job of the notebook, and a short word on what is still to do."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import click

from benchnotes.commands.completeness import how_much_left
from benchnotes.commands.progress import shown_progress
from benchnotes.commands.sheet import headed
from benchnotes.commands.telling import FAILED, INTERRUPTED, say
from benchnotes.exports.wording import item_title
from benchnotes.session.events import Tell
from benchnotes.session.failing import sentence
from benchnotes.session.job import ReadJob
from benchnotes.session.looking import LookedAt, look_at
from benchnotes.session.sitting import Sitting, open_sitting
from benchnotes.session.workshop import find_workshop

SHOWN = 12
"""So many items still to do fit a glance; "benchnotes left" has them all."""


def read_and_keep(files: Sequence[Path], *, named: str | None, currency: str | None, trade: str | None) -> int:
    """Takes every file into one job, whatever is wrong with one of them.

    The exit code: 1 where a file could not be read, 130 where it was stopped.
    """
    looked_at, failed = _look_at_all(files)
    if not looked_at:
        return failed
    with open_sitting(find_workshop(), looked_at, named=named, currency=currency, trade=trade) as sitting:
        try:
            with shown_progress() as tell:
                failed = max(failed, _take_in_all(sitting, looked_at, tell))
            _sum_up(sitting)
        except KeyboardInterrupt:
            say(
                f"Stopped. What was heard up to here is kept in job {sitting.job.number}, {sitting.job.name}; "
                "run the same command again and it goes on from there."
            )
            return INTERRUPTED
    return failed


def _look_at_all(files: Sequence[Path]) -> tuple[list[LookedAt], int]:
    looked_at, failed = [], 0
    for path in files:
        try:
            looked_at.append(look_at(path))
        except Exception as failure:
            say(sentence(failure))
            failed = FAILED
    return looked_at, failed


def _take_in_all(sitting: Sitting, looked_at: Sequence[LookedAt], tell: Tell) -> int:
    failed = 0
    for file in looked_at:
        try:
            sitting.take_in(file, tell)
        except Exception as failure:
            say(sentence(failure))
            failed = FAILED
    return failed


def _sum_up(sitting: Sitting) -> None:
    read = sitting.read()
    click.echo(headed(f"Job {sitting.job.number}, {sitting.job.name}{_machine(read)}"))
    for item in read.items[:SHOWN]:
        click.echo(f"  {item_title(item)}")
    if len(read.items) > SHOWN:
        click.echo(f"  and {len(read.items) - SHOWN} more")
    gaps = len(read.facts.heard.unheard)
    if gaps:
        click.echo(f"  {gaps} stretch{'' if gaps == 1 else 'es'} of speech not made out: listen there")
    number = sitting.job.number
    click.echo(f"Before it goes back: {how_much_left(read)}.")
    click.echo(f'"benchnotes left {number}" says why, "benchnotes show {number}" shows the record.')


def _machine(read: ReadJob) -> str:
    machine = read.record.machine
    words = " ".join(filter(None, (machine.make, machine.model, machine.kind)))
    return f": {words}" if words else ""
