"""A price as said -> Money, how sure it was meant, and what it is of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchnotes.language.amounts.approximate import RANGE_WORDS, Of, of_what, said_about, taken_back
from benchnotes.language.amounts.currencies import counted_out
from benchnotes.language.amounts.numbers import word_at
from benchnotes.language.amounts.sums import Sum, sum_at
from benchnotes.language.amounts.tokens import Token, tokens
from benchnotes.language.amounts.unit_words import UnitWords
from benchnotes.record.money import Money
from benchnotes.record.terms import Basis, ChargeKind

BY_THE_HOUR: frozenset[ChargeKind] = frozenset({"labour", "outside_work"})
"""Charges that come in hundreds: "two seventy" for a day at the bench is 270."""


@dataclass(frozen=True, slots=True)
class SpokenPrice:
    """Money as said."""

    amount: Money
    basis: Basis
    of: Of | None = None
    """What it is the price of, where that was said: each, the pair, all of them."""
    currency_said: bool = False
    upper: Money | None = None
    """The dearer end of a range ("thirty to forty"); `amount` is the cheaper."""

    @property
    def each(self) -> bool | None:
        """True for each, False for a pair or the lot, None where nobody said."""
        return None if self.of is None else self.of == "each"


def read_price(
    text: str,
    *,
    currency: str,
    words: UnitWords,
    before: str = "",
    after: str = "",
    kind: ChargeKind | None = None,
    like: Decimal | None = None,
) -> SpokenPrice | None:
    """Reads "4 pounds 50" as 4.50 GBP.

    `currency` is the job's (ISO 4217), taken where only a number or "dollars" is said; `kind` that of a charge,
    None for the price of a part; `like` an earlier price of the same thing: "six fifty" is read as near to it as
    may be. None where no number was said.
    """
    said = tokens(text)
    found = _sum_in(said, words)
    if found is None:
        return None
    left, right = tokens(before), tokens(after)
    code = found.money.currency(currency) if found.money is not None else currency
    amount = _settled(found, code, words, kind, like)
    upper = _upper(said, found, words)
    of = of_what(said, right)
    return SpokenPrice(
        amount=Money(counted_out(amount, code), code),
        basis="about" if upper is not None or said_about(said, left, right) else "exact",
        of=of,
        currency_said=found.money is not None,
        upper=None if upper is None else Money(counted_out(_settled(upper, code, words, kind, like), code), code),
    )


def _settled(found: Sum, currency: str, words: UnitWords, kind: ChargeKind | None, like: Decimal | None) -> Decimal:
    """ "six fifty": 650 where the unit of money is small or hours are paid, else 6.50; nearest an earlier price.

    "fifty-five" after "fifty cents each" is cents too.
    """
    hundreds = found.in_hundreds
    if like and (hundreds is not None or (found.money is None and like < 1)):
        meanings = [found.amount, found.amount / 100 if hundreds is None else hundreds]
        return min(meanings, key=lambda amount: max(amount / like, like / amount) if amount else Decimal("Infinity"))
    if hundreds is None:
        return found.amount
    small_unit = currency in words.hundreds_said_in_two
    return hundreds if small_unit or (kind in BY_THE_HOUR and found.amount < 10) else found.amount


def _sum_in(said: Sequence[Token], words: UnitWords) -> Sum | None:
    """The first sum with a money word after the last words that take something back; else the first number."""
    back = taken_back(said)
    return _sum_from(said, back, words) or (_sum_from(said, 0, words) if back else None)


def _sum_from(said: Sequence[Token], at: int, words: UnitWords) -> Sum | None:
    bare: Sum | None = None
    while at < len(said):
        found = sum_at(said, at, words)
        if found is not None and found.money is not None:
            if bare is not None and _upper(said, bare, words) is not None:
                return Sum(bare.amount, bare.first, bare.end, found.money, bare.in_hundreds)
            return found
        bare = bare or found
        at = max(found.end if found is not None else 0, at + 1)
    return bare


def _upper(said: Sequence[Token], found: Sum, words: UnitWords) -> Sum | None:
    """The second number of "thirty to forty", "between six and eight quid"."""
    if word_at(said, found.end) not in RANGE_WORDS:
        return None
    upper = sum_at(said, found.end + 1, words)
    return upper if upper is not None and upper.amount > found.amount else None
