"""What was found, by listed words: faults, things found right, suspicions, trials."""

from __future__ import annotations

from collections.abc import Iterator

from benchnotes.language.marking.listed_scene import REACH, Clause, Thing, subject
from benchnotes.language.marking.marker import Mark
from benchnotes.language.vocabulary_hits import Hit

LINKING = frozenset({
    "is", "was", "are", "were", "be", "been", "'s", "s", "'re", "re", "'m", "gone", "went", "goes", "got", "gets", "look", "looks", "looked",
    "feel", "feels", "felt", "seem", "seems", "seemed", "all", "well", "completely", "totally", "badly", "very", "quite", "pretty", "bit", "really",
    "just", "nearly", "half", "too", "clean", "proper", "dead", "right", "coming", "found", "absolutely", "as", "so", "still", "also", "about", "rather", "slightly", "partly", "nice", "sounds", "sits", "runs", "came", "come", "turned", "read", "reads", "now", "both", "sort", "of", "getting",
})  # fmt: skip
"""Words between a thing and what it is found to be."""
DENIALS = frozenset({"not", "n't", "nt", "no", "never", "without", "nothing"})


def faults(clause: Clause) -> Iterator[Mark]:
    """ "the inlet's split": a listed condition said of a thing of this machine, neither denied nor only supposed."""
    if clause.aside or clause.has("supposed") or clause.has("asked") or _question(clause):
        return
    for hit in _apart(clause.of("condition")):
        if not _denied(clause, hit) and _said_of_a_thing(clause, hit) and not _future(clause, hit):
            yield clause.mark("fault", hit, _of(clause, hit), kind=hit.phrase.kind)


def clears(clause: Clause) -> Iterator[Mark]:
    """ "no play in it", "the seat's fine": a condition denied, or a listed word for what is right."""
    if clause.aside or clause.has("supposed") or _question(clause):
        return
    denied = [hit for hit in _apart(clause.of("condition")) if _denied(clause, hit)]
    for hit in denied:
        first = max((t.start for t in clause.of("trigger", "denied") if t.start <= hit.start), default=hit.start)
        yield clause.mark_at("clear", clause.span(first, hit.end), _of(clause, hit))
    for hit in () if denied else clause.of("right"):
        part = subject(clause, hit)
        if (
            part is not None
            and not _denied(clause, hit)
            and _linked(clause, hit)
            and not clause.of("trigger", "planned")
        ):
            yield clause.mark("clear", hit, part)


def guesses(clause: Clause) -> Iterator[Mark]:
    """ "might just be the brushes": a word of supposing with a thing or a condition in its clause."""
    if clause.aside or clause.of("says", "doubt"):
        return
    for hit in clause.of("trigger", "supposed")[:1]:
        things = [thing for thing in clause.things if thing.named and thing.start >= hit.start] or clause.things
        if things and (clause.of("condition") or things[0].listed):
            end = max((h.end for h in clause.of("condition") if h.start >= hit.start), default=hit.end)
            yield clause.mark_at("guess", clause.span(hit.start, end), things[0])


def trials(clause: Clause) -> Iterator[Mark]:
    """ "ran it up and not a drip": words that carry an outcome, or words of trying with a verdict beside them."""
    if clause.aside or clause.has("supposed") or clause.of("trigger", "planned") or _question(clause):
        return
    outcomes = [*clause.of("passes"), *clause.of("fails")]
    for hit in outcomes[:1]:
        result = "pass" if hit.phrase.group == "passes" else "fail"
        if _denied(clause, hit) and result == "pass":
            result = "fail"
        if clause.of("verdict", "unclear"):
            result = "unclear"
        yield clause.mark("test", hit, subject(clause, hit), what=_what(clause, hit), result=result)


def tried(clause: Clause, following: Clause | None) -> Iterator[Mark]:
    """ "insulation test, fifty megs, pass": words of trying with a verdict in this clause or the next."""
    if clause.aside or clause.of("passes") or clause.of("fails") or clause.of("trigger", "planned"):
        return
    attempts = clause.of("tried")
    for held in (clause, following) if attempts else ():
        verdicts = held.of("verdict") if held is not None and not held.aside else ()
        if held is not None and verdicts:
            hit = verdicts[-1]
            yield held.mark("test", hit, _first(clause), what=attempts[0].phrase.kind, result=hit.phrase.kind)
            return


def _what(clause: Clause, hit: Hit) -> str:
    attempts = clause.of("tried")
    return attempts[0].phrase.kind if attempts else hit.phrase.kind


def _first(clause: Clause) -> Thing | None:
    return clause.things[0] if clause.things else None


def _apart(hits: tuple[Hit, ...]) -> list[Hit]:
    """Hits of one clause that do not stand side by side: "cracked and rusty" are two, "rusted solid" is one."""
    kept: list[Hit] = []
    for hit in hits:
        if not kept or hit.start > kept[-1].end:
            kept.append(hit)
    return kept


def _denied(clause: Clause, hit: Hit) -> bool:
    return (
        clause.changed(hit, "denied", REACH)
        or (clause.word(hit.start) in DENIALS
        and hit.phrase.shape == "has"
        and False)
    )


def _future(clause: Clause, hit: Hit) -> bool:
    return clause.changed(hit, "planned", 3) or clause.word(hit.start - 1) == "to"


def _of(clause: Clause, hit: Hit) -> Thing | None:
    """What a condition is said of: for a noun ("a crack in the cap") the thing after "in" or "on", else the subject."""
    if hit.phrase.shape == "has" and clause.word(hit.end) in {
        "in",
        "on",
        "at",
        "round",
        "around",
        "along",
        "across",
        "through",
        "under",
        "inside",
        "behind",
        "from",
        "of",
        "down",
        "between",
    }:
        after = next((thing for thing in clause.things if thing.start >= hit.end), None)
        if after is not None and after.start <= hit.end + 3:
            return after
    around = next((t for t in clause.things if t.start <= hit.start and hit.end < t.end and t.listed), None)
    return around or subject(clause, hit)


def _said_of_a_thing(clause: Clause, hit: Hit) -> bool:
    if hit.phrase.shape == "does":
        return any(thing.end <= hit.start for thing in clause.things) and not _first_person(clause, hit)
    if hit.phrase.shape == "has":
        return True
    return _linked(clause, hit) or any(t.start <= hit.start and hit.end < t.end and t.listed for t in clause.things)


def _linked(clause: Clause, hit: Hit) -> bool:
    """A linking word stands before it, or the thing itself right before ("gasket shot")."""
    before = clause.word(hit.start - 1)
    return before in LINKING or any(thing.end == hit.start and thing.named for thing in clause.things)


def _first_person(clause: Clause, hit: Hit) -> bool:
    return any(clause.word(place) in {"i", "we", "you", "let"} for place in range(hit.start - 2, hit.start))


def _question(clause: Clause) -> bool:
    return clause.doc[clause.sentence_end - 1].text == "?"
