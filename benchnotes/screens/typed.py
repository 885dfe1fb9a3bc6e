"""Where things are typed: at the foot of the page, one field a line. Enter keeps, Escape leaves all as it was."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.message import Message
from textual.widget import Widget
from textual.widgets import Input, Label

from benchnotes.screens.fields import Field


class Line(Input):
    """A line to type on. Nothing on it blinks."""

    def __init__(self, value: str = "", placeholder: str = "") -> None:
        super().__init__(value, placeholder)
        self.cursor_blink = False


class Choice(Widget, can_focus=True):
    """One of several words: arrows go through them, a letter goes to the next that begins with it."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("left", "turn(-1)", show=False),
        Binding("right,space", "turn(1)", show=False),
    ]

    def __init__(self, choices: Mapping[str, str], value: str) -> None:
        super().__init__()
        self._choices = list(choices.items())
        self._at = max(0, next((at for at, (term, _) in enumerate(self._choices) if term == value), 0))

    @property
    def value(self) -> str:
        """The term that is picked."""
        return self._choices[self._at][0]

    def render(self) -> str:
        return f"‹ {self._choices[self._at][1]} ›"

    def action_turn(self, by: int) -> None:
        self._at = (self._at + by) % len(self._choices)
        self.refresh()

    def on_key(self, event: events.Key) -> None:
        letter = event.character
        if not letter or not letter.isprintable() or letter == " ":
            return
        order = [(self._at + step) % len(self._choices) for step in range(1, len(self._choices) + 1)]
        found = next((at for at in order if self._choices[at][1].casefold().startswith(letter.casefold())), None)
        if found is not None:
            self._at = found
            self.refresh()
        event.stop()


class Typed(Vertical):
    """The fields that are being typed; hidden until it is asked something."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "leave", show=False, priority=True),
        Binding("enter", "keep", show=False, priority=True),
        Binding("up", "next(-1)", show=False, priority=True),
        Binding("down", "next(1)", show=False, priority=True),
    ]

    class Kept(Message):
        """Typed, and to be kept: the fields that were changed."""

        def __init__(self, changed: Mapping[str, str]) -> None:
            super().__init__()
            self.changed = changed

    class Left(Message):
        """Nothing is to be kept."""

    def __init__(self) -> None:
        super().__init__()
        self._before: dict[str, str] = {}
        self._widgets: dict[str, Line | Choice] = {}

    async def ask(self, fields: Sequence[tuple[Field, str]], first: int = 0) -> None:
        """Asks for these fields, each with what stands in it, and begins with one of them."""
        await self.remove_children()
        self._before = {field.name: value for field, value in fields}
        self._widgets = {
            field.name: Choice(field.choices, value) if field.choices is not None else Line(value)
            for field, value in fields
        }
        lines = [Horizontal(Label(field.label), self._widgets[field.name]) for field, _ in fields]
        await self.mount_all(lines)
        self.add_class("-open")
        # at once, and not when Textual comes to it: the next letter is on its way already
        self.screen.set_focus(list(self._widgets.values())[first])

    def compose(self) -> ComposeResult:
        return iter(())

    def action_keep(self) -> None:
        changed = {name: w.value for name, w in self._widgets.items() if w.value != self._before[name]}
        self._close()
        self.post_message(self.Kept(changed))

    def action_leave(self) -> None:
        self._close()
        self.post_message(self.Left())

    def action_next(self, by: int) -> None:
        """The next field, up or down."""
        widgets = list(self._widgets.values())
        at = next((at for at, widget in enumerate(widgets) if widget.has_focus), 0)
        widgets[(at + by) % len(widgets)].focus()

    def _close(self) -> None:
        self.remove_class("-open")
