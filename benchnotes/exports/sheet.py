"""A job sheet as plain tables, before it is HTML or PDF: all of its text is other people's, and data."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

CHECK: Final = " (check by ear)"
"""Stands after what was heard unsurely and nobody has confirmed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """One section. The columns in `numbers` (from 0) stand to the right; the last `sums` rows are sums."""

    heading: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numbers: tuple[int, ...] = ()
    sums: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """Everything that stands on the sheet, in its order; one line of text in every cell."""

    title: str
    facts: tuple[tuple[str, str], ...]
    """Label and text."""
    tables: tuple[Table, ...]
    notes: tuple[str, ...]
    """Cautions, and what the reader must know about how far the sheet goes."""
