"""What a mention may point back at, as numbers that a scored choice can weigh.

One row for every earlier mention: how alike the names are, how far back it lies, what was said of it. The
training script and the reader make the same rows from here.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from benchnotes.language.belonging.likeness import NOTHING, Likeness, Name, likeness, taken_apart

POINTING_KINDS = (
    "fault", "clear", "guess", "leave", "need", "order", "fit", "drop", "price", "work", "off", "back", "reading",
    "test", "doubt", "settled", "charge",
)  # fmt: skip
"""Kinds of statement that are about a thing; the rest point at nothing."""
_KIND_AT = {kind: at for at, kind in enumerate(POINTING_KINDS)}
_DISTANCES = (0, 1, 2, 4, 8, 16, 40)
_RANKS = (0, 1, 2, 4, 8)


@dataclass(frozen=True, slots=True)
class Mention:
    """One statement as far as pointing goes."""

    kind: str
    utterance: int
    name: Name
    part_at: tuple[int, int, int] | None
    """Utterance and characters of the part; None where nothing names it."""

    @classmethod
    def of(cls, kind: str, utterance: int, said: str | None, part_at: tuple[int, int, int] | None) -> Mention:
        return cls(kind, utterance, taken_apart(said), part_at)


class _Thing:
    """One thing, as it has been named so far."""

    def __init__(self) -> None:
        self.names: list[Name] = []
        self.kinds: set[str] = set()
        self.count = 0
        self.last = -1


RECENT = 160
"""Earlier mentions that are weighed: more than any job said so far, and a bound on the work."""
WIDTH = 2 + 9 + 2 * 5 + 5 + (len(_DISTANCES) + 1) + (len(_RANKS) + 1) + 2 + 3 * len(POINTING_KINDS)


class Things:
    """The things named so far; grows mention by mention, in order of the talk."""

    def __init__(self) -> None:
        self._mentions: list[Mention] = []
        self._thing_of: list[int] = []
        self._things: list[_Thing] = []

    def add(self, mention: Mention, thing: int | None) -> int:
        """Takes the mention in as one of `thing`, or as a new thing; gives the thing's number."""
        if thing is None:
            thing = len(self._things)
            self._things.append(_Thing())
        known = self._things[thing]
        if not mention.name.points and mention.name not in known.names:
            known.names.append(mention.name)
        known.kinds.add(mention.kind)
        known.count += 1
        known.last = len(self._mentions)
        self._mentions.append(mention)
        self._thing_of.append(thing)
        return thing

    @property
    def first(self) -> int:
        """The oldest mention that is weighed."""
        return max(0, len(self._mentions) - RECENT)

    def thing_of(self, mention: int) -> int:
        return self._thing_of[mention]

    def rows(self, mention: Mention) -> list[list[float]]:
        """One row of WIDTH numbers for each of the last RECENT mentions, oldest first."""
        by_recency = sorted(range(len(self._things)), key=lambda thing: -self._things[thing].last)
        rank = {thing: at for at, thing in enumerate(by_recency)}
        likest = [self._likest(mention.name, thing) for thing in self._things]
        return [
            self._row(mention, at, rank[self._thing_of[at]], likest[self._thing_of[at]])
            for at in range(self.first, len(self._mentions))
        ]

    @staticmethod
    def _likest(name: Name, thing: _Thing) -> Likeness:
        return max((likeness(name, other) for other in thing.names), key=lambda like: like.best, default=NOTHING)

    def _row(self, mention: Mention, at: int, rank: int, likest: Likeness) -> list[float]:
        earlier, thing = self._mentions[at], self._things[self._thing_of[at]]
        name, other = mention.name, earlier.name
        same_words = mention.part_at is not None and mention.part_at == earlier.part_at
        row = [1.0, float(same_words)]
        row += [
            float(mention.part_at is None),
            float(name.points),
            float(other.points),
            float(name.new),
            float(other.new),
            float(name.other),
            float(other.other),
            float(name.many),
            float(name.many == other.many),
        ]
        row += _numbers(likeness(name, other)) + _numbers(likest)
        row += [
            float(thing.last == at),
            math.log1p(thing.count) / 3,
            float(bool(thing.names)),
            float(likest.overlap == 1.0),
            float(earlier.utterance == mention.utterance),
        ]
        row += _one_of(mention.utterance - earlier.utterance, _DISTANCES) + _one_of(rank, _RANKS)
        row += [float(mention.kind == earlier.kind), float(mention.kind in thing.kinds)]
        for kinds in ({mention.kind}, {earlier.kind}, thing.kinds):
            row += [float(kind in kinds) for kind in POINTING_KINDS]
        return row


def _numbers(like: Likeness) -> list[float]:
    return [like.overlap, like.inside, like.around, like.head, like.letters]


def _one_of(value: int, bounds: Sequence[int]) -> list[float]:
    """One-hot: the first bound that holds the value, the last place for more."""
    place = next((at for at, bound in enumerate(bounds) if value <= bound), len(bounds))
    return [float(at == place) for at in range(len(bounds) + 1)]
