"""Numbers to be checked by ear: a number that two readings do not agree on is less probable than either says.

After this, a threshold on Word.probability is all that later layers need.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from difflib import SequenceMatcher

from benchnotes.record.heard import Utterance, Word
from benchnotes.speech.number_sense import DIGITS
from benchnotes.speech.unheard import keys

CHECK_BELOW = 0.55
"""A number less probable than this is marked to be checked by ear; measured on spoken narrations (DEVELOPERS.md)."""
DISAGREED = 0.5
"""What is left of a number's probability where the other reading has something else in its place."""

NUMBER_WORDS = frozenset(
    [
        "zero",
        "nought",
        "oh",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
        "twenty",
        "thirty",
        "forty",
        "fifty",
        "sixty",
        "seventy",
        "eighty",
        "ninety",
        "hundred",
        "thousand",
        "half",
        "quarter",
        "quarters",
        "third",
        "thirds",
        "eighth",
        "eighths",
        "sixteenth",
        "sixteenths",
        "tenth",
        "tenths",
        "double",
        "point",
        "dozen",
        "fiver",
        "tenner",
    ]
)
"""English words that say a number, or a piece of one. "one" says one only beside another of them."""


def doubtful_words(utterance: Utterance) -> tuple[int, ...]:
    """Indexes of the number words of an utterance that are to be checked by ear."""
    return tuple(
        i
        for i in number_words(utterance.words)
        if utterance.words[i].probability is not None and (utterance.words[i].probability or 0.0) < CHECK_BELOW
    )


def number_words(words: Sequence[Word]) -> tuple[int, ...]:
    """Indexes of the words that say a number: a digit in it, or a number word (both of "one fifty")."""
    plain = [word.text.casefold().replace("-", " ").split() for word in words]
    said = [any(_is_number(part) for part in parts) for parts in plain]
    return tuple(i for i, parts in enumerate(plain) if said[i] or (_bare(parts) == "one" and _beside(plain, said, i)))


def _beside(plain: Sequence[Sequence[str]], said: Sequence[bool], i: int) -> bool:
    """A number word stands next to word `i`, or beyond an "and": "a hundred and one"."""
    before = i - 2 if i >= 2 and _bare(plain[i - 1]) == "and" else i - 1
    after = i + 2 if i + 2 < len(said) and _bare(plain[i + 1]) == "and" else i + 1
    return (before >= 0 and said[before]) or (after < len(said) and said[after])


def _bare(parts: Sequence[str]) -> str:
    return parts[0].strip(".,?!;:") if len(parts) == 1 else ""


def _is_number(part: str) -> bool:
    return any(c.isdigit() for c in part) or part.strip(".,?!;:'\"") in NUMBER_WORDS


def weighed(words: Sequence[Word], other: Sequence[Word]) -> tuple[Word, ...]:
    """The words, each number as probable as the other reading of the same sound says; less where it has another.

    `other` is the reading that knows how sure it is of a value (`number_sense`).
    """
    paired: dict[int, int] = {}
    for i, j, size in SequenceMatcher(None, _values(words), _values(other), autojunk=False).get_matching_blocks():
        paired.update(zip(range(i, i + size), range(j, j + size), strict=True))
    weighed_words = list(words)
    for i in number_words(words):
        own_p = words[i].probability or 0.0
        p = other[paired[i]].probability if i in paired else own_p * DISAGREED
        weighed_words[i] = replace(words[i], probability=p)
    return tuple(weighed_words)


def _values(words: Sequence[Word]) -> list[str]:
    """Words as they are compared: "forty" and "40" are one, "4-thou" is the 4 of "4 thou"."""
    return ["".join(c for c in key if c.isdigit()) or DIGITS.get(key, key) for key in keys(words)]
