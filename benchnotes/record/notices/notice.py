"""How a notice comes out of the entries that it is about."""

from __future__ import annotations

from benchnotes.record.entries import Entry, Notice


def notice_of(kind: str, about: str, why: str, *entries: Entry) -> Notice:
    """A notice resting on all that its entries rest on."""
    evidence = tuple(dict.fromkeys(heard for entry in entries for heard in entry.evidence))
    sure = min((entry.sure for entry in entries), default=1.0)
    return Notice(kind=kind, about=about, why=why, evidence=evidence, sure=sure, check=any(e.check for e in entries))


def told_together(one: Entry, other: Entry, within_s: float) -> bool:
    """True where some moment of one lies within that many seconds of some moment of the other, in one recording."""
    return any(
        a.recording == b.recording and a.start_s - within_s <= b.end_s and b.start_s - within_s <= a.end_s
        for a in one.evidence
        for b in other.evidence
    )
