"""Resistors to be bought in a value that nobody makes."""

from __future__ import annotations

import re
from collections.abc import Iterable
from decimal import Decimal

from benchnotes.record.entries import JobRecord, Notice
from benchnotes.record.notices.notice import notice_of

# IEC 60063: E24 as listed there; E48, E96 and E192 are 10^(n/N) to three figures, but for 9.20 (9.19 by the formula).
_E24 = "10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91"
_E192 = frozenset(920 if n == 185 else round(100 * 10 ** (n / 192)) for n in range(192))
PREFERRED = frozenset(10 * int(value) for value in _E24.split()) | _E192
"""Every three-figure value of E24 and E192; E48 and E96 are among the latter."""

_VALUE = re.compile(r"\b(\d+(?:\.\d+)?) ?(r|k|m|ohms?|kohms?|mohms?|kilohms?|megohms?)(\d*)\b", re.IGNORECASE)


def resistor_of_no_series(record: JobRecord) -> Iterable[Notice]:
    """A "4k9 resistor" on the list of parts -> no value of IEC 60063; 4k7 and 5k1 are its neighbours in E24."""
    for part in record.parts:
        value = _value(part.name)
        if part.state != "not_needed" and value and not preferred(value):
            low, high = _neighbours(value)
            why = f"{part.name}: no series of IEC 60063 has this value; its neighbours in E24 are {low} and {high}."
            yield notice_of("resistor_value", part.name, why, part)


def preferred(value: Decimal) -> bool:
    """True where the figures of a resistance, whatever its decade, are those of E3 to E192."""
    figures = value.normalize().as_tuple().digits
    return len(figures) <= 3 and int("".join(map(str, figures)).ljust(3, "0")) in PREFERRED


def _value(name: str) -> Decimal | None:
    """The value in the name of one resistor: "4k7", "470 ohm", "2.2k"."""
    if not re.search(r"\bresistors?\b", name, re.IGNORECASE):
        return None
    found = _VALUE.search(name)
    if found is None:
        return None
    whole, _, decimals = found.groups()
    return Decimal(f"{whole}.{decimals}") if decimals and "." not in whole else Decimal(whole)


def _neighbours(value: Decimal) -> tuple[str, str]:
    """The E24 values below and above, written to the value's own decade."""
    decade = Decimal(10) ** value.adjusted()
    scaled = value / decade
    series = [Decimal(figures) / 10 for figures in _E24.split()]
    low = max((step for step in series if step < scaled), default=series[0])
    high = min((step for step in series if step > scaled), default=Decimal(10))
    return f"{(low * decade).normalize():f}", f"{(high * decade).normalize():f}"
