"""What to call a thing that was named in several ways: the repairer's own words, short, singular, lower case."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from benchnotes.language.belonging.likeness import DETERMINERS, POINTING, singular, taken_apart

LEFT_OUT = DETERMINERS | {
    "new", "fresh", "replacement", "second-hand", "another", "old", "poor", "little", "wee", "big", "bloody", "whole",
    "same", "actual", "rest", "lot", "bit", "one", "ones", "two", "three", "four", "five", "six", "seven", "eight",
    "nine", "ten", "twelve", "couple", "pair", "both", "all", "every", "each", "again", "here", "there", "of", "which",
    "what", "nice", "lovely", "proper", "just", "we", "i", "you", "me", "us",
}  # fmt: skip
"""Words before a name that are no part of it."""
SIDES = {
    "other", "left", "right", "top", "bottom", "front", "rear", "back", "inner", "outer", "upper", "lower", "first",
    "second", "third",
}  # fmt: skip


def plain_name(said: str) -> str:
    """ "the shaft of the cam" -> "cam shaft"; "Those two new tails" -> "tail"; empty where it only points."""
    words = re.findall(r"[\w'’./-]*\w", said.lower())
    words = _turned_round(words)
    while words and words[0] in LEFT_OUT:
        words = words[1:]
    while words and (words[-1] in POINTING or words[-1] in LEFT_OUT):
        words = words[:-1]
    if not words or all(word in POINTING or word in SIDES for word in words):
        return ""
    words = [word for word in words if word not in DETERMINERS]
    return " ".join([*words[:-1], singular(words[-1])])


def _turned_round(words: list[str]) -> list[str]:
    """ "X of the Y" is a "Y X", where both are names."""
    for link in ("of", "on", "for", "in"):
        if link in words[1:-1]:
            at = words.index(link, 1)
            first = [w for w in words[:at] if w not in LEFT_OUT]
            rest = [w for w in words[at + 1 :] if w not in LEFT_OUT and w not in POINTING]
            if first and rest and link == "of":
                return [*rest[:-1], singular(rest[-1]), *first]
            return words[:at] if first else rest
    return words


def best_name(said: Sequence[str | None]) -> str | None:
    """The name for one thing, from all that it was called, in order; None where it was only pointed at.

    The name said most often; among those the one that says most, up to three words; among those the first.
    """
    names = [name for each in said if each and not taken_apart(each).points and (name := plain_name(each))]
    if not names:
        return None
    often = Counter(names)
    return max(dict.fromkeys(names), key=lambda name: (often[name], min(3, len(name.split())), -names.index(name)))
