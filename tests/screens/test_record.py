"""The record side of a job, driven by its keys."""

from __future__ import annotations

from dataclasses import replace

from screens.shop import Shop, on_screen, open_first_job, point_at, pointed_at, text_of, told
from textual.events import Key

from benchnotes.screens.app import BenchNotes
from benchnotes.session.attention import questions
from benchnotes.session.editing import events_of


def left_for_me(app: BenchNotes) -> list[str]:
    assert app.desk.lying is not None
    return [question.why for question in questions(app.desk.lying.now)]


@on_screen
async def test_what_needs_a_person_stands_in_front(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        assert left_for_me(app) == [
            "a number was heard unsurely",
            "priced more than one way",
            "spoken, but not made out",
            "read with little certainty",
        ]
        assert "For you: 4" in text_of(app)
        assert "shaft: 11.9 mm" in pointed_at(app)


@on_screen
async def test_one_key_an_answer_and_the_next_comes(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        for expected in ("lid gasket", "speech without words", "shaft: worn"):
            await pilot.press("a")
            await pilot.pause()
            assert expected in pointed_at(app)
        await pilot.press("a")
        await pilot.pause()
        assert left_for_me(app) == []
        assert "Nothing asks for you" in text_of(app)
        assert app.desk.lying is not None
        # of two prices, the one that stands is the one that was meant
        assert app.desk.lying.now.record.parts[0].prices == ()
        assert "price_differs" not in [item.kind for item in app.desk.lying.now.items]


@on_screen
async def test_the_words_around_are_shown(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        seen = text_of(app)
        assert "visit 1, 0:20" in seen
        assert "that's clean now." in seen  # before
        assert "Shaft gauges at eleven point nine" in seen
        assert "five pounds ten" in seen  # after


@on_screen
async def test_a_price_question_begins_where_a_price_was_said_and_arrows_go_through_the_rest(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        await pilot.press("n")
        await pilot.pause()
        assert "visit 1, 0:10, 1 of 3" in text_of(app)
        await pilot.press("right")
        await pilot.pause()
        assert "visit 1, 0:25, 2 of 3" in text_of(app)
        await pilot.press("left", "left")
        await pilot.pause()
        assert "visit 1, 0:05, 3 of 3" in text_of(app)


@on_screen
async def test_a_number_is_typed_over(shop: Shop) -> None:
    """The doubtful number is the field that waits for the first letter."""
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        await pilot.press("c", *"12.9", "enter")
        await pilot.pause()
        assert app.desk.lying is not None
        reading = app.desk.lying.now.record.readings[0]
        assert (str(reading.value), reading.unit, reading.check) == ("12.9", "mm", False)
        assert "Put right" in told(app)
        assert "lid gasket" in pointed_at(app)


@on_screen
async def test_a_standing_is_picked_by_its_first_letter(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        await point_at(pilot, "shaft: worn")
        await pilot.press("c", "down", "down", "l", "enter")  # "left as it is"
        await pilot.pause()
        assert app.desk.lying is not None
        assert app.desk.lying.now.record.faults[1].status == "left"
        assert "fault_open" not in [item.kind for item in app.desk.lying.now.items]


@on_screen
async def test_escape_leaves_all_as_it_was(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        await pilot.press("c", *"99", "escape")
        await pilot.pause()
        assert events_of(shop.notebook, 1) == ()
        assert "shaft: 11.9 mm" in pointed_at(app)


@on_screen
async def test_what_cannot_be_is_said_and_nothing_is_lost(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        await pilot.press("c", *"eleven", "enter")
        await pilot.pause()
        assert "no number" in told(app)
        assert events_of(shop.notebook, 1) == ()
        assert "shaft: 11.9 mm" in pointed_at(app)


@on_screen
async def test_strike_undo_redo_over_a_restart(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        await point_at(pilot, "clean drive gear")
        await pilot.press("x")
        await pilot.pause()
        assert "clean drive gear" not in text_of(app).replace(told(app), "")
        await pilot.press("a")
    assert len(events_of(shop.notebook, 1)) == 2

    app = shop.app()
    async with app.run_test(size=(80, 48)) as pilot:
        await open_first_job(pilot)
        assert app.desk.lying is not None
        assert app.desk.lying.now.record.work == ()
        await pilot.press("u", "u", "u")
        await pilot.pause()
        assert "Nothing was done by hand" in told(app)
        assert [work.target for work in app.desk.lying.now.record.work] == ["drive gear"]
        await pilot.press("r")
        await pilot.pause()
        assert app.desk.lying.now.record.work == ()
    # an undo is an event as well: nothing that was done is forgotten
    assert [event["do"] for event in events_of(shop.notebook, 1)] == ["strike", "correct", "undo", "undo", "redo"]


@on_screen
async def test_letters_typed_faster_than_the_field_opens_are_not_lost_and_strike_nothing(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        page = app.focused
        assert page is not None
        for letter in "c1x2":
            app.post_message(_key(letter))
        await pilot.pause(0.3)
        await pilot.press("escape")
        await pilot.pause()
        assert events_of(shop.notebook, 1) == ()


def _key(letter: str) -> Key:
    return Key(letter, letter)


@on_screen
async def test_a_wide_terminal_shows_more(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(160, 48)) as pilot:
        await open_first_job(pilot)
        seen = text_of(app)
        assert "dry it before it is put away" in seen
        assert "This is a Corvane" in seen


@on_screen
async def test_nothing_can_be_played_without_its_file_and_that_is_a_sentence(shop: Shop) -> None:
    (shop.workshop.folder / "churn.wav").unlink()
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        await pilot.press("space")
        await pilot.pause()
        assert "churn.wav is no longer at" in told(app)


@on_screen
async def test_a_correction_holds_when_the_talk_is_read_anew(shop: Shop) -> None:
    """Another reader hears the words a little later and is surer; what was put right stays so."""
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        await pilot.press("c", *"12.9", "enter")
        await pilot.pause()
    first = shop.read[0]
    reading = first.record.readings[0]
    later = replace(reading.evidence[0], start_s=reading.evidence[0].start_s + 0.3)
    record = replace(first.record, readings=(replace(reading, evidence=(later,), sure=0.99),))
    app = Shop(shop.workshop, shop.notebook, (replace(first, record=record), *shop.read[1:])).app()
    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        assert app.desk.lying is not None
        assert str(app.desk.lying.now.record.readings[0].value) == "12.9"
