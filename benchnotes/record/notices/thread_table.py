"""ISO metric threads: which pitches each diameter has, and the drill for tapping the coarse ones. Millimetres.

Sources: ISO 261 and ISO 262 (diameters and pitches, 1 to 68 mm coarse, to 36 mm fine), ISO 2306 (drills for tapping
coarse threads), as carried in the project's reference tables (`tests/published/threads/iso_metric_threads.csv`).
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

_COARSE = """
1x0.25:0.75 1.1x0.25:0.85 1.2x0.25:0.95 1.4x0.3:1.1 1.6x0.35:1.25 1.8x0.35:1.45 2x0.4:1.6 2.2x0.45:1.75
2.5x0.45:2.05 3x0.5:2.5 3.5x0.6:2.9 4x0.7:3.3 4.5x0.75:3.7 5x0.8:4.2 6x1:5 7x1:6 8x1.25:6.8 9x1.25:7.8
10x1.5:8.5 11x1.5:9.5 12x1.75:10.2 14x2:12 16x2:14 18x2.5:15.5 20x2.5:17.5 22x2.5:19.5 24x3:21 27x3:24
30x3.5:26.5 33x3.5:29.5 36x4:32 39x4:35 42x4.5:37.5 45x4.5:40.5 48x5:43 52x5:47 56x5.5:50.5 60x5.5:54.5 64x6:58
68x6:62
"""
"""Diameter x pitch : drill."""

_FINE = """
1:0.2 1.1:0.2 1.2:0.2 1.4:0.2 1.6:0.2 1.8:0.2 2:0.25 2.2:0.25 2.5:0.35 3:0.35 3.5:0.35 4:0.5 4.5:0.5 5:0.5
5.5:0.5 6:0.75 7:0.75 8:0.75/1 9:0.75/1 10:0.75/1/1.25 11:0.75/1 12:1/1.25/1.5 14:1/1.25/1.5 15:1/1.5 16:1/1.5
17:1/1.5 18:1/1.5/2 20:1/1.5/2 22:1/1.5/2 24:1/1.5/2 25:1/1.5/2 27:1/1.5/2 28:1/1.5/2 30:1/1.5/2/3 32:1.5/2
33:1.5/2/3 35:1.5/2 36:1.5/2/3
"""
"""Diameter : pitches."""


def _coarse() -> Mapping[Decimal, tuple[Decimal, Decimal]]:
    table: dict[Decimal, tuple[Decimal, Decimal]] = {}
    for row in _COARSE.split():
        thread, drill = row.split(":")
        diameter, pitch = thread.split("x")
        table[Decimal(diameter)] = (Decimal(pitch), Decimal(drill))
    return table


def _fine() -> Mapping[Decimal, tuple[Decimal, ...]]:
    rows = (row.split(":") for row in _FINE.split())
    return {Decimal(diameter): tuple(Decimal(p) for p in pitches.split("/")) for diameter, pitches in rows}


COARSE = _coarse()
"""Diameter -> its coarse pitch and the drill for tapping it."""
FINE = _fine()
"""Diameter -> its fine pitches, coarsest last."""


def pitches(diameter: Decimal) -> tuple[Decimal, ...]:
    """Every pitch that the standard has for a diameter, the coarse one first; none for a diameter that it has not."""
    coarse = COARSE.get(diameter.normalize())
    fine = FINE.get(diameter.normalize(), ())
    return ((coarse[0],) if coarse else ()) + fine


def tapping_drill(diameter: Decimal, pitch: Decimal) -> Decimal:
    """The drill for tapping: as tabulated for a coarse thread, else diameter less pitch (ISO 2306)."""
    coarse = COARSE.get(diameter.normalize())
    return coarse[1] if coarse and coarse[0] == pitch else diameter - pitch
