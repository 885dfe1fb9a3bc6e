"""What the owner should do with the machine, or leave alone."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import Advice, JobRecord
from benchnotes.record.statements import Advises
from benchnotes.record.talk import Talk, resting_on


def advice(talk: Talk, record: JobRecord) -> JobRecord:
    """ "Tell her, drain it before winter" -> one piece of advice; said again in the same words, still one."""
    given: dict[str, list[Advises]] = {}
    for _, told in talk.of(Advises):
        if told.words.strip():
            given.setdefault(" ".join(told.words.lower().split()), []).append(told)
    entries = (resting_on(Advice(text=" ".join(told[0].words.split())), told) for told in given.values())
    return replace(record, advice=tuple(entries))
