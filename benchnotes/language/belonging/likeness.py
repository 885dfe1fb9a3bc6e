"""How alike two names of a thing are: "this filler cap" and "the cap". Words only, no meaning."""

from __future__ import annotations

import re
from dataclasses import dataclass
from difflib import SequenceMatcher
from functools import lru_cache

POINTING = frozenset(
    [
        "it",
        "its",
        "they",
        "them",
        "these",
        "those",
        "this",
        "that",
        "one",
        "ones",
        "some",
        "any",
        "he",
        "him",
        "she",
        "her",
        "his",
        "which",
        "what",
        "everything",
        "all",
        "lot",
        "thing",
        "things",
        "both",
        "either",
        "neither",
        "each",
        "here",
        "there",
        "mine",
        "yours",
        "theirs",
    ]
)
"""Words that point at a thing without naming it."""
DETERMINERS = frozenset(
    [
        "the",
        "a",
        "an",
        "this",
        "that",
        "these",
        "those",
        "my",
        "your",
        "his",
        "her",
        "its",
        "their",
        "our",
        "some",
        "any",
        "another",
    ]
)
NEW = frozenset(["a", "an", "another", "new", "fresh", "replacement", "some"])
OTHER = frozenset(["other", "others", "second", "another", "next", "opposite"])
MANY = frozenset(
    ["both", "these", "those", "they", "them", "all", "pair", "ones", "two", "three", "four", "five", "six", "eight"]
)
FILLERS = frozenset(
    [
        "of",
        "on",
        "in",
        "for",
        "to",
        "and",
        "at",
        "from",
        "with",
        "up",
        "off",
        "new",
        "old",
        "same",
        "whole",
        "little",
        "big",
        "bloody",
        "poor",
        "very",
        "own",
    ]
)


@dataclass(frozen=True, slots=True)
class Name:
    """A name as said, taken apart."""

    said: str
    words: tuple[str, ...]
    """What names it: lower case, singular, no determiners."""
    points: bool
    """It only points: "it", "those", "this one"."""
    new: bool
    other: bool
    many: bool

    @property
    def head(self) -> str:
        return self.words[-1] if self.words else ""


def singular(word: str) -> str:
    if len(word) > 3 and word.endswith("ies"):
        return word[:-3] + "y"
    if len(word) > 4 and word.endswith(("ses", "xes", "ches", "shes")):
        return word[:-2]
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is")):
        return word[:-1]
    return word


@lru_cache(maxsize=65536)
def taken_apart(said: str | None) -> Name:
    """`said` letter by letter, or None where nothing names the thing."""
    raw = re.findall(r"[a-z0-9]+(?:'[a-z]+)?", (said or "").lower())
    bare = [word.removesuffix("'s") for word in raw]
    words = tuple(singular(w) for w in bare if w not in DETERMINERS and w not in FILLERS and w not in POINTING)
    return Name(
        said=said or "",
        words=words,
        points=not [w for w in words if w not in OTHER],
        new=any(w in NEW for w in bare),
        other=any(w in OTHER for w in bare),
        many=any(w in MANY or singular(w) != w for w in bare),
    )


@dataclass(frozen=True, slots=True)
class Likeness:
    """Each 0 to 1."""

    overlap: float
    """Jaccard index of the words."""
    inside: float
    """Share of the first name's words that the second has."""
    around: float
    head: float
    letters: float

    @property
    def best(self) -> float:
        return max(self.overlap, 0.75 * self.head * max(self.inside, self.around), self.letters * (self.letters > 0.8))


NOTHING = Likeness(0, 0, 0, 0, 0)


@lru_cache(maxsize=262144)
def likeness(first: Name, second: Name) -> Likeness:
    if first.points or second.points:
        return NOTHING
    one, two = set(first.words), set(second.words)
    both = len(one & two)
    letters = SequenceMatcher(None, "".join(first.words), "".join(second.words)).ratio()
    return Likeness(
        overlap=both / len(one | two),
        inside=both / len(one),
        around=both / len(two),
        head=float(first.head == second.head),
        letters=letters,
    )
