"""Which unit is meant: among the meanings of a unit word, or for a bare number by the talk around it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal

from benchnotes.language.amounts.approximate import taken_back
from benchnotes.language.amounts.measures import Measure, measure_at
from benchnotes.language.amounts.numbers import Number
from benchnotes.language.amounts.numerals import INCH_DENOMINATORS
from benchnotes.language.amounts.surroundings import SENTENCE_ENDS, Around, weight
from benchnotes.language.amounts.tokens import Token
from benchnotes.language.amounts.unit_words import UnitMeaning, UnitWords
from benchnotes.record.terms import Unit

FAMILIES: tuple[tuple[Unit, ...], ...] = (("mm", "in", "thou"), ("bar", "psi", "kPa"), ("C", "F"))
"""Units that measure the same thing: whichever the repairer named last, however long ago, goes on."""
STEPS: tuple[tuple[Unit, ...], ...] = (("A", "mA"), ("g", "kg"), ("ml", "l"))
"""Units of one thing a thousand apart: the one named goes on only where it was named close by."""
CELSIUS = (("celsius",), ("centigrade",))
CLOSE_BY = 1.0
NEAR_ENOUGH = 0.9
"""A rarer meaning of a unit word needs its own words about seven words away at most."""
OUT_OF_RANGE = 0.3
"""What a guess still weighs when the number lies outside the usual range of its unit."""
RARE: frozenset[Unit] = frozenset({"s", "min", "h", "%"})
"""Said in passing everywhere; they speak less for a bare number."""
OWN_COUNTRY = 1.2
"""A hint for the job's own country goes before a general one."""
SAME_BREATH = 2.4
CORRECTED = 4.0
"""A unit in the same sentence, or in what is just being corrected, speaks that much louder. Chosen on half of the
narrations."""


def meant(meanings: Sequence[UnitMeaning], around: Around, words: UnitWords, currency: str) -> UnitMeaning:
    """The meaning whose own words stand nearest; the usual one where none stand near. Degrees follow the country."""
    if len(meanings) == 1:
        return _by_country(meanings[0], around, words, currency)
    usual = next((meaning for meaning in meanings if not meaning.near), meanings[0])
    scores = {meaning: around.nearness(meaning.near) for meaning in meanings if meaning.near}
    hinted = max((around.nearness(h.words) for h in words.hints if h.symbol == usual.symbol), default=0.0)
    best = max(scores, key=lambda meaning: scores[meaning])
    if scores[best] > max(hinted, 0.0 if usual.near else NEAR_ENOUGH):
        return best
    return usual


def guessed(measure: Measure, around: Around, words: UnitWords, currency: str) -> UnitMeaning | None:
    """The unit of a bare number: by its form, by units said beside it, by what the talk says is measured."""
    by_form = _by_form(measure.number)
    mentions = _mentions(around, words, currency)
    if measure.number is not None and measure.number.form == "decimal":
        # "twenty-four point two" is nobody's inches or thou, unless just now they were said.
        mentions = {symbol: near for symbol, near in mentions.items() if symbol not in {"in", "thou"} or near > 1.5}
    scores = _hinted(measure.value, around, words, currency)
    for symbol, score in mentions.items():
        scores[symbol] = scores.get(symbol, 0.0) + score
    scores = {symbol: score * _usual(measure.value, symbol, words) for symbol, score in scores.items()}
    size = _size_before(around.left, words)
    if size is not None:
        return size
    if by_form == "thou":
        return UnitMeaning("thou", Decimal(1000), ())
    if by_form == "in" and mentions.get("mm", 0.0) < 2.0:
        return UnitMeaning("in", Decimal(1), ())
    if by_form == "mm" and mentions.get("thou", 0.0) <= mentions.get("mm", 0.0):
        return UnitMeaning("mm", Decimal(1), ())
    if not scores:
        return None
    return UnitMeaning(_best(scores, mentions, words, currency), Decimal(1), ())


def _size_before(left: Sequence[Token], words: UnitWords) -> UnitMeaning | None:
    """The unit of the first number of a size, where the amount is a further one: "M6 by", "half by", "8 inches by"."""
    if not left or left[-1].text not in {"by", "x", "×"}:
        return None
    for at in range(max(0, len(left) - 7), len(left) - 1):
        first = measure_at(left, at, words)
        if first is not None and first.end == len(left) - 1:
            if first.meanings:
                return first.meanings[0]
            pure = first.number is not None and first.number.bottom in INCH_DENOMINATORS
            return UnitMeaning("in" if pure else "mm", Decimal(1), ())
    return None


def _usual(value: Decimal, symbol: Unit, words: UnitWords) -> float:
    low, high = words.usual.get(symbol, (Decimal("-Infinity"), Decimal("Infinity")))
    return 1.0 if low <= value <= high or not value else OUT_OF_RANGE


def _by_country(meaning: UnitMeaning, around: Around, words: UnitWords, currency: str) -> UnitMeaning:
    if not meaning.by_country or currency not in words.fahrenheit or around.nearness(CELSIUS):
        return meaning
    return UnitMeaning("F", meaning.times, ())


def _by_form(number: Number | None) -> Unit | None:
    """ "three eighths" is inches, "nine hundredths" is of a millimetre, "three thousandths" is thou."""
    if number is None or number.bottom is None:
        return None
    if number.bottom == 1000:
        return "thou"
    if number.bottom in {10, 100}:
        return "mm"
    pure = number.form == "fraction" and number.bottom in INCH_DENOMINATORS
    return "in" if pure or number.bottom in {8, 16, 32, 64} else None


def _best(scores: Mapping[Unit, float], mentions: Mapping[Unit, float], words: UnitWords, currency: str) -> Unit:
    kin = (*FAMILIES, *STEPS)
    alone = tuple((symbol,) for symbol in scores if not any(symbol in family for family in kin))
    all_scores: dict[tuple[Unit, ...], float] = {
        family: sum(scores.get(symbol, 0.0) for symbol in family) for family in (*kin, *alone)
    }
    family = max(all_scores, key=lambda one: all_scores[one])
    least = CLOSE_BY if family in STEPS else 0.0
    said = [symbol for symbol in family if mentions.get(symbol, 0.0) > least]
    if said:
        return max(said, key=lambda symbol: mentions[symbol])
    best = max(family, key=lambda symbol: scores.get(symbol, 0.0))
    return "F" if best == "C" and currency in words.fahrenheit else best


def _hinted(value: Decimal, around: Around, words: UnitWords, currency: str) -> dict[Unit, float]:
    """How near the words stand that tell of each unit; where the thing's own name tells, nothing else is asked."""
    hints = [hint for hint in words.hints if not hint.currencies or currency in hint.currencies]
    named = [hint for hint in hints if around.names(hint.words) and _usual(value, hint.symbol, words) == 1]
    scores: dict[Unit, float] = {}
    for hint in named or hints:
        near = around.nearness(hint.words) * (OWN_COUNTRY if hint.currencies else 1.0)
        if near:
            scores[hint.symbol] = max(scores.get(hint.symbol, 0.0), near)
    return scores


def _mentions(around: Around, words: UnitWords, currency: str) -> dict[Unit, float]:
    """How near each unit is said, of another number or by itself ("meter on ohms"), before or after."""
    found: dict[Unit, float] = {}
    for side, steps in ((around.left, around.left_steps), (around.right, around.right_steps)):
        for symbol, first, end in _units_said(side, words):
            left = side is around.left
            between = side[end:] if left else side[:first]
            score = weight(steps[end - 1] if left else steps[first]) * _loudness(between)
            # What is said afterwards of another number is mostly another thing; a unit alone is an afterthought.
            score *= 1.0 if left or end - first == 1 else 0.5
            unit: Unit = "F" if symbol == "C" and currency in words.fahrenheit else symbol
            found[unit] = max(found.get(unit, 0.0), score * (0.4 if unit in RARE else 1.0))
    return found


def _units_said(side: Sequence[Token], words: UnitWords) -> Iterator[tuple[Unit, int, int]]:
    """Every unit in `side` with its first token and the token after it."""
    at = 0
    while at < len(side):
        measure = measure_at(side, at, words)
        if measure is not None and measure.meanings:
            yield measure.meanings[0].symbol, at, measure.end
        elif measure is not None and _is_inches(measure.number):
            yield "in", at, measure.end
        elif measure is None and (unit := words.unit_named_alone(side, at)) is not None:
            yield unit, at, at + 1
        at = max(measure.end if measure is not None else 0, at + 1)


def _is_inches(number: Number | None) -> bool:
    return number is not None and number.bottom in {8, 16, 32, 64}


def _loudness(between: Sequence[Token]) -> float:
    """A unit in the same sentence speaks louder, and loudest where only a slip of the tongue lies between."""
    if taken_back(between):
        return CORRECTED
    return 1.0 if any(token.text in SENTENCE_ENDS for token in between) else SAME_BREATH
