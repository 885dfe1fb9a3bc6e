"""A job as read, with everything that a person did to it by hand: what is shown and what leaves."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from benchnotes.language.reader import ReadingTools
from benchnotes.session.editing import edited
from benchnotes.session.facts import JobFacts
from benchnotes.session.job import ReadJob, read_job


def read_with_edits(facts: JobFacts, events: Sequence[Mapping[str, Any]], tools: ReadingTools) -> ReadJob:
    """Reads all that was said in a job, then does again what was done by hand."""
    read = read_job(facts, tools)
    now = edited(read.record, facts.heard, events)
    return replace(read, record=now.record, items=now.items)
