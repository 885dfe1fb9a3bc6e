"""The entries of a job record, one frozen class per list. Field names are those of the published JSON."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal

from benchnotes.record.heard import Evidence
from benchnotes.record.money import Money
from benchnotes.record.terms import (
    Action,
    Basis,
    ChargeKind,
    FaultKind,
    FaultStatus,
    ItemKind,
    PartState,
    Place,
    Power,
    Standing,
    TrialKind,
    TrialResult,
    Unit,
    When,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    evidence: tuple[Evidence, ...] = ()
    sure: float = 1.0
    """How sure the reader is, 0 to 1: that of its surest statement."""
    check: bool = False
    """A number or name in it was heard unsurely: to be checked by ear."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Machine(Entry):
    kind: str | None = None
    make: str | None = None
    model: str | None = None
    serial: str | None = None
    power: Power | None = None
    holds_pressure: bool | None = None
    """None where neither talk nor the kind of machine tells."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault(Entry):
    part: str
    kind: FaultKind
    status: FaultStatus = "open"


@dataclass(frozen=True, slots=True, kw_only=True)
class Part(Entry):
    name: str
    qty: Decimal = Decimal(1)
    unit_price: Money | None = None
    """The last price said stands."""
    basis: Basis | None = None
    prices: tuple[Money, ...] = ()
    """Every different price said, in order, where more than one was; an estimate and the price near it are one."""
    state: PartState = "needed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Charge(Entry):
    kind: ChargeKind
    what: str
    amount: Money | None = None
    basis: Basis | None = None
    hours: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Work(Entry):
    action: Action
    target: str
    status: Standing = "done"
    by: Place = "bench"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading(Entry):
    what: str
    value: Decimal
    unit: Unit
    when: When | None = None
    about: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial(Entry):
    what: TrialKind
    result: TrialResult
    of: str | None = None
    """The thing tried, where one was named."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice(Entry):
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftApart(Entry):
    """Taken off, never said to be put back."""

    part: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Unsure(Entry):
    """A doubt that stays unanswered."""

    about: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Item(Entry):
    """Something still to do before the machine goes back."""

    kind: ItemKind
    about: str
    why: str
    """The reason, in words for the repairer."""
    close_by: str = ""
    """What closes it, in words for the repairer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice(Entry):
    """Something the program points out that is no item still to do: a thread that does not exist, a number to check."""

    kind: str
    about: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JobRecord:
    """Everything that one job's talk says, in order of first mention within each list."""

    currency: str
    machine: Machine = field(default_factory=Machine)
    faults: tuple[Fault, ...] = ()
    parts: tuple[Part, ...] = ()
    charges: tuple[Charge, ...] = ()
    work: tuple[Work, ...] = ()
    readings: tuple[Reading, ...] = ()
    tests: tuple[Trial, ...] = ()
    advice: tuple[Advice, ...] = ()
    left_apart: tuple[LeftApart, ...] = ()
    unsure: tuple[Unsure, ...] = ()
    notices: tuple[Notice, ...] = ()
