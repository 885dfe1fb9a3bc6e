"""The record of a job as lines of at most 80 columns, each entry with the moments in which it was said."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Final, TypeVar

from benchnotes.commands import wording
from benchnotes.exports.currencies import plain_amount, plain_decimal
from benchnotes.record.entries import Charge, Entry, Fault, JobRecord, Machine, Part, Reading, Trial, Work
from benchnotes.record.heard import Recording
from benchnotes.record.money import Money

WIDTH: Final = 80
TOLD_ELSEWHERE: Final = ("recording", "check_by_ear")
"""Notices of what `not_heard_lines` tells, and of what is marked beside its entry."""

E = TypeVar("E", bound=Entry)


def record_lines(record: JobRecord) -> Iterator[str]:
    """Every list of the record that holds something."""
    yield from _machine(record.machine)
    yield from _section("Faults", record.faults, _fault)
    yield from _section("Parts", record.parts, _part)
    yield from _section("Charges", record.charges, _charge)
    yield from _section("Work", record.work, _work)
    yield from _section("Readings", record.readings, _reading)
    yield from _section("Tests", record.tests, _trial)
    yield from _section("Told to the owner", record.advice, lambda entry: entry.text)
    yield from _section("Taken off and not put back", record.left_apart, lambda entry: entry.part)
    yield from _section("Unanswered", record.unsure, lambda entry: entry.about)
    told = [notice for notice in record.notices if notice.kind not in TOLD_ELSEWHERE]
    yield from _section("Worth a look", told, lambda entry: f"{entry.about}: {entry.why}")


def visit_lines(recordings: Iterable[Recording]) -> Iterator[str]:
    """One line a recording."""
    for recording in recordings:
        day = f", {recording.started_at:%d %B %Y %H:%M}" if recording.started_at else ", no date"
        yield from wrapped(f"visit {recording.number}: {recording.name}, {wording.clock(recording.duration_s)}{day}", 2)


def evidence_lines(entry: Entry, indent: int = 6, at_most: int = 3) -> Iterator[str]:
    """Where an entry was said, in the words heard there."""
    for said in entry.evidence[:at_most]:
        yield from wrapped(f"{wording.moment_of(said)}: “{_shortened(said.heard)}”", indent)
    if len(entry.evidence) > at_most:
        rest = ", ".join(wording.moment_of(said) for said in entry.evidence[at_most:])
        yield from wrapped(f"also {rest}", indent)


def wrapped(text: str, indent: int) -> list[str]:
    """`text` in lines of at most WIDTH columns; what runs over is set two columns in."""
    return textwrap.wrap(text, WIDTH, initial_indent=" " * indent, subsequent_indent=" " * (indent + 2)) or [""]


def _section(title: str, entries: Sequence[E], words: Callable[[E], str]) -> Iterator[str]:
    if not entries:
        return
    yield ""
    yield title
    for entry in entries:
        yield from wrapped(words(entry) + ("  [check by ear]" if entry.check else ""), 2)
        yield from evidence_lines(entry)


def _machine(machine: Machine) -> Iterator[str]:
    names = [machine.kind, " ".join(filter(None, (machine.make, machine.model)))]
    if machine.serial:
        names.append(f"serial {machine.serial}")
    if machine.power:
        names.append(wording.POWER[machine.power])
    if machine.holds_pressure:
        names.append("holds pressure")
    yield ""
    yield "Machine"
    yield from wrapped(", ".join(filter(None, names)) or "not named", 2)


def _fault(fault: Fault) -> str:
    kind = wording.FAULT.get(fault.kind, fault.kind)
    return f"{fault.part}: {kind}; {wording.FAULT_STATUS[fault.status]}"


def _part(part: Part) -> str:
    count = "" if part.qty == 1 else f"{plain_decimal(part.qty)} × "
    line = f"{count}{part.name}: {wording.PART_STATE[part.state]}"
    if part.unit_price:
        each = "" if part.qty == 1 else " each"
        line += f", {_about(part.basis)}{_money(part.unit_price)}{each}"
    if len(part.prices) > 1:
        line += f" (said: {', '.join(_money(price) for price in part.prices)})"
    return line


def _charge(charge: Charge) -> str:
    kind = wording.CHARGE.get(charge.kind, charge.kind)
    what = f"{kind}: {charge.what}" if charge.what and charge.what != kind else kind
    if charge.hours is not None:
        what += f", {plain_decimal(charge.hours)} h"
    return what + (f", {_about(charge.basis)}{_money(charge.amount)}" if charge.amount else "")


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


def _money(money: Money) -> str:
    return f"{money.currency} {plain_amount(money)}"


def _shortened(heard: str) -> str:
    return textwrap.shorten(heard, 160, placeholder=" …")
