"""How many decimals a currency has (ISO 4217), so that a price is written as it is counted out."""

from __future__ import annotations

from decimal import Decimal

WITHOUT = frozenset(
    {
        "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND", "VUV", "XAF",
        "XOF", "XPF",
    }
)  # fmt: skip
THREE = frozenset({"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"})
FOUR = frozenset({"CLF", "UYW"})
"""Minor units other than two, ISO 4217 list one; checked against the iso4217 package in the tests."""


def minor_digits(currency: str) -> int:
    """Decimals of a currency; two for every currency that is not listed with others."""
    if currency in WITHOUT:
        return 0
    return 3 if currency in THREE else 4 if currency in FOUR else 2


def counted_out(amount: Decimal, currency: str) -> Decimal:
    """The amount with at least the currency's decimals; what was said finer (half a penny each) is kept."""
    least = Decimal(1).scaleb(-minor_digits(currency))
    short = amount.normalize()
    exponent = short.as_tuple().exponent
    finer = isinstance(exponent, int) and exponent < -minor_digits(currency)
    return short if finer else amount.quantize(least)
