"""Phrases that are a statement by themselves: corrections, doubts, answers to them, what is left, advice."""

from __future__ import annotations

from collections.abc import Iterator

from benchnotes.language.marking.listed_scene import Clause, subject
from benchnotes.language.marking.marker import Mark

TO_THE_OWNER = frozenset(
    {
        "keep",
        "use",
        "bring",
        "don't",
        "never",
        "store",
        "empty",
        "drain",
        "wipe",
        "oil",
        "check",
        "run",
        "leave",
        "get",
        "put",
    }
)


def sayings(clause: Clause) -> Iterator[Mark]:
    """Corrections, doubts, settled questions and things left, wherever their phrases stand in this machine's talk."""
    for hit in clause.of("says", "correction"):
        if hit.length > 1:
            yield clause.mark("correction", hit, None, 0.6)
    if clause.aside:
        return
    for kind in ("doubt", "settled", "leave"):
        for hit in clause.of("says", kind)[:1]:
            yield clause.mark(kind, hit, subject(clause, hit))


def advice(clause: Clause) -> Iterator[Mark]:
    """ "tell her to drain it before winter": all that follows the phrase in its sentence."""
    for hit in clause.of("says", "advice")[:1]:
        end = clause.sentence_end
        if end - hit.end >= 2:
            yield clause.mark_at("advice", clause.span(hit.start, end))
