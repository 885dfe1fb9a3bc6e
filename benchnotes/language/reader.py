"""Utterances -> statements: the talk is marked, things get one name, amounts are read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from spacy.language import Language

from benchnotes.language.belonging.naming import best_name
from benchnotes.language.belonging.pointing import said_part, things
from benchnotes.language.belonging.thing_names import thing_names
from benchnotes.language.keeping import kept
from benchnotes.language.marking.marker import Mark, Marked, Marker
from benchnotes.language.saying import statements
from benchnotes.language.vocabulary import Vocabulary
from benchnotes.record.heard import Utterance
from benchnotes.record.statements import Statement


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingTools:
    """What reading needs, opened at the edge and handed in."""

    nlp: Language
    vocabulary: Vocabulary
    marker: Marker


def read(talk: Sequence[Utterance], *, currency: str, tools: ReadingTools) -> tuple[Statement, ...]:
    """Statements in order of the talk. `currency`: the job's own, ISO 4217. The same talk gives the same statements."""
    return read_marks(talk, tools.marker.mark(talk), currency=currency, vocabulary=tools.vocabulary)


def read_marks(
    talk: Sequence[Utterance], marked: Marked, *, currency: str, vocabulary: Vocabulary
) -> tuple[Statement, ...]:
    """Statements from talk that is marked already."""
    sure = kept(marked)
    names = named(sure, tuple(utterance.text for utterance in talk))
    return statements(talk, sure.marks, names, currency=currency, vocabulary=vocabulary)


def named(marked: Marked, texts: Sequence[str]) -> tuple[str | None, ...]:
    """What each mark is about, under one name all through; None where it is about nothing that has a name."""
    chosen = things(marked.marks, marked.pointers, texts)
    names = thing_names(marked.marks, chosen, texts)
    return tuple(
        _name(mark, texts) if thing is None else names[thing] for mark, thing in zip(marked.marks, chosen, strict=True)
    )


def _name(mark: Mark, texts: Sequence[str]) -> str | None:
    return best_name([said_part(mark, texts)])
