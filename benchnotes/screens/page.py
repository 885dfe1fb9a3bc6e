"""A ruled page: rows beside a margin, one of them pointed at. Draws only the lines in view, however long the page."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from typing import ClassVar

from rich.cells import cell_len
from rich.segment import Segment
from rich.style import Style
from textual import events
from textual.binding import Binding, BindingType
from textual.geometry import Region, Size
from textual.message import Message
from textual.scroll_view import ScrollView
from textual.strip import Strip

from benchnotes.screens.row import MARGIN, Line, Row, lines_of


class Page(ScrollView, can_focus=True):
    """The rows of one screen."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {
        "page--margin", "page--line", "page--text", "page--quiet", "page--heading", "page--mark", "page--pointed",
    }  # fmt: skip
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up,k", "step(-1)", show=False),
        Binding("down,j", "step(1)", show=False),
        Binding("pageup", "page(-1)", show=False),
        Binding("pagedown", "page(1)", show=False),
        Binding("home", "end(-1)", show=False),
        Binding("end", "end(1)", show=False),
        Binding("enter", "open", show=False),
    ]

    class Moved(Message):
        """Another row is pointed at."""

        def __init__(self, key: Hashable | None) -> None:
            super().__init__()
            self.key = key

    class Opened(Message):
        """The row pointed at was chosen."""

        def __init__(self, key: Hashable) -> None:
            super().__init__()
            self.key = key

    def __init__(self, *, id: str | None = None) -> None:  # noqa: A002 - Textual's own name for it
        super().__init__(id=id)
        self._rows: Sequence[Row] = ()
        self._lines: list[Line] = []
        self._first_line: list[int] = []
        self._at: int | None = None

    @property
    def key(self) -> Hashable | None:
        """Of the row pointed at."""
        return None if self._at is None else self._rows[self._at].key

    def show_rows(self, rows: Sequence[Row], key: Hashable | None = None) -> None:
        """Shows these rows; points at that key, else stays as near as may be to where it was."""
        kept, place = self.key if key is None else key, self._at or 0
        self._rows = rows
        can = [at for at, row in enumerate(rows) if row.key is not None]
        same = next((at for at in can if rows[at].key == kept), None)
        self._at = same if same is not None else next((at for at in can if at >= place), can[-1] if can else None)
        self._lay_out()
        self._moved()

    def point_at(self, key: Hashable) -> None:
        """Points at the row with that key, where there is one."""
        at = next((at for at, row in enumerate(self._rows) if row.key == key), None)
        if at is not None:
            self._point(at)

    def action_step(self, by: int) -> None:
        """The next row that can be pointed at."""
        at = (self._at if self._at is not None else -1) + by
        while 0 <= at < len(self._rows) and self._rows[at].key is None:
            at += by
        if 0 <= at < len(self._rows):
            self._point(at)
        else:
            self.scroll_to(y=0 if by < 0 else self.max_scroll_y, animate=False)

    def action_page(self, by: int) -> None:
        """As many lines on as are in view."""
        if self._at is None:
            return
        line = self._first_line[self._at] + by * max(1, self.size.height - 2)
        row = self._lines[min(max(line, 0), len(self._lines) - 1)].row
        can = [at for at, shown in enumerate(self._rows) if shown.key is not None]
        self._point(min(can, key=lambda at: abs(at - row)))

    def action_end(self, by: int) -> None:
        """The first or the last row."""
        can = [at for at, row in enumerate(self._rows) if row.key is not None]
        if can:
            self._point(can[0] if by < 0 else can[-1])

    def action_open(self) -> None:
        """Chooses the row pointed at."""
        if self.key is not None:
            self.post_message(self.Opened(self.key))

    def on_resize(self) -> None:
        self._lay_out()

    def on_click(self, event: events.Click) -> None:
        line = event.y + self.scroll_offset.y
        if not 0 <= line < len(self._lines):
            return
        at = self._lines[line].row
        if at == self._at:
            self.action_open()
        elif self._rows[at].key is not None:
            self._point(at)

    def render_line(self, y: int) -> Strip:
        at = y + self.scroll_offset.y
        width = self.size.width
        if at >= len(self._lines):
            return Strip(self._margin(None, False), MARGIN).adjust_cell_length(width, self.rich_style)
        line = self._lines[at]
        row, pointed = self._rows[line.row], line.row == self._at
        segments = self._margin(row if line.first else None, pointed)
        style = self._style(row, line, pointed)
        gap = max(0, width - MARGIN - 1 - cell_len(line.text) - cell_len(line.tail))
        segments += [Segment(line.text, style), Segment(" " * gap, style.without_color + Style(bgcolor=style.bgcolor))]
        segments += [Segment(line.tail, style)]
        return Strip(segments).adjust_cell_length(width, self.rich_style)

    def _margin(self, row: Row | None, pointed: bool) -> list[Segment]:
        margin, mark, line = (self.get_component_rich_style(f"page--{part}") for part in ("margin", "mark", "line"))
        pointer = "▶" if pointed and row is not None else " "
        moment = row.margin if row else ""
        sign = row.mark if row else ""
        return [
            Segment(pointer, mark),
            Segment(f"{moment:>6} ", margin),
            Segment(f"{sign or ' '}", mark),
            Segment("┊ ", line),
        ]

    def _style(self, row: Row, line: Line, pointed: bool) -> Style:
        part = "heading" if row.kind == "heading" else "quiet" if line.quiet else "text"
        style = self.get_component_rich_style(f"page--{part}")
        return style + self.get_component_rich_style("page--pointed") if pointed else style

    def _lay_out(self) -> None:
        width = max(20, self.size.width - MARGIN - 1)
        self._lines, self._first_line = [], []
        for place, row in enumerate(self._rows):
            self._first_line.append(len(self._lines))
            self._lines += lines_of(row, place, width)
        self.virtual_size = Size(self.size.width, len(self._lines))
        self._in_view()
        self.refresh()

    def _point(self, at: int) -> None:
        self._at = at
        self._in_view()
        self.refresh()
        self._moved()

    def _in_view(self) -> None:
        if self._at is None:
            return
        first = self._first_line[self._at]
        count = sum(1 for line in self._lines[first : first + 40] if line.row == self._at)
        # a heading just above comes into view with its first row
        above = 1 if self._at and self._rows[self._at - 1].key is None else 0
        region = Region(0, max(0, first - above), self.size.width, count + above)
        self.scroll_to_region(region, animate=False, force=True)

    def _moved(self) -> None:
        self.post_message(self.Moved(self.key))
