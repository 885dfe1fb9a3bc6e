"""The listed marker: marks by vocabulary and grammar alone, without learned weights.

It reads where those are missing, shows what the learned marker adds, and is what makes a user's own words act. Its
rules each take one clause; it would rather miss a statement than make one up.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from spacy.language import Language

from benchnotes.language.marking.listed_findings import clears, faults, guesses
from benchnotes.language.marking.listed_machine import machine
from benchnotes.language.marking.listed_money import charges, prices, readings
from benchnotes.language.marking.listed_sayings import advice, corrections, sayings
from benchnotes.language.marking.listed_scene import Clause, clauses_of
from benchnotes.language.marking.listed_trials import outcomes, verdicts
from benchnotes.language.marking.listed_work import moves, parts, placed, works
from benchnotes.language.marking.marker import Mark, Marked
from benchnotes.language.vocabulary import Vocabulary
from benchnotes.record.heard import Utterance

RULES: tuple[Callable[[Clause], Iterator[Mark]], ...] = (
    faults, clears, guesses, outcomes, parts, placed, works, moves, prices, charges, readings, sayings, advice,
)  # fmt: skip
ONE_OF: tuple[tuple[str, ...], ...] = (
    ("advice", "fault", "test", "work", "clear", "leave", "back", "off"),
    ("advice", "doubt", "guess", "clear"),
    ("fit", "back"),
)
"""Kinds that cannot be said by the same words: the first of them stands."""


class ListedMarker:
    """Keeps the Protocol `Marker`. `nlp` is what `pipeline.build` gave for the same vocabulary."""

    def __init__(self, nlp: Language, vocabulary: Vocabulary) -> None:
        self.nlp = nlp
        self.vocabulary = vocabulary

    def mark(self, talk: Sequence[Utterance]) -> Marked:
        """Marks in order of the talk; no pointers."""
        docs = list(self.nlp.pipe(utterance.text for utterance in talk))
        marks = list(machine(docs, self.vocabulary))
        for number, doc in enumerate(docs):
            clauses = list(clauses_of(number, doc, number / max(1, len(docs) - 1)))
            said = [mark for clause in clauses for rule in RULES for mark in rule(clause)]
            said += [*verdicts(clauses), *corrections(clauses)]
            marks += _settled(said)
        return Marked(tuple(sorted(marks, key=lambda mark: (mark.span, mark.kind))))


def _settled(said: Sequence[Mark]) -> list[Mark]:
    """Marks of one utterance without those whose words another kind has taken."""
    return [
        mark
        for place, mark in enumerate(said)
        if mark not in said[:place] and not any(_gives_way(mark, other) for other in said)
    ]


def _gives_way(mark: Mark, other: Mark) -> bool:
    for kinds in ONE_OF:
        if mark.kind in kinds and other.kind in kinds and kinds.index(other.kind) < kinds.index(mark.kind):
            return mark.span.overlaps(other.span)
    return False
