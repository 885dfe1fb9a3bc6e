"""What was said around one fault: its mentions, the work that may have put it right, what was tried and seen since."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from benchnotes.record.entries import Fault, JobRecord
from benchnotes.record.same_thing import name_words
from benchnotes.record.statements import Clears, Finds, Fits, Leaves, Needs, Orders, Statement, Tries, Works
from benchnotes.record.steps.faults import fault_part
from benchnotes.record.talk import Said, Talk

NO_REMEDY = frozenset(("remove", "refit", "send_out"))
"""Actions that put nothing right by themselves."""


def puts_right(told: Statement) -> bool:
    """Work that may remedy a fault: done, and more than taking off, putting back or sending away."""
    if isinstance(told, Works):
        return told.standing == "done" and told.action not in NO_REMEDY
    return isinstance(told, Fits)


def looks_good(told: Statement) -> bool:
    """Seen to be right, or a trial passed."""
    return isinstance(told, Clears) or (isinstance(told, Tries) and told.result == "pass")


def went_badly(told: Statement) -> bool:
    """A trial that failed or was unclear."""
    return isinstance(told, Tries) and told.result != "pass"


@dataclass(frozen=True)
class FaultStory:
    """One fault in the talk. Places (`at`) count statements."""

    fault: Fault
    talk: Talk
    record: JobRecord

    @cached_property
    def mentions(self) -> tuple[Said, ...]:
        return tuple(s for s, told in self.talk.of(Finds) if told.kind == self.fault.kind and self.same(s))

    @property
    def first(self) -> Said:
        return self.mentions[0]

    @cached_property
    def own_work(self) -> tuple[Said, ...]:
        """Remedies of the part itself, since the fault was found."""
        return tuple(s for s in self.since(self.first) if puts_right(s.statement) and self.same(s))

    @cached_property
    def near_work(self) -> tuple[Said, ...]:
        """Remedies of a thing whose name shares a word with the part's."""
        return tuple(s for s in self.since(self.first) if puts_right(s.statement) and self.near(s))

    @cached_property
    def other_work(self) -> tuple[Said, ...]:
        """Remedies of anything else that was named."""
        return tuple(s for s in self.since(self.first) if puts_right(s.statement) and s.name and self.apart(s))

    @cached_property
    def remedied(self) -> Said:
        """The last remedy of the part, else of one near it; where there was none, the finding of the fault."""
        return (self.own_work or self.near_work or (self.first,))[-1]

    @cached_property
    def after(self) -> tuple[Said, ...]:
        return tuple(self.since(self.remedied))

    @cached_property
    def looks(self) -> tuple[Said, ...]:
        """What was said of the part itself since its remedy; without one, since it was last found wrong."""
        return tuple(s for s in (self.after if self.own_work else self.since(self.mentions[-1])) if self.same(s))

    def since(self, said: Said) -> Iterator[Said]:
        return (s for s in self.talk.said[said.at + 1 :])

    def before(self, said: Said) -> Iterator[Said]:
        return (s for s in self.talk.said[: said.at])

    def same(self, said: Said) -> bool:
        return fault_part(said, self.record) == self.fault.part

    def near(self, said: Said) -> bool:
        return not self.same(said) and bool(set(name_words(said.name)) & set(name_words(self.fault.part)))

    def apart(self, said: Said) -> bool:
        return not self.same(said) and not self.near(said)

    def of_part(self, *kinds: type[Statement]) -> Iterator[Said]:
        return (s for s in self.talk.said if isinstance(s.statement, kinds) and self.same(s))

    @property
    def waiting(self) -> bool:
        """A part to put it right is needed or on order, and was not fitted."""
        return not self.own_work and any(self.of_part(Needs, Orders))

    @property
    def left(self) -> bool:
        """Left as it is. Of two faults of one part, the one found last before those words is meant, the other too where
        nothing was done about it; work on the part later is for the other."""
        leaves = [s.at for s in self.of_part(Leaves) if s.at > self.first.at]
        if not leaves:
            return False
        found = [s for s in self.of_part(Finds) if s.at < leaves[-1]]
        others = any(s not in self.mentions for s in found)
        if others and found[-1] in self.mentions:
            return True
        return not any(others or work.at > leaves[-1] for work in self.own_work)
