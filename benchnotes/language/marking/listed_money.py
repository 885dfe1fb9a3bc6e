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
HOURS = frozenset({"hour", "hours"})
BESIDE = 1
"""How many words may stand between a bare number and the word that makes it a price ("sixty for the pair")."""
SINGULAR = ("amp", "volt", "watt", "mil", "inch", "foot", "metre", "meter", "ohm", "pin", "bar", "core", "litre", "way")
"""Endings that show one of a kind: "a thirteen amp plug", where a measure would say amps."""


def prices(clause: Clause) -> Iterator[Mark]:
    """ "twelve quid each", "came to six fifty": money that is no charge; a bare number beside words of pricing."""
    if clause.aside or _charged(clause) is not None:
        return
    for amount in clause.amounts:
        if _is_price(clause, amount) and not _taken_back(clause, amount):
            basis = "about" if _about(clause, amount) else "exact"
            yield clause.mark_at("price", _span(clause, amount), _near(clause, amount), 0.6, basis=basis)


def _is_price(clause: Clause, amount: AmountHit) -> bool:
    said = clause.doc.text[amount.start : amount.end]
    if said.lower() == "one" or ("-" in said and _noun_follows(clause, amount)):
        return False
    if amount.kind == "money":
        return True
    words = clause.of("price_word")
    beside = [_words_between(clause, hit, amount) <= BESIDE for hit in words]
    return (amount.kind == "pair" and bool(words)) or (amount.kind == "number" and any(beside))


def _noun_follows(clause: Clause, amount: AmountHit) -> bool:
    """ "a fifty-cent piece", "a thirteen amp plug": the amount names the thing after it."""
    following = next((token for token in clause.doc if token.idx >= amount.end), None)
    return following is not None and following.tag_ in {"NN", "NNS"}


def _words_between(clause: Clause, hit: Hit, amount: AmountHit) -> int:
    first, last = clause.doc[hit.start].idx, clause.doc[hit.end - 1].idx
    between = clause.doc.text[last : amount.start] if last < amount.start else clause.doc.text[amount.end : first]
    return len(between.split())


def charges(clause: Clause) -> Iterator[Mark]:
    """ "two hours' labour", "eight for postage": a listed word for a charge, with an amount beside it."""
    hit = None if clause.aside else _charged(clause)
    if hit is not None:
        yield clause.mark("charge", hit, None, 0.5, kind=hit.phrase.kind)


def _charged(clause: Clause) -> Hit | None:
    """The word for a charge, where its clause has an amount that it can be the charge of."""
    hits = clause.of("charge")
    money = any(amount.kind != "measure" for amount in clause.amounts)
    paid = any(amount.kind in {"money", "pair"} for amount in clause.amounts)
    time = any(amount.unit in TIMES for amount in clause.amounts)
    for hit in hits:
        by_the_hour = any(word in HOURS for word in hit.phrase.text.split()) and len(hit.phrase.text.split()) < 4
        if (paid if by_the_hour else money) or (time and hit.phrase.kind == "labour" and not by_the_hour):
            return hit
    return None


def readings(clause: Clause) -> Iterator[Mark]:
    """ "twenty-two mil": an amount with a unit, of a thing or a size, and no time that something took."""
    if clause.aside or clause.of("charge"):
        return
    for amount in clause.amounts:
        named = _names_a_thing(clause, amount)
        if amount.kind == "measure" and amount.unit not in TIMES and not named and not _taken_back(clause, amount):
            yield clause.mark_at("reading", _span(clause, amount), _near(clause, amount), 0.6, when=_when(clause))


def _names_a_thing(clause: Clause, amount: AmountHit) -> bool:
    """ "a thirteen amp plug": one of a kind, named by its size."""
    following = next((token for token in clause.doc if token.idx >= amount.end), None)
    if following is None or following.is_punct or following.tag_ not in {"NN", "NNS"}:
        return False
    return clause.doc.text[: amount.end].endswith(SINGULAR) and any(
        hit.start <= following.i < hit.end for hit in clause.of("part")
    )


def _taken_back(clause: Clause, amount: AmountHit) -> bool:
    """ "four, no, sorry, five": an amount with a correction and another amount after it in its sentence."""
    said = [hit for hit in clause.doc._.hits if hit.phrase.group == "says" and hit.phrase.kind == "correction"]
    later = [other.start for other in clause.doc._.amounts if other.start > amount.start]
    starts = [clause.doc[hit.start].idx for hit in said]
    return any(amount.end <= start < place for start in starts for place in later[:1])


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
    if ahead:
        return ahead[-1]
    return after[0] if after else clause.before[-1] if clause.before else None


def _covers(clause: Clause, thing: Thing, amount: AmountHit) -> bool:
    span = clause.span(thing.start, thing.end)
    return span.start < amount.end and amount.start < span.end


def _about(clause: Clause, amount: AmountHit) -> bool:
    words = clause.doc.text[: amount.start].lower().split()[-2:]
    return bool(ABOUT & {word.strip(",.") for word in words}) or clause.has("supposed")


def _span(clause: Clause, amount: AmountHit) -> Span:
    return Span(clause.utterance, amount.start, amount.end)
