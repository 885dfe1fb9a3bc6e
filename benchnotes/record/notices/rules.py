"""The notices in order, and the one function that gathers them."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from benchnotes.record.entries import JobRecord, Notice
from benchnotes.record.notices.insulation import insulation_low
from benchnotes.record.notices.listening import numbers_to_listen_to
from benchnotes.record.notices.other_currency import said_in_another_currency
from benchnotes.record.notices.resistors import resistor_of_no_series
from benchnotes.record.notices.threads import drill_that_does_not_fit, thread_that_is_none

NoticeRule = Callable[[JobRecord], Iterable[Notice]]

NOTICES: tuple[NoticeRule, ...] = (
    thread_that_is_none,
    drill_that_does_not_fit,
    insulation_low,
    resistor_of_no_series,
    said_in_another_currency,
    numbers_to_listen_to,
)


def notices(record: JobRecord) -> tuple[Notice, ...]:
    """Everything that the record's own numbers point out. `fold` has put it into `record.notices` already; after hand
    edits `edits.replay` does so again."""
    return tuple(notice for rule in NOTICES for notice in rule(record))
