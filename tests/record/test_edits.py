"""What a person puts right by hand stays right, whatever is read anew."""

from __future__ import annotations

from dataclasses import replace

import pytest
from record.telling import fault, fit, in_order, job, machine, off, price, reading, work

from benchnotes.record.edit_fields import ENTRY_TYPES, ListName
from benchnotes.record.edits import (
    AddEntry,
    Address,
    CloseItem,
    CorrectEntry,
    StrikeEntry,
    address_of,
    left_to_do,
    replay,
)
from benchnotes.record.entries import JobRecord
from benchnotes.record.fold import fold
from benchnotes.record.still_to_do.rules import still_to_do

TALK = (
    machine("mixer", power="mains"),
    fault("belt", "worn"),
    fit("belt"),
    price("belt", "9"),
    reading("belt", "40", "mm"),
)


def belt(record: JobRecord) -> Address:
    return address_of("parts", record.parts[0])


def test_an_entry_that_nobody_said() -> None:
    """Typed: two fuses, fitted, thirty pence each."""
    fields = {"name": "fuse", "qty": "2", "unit_price": "0.30", "basis": "exact", "state": "fitted"}
    added = replay(job(*TALK), [AddEntry(list="parts", fields=fields)]).parts[-1]
    assert (added.name, added.qty, added.state) == ("fuse", 2, "fitted")
    assert added.unit_price is not None and (str(added.unit_price.amount), added.unit_price.currency) == ("0.30", "GBP")


def test_a_struck_entry_is_gone() -> None:
    record = job(*TALK)
    assert replay(record, [StrikeEntry(address=belt(record))]).parts == ()


def test_a_corrected_field_and_nothing_else() -> None:
    record = job(*TALK[:4], replace(price("belt", "9.50"), check=True))
    corrected = replay(record, [CorrectEntry(address=belt(record), fields={"unit_price": "9,75"})])
    part = corrected.parts[0]
    assert part.unit_price is not None and str(part.unit_price.amount) == "9.75"
    assert (part.prices, part.check, part.state, part.evidence) == ((), False, "fitted", record.parts[0].evidence)
    assert corrected.notices == ()  # somebody has listened


def test_an_edit_finds_its_entry_in_a_later_reading_under_another_spelling() -> None:
    record = job(*TALK)
    again = fold([replace(s, ref="Drive belts") if s.ref == "belt" else s for s in in_order(*TALK)], "GBP")
    assert replay(again, [StrikeEntry(address=address_of("faults", record.faults[0]))]).faults == ()


def test_an_edit_whose_entry_is_gone_says_so() -> None:
    edits = [StrikeEntry(address=belt(job(*TALK)))]
    record = replay(job(machine("mixer")), edits)
    assert [(n.kind, n.about) for n in record.notices] == [("edit", "belt")]


def test_the_machine_is_put_right_in_place() -> None:
    address = Address(list="machine")
    edits = [CorrectEntry(address=address, fields={"power": "gas", "holds_pressure": "yes", "serial": "77"})]
    record = replay(job(*TALK), edits)
    assert (record.machine.kind, record.machine.power, record.machine.holds_pressure) == ("mixer", "gas", True)
    assert replay(record, [StrikeEntry(address=address)]).machine.kind is None


def test_a_machine_can_be_typed_whole() -> None:
    assert replay(job(), [AddEntry(list="machine", fields={"kind": "lamp"})]).machine.kind == "lamp"


@pytest.mark.parametrize(
    ("where", "fields", "says"),
    [
        ("parts", {"name": "fuse", "unit_price": "dear"}, "'dear' is no number"),
        ("parts", {"name": "fuse", "qty": "NaN"}, "is no number"),
        ("parts", {"name": "fuse", "colour": "red"}, "'colour' is no field of it; there are name"),
        ("parts", {"qty": "2"}, "parts needs name"),
        ("faults", {"part": "fuse", "kind": "sad"}, "kind 'sad' is none of missing"),
        ("readings", {"what": "fuse", "value": "1", "unit": "A", "about": "maybe"}, "neither yes nor no"),
    ],
)
def test_what_cannot_be_is_refused_in_words(where: ListName, fields: dict[str, str | None], says: str) -> None:
    record = replay(job(), [AddEntry(list=where, fields=fields)])
    assert says in record.notices[0].why
    assert replace(record, notices=()) == job()


def test_a_correction_that_cannot_be_is_refused_in_words() -> None:
    record = job(*TALK)
    changed = replay(record, [CorrectEntry(address=belt(record), fields={"state": "lost"})])
    assert changed.parts == record.parts
    assert "none of needed" in changed.notices[0].why
    machine_kept = replay(record, [CorrectEntry(address=Address(list="machine"), fields={"power": "steam"})])
    assert machine_kept.machine == record.machine and len(machine_kept.notices) == 1


def test_an_empty_field_is_none() -> None:
    record = job(*TALK)
    assert replay(record, [CorrectEntry(address=belt(record), fields={"unit_price": " "})]).parts[0].unit_price is None


def test_closed_items_are_left_out_and_others_stay() -> None:
    record = job(work("clean", "tube", "planned"), off("cover"))
    edits = [CloseItem(kind="work_to_do", about="the tube", reason="owner will do it")]
    assert [i.kind for i in left_to_do(still_to_do(replay(record, edits)), edits)] == ["left_apart"]


def test_every_list_of_the_record_can_be_edited() -> None:
    lists = set(JobRecord.__dataclass_fields__) - {"currency", "notices"}
    assert set(ENTRY_TYPES) == lists
