"""What says that an amount is a guess, that it was taken back, or that it is of each."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from benchnotes.language.amounts import numerals
from benchnotes.language.amounts.tokens import Token

Of = Literal["each", "pair", "all"]
BEFORE = (
    "about", "around", "roughly", "approximately", "approx", "maybe", "perhaps", "near enough", "nearly", "almost",
    "more or less", "like", "somewhere around", "somewhere near", "somewhere round", "i want to say", "some",
    "something like", "round about", "in the region of", "call it", "best part of", "say about", "circa", "ish",
    "give or take", "probably", "getting on for", "close to", "just over", "just under", "a bit over",
    "a bit under", "i think", "i reckon", "reckon", "might be", "ballpark", "somewhere between", "between",
    "up to", "north of", "i believe", "we'll say", "i'd say", "i'd call", "call them", "call that", "call those",
    "let's say", "towards", "near", "nearer", "about the", "~", "guess", "i guess", "shy of",
)  # fmt: skip
AFTER = (
    "or so", "ish", "odd", "some", "or thereabouts", "thereabouts", "give or take", "more or less", "roughly",
    "or near it", "or near enough", "near enough", "or something", "something", "i think", "i reckon", "i guess",
    "i believe", "ballpark", "i'd say", "or a bit more", "or a bit less", "or the like", "or around that",
    "and change", "and a bit", "odds", "call it", "or in that region", "in that region", "or about that",
    "if memory serves",
)  # fmt: skip
TAKEN_BACK = (
    "no sorry", "sorry", "no wait", "wait", "i tell a lie", "hang on", "hold on", "correction", "i mean",
    "scratch that", "rather", "excuse me", "i beg your pardon", "no no", "pardon me", "my mistake", "make that",
    "no call it", "no make it", "let me amend that", "let me correct that", "i lie", "i'm lying", "beg pardon",
    "call it", "no ,",
)  # fmt: skip
OF_EACH = (
    "each", "apiece", "a piece", "per piece", "per", "a metre", "a meter", "a foot", "a pop", "a go", "the each",
    "every one", "a litre",
)  # fmt: skip
OF_PAIR = (
    "a pair", "the pair", "per pair", "for two", "for the two", "for the pair", "for both",
)  # fmt: skip
OF_ALL = (
    "the lot", "for the lot", "the set", "a set", "for the set", "all in", "altogether", "in all", "all told",
    "for all of them",
)  # fmt: skip

RANGE_WORDS = frozenset({"to", "or", "and", "-", "till"})
"""What stands between the ends of a range."""
REACH = 2
"""How many words before an amount a word of doubt may stand: "about, I'd say, forty"."""


def said_about(inside: Sequence[Token], left: Sequence[Token], right: Sequence[Token]) -> bool:
    """Whether the amount is an estimate, by its own words or those right beside it."""
    words = _line(inside)
    if _any(words, BEFORE) or _any(words, AFTER):
        return True
    return _any(_line(_breath(left[::-1])[:REACH][::-1]), BEFORE) or _any(_line(_breath(right)[: REACH + 2]), AFTER)


def _breath(said: Sequence[Token]) -> list[Token]:
    """Up to the end of the sentence, or to the next number."""
    near: list[Token] = []
    for token in said:
        if token.text in {".", "?", "!", ";"} or token.kind == "figure" or token.text in numerals.UNITS:
            break
        if token.kind == "word" or token.text == "~":
            near.append(token)
    return near


def taken_back(inside: Sequence[Token]) -> int:
    """The token after the last words that take back what was said before them; 0 where none do."""
    last = 0
    for words in TAKEN_BACK:
        wanted = words.split()
        for at in range(len(inside) - len(wanted) + 1):
            if [token.text for token in inside[at : at + len(wanted)]] == wanted:
                last = max(last, at + len(wanted))
    return last


def of_what(inside: Sequence[Token], right: Sequence[Token]) -> Of | None:
    """ "each", "pair" or "all": what a price is of, where words in it or right after it tell."""
    words, after = _line(inside), _line(right[:4])
    kinds: tuple[tuple[Of, tuple[str, ...]], ...] = (("pair", OF_PAIR), ("all", OF_ALL), ("each", OF_EACH))
    return next((of for of, phrases in kinds if _ends(words, phrases) or _starts(after, phrases)), None)


def _line(said: Sequence[Token]) -> str:
    return " ".join(["", *(token.text for token in said), ""])


def _any(line: str, phrases: Sequence[str]) -> bool:
    return any(f" {phrase} " in line for phrase in phrases)


def _starts(line: str, phrases: Sequence[str]) -> bool:
    return any(line.startswith(f" {phrase} ") for phrase in phrases)


def _ends(line: str, phrases: Sequence[str]) -> bool:
    return any(line.endswith(f" {phrase} ") for phrase in phrases)
