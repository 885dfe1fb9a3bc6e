"""Parts not in yet, and what they cost."""

from __future__ import annotations

from collections.abc import Iterable

from benchnotes.record.entries import Item, JobRecord
from benchnotes.record.still_to_do.item import item_of


def parts_to_fit(record: JobRecord) -> Iterable[Item]:
    """ "Belt's on order", and no more of it -> part_to_fit, belt."""
    for part in record.parts:
        if part.state in ("needed", "ordered"):
            waiting = "is on order" if part.state == "ordered" else "is needed"
            yield item_of(
                part,
                "part_to_fit",
                part.name,
                why=f"{part.name} {waiting}, and was not said to be fitted.",
                close_by="Fit it and say so, or say that it is not needed.",
            )


def prices_missing(record: JobRecord) -> Iterable[Item]:
    """ "New leather's in", from the drawer, at no price -> price_missing, pump leather."""
    for part in record.parts:
        if part.state != "not_needed" and part.unit_price is None:
            yield item_of(
                part,
                "price_missing",
                part.name,
                why=f"No price was heard for {part.name}.",
                close_by="Say or type its price.",
            )
    for charge in record.charges:
        if charge.kind == "outside_work" and charge.amount is None:
            yield item_of(
                charge,
                "price_missing",
                charge.what,
                why=f"Outside work on {charge.what}, and no price for it was heard.",
                close_by="Say or type what it cost.",
            )


def prices_differ(record: JobRecord) -> Iterable[Item]:
    """ "Eighteen fifty, the element" ... "element's nineteen fifty now" -> price_differs, element."""
    for part in record.parts:
        if part.state != "not_needed" and len(part.prices) > 1:
            told = ", then ".join(f"{price.currency} {price.amount}" for price in part.prices)
            yield item_of(
                part,
                "price_differs",
                part.name,
                why=f"{part.name} was priced differently: {told}. The last stands.",
                close_by="Say which price is right.",
            )
