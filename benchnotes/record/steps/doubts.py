"""Doubts that stay unanswered."""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import JobRecord, Unsure
from benchnotes.record.statements import Doubts, Settles
from benchnotes.record.talk import Said, Talk, resting_on


def doubts(talk: Talk, record: JobRecord) -> JobRecord:
    """ "Is that a weep?" ... "no, that was my own spilling" -> nothing unsure; without the second, the weep is."""
    open_doubts: list[Said] = []
    for said in talk.said:
        if isinstance(said.statement, Doubts):
            open_doubts.append(said)
        elif isinstance(said.statement, Settles):
            open_doubts = [doubt for doubt in open_doubts if not said.name or doubt.name != said.name]
    asked: dict[str, list[Said]] = {}
    for doubt in open_doubts:
        asked.setdefault(doubt.name or doubt.statement.words, []).append(doubt)
    entries = (
        resting_on(Unsure(about=about), (doubt.statement for doubt in told)) for about, told in asked.items() if about
    )
    return replace(record, unsure=tuple(entries))
