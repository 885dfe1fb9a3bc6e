"""The app: the notebook, the rooms behind the screens, and the job that lies open."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, ClassVar

from textual import events
from textual.app import App
from textual.binding import Binding, BindingType
from textual.widgets import Input

from benchnotes.record.heard import Evidence
from benchnotes.screens.desk import Desk
from benchnotes.screens.going_back import GoingBack
from benchnotes.screens.jobs import Jobs
from benchnotes.screens.look import STYLES, THEMES
from benchnotes.screens.one_job import OneJob
from benchnotes.screens.record import Record
from benchnotes.screens.told import Answer
from benchnotes.screens.typed import Choice
from benchnotes.session.back_room import BackRoom, Failed
from benchnotes.session.known_errors import KNOWN
from benchnotes.session.playing_room import MODULE as PLAYING
from benchnotes.session.playing_room import Played
from benchnotes.session.reading_room import MODULE as READING
from benchnotes.session.reading_room import HasRead
from benchnotes.session.workshop import Workshop
from benchnotes.store.notebook import Notebook


class BenchNotes(App[None]):
    """Bench Notes on a terminal."""

    CSS = STYLES
    ENABLE_COMMAND_PALETTE = False
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (120, "-wide")]  # noqa: RUF012 - as Textual declares it
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+q", "quit", show=False, priority=True),
        Binding("f2", "turn_light", show=False),
    ]

    def __init__(self, workshop: Workshop, notebook: Notebook, job: int | None = None) -> None:
        """`job`: the number of a job that lies open from the start."""
        super().__init__()
        for theme in THEMES:
            self.register_theme(theme)
        self.theme = THEMES[0].name
        self._reading = BackRoom(READING, self._told)
        self._playing = BackRoom(PLAYING, self._told)
        self.desk = Desk(workshop, notebook, self._reading, self._playing)
        self._first = job
        self.failure: Exception | None = None
        """What ended the app, where something did that should not have."""

    def on_mount(self) -> None:
        self.push_screen(Jobs(self.desk))
        job = self.desk.job_numbered(self._first) if self._first is not None else None
        if job is not None:
            self._lay_open(job.number, None)

    def on_unmount(self) -> None:
        self._reading.close()
        self._playing.close()

    def on_jobs_chosen(self, message: Jobs.Chosen) -> None:
        try:
            self._lay_open(message.number, message.said)
        except KNOWN as error:
            message.screen.tell(f"! {error}")

    def on_key(self, event: events.Key) -> None:
        """A letter typed so fast that it was still on its way to the page when a field began to wait for it."""
        focused = self.focused
        if isinstance(focused, Input) and event.character and event.is_printable:
            focused.replace(event.character, *sorted(focused.selection))
        elif isinstance(focused, Choice):
            focused.on_key(event)

    def action_turn(self, face: str) -> None:
        """The other side of the job that lies open."""
        screens: dict[str, Callable[[], OneJob]] = {
            "record": lambda: Record(self.desk),
            "going_back": lambda: GoingBack(self.desk),
        }
        self.switch_screen(screens[face]())

    def action_turn_light(self) -> None:
        """Dark or light."""
        names = [theme.name for theme in THEMES]
        self.theme = names[1 - names.index(self.theme)]

    def on_answer(self, message: Answer) -> None:
        match message.answer:
            case HasRead() as read:
                self.desk.take(read)
            case Failed() as failed:
                self.desk.take_failed(failed)
            case Played():
                pass
        self.desk.read_next()
        for screen in self.screen_stack:
            if isinstance(screen, (Jobs, OneJob)):
                screen.answered(message.answer)

    def _lay_open(self, number: int, said: Evidence | None) -> None:
        self.desk.lay_open(number)
        self.push_screen(Record(self.desk, said))

    def _told(self, answer: Any) -> None:
        """Comes from another thread."""
        self.post_message(Answer(answer))

    def _handle_exception(self, error: Exception) -> None:
        """Textual would print a traceback; whoever opened the app writes a file and says a sentence instead."""
        self.failure = self.failure or error
        self._return_code = 1
        if self._exception is None:
            self._exception = error
            self._exception_event.set()
        self._close_messages_no_wait()
