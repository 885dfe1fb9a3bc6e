"""Every price said for a thing, the last one standing."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from benchnotes.record.statements import Prices

NEAR = Decimal("0.15")
"""An estimate and a price that differ by no more than this share of the price are one price told twice."""


def standing_prices(said: Iterable[Prices]) -> list[Prices]:
    """The different prices in the order said, each at its last mention; the last stands.

    "Eighteen fifty" ... "nineteen fifty" -> both; "about forty" ... "forty-one" -> 41 alone.
    """
    standing: list[Prices] = []
    for price in said:
        standing = [earlier for earlier in standing if not _same_price(earlier, price)]
        standing.append(price)
    return standing


def _same_price(earlier: Prices, later: Prices) -> bool:
    if earlier.price.currency != later.price.currency:
        return False
    apart = abs(earlier.price.amount - later.price.amount)
    estimate = "about" in (earlier.basis, later.basis)
    return apart == 0 or (estimate and apart <= NEAR * max(earlier.price.amount, later.price.amount))
