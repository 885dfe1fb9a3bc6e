"""The grammar of a measured value: a number and its unit in every order in which they are said.

measure = "M6" | "2k2" | number ["of"] ["a"] unit [fraction tail] | ["a"] unit fraction tail | "an inch"
size    = measure {"by" number}
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchnotes.language.amounts.fractions import fraction_tail_at
from benchnotes.language.amounts.numbers import Number, number_at, word_at
from benchnotes.language.amounts.tokens import Token
from benchnotes.language.amounts.unit_words import UnitMeaning, UnitWords
from benchnotes.language.amounts.wholes import two_digits_at

COMPONENT_CODES = {"r": "ohm", "k": "kohm", "m": "Mohm", "n": "nF", "p": "pF", "u": "uF"}
"""IEC 60062 letter codes: the letter stands where the decimal point would."""
OF = ("of", "a", "an", "the", "full", "good", "whole")
FULL = frozenset({"good", "full", "bare", "clear", "whole", "single", "solid"})
FLAT = ("flat", "even", "exactly", "bang", "odd", "plus")
THOU = (UnitMeaning("thou", Decimal(1), ()),)
MILLIMETRE = (UnitMeaning("mm", Decimal(1), ()),)


@dataclass(frozen=True, slots=True)
class Measure:
    """A number with what its unit may mean; no meanings where no unit was said."""

    value: Decimal
    first: int
    end: int
    meanings: tuple[UnitMeaning, ...] = ()
    number: Number | None = None
    thread: bool = False
    beside: tuple[Decimal, ...] = ()
    """The further numbers of a size: 1 in "M6 by 1"."""
    upper: Decimal | None = None
    """The upper end of a range; `value` is then the lower."""


def measure_at(said: Sequence[Token], at: int, words: UnitWords) -> Measure | None:
    """The measure that begins at token `at`, with or without a unit."""
    found = _thread_at(said, at) or _coded_at(said, at) or _counted_at(said, at, words) or _single_at(said, at, words)
    return None if found is None else _with_sides(said, found, words)


def _thread_at(said: Sequence[Token], at: int) -> Measure | None:
    """ "M6", "m six", "M 10": a metric thread by its nominal size (ISO 261)."""
    if word_at(said, at) != "m" or at + 1 >= len(said):
        return None
    size = number_at(said, at + 1)
    if size is None or size.pair or not 1 <= size.value <= 100 or size.form == "counted":
        return None
    return Measure(size.value, at, size.end, MILLIMETRE, size, thread=True)


def _coded_at(said: Sequence[Token], at: int) -> Measure | None:
    """ "2k2", "4R7", "4n7"."""
    letter = COMPONENT_CODES.get(word_at(said, at + 1))
    parts = said[at : at + 3]
    if letter is None or len(parts) < 3 or not (parts[1].glued and parts[2].glued):
        return None
    if not (parts[0].text.isdigit() and parts[2].text.isdigit()) or (at + 3 < len(said) and said[at + 3].glued):
        return None
    value = Decimal(f"{parts[0].text}.{parts[2].text}")
    return Measure(value, at, at + 3, (UnitMeaning(letter, Decimal(1), ()),))  # type: ignore[arg-type]


def _counted_at(said: Sequence[Token], at: int, words: UnitWords) -> Measure | None:
    number = number_at(said, at)
    if number is None:
        return None
    end = number.end + (word_at(said, number.end) in FLAT)
    unit = words.unit_at(said, end)
    if unit is None:
        unit_from = _past_of(said, number) if number.form in {"fraction", "decimal", "counted"} else number.end
        unit = words.unit_at(said, unit_from)
    if unit is None:
        return Measure(number.value, at, number.end, (), number)
    meanings, end = unit
    if number.bottom == 1000 and meanings[0].symbol == "in":
        return Measure(number.value * 1000, at, end, THOU, number)
    tail = fraction_tail_at(said, end) if number.form == "whole" and word_at(said, end) == "and" else None
    if tail is not None and words.unit_at(said, tail[1]) is None:
        return Measure(number.value + tail[0], at, tail[1], meanings, number)
    return Measure(number.value, at, end, meanings, number)


def _past_of(said: Sequence[Token], number: Number) -> int:
    """ "half a mil", "0.4 of a mil", "three tenths of a millimetre"."""
    at = number.end
    while word_at(said, at) in OF:
        at += 1
    return at


def _single_at(said: Sequence[Token], at: int, words: UnitWords) -> Measure | None:
    """ "a mil and a half", "an inch", "hour and three quarters"."""
    article = word_at(said, at) in {"a", "an", "one"}
    start = at + article + (article and word_at(said, at + 1) in FULL)
    unit = words.unit_at(said, start)
    if unit is None or len(said[start].text) < 3:
        return None
    tail = fraction_tail_at(said, unit[1])
    if tail is not None:
        return Measure(1 + tail[0], at, tail[1], unit[0])
    hour_and_minutes = unit[0][0].symbol == "h" and two_digits_at(said, unit[1]) is not None
    return Measure(Decimal(1), at, unit[1], unit[0]) if article or hour_and_minutes else None


def _with_sides(said: Sequence[Token], found: Measure, words: UnitWords) -> Measure:
    """Adds the further numbers of "6 by 1", "M10 by 1.25", "48 x 3 mil"; a unit said last is of all of them."""
    beside: list[Decimal] = []
    end, meanings = found.end, found.meanings
    while word_at(said, end) in {"by", "x", "×"}:
        side = _counted_at(said, end + 1, words)
        if side is None:
            break
        beside.append(side.value)
        end, meanings = side.end, meanings or side.meanings
    if not beside:
        return found
    return Measure(found.value, found.first, end, meanings, found.number, found.thread, tuple(beside))
