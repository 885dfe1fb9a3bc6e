"""What came in, by listed kinds of machine and by names and numbers said beside them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from spacy.tokens import Doc, Token

from benchnotes.language.marking.marker import Mark, Span
from benchnotes.language.vocabulary import Vocabulary
from benchnotes.language.vocabulary_hits import plain

EARLY = 14
"""What came in is said at the start of a job: in its first utterances."""
NAME_WORDS = 3
NOT_A_MAKER = frozenset(
    {"from", "in", "at", "to", "of", "out", "for", "the", "mr", "mrs", "ms", "miss", "old", "on", "near", "and"}
)
"""Words before a name that is of a place or an owner."""
SERIAL = frozenset({"serial", "number", "no", "s/n"})


def machine(docs: Sequence[Doc], vocabulary: Vocabulary) -> Iterator[Mark]:
    """At most one mark a field, where it was first said."""
    names = {tuple(name.replace("-", " ").split()) for kind in vocabulary.machines for name in kind.words}
    seen: set[str] = set()
    for number, doc in enumerate(docs[:EARLY]):
        for field, start, end in _fields(doc, names, seen):
            if field not in seen:
                seen.add(field)
                first, last = doc[start], doc[end - 1]
                yield Mark("machine", Span(number, first.idx, last.idx + len(last)), None, {"field": field}, 0.5)


def _fields(doc: Doc, names: set[tuple[str, ...]], seen: set[str]) -> Iterator[tuple[str, int, int]]:
    kind = _kind(doc, names) if "kind" not in seen else None
    if kind is not None:
        yield "kind", *kind
    if kind is not None or ("kind" in seen and not {"make", "model"} & seen):
        yield from _made_by(doc, kind)
    yield from _after(doc, "model", frozenset({"model"}))
    yield from _after(doc, "serial", SERIAL)
    power = [hit for hit in doc._.hits if hit.phrase.group == "power" and hit.phrase.shape == "says"]
    if power:
        yield "power", power[0].start, power[0].end


def _kind(doc: Doc, names: set[tuple[str, ...]]) -> tuple[int, int] | None:
    """The longest listed kind in the talk."""
    words = [plain(token) for token in doc]
    for length in range(4, 0, -1):
        for start in range(len(words) - length + 1):
            if tuple(words[start : start + length]) in names:
                return start, start + length
    return None


def _made_by(doc: Doc, kind: tuple[int, int] | None) -> Iterator[tuple[str, int, int]]:
    """ "a Marlow No. 4 lantern", "lantern, Marlow No. 4": capitals beside the kind; first the make, then the model."""
    run = _names_before(doc, kind[0]) if kind is not None else None
    if run is None:
        run = _names_after(doc, kind[1] if kind is not None else 0)
    if run is None:
        return
    start, end = run
    split = next((place for place in range(start + 1, end) if _model_like(doc[place])), end)
    yield "make", start, split
    if split < end:
        yield "model", split, end


def _names_before(doc: Doc, end: int) -> tuple[int, int] | None:
    start = end
    while start > 0 and _name(doc[start - 1]):
        start -= 1
    return (start, end) if start < end else None


def _names_after(doc: Doc, start: int) -> tuple[int, int] | None:
    for place in range(max(1, start), len(doc)):
        makes = _name(doc[place]) and doc[place].is_alpha and doc[place].tag_.startswith("NNP")
        if makes and doc[place - 1].lower_ not in NOT_A_MAKER:
            end = place
            while end < len(doc) and _name(doc[end]):
                end += 1
            return place, end
    return None


def _name(token: Token) -> bool:
    return (token.text[:1].isupper() and token.i > 0 and token.lower_ != "i") or (token.like_num and token.i > 0)


def _model_like(token: Token) -> bool:
    return (
        token.like_num
        or any(letter.isdigit() for letter in token.text)
        or token.lower_ in {"no", "no.", "mark", "model", "mk"}
    )


def _after(doc: Doc, field: str, heads: frozenset[str]) -> Iterator[tuple[str, int, int]]:
    """ "model 40", "serial number is 4471": the code said after the word."""
    for token in doc:
        if token.lower_ not in heads or (field == "serial" and not any(t.lower_ == "serial" for t in doc)):
            continue
        place = token.i + 1
        while place < len(doc) and doc[place].lower_ in {
            "number",
            "no",
            "no.",
            "is",
            "'s",
            "s",
            ",",
            ":",
            "the",
            "says",
            "reads",
        }:
            place += 1
        end = place
        while end < len(doc) and (
            doc[end].like_num
            or doc[end].text[:1].isupper()
            or doc[end].text in "-/"
            or any(c.isdigit() for c in doc[end].text)
        ):
            end += 1
        if end > place:
            yield field, place, end
            return
