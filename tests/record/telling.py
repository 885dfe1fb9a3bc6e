"""Statements written down as a repairer would say them, for tests of the record. One line is one breath."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from benchnotes.record import statements as told
from benchnotes.record.entries import Item, JobRecord
from benchnotes.record.fold import fold
from benchnotes.record.heard import Evidence
from benchnotes.record.money import Money
from benchnotes.record.statements import Statement
from benchnotes.record.still_to_do.rules import still_to_do
from benchnotes.record.terms import (
    Action,
    ChargeKind,
    FaultKind,
    ItemKind,
    MachineField,
    Place,
    Power,
    Standing,
    TrialKind,
    TrialResult,
    Unit,
    When,
)

NOWHERE = Evidence(1, 0.0, 0.0, "")
Line = Statement | tuple[Statement, ...]


def in_order(*lines: Line) -> tuple[Statement, ...]:
    """The statements of a job, a breath of five seconds every ten."""
    placed: list[Statement] = []
    for at, line in enumerate(lines):
        breath = line if isinstance(line, tuple) else (line,)
        heard = ", ".join(s.words for s in breath if s.words)
        evidence = Evidence(1, 10.0 * at, 10.0 * at + 5, heard)
        placed += [replace(s, order=at, evidence=evidence) for s in breath]
    return tuple(placed)


def job(*lines: Line, currency: str = "GBP") -> JobRecord:
    """The record that the fold makes of those lines."""
    return fold(in_order(*lines), currency)


def left(record: JobRecord) -> list[tuple[ItemKind, str]]:
    """What is still to do, kind and thing only."""
    return [(item.kind, item.about) for item in still_to_do(record)]


def item(record: JobRecord, kind: ItemKind) -> Item:
    """The one item of a kind."""
    (found,) = [i for i in still_to_do(record) if i.kind == kind]
    return found


def evidence_starts(heard: Sequence[Evidence]) -> list[float]:
    return [e.start_s for e in heard]


def machine(words: str, field: MachineField = "kind", **known: Power | bool | str | None) -> Statement:
    named = told.Names(order=0, evidence=NOWHERE, words=words, field=field)
    return replace(named, **known)  # type: ignore[arg-type]  # power, holds_pressure, written: as given


def fault(part: str | None, kind: FaultKind, words: str = "gone") -> Statement:
    return told.Finds(order=0, evidence=NOWHERE, words=words, ref=part, kind=kind)


def clear(part: str, words: str = "good as new") -> Statement:
    return told.Clears(order=0, evidence=NOWHERE, words=words, ref=part)


def leave(part: str, words: str = "leaving that") -> Statement:
    return told.Leaves(order=0, evidence=NOWHERE, words=words, ref=part)


def _quantity(qty: int | None) -> Decimal | None:
    return None if qty is None else Decimal(qty)


def need(part: str | None, qty: int | None = 1) -> Statement:
    return told.Needs(order=0, evidence=NOWHERE, words="needs one", ref=part, quantity=_quantity(qty))


def order(part: str, qty: int | None = 1) -> Statement:
    return told.Orders(order=0, evidence=NOWHERE, words="ordered", ref=part, quantity=_quantity(qty))


def fit(part: str, qty: int | None = 1) -> Statement:
    return told.Fits(order=0, evidence=NOWHERE, words="in it goes", ref=part, quantity=_quantity(qty))


def drop(part: str) -> Statement:
    return told.Drops(order=0, evidence=NOWHERE, words="won't need it", ref=part)


def price(
    part: str | None, amount: str, *, about: bool = False, currency: str = "GBP", said: str | None = None
) -> Statement:
    money = Money(Decimal(amount), currency)
    return told.Prices(
        order=0, evidence=NOWHERE, words=amount, ref=part, part=said, price=money, basis="about" if about else "exact"
    )


def charge(kind: ChargeKind, amount: str | None = None, hours: str | None = None, of: str | None = None) -> Statement:
    money = None if amount is None else Money(Decimal(amount), "GBP")
    spent = None if hours is None else Decimal(hours)
    return told.Charges(order=0, evidence=NOWHERE, words="put down", ref=of, kind=kind, price=money, hours=spent)


def work(action: Action, target: str | None, standing: Standing = "done", by: Place = "bench") -> Statement:
    return told.Works(order=0, evidence=NOWHERE, words=action, ref=target, action=action, standing=standing, by=by)


def off(part: str) -> Statement:
    return told.TakesOff(order=0, evidence=NOWHERE, words="off", ref=part)


def back(part: str) -> Statement:
    return told.PutsBack(order=0, evidence=NOWHERE, words="back on", ref=part)


def reading(
    what: str, value: str, unit: Unit, when: When | None = None, *, words: str = "", part: str | None = None
) -> Statement:
    return told.Measures(
        order=0, evidence=NOWHERE, words=words or f"{value} {unit}", ref=what, part=part, value=Decimal(value),
        unit=unit, when=when,
    )  # fmt: skip


def trial(what: TrialKind, result: TrialResult = "pass", of: str | None = None) -> Statement:
    return told.Tries(order=0, evidence=NOWHERE, words=f"that's a {result}", ref=of, kind=what, result=result)


def advise(words: str) -> Statement:
    return told.Advises(order=0, evidence=NOWHERE, words=words)


def doubt(about: str | None, words: str = "can't tell") -> Statement:
    return told.Doubts(order=0, evidence=NOWHERE, words=words, ref=about)


def settled(about: str | None) -> Statement:
    return told.Settles(order=0, evidence=NOWHERE, words="that's that answered", ref=about)


def correction() -> Statement:
    return told.Corrects(order=0, evidence=NOWHERE, words="no, sorry")
