"""The rule over a job's talk: graduated truly, marks where they belong, never wider than the screen."""

from __future__ import annotations

import pytest
from rich.cells import cell_len

from benchnotes.record.heard import Evidence, Recording, Unheard
from benchnotes.screens.steel_rule import Marks, rule_lines


def recordings(*seconds: float) -> list[Recording]:
    return [Recording(n, f"{n}.wav", "sound", s, str(n)) for n, s in enumerate(seconds, 1)]


def evidence(recording: int, at_s: float) -> Evidence:
    return Evidence(recording, at_s, at_s + 1, "")


@pytest.mark.parametrize("seconds", [(40.0,), (10.0, 3600.0), (0.0,), tuple([60.0] * 12), (40000.0, 5.0)])
@pytest.mark.parametrize("width", [78, 158])
def test_it_fits(seconds: tuple[float, ...], width: int) -> None:
    for line in rule_lines(recordings(*seconds), (), Marks(), width):
        assert cell_len(line) <= width


def test_marks_stand_where_it_was_said() -> None:
    marks = Marks(here=evidence(1, 50.0), also=[evidence(1, 50.0), evidence(1, 75.0)], questions=[evidence(1, 25.0)])
    rule, under = rule_lines(recordings(100.0), (Unheard(1, 90.0, 95.0),), marks, 78)
    length = rule.index("┤") + 1
    assert under.index("▲") == pytest.approx(length * 0.50, abs=1)
    assert under.index("•") == pytest.approx(length * 0.75, abs=1)
    assert under.index("?") == pytest.approx(length * 0.25, abs=1)
    assert rule.index("░") == pytest.approx(length * 0.90, abs=1)


def test_graduations_are_as_many_as_the_label_says() -> None:
    rule, _ = rule_lines(recordings(600.0), (), Marks(), 78)
    assert rule.endswith("┴ 1 min")
    assert rule[: rule.index("┤")].count("┴") == 9


def test_evidence_of_a_recording_that_is_gone_marks_nothing() -> None:
    _, under = rule_lines(recordings(60.0), (), Marks(here=evidence(7, 1.0)), 78)
    assert under.strip() == ""


def test_a_job_without_recordings_has_no_rule() -> None:
    assert rule_lines([], (), Marks(), 78) == ("", "")
