"""The fixed words of a record, in the words of a workshop; and moments as people write them."""

from __future__ import annotations

from typing import Final

from benchnotes.record.entries import Item
from benchnotes.record.heard import Evidence

FAULT: Final = {
    "wrong_part": "wrong part", "misadjusted": "out of adjustment", "other": "not right",
    "electrical": "electrical fault",
}  # fmt: skip
FAULT_STATUS: Final = {
    "open": "not put right", "fixed": "put right, not tried since", "verified": "put right and tried",
    "left": "left as it is",
}  # fmt: skip
PART_STATE: Final = {
    "needed": "to get", "ordered": "on order", "fitted": "fitted", "not_needed": "not wanted after all",
}  # fmt: skip
ACTION: Final = {
    "replace": "replace", "free": "free off", "send_out": "send out", "machine": "machine", "other": "work on",
}  # fmt: skip
STANDING: Final = {"done": "done", "planned": "still to do", "failed": "did not work"}
CHARGE: Final = {"outside_work": "outside work", "labour": "labour", "postage": "postage", "discount": "discount"}
RESULT: Final = {"pass": "passed", "fail": "failed", "unclear": "no clear answer"}
POWER: Final = {
    "mains": "runs on mains", "battery": "runs on a battery", "gas": "runs on gas",
    "liquid_fuel": "runs on liquid fuel", "manual": "worked by hand", "other": "other drive",
}  # fmt: skip
WHEN: Final = {"before": "as it came in", "after": "after the work"}
ITEM: Final = {
    "fault_open": "not put right", "not_retested": "not tried since", "test_failed": "not passed",
    "part_to_fit": "part to fit", "price_missing": "no price", "price_differs": "more than one price",
    "work_to_do": "work to do", "left_apart": "left off", "unsure": "unanswered", "safety_check": "safety",
}  # fmt: skip
UNIT: Final = {"ohm": "Ω", "kohm": "kΩ", "Mohm": "MΩ", "uF": "µF", "C": "°C", "F": "°F"}


def item_title(item: Item) -> str:
    """What an item is about and of what kind: "lid spring (no price)", "electrical test (safety)"."""
    about = trial(item.about) if item.kind in ("test_failed", "safety_check") else item.about
    return f"{about} ({ITEM[item.kind]})"


def trial(what: str) -> str:
    """A kind of test as it is spoken of."""
    return "test" if what == "other" else f"{what} test"


def clock(seconds: float) -> str:
    """12:05, or 1:02:05 from an hour on."""
    whole = int(seconds)
    hours, minutes, rest = whole // 3600, whole // 60 % 60, whole % 60
    return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes}:{rest:02}"


def moment(recording: int, start_s: float) -> str:
    """Where to listen."""
    return f"visit {recording}, {clock(start_s)}"


def moment_of(evidence: Evidence) -> str:
    return moment(evidence.recording, evidence.start_s)
