"""Money as said at the bench and on the telephone."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from iso4217 import Currency
from language.amounts.narrated import unit_words
from num2words import num2words

from benchnotes.language.amounts.currencies import counted_out
from benchnotes.language.amounts.prices import SpokenPrice, read_price
from benchnotes.record.currencies import minor_digits


def read(text: str, currency: str = "GBP", **around: object) -> SpokenPrice | None:
    return read_price(text, words=unit_words(), currency=currency, **around)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("said", "job", "amount", "currency"),
    [
        ("£4.50", "GBP", "4.50", "GBP"),
        ("4 pounds 50", "GBP", "4.50", "GBP"),
        ("four pounds fifty", "GBP", "4.50", "GBP"),
        ("two pounds and fifty pence", "GBP", "2.50", "GBP"),
        ("four fifty", "GBP", "4.50", "GBP"),
        ("four ninety-nine", "USD", "4.99", "USD"),
        ("one pound ten", "GBP", "1.10", "GBP"),
        ("six quid", "GBP", "6.00", "GBP"),
        ("a fiver", "GBP", "5.00", "GBP"),
        ("a tenner", "AUD", "10.00", "AUD"),
        ("50p", "GBP", "0.50", "GBP"),
        ("ninety-nine p", "GBP", "0.99", "GBP"),
        ("about forty dollars", "USD", "40.00", "USD"),
        ("twenty bucks", "CAD", "20.00", "CAD"),
        ("a buck and a half", "USD", "1.50", "USD"),
        ("dollar eighty", "CAD", "1.80", "CAD"),
        ("thirty-odd dollars", "AUD", "30.00", "AUD"),
        ("eighty-five cents", "USD", "0.85", "USD"),
        ("R450", "ZAR", "450.00", "ZAR"),
        ("R1 450", "ZAR", "1450.00", "ZAR"),
        ("four hundred rand", "ZAR", "400.00", "ZAR"),
        ("six fifty", "ZAR", "650.00", "ZAR"),
        ("₹1,200", "INR", "1200.00", "INR"),
        ("twelve hundred rupees", "INR", "1200.00", "INR"),
        ("1.2 lakh", "INR", "120000.00", "INR"),
        ("€14,50", "EUR", "14.50", "EUR"),
        ("14 euro 50", "EUR", "14.50", "EUR"),
        ("14 50", "EUR", "14.50", "EUR"),
        ("eight and twenty", "EUR", "8.20", "EUR"),
        ("1.2k", "GBP", "1200.00", "GBP"),
        ("two thousand five hundred", "INR", "2500.00", "INR"),
        ("six seventeen fifty", "NZD", "617.50", "NZD"),
        ("three thousand yen", "JPY", "3000", "JPY"),
        ("forty dollars", "GBP", "40.00", "USD"),
        ("four pounds, no, sorry, five pounds twenty", "GBP", "5.20", "GBP"),
    ],
)
def test_amount_and_currency(said: str, job: str, amount: str, currency: str) -> None:
    found = read(said, job)
    assert found is not None
    assert (str(found.amount.amount), found.amount.currency) == (amount, currency)


@pytest.mark.parametrize("said", ["", "no charge", "the third", "a fortune"])
def test_what_is_no_price(said: str) -> None:
    assert read(said) is None


def test_six_fifty_is_settled_by_what_is_paid_for() -> None:
    assert read("two seventy", "USD").amount.amount == Decimal("2.70")  # type: ignore[union-attr]
    assert read("two seventy", "USD", kind="labour").amount.amount == 270  # type: ignore[union-attr]
    assert read("two eighty-five", "AUD", like=Decimal(280)).amount.amount == 285  # type: ignore[union-attr]
    assert read("fifty-five", "EUR", like=Decimal("0.50")).amount.amount == Decimal("0.55")  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("said", "before", "after", "basis"),
    [
        ("forty quid", "about ", "", "about"),
        ("forty quid", "", " or so", "about"),
        ("forty quid", "call it ", "", "about"),
        ("fortyish", "", "", "about"),
        ("thirty-odd dollars", "", "", "about"),
        ("forty quid", "the slip says ", " and that's that", "exact"),
        ("forty quid", "I was telling him about the valve. ", "", "exact"),
    ],
)
def test_basis(said: str, before: str, after: str, basis: str) -> None:
    assert read(said, before=before, after=after).basis == basis  # type: ignore[union-attr]


def test_a_range_keeps_both_ends_and_is_an_estimate() -> None:
    found = read("between six and eight quid")
    assert found is not None
    assert found.upper is not None
    assert (found.amount.amount, found.upper.amount, found.basis) == (6, 8, "about")


@pytest.mark.parametrize(
    ("said", "after", "of"),
    [
        ("seven quid each", "", "each"),
        ("seven quid", " apiece from the usual place", "each"),
        ("six pound a metre", "", "each"),
        ("£12 the pair", "", "pair"),
        ("thirty-one pound the lot", "", "all"),
        ("six quid", " and postage", None),
    ],
)
def test_what_a_price_is_of(said: str, after: str, of: str | None) -> None:
    assert read(said, after=after).of == of  # type: ignore[union-attr]


@given(st.decimals("0.01", "9999.99", places=2), st.sampled_from(["£{}", "{} pounds", "{}", "£{:,}", "{:,} quid"]))
def test_no_penny_is_gained_or_lost_in_figures(amount: Decimal, written: str) -> None:
    assert read(written.format(amount)).amount.amount == amount  # type: ignore[union-attr]


@given(st.integers(1, 999), st.integers(10, 99))
def test_no_penny_is_gained_or_lost_in_words(pounds: int, pence: int) -> None:
    spoken = f"{num2words(pounds)} pounds {num2words(pence)}"
    assert read(spoken).amount.amount == pounds + Decimal(pence) / 100, spoken  # type: ignore[union-attr]
    assert read(f"{num2words(pence)} pence").amount.amount == Decimal(pence) / 100  # type: ignore[union-attr]


def test_decimals_of_every_currency_are_those_of_iso_4217() -> None:
    """Against the iso4217 package, which carries the published list one."""
    for currency in Currency:
        if currency.exponent is not None:
            assert minor_digits(currency.code) == currency.exponent, currency.code


@given(st.decimals("0.0001", "100000", places=4))
def test_counting_out_never_changes_the_amount(amount: Decimal) -> None:
    assert counted_out(amount, "GBP") == amount
