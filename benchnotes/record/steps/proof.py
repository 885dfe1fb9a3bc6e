"""What became of each fault: left as it is, put right, shown to be right.

Whether a trial proves a fault is a weighing of signs: a mudguard is not proved by a mowing trial, a cap seal is by a
tank that holds.
"""

from __future__ import annotations

from dataclasses import replace

from benchnotes.record.entries import Fault, JobRecord
from benchnotes.record.steps.fault_story import FaultStory
from benchnotes.record.steps.proof_signs import signs
from benchnotes.record.steps.proof_weights import STATUSES, WEIGHTS, WEIGHTS_READ, Weights
from benchnotes.record.talk import Talk
from benchnotes.record.terms import FaultStatus


def proof(talk: Talk, record: JobRecord, weights: Weights | None = None) -> JobRecord:
    """ "Leather's split" ... "new one in" ... "holds a treat" -> open, then fixed, then verified."""
    stories = (FaultStory(fault, talk, record) for fault in record.faults)
    table = weights or (WEIGHTS if _all_sure(talk) else WEIGHTS_READ)
    return replace(record, faults=tuple(_settled(story, table) for story in stories))


def _all_sure(talk: Talk) -> bool:
    """Typed or known statements; a reader is never all sure."""
    return all(said.statement.sure >= 1 for said in talk.said)


def _settled(story: FaultStory, weights: Weights) -> Fault:
    return replace(story.fault, status="left" if story.left else _weighed(story, weights))


def _weighed(story: FaultStory, weights: Weights) -> FaultStatus:
    """The status that the signs speak for most."""
    told = signs(story)
    scores = [sum(told[sign] * tells[at] for sign, tells in weights.items()) for at in range(len(STATUSES))]
    return STATUSES[scores.index(max(scores))]
