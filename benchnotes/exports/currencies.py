"""Amounts of money and other numbers as plain text."""

from __future__ import annotations

from decimal import Decimal

from benchnotes.record.currencies import minor_digits
from benchnotes.record.money import Money


def plain_amount(money: Money) -> str:
    """The amount as a decimal string with the currency's own digits; more where more were said, never fewer."""
    return plain_decimal(money.amount, minor_digits(money.currency))


def plain_decimal(value: Decimal, least_digits: int = 0) -> str:
    """No exponent, no zeros at the end beyond `least_digits`."""
    text = f"{value:f}"
    whole, _, tail = text.partition(".")
    tail = tail.rstrip("0").ljust(least_digits, "0")
    return f"{whole}.{tail}" if tail else whole
