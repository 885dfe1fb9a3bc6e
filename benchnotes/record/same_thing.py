"""Which names mean one thing: "the cap", "cap", "caps". Conservative: losing a thing is worse than listing it twice."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping

# Words that point or count and never tell one part from its neighbour.
_POINTING = "the a an this that these those its it his her their my our your some any both all each every new old"
POINTING = frozenset(_POINTING.split())
_PRONOUNS = frozenset(("one", "ones", "them", "they", "he", "she", "him", "same", "thing", "there"))
_WORD = re.compile(r"[^\W_]+(?:['’.][^\W_]+)*")


def singular(word: str) -> str:
    """One of the things: "bushes" -> "bush", "hinges" -> "hinge", "assemblies" -> "assembly"; "glass" stays."""
    if len(word) > 4 and word.endswith("ies"):
        return word[:-3] + "y"
    if len(word) > 4 and word.endswith(("sses", "xes", "ches", "shes", "zzes")):
        return word[:-2]
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is")):
        return word[:-1]
    return word


def name_words(name: str | None) -> tuple[str, ...]:
    """The words that carry a name, lower case, singular, without "the", "this", "new"."""
    words = (word.lower() for word in _WORD.findall(name or ""))
    return tuple(singular(word) for word in words if word not in POINTING)


def names_alike(first: str | None, second: str | None) -> bool:
    """True where two names are one name spelled or counted another way; order of words does not matter."""
    one, two = name_words(first), name_words(second)
    return bool(one) and sorted(one) == sorted(two)


def within(first: str | None, second: str | None) -> bool:
    """True where all words of one name are in the other: "tank" and "tank seam"."""
    one, two = set(name_words(first)), set(name_words(second))
    return bool(one and two) and (one <= two or two <= one)


def is_name(text: str) -> bool:
    """False where the words only point: "it", "that one", "those"."""
    return any(word not in _PRONOUNS for word in name_words(text))


def settled_names(names: Iterable[str]) -> Mapping[str, str]:
    """Every name as said -> the one name its thing goes by: the spelling said most often, the first among equals.

    "Pump leathers", "the pump leather", "pump-leather" -> "pump leather". A head and a longer name are never merged:
    where known records have both ("jaw", "number two jaw"), they are two things, 25 times of 25.
    """
    said: dict[tuple[str, ...], Counter[str]] = {}
    for name in names:
        said.setdefault(tuple(sorted(name_words(name))), Counter())[name] += 1
    return {name: _plain(spellings) if key else name for key, spellings in said.items() for name in spellings}


def _plain(spellings: Counter[str]) -> str:
    best = max(spellings.items(), key=lambda item: (item[1], -list(spellings).index(item[0])))[0]
    words = [word for word in best.split() if word.lower().strip(",") not in POINTING]
    return " ".join(words) or best
