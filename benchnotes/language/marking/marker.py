"""What a marker gives: marks in the talk. Learned and listed markers keep the same Protocol."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Protocol

from benchnotes.record.heard import Utterance


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """Characters of one utterance's text: half-open, `utterance` an index into the talk that was marked."""

    utterance: int
    start: int
    end: int

    def overlaps(self, other: Span) -> bool:
        return self.utterance == other.utterance and self.start < other.end and other.start < self.end


@dataclass(frozen=True, slots=True)
class Mark:
    """One statement as it stands in the talk, before amounts are read and names are settled."""

    kind: str
    """The `say` of a statement: fault, work, price ..."""
    span: Span
    """Its words, or for prices and readings its amount."""
    part: Span | None = None
    """What names the thing; may stand in a neighbouring utterance."""
    attributes: Mapping[str, str] = field(default_factory=dict)
    """kind, action, standing, by, what, result, when, field: as that kind of statement has them."""
    sure: float = 1.0


@dataclass(frozen=True, slots=True)
class Pointer:
    """How well a mark fits an earlier one as a mention of the same thing."""

    earlier: int
    """Index of the earlier mark, or -1 for a thing not named before."""
    score: float


@dataclass(frozen=True, slots=True)
class Marked:
    """Marks in order of the talk and, where the marker has an opinion, what each may point back at."""

    marks: tuple[Mark, ...]
    pointers: tuple[tuple[Pointer, ...], ...] | None = None


class Marker(Protocol):
    """Reads a whole stretch of talk. The same talk gives the same marks."""

    def mark(self, talk: Sequence[Utterance]) -> Marked: ...
