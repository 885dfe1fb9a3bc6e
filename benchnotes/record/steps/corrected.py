"""What the speaker took back in the same breath: "six quid, no, six seventy-five"."""

from __future__ import annotations

from benchnotes.record.statements import Corrects, Measures, PartStatement, Prices
from benchnotes.record.talk import Said, Talk, without

REACH = 1
"""A correction takes back words of its own utterance or of the one before."""


def corrected(talk: Talk) -> Talk:
    """Drops a price, value or number of parts where the correction that follows gives another for the same thing."""
    taken_back: set[int] = set()
    for said, _ in talk.of(Corrects):
        later = [s for s in talk.said if s.at > said.at and _near(s, said)]
        earlier = [s for s in talk.said if s.at < said.at and _near(s, said)]
        wrong = [old.at for old in earlier if any(_replaces(new, old) for new in later)]
        taken_back |= set(wrong[-1:])
    return without(talk, taken_back)


def _near(one: Said, correction: Said) -> bool:
    return abs(one.statement.order - correction.statement.order) <= REACH


def _replaces(new: Said, old: Said) -> bool:
    """Another value of the same kind for the same thing."""
    parts = (new.statement.part, old.statement.part)
    if (
        new.name != old.name
        or type(new.statement) is not type(old.statement)
        or (None not in parts and len(set(parts)) > 1)
    ):
        return False
    match new.statement, old.statement:
        case Measures() as one, Measures() as other:
            return one.unit == other.unit and one.when == other.when and one.value != other.value
        case Prices() as one, Prices() as other:
            return one.price != other.price
        case PartStatement() as one, PartStatement() as other:
            return one.quantity != other.quantity
        case _:
            return False
