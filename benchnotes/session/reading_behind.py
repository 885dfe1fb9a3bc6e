"""Reads jobs in a process of its own (`python -m`); what reading needs is opened once for each set of trades."""

from __future__ import annotations

from functools import lru_cache

from benchnotes.language.reader import ReadingTools
from benchnotes.session.back_room import Told, serve
from benchnotes.session.facts import facts_of_job
from benchnotes.session.job import read_job
from benchnotes.session.jobs import open_workshop
from benchnotes.session.reading_room import HasRead, ReadIt
from benchnotes.session.reading_tools import open_reading_tools
from benchnotes.session.settings import read_settings
from benchnotes.session.workshop import Workshop


@lru_cache(maxsize=4)
def _tools(workshop: Workshop, trades: tuple[str, ...]) -> ReadingTools:
    return open_reading_tools(workshop, trades)


def read_it(asked: ReadIt, tell: Told) -> None:
    """Answers with HasRead."""
    with open_workshop(asked.workshop) as notebook:
        facts = facts_of_job(notebook, asked.job, read_settings(asked.workshop.settings))
    read = read_job(facts, _tools(asked.workshop, facts.trades))
    tell(HasRead(asked.job, read.facts, read.record))


if __name__ == "__main__":
    serve(read_it)
