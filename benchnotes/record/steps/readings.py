"""Values measured, gauged or set, before and after."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from benchnotes.record.entries import JobRecord, Reading
from benchnotes.record.statements import Measures
from benchnotes.record.talk import Said, Talk, resting_on
from benchnotes.record.terms import Unit, When

UNNAMED = "reading"
"""What a value is of where nothing was named."""


def readings(talk: Talk, record: JobRecord) -> JobRecord:
    """ "Pivot's 1.38" ... "1.35 now" -> two readings; the same value told again in the same state adds none."""
    told: dict[tuple[str, Decimal, Unit, When | None], list[tuple[Said, Measures]]] = {}
    for said, measured in talk.of(Measures):
        told.setdefault((said.name, measured.value, measured.unit, measured.when), []).append((said, measured))
    return replace(record, readings=tuple(_reading(mentions) for mentions in told.values()))


def _reading(mentions: list[tuple[Said, Measures]]) -> Reading:
    said, first = mentions[0]
    entry = Reading(
        what=said.name or UNNAMED,
        value=first.value,
        unit=first.unit,
        when=first.when,
        about=all(measured.about for _, measured in mentions),
    )
    return resting_on(entry, (measured for _, measured in mentions))
