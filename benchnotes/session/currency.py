"""Which currency a job is in where nobody named one: the one its prices were said in, else the usual one here."""

from __future__ import annotations

import locale
from collections import Counter
from collections.abc import Sequence
from contextlib import suppress
from typing import Final, Protocol

from benchnotes.record.currencies import MINOR_DIGITS
from benchnotes.record.money import Money
from benchnotes.record.statements import Charges, Prices, Statement

LAST_RESORT: Final = "EUR"
NO_CURRENCY: Final = "XXX"
"""ISO 4217: "no currency". A price that still has another was said with its currency."""


class Reading(Protocol):
    """Reads one talk, counting in the given currency."""

    def __call__(self, *, currency: str) -> Sequence[Statement]: ...


def currency_told(reading: Reading, usual: str) -> str:
    """The currency that most prices were said in ("four quid": GBP); `usual` where none was named, and for a word
    that several share ("dollars")."""
    bare, counted = _sums(reading(currency=NO_CURRENCY)), _sums(reading(currency=usual))
    named = [money.currency for money, plain in zip(counted, bare, strict=False) if plain.currency != NO_CURRENCY]
    return Counter(named).most_common(1)[0][0] if named else usual


def usual_currency() -> str:
    """The one that the user's locale writes money in; EUR where the locale has none (as "C" has)."""
    before = locale.setlocale(locale.LC_MONETARY)
    with suppress(locale.Error):
        locale.setlocale(locale.LC_MONETARY, "")
    code = str(locale.localeconv()["int_curr_symbol"]).strip()
    locale.setlocale(locale.LC_MONETARY, before)
    return code if code in MINOR_DIGITS else LAST_RESORT


def _sums(statements: Sequence[Statement]) -> list[Money]:
    return [said.price for said in statements if isinstance(said, (Prices, Charges)) and said.price is not None]
