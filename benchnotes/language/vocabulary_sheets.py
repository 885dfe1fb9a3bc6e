"""One sheet of words as a plain mapping, checked key by key: an unknown key is refused by its name.

The form of a sheet is described for repairers in docs/adding-a-trade.md.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, cast

from benchnotes.record.terms import ACTIONS, CHARGE_KINDS, FAULT_KINDS, POWERS, TRIAL_KINDS, Power, TrialKind

Plain = Mapping[str, Any]
MachineRow = tuple[tuple[str, ...], Power | None, bool, tuple[TrialKind, ...], tuple[str, ...]]

SHAPES = ("is", "does", "has")
TRIGGERS = ("denied", "supposed", "planned", "failed", "lore", "hypothetical", "elsewhere", "asked", "ends")
SCOPES = ("forward", "backward", "clause", "pseudo")
OUTCOMES = ("tried", "passes", "fails")
SAYINGS = ("correction", "doubt", "settled", "leave", "advice")
MACHINE_KEYS = ("kind", "power", "holds_pressure", "checks", "hazards")


class VocabularyError(ValueError):
    """A sheet of words cannot be read: the message names the sheet, the key and what is allowed there."""


@dataclass(frozen=True, slots=True)
class Phrase:
    """Words of the trade and what they mean."""

    text: str
    """Lower case; a verb in its base form comes first where the group holds verbs; "~" stands for a few words."""
    group: str
    """part, set, not_part, price_word, idiom, condition, right, work, state, move, tried, passes, fails, verdict,
    charge, power, trigger or says."""
    kind: str = ""
    """Within the group: cracked, clean, fit, off, leak, labour, mains, denied, doubt ..."""
    shape: str = ""
    """is, does or has for conditions; the scope for triggers; says or hints for powers."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """What one file holds, before it is checked."""

    name: str
    """File name without its ending: the trade."""
    plain: Plain
    where: str = ""
    """How an error names it: the file's path."""
    over: bool = False
    """Laid over the others: its phrases replace what they meant before."""


@dataclass(frozen=True, slots=True)
class Content:
    """A checked sheet."""

    title: str = ""
    phrases: tuple[Phrase, ...] = ()
    words: tuple[str, ...] = ()
    forget: tuple[str, ...] = ()
    irregular: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    machines: tuple[MachineRow, ...] = ()
    hazards: tuple[tuple[str, str, str], ...] = ()


def read_sheet(sheet: Sheet) -> Content:
    """Check a sheet whole. VocabularyError at the first thing that is wrong."""
    where = sheet.where or sheet.name
    _known(where, "", sheet.plain, (*LISTS, *TABLES, "title", "words", "forget", "irregular", "machine", "hazards"))
    return Content(
        title=_text(where, "title", sheet.plain.get("title", "")),
        phrases=tuple(_phrases(where, sheet.plain)),
        words=_words(where, "words", sheet.plain.get("words", ())),
        forget=tuple(word.lower() for word in _words(where, "forget", sheet.plain.get("forget", ()))),
        irregular={k: _words(where, f"irregular.{k}", v) for k, v in _table(where, "irregular", sheet.plain).items()},
        machines=tuple(_machine(where, row) for row in _rows(where, sheet.plain)),
        hazards=tuple(_hazard(where, k, v) for k, v in _table(where, "hazards", sheet.plain).items()),
    )


LISTS: Mapping[str, str] = {
    "parts": "part",
    "sets": "set",
    "not_parts": "not_part",
    "price_words": "price_word",
    "idioms": "idiom",
}
"""Key of a plain list of words -> group of its phrases."""

TABLES: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "work": ("work", ACTIONS),
    "states": ("state", ("need", "order", "fit", "place", "drop")),
    "moves": ("move", ("off", "back")),
    "verdicts": ("verdict", ("pass", "fail", "unclear")),
    "charges": ("charge", CHARGE_KINDS),
    "powers": ("power", POWERS),
    "says": ("says", SAYINGS),
    "right": ("right", SHAPES),
    "conditions": ("condition", FAULT_KINDS),
    "trials": ("trial", TRIAL_KINDS),
    "triggers": ("trigger", TRIGGERS),
}
"""Key of a table -> group of its phrases and the keys allowed in it."""

DEEPER: Mapping[str, tuple[str, ...]] = {
    "conditions": SHAPES,
    "trials": OUTCOMES,
    "triggers": SCOPES,
    "powers": ("says", "hints"),
}
"""Tables of tables: the keys allowed one step down."""


def _phrases(where: str, plain: Plain) -> Iterable[Phrase]:
    for key, group in LISTS.items():
        yield from (Phrase(text.lower(), group) for text in _words(where, key, plain.get(key, ())))
    for key, (group, allowed) in TABLES.items():
        table = _table(where, key, plain)
        _known(where, key, table, allowed)
        for kind, value in table.items():
            named = f"{key}.{kind}"
            yield from (
                _deeper(where, named, group, kind, value) if key in DEEPER else _flat(where, named, group, kind, value)
            )


def _flat(where: str, named: str, group: str, kind: str, value: object) -> Iterable[Phrase]:
    shape = kind if group == "right" else ""
    return (Phrase(text.lower(), group, kind, shape) for text in _words(where, named, value))


def _deeper(where: str, named: str, group: str, kind: str, value: object) -> Iterable[Phrase]:
    table = _mapping(where, named, value)
    _known(where, named, table, DEEPER[named.split(".", maxsplit=1)[0]])
    for shape, words in table.items():
        texts = _words(where, f"{named}.{shape}", words)
        # the outcome of a trial is a group of its own: words that only try are no verdict
        of_group, of_shape = (shape, "") if group == "trial" else (group, shape)
        yield from (Phrase(text.lower(), of_group, kind, of_shape) for text in texts)


def _machine(where: str, row: object) -> MachineRow:
    table = _mapping(where, "machine", row)
    _known(where, "machine", table, MACHINE_KEYS)
    power = table.get("power")
    if power is not None:
        _known(where, "machine.power", {power: None}, POWERS)
    holds = table.get("holds_pressure", False)
    if not isinstance(holds, bool):
        raise VocabularyError(f"{where}: machine.holds_pressure is true or false, not {holds!r}.")
    checks = _words(where, "machine.checks", table.get("checks", ()))
    _known(where, "machine.checks", dict.fromkeys(checks), TRIAL_KINDS)
    kinds = tuple(word.lower() for word in _words(where, "machine.kind", table.get("kind", ())))
    hazards = _words(where, "machine.hazards", table.get("hazards", ()))
    # both were checked against the closed lists above, which the type checker cannot see
    return kinds, cast("Power | None", power), holds, cast("tuple[TrialKind, ...]", checks), hazards


def _hazard(where: str, name: str, value: object) -> tuple[str, str, str]:
    table = _mapping(where, f"hazards.{name}", value)
    _known(where, f"hazards.{name}", table, ("about", "caution"))
    about = _text(where, f"hazards.{name}.about", table.get("about", ""))
    return name, about, _text(where, f"hazards.{name}.caution", table.get("caution", ""))


def _rows(where: str, plain: Plain) -> Sequence[object]:
    rows = plain.get("machine", ())
    if not isinstance(rows, Sequence) or isinstance(rows, str):
        raise VocabularyError(f"{where}: machine is a list of tables: write [[machine]].")
    return rows


def _table(where: str, key: str, plain: Plain) -> Plain:
    return _mapping(where, key, plain.get(key, {}))


def _mapping(where: str, key: str, value: object) -> Plain:
    if not isinstance(value, Mapping):
        raise VocabularyError(f"{where}: {key} is a table: write [{key}] and its keys under it.")
    return value


def _known(where: str, inside: str, table: Plain, allowed: Sequence[str]) -> None:
    for key in table:
        if key not in allowed:
            place = f" in [{inside}]" if inside else ""
            raise VocabularyError(f"{where}: unknown key {key!r}{place}. Allowed here: {', '.join(sorted(allowed))}.")


def _words(where: str, key: str, value: object) -> tuple[str, ...]:
    if not isinstance(value, Sequence) or isinstance(value, str) or not all(isinstance(word, str) for word in value):
        raise VocabularyError(f'{where}: {key} is a list of words in quotes: {key} = ["first", "second"].')
    return tuple(value)


def _text(where: str, key: str, value: object) -> str:
    if not isinstance(value, str):
        raise VocabularyError(f'{where}: {key} is words in quotes: {key} = "words".')
    return value
