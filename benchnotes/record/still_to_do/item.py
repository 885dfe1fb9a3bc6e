"""How an item comes out of the entry that it is about."""

from __future__ import annotations

from benchnotes.record.entries import Entry, Item
from benchnotes.record.terms import ItemKind


def item_of(entry: Entry, kind: ItemKind, about: str, *, why: str, close_by: str) -> Item:
    """An item resting on what its entry rests on."""
    return Item(
        kind=kind,
        about=about,
        why=why,
        close_by=close_by,
        evidence=entry.evidence,
        sure=entry.sure,
        check=entry.check,
    )
