"""Amounts and what they are of, by listed words: prices, charges, readings."""

from __future__ import annotations

from collections.abc import Iterator

from benchnotes.language.amount_hits import AmountHit
from benchnotes.language.marking.listed_scene import Clause, Thing
from benchnotes.language.marking.marker import Mark, Span
from benchnotes.language.vocabulary_hits import Hit
from benchnotes.record.terms import When

ABOUT = frozenset({"about", "around", "roughly", "maybe", "say", "near", "nearly", "probably", "ish", "approximately"})
TIMES = frozenset({"h", "min", "s"})


def prices(clause: Clause) -> Iterator[Mark]:
    """ "twelve quid each": money that is no charge."""
    if clause.aside or _charged(clause) is not None:
        return
    for amount in clause.amounts:
        if amount.kind == "money":
            basis = "about" if _about(clause, amount) else "exact"
            yield clause.mark_at("price", _span(clause, amount), _near(clause, amount), 0.6, basis=basis)


def charges(clause: Clause) -> Iterator[Mark]:
    """ "two hours' labour", "eight for postage": a listed word for a charge, with an amount beside it."""
    hit = None if clause.aside else _charged(clause)
    if hit is not None:
        yield clause.mark("charge", hit, None, 0.5, kind=hit.phrase.kind)


def _charged(clause: Clause) -> Hit | None:
    """The word for a charge, where its clause has an amount that it can be the charge of."""
    hits = clause.of("charge")
    money = any(amount.kind in {"money", "number"} for amount in clause.amounts)
    time = any(amount.unit in TIMES for amount in clause.amounts)
    return next((hit for hit in hits if money or (time and hit.phrase.kind == "labour")), None)


def readings(clause: Clause) -> Iterator[Mark]:
    """ "twenty-two mil": an amount with a unit, of a thing or a size, and no time that something took."""
    if clause.aside or clause.of("charge"):
        return
    for amount in clause.amounts:
        if amount.kind == "measure" and amount.unit not in TIMES:
            yield clause.mark_at("reading", _span(clause, amount), _near(clause, amount), 0.6, when=_when(clause))


def _when(clause: Clause) -> When:
    """Before the repair in the first half of the talk, after it in the second: where nothing else tells."""
    return "before" if clause.when < 0.5 else "after"


def _near(clause: Clause, amount: AmountHit) -> Thing | None:
    """The nearest thing before the amount in its clause, else after it, else of the clause before."""
    text_start = amount.start
    ahead = [t for t in clause.things if clause.doc[t.end - 1].idx < text_start and not _covers(clause, t, amount)]
    after = [t for t in clause.things if clause.doc[t.start].idx >= amount.end]
    listed = [t for t in (*ahead, *after) if t.listed]
    if listed:
        return listed[-1] if listed[-1] in ahead else listed[0]
    return (ahead or after or list(clause.before) or [None])[-1 if ahead or not after else 0]


def _covers(clause: Clause, thing: Thing, amount: AmountHit) -> bool:
    span = clause.span(thing.start, thing.end)
    return span.start < amount.end and amount.start < span.end


def _about(clause: Clause, amount: AmountHit) -> bool:
    words = clause.doc.text[: amount.start].lower().split()[-2:]
    return bool(ABOUT & {word.strip(",.") for word in words}) or clause.has("supposed")


def _span(clause: Clause, amount: AmountHit) -> Span:
    return Span(clause.utterance, amount.start, amount.end)
