"""A correction as typed, looked at before it is kept: what cannot be is said while it can still be typed again."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, fields

from benchnotes.record.edit_fields import ListName, changed
from benchnotes.record.edits import CorrectEntry, address_of
from benchnotes.record.entries import Entry
from benchnotes.session.errors import SessionError


class CannotBeError(SessionError):
    """Something was typed that the field cannot hold."""


def put_right(where: ListName, entry: Entry, typed: Mapping[str, str], currency: str) -> CorrectEntry:
    """The edit that puts these fields right; an empty one means that nothing was said. Raises CannotBeError."""
    values: dict[str, str | None] = {name: value.strip() or None for name, value in typed.items()}
    needed = {field.name for field in fields(entry) if field.default is MISSING or field.default is not None}
    for name, value in values.items():
        if value is None and name in needed:
            raise CannotBeError(f"The {name.replace('_', ' ')} cannot be left empty. Nothing was changed.")
    try:
        changed(entry, values, currency)
    except ValueError as error:
        raise CannotBeError(f"That cannot be: {error}. Nothing was changed.") from error
    return CorrectEntry(address=address_of(where, entry), fields=values)
