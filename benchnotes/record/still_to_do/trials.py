"""Trials whose last word is not a pass."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from benchnotes.record.entries import Item, JobRecord, Trial
from benchnotes.record.still_to_do.item import item_of
from benchnotes.record.terms import TrialKind


def last_trials(record: JobRecord) -> Mapping[TrialKind, Trial]:
    """The last trial of each kind, in order of their first."""
    last: dict[TrialKind, Trial] = {}
    for trial in record.tests:
        last[trial.what] = trial
    return last


def passed(record: JobRecord) -> frozenset[TrialKind]:
    """The kinds of trial whose last one passed."""
    return frozenset(kind for kind, trial in last_trials(record).items() if trial.result == "pass")


def trials_failed(record: JobRecord) -> Iterable[Item]:
    """ "Still weeping at the gland", and no later leak test -> test_failed, leak."""
    for trial in last_trials(record).values():
        if trial.result != "pass":
            outcome = "failed" if trial.result == "fail" else "was unclear"
            on = f" (of {trial.of})" if trial.of else ""
            yield item_of(
                trial,
                "test_failed",
                trial.what,
                why=f"The last {trial.what} test{on} {outcome}.",
                close_by=f"Make the {trial.what} test again and say how it went.",
            )
