"""Visits stand in the order in which they happened, whatever the order in which they were given."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from benchnotes.session.time_line import in_time_order
from benchnotes.store.recordings import KeptRecording

MONDAY = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
FRIDAY = MONDAY + timedelta(days=4)


def kept(id_: int, started_at: datetime | None) -> KeptRecording:
    return KeptRecording(
        id=id_,
        job=1,
        path=Path("x"),
        name=f"{id_}",
        kind="sound",
        duration_s=1.0,
        sha256=f"{id_}",
        started_at=started_at,
    )


def order(*starts: datetime | None) -> list[int]:
    return [recording.id for recording in in_time_order([kept(place, start) for place, start in enumerate(starts)])]


def test_the_earlier_visit_first() -> None:
    assert order(FRIDAY, MONDAY) == [1, 0]


def test_zones_count() -> None:
    east = datetime(2026, 3, 2, 14, 0, tzinfo=timezone(timedelta(hours=5, minutes=30)))  # 08:30 UTC
    assert order(MONDAY, east) == [1, 0]


def test_without_dates_as_given() -> None:
    assert order(None, None, None) == [0, 1, 2]


def test_without_a_date_right_after_the_one_before_it() -> None:
    assert order(FRIDAY, None, MONDAY, None) == [2, 3, 0, 1]


@given(st.lists(st.none() | st.integers(0, 5).map(lambda day: MONDAY + timedelta(days=day)), max_size=8))
def test_nothing_is_lost_and_dates_never_go_back(starts: list[datetime | None]) -> None:
    placed = order(*starts)
    assert sorted(placed) == list(range(len(starts)))
    dated = [starts[place] for place in placed if starts[place] is not None]
    assert dated == sorted(dated)  # type: ignore[type-var]
