"""What was tried and how it came out, by listed words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchnotes.language.marking.listed_findings import denied
from benchnotes.language.marking.listed_scene import Clause, Thing, is_question, subject
from benchnotes.language.marking.marker import Mark
from benchnotes.language.vocabulary_hits import Hit


def outcomes(clause: Clause) -> Iterator[Mark]:
    """ "ran it up and not a drip": words that carry an outcome; a single word only where trying is said as well."""
    if clause.aside or clause.has("supposed") or clause.of("trigger", "planned") or is_question(clause):
        return
    attempted = bool(clause.of("tried"))
    said = [h for h in (*clause.of("passes"), *clause.of("fails")) if attempted or not _only_a_look(clause, h)]
    for hit in said[:1]:
        kind = clause.of("tried")[0].phrase.kind if attempted else hit.phrase.kind
        yield clause.mark("test", hit, subject(clause, hit), what=kind, result=_result(clause, hit))


def verdicts(clauses: Sequence[Clause]) -> Iterator[Mark]:
    """ "insulation test, fifty megs, pass": trying or measuring, and a verdict after it in the same breath."""
    attempt: Hit | None = None
    of: Thing | None = None
    measured = False
    for clause in clauses:
        if clause.aside or clause.of("trigger", "planned") or clause.of("passes") or clause.of("fails"):
            continue
        attempt = (clause.of("tried") or (attempt,))[0]
        of = of or (clause.things[0] if clause.things else None)
        measured = measured or any(amount.kind == "measure" for amount in clause.amounts)
        said = [h for h in (*clause.of("right"), *clause.of("verdict")) if not denied(clause, h)]
        unclear = any(hit.phrase.kind == "unclear" and hit.length > 2 for hit in said)
        if said and (attempt is not None or measured or unclear):
            yield clause.mark(
                "test", said[-1], of, what=attempt.phrase.kind if attempt else "output", result=_verdict(said[-1])
            )
            return


def _only_a_look(clause: Clause, hit: Hit) -> bool:
    """ "no play", "not leaking": a look that finds nothing wrong is no trial; nor is a single word."""
    return hit.length == 1 or any(hit.start <= wrong.start < hit.end for wrong in clause.of("condition"))


def _result(clause: Clause, hit: Hit) -> str:
    if clause.of("verdict", "unclear"):
        return "unclear"
    return "pass" if hit.phrase.group == "passes" and not denied(clause, hit) else "fail"


def _verdict(hit: Hit) -> str:
    return "pass" if hit.phrase.group == "right" else hit.phrase.kind
