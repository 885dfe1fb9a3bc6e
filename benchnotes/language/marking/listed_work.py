"""What was done, by listed words: work, parts wanted, ordered, fitted or dropped, things taken off and put back."""

from __future__ import annotations

from collections.abc import Iterator

from benchnotes.language.marking.listed_scene import Clause, Thing, object_of, subject
from benchnotes.language.marking.marker import Mark
from benchnotes.language.vocabulary_hits import Hit
from benchnotes.record.terms import Standing

WANTING = frozenset({"needs", "wants", "need", "want", "needing", "needed", "wanting"})
NEW = frozenset({"new", "fresh", "replacement", "another", "spare", "brand"})
"""Words that say that a part is not the old one."""
BY_OTHERS = frozenset({"somebody", "someone", "people", "folk", "you", "they", "whoever", "factory", "owner"})


def works(clause: Clause) -> Iterator[Mark]:
    """ "cleaned the points", "needs greasing": a listed verb in a form that says it was, or will be, done."""
    if clause.aside or clause.has("supposed"):
        return
    for hit in clause.of("work"):
        standing = _standing(clause, hit)
        if standing is None or _by_others(clause, hit) or _inside_a_thing(clause, hit) or _new_thing(clause, hit):
            continue
        by = "outside" if hit.phrase.kind == "send_out" else "bench"
        yield clause.mark("work", hit, object_of(clause, hit), action=hit.phrase.kind, standing=standing, by=by)


def parts(clause: Clause) -> Iterator[Mark]:
    """ "ordered two seals", "new cap fitted": a part wanted, on its way, in, or not wanted after all."""
    if clause.aside or clause.has("supposed"):
        return
    for hit in clause.of("state"):
        kind = hit.phrase.kind
        if kind == "fit" or (kind == "place" and _new_thing(clause, hit)):
            yield from _fitted(clause, hit)
        elif kind == "place":
            continue
        elif kind == "drop" or not clause.changed(hit, "denied", 3):
            # what is on its way is mostly the subject, what is wanted or dropped the object
            waits = kind == "order" and hit.phrase.text.split()[0] in {"be", "on", "in", "come", "backordered"}
            yield clause.mark(kind, hit, subject(clause, hit) if waits else object_of(clause, hit))


def placed(clause: Clause) -> Iterator[Mark]:
    """ "soldered a new one across": work that fastens, on a part that is named as new, is a part fitted."""
    if clause.aside or clause.has("supposed") or any(hit.phrase.kind in {"fit", "place"} for hit in clause.of("state")):
        return
    for hit in clause.of("work", "repair", "replace")[:1]:
        if _new_thing(clause, hit) and not _inside_a_thing(clause, hit):
            yield from _fitted(clause, hit)


def moves(clause: Clause) -> Iterator[Mark]:
    """ "lid off", "back on it goes": taken off; put back."""
    if clause.aside or clause.has("supposed") or clause.of("trigger", "planned"):
        return
    for hit in clause.of("move"):
        if hit.form == "ing" or clause.changed(hit, "denied", 4) or _by_others(clause, hit):
            continue
        part = object_of(clause, hit) if hit.form else subject(clause, hit)
        bare = hit.phrase.text == "off"
        if part is not None and (_moved(clause, hit, part) if bare else hit.length > 1 or hit.form is not None):
            yield clause.mark(hit.phrase.kind, hit, part)


def _moved(clause: Clause, hit: Hit, part: Thing) -> bool:
    """ "lid off": a bare particle with the thing right before it and nothing that carries on after it."""
    following = clause.doc[hit.end] if hit.end < clause.end else None
    carries_on = following is not None and following.tag_ in {"DT", "PRP$", "IN", "NN", "NNS", "PRP"}
    return 0 <= hit.start - part.end <= 2 and not carries_on


def _fitted(clause: Clause, hit: Hit) -> Iterator[Mark]:
    """ "popped a new one on" is a part fitted and work done; "I'll pop a new one on" a part wanted and work planned."""
    standing = _standing(clause, hit)
    if standing is None and hit.form == "s" and hit.phrase.kind == "place":
        standing = "done"  # told while it is done: "in goes the new one", "the new one goes in"
    if standing is None or clause.changed(hit, "denied", 3) or _by_others(clause, hit):
        return
    part = _new_thing(clause, hit) or object_of(clause, hit)
    if standing != "failed":
        yield clause.mark("fit" if standing == "done" else "need", hit, part)
    yield clause.mark("work", hit, part, action="replace", standing=standing, by="bench")


def _standing(clause: Clause, hit: Hit) -> Standing | None:
    """done for what was done, planned and failed after words that say so; None where the form tells nothing."""
    if clause.has("failed"):
        return "failed"
    if clause.changed(hit, "denied", 3):
        return None
    if clause.changed(hit, "planned", 4):
        return "planned"
    if hit.form == "ing":
        return "planned" if {clause.word(hit.start - 1), clause.word(hit.start - 2)} & WANTING else None
    done = hit.form in {"past", None} or (hit.form == "base" and _past_by_another(clause, hit))
    return "done" if done else None


def _past_by_another(clause: Clause, hit: Hit) -> bool:
    """ "cut", "set": the past looks like the base; an I before it says that it was done."""
    return hit.phrase.text.split()[0] in {"cut", "set", "fit", "put", "reset"} and clause.word(hit.start - 1) in {
        "i",
        "we",
        "'ve",
        "ve",
        "and",
    }


def _new_thing(clause: Clause, hit: Hit) -> Thing | None:
    """The thing that is named as new or as another: nearest before the verb, or right after it."""
    new = [thing for thing in clause.things if _is_new(clause, thing)]
    ahead = [thing for thing in new if thing.end <= hit.start]
    after = [thing for thing in new if hit.start < thing.end and thing.start <= hit.end + 1]
    return after[0] if after else ahead[-1] if ahead else None


def _is_new(clause: Clause, thing: Thing) -> bool:
    return any(token.lower_ in NEW for token in clause.doc[thing.start : thing.end])


def _by_others(clause: Clause, hit: Hit) -> bool:
    return any(clause.word(place) in BY_OTHERS for place in range(hit.start - 3, hit.start))


def _inside_a_thing(clause: Clause, hit: Hit) -> bool:
    """ "the drilled plate", "clean oil": part of a name, not something done."""
    return any(thing.start <= hit.start and hit.end < thing.end and thing.named for thing in clause.things)
