"""What came in: kind, make, model, serial number, what drives it, whether it holds pressure."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import JobRecord, Machine
from benchnotes.record.statements import Names, Statement
from benchnotes.record.talk import Talk, resting_on
from benchnotes.record.terms import MachineField, Power


def machine(talk: Talk, record: JobRecord) -> JobRecord:
    """The first kind and make, the last serial number. "Runs off the wall" outweighs what the kind implies."""
    said = [statement for _, statement in talk.of(Names)]
    kinds = [statement for statement in said if statement.field == "kind"]
    entry = Machine(
        kind=_first(said, "kind"),
        make=_first(said, "make"),
        model=_first(said, "model"),
        serial=_last(said, "serial"),
        power=_power(said),
        holds_pressure=next((s.holds_pressure for s in kinds if s.holds_pressure is not None), None),
    )
    told: list[Statement] = list(said)
    return replace(record, machine=resting_on(entry, told) if told else entry)


def _words(said: list[Names], field: MachineField) -> list[str]:
    told = (" ".join((s.written or s.words).split()) for s in said if s.field == field)
    return [words for words in told if words]


def _first(said: list[Names], field: MachineField) -> str | None:
    return next(iter(_words(said, field)), None)


def _last(said: list[Names], field: MachineField) -> str | None:
    return next(reversed(_words(said, field)), None)


def _power(said: list[Names]) -> Power | None:
    told = [s.power for s in said if s.field == "power" and s.power is not None]
    implied = [s.power for s in said if s.field == "kind" and s.power is not None]
    return next(iter(told + implied), None)
