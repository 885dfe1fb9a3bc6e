"""A measured value as said -> value and unit as the record writes them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from benchnotes.language.amounts.approximate import RANGE_WORDS, said_about, taken_back
from benchnotes.language.amounts.measures import Measure, measure_at
from benchnotes.language.amounts.numbers import word_at
from benchnotes.language.amounts.surroundings import Around
from benchnotes.language.amounts.tokens import Token, tokens
from benchnotes.language.amounts.unit_choice import guessed, meant
from benchnotes.language.amounts.unit_words import UnitMeaning, UnitWords
from benchnotes.record.terms import Unit


@dataclass(frozen=True, slots=True)
class SpokenReading:
    """A measured, gauged or set value."""

    value: Decimal
    unit: Unit
    about: bool = False
    unit_said: bool = True
    """False where the unit was worked out from the talk around the number."""
    beside: tuple[Decimal, ...] = ()
    """Further numbers of a size, in the same unit: 1 in "M6 by 1"."""
    upper: Decimal | None = None
    """The upper end of a range; `value` is then the lower."""


def read_reading(
    text: str,
    *,
    words: UnitWords,
    what: str = "",
    before: str = "",
    after: str = "",
    currency: str = "",
    like: Unit | None = None,
) -> SpokenReading | None:
    """Reads "three and a half mil" as 3.5 mm.

    `text` is the amount letter by letter; `before` and `after` the talk around it (they may run over several
    utterances, one a line), `what` the name of the thing measured, `currency` the job's (it tells the country),
    `like` the unit of an earlier reading of the same thing. None where no number or no unit can be told.
    """
    said = tokens(text)
    found = _measure_in(said, words)
    if found is None:
        return None
    around = Around(what, before, after)
    meaning = _meaning(found, around, words, currency, like)
    if meaning is None:
        return None
    value = _plain(found.value * meaning.times)
    return SpokenReading(
        value=value,
        unit=meaning.symbol,
        about=found.upper is not None or said_about(said, around.left, around.right),
        unit_said=bool(found.meanings),
        beside=tuple(_plain(side * meaning.times) for side in found.beside),
        upper=None if found.upper is None else _plain(found.upper * meaning.times),
    )


def _meaning(found: Measure, around: Around, words: UnitWords, currency: str, like: Unit | None) -> UnitMeaning | None:
    if found.meanings:
        return meant(found.meanings, around, words, currency)
    follows = words.unit_at(around.right, 0)
    if follows is not None and not around.after[:1].isalnum():
        return meant(follows[0], around, words, currency)
    if like is not None:
        return UnitMeaning(like, Decimal(1), ())
    by_size = UnitMeaning("mm", Decimal(1), ()) if found.beside else None
    return guessed(found, around, words, currency) or by_size


def _measure_in(said: Sequence[Token], words: UnitWords) -> Measure | None:
    """The first measure with a unit after the last words that take something back; else the first bare number."""
    back = taken_back(said)
    return _measure_from(said, back, words) or (_measure_from(said, 0, words) if back else None)


def _measure_from(said: Sequence[Token], at: int, words: UnitWords) -> Measure | None:
    bare: Measure | None = None
    while at < len(said):
        found = measure_at(said, at, words)
        if bare is not None and found is not None and _is_range(said, bare, found):
            return replace(found, value=bare.value, first=bare.first, upper=found.value)
        if found is not None and found.meanings:
            return found
        bare = bare or found
        at = found.end if found is not None else at + 1
    return bare


def _is_range(said: Sequence[Token], lower: Measure, upper: Measure) -> bool:
    """ "six to eight bar", "between six and eight"."""
    joined = upper.first == lower.end + 1 and word_at(said, lower.end) in RANGE_WORDS
    return joined and upper.value > lower.value


def _plain(value: Decimal) -> Decimal:
    """Without idle zeros and without an exponent: 3.50 is 3.5, 2.1E+3 is 2100."""
    short = value.normalize()
    return short.quantize(Decimal(1)) if short == short.to_integral_value() else short
