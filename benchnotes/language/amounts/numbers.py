"""The grammar of numbers over tokens: whole numbers, decimals, fractions, and two-part runs such as "four fifty".

    number   = [sign] (fraction | decimal | whole [pair] [fraction tail] | counted word)
    whole    = group {scale group}        group = small | [small] "hundred" [["and"] small]
    decimal  = [whole] ("point" | "comma") digit {digit}
    fraction = (small | "a") denominator  tail = ["and"] fraction

Each rule takes the tokens and where to start, and gives a value and where it ended, or None.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from benchnotes.language.amounts import numerals
from benchnotes.language.amounts.fractions import fraction_at, fraction_tail_at
from benchnotes.language.amounts.tokens import Token
from benchnotes.language.amounts.wholes import figure_at, two_digits_at, whole_at

Form = Literal["whole", "decimal", "fraction", "mixed", "counted"]
COUNTED = {"dozen": Decimal(12), "score": Decimal(20), "gross": Decimal(144)}
FEW = {"couple": Decimal(2), "pair": Decimal(2), "brace": Decimal(2)}


@dataclass(frozen=True, slots=True)
class Number:
    """A number as said, over tokens `first` to `end` (half-open)."""

    value: Decimal
    first: int
    end: int
    form: Form
    pair: tuple[Decimal, Decimal] | None = None
    """Said as two runs, "four fifty": 4 and 50. `value` is then 450, as a size or a voltage is meant."""
    bottom: int | None = None
    """The denominator, where a fraction was said."""
    figures: bool = False
    """Written in figures, at least to begin with."""


def number_at(tokens: Sequence[Token], at: int) -> Number | None:
    """The longest number that begins at token `at`; None where none does, and for ordinals ("twenty-fifth")."""
    sign = _sign_at(tokens, at)
    found = _unsigned_at(tokens, at + sign)
    if found is None or not sign:
        return found
    return replace(found, value=-found.value, first=at)


def word_at(tokens: Sequence[Token], at: int) -> str:
    """The token's text, or "" past either end."""
    return tokens[at].text if 0 <= at < len(tokens) else ""


def _sign_at(tokens: Sequence[Token], at: int) -> int:
    if word_at(tokens, at) in {"minus", "negative"}:
        return 1
    dash = word_at(tokens, at) in {"-", "−"} and not tokens[at].glued
    return int(dash and at + 1 < len(tokens) and tokens[at + 1].glued)


def _unsigned_at(tokens: Sequence[Token], at: int) -> Number | None:
    if _is_date(tokens, at):
        return None
    for rule in (_counted_at, _fraction_at, _decimal_at, _whole_number_at):
        found = rule(tokens, at)
        if found is not None:
            return found
    return None


def _is_date(tokens: Sequence[Token], at: int) -> bool:
    """ "1/2/2026"."""
    slashes = word_at(tokens, at + 1) == "/" and word_at(tokens, at + 3) == "/"
    return slashes and all(token.glued for token in tokens[at + 1 : at + 5])


def _counted_at(tokens: Sequence[Token], at: int) -> Number | None:
    """ "a dozen", "half a dozen", "two dozen", "a couple of", "a pair of"."""
    start = at + 1 if word_at(tokens, at) in {"a", "an"} else at
    if word_at(tokens, start) in COUNTED:
        return Number(COUNTED[word_at(tokens, start)], at, start + 1, "counted")
    if (start > at or word_at(tokens, at) == "couple") and word_at(tokens, start) in FEW:
        of = word_at(tokens, start + 1) == "of"
        return Number(FEW[word_at(tokens, start)], at, start + 1 + of, "counted")
    if word_at(tokens, at) == "half":
        dozen = at + 2 if word_at(tokens, at + 1) == "a" else at + 1
        if word_at(tokens, dozen) in COUNTED:
            return Number(COUNTED[word_at(tokens, dozen)] / 2, at, dozen + 1, "counted")
    whole = whole_at(tokens, at)
    if whole is not None and word_at(tokens, whole[1]) in COUNTED:
        return Number(whole[0] * COUNTED[word_at(tokens, whole[1])], at, whole[1] + 1, "counted")
    return None


def _fraction_at(tokens: Sequence[Token], at: int) -> Number | None:
    found = fraction_at(tokens, at)
    if found is None:
        return None
    value, end, bottom = found
    return Number(value, at, end, "fraction", bottom=bottom, figures=tokens[at].kind == "figure")


def _decimal_at(tokens: Sequence[Token], at: int) -> Number | None:
    """ "nought point two five", "point four", "12 point 6", "nineteen comma nine five", "oh point six"."""
    if word_at(tokens, at) in numerals.POINTS - {"comma"}:
        whole: tuple[Decimal, int] | None = (Decimal(0), at)
    elif word_at(tokens, at) in numerals.NOUGHTS:
        whole = (Decimal(0), at + 1)
    else:
        whole = whole_at(tokens, at)
    if whole is None or word_at(tokens, whole[1]) not in numerals.POINTS:
        return None
    digits, end = _digits_at(tokens, whole[1] + 1)
    if not digits:
        return None
    scale = numerals.SCALES.get(word_at(tokens, end), 0)
    return Number((whole[0] + Decimal(f"0.{digits}")) * (scale or 1), at, end + bool(scale), "decimal")


def _digits_at(tokens: Sequence[Token], at: int) -> tuple[str, int]:
    """Digits after the point: one by one, or as one number ("point twenty-five")."""
    digits = ""
    while at < len(tokens):
        one = numerals.digit(tokens[at].text)
        if one is not None:
            digits, at = digits + str(one), at + 1
        elif tokens[at].text in numerals.DOUBLES and numerals.digit(word_at(tokens, at + 1)) is not None:
            digits += str(numerals.digit(word_at(tokens, at + 1))) * numerals.DOUBLES[tokens[at].text]
            at += 2
        elif tokens[at].text.isdigit():
            digits, at = digits + tokens[at].text, at + 1
        else:
            break
    if not digits and (run := two_digits_at(tokens, at)) is not None:
        return str(run[0]), run[1]
    return digits, at


def _whole_number_at(tokens: Sequence[Token], at: int) -> Number | None:
    written = figure_at(tokens, at)
    if written is not None and written % 1 and word_at(tokens, at + 1) not in numerals.SCALES:
        # "6.3 3/4" is nobody's number: a decimal takes no tail but "and a half" after whole figures.
        return Number(written, at, at + 1, "decimal", figures=True)
    whole = whole_at(tokens, at)
    if whole is None:
        return None
    value, end = whole
    figures = tokens[at].kind == "figure"
    tail = fraction_tail_at(tokens, end)
    if tail is not None:
        scale = numerals.SCALES.get(word_at(tokens, tail[1]), 0)
        mixed = (value + tail[0]) * (scale or 1)
        return Number(mixed, at, tail[1] + bool(scale), "mixed", bottom=tail[2], figures=figures)
    run = two_digits_at(tokens, end) if value < 1000 and (not figures or value < 100) else None
    if run is None or not _pairs(tokens, at, end):
        return Number(value, at, end, "whole", figures=figures)
    return Number(value * 100 + run[0], at, run[1], "whole", pair=(value, run[0]), figures=figures)


def _pairs(tokens: Sequence[Token], first: int, end: int) -> bool:
    """A second run may follow a plain first one; "two hundred" takes its tens itself, "4.0" is no head."""
    said = {token.text for token in tokens[first:end]}
    return not said & set(numerals.SCALES) and "." not in tokens[first].text and "," not in tokens[first].text
