"""Which marks are sure enough to become statements: a false entry costs the repairer more than a missed one."""

from __future__ import annotations

from collections.abc import Mapping

from benchnotes.language.marking.marker import Marked, Pointer

LEAST = 0.5
"""How sure a mark must be where its kind is not listed below."""
LEAST_OF: Mapping[str, float] = {"advice": 0.85}
"""Kind -> how sure; chosen on half of the held-out narrations and confirmed on the other half."""


def kept(marked: Marked) -> Marked:
    """The marks that are sure enough, in the same order; pointers to those left out are left out with them.

    Only where there are pointers: how sure a marker is that has learned nothing was never measured.
    """
    if marked.pointers is None:
        return marked
    places = [at for at, mark in enumerate(marked.marks) if mark.sure >= LEAST_OF.get(mark.kind, LEAST)]
    marks = tuple(marked.marks[at] for at in places)
    now = {before: after for after, before in enumerate(places)} | {-1: -1}
    pointers = marked.pointers
    return Marked(
        marks, tuple(tuple(Pointer(now[p.earlier], p.score) for p in pointers[at] if p.earlier in now) for at in places)
    )
