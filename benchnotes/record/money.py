"""Money: a Decimal and an ISO 4217 currency. Two currencies never add."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal


class CurrencyMismatchError(ValueError):
    """Two amounts of different currencies met in one sum."""


@dataclass(frozen=True, slots=True)
class Money:
    amount: Decimal
    currency: str
    """ISO 4217 alphabetic code, upper case."""

    def __post_init__(self) -> None:
        if not isinstance(self.amount, Decimal):
            raise TypeError("money is Decimal, never float")
        if len(self.currency) != 3 or not self.currency.isupper() or not self.currency.isalpha():
            raise ValueError(f"{self.currency!r} is no ISO 4217 code")

    def __add__(self, other: Money) -> Money:
        if self.currency != other.currency:
            raise CurrencyMismatchError(f"{self.currency} and {other.currency} do not add")
        return Money(self.amount + other.amount, self.currency)

    def times(self, quantity: Decimal | int) -> Money:
        return Money(self.amount * quantity, self.currency)
