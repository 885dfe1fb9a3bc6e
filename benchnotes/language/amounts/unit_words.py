"""Unit and money words, built from plain data (`benchnotes/trades/units.toml`), strictly: an unknown key is refused."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from typing import Any, TypeVar, cast

from benchnotes.language.amounts.tokens import Token, tokens
from benchnotes.record.terms import UNITS, Unit

Phrase = tuple[str, ...]
Meaning = TypeVar("Meaning")
LONE_LETTERS = frozenset({"a", "c", "f", "g", "l", "n"})
"""Unit letters that are also words or names: taken only glued to figures ("3A") or as a capital after figures."""

KEYS = {
    "": {"unit", "hint", "money", "hundreds_said_in_two", "temperature", "usual"},
    "unit": {"words", "symbol", "times", "near", "by_country"},
    "hint": {"words", "symbol", "currencies"},
    "money": {"words", "currencies", "times"},
    "temperature": {"fahrenheit"},
}


class UnitWordsError(ValueError):
    """The unit words cannot be used; the message names the entry and the key, and what is allowed."""


@dataclass(frozen=True, slots=True)
class UnitMeaning:
    """One thing that a unit word may mean: `times` of the record's `symbol`."""

    symbol: Unit
    times: Decimal
    near: tuple[Phrase, ...]
    """Words that must stand around it for this meaning; empty for the usual meaning."""
    by_country: bool = False
    """Celsius or Fahrenheit, as the country has it."""


@dataclass(frozen=True, slots=True)
class MoneyMeaning:
    """A word or sign of money, worth `times` of the currency's unit."""

    currencies: tuple[str, ...]
    times: Decimal

    def currency(self, of_job: str) -> str:
        """The job's currency where the word fits it ("dollar" in Canada), else the word's usual one."""
        return of_job if of_job in self.currencies else self.currencies[0]


@dataclass(frozen=True, slots=True)
class Hint:
    """Words that tell what a bare number measures."""

    words: tuple[Phrase, ...]
    symbol: Unit
    currencies: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class UnitWords:
    """All words that turn a number into a reading or a price."""

    units: Mapping[Phrase, tuple[UnitMeaning, ...]]
    money: Mapping[Phrase, MoneyMeaning]
    hints: tuple[Hint, ...]
    hundreds_said_in_two: frozenset[str]
    """Currencies in which "six fifty" is 650."""
    usual: Mapping[Unit, tuple[Decimal, Decimal]]
    """The range in which bench values of a unit mostly lie."""
    fahrenheit: frozenset[str]
    """Currencies of the countries in which bare degrees are Fahrenheit."""

    @classmethod
    def from_mapping(cls, data: Mapping[str, Any]) -> UnitWords:
        """Reads the tables of `units.toml`, or several laid over each other. Raises UnitWordsError."""
        _known(data, "", "the file")
        temperature = data.get("temperature", {})
        _known(temperature, "temperature", "[temperature]")
        return cls(
            units=_units(data.get("unit", ())),
            money=_money(data.get("money", ())),
            hints=tuple(_hint(entry) for entry in data.get("hint", ())),
            hundreds_said_in_two=frozenset(data.get("hundreds_said_in_two", ())),
            usual=_usual(data.get("usual", {})),
            fahrenheit=frozenset(temperature.get("fahrenheit", ())),
        )

    def unit_at(self, said: Sequence[Token], at: int) -> tuple[tuple[UnitMeaning, ...], int] | None:
        """The meanings of the longest unit word at token `at`, and the token after it."""
        found = _longest(self.units, said, at)
        return None if found is None or not _letter_stands(said, at, found[1]) else found

    def money_at(self, said: Sequence[Token], at: int) -> tuple[MoneyMeaning, int] | None:
        """The money word or sign at token `at`, and the token after it."""
        found = _longest(self.money, said, at)
        return None if found is None or not _letter_stands(said, at, found[1]) else found

    def unit_named_alone(self, said: Sequence[Token], at: int) -> Unit | None:
        """The unit of a plural said without a number ("meter on ohms"), where the word means nothing else."""
        word = (said[at].text,)
        plural = len(word[0]) > 4 and word[0].endswith("s")
        if not plural or word not in self.units or word in self.money or any(word in hint.words for hint in self.hints):
            return None
        return self.units[word][0].symbol


def phrase(words: str) -> Phrase:
    return tuple(token.text for token in tokens(words))


def _longest(table: Mapping[Phrase, Meaning], said: Sequence[Token], at: int) -> tuple[Meaning, int] | None:
    for length in range(min(5, len(said) - at), 0, -1):
        meaning = table.get(tuple(token.text for token in said[at : at + length]))
        if meaning is not None:
            return meaning, at + length
    return None


def _letter_stands(said: Sequence[Token], at: int, end: int) -> bool:
    token = said[at]
    if end - at > 1 or token.text not in LONE_LETTERS:
        return True
    after_figures = at > 0 and said[at - 1].kind == "figure"
    return after_figures and (token.glued or token.written.isupper())


def _known(entry: Mapping[str, Any], table: str, where: str) -> None:
    for key in entry:
        if key not in KEYS[table]:
            raise UnitWordsError(f"{where}: {key!r} is not known here; allowed are {', '.join(sorted(KEYS[table]))}")


def _words(entry: Mapping[str, Any], table: str) -> tuple[Phrase, ...]:
    words = entry.get("words")
    if not isinstance(words, (list, tuple)) or not words or not all(isinstance(word, str) and word for word in words):
        raise UnitWordsError(f"[[{table}]] needs words, a list of words: {entry!r}")
    _known(entry, table, f"[[{table}]] {words[0]!r}")
    return tuple(phrase(word) for word in words)


def _with_plurals(phrases: Sequence[Phrase]) -> tuple[Phrase, ...]:
    plurals = [(*said[:-1], said[-1] + "s") for said in phrases if len(said[-1]) > 2 and not said[-1].endswith("s")]
    return (*phrases, *plurals)


def _symbol(entry: Mapping[str, Any]) -> Unit:
    symbol = entry.get("symbol")
    if symbol not in UNITS:
        raise UnitWordsError(f"{entry['words'][0]!r}: symbol {symbol!r} is none of {', '.join(UNITS)}")
    return cast(Unit, symbol)


def _times(entry: Mapping[str, Any]) -> Decimal:
    try:
        times = Decimal(str(entry.get("times", "1")))
    except InvalidOperation:
        times = Decimal(0)
    if not times.is_finite() or times <= 0:
        raise UnitWordsError(f"{entry['words'][0]!r}: times must be a number above 0, not {entry['times']!r}")
    return times


def _units(entries: Sequence[Mapping[str, Any]]) -> Mapping[Phrase, tuple[UnitMeaning, ...]]:
    table: dict[Phrase, tuple[UnitMeaning, ...]] = {}
    for entry in entries:
        words = _words(entry, "unit")
        near = tuple(phrase(word) for word in entry.get("near", ()))
        meaning = UnitMeaning(_symbol(entry), _times(entry), near, entry.get("by_country", False) is True)
        for word in _with_plurals(words):
            table[word] = _laid_over(table.get(word, ()), meaning)
    return table


def _laid_over(earlier: tuple[UnitMeaning, ...], meaning: UnitMeaning) -> tuple[UnitMeaning, ...]:
    """The usual meaning first; a later usual one (a user's own word) takes the place of an earlier."""
    if meaning.near:
        return earlier if meaning in earlier else (*earlier, meaning)
    return (meaning, *(other for other in earlier if other.near))


def _money(entries: Sequence[Mapping[str, Any]]) -> Mapping[Phrase, MoneyMeaning]:
    table: dict[Phrase, MoneyMeaning] = {}
    for entry in entries:
        words = _words(entry, "money")
        currencies = tuple(entry.get("currencies", ()))
        if not currencies:
            raise UnitWordsError(f"[[money]] {entry['words'][0]!r} needs currencies, a list of ISO 4217 codes")
        meaning = MoneyMeaning(currencies, _times(entry))
        table.update(dict.fromkeys(_with_plurals(words), meaning))
    return table


def _hint(entry: Mapping[str, Any]) -> Hint:
    return Hint(_with_plurals(_words(entry, "hint")), _symbol(entry), tuple(entry.get("currencies", ())))


def _usual(table: Mapping[str, Sequence[Any]]) -> Mapping[Unit, tuple[Decimal, Decimal]]:
    usual: dict[Unit, tuple[Decimal, Decimal]] = {}
    for symbol, limits in table.items():
        if symbol not in UNITS or len(limits) != 2:
            raise UnitWordsError(f"[usual] {symbol!r}: needs a unit of the record and its lower and upper limit")
        usual[symbol] = (Decimal(str(limits[0])), Decimal(str(limits[1])))
    return usual
