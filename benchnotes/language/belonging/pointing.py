"""Which marks are about one thing: it, those, this one, the other side.

What names a thing is a scored choice among what was named so far. The scores come from the marker where it has learned
to give them; else from the plain rule that a like name is the same thing. What only points means the thing named last:
on held-out talk that beats the learned scores, which were learned where every earlier choice was right.
"""

from __future__ import annotations

from collections.abc import Sequence

from benchnotes.language.belonging.candidates import POINTING_KINDS
from benchnotes.language.belonging.likeness import likeness, taken_apart
from benchnotes.language.marking.marker import Mark, Pointer

ALIKE = 0.7
"""Names at least so alike are one thing by the plain rule."""
FAR = 25
"""Utterances after which "it" no longer means a thing, by the plain rule."""


def said_part(mark: Mark, texts: Sequence[str]) -> str | None:
    """What names the thing, letter by letter."""
    part = mark.part
    return texts[part.utterance][part.start : part.end] if part else None


def things(
    marks: Sequence[Mark], pointers: Sequence[Sequence[Pointer]] | None, texts: Sequence[str]
) -> tuple[int | None, ...]:
    """For each mark the number of its thing; None for marks that are about none. Same number, same thing."""
    chosen: list[int | None] = []
    for at, mark in enumerate(marks):
        if mark.kind not in POINTING_KINDS:
            chosen.append(None)
            continue
        named = not taken_apart(said_part(mark, texts)).points
        earlier = _pointed(pointers[at]) if named and pointers is not None else _plainly(marks, at, chosen, texts)
        chosen.append(at if earlier is None else chosen[earlier])
    return tuple(chosen)


def _pointed(pointers: Sequence[Pointer]) -> int | None:
    """The best pointer; None where that is a new thing."""
    best = next(iter(pointers), None)
    return None if best is None or best.earlier < 0 else best.earlier


def _plainly(marks: Sequence[Mark], at: int, chosen: Sequence[int | None], texts: Sequence[str]) -> int | None:
    name = taken_apart(said_part(marks[at], texts))
    before = [j for j in range(at - 1, -1, -1) if chosen[j] is not None]
    if name.points:
        near = (j for j in before if marks[at].span.utterance - marks[j].span.utterance <= FAR)
        return next(near, None)
    alike = [(likeness(name, taken_apart(said_part(marks[j], texts))).best, -at + j, j) for j in before]
    best = max(alike, default=(0.0, 0, -1))
    return best[2] if best[0] >= ALIKE else None
