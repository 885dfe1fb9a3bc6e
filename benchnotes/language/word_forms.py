"""The forms in which a listed verb or noun may be said, by the spelling rules of English and a list of exceptions.

Rules: Quirk, Greenbaum, Leech and Svartvik 1985, 3.4-3.10 (verbs) and 5.80 (plurals), as far as trade words need them.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Literal

Form = Literal["base", "s", "ing", "past"]
VOWELS = "aeiou"


def verb_forms(verb: str, irregular: Mapping[str, Sequence[str]]) -> dict[str, Form]:
    """Every form of a verb: "fit" -> fit, fits, fitting, fitted. A past that is also the base ("cut") is the base."""
    forms: dict[str, Form] = {}
    exceptions = tuple(irregular.get(_without_prefix(verb, irregular), ()))
    prefix = verb[: len(verb) - len(_without_prefix(verb, irregular))]
    for past in exceptions or (_with_ed(verb),):
        forms[prefix + past if exceptions else past] = "past"
    forms[_with_ing(verb)] = "ing"
    forms[_with_s(verb)] = "s"
    forms[verb] = "base"
    return forms


def noun_forms(noun: str) -> tuple[str, ...]:
    """One and many: "bush" -> bush, bushes. What is already many stays as it is."""
    if noun.endswith("s") and not noun.endswith("ss"):
        return (noun,)
    return (noun, _with_s(noun))


def _without_prefix(verb: str, irregular: Mapping[str, Sequence[str]]) -> str:
    """ "rewind" -> "wind" where "rewind" is not listed itself; the verb as it is where nothing is listed."""
    if verb in irregular or not verb.startswith("re"):
        return verb
    bare = verb[2:].lstrip("-")
    return bare if bare in irregular else verb


def _with_s(word: str) -> str:
    if word.endswith(("s", "x", "z", "ch", "sh")):
        return word + "es"
    if word.endswith("y") and word[-2:-1] not in VOWELS:
        return word[:-1] + "ies"
    return word + "s"


def _with_ed(verb: str) -> str:
    if verb.endswith("e"):
        return verb + "d"
    if verb.endswith("y") and verb[-2:-1] not in VOWELS:
        return verb[:-1] + "ied"
    return verb + (verb[-1] if _doubles(verb) else "") + "ed"


def _with_ing(verb: str) -> str:
    if verb.endswith("ie"):
        return verb[:-2] + "ying"
    if verb.endswith("e") and not verb.endswith(("ee", "oe", "ye")) and len(verb) > 2:
        return verb[:-1] + "ing"
    return verb + (verb[-1] if _doubles(verb) else "") + "ing"


def _doubles(verb: str) -> bool:
    """One syllable, one vowel, one consonant at its end: "slip", "refit"; never w, x or y."""
    bare = verb[2:] if verb.startswith("re") and len(verb) > 4 else verb
    if len(bare) < 3 or bare[-1] in VOWELS + "wxy":
        return False
    return bare[-2] in VOWELS and bare[-3] not in VOWELS and sum(letter in VOWELS for letter in bare) == 1
