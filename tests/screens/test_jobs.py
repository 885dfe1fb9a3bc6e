"""The list of jobs: what it shows, what typing finds, how a job is opened."""

from __future__ import annotations

from pathlib import Path

from screens.shop import Shop, on_screen, pointed_at, text_of, told
from textual.widgets import Input

from benchnotes.screens.app import BenchNotes
from benchnotes.screens.record import Record
from benchnotes.session.glances import NAME, read_glances
from benchnotes.session.workshop import Workshop
from benchnotes.store.jobs import open_job
from benchnotes.store.notebook import open_notebook


@on_screen
async def test_a_job_at_a_glance(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        lines = text_of(app).splitlines()
        at = next(number for number, line in enumerate(lines) if "butter churn" in line)
        assert "2 left to do" in lines[at]
        for shown in ("Corvane 6 butter churn", "1 visit, 0:40", "8 entries", "GBP 5.10"):
            assert shown in lines[at + 1]
        assert "bridge lamp" in pointed_at(app)  # the newest first


@on_screen
async def test_typing_narrows_the_list_by_name_or_machine(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*"corv")
        await pilot.pause()
        assert "1 of 2 jobs" in text_of(app)
        assert "butter churn" in pointed_at(app)
        await pilot.press("escape")
        await pilot.pause()
        assert "2 jobs" in text_of(app)


@on_screen
async def test_what_was_said_is_found_and_opened_at_that_moment(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*"greases")  # endings do not count
        await pilot.pause(0.4)
        assert "thick with old grease" in text_of(app)
        assert "butter churn, visit 1, 0:15" in text_of(app)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Record)
        assert "clean drive gear" in pointed_at(app)
        assert "visit 1, 0:15" in text_of(app)


@on_screen
async def test_escape_comes_back_with_what_was_typed(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*"churn", "enter")
        await pilot.pause()
        await pilot.press("escape")
        await pilot.pause()
        assert app.screen.query_one(Input).value == "churn"
        assert "butter churn" in pointed_at(app)


@on_screen
async def test_letters_that_mean_something_to_a_search_are_letters(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*'"NOT (', "asterisk")
        await pilot.pause(0.4)
        assert "No job is called so." in text_of(app)
        assert told(app) == ""


@on_screen
async def test_a_glance_follows_what_is_done_by_hand(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("enter")  # the lamp
        await pilot.pause()
        await pilot.press("g", "c", *"the owner has it", "enter", "escape")
        await pilot.pause()
        assert "3 left to do" in text_of(app).splitlines()[3]
    assert read_glances(shop.workshop)[2].left == 3


@on_screen
async def test_a_file_of_glances_that_is_spoilt_is_made_again(shop: Shop) -> None:
    (shop.workshop.folder / NAME).write_text("[1, {", encoding="utf-8")
    assert read_glances(shop.workshop) == {}
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "left to do" in text_of(app)
    assert len(read_glances(shop.workshop)) == 2


@on_screen
async def test_an_empty_workshop_says_how_to_begin(tmp_path: Path) -> None:
    workshop = Workshop(tmp_path / "new")
    workshop.make()
    notebook = open_notebook(workshop.notebook)
    app = BenchNotes(workshop, notebook)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "benchnotes read FILE" in text_of(app)
        await pilot.press("enter", "down", "up", "pagedown")
        await pilot.pause()
        assert "No jobs yet." in text_of(app)
    notebook.close()


@on_screen
async def test_a_job_in_another_script_keeps_its_columns(shop: Shop) -> None:
    job = open_job(shop.notebook, "時計の修理 čekić", at=shop.read[0].job.opened_at, facts={})
    app = shop.app()
    app.desk._tried.add(job.number)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "時計の修理 čekić" in text_of(app)
        assert "not read yet" in text_of(app)
