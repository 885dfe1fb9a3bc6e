"""What nobody says about a machine: what its kind implies, and what words about its power tell."""

from __future__ import annotations

from functools import cache

from benchnotes.language.vocabulary import MachineKind, Vocabulary
from benchnotes.record.terms import Power

NOT_THE_HEAD = ("and", "with", "in", "for", "of", "on")
"""Words after which what came before is still the machine: "lamp and stove", "pump in a case"."""


def implied(kind_words: str, vocabulary: Vocabulary) -> tuple[Power | None, bool]:
    """Power and whether it holds pressure: "old pressure lantern" -> liquid_fuel, True.

    A kind that is not listed holds no pressure (few machines do, and those are listed); its power is what its own
    name says ("petrol stirrer"), else None.
    """
    kind = kind_of(kind_words, vocabulary)
    if kind is None:
        return power_of(kind_words, vocabulary, hints=False), False
    return kind.power, kind.holds_pressure


def kind_of(kind_words: str, vocabulary: Vocabulary) -> MachineKind | None:
    """The kind whose name closes the words, else one before "and" or "with"; the longest name wins."""
    said = f"{_plain(kind_words)} "
    best: tuple[tuple[bool, int], MachineKind] | None = None
    for kind in vocabulary.machines:
        for name in map(_plain, kind.words):
            rank = (said.endswith(f"{name} "), len(name))
            if (rank[0] or _heads(name, said)) and (best is None or rank > best[0]):
                best = (rank, kind)
    return None if best is None else best[1]


def power_of(words: str, vocabulary: Vocabulary, *, hints: bool = True) -> Power | None:
    """The power that words about a machine tell: "pull the plug" -> mains.

    `hints`: the words are known to be about power, so that "by hand" tells it too. Phrases that tell it anywhere go
    before those that only hint; among them the longest decides; "no battery" tells nothing.
    """
    said = f"{_plain(words)} "
    listed = [p for p in vocabulary.listed("power") if hints or p.shape == "says"]
    found = [p for p in listed if _says(said, _plain(p.text))]
    if not found:
        return None
    power: Power = max(found, key=lambda p: (p.shape == "says", len(p.text))).kind  # type: ignore[assignment]
    return power  # the sheet allows no other kind in this group


def _heads(name: str, said: str) -> bool:
    return any(f"{name} {word} " in said for word in NOT_THE_HEAD)


def _says(said: str, phrase: str) -> bool:
    return f"{phrase} " in said and f" no{phrase} " not in said


@cache
def _plain(words: str) -> str:
    """Lower case after a space, without apostrophes and plural s; a hyphen is a space."""
    bare = words.lower().replace("’", "").replace("'", "")
    pieces = "".join(letter if letter.isalnum() else " " for letter in bare).split()
    return "".join(f" {p[:-1] if len(p) > 3 and p.endswith('s') and not p.endswith('ss') else p}" for p in pieces)
