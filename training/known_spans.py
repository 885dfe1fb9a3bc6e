"""A narration's known statements as spans of its text: what the marker learns from."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from benchnotes.language.marking.heads import MARK_KINDS, QUANTITIES
from benchnotes.language.marking.marker import Span


@dataclass(frozen=True)
class KnownMark:
    kind: str
    span: Span
    part: Span | None
    said_part: str | None
    ref: str | None
    attributes: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Narration:
    name: str
    style: str
    currency: str
    texts: tuple[str, ...]
    marks: tuple[KnownMark, ...]
    raw: dict[str, Any]


def narration(path: Path) -> Narration:
    raw = json.loads(path.read_text(encoding="utf-8"))
    texts = tuple(utterance["text"] for utterance in raw["utterances"])
    said = raw.get("said", [])
    marks = [mark for statement in said if (mark := _mark(statement, texts, said, raw["gold"]))]
    marks.sort(key=lambda mark: (mark.span, MARK_KINDS.index(mark.kind)))
    return Narration(path.stem, raw["style"], raw["currency"], texts, tuple(marks), raw)


def _mark(
    statement: dict[str, Any], texts: tuple[str, ...], said: list[dict[str, Any]], gold: dict[str, Any]
) -> KnownMark | None:
    if statement["say"] == "work" and any(
        other["say"] == "fit" and other["u"] == statement["u"] and other["ref"] == statement["ref"] for other in said
    ):
        return None  # every fit is also work: the fold adds the twin
    words = statement.get("words") or statement.get("amount")
    span = find(texts, statement["u"], words)
    if span is None:
        return None
    part = find(texts, statement.get("part_u", statement["u"]), statement.get("part"), near=span)
    return KnownMark(
        statement["say"], span, part, statement.get("part"), statement.get("ref"), _attributes(statement, gold)
    )


def find(texts: tuple[str, ...], utterance: int, words: str | None, near: Span | None = None) -> Span | None:
    """The occurrence on word boundaries nearest to `near`, else the first."""
    if not words:
        return None
    text = texts[utterance]
    hits = list(re.finditer(r"(?<!\w)" + re.escape(words) + r"(?!\w)", text)) or list(
        re.finditer(re.escape(words), text)
    )
    if not hits:
        return None
    if near and near.utterance == utterance:
        hits.sort(key=lambda hit: max(hit.start() - near.end, near.start - hit.end(), 0))
    return Span(utterance, hits[0].start(), hits[0].end())


TERMS = {
    "fault": ("kind",),
    "work": ("action", "standing", "by"),
    "test": ("what", "result"),
    "charge": ("kind",),
    "reading": ("when", "unit"),
    "price": ("basis",),
}


def _attributes(statement: dict[str, Any], gold: dict[str, Any]) -> dict[str, str]:
    kind = statement["say"]
    if kind == "machine":
        return _machine(statement, gold["machine"])
    if kind in ("need", "order", "fit", "drop") and statement.get("qty"):
        quantity = str(statement["qty"])
        return {"part.quantity": quantity if quantity in QUANTITIES else "many"}
    return {f"{kind}.{name}": statement[name] or "none" for name in TERMS.get(kind, ())}


def _machine(statement: dict[str, Any], machine: dict[str, Any]) -> dict[str, str]:
    values = {"machine.field": statement["field"]}
    if statement["field"] in ("kind", "power"):
        values["machine.power"] = machine["power"] or "none"
    if statement["field"] == "kind":
        values["machine.holds_pressure"] = "yes" if machine["holds_pressure"] else "no"
    return values
