"""The grammar of a sum of money: numbers and money words in every order in which they are said.

sum   = [sign] number ["k"] [word] [minor] | ["a"] word [minor | fraction tail] | number minor word
minor = two digits [minor word]            "4 pounds 50", "a dollar fifty", "eight and twenty"
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from benchnotes.language.amounts.fractions import fraction_tail_at
from benchnotes.language.amounts.numbers import Number, number_at, word_at
from benchnotes.language.amounts.tokens import Token
from benchnotes.language.amounts.unit_words import MoneyMeaning, UnitWords
from benchnotes.language.amounts.wholes import two_digits_at

ONE = Decimal(1)


@dataclass(frozen=True, slots=True)
class Sum:
    """Money as said, over tokens `first` to `end`; `money` is None where only a number was said."""

    amount: Decimal
    first: int
    end: int
    money: MoneyMeaning | None = None
    in_hundreds: Decimal | None = None
    """What a bare "six fifty" is where the unit of money is small: 650. `amount` is then 6.50."""


def sum_at(said: Sequence[Token], at: int, words: UnitWords) -> Sum | None:
    """The sum that begins at token `at`; a bare number is one too."""
    return _signed_at(said, at, words) or _worded_at(said, at, words) or _numbered_at(said, at, words)


def _signed_at(said: Sequence[Token], at: int, words: UnitWords) -> Sum | None:
    """ "£4.50", "R 12", "€14,50", "$1.2k"."""
    sign = words.money_at(said, at)
    if sign is None or sign[1] >= len(said) or said[sign[1]].kind != "figure" or _named_in_full(said, at):
        return None
    number = number_at(said, sign[1])
    if number is None:
        return None
    times, end = _thousands(said, number.end)
    if number.pair is not None:  # "£4 50" written apart
        return Sum(_in_two(number), at, number.end, sign[0])
    if _thousands_apart(said, number):  # "R1 450"
        return Sum(number.value * 1000 + Decimal(said[number.end].text), at, number.end + 1, sign[0])
    return Sum(number.value * times, at, end, sign[0])


def _named_in_full(said: Sequence[Token], at: int) -> bool:
    """ "pound 40" is a word with pence after it; "£40", "R40" and "rupees 1150" are signs."""
    return said[at].kind == "word" and len(said[at].text) > 3 and not said[at].text.endswith("s")


def _thousands_apart(said: Sequence[Token], number: Number) -> bool:
    rest = said[number.end] if number.end < len(said) else None
    whole = number.form == "whole" and number.value < 1000
    return whole and rest is not None and rest.kind == "figure" and len(rest.text) == 3 and rest.text.isdigit()


def _worded_at(said: Sequence[Token], at: int, words: UnitWords) -> Sum | None:
    """ "a dollar fifty", "buck and a half", "a fiver", "a pound", "Fiver"."""
    article = word_at(said, at) in {"a", "an"}
    word = words.money_at(said, at + article)
    if word is None or said[at + article].kind != "word" or len(said[at + article].text) < 3:
        return None
    money, end = word
    tail = fraction_tail_at(said, end)
    if tail is not None:
        return Sum((1 + tail[0]) * money.times, at, tail[1], money)
    minor = _minor_at(said, end, words) if money.times == 1 else None
    if minor is not None:
        return Sum(1 + minor[0], at, minor[1], money)
    return Sum(money.times, at, end, money)


def _numbered_at(said: Sequence[Token], at: int, words: UnitWords) -> Sum | None:
    number = number_at(said, at)
    if number is None:
        return None
    times, end = _thousands(said, number.end)
    word_from = _past_softeners(said, end, number)
    word = words.money_at(said, word_from)
    if word is None:
        return _bare(said, number, times, end)
    if number.pair and word[0].times < 1:  # "a new one 80 cents": the first number is another's
        return None
    if number.pair and word[0].times == 1:  # "two twenty rand", "four fifty dollars"
        return Sum(_in_two(number), at, word[1], word[0], in_hundreds=number.value)
    return _with_word(said, replace(number, value=number.value * times), *word, words)


def _with_word(said: Sequence[Token], number: Number, money: MoneyMeaning, end: int, words: UnitWords) -> Sum:
    """A number and its word for money, with what follows: "fifty", "and fifty pence", "and a half"."""
    at, amount = number.first, number.value
    minor = _minor_at(said, end, words) if money.times == 1 and number.form == "whole" else None
    if minor is not None:
        return Sum(amount + minor[0], at, minor[1], money)
    tail = fraction_tail_at(said, end) if number.form == "whole" and word_at(said, end) == "and" else None
    if tail is not None:  # "two dollars and a half"
        return Sum((amount + tail[0]) * money.times, at, tail[1], money)
    return Sum(amount * money.times, at, end, money)


def _bare(said: Sequence[Token], number: Number, times: Decimal, end: int) -> Sum:
    if number.pair is not None:
        cents = two_digits_at(said, number.end)
        if cents is not None:  # "six seventeen fifty"
            return Sum(number.value + cents[0] / 100, number.first, cents[1])
        return Sum(_in_two(number), number.first, number.end, in_hundreds=number.value)
    minor = two_digits_at(said, end + 1) if word_at(said, end) == "and" and number.form == "whole" else None
    if minor is not None and number.value < 100 and minor[0] >= 10:  # "eight and twenty"
        return Sum(number.value + minor[0] / 100, number.first, minor[1])
    return Sum(number.value * times, number.first, end)


def _in_two(number: Number) -> Decimal:
    if number.pair is None:
        return number.value
    return number.pair[0] + number.pair[1] / 100


def _minor_at(said: Sequence[Token], at: int, words: UnitWords) -> tuple[Decimal, int] | None:
    """ "50", "fifty", "and fifty pence", "5p" after the word for the unit of money."""
    start = at + 1 if word_at(said, at) == "and" else at
    number = number_at(said, start)
    worded = words.money_at(said, number.end) if number is not None and number.form == "whole" else None
    if number is not None and worded is not None and worded[0].times < 1 and number.value < 100:
        return number.value * worded[0].times, worded[1]
    run = two_digits_at(said, start)
    # "two pounds 40 of them", "a pound ten minutes ago": what the second number counts is not seen here.
    return None if run is None or words.unit_at(said, run[1]) is not None else (run[0] / 100, run[1])


def _past_softeners(said: Sequence[Token], end: int, number: Number) -> int:
    """ "thirty-odd dollars", "half a dollar", "a couple of bucks"."""
    skipped = {"odd", "ish", "plus", "some"} | ({"a", "of"} if number.form in {"fraction", "counted"} else set())
    while word_at(said, end) in skipped:
        end += 1
    return end


def _thousands(said: Sequence[Token], end: int) -> tuple[Decimal, int]:
    """ "1.2k", "two k"."""
    return (Decimal(1000), end + 1) if word_at(said, end) == "k" else (ONE, end)
