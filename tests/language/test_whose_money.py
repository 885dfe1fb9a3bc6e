"""Which money is a charge's: that beside its words, not the hourly rate, not what a part cost."""

from __future__ import annotations

from decimal import Decimal

import pytest

from benchnotes.language.belonging.whose_money import charge_said
from benchnotes.language.marking.marker import Mark, Span
from benchnotes.record.terms import ChargeKind
from benchnotes.trades.shelf import load

WORDS = load(None).units


def charged(
    kind: ChargeKind, words: str, *texts: str, taken: str | None = None
) -> tuple[Decimal | None, Decimal | None]:
    """Amount and hours of the charge told by `words` in the first text; `taken` is the price of a part there."""
    start = texts[0].index(words)
    mark = Mark("charge", Span(0, start, start + len(words)), None, {"kind": kind}, 0.9)
    spans = [Span(0, texts[0].index(taken), texts[0].index(taken) + len(taken))] if taken else []
    told = charge_said(mark, kind, texts, spans, currency="GBP", words=WORDS)
    return (told.price.amount.amount if told.price else None), told.hours


@pytest.mark.parametrize(
    ("kind", "words", "text", "amount", "hours"),
    [
        ("labour", "Labour", "Labour, two hours, call it seventy", 70, 2),
        ("labour", "Labour", "Labour, three hours at forty, a hundred and twenty", 120, 3),
        ("labour", "Labour", "Labour, three hours at £40", 40, 3),
        ("labour", "Four hours", "Four hours on it, eighty-four", 84, 4),
        ("labour", "Labour", "Labour is £300, and fifty less for a friend", 300, None),
        ("discount", "fifty less", "Labour is £300, and fifty less for a friend", 50, None),
        ("discount", "knock", "I'll knock ten off that", 10, None),
        ("outside_work", "He charged", "He charged twelve hundred", 1200, None),
        ("postage", "Post", "Post on top of that", None, None),
    ],
)
def test_beside_its_words(kind: ChargeKind, words: str, text: str, amount: int | None, hours: int | None) -> None:
    expected = tuple(None if number is None else Decimal(number) for number in (amount, hours))
    assert charged(kind, words, text) == expected


def test_the_price_of_a_part_is_left_to_the_part() -> None:
    assert charged("postage", "post", "Nineteen pounds and four pounds post", taken="Nineteen pounds")[0] == 4


def test_captions_break_anywhere() -> None:
    assert charged("labour", "labour", "labour that's two hours", "so eighty quid all in") == (Decimal(80), Decimal(2))


def test_a_bare_number_of_the_next_breath_is_no_money() -> None:
    assert charged("postage", "post", "that's the post done", "eleven screws in the cover") == (None, None)
