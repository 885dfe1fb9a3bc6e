"""The statements of a job as the steps of the fold see them: in order, each thing under one name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from benchnotes.record.entries import Entry
from benchnotes.record.same_thing import is_name, settled_names
from benchnotes.record.statements import Cues, Statement

S = TypeVar("S", bound=Statement)
E = TypeVar("E", bound=Entry)


@dataclass(frozen=True, slots=True)
class Said:
    """One statement, its place among all of them, and the name of the thing it is about."""

    at: int
    """Counts from 0 in order of the talk; two statements of one breath differ."""
    name: str
    """Empty where nothing was named."""
    statement: Statement


@dataclass(frozen=True, slots=True)
class Talk:
    """All that was said of one job."""

    said: tuple[Said, ...]
    currency: str
    """The job's own: ISO 4217."""

    def of(self, kind: type[S]) -> Iterator[tuple[Said, S]]:
        """Every statement of one kind, in order, with its place."""
        for said in self.said:
            if isinstance(said.statement, kind):
                yield said, said.statement

    def named(self, kind: type[S]) -> Iterator[tuple[Said, S]]:
        """The same, but only where the thing has a name."""
        return ((said, statement) for said, statement in self.of(kind) if said.name)


def talk_of(statements: Sequence[Statement], currency: str) -> Talk:
    """Puts statements in order of the time line and settles names. Words to the program itself are left out."""
    kept = sorted((s for s in statements if not isinstance(s, Cues)), key=lambda s: s.order)
    names = settled_names(name for s in kept if (name := _name(s)))
    return Talk(
        tuple(Said(at, names.get(_name(s), ""), s) for at, s in enumerate(kept)),
        currency,
    )


def _name(statement: Statement) -> str:
    """The thing meant, else the words that name it; words that only point name nothing."""
    named = (" ".join(words.split()) for words in (statement.ref, statement.part) if words)
    return next((words for words in named if is_name(words)), "")


def resting_on(entry: E, statements: Iterable[Statement]) -> E:
    """The entry with what it rests on: evidence in order, each moment once; as sure as the surest; to be checked
    where any of them is."""
    rested_on = list(statements)
    return replace(
        entry,
        evidence=tuple(dict.fromkeys(s.evidence for s in rested_on)),
        sure=max((s.sure for s in rested_on), default=0.0),
        check=any(s.check for s in rested_on),
    )


def without(talk: Talk, places: set[int]) -> Talk:
    """The talk less the statements at those places."""
    return replace(talk, said=tuple(said for said in talk.said if said.at not in places))
