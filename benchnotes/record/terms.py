"""The fixed words of a record: kinds, actions, units. The values are those of the published JSON."""

from __future__ import annotations

from typing import Literal, get_args

FaultKind = Literal[
    "missing", "cracked", "worn", "deformed", "seized", "stripped", "leaking", "blocked", "dirty", "corroded",
    "perished", "burnt", "loose", "noisy", "weak", "electrical", "wrong_part", "misadjusted", "other",
]  # fmt: skip
FaultStatus = Literal["open", "fixed", "verified", "left"]
PartState = Literal["needed", "ordered", "fitted", "not_needed"]
Basis = Literal["exact", "about"]
ChargeKind = Literal["labour", "outside_work", "postage", "discount", "other"]
Action = Literal[
    "replace", "clean", "lubricate", "adjust", "repair", "remove", "refit", "free", "descale", "drill", "cut",
    "machine", "paint", "send_out", "other",
]  # fmt: skip
Standing = Literal["done", "planned", "failed"]
Place = Literal["bench", "outside"]
When = Literal["before", "after"]
TrialKind = Literal["leak", "pressure", "function", "electrical", "gas", "output", "fit", "other"]
TrialResult = Literal["pass", "fail", "unclear"]
Power = Literal["mains", "battery", "gas", "liquid_fuel", "manual", "other"]
MachineField = Literal["kind", "make", "model", "serial", "power"]
Unit = Literal[
    "mm", "in", "thou", "bar", "psi", "kPa", "V", "A", "mA", "W", "ohm", "kohm", "Mohm", "uF", "nF", "pF", "C",
    "F", "N.m", "lbf.ft", "rpm", "Hz", "s", "min", "h", "g", "kg", "ml", "l", "dB", "%",
]  # fmt: skip
ItemKind = Literal[
    "fault_open", "not_retested", "test_failed", "part_to_fit", "price_missing", "price_differs", "work_to_do",
    "left_apart", "unsure", "safety_check",
]  # fmt: skip

FAULT_KINDS: tuple[FaultKind, ...] = get_args(FaultKind)
FAULT_STATUSES: tuple[FaultStatus, ...] = get_args(FaultStatus)
PART_STATES: tuple[PartState, ...] = get_args(PartState)
BASES: tuple[Basis, ...] = get_args(Basis)
CHARGE_KINDS: tuple[ChargeKind, ...] = get_args(ChargeKind)
ACTIONS: tuple[Action, ...] = get_args(Action)
STANDINGS: tuple[Standing, ...] = get_args(Standing)
PLACES: tuple[Place, ...] = get_args(Place)
WHENS: tuple[When, ...] = get_args(When)
TRIAL_KINDS: tuple[TrialKind, ...] = get_args(TrialKind)
TRIAL_RESULTS: tuple[TrialResult, ...] = get_args(TrialResult)
POWERS: tuple[Power, ...] = get_args(Power)
MACHINE_FIELDS: tuple[MachineField, ...] = get_args(MachineField)
UNITS: tuple[Unit, ...] = get_args(Unit)
ITEM_KINDS: tuple[ItemKind, ...] = get_args(ItemKind)
