"""What should not happen: a sentence and a file, never a traceback."""

from __future__ import annotations

import pytest
from screens.shop import Shop, on_screen, open_first_job, told

from benchnotes.session.failing import sentence
from benchnotes.session.workshop import find_workshop
from benchnotes.store.errors import FullDiskError


@on_screen
async def test_a_full_disk_is_told_on_the_screen_and_nothing_is_pretended(
    shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    app = shop.app()

    def full(edit: object) -> None:
        raise FullDiskError("The disk that holds the notebook is full. Make room.")

    async with app.run_test(size=(80, 24)) as pilot:
        await open_first_job(pilot)
        monkeypatch.setattr(app.desk, "do", full)
        await pilot.press("a")
        await pilot.pause()
        assert told(app).startswith("! The disk that holds the notebook is full.")
        assert app.desk.lying is not None
        assert app.desk.lying.now.record.readings[0].check


@on_screen
async def test_a_crash_ends_the_app_and_is_handed_to_whoever_opened_it(
    shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    app = shop.app()

    def wrong(evidence: object) -> None:
        raise ZeroDivisionError("never so")

    monkeypatch.setattr(app.desk, "hear", wrong)
    with pytest.raises(ZeroDivisionError):
        async with app.run_test(size=(80, 24)) as pilot:
            await open_first_job(pilot)
            await pilot.press("space")
            await pilot.pause()
    assert isinstance(app.failure, ZeroDivisionError)
    assert app._exit_renderables == []
    told_of = sentence(app.failure)
    assert "What was kept before is safe." in told_of
    assert list(find_workshop().crashes.glob("crash-*.txt"))
