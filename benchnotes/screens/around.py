"""The words of an evidence, with those before and after it: what somebody hears who listens there."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar, Final

from rich.cells import cell_len
from rich.style import Style
from rich.text import Text
from textual.widget import Widget

from benchnotes.exports.wording import clock, moment_of
from benchnotes.record.heard import Evidence, Utterance
from benchnotes.session.evidence import Breath, around

AT_MOST: Final = 12
"""Breaths on either side; as many of them are shown as there is room for."""
PLAIN: Final = Style()


class Around(Widget):
    """Shows one evidence at a time, or some lines of our own."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {"around--quiet"}

    def __init__(self) -> None:
        super().__init__()
        self._head, self._talk = "", Text()
        self._before: Sequence[Breath] = ()
        self._said: Sequence[Breath] = ()
        self._after: Sequence[Breath] = ()
        self._plain: str | None = ""

    def show(self, evidence: Evidence, utterances: Sequence[Utterance], which: str = "") -> None:
        """The words of this evidence. `which`: "2 of 3", where an entry was said more than once."""
        near = around(evidence, utterances, AT_MOST)
        self._before, self._said, self._after = near.before, near.said, near.after
        self._head = f"{moment_of(evidence)}{f', {which}' if which else ''}"
        self._plain = None
        self.refresh()

    def say(self, text: str) -> None:
        """Lines of our own in its place."""
        self._plain = text
        self.refresh()

    def render(self) -> Text:
        if self._plain is not None:
            return Text(self._plain)
        width, height = max(20, self.size.width), max(3, self.size.height)
        said = [line for breath in self._said for line in _set(breath, width)]
        if not self._said:
            said = [Text("        (nobody has read what is said here: listen)", style="italic")]
        said = said[: height - 1]
        room = height - 1 - len(said)
        quiet = Style(color=self.get_component_rich_style("around--quiet").color)
        before = [line for breath in self._before for line in _set(breath, width, quiet)]
        after = [line for breath in self._after for line in _set(breath, width, quiet)]
        above = min(len(before), max(room // 2, room - len(after)))
        shown = [*before[len(before) - above :], *said, *after[: room - above]]
        return Text("\n").join([Text(self._head, style="bold"), *shown])


def _set(breath: Breath, width: int, style: Style = PLAIN) -> list[Text]:
    """One breath in lines, its moment before the first; the words that the evidence rests on are underlined."""
    text = Text(f"{clock(breath.start_s):>7} ", style=style)
    at = 8
    lines = []
    for word, rests in breath.words:
        if at + cell_len(word) > width and at > 8:
            lines.append(text)
            text, at = Text(" " * 8, style=style), 8
        text.append(word, "bold underline" if rests else "")
        text.append(" ")
        at += cell_len(word) + 1
    return [*lines, text]
