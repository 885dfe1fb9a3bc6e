"""The rules in order, and the one function that runs them."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from benchnotes.record.entries import Item, JobRecord
from benchnotes.record.still_to_do.faults import faults_not_retested, faults_open
from benchnotes.record.still_to_do.loose_ends import left_apart, unsure, work_to_do
from benchnotes.record.still_to_do.parts import parts_to_fit, prices_differ, prices_missing
from benchnotes.record.still_to_do.safety import electrical_check, gas_check, pressure_check
from benchnotes.record.still_to_do.trials import trials_failed

Rule = Callable[[JobRecord], Iterable[Item]]

RULES: tuple[Rule, ...] = (
    faults_open,
    faults_not_retested,
    trials_failed,
    parts_to_fit,
    prices_missing,
    prices_differ,
    work_to_do,
    left_apart,
    unsure,
    electrical_check,
    pressure_check,
    gas_check,
)


def still_to_do(record: JobRecord) -> tuple[Item, ...]:
    """Every item that the record leaves open, rule by rule. An empty tuple: nothing keeps the machine here."""
    return tuple(item for rule in RULES for item in rule(record))
