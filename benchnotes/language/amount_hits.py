"""Where amounts stand in the talk: a spaCy component over the grammar of amounts that gives `doc._.amounts`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from spacy.language import Language
from spacy.tokens import Doc

from benchnotes.language.amounts.measures import measure_at
from benchnotes.language.amounts.numbers import number_at
from benchnotes.language.amounts.sums import sum_at
from benchnotes.language.amounts.tokens import Token, tokens
from benchnotes.language.amounts.unit_words import UnitWords
from benchnotes.language.vocabulary import NO_UNITS

AmountKind = Literal["money", "measure", "pair", "number"]


@dataclass(frozen=True, slots=True)
class AmountHit:
    """An amount: characters `start` to `end` of the text, half-open."""

    kind: AmountKind
    """money and measure carry a word or sign of their unit; a pair ("six fifty") and a number
    are bare."""
    start: int
    end: int
    unit: str = ""
    """The record's symbol of a measure's likeliest unit."""


@Language.factory("bench_amounts", assigns=["doc._.amounts"], default_config={})
def make_amounts(nlp: Language, name: str) -> Amounts:
    return Amounts()


class Amounts:
    """Gives `doc._.amounts`, in order. Made bare and then told the unit words, as spaCy's config carries only JSON."""

    def __init__(self) -> None:
        self.units: UnitWords = NO_UNITS
        Doc.set_extension("amounts", default=(), force=True)

    def learn(self, units: UnitWords) -> None:
        self.units = units

    def __call__(self, doc: Doc) -> Doc:
        doc._.amounts = tuple(amounts_in(doc.text, self.units))
        return doc


def amounts_in(text: str, units: UnitWords) -> Iterator[AmountHit]:
    """Every amount in `text`, in order, each as long as the grammar takes it."""
    said, at = tokens(text), 0
    while at < len(said):
        found = _amount_at(said, at, units)
        if found is None:
            at += 1
            continue
        kind, end, unit = found
        if _has_number(said, at, end):
            yield AmountHit(kind, said[at].start, said[end - 1].end, unit)
        at = end


def _has_number(said: Sequence[Token], start: int, end: int) -> bool:
    """A number is said in it: "a foot" and "the real thing" hold words of units and money and are no amounts."""
    return any(said[place].kind == "figure" or number_at(said, place) is not None for place in range(start, end))


def _amount_at(said: Sequence[Token], at: int, units: UnitWords) -> tuple[AmountKind, int, str] | None:
    money, measure = sum_at(said, at, units), measure_at(said, at, units)
    if money is not None and money.money is not None and (measure is None or money.end >= measure.end):
        return "money", money.end, ""
    if measure is not None and measure.meanings:
        return "measure", measure.end, measure.meanings[0].symbol
    if money is not None:
        # "six fifty" is said of money and hardly of anything else
        return "pair" if money.in_hundreds is not None else "number", money.end, ""
    return None if measure is None else ("number", measure.end, "")
