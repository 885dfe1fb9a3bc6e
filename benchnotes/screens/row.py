"""One thing on a page, and the lines it takes: what stands in the margin, what on the page, what at its right edge."""

from __future__ import annotations

import textwrap
from collections.abc import Hashable
from dataclasses import dataclass
from typing import Final, Literal

from rich.cells import cell_len
from rich.console import Console
from rich.text import Text

MARGIN: Final = 11
"""Columns left of the page: the pointer, the moment and the mark, then the margin's line."""

RowKind = Literal["heading", "entry", "quiet"]


@dataclass(frozen=True, slots=True)
class Row:
    """A row with a key can be pointed at; one without is for the eye alone."""

    text: str
    key: Hashable | None = None
    kind: RowKind = "entry"
    margin: str = ""
    mark: str = ""
    """One sign: `?` asks for a person, `+` was put right by one."""
    tail: str = ""
    """At the right edge of the first line."""
    below: str = ""
    """Set under the text, quieter."""
    below_tail: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a page. `row` is the row's place on the page."""

    row: int
    text: str
    tail: str = ""
    first: bool = False
    quiet: bool = False


def lines_of(row: Row, place: int, width: int) -> list[Line]:
    """The lines of a row on a page that is so many columns wide; a row always takes at least one."""
    lines = _lines(row.text, row.tail, place, width, quiet=row.kind == "quiet")
    lines[0] = Line(place, lines[0].text, lines[0].tail, first=True, quiet=lines[0].quiet)
    if row.below or row.below_tail:
        lines += _lines(row.below, row.below_tail, place, width, quiet=True)
    return lines


def _lines(text: str, tail: str, place: int, width: int, *, quiet: bool) -> list[Line]:
    """A tail keeps its room on every line, so that columns of figures stay clear."""
    room = max(12, width - (cell_len(tail) + 2 if tail else 0))
    wrapped = _wrapped(text, room)
    return [Line(place, part, tail if at == 0 else "", quiet=quiet) for at, part in enumerate(wrapped)]


def _wrapped(text: str, room: int) -> list[str]:
    if len(text) <= room and text.isascii():
        return [text]
    if text.isascii():
        return textwrap.wrap(text, room) or [""]
    # letters of other scripts may be two columns wide; only rich counts those
    return [line.plain.rstrip() for line in Text(text).wrap(_MEASURE, room)] or [""]


_MEASURE: Final = Console(width=200)
