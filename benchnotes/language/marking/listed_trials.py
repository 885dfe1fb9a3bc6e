"""What was tried and how it came out, by listed words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchnotes.language.marking.listed_findings import denied
from benchnotes.language.marking.listed_scene import Clause, Thing, is_question, subject
from benchnotes.language.marking.marker import Mark
from benchnotes.language.vocabulary_hits import Hit

MEASURED = {
    "Mohm": "electrical", "ohm": "other", "kohm": "other", "uF": "other", "nF": "other", "pF": "other",
    "bar": "pressure", "psi": "pressure", "kPa": "pressure", "mm": "fit", "in": "fit", "thou": "fit",
}  # fmt: skip
"""What a verdict on a measured value tries, by its unit: megohms are insulation, ohms a component. All else: output."""


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
    kind: str | None = None
    of: Thing | None = None
    for clause in clauses:
        if clause.aside or clause.of("trigger", "planned") or clause.of("passes") or clause.of("fails"):
            continue
        kind = _tried(clause) or kind
        of = of or (clause.things[0] if clause.things else None)
        said = [h for h in (*clause.of("right"), *clause.of("verdict")) if not denied(clause, h)]
        unclear = any(hit.phrase.kind == "unclear" and hit.length > 2 for hit in said)
        if said and (kind is not None or unclear):
            yield clause.mark("test", said[-1], of, what=kind or "function", result=_verdict(said[-1]))
            return


def _tried(clause: Clause) -> str | None:
    """The kind of trial that words of trying tell, else the unit of what was measured."""
    attempts = clause.of("tried")
    if attempts:
        return attempts[0].phrase.kind
    units = [amount.unit for amount in clause.amounts if amount.kind == "measure"]
    return MEASURED.get(units[0], "output") if units else None


def _only_a_look(clause: Clause, hit: Hit) -> bool:
    """ "no play", "not leaking": a look that finds nothing wrong is no trial; nor is a single word."""
    return hit.length == 1 or any(hit.start <= wrong.start < hit.end for wrong in clause.of("condition"))


def _result(clause: Clause, hit: Hit) -> str:
    if clause.of("verdict", "unclear"):
        return "unclear"
    return "pass" if hit.phrase.group == "passes" and not denied(clause, hit) else "fail"


def _verdict(hit: Hit) -> str:
    return "pass" if hit.phrase.group == "right" else hit.phrase.kind
