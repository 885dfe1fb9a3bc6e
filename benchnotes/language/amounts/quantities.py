"""How many, and how many hours: counts of parts, and time put down for labour."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from benchnotes.language.amounts.approximate import taken_back
from benchnotes.language.amounts.measures import Measure, measure_at
from benchnotes.language.amounts.numbers import Number, number_at, word_at
from benchnotes.language.amounts.tokens import Token, tokens
from benchnotes.language.amounts.unit_words import UnitWords

ONE_THING = frozenset({"set", "kit", "pack", "box", "bag", "roll", "reel", "card", "strip", "length", "sheet", "tube"})
"""A set of six is one thing bought."""
BOTH = {"both": Decimal(2), "pair": Decimal(2), "couple": Decimal(2), "single": Decimal(1)}
LEAD = 8
"""How many words before the text may belong to it."""
HOURS_OF = {"s": Decimal(1) / 3600, "min": Decimal(1) / 60, "h": Decimal(1)}


def read_quantity(text: str) -> Decimal | None:
    """How many: "four of them", "a pair", "half a dozen"; "a set of six" is one. None where no count is said."""
    said = tokens(text)
    if any(token.text.removesuffix("s") in ONE_THING and _one_before(said, at) for at, token in enumerate(said)):
        return Decimal(1)
    for at, token in enumerate(said):
        number = number_at(said, at)
        if number is not None and number.form in {"whole", "counted"} and number.value > 0:
            return number.value
        if number is not None:
            return number.value if number.form == "mixed" else None
        if token.text in BOTH:
            return BOTH[token.text]
    return Decimal(1) if word_at(said, 0) in {"a", "an"} else None


def _one_before(said: Sequence[Token], at: int) -> bool:
    """ "a set of six", "the kit", "seal kit": no number before the word for the set."""
    number = next((found for start in range(at) if (found := number_at(said, start)) is not None), None)
    return number is None or number.value == 1


def read_hours(text: str, *, words: UnitWords, before: str = "") -> Decimal | None:
    """Hours said in `text`: "an hour and a half", "two hours 20", "forty minutes", "three quarters" of an hour.

    The first time said that nothing takes back; "forty an hour" is a rate. `before` is the talk before it: captions
    break anywhere ("two" / "hours 70 bucks"). None where no time is said.
    """
    lead = tokens(before)[-LEAD:]
    said = (*lead, *tokens(text))
    for start in (taken_back(said), 0):
        found = _hours_from(said, start, len(lead), words)
        if found is not None:
            return found
    return None


def _hours_from(said: Sequence[Token], at: int, text_from: int, words: UnitWords) -> Decimal | None:
    part: Decimal | None = None
    amended = at + 4 if at else 0
    while at < len(said):
        measure = measure_at(said, at, words)
        number = measure.number if measure is not None else None
        end = measure.end if measure is not None else 0
        if measure is not None and end > text_from and _is_time(measure) and not _is_rate(said, measure, words):
            return round(_with_minutes(said, measure, words), 4).normalize() + 0
        if part is None and number is not None and end > text_from and _may_be_hours(said, number, words, at < amended):
            part = number.value
        at = max(end, at + 1)
    return part


def _may_be_hours(said: Sequence[Token], number: Number, words: UnitWords, amends: bool) -> bool:
    """A fraction ("three quarters"), or a number that amends the hours before it ("no, I'm lying, two")."""
    if number.form in {"fraction", "mixed"}:
        return True
    money = words.money_at(said, number.end) is not None
    return amends and number.form == "whole" and not number.pair and 0 < number.value <= 24 and not money


def _is_time(measure: Measure) -> bool:
    return bool(measure.meanings) and measure.meanings[0].symbol in HOURS_OF


def _is_rate(said: Sequence[Token], measure: Measure, words: UnitWords) -> bool:
    """ "ninety an hour", "forty quid an hour": the article stands right after a number or money."""
    if word_at(said, measure.first) not in {"a", "an"} or not measure.first:
        return False
    before = measure.first - 1
    return words.money_at(said, before) is not None or number_at(said, before) is not None


def _with_minutes(said: Sequence[Token], measure: Measure, words: UnitWords) -> Decimal:
    """Adds "20", "and twenty minutes" to whole hours."""
    symbol = measure.meanings[0].symbol
    hours = measure.value * measure.meanings[0].times * HOURS_OF[symbol]
    if symbol != "h":
        return hours
    minutes = measure_at(said, measure.end + (word_at(said, measure.end) == "and"), words)
    if minutes is None or minutes.value >= 60:
        return hours
    said_so = bool(minutes.meanings) and minutes.meanings[0].symbol == "min"
    follows = minutes.number is not None and minutes.first == measure.end and minutes.number.form == "whole"
    money = words.money_at(said, minutes.end) is not None
    bare = not minutes.meanings and follows and minutes.value >= 5 and not money
    return hours + minutes.value / 60 if said_so or bare else hours
