"""What somebody said that the record rests on: a closed family of frozen statements.

A statement is named by what the speaker does in saying it (finds a fault, prices a part); an entry of the
record (`entries.py`) by what it is. Published kinds: the `say` of `docs/statements.md`.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import ClassVar

from benchnotes.record.heard import Evidence
from benchnotes.record.money import Money
from benchnotes.record.terms import (
    Action,
    Basis,
    ChargeKind,
    FaultKind,
    MachineField,
    Place,
    Power,
    Standing,
    TrialKind,
    TrialResult,
    Unit,
    When,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """Common ground of every statement."""

    say: ClassVar[str]

    order: int
    """Place on the job's time line: the index of the utterance, over all visits."""
    evidence: Evidence
    words: str = ""
    """The shortest stretch that carries the meaning, letter by letter."""
    part: str | None = None
    """What names the thing in this utterance, letter by letter; a pronoun will do."""
    ref: str | None = None
    """The thing meant, under one name all through the job."""
    sure: float = 1.0
    """How sure the reader is, 0 to 1."""
    check: bool = False
    """A number or name in it was heard unsurely: to be checked by ear."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Names(Statement):
    """Says what came in: "an Orrin Eight mixer, serial 4471"."""

    say = "machine"
    field: MachineField
    written: str | None = None
    """What `words` say, as one writes it: "5413" for "five four one three". None where `words` are it."""
    power: Power | None = None
    """What `words` say where `field` is "power"; what the kind of machine implies where `field` is "kind"."""
    holds_pressure: bool | None = None
    """What the kind of machine implies; set only where `field` is "kind"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finds(Statement):
    """Something is wrong with this machine."""

    say = "fault"
    kind: FaultKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Clears(Statement):
    """Looked at and found right, or a fault denied: "no play in it"."""

    say = "clear"


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspects(Statement):
    """A suspicion that nothing has borne out yet: "might just be the brushes"."""

    say = "guess"


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaves(Statement):
    """Deliberately left as it is."""

    say = "leave"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartStatement(Statement):
    """Of one part, kit or set."""

    quantity: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Needs(PartStatement):
    say = "need"


@dataclass(frozen=True, slots=True, kw_only=True)
class Orders(PartStatement):
    """On order, waited for."""

    say = "order"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fits(PartStatement):
    """A new part put in; it is also work: replace, done."""

    say = "fit"


@dataclass(frozen=True, slots=True, kw_only=True)
class Drops(PartStatement):
    """Considered, then not bought or not needed."""

    say = "drop"


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices(Statement):
    """The price of one part, kit or set: of each, where several are meant."""

    say = "price"
    price: Money
    basis: Basis = "exact"


@dataclass(frozen=True, slots=True, kw_only=True)
class Charges(Statement):
    """Labour, outside work, postage, a discount: money that is no part's price."""

    say = "charge"
    kind: ChargeKind
    price: Money | None = None
    basis: Basis = "exact"
    hours: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Works(Statement):
    """Work on this machine."""

    say = "work"
    action: Action
    standing: Standing = "done"
    by: Place = "bench"


@dataclass(frozen=True, slots=True, kw_only=True)
class TakesOff(Statement):
    say = "off"


@dataclass(frozen=True, slots=True, kw_only=True)
class PutsBack(Statement):
    say = "back"


@dataclass(frozen=True, slots=True, kw_only=True)
class Measures(Statement):
    """A measured, gauged or set value, or the size of a tool or thread. `ref` is what was measured."""

    say = "reading"
    value: Decimal
    unit: Unit
    when: When | None = None
    about: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Tries(Statement):
    """Something tried or gauged on purpose, with a verdict."""

    say = "test"
    kind: TrialKind
    result: TrialResult


@dataclass(frozen=True, slots=True, kw_only=True)
class Advises(Statement):
    """To the owner. `words` is the advice."""

    say = "advice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubts(Statement):
    """A question that nobody has answered yet."""

    say = "doubt"


@dataclass(frozen=True, slots=True, kw_only=True)
class Settles(Statement):
    """Answers an earlier doubt or suspicion."""

    say = "settled"


@dataclass(frozen=True, slots=True, kw_only=True)
class Corrects(Statement):
    """Takes back the words before it: "no, sorry". The corrected fact is a statement of its own."""

    say = "correction"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cues(Statement):
    """Spoken to the program, never about the machine."""

    say = "cue"
    cue: str


KINDS: tuple[type[Statement], ...] = (
    Names, Finds, Clears, Suspects, Leaves, Needs, Orders, Fits, Drops, Prices, Charges, Works, TakesOff,
    PutsBack, Measures, Tries, Advises, Doubts, Settles, Corrects, Cues,
)  # fmt: skip
