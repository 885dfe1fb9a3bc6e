"""The trial that this kind of machine needs before it goes back. Local codes and licensed practice decide."""

from __future__ import annotations

from collections.abc import Iterable

from benchnotes.record.entries import Item, JobRecord
from benchnotes.record.still_to_do.item import item_of
from benchnotes.record.still_to_do.trials import passed

LOCAL = "Local rules say which tests, and who may make them."


def electrical_check(record: JobRecord) -> Iterable[Item]:
    """A mains machine, and no electrical test passed last -> safety_check, electrical."""
    if record.machine.power == "mains" and "electrical" not in passed(record):
        yield _check(record, "electrical", "The machine runs off the mains, and no passed electrical test was heard.")


def pressure_check(record: JobRecord) -> Iterable[Item]:
    """A machine that holds pressure, and neither leak nor pressure test passed last -> safety_check, pressure."""
    if record.machine.holds_pressure and not passed(record) & {"leak", "pressure"}:
        yield _check(record, "pressure", "The machine holds pressure, and no passed leak or pressure test was heard.")


def gas_check(record: JobRecord) -> Iterable[Item]:
    """A gas machine, and no gas test passed last -> safety_check, gas."""
    if record.machine.power == "gas" and "gas" not in passed(record):
        yield _check(record, "gas", "The machine burns gas, and no passed gas leak test was heard.")


def _check(record: JobRecord, about: str, why: str) -> Item:
    return item_of(
        record.machine, "safety_check", about, why=why, close_by=f"Make the test and say how it went. {LOCAL}"
    )
