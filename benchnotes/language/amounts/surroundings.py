"""The talk around an amount, and how near a word stands in it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from benchnotes.language.amounts.tokens import Token, tokens
from benchnotes.language.amounts.unit_words import Phrase

Where = Mapping[str, Sequence[int]]
"""The places of each word."""
SENTENCE_ENDS = frozenset(".!?…")
SENTENCE_STEP = 4
UTTERANCE_STEP = 8
"""How many words further a sentence or an utterance border makes a word count as. Chosen on half of the narrations."""
NAME_WEIGHT = 2.5
HALFWAY = 6
"""A word this many words away counts half."""


@dataclass(frozen=True)
class Around:
    """Text before and after an amount, and the name of the thing that it is said of.

    `before` and `after` may run over several utterances, one a line: a nearer one counts more.
    """

    what: str = ""
    before: str = ""
    after: str = ""

    @cached_property
    def name(self) -> tuple[Token, ...]:
        return tokens(self.what)

    @cached_property
    def left(self) -> tuple[Token, ...]:
        return tokens(self.before)

    @cached_property
    def right(self) -> tuple[Token, ...]:
        return tokens(self.after)

    @cached_property
    def left_steps(self) -> tuple[int, ...]:
        """Distance of every token of `left` from the amount."""
        steps = _steps(self.before[::-1], [(len(self.before) - t.end, t.text) for t in reversed(self.left)])
        return tuple(reversed(steps))

    @cached_property
    def right_steps(self) -> tuple[int, ...]:
        return _steps(self.after, [(t.start, t.text) for t in self.right])

    def names(self, phrases: Iterable[Phrase]) -> bool:
        """Whether any of `phrases` is in the name of the thing."""
        return any(_places(self.name, self._where_name, said) for said in phrases)

    def nearness(self, phrases: Iterable[Phrase]) -> float:
        """How near any of `phrases` stands: 2.5 in the name, 2 beside the amount, falling to 0."""
        best = 0.0
        for said in phrases:
            if _places(self.name, self._where_name, said):
                return NAME_WEIGHT
            for at in _places(self.left, self._where_left, said):
                best = max(best, weight(self.left_steps[at + len(said) - 1]))
            for at in _places(self.right, self._where_right, said):
                best = max(best, weight(self.right_steps[at]))
        return best

    @cached_property
    def _where_name(self) -> Where:
        return _where(self.name)

    @cached_property
    def _where_left(self) -> Where:
        return _where(self.left)

    @cached_property
    def _where_right(self) -> Where:
        return _where(self.right)


def weight(steps: int) -> float:
    """2 beside the amount, 1 half a sentence away."""
    return 2.0 / (1 + steps / HALFWAY)


def _where(said: Sequence[Token]) -> Where:
    where: dict[str, list[int]] = {}
    for at, token in enumerate(said):
        where.setdefault(token.text, []).append(at)
    return where


def _places(said: Sequence[Token], where: Where, wanted: Phrase) -> list[int]:
    starts = where.get(wanted[0], ())
    length = len(wanted)
    return [at for at in starts if length == 1 or tuple(token.text for token in said[at : at + length]) == wanted]


def _steps(text: str, places: Sequence[tuple[int, str]]) -> tuple[int, ...]:
    """Words from the near end of `text`, with borders counted as several words."""
    steps, far, last = [], 0, 0
    for start, word in places:
        far += UTTERANCE_STEP * text.count("\n", last, start)
        steps.append(far)
        far += SENTENCE_STEP if word in SENTENCE_ENDS else int(word[0].isalnum())
        last = start
    return tuple(steps)
