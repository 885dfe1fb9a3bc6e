"""Stretches of talk that may be a name: up to three words that carry meaning, side by side."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from spacy.lang.en.stop_words import STOP_WORDS

from benchnotes.language.belonging.likeness import POINTING, singular
from benchnotes.language.belonging.naming import LEFT_OUT

LONGEST = 3
"""Words of the longest stretch; names that the repairer said himself may be longer."""
_PLACES = frozenset(("front", "back", "top", "bottom", "side", "full"))
_FILLED_IN = frozenset(
    [
        "oh",
        "uh",
        "um",
        "yeah",
        "ok",
        "okay",
        "got",
        "going",
        "gonna",
        "i",
        "ve",
        "ll",
        "re",
        "s",
        "t",
        "d",
        "m",
        "don",
        "didn",
        "isn",
        "wasn",
        "that",
    ]
)
_NO_NAME = ((frozenset(STOP_WORDS) - _PLACES) | _FILLED_IN | LEFT_OUT | POINTING) - {"right"}
_WORD = re.compile(r"[A-Za-z0-9]+(?:['’./-][A-Za-z0-9]+)*")
_STOP = re.compile(r"[.,;:!?]")


@dataclass(frozen=True, slots=True)
class Phrase:
    name: str
    """Lower case, singular."""
    first: bool
    """Nothing that carries meaning stands before it."""
    last: bool


@lru_cache(maxsize=4096)
def phrases(text: str) -> tuple[Phrase, ...]:
    """Every run of words without function words, figures or stops between, and every part of it."""
    found: list[Phrase] = []
    for run in _runs(text):
        for at in range(len(run)):
            for end in range(at + 1, min(len(run), at + LONGEST) + 1):
                name = " ".join([*run[at : end - 1], singular(run[end - 1])])
                found.append(Phrase(name, at == 0, end == len(run)))
    return tuple(phrase for phrase in found if len(phrase.name) > 1)


def spoken_words(text: str) -> frozenset[str]:
    return frozenset(hit.group().lower() for hit in _WORD.finditer(text))


def _runs(text: str) -> Iterator[list[str]]:
    run: list[str] = []
    before = 0
    for hit in _WORD.finditer(text):
        word = re.sub(r"['’]s$", "", hit.group().lower())
        names_nothing = word in _NO_NAME or word[0].isdigit()
        if run and (names_nothing or _STOP.search(text[before : hit.start()])):
            yield run
            run = []
        if not names_nothing:
            run = [*run, word]
        before = hit.end()
    if run:
        yield run
