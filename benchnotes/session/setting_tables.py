"""The tables of settings.toml that a bill needs, [workshop], [tax] and [bill]: their keys, and what each may be."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal, InvalidOperation
from typing import Any, Final

from benchnotes.exports.countries import COUNTRIES, TAX_PREFIXES
from benchnotes.exports.invoice import Party, Payment
from benchnotes.exports.tax import TAXED_THINGS, Tax, TaxCategory, TaxRules

Reader = Callable[[object], Any]
"""A value of TOML -> what the program makes of it. Raises WrongValueError."""


class WrongValueError(ValueError):
    """A value that a key cannot have; the text says what it can."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BillSettings:
    """What is asked, and how it is to be paid."""

    labour_an_hour: Decimal | None = None
    """Without tax, in the workshop's currency."""
    payment: Payment = field(default_factory=Payment)
    number_prefix: str = ""
    """Stands before the number of every bill."""
    by_the_metre: tuple[str, ...] = ()
    """Parts that are sold by length, by their last word."""


@dataclass(frozen=True, slots=True)
class Table:
    """A table's keys, and what their values make together."""

    keys: Mapping[str, Reader]
    made: Callable[[Mapping[str, Any]], Any]


def text(value: object) -> str:
    """Some words, all on one line."""
    if not isinstance(value, str) or not value.strip() or not value.isprintable():
        raise WrongValueError("text in quotes, on one line")
    return value.strip()


def _country(value: object) -> str:
    code = value.strip().upper() if isinstance(value, str) else ""
    if code not in COUNTRIES:
        raise WrongValueError("a country by its two letters (ISO 3166-1) such as AU, DE, GB, IN, US or ZA")
    return code


def tax_number(value: object) -> str:
    """A VAT identifier without spaces, its country in front (BR-CO-09)."""
    number = "".join(value.split()).upper() if isinstance(value, str) else ""
    if number[:2] not in TAX_PREFIXES or len(number) < 4:
        raise WrongValueError('a tax number that begins with its country, such as "GB999000117"')
    return number


def _amount(value: object) -> Decimal:
    if isinstance(value, int | str | Decimal) and not isinstance(value, bool):
        try:
            amount = Decimal(value)
        except InvalidOperation:
            amount = Decimal(-1)
        if amount.is_finite() and amount >= 0:
            return amount
    raise WrongValueError("an amount such as 38.50")


def _days(value: object) -> int:
    if isinstance(value, int) and not isinstance(value, bool) and 0 <= value <= 366:
        return value
    raise WrongValueError("a number of days, from 0 to 366")


TAX_WORDS: Final[dict[str, TaxCategory]] = {
    "zero": "Z", "exempt": "E", "reverse charge": "AE", "outside scope": "O",
}  # fmt: skip


def _tax(value: object) -> Tax:
    if isinstance(value, str) and value.strip().lower() in TAX_WORDS:
        return Tax(TAX_WORDS[value.strip().lower()])
    try:
        rate = _amount(value.strip().removesuffix("%").strip() if isinstance(value, str) else value)
    except WrongValueError:
        rate = Decimal(100)
    if rate >= 100:
        raise WrongValueError(f'a rate such as "20 %", or one of: {", ".join(TAX_WORDS)}')
    return Tax("S", rate) if rate else Tax("Z")


def _words(value: object) -> tuple[str, ...]:
    if not isinstance(value, list) or not all(isinstance(word, str) and word.strip() for word in value):
        raise WrongValueError('a list of words such as ["flex", "braid"]')
    return tuple(word.strip().casefold() for word in value)


def _workshop(values: Mapping[str, Any]) -> Party:
    return Party(**values)


def _taxes(values: Mapping[str, Any]) -> TaxRules | None:
    """Without the usual one there is none: the program guesses no tax."""
    if "usual" not in values:
        return None
    apart = {thing: values[thing] for thing in TAXED_THINGS if thing in values}
    return TaxRules(usual=values["usual"], apart=apart, exempt_because=values.get("exempt_because"))


def _bill(values: Mapping[str, Any]) -> BillSettings:
    payment = Payment(
        days=values.get("payment_days", 0), terms=values.get("payment_terms", ""), account=values.get("account", "")
    )
    apart = ("payment_days", "payment_terms", "account")
    return BillSettings(payment=payment, **{key: value for key, value in values.items() if key not in apart})


TABLES: Final[dict[str, Table]] = {
    "workshop": Table(
        {
            "name": text, "street": text, "town": text, "postcode": text, "country": _country,
            "tax_number": tax_number, "tax_registration": text, "company_number": text, "phone": text, "email": text,
        },
        _workshop,
    ),
    "tax": Table({"usual": _tax, **dict.fromkeys(TAXED_THINGS, _tax), "exempt_because": text}, _taxes),
    "bill": Table(
        {
            "labour_an_hour": _amount, "payment_days": _days, "payment_terms": text, "account": text,
            "number_prefix": text, "by_the_metre": _words,
        },
        _bill,
    ),
}  # fmt: skip
"""Table by name, as it stands in square brackets."""
