"""What was found, by listed words: faults, things found right, suspicions."""

from __future__ import annotations

from collections.abc import Iterator

from benchnotes.language.marking.listed_scene import (
    REACH,
    Clause,
    Thing,
    is_question,
    predicative,
    subject,
)
from benchnotes.language.marking.marker import Mark
from benchnotes.language.vocabulary_hits import Hit

HOLDING = frozenset({
    "have", "there", "with", "full", "some", "bit", "lot", "find", "see", "get", "hear", "'s", "s", "much", "more",
    "show", "bad", "slight", "little", "big", "wee", "a", "an", "of", "leave", "develop", "pick", "feel",
})  # fmt: skip
"""Lemmas shortly before a noun that say that a thing has it: "has a crack", "there's play"."""
PLACED = frozenset({
    "in", "on", "at", "round", "around", "along", "across", "through", "under", "inside", "behind", "from", "of",
    "down", "between",
})  # fmt: skip
"""Words after a noun that lead to the thing that has it: "a crack in the cap"."""


def faults(clause: Clause) -> Iterator[Mark]:
    """ "the inlet's split": a listed condition said of a thing of this machine, neither denied nor only supposed."""
    if clause.aside or clause.has("supposed") or clause.has("asked") or is_question(clause):
        return
    for hit in _apart(clause.of("condition")):
        if not denied(clause, hit) and _said_of_a_thing(clause, hit) and not _future(clause, hit):
            yield clause.mark("fault", hit, _of(clause, hit), kind=hit.phrase.kind)


def clears(clause: Clause) -> Iterator[Mark]:
    """ "no play in it", "the seat's fine": a condition denied, or a listed word for what is right."""
    if clause.aside or clause.has("supposed") or is_question(clause):
        return
    missed = [hit for hit in _apart(clause.of("condition")) if denied(clause, hit)]
    for hit in missed:
        first = max((t.start for t in clause.of("trigger", "denied") if t.start <= hit.start), default=hit.start)
        yield clause.mark_at("clear", clause.span(first, hit.end), _of(clause, hit))
    for hit in () if missed or clause.of("trigger", "planned") else clause.of("right"):
        part = subject(clause, hit)
        if part is not None and _sure_of(part, hit) and not denied(clause, hit) and predicative(clause, hit):
            yield clause.mark("clear", hit, part)


def guesses(clause: Clause) -> Iterator[Mark]:
    """ "might just be the brushes": a word of supposing with a thing or a condition in its clause."""
    if clause.aside or clause.of("says", "doubt"):
        return
    for hit in clause.of("trigger", "supposed")[:1]:
        things = [thing for thing in clause.things if thing.named and thing.start >= hit.start] or clause.things
        if things and (clause.of("condition") or things[0].listed):
            end = max((h.end for h in clause.of("condition") if h.start >= hit.start), default=hit.end)
            yield clause.mark_at("guess", clause.span(hit.start, end), things[0])


def denied(clause: Clause, hit: Hit) -> bool:
    """Whether a word of denying reaches the hit."""
    return clause.changed(hit, "denied", REACH)


def _sure_of(part: Thing, hit: Hit) -> bool:
    """ "the seat's fine": of a listed part; of anything else only where more than one word says it."""
    return part.listed or hit.length > 1


def _apart(hits: tuple[Hit, ...]) -> list[Hit]:
    """Hits of one clause that do not stand side by side: "cracked and rusty" are two, "rusted solid" is one."""
    kept: list[Hit] = []
    for hit in hits:
        if not kept or hit.start > kept[-1].end:
            kept.append(hit)
    return kept


def _future(clause: Clause, hit: Hit) -> bool:
    return clause.changed(hit, "planned", 3) or clause.word(hit.start - 1) == "to"


def _of(clause: Clause, hit: Hit) -> Thing | None:
    """What a condition is said of: for a noun ("a crack in the cap") the thing after "in" or "on", else the subject."""
    if hit.phrase.shape == "has" and clause.word(hit.end) in PLACED:
        after = next((thing for thing in clause.things if thing.start >= hit.end), None)
        if after is not None and after.start <= hit.end + 3:
            return after
    around = next((t for t in clause.things if t.start <= hit.start and hit.end < t.end and t.listed), None)
    return around or subject(clause, hit)


def _said_of_a_thing(clause: Clause, hit: Hit) -> bool:
    if hit.phrase.shape == "does":
        return any(thing.end <= hit.start for thing in clause.things) and not _first_person(clause, hit)
    if hit.phrase.shape == "has":
        before = {clause.doc[place].lemma_.lower() for place in range(max(clause.start, hit.start - 4), hit.start)}
        return not _worked_on(clause) and (bool(before & HOLDING) or clause.word(hit.end) in PLACED)
    return predicative(clause, hit) or _part_of_a_name(clause, hit)


def _part_of_a_name(clause: Clause, hit: Hit) -> bool:
    """ "a cracked cap": said of a listed part by the word before it, unless the clause deals with it already."""
    inside = any(t.start <= hit.start and hit.end < t.end and t.listed for t in clause.things)
    return inside and not _worked_on(clause)


def _worked_on(clause: Clause) -> bool:
    """ "cleaned the gunk out": what is being dealt with is no new finding."""
    return bool(clause.of("work"))


def _first_person(clause: Clause, hit: Hit) -> bool:
    return any(clause.word(place) in {"i", "we", "you", "let"} for place in range(hit.start - 2, hit.start))
