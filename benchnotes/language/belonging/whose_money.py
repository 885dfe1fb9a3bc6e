"""Money and hours that belong to a charge: said beside its words, and by no price's."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from benchnotes.language.amounts.finding import FoundAmount, find_amounts
from benchnotes.language.amounts.prices import SpokenPrice, read_price
from benchnotes.language.amounts.quantities import read_hours
from benchnotes.language.amounts.unit_words import UnitWords
from benchnotes.language.marking.marker import Mark, Span
from benchnotes.record.terms import ChargeKind

_RATE_BEFORE = re.compile(r"\b(?:at|into|times)\s+\W*$", re.IGNORECASE)
_RATE_AFTER = re.compile(r"\W*\s*\w*\s*(?:an|a|per|the)\s+hour\b", re.IGNORECASE)
NEAR = (0, 1, -1)
"""Where the money of a charge is looked for, in utterances from its words; captions break anywhere."""


@dataclass(frozen=True, slots=True)
class ChargeSaid:
    price: SpokenPrice | None
    hours: Decimal | None


def charge_said(
    mark: Mark,
    kind: ChargeKind,
    texts: Sequence[str],
    taken: Sequence[Span],
    *,
    currency: str,
    words: UnitWords,
) -> ChargeSaid:
    """Its amount, nearest to its words and not `taken` by a price or another charge; and its hours."""
    at = mark.span.utterance
    hours = read_hours(texts[at], words=words, before=texts[at - 1] if at else "") if kind == "labour" else None
    for step in NEAR:
        place = at + step
        if not 0 <= place < len(texts) or (step and len(texts[place].split()) > 12):
            continue
        span = _nearest(mark, place, texts, taken, currency=currency, words=words)
        if span is not None:
            price = read_price(
                texts[place][span.start : span.end],
                currency=currency,
                words=words,
                before=texts[place][: span.start],
                after=texts[place][span.end :],
                kind=kind,
            )
            return ChargeSaid(price, hours)
    return ChargeSaid(None, hours)


def _nearest(
    mark: Mark, place: int, texts: Sequence[str], taken: Sequence[Span], *, currency: str, words: UnitWords
) -> Span | None:
    """Money if there is any, else a bare number ("call it sixty"); a rate ("at forty-five, ninety") only if alone."""
    text = texts[place]
    apart = place != mark.span.utterance
    found = [
        Span(place, amount.start, amount.end)
        for amount in find_amounts(text, currency=currency, words=words)
        if amount.kind == "price" or (not apart and _bare(amount, text, words))
    ]
    free = [span for span in found if not any(span.overlaps(other) for other in taken)] or ([] if apart else found)
    sums = [span for span in free if not _is_rate(text, span)] or free
    if apart:
        return sums[0] if sums else None
    return min(sums, key=lambda span: _gap(span, mark.span), default=None)


def _bare(amount: FoundAmount, text: str, words: UnitWords) -> bool:
    """A number with no unit said; after "four hours on it" a bare one is taken for hours too."""
    if amount.kind == "count" or amount.unit is None:
        return True
    return amount.unit in ("h", "min") and read_hours(text[amount.start : amount.end], words=words) is None


def _is_rate(text: str, span: Span) -> bool:
    return bool(_RATE_BEFORE.search(text[: span.start]) or _RATE_AFTER.match(text[span.end :]))


def _gap(one: Span, other: Span) -> int:
    return max(one.start - other.end, other.start - one.end, 0)
