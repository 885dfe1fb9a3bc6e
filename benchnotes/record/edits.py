"""Hand edits as facts: what a person added, struck out or put right. Replayed after the fold, over any new reading."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from benchnotes.record.edit_fields import E, ListName, changed, entry_kind, entry_name, made
from benchnotes.record.entries import Entry, Item, JobRecord, Machine, Notice
from benchnotes.record.notices.rules import notices
from benchnotes.record.same_thing import names_alike
from benchnotes.record.terms import ItemKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Address:
    """Which entry an edit means, so that it is found again in a record that was read anew."""

    list: ListName
    name: str = ""
    """Its part, name, target, what, text or about; empty for the machine."""
    kind: str | None = None
    """Its kind of fault or charge, its action, unit or kind of trial; None where it has none."""
    recording: int | None = None
    start_s: float | None = None
    """Where its first evidence starts; None for an entry that was typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AddEntry:
    """An entry that nobody said. `fields` as in the published JSON, money in the job's currency."""

    list: ListName
    fields: Mapping[str, str | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class StrikeEntry:
    """An entry that is wrong altogether."""

    address: Address


@dataclass(frozen=True, slots=True, kw_only=True)
class CorrectEntry:
    """Fields put right; all others stay as they were read. It also says that somebody has listened."""

    address: Address
    fields: Mapping[str, str | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class CloseItem:
    """An item still to do that a person closed, and why."""

    kind: ItemKind
    about: str
    reason: str


Edit = AddEntry | StrikeEntry | CorrectEntry | CloseItem


def address_of(where: ListName, entry: Entry) -> Address:
    """The address of an entry as it stands in the record."""
    first = entry.evidence[0] if entry.evidence else None
    return Address(
        list=where,
        name=entry_name(entry),
        kind=entry_kind(entry),
        recording=first.recording if first else None,
        start_s=first.start_s if first else None,
    )


def replay(record: JobRecord, edits: Sequence[Edit]) -> JobRecord:
    """The record with a person's edits in order. An edit that finds its entry no more, or cannot be done, becomes a
    notice; none raises."""
    for edit in edits:
        match edit:
            case AddEntry():
                record = _added(record, edit)
            case StrikeEntry():
                record = _at(record, edit.address, None)
            case CorrectEntry():
                record = _at(record, edit.address, edit.fields)
            case CloseItem():
                pass
    return _pointed_out_anew(record)


def _pointed_out_anew(record: JobRecord) -> JobRecord:
    """A number put right takes its notice away, and may bring another."""
    kept = tuple(notice for notice in record.notices if notice.kind in ("unplaced", "edit"))
    return replace(record, notices=kept + notices(record))


def left_to_do(items: Sequence[Item], edits: Sequence[Edit]) -> tuple[Item, ...]:
    """The items less those that a person closed."""
    closed = [edit for edit in edits if isinstance(edit, CloseItem)]
    return tuple(i for i in items if not any(c.kind == i.kind and names_alike(c.about, i.about) for c in closed))


def _added(record: JobRecord, edit: AddEntry) -> JobRecord:
    try:
        entry = made(edit.list, edit.fields, record.currency)
    except ValueError as error:
        return _noticed(record, edit.list, f"An entry added by hand could not be made: {error}. It is kept as typed.")
    if isinstance(entry, Machine):
        return replace(record, machine=entry)
    return _with_list(record, edit.list, (*getattr(record, edit.list), entry))


def _at(record: JobRecord, address: Address, fields: Mapping[str, str | None] | None) -> JobRecord:
    """The record with one entry struck (no fields) or put right."""
    if address.list == "machine":
        return _machine(record, fields)
    entries: tuple[Entry, ...] = getattr(record, address.list)
    found = _find(entries, address)
    if found is None:
        return _noticed(
            record, address.name, "Its entry is no longer read in the talk, so an edit of it has no effect."
        )
    try:
        new = () if fields is None else (_settled(changed(entries[found], fields, record.currency)),)
    except ValueError as error:
        return _noticed(record, address.name, f"A correction could not be made: {error}. It is kept as typed.")
    return _with_list(record, address.list, (*entries[:found], *new, *entries[found + 1 :]))


def _with_list(record: JobRecord, where: ListName, entries: tuple[Entry, ...]) -> JobRecord:
    changes: dict[str, Any] = {where: entries}
    return replace(record, **changes)


def _machine(record: JobRecord, fields: Mapping[str, str | None] | None) -> JobRecord:
    try:
        machine = _settled(changed(record.machine, fields, record.currency)) if fields is not None else Machine()
    except ValueError as error:
        return _noticed(record, "machine", f"A correction could not be made: {error}. It is kept as typed.")
    return replace(record, machine=machine)


def _settled(entry: E) -> E:
    """Somebody has listened, so nothing about it is doubtful any more."""
    return replace(entry, check=False, sure=1.0)


def _find(entries: Sequence[Entry], address: Address) -> int | None:
    """The entry that fits best: by name and kind, else by kind and moment, or name and moment."""
    fits = [(_fit(entry, address), -at) for at, entry in enumerate(entries)]
    best, at = max(fits, default=(0, 0))
    return -at if best >= 2 else None


def _fit(entry: Entry, address: Address) -> int:
    name = names_alike(entry_name(entry), address.name) or entry_name(entry) == address.name
    moment = any(e.recording == address.recording and e.start_s == address.start_s for e in entry.evidence)
    return 1 * (entry_kind(entry) == address.kind) + 1 * name + 1 * moment


def _noticed(record: JobRecord, about: str, why: str) -> JobRecord:
    return replace(record, notices=(*record.notices, Notice(kind="edit", about=about, why=why)))
