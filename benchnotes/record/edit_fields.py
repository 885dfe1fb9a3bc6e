"""The fields of an entry as typed by hand. Wrong ones are refused by name, with what is allowed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import fields as fields_of
from dataclasses import replace
from decimal import Decimal, InvalidOperation
from typing import Any, Literal, TypeVar

from benchnotes.record import terms
from benchnotes.record.entries import (
    Advice,
    Charge,
    Entry,
    Fault,
    LeftApart,
    Machine,
    Part,
    Reading,
    Trial,
    Unsure,
    Work,
)
from benchnotes.record.money import Money

ListName = Literal[
    "machine", "faults", "parts", "charges", "work", "readings", "tests", "advice", "left_apart", "unsure"
]
E = TypeVar("E", bound=Entry)

ENTRY_TYPES: Mapping[ListName, type[Entry]] = {
    "machine": Machine,
    "faults": Fault,
    "parts": Part,
    "charges": Charge,
    "work": Work,
    "readings": Reading,
    "tests": Trial,
    "advice": Advice,
    "left_apart": LeftApart,
    "unsure": Unsure,
}
_NAMES: Mapping[type[Entry], tuple[str, str | None]] = {
    Machine: ("kind", None),
    Fault: ("part", "kind"),
    Part: ("name", None),
    Charge: ("what", "kind"),
    Work: ("target", "action"),
    Reading: ("what", "unit"),
    Trial: ("of", "what"),
    Advice: ("text", None),
    LeftApart: ("part", None),
    Unsure: ("about", None),
}
_ALLOWED: Mapping[tuple[type[Entry], str], tuple[str, ...]] = {
    (Machine, "power"): terms.POWERS,
    (Fault, "kind"): terms.FAULT_KINDS,
    (Fault, "status"): terms.FAULT_STATUSES,
    (Part, "state"): terms.PART_STATES,
    (Part, "basis"): terms.BASES,
    (Charge, "kind"): terms.CHARGE_KINDS,
    (Charge, "basis"): terms.BASES,
    (Work, "action"): terms.ACTIONS,
    (Work, "status"): terms.STANDINGS,
    (Work, "by"): terms.PLACES,
    (Reading, "unit"): terms.UNITS,
    (Reading, "when"): terms.WHENS,
    (Trial, "what"): terms.TRIAL_KINDS,
    (Trial, "result"): terms.TRIAL_RESULTS,
}
_DERIVED = ("evidence", "sure", "check", "prices")
"""What the program works out, and nobody types."""


def entry_name(entry: Entry) -> str:
    """What names an entry: its part, name, target, what, text or about."""
    return str(getattr(entry, _NAMES[type(entry)][0]) or "")


def entry_kind(entry: Entry) -> str | None:
    """What tells it from another entry of the same name: its kind, action or unit."""
    key = _NAMES[type(entry)][1]
    return None if key is None else str(getattr(entry, key))


def made(where: ListName, fields: Mapping[str, str | None], currency: str) -> Entry:
    """A new entry of a list. ValueError, in words, where a field is unknown, missing or cannot be what it says."""
    kind = ENTRY_TYPES[where]
    try:
        return kind(**_typed(kind, fields, currency))
    except TypeError:
        raise ValueError(f"a field is missing; {where} needs {', '.join(_needed(kind))}") from None


def changed(entry: E, fields: Mapping[str, str | None], currency: str) -> E:
    """The entry with some fields put right. A price put right is the only one that was meant."""
    typed = _typed(type(entry), fields, currency)
    if "unit_price" in typed:
        typed["prices"] = ()
    return replace(entry, **typed)


def _needed(kind: type[Entry]) -> list[str]:
    return [_NAMES[kind][0], *([key] if (key := _NAMES[kind][1]) else [])]


def _typed(kind: type[Entry], fields: Mapping[str, str | None], currency: str) -> dict[str, Any]:
    known = [field.name for field in fields_of(kind) if field.name not in _DERIVED]
    for name in fields:
        if name not in known:
            raise ValueError(f"{name!r} is no field of it; there are {', '.join(known)}")
    return {name: _value(kind, name, text, currency) for name, text in fields.items()}


def _value(kind: type[Entry], name: str, text: str | None, currency: str) -> Any:
    if text is None or not text.strip():
        return None
    allowed = _ALLOWED.get((kind, name))
    if allowed is not None and text not in allowed:
        raise ValueError(f"{name} {text!r} is none of {', '.join(allowed)}")
    return _READ.get((kind, name), _plain)(text.strip(), currency)


def _plain(text: str, _: str) -> str:
    return text


def _number(text: str, _: str) -> Decimal:
    try:
        number = Decimal(text.replace(",", "."))
    except InvalidOperation:
        raise ValueError(f"{text!r} is no number") from None
    if not number.is_finite():
        raise ValueError(f"{text!r} is no number")
    return number


def _money(text: str, currency: str) -> Money:
    return Money(_number(text, currency), currency)


def _truth(text: str, _: str) -> bool:
    if text.lower() not in ("yes", "no", "true", "false"):
        raise ValueError(f"{text!r} is neither yes nor no")
    return text.lower() in ("yes", "true")


_READ: Mapping[tuple[type[Entry], str], Callable[[str, str], Any]] = {
    (Machine, "holds_pressure"): _truth,
    (Part, "qty"): _number,
    (Part, "unit_price"): _money,
    (Charge, "amount"): _money,
    (Charge, "hours"): _number,
    (Reading, "value"): _number,
    (Reading, "about"): _truth,
}
