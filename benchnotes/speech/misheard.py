"""Numbers to be checked by ear: a number that two readings do not agree on is less probable than either says.

After this, a threshold on Word.probability is all that later layers need.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from difflib import SequenceMatcher

from benchnotes.record.heard import Utterance, Word
from benchnotes.speech.number_sense import digits_of
from benchnotes.speech.unheard import keys

CHECK_BELOW = 0.5
"""A number less probable than this is marked to be checked by ear; measured (tests/speech/MEASURED.md)."""
REACH, FLOOR_P = 3, 0.01
"""Words on either side that tell how well the place was heard, and the least that one of them may count."""
SHARPER = 3
"""How much more doubt about the value counts than doubt about the words around it; measured with CHECK_BELOW."""
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

    A number among words that were hardly made out was hardly made out itself, so their probability counts too.
    `other` is the reading that knows how sure it is of a value (`number_sense`).
    """
    ours, theirs = _pieces(words), _pieces(other)
    matcher = SequenceMatcher(None, [text for text, _ in ours], [text for text, _ in theirs], autojunk=False)
    paired: dict[int, list[float]] = {}
    for a, b, size in matcher.get_matching_blocks():
        for k in range(size):
            paired.setdefault(ours[a + k][1], []).append(other[theirs[b + k][1]].probability or 0.0)
    weighed_words = list(words)
    numbers = set(number_words(words))
    for i in sorted(numbers):
        agreed = len(paired.get(i, ())) == sum(1 for _, word in ours if word == i)
        p = min(paired[i]) if agreed else (words[i].probability or 0.0) * DISAGREED
        weighed_words[i] = replace(words[i], probability=p**SHARPER * _made_out(words, i, numbers))
    return tuple(weighed_words)


def _made_out(words: Sequence[Word], i: int, numbers: set[int]) -> float:
    """Geometric mean of the probabilities of the words around a number, other numbers left out."""
    around = [
        max(FLOOR_P, words[k].probability or 0.0)
        for k in range(max(0, i - REACH), min(len(words), i + REACH + 1))
        if k not in numbers
    ]
    return math.prod(around) ** (1 / len(around)) if around else 1.0


def _pieces(words: Sequence[Word]) -> list[tuple[str, int]]:
    """Words as they are compared, each with its index; numbers digit by digit: "fifty nine" and "59" are one."""
    numbers = set(number_words(words))
    pieces: list[tuple[str, int]] = []
    for i, key in enumerate(keys(words)):
        digits = digits_of(words[i].text) if i in numbers else ""
        if len(digits) == 2 and digits[1] == "0" and i + 1 in numbers and not key.isdigit():
            digits = digits[0] if len(digits_of(words[i + 1].text)) == 1 else digits
        pieces += [(digit, i) for digit in digits] or [(key, i)]
    return pieces
