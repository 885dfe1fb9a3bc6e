"""A narration's known `said` as statements, and a record as the JSON that `score.py` reads. For tests and training."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

from benchnotes.record.entries import Entry, Item, JobRecord
from benchnotes.record.heard import Evidence, Utterance, captioned
from benchnotes.record.money import Money
from benchnotes.record.statements import KINDS, Statement
from training.known_amounts import known_price

NARRATIONS = Path(__file__).parent / "narrations"
_CLASSES = {kind.say: kind for kind in KINDS}
_TERMS = {
    "machine": ("field",),
    "fault": ("kind",),
    "charge": ("kind", "hours"),
    "work": ("action", "standing", "by"),
    "reading": ("value", "unit", "when"),
    "test": ("kind", "result"),
    "price": ("basis",),
}


@dataclass(frozen=True)
class Narration:
    """One narration file, as it stands."""

    id: str
    currency: str
    style: str
    talk: tuple[Utterance, ...]
    gold: Mapping[str, Any]
    said: tuple[Mapping[str, Any], ...]
    raw: Mapping[str, Any]


def narration(path: Path) -> Narration:
    """Reads one file of `narrations/`. Utterances are all of recording 1."""
    raw = json.loads(path.read_text(encoding="utf-8"))
    talk = tuple(captioned(1, u["start"], u["end"], u["text"]) for u in raw["utterances"])
    return Narration(raw["id"], raw["currency"], raw["style"], talk, raw["gold"], tuple(raw.get("said", ())), raw)


def train_narrations() -> tuple[Narration, ...]:
    """All narrations that carry known statements, by name."""
    read = (narration(path) for path in sorted((NARRATIONS / "train").glob("*.json")))
    return tuple(n for n in read if n.said)


def known_statements(told: Narration) -> tuple[Statement, ...]:
    """The known statements in order of the talk. What a kind of machine implies is taken from the known record."""
    ordered = sorted(told.said, key=lambda s: int(s["u"]))
    return tuple(_statement(s, told) for s in ordered)


def _statement(said: Mapping[str, Any], told: Narration) -> Statement:
    at = int(said["u"])
    utterance = told.talk[at]
    fields: dict[str, Any] = {
        "order": at,
        "evidence": Evidence(utterance.recording, utterance.start_s, utterance.end_s, utterance.text),
        "words": said.get("words") or said.get("amount") or "",
        "part": said.get("part"),
        "ref": said.get("ref"),
    }
    terms = {key: said.get("what" if said["say"] == "test" and key == "kind" else key) for key in _terms(said)}
    return _CLASSES[said["say"]](**fields, **{**terms, **_numbers(said, told), **_implied(said, told)})


def _terms(said: Mapping[str, Any]) -> Sequence[str]:
    return _TERMS.get(said["say"], ())


def _numbers(said: Mapping[str, Any], told: Narration) -> dict[str, Any]:
    match said["say"]:
        case "need" | "order" | "fit" | "drop":
            return {"quantity": _decimal(said.get("qty"))}
        case "price":
            return {"price": known_price(said["amount"], _prices_of(said.get("ref"), told), told.currency)}
        case "charge":
            money = known_price(said["amount"], _charges_at(said, told), told.currency) if said["amount"] else None
            return {"price": money, "hours": _decimal(said.get("hours"))}
        case "reading":
            about = any(
                r["about"] for r in told.gold["readings"] if said["u"] in r["u"] and r["value"] == said["value"]
            )
            return {"value": Decimal(str(said["value"])), "about": about}
        case _:
            return {}


def _implied(said: Mapping[str, Any], told: Narration) -> dict[str, Any]:
    if said["say"] != "machine":
        return {}
    machine = told.gold["machine"]
    if said["field"] in ("serial", "model"):
        return {"written": machine[said["field"]]}
    if said["field"] == "kind":
        return {"power": machine["power"], "holds_pressure": machine["holds_pressure"]}
    return {"power": machine["power"]} if said["field"] == "power" else {}


def _prices_of(ref: str | None, told: Narration) -> list[Decimal]:
    parts = [p for p in told.gold["parts"] if p["name"] == ref]
    return [Decimal(price) for p in parts for price in p.get("prices") or [p["unit_price"]] if price]


def _charges_at(said: Mapping[str, Any], told: Narration) -> list[Decimal]:
    return [
        Decimal(c["amount"])
        for c in told.gold["charges"]
        if c["amount"] and c["kind"] == said["kind"] and said["u"] in c["u"]
    ]


def _decimal(number: Any) -> Decimal | None:
    return None if number is None else Decimal(str(number))


def printed(record: JobRecord, items: Iterable[Item]) -> dict[str, Any]:
    """The record and the items still to do as `score.py` reads them."""
    lists = ("faults", "parts", "charges", "work", "readings", "tests", "advice", "left_apart", "unsure")
    shown = {name: [_shown(entry) for entry in getattr(record, name)] for name in lists}
    return {"machine": _shown(record.machine), **shown, "open_items": [_shown(item) for item in items]}


def _shown(entry: Entry) -> dict[str, Any]:
    fields = {name: _plain(getattr(entry, name)) for name in entry.__dataclass_fields__}
    return {**fields, "evidence": [{"start": e.start_s, "end": e.end_s} for e in entry.evidence]}


def _plain(value: Any) -> Any:
    match value:
        case Money():
            return str(value.amount)
        case Decimal():
            return float(value)
        case tuple():
            return [_plain(part) for part in value]
        case _:
            return value
