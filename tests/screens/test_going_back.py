"""What is still to do before a machine goes back, and closing it."""

from __future__ import annotations

from screens.shop import Shop, on_screen, point_at, text_of, told

from benchnotes.session.editing import events_of


@on_screen
async def test_grouped_by_what_blocks_with_reason_and_end(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("g")
        await pilot.pause()
        seen = " ".join(text_of(app).replace("┊", " ").split())
        order = ["Tests come first: 1", "Not right yet: 1", "Parts to fit: 1"]
        assert sorted(order, key=seen.index) == order
        assert "no passed electrical test was heard" in seen
        assert "Local rules say" in seen
        assert "runs off the mains" in seen  # the words it rests on


@on_screen
async def test_an_item_is_closed_with_a_reason_that_stays(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 48)) as pilot:
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("g")
        await pilot.pause()
        await point_at(pilot, "switch: cracked")
        await pilot.press("c", *"owner keeps it so", "enter")
        await pilot.pause()
        seen = text_of(app)
        assert "Closed by hand: 1" in seen
        assert "owner keeps it so" in seen
        assert "Not right yet" not in seen
        await pilot.press("u")
        await pilot.pause()
        assert "Not right yet: 1" in text_of(app)
        await pilot.press("r", "g", "g")
        await pilot.pause()
        assert "Closed by hand: 1" in text_of(app)


@on_screen
async def test_without_a_reason_it_stays_open(shop: Shop) -> None:
    app = shop.app()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("g", "c", "space", "enter")
        await pilot.pause()
        assert "a reason is needed" in told(app)
        assert events_of(shop.notebook, 2) == ()
