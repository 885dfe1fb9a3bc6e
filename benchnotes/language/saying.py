"""Marks, amounts and what they belong to become statements."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any, cast

from benchnotes.language.amounts.prices import read_price
from benchnotes.language.amounts.quantities import read_quantity
from benchnotes.language.amounts.readings import read_reading
from benchnotes.language.belonging.pointing import said_part
from benchnotes.language.belonging.whose_money import charge_said
from benchnotes.language.machines import implied, power_of
from benchnotes.language.marking.marker import Mark, Span
from benchnotes.language.number_plates import as_written
from benchnotes.language.vocabulary import Vocabulary
from benchnotes.record.heard import Evidence, Utterance
from benchnotes.record.statements import KINDS, Statement
from benchnotes.record.terms import ChargeKind, Unit

CONTEXT = (10, 2)
"""Utterances before and after an amount that tell what it means."""
_CLASS = {kind.say: kind for kind in KINDS}


@dataclass(frozen=True, slots=True)
class _Scene:
    """The talk around the mark in hand, and what was said of money and units so far."""

    talk: Sequence[Utterance]
    texts: Sequence[str]
    names: Sequence[str | None]
    currency: str
    vocabulary: Vocabulary
    taken: list[Span]
    """Amounts that belong to a price already."""
    last_price: dict[str | None, Decimal] = field(default_factory=dict)
    last_unit: dict[str | None, Unit] = field(default_factory=dict)

    def around(self, span: Span) -> tuple[str, str]:
        text, (before, after) = self.texts[span.utterance], CONTEXT
        first = max(0, span.utterance - before)
        earlier = [*self.texts[first : span.utterance], text[: span.start]]
        later = [text[span.end :], *self.texts[span.utterance + 1 : span.utterance + 1 + after]]
        return "\n".join(earlier), "\n".join(later)


Fields = dict[str, Any]


def statements(
    talk: Sequence[Utterance],
    marks: Sequence[Mark],
    names: Sequence[str | None],
    *,
    currency: str,
    vocabulary: Vocabulary,
) -> tuple[Statement, ...]:
    """One statement for each mark, in order; a mark whose amount cannot be read gives none.

    `names`: what each mark is about, under one name all through the job.
    """
    texts = tuple(utterance.text for utterance in talk)
    taken = [mark.span for mark in marks if mark.kind == "price"]
    scene = _Scene(talk, texts, names, currency, vocabulary, taken)
    said = (_statement(at, mark, scene) for at, mark in enumerate(marks))
    return tuple(statement for statement in said if statement is not None)


def _statement(at: int, mark: Mark, scene: _Scene) -> Statement | None:
    name = scene.names[at]
    particular = _PARTICULAR.get(mark.kind, _none)(mark, name, scene)
    if particular is None:
        return None
    utterance = scene.talk[mark.span.utterance]
    return _CLASS[mark.kind](
        order=mark.span.utterance,
        evidence=Evidence(utterance.recording, utterance.start_s, utterance.end_s, utterance.text),
        words=scene.texts[mark.span.utterance][mark.span.start : mark.span.end],
        part=said_part(mark, scene.texts),
        ref=name,
        sure=mark.sure,
        **particular,
    )


def _none(mark: Mark, name: str | None, scene: _Scene) -> Fields:
    return {}


def _terms(*keys: str, **renamed: str) -> Callable[[Mark, str | None, _Scene], Fields]:
    """Attributes that go over as they are; `field="attribute"` where the names differ."""

    def taken_over(mark: Mark, name: str | None, scene: _Scene) -> Fields:
        return {key: mark.attributes[key] for key in keys} | {
            key: mark.attributes[attribute] for key, attribute in renamed.items()
        }

    return taken_over


def _machine(mark: Mark, name: str | None, scene: _Scene) -> Fields:
    words = scene.texts[mark.span.utterance][mark.span.start : mark.span.end]
    given = mark.attributes["field"]
    learned = mark.attributes.get("power", "none")
    power = None if learned == "none" else learned
    if given == "kind":
        usual, pressure = implied(words, scene.vocabulary)
        return {"field": given, "power": usual or power, "holds_pressure": pressure}
    if given == "power":
        said = power_of(words, scene.vocabulary) or power
        return {"field": given, "power": said} if said else {"field": given}
    return {"field": given, "written": as_written(words) if given in ("serial", "model") else None}


def _part(mark: Mark, name: str | None, scene: _Scene) -> Fields:
    learned = mark.attributes.get("quantity")
    if learned is not None and learned != "many":
        return {"quantity": Decimal(learned)}
    said = said_part(mark, scene.texts)
    return {"quantity": read_quantity(said) if said else None}


def _price(mark: Mark, name: str | None, scene: _Scene) -> Fields | None:
    before, after = scene.around(mark.span)
    text = scene.texts[mark.span.utterance][mark.span.start : mark.span.end]
    found = read_price(
        text,
        currency=scene.currency,
        words=scene.vocabulary.units,
        before=before,
        after=after,
        like=scene.last_price.get(name),
    )
    if found is None:
        return None
    scene.last_price[name] = found.amount.amount
    return {"price": found.amount, "basis": found.basis}


def _charge(mark: Mark, name: str | None, scene: _Scene) -> Fields:
    kind = cast(ChargeKind, mark.attributes["kind"])
    said = charge_said(mark, kind, scene.texts, scene.taken, currency=scene.currency, words=scene.vocabulary.units)
    fields: Fields = {"kind": kind, "hours": said.hours}
    return fields | ({"price": said.price.amount, "basis": said.price.basis} if said.price else {})


def _reading(mark: Mark, name: str | None, scene: _Scene) -> Fields | None:
    before, after = scene.around(mark.span)
    found = read_reading(
        scene.texts[mark.span.utterance][mark.span.start : mark.span.end],
        words=scene.vocabulary.units,
        what=name or "",
        before=before,
        after=after,
        currency=scene.currency,
        like=scene.last_unit.get(name),
    )
    if found is None:
        return None
    scene.last_unit[name] = found.unit
    when = mark.attributes.get("when", "none")
    return {
        "value": found.value,
        "unit": found.unit,
        "about": found.about,
        "when": None if when == "none" else when,
    }


_PARTICULAR: Mapping[str, Callable[[Mark, str | None, _Scene], Fields | None]] = {
    "machine": _machine,
    "fault": _terms("kind"),
    "need": _part,
    "order": _part,
    "fit": _part,
    "drop": _part,
    "price": _price,
    "charge": _charge,
    "work": _terms("action", "standing", "by"),
    "reading": _reading,
    "test": _terms("result", kind="what"),
}
