"""The signs by which one hears whether a fault is still there, put right, or shown to be right: 0 to 1 each.

`proof_weights.py` says how much each sign tells; `training/fit_proof.py` learns that from known records.
"""

from __future__ import annotations

from collections.abc import Mapping

from benchnotes.record.statements import Finds, Fits, Tries, Works
from benchnotes.record.steps.fault_story import FaultStory, looks_good, puts_right, went_badly
from benchnotes.record.terms import Standing

CLOSE = 2
"""A trial within this many utterances of a remedy is of that remedy."""
MANY = 5
"""More passed trials than this tell no more."""


def signs(story: FaultStory) -> Mapping[str, float]:
    """Every sign of one fault's story, by name."""
    told = {**_remedy_signs(story), **_look_signs(story), **_trial_signs(story), **_symptom_signs(story)}
    return {"always": 1.0, **{name: float(value) for name, value in told.items()}}


def _remedy_signs(story: FaultStory) -> Mapping[str, float]:
    """What was done: to the part itself, to one near it, elsewhere; how; and what was only meant to be done."""
    own, near, elsewhere = story.own_work, story.near_work, story.other_work
    last = own[-1].statement if own else None
    action = "replace" if isinstance(last, Fits) else last.action if isinstance(last, Works) else None
    earlier = any(puts_right(s.statement) and story.same(s) for s in story.before(story.first))
    return {
        "only_near_part_worked_on": bool(near and not own),
        "only_elsewhere_worked_on": bool(elsewhere and not own and not near),
        "nothing_worked_on": not (own or near or elsewhere),
        "worked_on_before_only": earlier and not own,
        "machined": action == "machine",
        "repaired": action == "repair",
        "other_work": action == "other",
        "failed_last": _failed_last(story),
        "planned_only": not own and _work(story, "planned") >= 0,
        "part_waited_for": story.waiting,
    }


def _work(story: FaultStory, standing: Standing) -> int:
    """The place of the last work of that standing on the part since the fault was found, or -1."""
    places = [
        s.at
        for s in story.since(story.first)
        if isinstance(s.statement, Works) and s.statement.standing == standing and story.same(s)
    ]
    return places[-1] if places else -1


def _failed_last(story: FaultStory) -> bool:
    return _work(story, "failed") > (story.own_work[-1].at if story.own_work else -1)


def _look_signs(story: FaultStory) -> Mapping[str, float]:
    """What was seen of the part itself: "holds a treat", "still weeping"."""
    own = bool(story.own_work)
    good = any(looks_good(s.statement) for s in story.looks)
    tries = [s.statement for s in story.looks if isinstance(s.statement, Tries)]
    return {
        "seen_right": good,
        "seen_right_without_work": good and not own,
        "last_trial_bad": bool(tries) and went_badly(tries[-1]),
        "ever_tried_bad": any(went_badly(s.statement) for s in story.of_part(Tries)),
        "worked_on_and_not_looked_at": own and not good,
        "worked_on_and_nothing_passed": own and not good and not _passes(story),
        "early": story.first.at / len(story.talk.said),
    }


def _passes(story: FaultStory) -> list[Tries]:
    tries = (s.statement for s in story.after if isinstance(s.statement, Tries))
    return [trial for trial in tries if trial.result == "pass"]


def _trial_signs(story: FaultStory) -> Mapping[str, float]:
    """What was tried since, of anything."""
    passes = _passes(story)
    following = next((s for s in story.after if isinstance(s.statement, Tries)), None)
    close = (
        following is not None
        and looks_good(following.statement)
        and following.statement.order - story.remedied.statement.order <= CLOSE
    )
    return {
        "passed_since": min(len(passes), MANY) / MANY,
        "next_trial_close_and_good": close,
        "worked_on_and_dry": bool(story.own_work) and any(trial.kind == "leak" for trial in passes),
    }


def _symptom_signs(story: FaultStory) -> Mapping[str, float]:
    """Whether what led to this fault is right since: the gauge that fell holds now, so the cap seal is good."""
    bad = [
        s
        for s in story.before(story.first)
        if s.name and not story.same(s) and (isinstance(s.statement, Finds) or went_badly(s.statement))
    ]
    right = {s.name for s in story.after if looks_good(s.statement)}
    worked = {s.name for s in story.since(story.first) if puts_right(s.statement)}
    own, good = bool(story.own_work), any(looks_good(s.statement) for s in story.looks)
    return {
        "worked_on_and_cause_of_last_trouble": own and bool(bad) and bad[-1].name in right,
        "worked_on_and_cause_of_a_cure": own and not good and any(s.name in right - worked for s in bad),
    }
