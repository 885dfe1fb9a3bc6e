"""The words that a reader goes by: frozen, and built from plain mappings, so that nothing here opens a file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from benchnotes.language.amounts.unit_words import UnitWords
from benchnotes.language.vocabulary_sheets import Content, Phrase, Sheet, read_sheet
from benchnotes.record.terms import Power, TrialKind

GAP = "~"
"""In a phrase: up to four words may stand here."""


NO_UNITS = UnitWords.from_mapping({})


@dataclass(frozen=True, slots=True)
class Hazard:
    name: str
    about: str
    caution: str
    """One sentence that defers to local codes and licensed practice."""


@dataclass(frozen=True, slots=True)
class MachineKind:
    """What follows from a kind of machine without anyone saying it."""

    words: tuple[str, ...]
    """Names of this kind, lower case."""
    power: Power | None
    """None where the kind does not tell, or has none (a violin)."""
    holds_pressure: bool
    checks: tuple[TrialKind, ...]
    """Trials that it has to pass before it goes back."""
    hazards: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Trade:
    title: str
    words: tuple[str, ...]
    """Part names and other words that a recogniser should expect, as written in its file."""


@dataclass(frozen=True, slots=True)
class Vocabulary:
    phrases: tuple[Phrase, ...] = ()
    irregular: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Verb -> its past forms, where spelling does not give them."""
    machines: tuple[MachineKind, ...] = ()
    hazards: Mapping[str, Hazard] = field(default_factory=dict)
    units: UnitWords = NO_UNITS
    trades: Mapping[str, Trade] = field(default_factory=dict)
    """By file name without its ending, in order of reading."""

    def listed(self, group: str, kind: str | None = None) -> tuple[Phrase, ...]:
        """Phrases of a group, and of one kind in it where that is given, in order of reading."""
        return tuple(p for p in self.phrases if p.group == group and kind in (None, p.kind))


def gather(sheets: Sequence[Sheet], *, units: UnitWords = NO_UNITS) -> Vocabulary:
    """One vocabulary from sheets in order.

    A sheet that lies `over` the others replaces what its phrases meant before, takes out what it lists under
    `forget`, and puts its kinds of machine first. VocabularyError names the sheet and the key that is wrong.
    """
    contents = [(sheet, read_sheet(sheet)) for sheet in sheets]
    phrases: dict[Phrase, None] = {}
    irregular: dict[str, tuple[str, ...]] = {}
    for sheet, content in contents:
        if sheet.over:
            phrases = _laid_over(phrases, content)
        phrases |= dict.fromkeys(content.phrases)
        irregular |= content.irregular
    return Vocabulary(
        phrases=tuple(phrases),
        irregular=irregular,
        machines=_machines(contents),
        hazards={h.name: h for _, c in contents for h in (Hazard(*row) for row in c.hazards)},
        units=units,
        trades=_trades(contents),
    )


def _laid_over(phrases: Mapping[Phrase, None], content: Content) -> dict[Phrase, None]:
    said_anew = {(p.group, p.text) for p in content.phrases}
    forgotten = set(content.forget)
    return {p: None for p in phrases if (p.group, p.text) not in said_anew and p.text not in forgotten}


def _machines(contents: Sequence[tuple[Sheet, Content]]) -> tuple[MachineKind, ...]:
    own_first = sorted(contents, key=lambda pair: not pair[0].over)
    return tuple(MachineKind(*row) for _, content in own_first for row in content.machines)


def _trades(contents: Sequence[tuple[Sheet, Content]]) -> dict[str, Trade]:
    trades: dict[str, Trade] = {}
    for sheet, content in contents:
        before = trades.get(sheet.name, Trade(content.title, ()))
        own = (*(p.text for p in content.phrases if p.group == "part"), *content.words)
        words = tuple(dict.fromkeys((*before.words, *own)))
        trades[sheet.name] = Trade(content.title or before.title, words)
    return trades


def bias_words(vocabulary: Vocabulary, trades: Sequence[str] = (), *, most: int = 120) -> tuple[str, ...]:
    """Words that tilt the recogniser: those of the trades named, rarest spelling first in their own order.

    Words of every trade follow where there is room. None named: all trades share the room in turn.
    """
    chosen = [vocabulary.trades[name].words for name in (trades or vocabulary.trades) if name in vocabulary.trades]
    shared = vocabulary.trades["common"].words if "common" in vocabulary.trades else ()
    longest = max((len(words) for words in chosen), default=0)
    in_turn = [words[place] for place in range(longest) for words in chosen if place < len(words)]
    return tuple(dict.fromkeys((*in_turn, *shared)))[:most]
