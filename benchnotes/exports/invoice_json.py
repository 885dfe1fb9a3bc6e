"""An invoice as JSON and back: the frozen form in which an issued one is kept, to the last digit."""

from __future__ import annotations

import json
from dataclasses import asdict
from datetime import date
from decimal import Decimal
from typing import Any

from benchnotes.exports.bill import Bill, Discount, Line
from benchnotes.exports.invoice import Invoice, Issued, Party, Payment
from benchnotes.exports.tax import Tax

VERSION = 1
"""Of this form; a field that changes its meaning raises it, and every older version stays readable."""


def frozen(invoice: Invoice) -> str:
    """Text that `thawed` makes the same invoice of."""
    return json.dumps({"version": VERSION, **asdict(invoice)}, ensure_ascii=False, default=_plain)


def thawed(text: str) -> Invoice:
    """The invoice that `frozen` was given."""
    kept: dict[str, Any] = json.loads(text)
    taken = kept["takes_back"]
    return Invoice(
        bill=_bill(kept["bill"]),
        seller=Party(**kept["seller"]),
        buyer=Party(**kept["buyer"]),
        payment=Payment(**kept["payment"]),
        exempt_because=kept["exempt_because"],
        about=kept["about"],
        kind=kept["kind"],
        takes_back=Issued(taken["number"], date.fromisoformat(taken["on"])) if taken else None,
    )


def _plain(value: object) -> str:
    if isinstance(value, Decimal):
        return str(value)
    if isinstance(value, date):
        return value.isoformat()
    raise TypeError(f"{type(value).__name__} has no frozen form")


def _bill(kept: dict[str, Any]) -> Bill:
    return Bill(
        currency=kept["currency"],
        lines=tuple(_line(line) for line in kept["lines"]),
        discounts=tuple(
            Discount(reason=each["reason"], amount=Decimal(each["amount"]), tax=_tax(each["tax"]))
            for each in kept["discounts"]
        ),
    )


def _line(kept: dict[str, Any]) -> Line:
    return Line(
        what=kept["what"],
        quantity=Decimal(kept["quantity"]),
        unit=kept["unit"],
        price=Decimal(kept["price"]),
        per=Decimal(kept["per"]),
        tax=_tax(kept["tax"]),
        check=kept["check"],
    )


def _tax(kept: dict[str, Any]) -> Tax:
    return Tax(kept["category"], Decimal(kept["rate"]))
