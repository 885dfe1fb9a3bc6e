"""What a known price's words say: the known record holds the values, the words say which one, or that it is another."""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal

from benchnotes.record.money import Money

_ONES = """nought one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen
seventeen eighteen nineteen"""
_ROUND = "twenty thirty forty fifty sixty seventy eighty ninety"
_SMALL = {word: number for number, word in enumerate(_ONES.split())} | {"a": 1, "an": 1}
_TENS = {word: 10 * number for number, word in enumerate(_ROUND.split(), start=2)}
_SAME, _NEAR = Decimal("0.02"), Decimal("0.5")
"""Nearer than the first, the words were misread here; farther than the second, too."""


def known_price(words: str, known: Sequence[Decimal], currency: str) -> Money:
    """The known price that the words say; else what they say, if it is like a known one; else the nearest known one."""
    readings = _readings(words)
    for price in known:
        if price in readings:
            return Money(price, currency)
    if known and readings:
        said = min(readings, key=lambda r: min(abs(r - k) for k in known))
        nearest = min(known, key=lambda k: abs(said - k))
        apart = abs(said - nearest) / nearest
        return Money(said if _SAME < apart <= _NEAR else nearest, currency)
    return Money(known[0] if known else (readings or [Decimal(0)])[0], currency)


def _readings(words: str) -> list[Decimal]:
    """Every value that the numbers in the words may have: "three fifty" is 3.50, or 350."""
    numbers = _numbers(words)
    halves = Decimal("0.5") if "half" in words else Decimal("0.25") if "quarter" in words else Decimal(0)
    if not numbers:
        return [halves] if halves else []
    first, rest = numbers[0], numbers[1:]
    found = [first + halves]
    if rest:
        found += [first + rest[0] / 100, first * 100 + rest[0], first + rest[0], first + rest[0] / 10]
    if re.search(r"\bcents?\b|\bpence\b|\d+p\b", words):
        found.append(first / 100)
    return found


def _numbers(words: str) -> list[Decimal]:
    found: list[Decimal] = []
    for token in re.findall(r"\d+(?:[.,]\d+)?|[a-z]+", words.lower()):
        value = _value(token)
        if token in ("hundred", "thousand"):
            times = 100 if token == "hundred" else 1000
            found = [*found[:-1], (found[-1] if found else Decimal(1)) * times]
        elif value is not None and found and _adds(found[-1], value, words.lower()):
            found[-1] += value
        elif value is not None and not (token in ("a", "an") and found):
            found.append(value)
    return found


def _value(token: str) -> Decimal | None:
    if token[0].isdigit():
        return Decimal(token.replace(",", ".") if len(token.partition(",")[2]) != 3 else token.replace(",", ""))
    number = _SMALL.get(token, _TENS.get(token))
    return None if number is None else Decimal(number)


def _adds(before: Decimal, value: Decimal, words: str) -> bool:
    if before >= 100 and before % 100 == 0 and "hundred" in words + "thousand":
        return value < 100
    return before in [Decimal(t) for t in _TENS.values()] and 0 < value < 10
