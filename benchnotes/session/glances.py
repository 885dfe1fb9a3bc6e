"""What a list of jobs shows of each record, remembered beside the notebook so that a list never waits for a reader.

All of it is worked out again when the facts of a job or the program change; the file may be deleted at any time.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import asdict, dataclass
from typing import Final

from benchnotes import __version__
from benchnotes.exports.entry_lines import SECTIONS
from benchnotes.record.entries import JobRecord
from benchnotes.session.attention import questions
from benchnotes.session.editing import Edited
from benchnotes.session.errors import SessionError
from benchnotes.session.saving import save_all
from benchnotes.session.totals import money_said
from benchnotes.session.workshop import Workshop

NAME: Final = "glances.json"


@dataclass(frozen=True, slots=True)
class Glance:
    """One job's record at a glance."""

    state: str
    """Of the facts that it was worked out from, with the program's version."""
    machine: str
    entries: int
    left: int
    questions: int
    money: str


def state_now(facts: str) -> str:
    """What `Glance.state` must be for a glance to hold still."""
    return f"{__version__} {facts}"


def glance_at(now: Edited, facts: str) -> Glance:
    """The glance of a job as it stands."""
    return Glance(
        state=state_now(facts),
        machine=machine_name(now.record),
        entries=sum(len(getattr(now.record, where)) for _, where in SECTIONS),
        left=len(now.items),
        questions=len(questions(now)),
        money=str(money_said(now.record)),
    )


def machine_name(record: JobRecord) -> str:
    """Maker, model and kind, as far as they were said."""
    machine = record.machine
    return " ".join(filter(None, (machine.make, machine.model, machine.kind)))


def read_glances(workshop: Workshop) -> dict[int, Glance]:
    """Job number -> glance; empty where none are kept or they cannot be read."""
    try:
        kept = json.loads((workshop.folder / NAME).read_text(encoding="utf-8"))
        return {int(number): Glance(**glance) for number, glance in kept.items()}
    except (OSError, ValueError, TypeError, AttributeError):
        return {}


def keep_glances(workshop: Workshop, glances: Mapping[int, Glance]) -> None:
    """Remembers them. A glance that cannot be kept is worked out again next time."""
    text = json.dumps({number: asdict(glance) for number, glance in glances.items()}, ensure_ascii=False)
    with suppress(SessionError):
        save_all({workshop.folder / NAME: text.encode("utf-8")}, overwrite=True)
