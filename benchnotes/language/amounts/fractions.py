"""Fractions, said and written: "three eighths", "half a", "a quarter", "5/16", "6 3/4", "and a half"."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from benchnotes.language.amounts import numerals
from benchnotes.language.amounts.tokens import VULGAR, Token
from benchnotes.language.amounts.wholes import figure_at, small_at

Fraction = tuple[Decimal, int, int]
"""A value, the token after it, and the denominator."""


def fraction_at(tokens: Sequence[Token], at: int) -> Fraction | None:
    """A fraction below one, or one said as a fraction ("three halves")."""
    return _written_at(tokens, at) or _spoken_at(tokens, at)


def fraction_tail_at(tokens: Sequence[Token], at: int) -> Fraction | None:
    """What may follow a whole number: "and a half", "and three eighths", " 3/4", "-1/2", "½"."""
    if at >= len(tokens):
        return None
    if tokens[at].text == "and":
        return _below_one(fraction_at(tokens, at + 1))
    dash = tokens[at].text == "-" and tokens[at].glued
    return _below_one(_written_at(tokens, at + dash))


def _below_one(found: Fraction | None) -> Fraction | None:
    return found if found is not None and found[0] < 1 else None


def _written_at(tokens: Sequence[Token], at: int) -> Fraction | None:
    if at >= len(tokens):
        return None
    if tokens[at].text in VULGAR:
        top, bottom = VULGAR[tokens[at].text]
        return Decimal(top) / bottom, at + 1, bottom
    parts = tokens[at : at + 3]
    if len(parts) < 3 or parts[1].text != "/" or not parts[1].glued or not parts[2].glued:
        return None
    above, below = figure_at(tokens, at), figure_at(tokens, at + 2)
    dated = at + 3 < len(tokens) and tokens[at + 3].text == "/" and tokens[at + 3].glued
    if above is None or below is None or not below or below % 1 or above % 1 or dated:
        return None
    return above / below, at + 3, int(below)


def _spoken_at(tokens: Sequence[Token], at: int) -> Fraction | None:
    if at >= len(tokens):
        return None
    word = tokens[at].text
    if word in {"a", "an", "one"}:
        bottom = _bottom_at(tokens, at + 1)
        return None if bottom is None else _fraction(Decimal(1), bottom)
    bare = _bottom_at(tokens, at)
    if bare is not None and (word in numerals.PLAIN_FRACTIONS or _glues_to_inch(tokens, bare[1])):
        return _fraction(Decimal(1), bare)
    top = small_at(tokens, at)
    bottom = _bottom_at(tokens, top[1]) if top is not None else None
    if top is None or bottom is None or not top[0]:
        return None
    said = tokens[bottom[1] - 1].text
    plural = said.endswith("s") or said == "halves"
    # "three eighth" is a caption's "three eighths"; "twenty eighth" is an ordinal.
    if plural or (top[0] < 10 and bottom[0] in {8, 16, 32, 64}) or said in numerals.PLAIN_FRACTIONS:
        return _fraction(top[0], bottom)
    return None


def _fraction(top: Decimal, bottom: tuple[int, int]) -> Fraction:
    return top / bottom[0], bottom[1], bottom[0]


def _bottom_at(tokens: Sequence[Token], at: int) -> tuple[int, int] | None:
    """A denominator and the token after it."""
    if at >= len(tokens):
        return None
    single = numerals.denominator(tokens[at].text)
    if single is not None:
        return single, at + 1
    if at + 1 < len(tokens):
        joined = numerals.JOINED_DENOMINATORS.get((tokens[at].text, tokens[at + 1].text.removesuffix("s")))
        return None if joined is None else (joined, at + 2)
    return None


def _glues_to_inch(tokens: Sequence[Token], at: int) -> bool:
    """ "eighth-inch", "sixteenth inch": an ordinal alone is none, beside an inch it is a fraction."""
    return at < len(tokens) and tokens[at].text in {"inch", "in"}
