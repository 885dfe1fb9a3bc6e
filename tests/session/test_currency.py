"""Nobody named a currency: the job counts in the one that its prices were said in."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

import pytest

from benchnotes.record.heard import Evidence
from benchnotes.record.money import Money
from benchnotes.record.statements import Charges, Prices, Statement
from benchnotes.session.currency import Reading, currency_told

WORDS = {"quid": ("GBP",), "euros": ("EUR",), "dollars": ("USD", "AUD"), "": ()}
"""As units.toml has it: a word of several currencies is the job's own where that is among them, else the first."""


def talk(*sums: str) -> Reading:
    """A talk in which each sum was said with that word of money; "" is a bare number."""

    def reading(*, currency: str) -> Sequence[Statement]:
        codes = [WORDS[word] for word in sums]
        chosen = [currency if not named or currency in named else named[0] for named in codes]
        place = {"order": 0, "evidence": Evidence(1, 0, 1, ""), "words": ""}
        return [
            Prices(**place, price=Money(Decimal(4), code))  # type: ignore[arg-type]
            if at % 2
            else Charges(**place, kind="postage", price=Money(Decimal(4), code))  # type: ignore[arg-type]
            for at, code in enumerate(chosen)
        ]

    return reading


@pytest.mark.parametrize(
    ("said", "usual", "expected"),
    [
        (["quid", "", "", ""], "EUR", "GBP"),
        (["", ""], "EUR", "EUR"),
        ([], "AUD", "AUD"),
        (["dollars"], "AUD", "AUD"),
        (["dollars"], "EUR", "USD"),
        (["euros", "euros", "quid"], "EUR", "EUR"),
        (["euros", "quid", "quid"], "EUR", "GBP"),
    ],
)
def test_the_talk_tells_its_currency(said: list[str], usual: str, expected: str) -> None:
    assert currency_told(talk(*said), usual) == expected
