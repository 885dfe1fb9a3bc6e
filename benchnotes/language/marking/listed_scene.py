"""What a clause of talk holds for the listed marker: the things named in it, what was hit, and how it stands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from spacy.tokens import Doc, Token
from spacy.tokens import Span as TokenSpan

from benchnotes.language.amount_hits import AmountHit
from benchnotes.language.clauses import STOPS
from benchnotes.language.marking.marker import Mark, Span
from benchnotes.language.vocabulary_hits import Hit

POINTING = frozenset(
    {"it", "that", "this", "they", "them", "those", "these", "one", "ones", "both", "he", "she", "her", "him"}
)
"""Words that may stand for a thing. Machines and parts are he and she as often as it."""
LINKING = frozenset({
    "be", "'s", "s", "re", "look", "feel", "seem", "go", "get", "come", "turn", "run", "sit", "sound", "stay",
    "read", "gone", "keep", "appear", "end", "find", "work", "bit", "all", "half", "both", "too", "so",
})  # fmt: skip
"""Lemmas that link a thing with what it is found to be, and the words of degree that the tagger takes for nouns."""
REACH = 6
"""How many words after a denial it still denies (ConText's default scope is the clause; talk rarely keeps to it)."""


@dataclass(frozen=True, slots=True)
class Thing:
    """What may be a part: tokens `start` to `end`, half-open."""

    start: int
    end: int
    named: bool
    """By a noun, not a pronoun."""
    listed: bool
    """A part of the vocabulary stands in it."""


@dataclass(frozen=True, slots=True)
class Clause:
    """One thing said, as far as the listed marker sees it."""

    utterance: int
    doc: Doc
    start: int
    end: int
    hits: tuple[Hit, ...]
    things: tuple[Thing, ...]
    amounts: tuple[AmountHit, ...]
    aside: bool
    """Its sentence is of other machines, of machines in general, or of what is not so."""
    sentence_start: int
    sentence_end: int
    when: float = 0.0
    """Where in the talk it stands, 0 to 1."""
    before: Sequence[Thing] = field(default=())
    """Things of the clauses before it in this utterance, nearest last."""

    def of(self, group: str, *kinds: str, shape: str | None = None) -> tuple[Hit, ...]:
        """Hits of a group, of some kinds and one shape where those are given."""
        return tuple(
            hit
            for hit in self.hits
            if hit.phrase.group == group
            and (not kinds or hit.phrase.kind in kinds)
            and shape in (None, hit.phrase.shape)
        )

    def has(self, trigger: str) -> bool:
        """A trigger of that name that changes the whole clause."""
        return bool(self.of("trigger", trigger, shape="clause"))

    def changed(self, hit: Hit, trigger: str, reach: int = 99) -> bool:
        """Whether a trigger changes `hit`: one before it with nothing between that ends its scope, or one after it."""
        for found in self.of("trigger", trigger):
            if found.phrase.shape == "clause":
                return True
            if found.phrase.shape == "forward" and hit.start - reach <= found.end <= hit.start:
                return not self._ended(found.end, hit.start)
            if found.phrase.shape == "backward" and found.start >= hit.end:
                return True
        return False

    def _ended(self, start: int, end: int) -> bool:
        """A comma, or a word that ends a scope, stands between two places."""
        stopped = any(start <= hit.start < end for hit in self.of("trigger", "ends"))
        return stopped or any(token.text == "," for token in self.doc[start:end])

    def word(self, place: int) -> str:
        """The plain word at a place of the clause; empty outside it."""
        return self.doc[place].lower_ if self.start <= place < self.end else ""

    def tokens(self) -> Iterator[Token]:
        return iter(self.doc[self.start : self.end])

    def span(self, start: int, end: int) -> Span:
        """Tokens as characters, without punctuation at either end."""
        while end - start > 1 and self.doc[end - 1].is_punct:
            end -= 1
        while end - start > 1 and self.doc[start].is_punct:
            start += 1
        first, last = self.doc[start], self.doc[end - 1]
        return Span(self.utterance, first.idx, last.idx + len(last))

    def mark(self, say: str, hit: Hit, part: Thing | None = None, sure: float = 0.5, **attributes: str) -> Mark:
        """A mark on the words of a hit."""
        return self.mark_at(say, self.span(hit.start, hit.end), part, sure, **attributes)

    def mark_at(self, say: str, span: Span, part: Thing | None = None, sure: float = 0.5, **attributes: str) -> Mark:
        of = None if part is None else self.span(part.start, part.end)
        return Mark(say, span, of, attributes, sure)


def clauses_of(utterance: int, doc: Doc, when: float) -> Iterator[Clause]:
    """The clauses of a document that went through the pipeline."""
    before: list[Thing] = []
    everything = tuple(_things(doc))
    for start, end in doc._.clauses:
        things = tuple(thing for thing in everything if start <= thing.start < end)
        first, last = _sentence(doc, start, end)
        yield Clause(
            utterance=utterance, doc=doc, start=start, end=end, things=things,
            hits=tuple(hit for hit in doc._.hits if start <= hit.start and hit.end <= end),
            amounts=tuple(amount for amount in doc._.amounts if _within(doc, amount, start, end)),
            aside=_is_aside(doc, first, last), sentence_start=first, sentence_end=last, when=when, before=tuple(before),
        )  # fmt: skip
        before.extend(things)


def is_question(clause: Clause) -> bool:
    """Whether its sentence is asked rather than said."""
    return clause.doc[clause.sentence_end - 1].text == "?"


def subject(clause: Clause, hit: Hit) -> Thing | None:
    """The thing that `hit` is said of: the nearest before it, a listed part rather than a pronoun.

    Where its clause names none, the last of the clause before.
    """
    ahead = [thing for thing in clause.things if thing.end <= hit.start]
    if ahead:
        return _best(ahead)
    return (clause.before[-1] if clause.before else None) or next(
        (thing for thing in clause.things if thing.start >= hit.end), None
    )


def object_of(clause: Clause, hit: Hit) -> Thing | None:
    """The thing that a verb acts on: inside the hit or begun in it
    ("take the lid off", "need a new lid"), the nearest after it, else before it."""
    inside = [thing for thing in clause.things if thing.start < hit.end and hit.start < thing.end]
    after = [thing for thing in clause.things if thing.start >= hit.end]
    ahead = [thing for thing in clause.things if thing.end <= hit.start]
    if inside:
        return inside[-1]
    passive = hit.form == "past" and ahead and clause.word(hit.start - 1) not in {"i", "we", "ive", "'ve", "ve", "have"}
    if passive and not (after and after[0].start <= hit.end + 1):
        return _best(ahead)
    return after[0] if after else _best(ahead) if ahead else (clause.before[-1] if clause.before else None)


def pointed_at(clause: Clause, hit: Hit) -> Thing | None:
    """What a whole phrase is said of: a pronoun in it ("leave that"), else right after it, else its subject."""
    inside = [thing for thing in clause.things if thing.start < hit.end and hit.start < thing.end]
    after = [thing for thing in clause.things if thing.start == hit.end]
    return (inside or after)[0] if inside or after else subject(clause, hit)


def predicative(clause: Clause, hit: Hit) -> bool:
    """Whether `hit` is what a thing is found to be: after a linking verb and adverbs, or right after the thing itself.

    "the seat's quite sound", "gasket shot"; not "a sound seat", "sound the horn".
    """
    following = clause.doc[hit.end] if hit.end < clause.end else None
    if following is not None and following.tag_ in {"NN", "NNS", "TO"} and not following.is_punct:
        return False
    place = hit.start - 1
    while place >= clause.start and clause.doc[place].tag_ in {"RB", "RBR", "DT", "PDT", ","} and place > hit.start - 4:
        place -= 1
    if place < clause.start:
        return bool(clause.before) and hit.start == clause.start and clause.doc[clause.start - 1].text == ","
    return clause.doc[place].lemma_.lower() in LINKING or any(
        thing.end in {hit.start, place + 1} and thing.named for thing in clause.things
    )


def _best(ahead: Sequence[Thing]) -> Thing:
    near = ahead[-2:]
    return next((thing for thing in reversed(near) if thing.listed), near[-1])


def _things(doc: Doc) -> Iterator[Thing]:
    listed = [hit for hit in doc._.hits if hit.phrase.group == "part"]
    taken: list[Thing] = []
    for chunk in doc.noun_chunks:
        start, end = _of_chunk(doc, chunk)
        head = doc[end - 1] if end < chunk.end else chunk.root
        pronoun = head.pos_ == "PRON" and head.lower_ not in POINTING
        if start < end and not pronoun and not _is_no_part(doc, head):
            inside = any(start <= hit.start and hit.end <= end for hit in listed)
            taken.append(Thing(start, end, head.pos_ != "PRON", inside))
    alone = [hit for hit in listed if not any(thing.start < hit.end and hit.start < thing.end for thing in taken)]
    alone = [hit for hit in alone if not _is_no_part(doc, doc[hit.end - 1])]
    taken += [Thing(_leftwards(doc, hit), hit.end, True, True) for hit in alone]
    return iter(sorted(taken, key=lambda thing: thing.start))


def _is_no_part(doc: Doc, head: Token) -> bool:
    """A listed word for what is no part ends here, and is longer than any listed part that does ("dial gauge")."""
    ending = [hit for hit in doc._.hits if hit.end == head.i + 1]
    no_part = max((hit.length for hit in ending if hit.phrase.group == "not_part"), default=0)
    return no_part > max((hit.length for hit in ending if hit.phrase.group == "part"), default=0)


def _of_chunk(doc: Doc, chunk: TokenSpan) -> tuple[int, int]:
    """A noun chunk without the relative word before it, and without what the parser takes for an owned noun.

    In "the seat's fine" the parser may read the fine of the seat: what is listed as a finding is none of the name.
    """
    found = {place for hit in doc._.hits if hit.phrase.shape in {"is", "does"} for place in range(hit.start, hit.end)}
    end = chunk.end
    if chunk.root.i in found:
        end = next((t.i for t in chunk if t.tag_ == "POS" or t.lower_ in {"'s", "s"}), end)
    return chunk.start + (chunk[0].tag_ == "WDT"), end


def _leftwards(doc: Doc, hit: Hit) -> int:
    """Where the name begins whose last words were hit: over nouns, adjectives and numbers before it."""
    start = hit.start
    while start > 0 and doc[start - 1].pos_ in {"NOUN", "ADJ", "NUM", "PROPN"}:
        start -= 1
    return start - (start > 0 and doc[start - 1].pos_ == "DET")


def _sentence(doc: Doc, start: int, end: int) -> tuple[int, int]:
    while start > 0 and doc[start - 1].text not in STOPS:
        start -= 1
    while end < len(doc) and doc[end - 1].text not in STOPS:
        end += 1
    return start, end


def _is_aside(doc: Doc, start: int, end: int) -> bool:
    return any(
        hit.phrase.group == "trigger"
        and hit.phrase.kind in {"lore", "hypothetical", "elsewhere"}
        and hit.phrase.shape != "pseudo"
        and start <= hit.start < end
        for hit in doc._.hits
    )


def _within(doc: Doc, amount: AmountHit, start: int, end: int) -> bool:
    return doc[start].idx <= amount.start < doc[end - 1].idx + len(doc[end - 1])
