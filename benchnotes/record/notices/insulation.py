"""An insulation resistance under the limit that is published for portable equipment."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from decimal import Decimal

from benchnotes.record.entries import JobRecord, Notice, Reading
from benchnotes.record.notices.notice import notice_of
from benchnotes.record.terms import Unit

IN_MOHM: Mapping[Unit, Decimal] = {"ohm": Decimal("0.000001"), "kohm": Decimal("0.001"), "Mohm": Decimal(1)}
LIMIT_MOHM = Decimal(1)
"""EN 50699:2020 and AS/NZS 3760:2022: 1 Mohm at 500 V for class I and for live parts generally (from memory, not
checked against the text). Class II has 2 Mohm in the first; heating elements in some codes 0.3: local rules decide."""


def insulation_low(record: JobRecord) -> Iterable[Notice]:
    """ "Megger on the plug, nought point two of a meg", and no better one later -> under 1 Mohm."""
    for reading in _last_of_each(record):
        if reading.value * IN_MOHM[reading.unit] < LIMIT_MOHM and record.machine.power in ("mains", None):
            why = (
                f"Insulation of {reading.value.normalize():f} {reading.unit} is under 1 Mohm, the usual limit for "
                "mains equipment (EN 50699:2020, AS/NZS 3760:2022; noted from memory). Local rules decide."
            )
            yield notice_of("insulation_low", reading.what, why, reading)


def _last_of_each(record: JobRecord) -> Iterable[Reading]:
    last: dict[str, Reading] = {}
    for reading in record.readings:
        if "insulation" in reading.what.lower() and reading.unit in IN_MOHM:
            last[reading.what] = reading
    return last.values()
