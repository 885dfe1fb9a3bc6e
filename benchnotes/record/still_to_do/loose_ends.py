"""Work planned, covers left off, doubts left open."""

from __future__ import annotations

from collections.abc import Iterable

from benchnotes.record.entries import Item, JobRecord, Work
from benchnotes.record.still_to_do.item import item_of


def work_to_do(record: JobRecord) -> Iterable[Item]:
    """ "That tube wants a clean", and no more of it -> work_to_do, burner tube."""
    for work in record.work:
        if work.status == "planned":
            yield item_of(
                work,
                "work_to_do",
                work.target,
                why=f"{_job(work)}: planned, and not said to be done.",
                close_by="Do it and say so, or say that it is left.",
            )


def left_apart(record: JobRecord) -> Iterable[Item]:
    """ "Top cover's off", and never back on -> left_apart, top cover."""
    for apart in record.left_apart:
        yield item_of(
            apart,
            "left_apart",
            apart.part,
            why=f"{apart.part} was taken off, and never said to be put back.",
            close_by="Put it back and say so.",
        )


def unsure(record: JobRecord) -> Iterable[Item]:
    """ "No idea if that valve holds backwards" -> unsure, valve."""
    for doubt in record.unsure:
        yield item_of(
            doubt,
            "unsure",
            doubt.about,
            why=f"A question about {doubt.about} was left unanswered.",
            close_by="Find out and say what it is.",
        )


def _job(work: Work) -> str:
    action = "work on" if work.action == "other" else work.action.replace("_", " ")
    return f"{action} {work.target}" + (" (outside)" if work.by == "outside" else "")
