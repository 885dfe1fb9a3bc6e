"""How much is left, and what no list can be complete without: speech not made out, recordings not taken in whole."""

from __future__ import annotations

from collections.abc import Iterator

from benchnotes.commands.sheet import wrapped
from benchnotes.exports import wording
from benchnotes.session.facts import JobFacts
from benchnotes.session.job import ReadJob


def how_much_left(read: ReadJob) -> str:
    """In words; nothing to do is not the same as nothing heard."""
    if not read.facts.heard.utterances:
        return "nothing was heard in it yet"
    count = len(read.items)
    return f"{count} thing{'' if count == 1 else 's'} still to do" if count else "nothing left to do"


def not_heard_lines(facts: JobFacts) -> Iterator[str]:
    """What no list can be complete without: speech that was not made out, recordings not taken in to their end."""
    gaps = [
        f"{wording.moment(gap.recording, gap.start_s)} to {wording.clock(gap.end_s)}" for gap in facts.heard.unheard
    ]
    for title, lines in (
        ("Spoken, but not made out: listen here", gaps),
        ("About the recordings", [f"visit {warning.recording}: {warning.text}" for warning in facts.warned]),
    ):
        if lines:
            yield ""
            yield title
            for line in lines:
                yield from wrapped(line, 2)
