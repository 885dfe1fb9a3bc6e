"""An amount with the decimals of its currency, so that a price is written as it is counted out."""

from __future__ import annotations

from decimal import Decimal

from benchnotes.record.currencies import minor_digits


def counted_out(amount: Decimal, currency: str) -> Decimal:
    """The amount with at least the currency's decimals; what was said finer (half a penny each) is kept."""
    least = Decimal(1).scaleb(-minor_digits(currency))
    short = amount.normalize()
    exponent = short.as_tuple().exponent
    finer = isinstance(exponent, int) and exponent < -minor_digits(currency)
    return short if finer else amount.quantize(least)
