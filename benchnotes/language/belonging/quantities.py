"""What a value measures, by its unit: a name that is often left unsaid ("eighteen thou")."""

from __future__ import annotations

from collections.abc import Mapping

from benchnotes.record.terms import Unit

OF_UNIT: Mapping[Unit | str, tuple[str, ...]] = {
    "V": ("voltage", "supply", "drop"),
    "A": ("current",),
    "mA": ("current",),
    "W": ("power",),
    "ohm": ("resistance", "earth", "continuity"),
    "kohm": ("resistance",),
    "Mohm": ("insulation", "insulation resistance"),
    "uF": ("capacitance", "capacitor"),
    "nF": ("capacitance", "capacitor"),
    "pF": ("capacitance", "capacitor"),
    "bar": ("pressure",),
    "psi": ("pressure",),
    "kPa": ("pressure", "vacuum"),
    "C": ("temperature",),
    "F": ("temperature",),
    "N.m": ("torque",),
    "lbf.ft": ("torque",),
    "rpm": ("speed",),
    "Hz": ("frequency", "speed"),
    "s": ("time", "speed"),
    "min": ("time", "rate"),
    "h": ("time",),
    "g": ("weight", "force"),
    "kg": ("weight", "load"),
    "ml": ("volume",),
    "l": ("volume",),
    "dB": ("level",),
    "mm": ("thickness", "width", "height", "diameter", "gap", "length", "bore", "thread", "play"),
    "in": ("gap", "thread", "diameter", "travel"),
    "thou": ("gap", "clearance", "play", "runout"),
}
"""Common practice at the bench; the likeliest first."""
QUANTITIES = frozenset(word for words in OF_UNIT.values() for word in words) | frozenset(
    [
        "size",
        "depth",
        "pitch",
        "float",
        "end",
        "lift",
        "travel",
        "stroke",
        "tension",
        "sag",
        "stretch",
        "reading",
        "output",
        "drill",
        "wear",
        "wall",
        "spacing",
        "distance",
        "rise",
        "weight",
        "thread",
    ]
)
