"""One line a record's entry, in the words of a workshop; and the headings that the lists of a record stand under."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from benchnotes.exports import wording
from benchnotes.exports.currencies import plain_amount, plain_decimal
from benchnotes.record.edit_fields import ListName
from benchnotes.record.entries import (
    Advice,
    Charge,
    Entry,
    Fault,
    LeftApart,
    Machine,
    Notice,
    Part,
    Reading,
    Trial,
    Unsure,
    Work,
)
from benchnotes.record.money import Money

SECTIONS: Final[tuple[tuple[str, ListName], ...]] = (
    ("Faults", "faults"),
    ("Parts", "parts"),
    ("Charges", "charges"),
    ("Work", "work"),
    ("Readings", "readings"),
    ("Tests", "tests"),
    ("Told to the owner", "advice"),
    ("Taken off and not put back", "left_apart"),
    ("Unanswered", "unsure"),
)
"""Heading and list, in the order in which a workshop reads a record; the machine stands before them."""


def entry_line(entry: Entry) -> str:
    """What an entry says; a list's heading says which list it is in."""
    return _LINES[type(entry)](entry)


def _machine(machine: Machine) -> str:
    names = [machine.kind, " ".join(filter(None, (machine.make, machine.model)))]
    if machine.serial:
        names.append(f"serial {machine.serial}")
    if machine.power:
        names.append(wording.POWER[machine.power])
    if machine.holds_pressure:
        names.append("holds pressure")
    return ", ".join(filter(None, names)) or "not named"


def _fault(fault: Fault) -> str:
    kind = wording.FAULT.get(fault.kind, fault.kind)
    return f"{fault.part}: {kind}; {wording.FAULT_STATUS[fault.status]}"


def _part(part: Part) -> str:
    count = "" if part.qty == 1 else f"{plain_decimal(part.qty)} × "
    line = f"{count}{part.name}: {wording.PART_STATE[part.state]}"
    if part.unit_price:
        each = "" if part.qty == 1 else " each"
        line += f", {_about(part.basis)}{as_money(part.unit_price)}{each}"
    if len(part.prices) > 1:
        line += f" (said: {', '.join(as_money(price) for price in part.prices)})"
    return line


def _charge(charge: Charge) -> str:
    kind = wording.CHARGE.get(charge.kind, charge.kind)
    what = f"{kind}: {charge.what}" if charge.what and charge.what != kind else kind
    if charge.hours is not None:
        what += f", {plain_decimal(charge.hours)} h"
    return what + (f", {_about(charge.basis)}{as_money(charge.amount)}" if charge.amount else "")


def _work(work: Work) -> str:
    where = " (outside)" if work.by == "outside" else ""
    return f"{wording.ACTION.get(work.action, work.action)} {work.target}{where}: {wording.STANDING[work.status]}"


def _reading(reading: Reading) -> str:
    unit = wording.UNIT.get(reading.unit, reading.unit)
    when = f", {wording.WHEN[reading.when]}" if reading.when else ""
    about = "about " if reading.about else ""
    return f"{reading.what}: {about}{plain_decimal(reading.value)} {unit}{when}"


def _trial(trial: Trial) -> str:
    of = f" of {trial.of}" if trial.of else ""
    return f"{wording.trial(trial.what)}{of}: {wording.RESULT[trial.result]}"


def _about(basis: str | None) -> str:
    return "about " if basis == "about" else ""


def as_money(money: Money) -> str:
    """As "GBP 4.50"."""
    return f"{money.currency} {plain_amount(money)}"


_LINES: Final[Mapping[type[Entry], Callable[[Any], str]]] = {
    Machine: _machine,
    Fault: _fault,
    Part: _part,
    Charge: _charge,
    Work: _work,
    Reading: _reading,
    Trial: _trial,
    Advice: lambda entry: str(entry.text),
    LeftApart: lambda entry: str(entry.part),
    Unsure: lambda entry: str(entry.about),
    Notice: lambda entry: f"{entry.about}: {entry.why}",
}
