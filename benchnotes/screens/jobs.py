"""The jobs of the workshop. What is typed narrows the list, and finds where it was said in any job."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import ClassVar, Final

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal
from textual.message import Message
from textual.screen import Screen
from textual.timer import Timer
from textual.widgets import Input, Label, Static

from benchnotes.exports.wording import clock, moment
from benchnotes.record.heard import Evidence
from benchnotes.screens.desk import Desk
from benchnotes.screens.page import Page
from benchnotes.screens.row import Row
from benchnotes.session.back_room import Failed
from benchnotes.session.glances import Glance
from benchnotes.session.jobs import Hit
from benchnotes.session.known_errors import KNOWN
from benchnotes.session.reading_room import ReadIt
from benchnotes.store.jobs import JobLine

LOOK_AFTER_S: Final = 0.15
"""So long after the last letter everything said is searched."""
LEAST_LETTERS: Final = 3
WHAT_TO_TYPE: Final = "a job, a machine, or anything that was said"
EMPTY: Final = (
    "No jobs yet.",
    "",
    "Talk while you work and record it, or film it; then, in a terminal:",
    "    benchnotes read FILE",
    "The job will be here.",
)


class Jobs(Screen[None]):
    """What is in the workshop, and everything that was ever said in it."""

    KEYS = "type to find  ↑ ↓ Enter open a job  Esc clear  f2 light or dark  ctrl+q leave"
    AUTO_FOCUS = "Input"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up", "move('step', -1)", show=False),
        Binding("down", "move('step', 1)", show=False),
        Binding("pageup", "move('page', -1)", show=False),
        Binding("pagedown", "move('page', 1)", show=False),
        Binding("escape", "clear", show=False),
    ]

    class Chosen(Message):
        """A job is to be laid open, at a moment where one is given."""

        def __init__(self, screen: Jobs, number: int, said: Evidence | None = None) -> None:
            super().__init__()
            self.screen, self.number, self.said = screen, number, said

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.desk = desk
        self._lines: Sequence[JobLine] = ()
        self._hits: Sequence[Hit] = ()
        self._looking: Timer | None = None

    def compose(self) -> ComposeResult:
        yield Horizontal(Static("Jobs", id="title"), Static(id="sum", markup=False), id="head")
        yield Horizontal(
            Label("find  "), Input(placeholder="a job, a machine, or anything that was said", id="words"), id="find"
        )
        yield Page()
        yield Static(id="told", markup=False)
        yield Static(self.KEYS, id="keys", markup=False)

    def on_mount(self) -> None:
        self._look_again()
        self.desk.read_next()

    def on_screen_resume(self) -> None:
        self._look_again()

    def answered(self, answer: object) -> None:
        """A room behind has told something."""
        if isinstance(answer, Failed) and isinstance(answer.request, ReadIt):
            self.tell(f"! {answer.request.job.name}: {answer.why}")
        self._show()

    def tell(self, text: str) -> None:
        """A sentence at the foot."""
        told = self.query_one("#told", Static)
        told.update(text)
        told.set_class(bool(text), "-says")

    def on_input_changed(self) -> None:
        self._hits = ()
        self._show()
        if self._looking is not None:
            self._looking.stop()
        self._looking = self.set_timer(LOOK_AFTER_S, self._find)

    def on_input_submitted(self) -> None:
        self.query_one(Page).action_open()

    def on_page_opened(self, message: Page.Opened) -> None:
        self.tell("")
        match message.key:
            case JobLine() as line:
                self.post_message(self.Chosen(self, line.job.number))
            case Hit() as hit:
                said = Evidence(hit.recording, hit.start_s, hit.start_s, hit.text)
                self.post_message(self.Chosen(self, hit.job, said))

    def action_move(self, how: str, by: int) -> None:
        """Moves on the page while the letters go to the line above it."""
        page = self.query_one(Page)
        (page.action_step if how == "step" else page.action_page)(by)

    def action_clear(self) -> None:
        """Takes back what was typed."""
        words = self.query_one(Input)
        if not words.value:
            self.tell("Ctrl+Q leaves Bench Notes. Everything is kept already.")
        words.value = ""

    def _look_again(self) -> None:
        try:
            self._lines = self.desk.job_lines()
        except KNOWN as error:
            self.tell(f"! {error}")
        self._show()

    def _find(self) -> None:
        words = self.query_one(Input).value.strip()
        try:
            self._hits = self.desk.hits(words) if len(words) >= LEAST_LETTERS else ()
        except KNOWN as error:
            self.tell(f"! {error}")
        self._show()

    def _show(self) -> None:
        words = self.query_one(Input).value.casefold().split()
        shown = [line for line in self._lines if all(word in self._known(line) for word in words)]
        rows = [_job(line, self.desk.glances.get(line.job.number)) for line in shown]
        if not self._lines:
            rows = [Row(text, kind="quiet") for text in EMPTY]
        elif not rows:
            rows = [Row("No job is called so.", kind="quiet")]
        self.query_one(Page).show_rows([*rows, *_said(self._hits)])
        count = f"{len(shown)} of {len(self._lines)}" if words else f"{len(self._lines)}"
        self.query_one("#sum", Static).update(f"{count} job{'' if count == '1' else 's'}")

    def _known(self, line: JobLine) -> str:
        glance = self.desk.glances.get(line.job.number)
        return f"{line.job.number} {line.job.name} {glance.machine if glance else ''}".casefold()


def _job(line: JobLine, glance: Glance | None) -> Row:
    visits = f"{line.recordings} visit{'' if line.recordings == 1 else 's'}, {clock(line.duration_s)}"
    if line.unfinished:
        visits += f", {line.unfinished} not taken in to the end"
    if glance is None:
        return Row(line.job.name, key=line, margin=str(line.job.number), tail="not read yet", below=visits)
    below = [glance.machine, f"{glance.entries} entries", visits]
    return Row(
        line.job.name,
        key=line,
        margin=str(line.job.number),
        mark="?" if glance.questions else "",
        tail=f"{glance.left} left to do" if glance.left else "nothing left to do",
        below="  ·  ".join(filter(None, below)),
        below_tail=glance.money,
    )


def _said(hits: Sequence[Hit]) -> Iterator[Row]:
    if hits:
        yield Row("")
        yield Row(f"Said: {len(hits)}", kind="heading")
    for hit in hits:
        where = f"{hit.job_name}, {moment(hit.recording, hit.start_s)}"
        yield Row(f"“{hit.text}”", key=hit, margin=str(hit.job), below=where)
