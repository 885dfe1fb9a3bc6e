"""How a line of a bill is taxed: the categories of EN 16931 (UNCL 5305) that a workshop meets."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Final, Literal, get_args

TaxCategory = Literal["S", "Z", "E", "AE", "O"]
"""Standard (any rate above nothing), zero rated, exempt, reverse charge, outside the scope of the tax."""
TAX_CATEGORIES: Final[tuple[TaxCategory, ...]] = get_args(TaxCategory)

TaxedThing = Literal["parts", "labour", "outside_work", "postage", "other"]
"""What a workshop may tax differently."""
TAXED_THINGS: Final[tuple[TaxedThing, ...]] = get_args(TaxedThing)

REASONS: Final[Mapping[TaxCategory, str]] = {"AE": "Reverse charge", "O": "Not subject to VAT"}
"""What is said where no tax is asked (BR-AE-10, BR-O-10); for an exemption the workshop must say it (BR-E-10)."""


@dataclass(frozen=True, slots=True, order=True)
class Tax:
    """Category and rate in per cent; zero for every category but S (BR-S-05, BR-Z-05, BR-E-05, BR-AE-05, BR-O-05)."""

    category: TaxCategory
    rate: Decimal = Decimal(0)

    def __post_init__(self) -> None:
        if (self.category == "S") != (self.rate > 0):
            raise ValueError(f"category {self.category} does not go with a rate of {self.rate} %")


@dataclass(frozen=True, slots=True, kw_only=True)
class TaxRules:
    """How a workshop taxes what it bills."""

    usual: Tax
    apart: Mapping[TaxedThing, Tax] = field(default_factory=dict)
    """What is taxed otherwise."""
    exempt_because: str | None = None

    def of(self, thing: TaxedThing) -> Tax:
        return self.apart.get(thing, self.usual)
