"""A page: lines that fit, and ten thousand rows without a stutter."""

from __future__ import annotations

import time

from rich.cells import cell_len
from screens.shop import on_screen
from textual.app import App, ComposeResult

from benchnotes.screens.page import Page
from benchnotes.screens.row import Row, lines_of

FRAME_S = 0.033


class OnePage(App[None]):
    """Nothing but a page."""

    def compose(self) -> ComposeResult:
        yield Page()


def test_a_long_row_is_broken_and_nothing_of_it_lost() -> None:
    words = "the left paddle bearing was seized solid with rust and old grease " * 4
    lines = lines_of(Row(words, tail="GBP 4.50", below="why it is so"), 0, 60)
    assert all(cell_len(line.text) + cell_len(line.tail) <= 60 for line in lines)
    assert " ".join(line.text for line in lines[:-1]).split() == words.split()


def test_wide_letters_count_twice() -> None:
    lines = lines_of(Row("修理" * 40), 0, 60)
    assert all(cell_len(line.text) <= 60 for line in lines)
    assert "".join(line.text for line in lines) == "修理" * 40


@on_screen
async def test_ten_thousand_rows_scroll_within_a_frame() -> None:
    """The median of thirty steps: what one feels, whatever else this machine is doing."""
    app = OnePage()
    async with app.run_test(size=(160, 48)) as pilot:
        page = app.query_one(Page)
        page.show_rows([Row(f"job {n}", key=n, below="a machine", tail="2 left") for n in range(10_000)])
        await pilot.pause()
        took = []
        for _ in range(30):
            began = time.perf_counter()
            page.action_page(1)
            for y in range(page.size.height):
                page.render_line(y)
            took.append(time.perf_counter() - began)
        assert sorted(took)[15] < FRAME_S
        page.action_end(1)
        assert page.key == 9_999


@on_screen
async def test_the_pointer_passes_over_headings_and_stays_where_it_was() -> None:
    app = OnePage()
    async with app.run_test(size=(80, 24)) as pilot:
        page = app.query_one(Page)
        rows = [Row("one", kind="heading"), Row("a", key="a"), Row("two", kind="heading"), Row("b", key="b")]
        page.show_rows(rows)
        assert page.key == "a"
        page.action_step(1)
        assert page.key == "b"
        page.show_rows(rows[:3])
        assert page.key == "a"
        await pilot.click(Page, offset=(20, 1))
        assert page.key == "a"
        page.show_rows([])
        page.action_step(1)
        assert page.key is None
