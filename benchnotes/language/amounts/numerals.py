"""Number words and written figures: the words a number is made of, and how figures are written."""

from __future__ import annotations

import re
from decimal import Decimal

UNITS = {
    "zero": 0, "nought": 0, "naught": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6,
    "seven": 7, "eight": 8, "nine": 9,
}  # fmt: skip
NOUGHTS = frozenset({"zero", "nought", "naught", "oh", "o"})
TEENS = {
    "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
    "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
    "ninety": 90,
}  # fmt: skip
SCALES = {
    "thousand": 1_000, "grand": 1_000, "lakh": 100_000, "lac": 100_000, "lakhs": 100_000, "million": 1_000_000,
    "crore": 10_000_000, "crores": 10_000_000, "billion": 1_000_000_000,
}  # fmt: skip
POINTS = frozenset({"point", "comma", "dot"})
"""What stands between whole and parts in speech; a decimal comma is said where it is written."""

DENOMINATORS = {
    "half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fifth": 5, "fifths": 5,
    "sixth": 6, "sixths": 6, "eighth": 8, "eighths": 8, "tenth": 10, "tenths": 10, "sixteenth": 16,
    "sixteenths": 16, "hundredth": 100, "hundredths": 100, "thousandth": 1000, "thousandths": 1000,
}  # fmt: skip
JOINED_DENOMINATORS = {("thirty", "second"): 32, ("sixty", "fourth"): 64}
"""Said in two words, each with or without a plural s on the last."""

INCH_DENOMINATORS = frozenset({2, 4, 8, 16, 32, 64})
PLAIN_FRACTIONS = frozenset({"half", "halves", "quarter", "quarters"})
"""The only denominators that are never also an ordinal."""

ORDINALS = frozenset(
    {
        "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
        "twelfth", "thirteenth", "fourteenth", "fifteenth", "sixteenth", "seventeenth", "eighteenth", "nineteenth",
        "twentieth", "thirtieth", "fortieth", "fiftieth", "sixtieth", "seventieth", "eightieth", "ninetieth",
        "hundredth", "thousandth", "millionth", "st", "nd", "rd", "th",
    }
)  # fmt: skip
DOUBLES = {"double": 2, "triple": 3, "treble": 3}
GROUPED = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?$")
GROUPED_BY_DOTS = re.compile(r"\d{1,3}(?:\.\d{3})+,\d+$")
COMMA_DECIMAL = re.compile(r"\d+,\d+$")
PLAIN = re.compile(r"(?:\d+(?:\.\d+)?|\.\d+)$")


def figure(written: str) -> Decimal | None:
    """The value of figures: "1,250", "2.5", ".9", "14,50" (a decimal comma), "1.250,00"; None for "10.4.2026"."""
    if GROUPED.match(written):
        return Decimal(written.replace(",", ""))
    if GROUPED_BY_DOTS.match(written):
        return Decimal(written.replace(".", "").replace(",", "."))
    if COMMA_DECIMAL.match(written):
        return Decimal(written.replace(",", "."))
    return Decimal(written) if PLAIN.match(written) else None


def denominator(word: str) -> int | None:
    return DENOMINATORS.get(word)


def digit(word: str) -> int | None:
    """0 to 9 where the word is one digit said by itself, as after "point"."""
    return 0 if word in NOUGHTS else UNITS.get(word)
