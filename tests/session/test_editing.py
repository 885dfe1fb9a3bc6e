"""Hand edits as events: undo and redo, JSON and back, and what a job looks like after them."""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchnotes.record.edits import AddEntry, Address, CloseItem, CorrectEntry, StrikeEntry
from benchnotes.record.entries import Fault, JobRecord, Notice, Part
from benchnotes.record.heard import Evidence, Recording, Unheard
from benchnotes.record.job import Heard
from benchnotes.session.attention import accepted, questions
from benchnotes.session.edit_json import HandEdit, Listened, Seen, packed, unpacked
from benchnotes.session.editing import edited
from benchnotes.session.history import REDO, UNDO, history
from benchnotes.session.putting_right import CannotBeError, put_right

SHA = {1: "a" * 64, 2: "b" * 64}
RECORDINGS = tuple(Recording(n, f"{n}.wav", "sound", 60.0, sha) for n, sha in SHA.items())
HEARD = Heard(RECORDINGS, (), (Unheard(2, 10.0, 12.0),))
EVIDENCE = (Evidence(2, 5.0, 8.0, "the pin is loose"),)
PIN = Fault(part="handle pin", kind="loose", evidence=EVIDENCE, sure=0.5)
RECORD = JobRecord(
    currency="GBP",
    faults=(PIN,),
    parts=(Part(name="pin", evidence=EVIDENCE),),
    notices=(Notice(kind="recording", about="recording 1", why="It was cut off."),),
)
ADDRESS = Address(list="faults", name="handle pin", kind="loose", recording=2, start_s=5.0)
EDITS: list[HandEdit] = [
    AddEntry(list="advice", fields={"text": "oil it"}),
    StrikeEntry(address=ADDRESS),
    CorrectEntry(address=ADDRESS, fields={"status": "left"}),
    CloseItem(kind="fault_open", about="handle pin", reason="the owner wants it so"),
    Listened(2, 10.0),
    Seen("threads", "frame"),
]


@pytest.mark.parametrize("edit", EDITS, ids=lambda edit: type(edit).__name__)
def test_through_json_and_back(edit: HandEdit) -> None:
    row = json.loads(json.dumps(packed(edit, SHA)))
    assert unpacked(row, {sha: n for n, sha in SHA.items()}) == edit


def test_a_recording_is_known_by_what_it_holds_and_not_by_its_number() -> None:
    """An older visit comes in later, and every number moves up by one."""
    row = packed(StrikeEntry(address=ADDRESS), SHA)
    moved = unpacked(row, {"c" * 64: 1, "a" * 64: 2, "b" * 64: 3})
    assert isinstance(moved, StrikeEntry)
    assert moved.address.recording == 3


@pytest.mark.parametrize("row", [{"do": "dance"}, {}, {"do": "strike"}, {"do": "close", "what": 1}])
def test_an_event_of_another_version_has_no_effect_and_harms_nothing(row: dict[str, object]) -> None:
    now = edited(RECORD, HEARD, [row])
    assert now.record.faults == (PIN,)


def test_undo_and_redo_are_events() -> None:
    """strike, close, undo, undo, redo -> the strike holds, and the close can come again."""
    strike, close = packed(EDITS[1], SHA), packed(EDITS[3], SHA)
    past = history([strike, close, UNDO, UNDO, REDO])
    assert past.holds == (strike,)
    assert past.taken_back == (close,)
    assert history([*past.holds, close, UNDO, strike]).taken_back == ()


@given(st.lists(st.sampled_from(["edit", "undo", "redo"]), max_size=40))
def test_history_is_that_of_any_editor(steps: list[str]) -> None:
    """Beside a plain list with a pointer into it, as editors commonly keep their history."""
    done: list[int] = []
    at = 0
    events: list[dict[str, object]] = []
    for number, step in enumerate(steps):
        if step == "edit":
            done[at:] = [number]
            at += 1
            events.append({"do": "seen", "number": number})
        elif step == "undo":
            at = max(0, at - 1)
            events.append(dict(UNDO))
        else:
            at = min(len(done), at + 1)
            events.append(dict(REDO))
    past = history(events)
    assert [row["number"] for row in past.holds] == done[:at]
    assert [row["number"] for row in reversed(past.taken_back)] == done[at:]


def test_a_job_after_what_was_done_by_hand() -> None:
    now = edited(RECORD, HEARD, [packed(edit, SHA) for edit in (EDITS[2], EDITS[3], EDITS[4])])
    assert now.record.faults[0].status == "left"
    assert now.unheard == ()
    assert [edit.reason for edit in now.closed] == ["the owner wants it so"]
    assert any(notice.kind == "recording" for notice in now.record.notices)
    assert "fault_open" not in [item.kind for item in now.items]


def test_every_question_is_answered_by_accepting_it() -> None:
    """Whatever asks for a person: one key, and it asks no more."""
    gbp = RECORD.currency
    record = replace(
        RECORD,
        faults=(PIN, replace(PIN, part="frame", kind="cracked", check=True)),
        notices=(*RECORD.notices, Notice(kind="unplaced", about="a spring", why="It found no place.")),
    )
    assert gbp == "GBP"
    events: list[dict[str, object]] = []
    asked = len(questions(edited(record, HEARD, events)))
    assert asked == 4
    for left in range(asked, 0, -1):
        now = questions(edited(record, HEARD, events))
        assert len(now) == left
        events.append(packed(accepted(now[0]), SHA))
    assert questions(edited(record, HEARD, events)) == ()


def test_what_a_field_cannot_hold_is_refused_in_words() -> None:
    part = Part(name="pin", qty=Decimal(2))
    for typed in ({"unit_price": "four"}, {"name": " "}, {"qty": ""}, {"state": "lost"}):
        with pytest.raises(CannotBeError, match="Nothing was changed"):
            put_right("parts", part, typed, "GBP")
    assert put_right("parts", part, {"unit_price": "4,50", "basis": ""}, "GBP").fields == {
        "unit_price": "4,50",
        "basis": None,
    }
