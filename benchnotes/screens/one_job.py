"""What both sides of an open job have in common: the rule, the page, the words around, what was told, and hearing."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar, Final

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.screen import Screen
from textual.widgets import Static

from benchnotes.exports.wording import clock
from benchnotes.record.heard import Evidence
from benchnotes.screens.around import Around
from benchnotes.screens.desk import Desk
from benchnotes.screens.page import Page
from benchnotes.screens.row import Row
from benchnotes.screens.steel_rule import Marks, rule_lines
from benchnotes.screens.typed import Typed
from benchnotes.session.attention import questions
from benchnotes.session.back_room import Failed
from benchnotes.session.glances import machine_name
from benchnotes.session.known_errors import KNOWN
from benchnotes.session.open_job import OpenJob
from benchnotes.session.reading_room import ReadIt
from benchnotes.session.totals import money_said

READING: Final = "Reading what was said. The first job of a sitting takes some seconds, the next ones less."


@dataclass(frozen=True, slots=True)
class Pointed:
    """What a row of the page is about."""

    part: str
    """Of the page: "question", "entry", "item", "closed"."""
    about: Any
    where: str = ""
    """The list of the record, for an entry."""
    evidence: tuple[Evidence, ...] = ()


class OneJob(Screen[None]):
    """One side of the job that lies open."""

    KEYS: ClassVar[str] = ""
    ALL_KEYS: ClassVar[str] = ""
    AUTO_FOCUS = "Page"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("space,p", "hear", show=False),
        Binding("left", "other(-1)", show=False),
        Binding("right", "other(1)", show=False),
        Binding("u", "undo", show=False),
        Binding("r", "redo", show=False),
        Binding("escape", "away", show=False),
        Binding("question_mark", "all_keys", show=False),
    ]

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.desk = desk
        self._which = 0

    def compose(self) -> ComposeResult:
        yield Horizontal(Static(id="title", markup=False), Static(id="sum", markup=False), id="head")
        yield Static(id="rule", markup=False)
        yield Vertical(Page(), Around(), id="middle")
        yield Typed()
        yield Static(id="told", markup=False)
        yield Static(self.KEYS, id="keys", markup=False)

    def on_mount(self) -> None:
        self.show_job()

    @abstractmethod
    def rows(self, lying: OpenJob) -> Sequence[Row]:
        """What the page shows."""

    def show_job(self, key: Hashable | None = None) -> None:
        """Shows the job as it stands now, pointing at that row or staying where it was."""
        lying = self.desk.lying
        if lying is None:
            job = self.desk.job_numbered(self.desk.number or 0)
            self.query_one("#title", Static).update(job.name if job else "")
            self.query_one(Page).show_rows([Row(READING, kind="quiet")])
            return
        self.query_one("#title", Static).update(f"{lying.job.number}  {lying.job.name}")
        self.query_one("#sum", Static).update(_sum(lying))
        self.query_one(Page).show_rows(self.rows(lying), key)

    def answered(self, answer: object) -> None:
        """A room behind has told something."""
        match answer:
            case Failed() if not isinstance(answer.request, ReadIt) or self.desk.lying is None:
                self.tell(f"! {answer.why}")
            case _ if self._unread and self.desk.lying is not None:
                self.show_job()

    @property
    def pointed(self) -> Pointed | None:
        """What the page points at."""
        key = self.query_one(Page).key
        return key if isinstance(key, Pointed) else None

    @property
    def evidence(self) -> Evidence | None:
        """Which of its moments is shown."""
        pointed = self.pointed
        return pointed.evidence[self._which % len(pointed.evidence)] if pointed and pointed.evidence else None

    def tell(self, text: str) -> None:
        """A sentence at the foot, until the next step."""
        told = self.query_one("#told", Static)
        told.update(text)
        told.set_class(bool(text), "-says")

    def trying(self, step: Callable[[], object]) -> bool:
        """Does it; False, and a sentence on the screen, where it could not be done."""
        try:
            step()
        except KNOWN as error:
            self.tell(f"! {error}")
            return False
        return True

    def on_page_moved(self) -> None:
        self._which = 0
        self.show_words()

    def on_resize(self) -> None:
        self.call_after_refresh(self._show_rule)

    def show_words(self) -> None:
        """The words of what is pointed at, and its place on the rule."""
        lying, evidence, pointed = self.desk.lying, self.evidence, self.pointed
        words = self.query_one(Around)
        if lying is None or pointed is None:
            words.say("")
        elif evidence is None:
            words.say("Typed by hand: nobody said it.")
        else:
            count = len(pointed.evidence)
            words.show(evidence, lying.facts.heard.utterances, f"{self._which + 1} of {count}" if count > 1 else "")
        self._show_rule()

    def action_hear(self) -> None:
        """Plays the seconds in which it was said."""
        evidence = self.evidence
        if evidence is not None:
            self.trying(lambda: self.desk.hear(evidence))

    def action_other(self, by: int) -> None:
        """Another moment in which the same was said."""
        pointed = self.pointed
        if pointed and len(pointed.evidence) > 1:
            self._which = (self._which + by) % len(pointed.evidence)
            self.show_words()

    def action_undo(self) -> None:
        """Takes back what was done last, of this sitting or an earlier one."""
        self._again(self.desk.undo, "Taken back. r does it again.", "Nothing was done by hand here yet.")

    def action_redo(self) -> None:
        """Does again what was taken back."""
        self._again(self.desk.redo, "Done again. u takes it back.", "Nothing was taken back.")

    def action_away(self) -> None:
        """Back to the jobs."""
        self.desk.be_quiet()
        self.dismiss()

    def action_all_keys(self) -> None:
        """Every key, in place of the words around."""
        self.query_one(Around).say(self.ALL_KEYS)

    def on_typed_left(self) -> None:
        self.query_one(Page).focus()

    def _again(self, step: Callable[[], bool], worked: str, nothing: str) -> None:
        done: list[bool] = []
        if self.desk.lying is not None and self.trying(lambda: done.append(step())):
            self.show_job()
            self.tell(worked if done[0] else nothing)

    @property
    def _unread(self) -> bool:
        return self.query_one(Page).key is None

    def _show_rule(self) -> None:
        lying, pointed = self.desk.lying, self.pointed
        if lying is None:
            return
        marks = Marks(
            here=self.evidence,
            also=pointed.evidence if pointed else (),
            questions=[asked.evidence[0] for asked in questions(lying.now) if asked.evidence],
        )
        heard = lying.facts.heard
        lines = rule_lines(heard.recordings, lying.now.unheard, marks, max(30, self.size.width - 2))
        self.query_one("#rule", Static).update("\n".join(lines))


def moment(evidence: Sequence[Evidence], lying: OpenJob) -> str:
    """The first moment for the margin; with the number of its visit where there is more than one."""
    if not evidence:
        return ""
    first = evidence[0]
    several = len(lying.facts.heard.recordings) > 1
    return f"{first.recording}·{clock(first.start_s)}" if several else clock(first.start_s)


def _sum(lying: OpenJob) -> str:
    money = str(money_said(lying.now.record))
    left = f"{len(lying.now.items)} left to do" if lying.now.items else "nothing left to do"
    return "  ·  ".join(filter(None, (left, money, machine_name(lying.now.record))))
