"""The fields of an entry as they are typed over: which, under what name, and what may stand in them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from benchnotes.exports import wording
from benchnotes.exports.currencies import plain_amount, plain_decimal
from benchnotes.record import terms
from benchnotes.record.edit_fields import ListName
from benchnotes.record.entries import Entry
from benchnotes.record.money import Money


@dataclass(frozen=True, slots=True)
class Field:
    """One field. With `choices` (term -> words) one of them is picked, else it is typed."""

    name: str
    label: str
    choices: Mapping[str, str] | None = None
    number: bool = False
    """What may be misheard: the first such field is offered where a number was heard unsurely."""


def _of(known: Sequence[str], words: Mapping[str, str], *, may_be_empty: bool = False) -> Mapping[str, str]:
    empty = {"": "not said"} if may_be_empty else {}
    return empty | {term: words.get(term, term.replace("_", " ")) for term in known}


_YES_NO: Final = {"no": "no", "yes": "yes"}
_BASIS: Final = _of(terms.BASES, {}, may_be_empty=True)

FIELDS: Final[Mapping[ListName, tuple[Field, ...]]] = {
    "machine": (
        Field("kind", "kind"),
        Field("make", "maker"),
        Field("model", "model"),
        Field("serial", "serial number", number=True),
        Field("power", "runs on", _of(terms.POWERS, wording.POWER, may_be_empty=True)),
        Field("holds_pressure", "holds pressure", {"": "not said", **_YES_NO}),
    ),
    "faults": (
        Field("part", "part"),
        Field("kind", "fault", _of(terms.FAULT_KINDS, wording.FAULT)),
        Field("status", "standing", _of(terms.FAULT_STATUSES, wording.FAULT_STATUS)),
    ),
    "parts": (
        Field("name", "part"),
        Field("qty", "how many"),
        Field("unit_price", "price of one", number=True),
        Field("basis", "exact or about", _BASIS),
        Field("state", "standing", _of(terms.PART_STATES, wording.PART_STATE)),
    ),
    "charges": (
        Field("kind", "charge", _of(terms.CHARGE_KINDS, wording.CHARGE)),
        Field("what", "what for"),
        Field("amount", "amount", number=True),
        Field("hours", "hours"),
        Field("basis", "exact or about", _BASIS),
    ),
    "work": (
        Field("action", "work", _of(terms.ACTIONS, wording.ACTION)),
        Field("target", "on"),
        Field("status", "standing", _of(terms.STANDINGS, wording.STANDING)),
        Field("by", "where", _of(terms.PLACES, {"bench": "at the bench"})),
    ),
    "readings": (
        Field("what", "what"),
        Field("value", "value", number=True),
        Field("unit", "unit", _of(terms.UNITS, wording.UNIT)),
        Field("when", "when", _of(terms.WHENS, wording.WHEN, may_be_empty=True)),
        Field("about", "only about", _YES_NO),
    ),
    "tests": (
        Field("what", "test", _of(terms.TRIAL_KINDS, {})),
        Field("result", "result", _of(terms.TRIAL_RESULTS, wording.RESULT)),
        Field("of", "of what"),
    ),
    "advice": (Field("text", "told"),),
    "left_apart": (Field("part", "part"),),
    "unsure": (Field("about", "about"),),
}


def typed_value(entry: Entry, field: Field) -> str:
    """What stands in a field of an entry, as one would type it."""
    value = getattr(entry, field.name)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Money):
        return plain_amount(value)
    if isinstance(value, Decimal):
        return plain_decimal(value)
    return "" if value is None else str(value)


def first_field(where: ListName, entry: Entry) -> int:
    """The field that a correction begins with: the doubtful number, where there is one."""
    fields = FIELDS[where]
    return next((at for at, field in enumerate(fields) if field.number and entry.check), 0)
