"""Phrases that are a statement by themselves: corrections, doubts, answers to them, what is left, advice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchnotes.language.marking.listed_scene import Clause, Thing, pointed_at
from benchnotes.language.marking.marker import Mark


def sayings(clause: Clause) -> Iterator[Mark]:
    """Doubts, settled questions and things left, wherever their phrases stand in this machine's talk."""
    if clause.aside:
        return
    if clause.of("says", "doubt"):
        # the question itself may stand before the phrase or after it
        yield clause.mark_at("doubt", clause.span(clause.sentence_start, clause.sentence_end), _asked_of(clause))
    for kind in ("settled", "leave"):
        for hit in clause.of("says", kind)[:1]:
            yield clause.mark(kind, hit, pointed_at(clause, hit))


def advice(clause: Clause) -> Iterator[Mark]:
    """ "tell her to drain it before winter": all that follows the phrase in its sentence."""
    for hit in clause.of("says", "advice")[:1]:
        end = clause.sentence_end
        if end - hit.end >= 2:
            yield clause.mark_at("advice", clause.span(hit.start, end))


def _asked_of(clause: Clause) -> Thing | None:
    """A doubt is mostly of the last thing named before or in its clause."""
    things = [*clause.before, *clause.things]
    return next((thing for thing in reversed(things) if thing.listed), things[-1] if things else None)


def corrections(clauses: Sequence[Clause]) -> Iterator[Mark]:
    """ "no, sorry": a phrase that takes back; a single word ("nope") only between two amounts."""
    amounts = [amount.start for clause in clauses for amount in clause.amounts]
    for clause in clauses:
        for hit in clause.of("says", "correction"):
            at = clause.doc[hit.start].idx
            between = any(amount < at for amount in amounts) and any(amount > at for amount in amounts)
            if hit.length > 1 or between:
                yield clause.mark("correction", hit, None, 0.6)
