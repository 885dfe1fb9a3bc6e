"""Every amount in a stretch of talk, with its characters: sums of money, readings, counts.

What is a number but no amount is passed over: ordinals, years, times of day, model and serial numbers, "one" for a
thing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, cast

from benchnotes.language.amounts.currencies import counted_out
from benchnotes.language.amounts.measures import Measure, measure_at
from benchnotes.language.amounts.numbers import Number, number_at, word_at
from benchnotes.language.amounts.sums import Sum, sum_at
from benchnotes.language.amounts.surroundings import Around
from benchnotes.language.amounts.tokens import Token, tokens
from benchnotes.language.amounts.unit_choice import NEAR_ENOUGH, guessed, meant
from benchnotes.language.amounts.unit_words import UnitWords, phrase
from benchnotes.record.terms import Unit

FoundKind = Literal["price", "reading", "count"]
NAMES_A_NUMBER = frozenset(
    {
        "number", "model", "mark", "mk", "type", "serial", "series", "page", "figure", "room",
        "phone", "code", "version", "chapter", "channel", "ref", "invoice", "ticket",
    }
)  # fmt: skip
BEFORE_A_YEAR = frozenset(
    {"in", "since", "from", "year", "circa", "c", "before", "after", "of", "by", "late", "early", "around"}
)
CLOCK = frozenset({"o'clock", "oclock", "am", "pm", "past", "a.m", "p.m"})
COST = tuple(
    phrase(word)
    for word in (
        "cost", "costs", "price", "priced", "paid", "pay", "charge", "charged", "charges", "bill", "apiece", "labour",
        "labor", "postage", "carriage", "shipping", "delivery", "quoted", "quote", "money", "docket", "freight",
        "courier", "cheaper", "dearer", "a pop", "on the web", "online", "receipt", "each", "quid", "the post",
    )
)  # fmt: skip
NEAR_BY = 1.2
"""How near a hint must stand (about four words) to make a reading of a bare whole number."""
ARTICLES = frozenset({"a", "an"})
SINGLE_SIZES = frozenset({"inch", "mil", "thou", "millimetre", "millimeter"})
"""Unit words that are a size with no more than "a" before them."""
GOES_ON = frozenset(
    {
        "each", "apiece", "for", "and", "plus", "the", "on", "from", "but", "so", "now", "this", "a", "again", "still",
        "cold", "hot", "or", "then", "at", "with", "to", "in", "which", "that", "flat", "even", "all",
    }
)  # fmt: skip
"""Words that go on after an amount; any other word after a bare number is what it counts."""


@dataclass(frozen=True, slots=True)
class FoundAmount:
    """One amount; `start` and `end` are characters of the text."""

    start: int
    end: int
    kind: FoundKind
    value: Decimal
    unit: Unit | None = None
    """Of a reading; None where nothing tells it."""
    currency: str | None = None
    """Of a price."""


@dataclass(frozen=True, slots=True)
class _Talk:
    text: str
    said: tuple[Token, ...]
    currency: str
    words: UnitWords

    def around(self, first: int, end: int) -> Around:
        return Around("", self.text[: self.said[first].start], self.text[self.said[end - 1].end :])

    def found(self, kind: FoundKind, value: Decimal, first: int, end: int, *, of: str | None = None) -> FoundAmount:
        """`of` is the currency of a price or the unit of a reading."""
        unit = cast(Unit, of) if kind == "reading" else None
        money = of if kind == "price" else None
        return FoundAmount(self.said[first].start, self.said[end - 1].end, kind, value, unit, money)


def find_amounts(text: str, *, currency: str, words: UnitWords) -> tuple[FoundAmount, ...]:
    """The amounts of `text` in order, none overlapping. `currency` is the job's (ISO 4217)."""
    talk = _Talk(text, tokens(text), currency, words)
    found: list[FoundAmount] = []
    at = 0
    while at < len(talk.said):
        one = _found_at(talk, at)
        if isinstance(one, FoundAmount):
            found.append(one)
            at = next((i for i in range(at, len(talk.said)) if talk.said[i].start >= one.end), len(talk.said))
        else:
            at = one
    return tuple(found)


def _found_at(talk: _Talk, at: int) -> FoundAmount | int:
    """The amount that begins at token `at`, or the token to go on from."""
    said, words = talk.said, talk.words
    number = number_at(said, at)
    if number is None and _belongs_to_a_name(said, at):
        return at + 1
    if number is not None and _no_amount(said, number):
        return max(number.end, at + 1)
    measure, price = measure_at(said, at, words), sum_at(said, at, words)
    if (
        price is not None
        and price.money is not None
        and _is_price(talk, price)
        and not _is_measure(talk, measure, price)
    ):
        code = price.money.currency(talk.currency)
        return talk.found("price", _amount(price, code, words), at, price.end, of=code)
    if measure is not None and measure.meanings and _worth_finding(said, measure):
        meaning = meant(measure.meanings, talk.around(at, measure.end), words, talk.currency)
        return talk.found("reading", measure.value * meaning.times, at, measure.end, of=meaning.symbol)
    bare = _bare(talk, number, price) if number is not None else None
    return bare or max(number.end if number else 0, at + 1)


def _is_price(talk: _Talk, price: Sum) -> bool:
    """Money is named; "a real bear" and "every cent" are no money."""
    money = price.money
    if money is None:
        return False
    numbered = number_at(talk.said, price.first) is not None or talk.said[price.end - 1].kind != "word"
    if numbered or price.amount != money.times:
        return True
    article = word_at(talk.said, price.first) in ARTICLES
    return talk.currency in money.currencies and (article or money.times > 1)


def _is_measure(talk: _Talk, measure: Measure | None, price: Sum) -> bool:
    """ "forty pounds" on a gauge: a unit that is money too, with its own words near."""
    if measure is None or not measure.meanings or price.end > measure.end:
        return False
    around = talk.around(measure.first, measure.end)
    near = max((around.nearness(meaning.near) for meaning in measure.meanings), default=0.0)
    foreign = price.money is not None and talk.currency not in price.money.currencies
    return near > NEAR_ENOUGH or (foreign and near > 0) or measure.end > price.end


def _amount(price: Sum, currency: str, words: UnitWords) -> Decimal:
    in_hundreds = price.in_hundreds is not None and currency in words.hundreds_said_in_two
    amount = price.in_hundreds if in_hundreds and price.in_hundreds is not None else price.amount
    return counted_out(amount, currency)


def _worth_finding(said: Sequence[Token], measure: Measure) -> bool:
    """ "an inch" and "a mil and a half" are sizes; "a second", "a bar", "a meter" are mostly talk."""
    single = measure.number is None and not measure.value % 1 and said[measure.first].kind == "word"
    return measure.thread or not single or said[measure.end - 1].text in SINGLE_SIZES


def _bare(talk: _Talk, number: Number, price: Sum | None) -> FoundAmount | None:
    """A number alone: inches where eighths are said, a price or a reading as the talk around it tells, else a count."""
    first, end = number.first, number.end
    if number.bottom in {8, 16, 32, 64}:
        return talk.found("reading", number.value, first, end, of="in")
    around = talk.around(first, end)
    cost = around.nearness(COST)
    hinted = max((around.nearness(hint.words) for hint in talk.words.hints), default=0.0)
    measure = Measure(number.value, first, end, (), number)
    unit = guessed(measure, around, talk.words, talk.currency) if _may_measure(talk.said, number) else None
    if price is not None and _is_bare_price(talk.said, number, cost, hinted if unit is not None else 0.0):
        return talk.found("price", _amount(price, talk.currency, talk.words), first, end, of=talk.currency)
    if unit is not None and (number.form == "decimal" or hinted > max(cost, NEAR_BY)):
        return talk.found("reading", number.value * unit.times, first, end, of=unit.symbol)
    if number.form == "decimal" and not number.figures:
        return talk.found("reading", number.value, first, end)
    counted = number.form in {"whole", "counted"} and number.pair is None and 1 < number.value < 1000
    return talk.found("count", number.value, first, end) if counted else None


def _is_bare_price(said: Sequence[Token], number: Number, cost: float, hinted: float) -> bool:
    """ "four ninety-nine" is one without more said; "5.90" and "eleven" where money is talked of rather than sizes."""
    if number.pair is not None:
        return True
    return _looks_like_money(said, number, cost) and cost >= hinted


def _may_measure(said: Sequence[Token], number: Number) -> bool:
    """ "two nuts" counts, "down to 71." and "nought point two" measure: no plain word follows, or parts are said."""
    return number.form in {"decimal", "mixed"} or number.value >= 1000 or _stands_alone(said, number)


def _looks_like_money(said: Sequence[Token], number: Number, cost: float) -> bool:
    if _in_coins(said, number):
        return True
    return cost > NEAR_ENOUGH and number.value > 1 and number.form in {"whole", "mixed"} and _stands_alone(said, number)


def _in_coins(said: Sequence[Token], number: Number) -> bool:
    """ "four ninety-nine", "5.90": two runs, or two decimals in figures."""
    written = said[number.first].text
    two_decimals = number.figures and number.form == "decimal" and written[-3:-2] in {".", ","}
    return number.pair is not None or (two_decimals and number.value >= 1)


def _stands_alone(said: Sequence[Token], number: Number) -> bool:
    follows = word_at(said, number.end)
    return not follows or not follows[0].isalnum() or follows in GOES_ON


def _no_amount(said: Sequence[Token], number: Number) -> bool:
    return (
        _belongs_to_a_name(said, number.first)
        or _is_year(said, number)
        or _is_clock(said, number)
        or _is_code(said, number)
    )


def _belongs_to_a_name(said: Sequence[Token], at: int) -> bool:
    """ "No. 4", "model 80", "mark two"."""
    dotted = word_at(said, at - 1) in {".", ":"}
    word = word_at(said, at - 2 if dotted else at - 1)
    return word in {"no", "nr"} if dotted else word in NAMES_A_NUMBER


def _is_year(said: Sequence[Token], number: Number) -> bool:
    plain = number.form == "whole" and 1800 <= number.value < 2100 and number.end - number.first <= 4
    before = word_at(said, number.first - 1)
    if number.figures:
        return plain and "," not in said[number.first].text and before in BEFORE_A_YEAR
    return plain and number.pair is not None and before in BEFORE_A_YEAR


def _is_clock(said: Sequence[Token], number: Number) -> bool:
    """ "7:30", "half past two", "quarter to six", "nine o'clock"."""
    after, before = word_at(said, number.end), word_at(said, number.first - 1)
    colon = (after == ":" and number.end + 1 < len(said) and said[number.end + 1].glued) or (
        before == ":" and said[number.first].glued
    )
    to_the_hour = after == "to" and number.form == "fraction" and number_at(said, number.end + 1) is not None
    return colon or after in CLOCK or before == "past" or to_the_hour


def _is_code(said: Sequence[Token], number: Number) -> bool:
    """Letters glued before figures ("B15"), figures of six digits or more, figures cut by dashes."""
    first = said[number.first]
    if first.kind != "figure":
        return False
    last = number.end - 1
    glued_after = number.end < len(said) and said[number.end].glued and said[number.end].text in {"-", "/", "."}
    dashed = glued_after and number.end + 1 < len(said) and said[number.end + 1].glued
    letters_before = number.first > 0 and first.glued and said[number.first - 1].kind == "word"
    return letters_before or dashed or (len(first.text) > 5 and first.text.isdigit() and last == number.first)
