"""Whole numbers in words and figures, mixed as a recogniser prints them: "a hundred and forty", "2 hundred"."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from benchnotes.language.amounts import numerals
from benchnotes.language.amounts.tokens import Token

Counted = tuple[Decimal, int]
"""A value and the token after it."""


def whole_at(tokens: Sequence[Token], at: int) -> Counted | None:
    """A whole number; None for an ordinal or where no number begins."""
    group = _group_at(tokens, at, lead=True)
    if group is None:
        return None
    total, end = _scaled(tokens, group)
    return None if _ordinal_follows(tokens, end) else (total, end)


def figure_at(tokens: Sequence[Token], at: int) -> Decimal | None:
    """The value of the figures at `at`."""
    if at < len(tokens) and tokens[at].kind == "figure":
        return numerals.figure(tokens[at].text)
    return None


def small_at(tokens: Sequence[Token], at: int) -> Counted | None:
    """1 to 99 in words ("twenty-five", "twenty five"), or figures without a fraction."""
    if at >= len(tokens):
        return None
    word = tokens[at].text
    if word in numerals.TENS:
        unit = numerals.UNITS.get(tokens[at + 1].text, 0) if at + 1 < len(tokens) else 0
        return Decimal(numerals.TENS[word] + unit), at + 1 + bool(unit)
    if word in numerals.TEENS:
        return Decimal(numerals.TEENS[word]), at + 1
    if word in numerals.UNITS:
        return Decimal(numerals.UNITS[word]), at + 1
    written = figure_at(tokens, at)
    return (written, at + 1) if written is not None and not written % 1 else None


def two_digits_at(tokens: Sequence[Token], at: int) -> Counted | None:
    """The second run of "four fifty", "one oh five", "14 50": 10 to 99 or "oh" and a digit."""
    if at >= len(tokens):
        return None
    if tokens[at].text in {"oh", "o"} and at + 1 < len(tokens) and tokens[at + 1].text in numerals.UNITS:
        return Decimal(numerals.UNITS[tokens[at + 1].text]), at + 2
    if tokens[at].kind == "figure" and (tokens[at].glued or len(tokens[at].text) != 2):
        return None
    run = small_at(tokens, at)
    # "ten five hundred" and "four thirty-second" are something else.
    if run is None or not 10 <= run[0] <= 99 or _ordinal_follows(tokens, run[1]) or _scale_follows(tokens, run[1]):
        return None
    return run


def _group_at(tokens: Sequence[Token], at: int, *, lead: bool) -> Counted | None:
    """Up to hundreds: "a hundred and forty", "twelve hundred", "hundred fifty", "twenty-five"."""
    if at >= len(tokens):
        return None
    article = tokens[at].text in {"a", "an", "one"} and at + 1 < len(tokens)
    if lead and article and tokens[at + 1].text in numerals.SCALES:
        return Decimal(1), at + 1
    if lead and tokens[at].text in {"a", "an"}:
        return _hundreds(tokens, (Decimal(1), at + 1)) if _is(tokens, at + 1, "hundred") else None
    if tokens[at].text == "hundred" or (lead and tokens[at].text in numerals.SCALES and tokens[at].text != "grand"):
        return _hundreds(tokens, (Decimal(1), at)) if tokens[at].text == "hundred" else (Decimal(1), at)
    small = small_at(tokens, at)
    if small is None and lead and (written := figure_at(tokens, at)) is not None and _scale_follows(tokens, at + 1):
        return written, at + 1
    return _hundreds(tokens, small) if small is not None and _is(tokens, small[1], "hundred") else small


def _hundreds(tokens: Sequence[Token], lead: Counted) -> Counted:
    total, end = lead[0] * 100, lead[1] + 1
    rest = small_at(tokens, end + 1 if _is(tokens, end, "and") else end)
    if rest is None or not 0 < rest[0] < 100 or _is(tokens, rest[1], "hundred"):
        return total, end
    if _is(tokens, end, "and") and rest[1] < len(tokens) and _is_denominator(tokens[rest[1]].text):
        return total, end  # "a hundred and three quarters"
    return total + rest[0], rest[1]


def _scaled(tokens: Sequence[Token], group: Counted) -> Counted:
    """Adds "thousand ...", "lakh ..." after a group, each scale smaller than the one before."""
    (total, end), ceiling = group, Decimal(10) ** 12
    pending = total
    total = Decimal(0)
    while end < len(tokens) and (scale := numerals.SCALES.get(tokens[end].text)) is not None and scale < ceiling:
        total, ceiling, end, pending = total + pending * scale, Decimal(scale), end + 1, Decimal(0)
        after = _group_at(tokens, end + _linked(tokens, end), lead=False)
        if after is None or after[0] >= ceiling or after[0] == 0:
            break
        pending, end = after
    return total + pending, end


def _linked(tokens: Sequence[Token], at: int) -> int:
    """1 where "and" or a comma links on: "one thousand, two hundred"; "two thousand, three of them" is two numbers."""
    if _is(tokens, at, "and"):
        return 1
    after = _group_at(tokens, at + 1, lead=False) if _is(tokens, at, ",") else None
    return int(after is not None and (after[0] >= 100 or _scale_follows(tokens, after[1])))


def _is(tokens: Sequence[Token], at: int, word: str) -> bool:
    return at < len(tokens) and tokens[at].text == word


def _scale_follows(tokens: Sequence[Token], at: int) -> bool:
    return at < len(tokens) and (tokens[at].text in numerals.SCALES or tokens[at].text == "hundred")


def _is_denominator(word: str) -> bool:
    """ "three quarters", "five eighths"; "third" by itself is an ordinal."""
    return word in numerals.PLAIN_FRACTIONS or (word in numerals.DENOMINATORS and word.endswith("s"))


def _ordinal_follows(tokens: Sequence[Token], at: int) -> bool:
    """ "twenty-fifth", "hundred and first", "3rd": the number before is no amount."""
    linked = _is(tokens, at, "and") and at > 0 and (tokens[at - 1].text == "hundred" or _scale_follows(tokens, at - 1))
    after = at + linked
    if after >= len(tokens) or tokens[after].text not in numerals.ORDINALS:
        return False
    # "one second" is a time, "twenty-second" and "hundred and second" are ordinals.
    return tokens[after].text != "second" or tokens[after].glued or linked
