"""Cuts a breath of talk into clauses, with or without punctuation: a spaCy component that gives `doc._.clauses`.

A clause holds one thing said of one thing. In print it ends at a stop, or at a comma or joining word with something
verbal on both sides; captions have no stops, so a new subject before a new verb begins one too.
"""

from __future__ import annotations

from collections.abc import Iterator

from spacy.language import Language
from spacy.tokens import Doc, Token

STOPS = frozenset({".", "!", "?", ";", ":", "…", "—", "–", "..."})
JOINING = frozenset(
    {"but", "so", "because", "although", "though", "while", "whereas", "then", "and", "which", "or", "until", "except"}
)
STARTING = frozenset({"right", "okay", "ok", "anyway", "well", "now", "oh", "yeah", "yep"})
"""Words that open a new thought where no comma shows it."""
SUBJECTS = frozenset({"i", "it", "we", "they", "he", "she", "that", "this", "there", "those", "these", "you"})
BEFORE_A_SUBJECT = frozenset(
    {
        "that",
        "if",
        "what",
        "when",
        "where",
        "how",
        "why",
        "than",
        "as",
        "like",
        "think",
        "reckon",
        "say",
        "said",
        "says",
        "know",
        "hope",
        "see",
        "bet",
        "guess",
        "suppose",
        "till",
        "until",
        "after",
        "before",
        "since",
        "once",
        "whether",
        "and",
        "or",
        "is",
        "was",
        "of",
        "to",
        "for",
        "on",
        "in",
        "with",
        "at",
        "off",
        "from",
        "all",
        "take",
        "put",
    }
)
"""Words after which a subject carries the clause on."""


@Language.factory("bench_clauses", assigns=["doc._.clauses"], requires=["token.tag"], default_config={})
def make_clauses(nlp: Language, name: str) -> Clauses:
    return Clauses()


class Clauses:
    """Gives `doc._.clauses`: token ranges, half-open, that cover the document without a gap."""

    def __init__(self) -> None:
        Doc.set_extension("clauses", default=(), force=True)

    def __call__(self, doc: Doc) -> Doc:
        doc._.clauses = tuple(_clauses(doc))
        return doc


def _clauses(doc: Doc) -> Iterator[tuple[int, int]]:
    start = 0
    for token in doc[1:]:
        if token.i > start and _begins(doc, start, token):
            yield start, token.i
            start = token.i
    if len(doc):
        yield start, len(doc)


def _begins(doc: Doc, start: int, token: Token) -> bool:
    before = doc[token.i - 1]
    if before.text in STOPS:
        return token.text not in STOPS
    if not any(_verbal(word) for word in doc[start : token.i]):
        return False
    if before.text == ",":
        return _verbal_ahead(doc, token.i, commas=False)
    word = token.lower_
    if word in JOINING or (word in STARTING and token.i > start + 2):
        return _verbal_ahead(doc, token.i + 1)
    return word in SUBJECTS and before.lower_ not in BEFORE_A_SUBJECT and _finite_next(doc, token)


def _verbal(token: Token) -> bool:
    return token.tag_.startswith("VB") or token.tag_ == "MD"


def _verbal_ahead(doc: Doc, start: int, *, commas: bool = True) -> bool:
    """Something verbal before the next stop (or comma)."""
    for token in doc[start:]:
        if token.text in STOPS or (token.text == "," and not commas):
            return False
        if _verbal(token):
            return True
    return False


def _finite_next(doc: Doc, token: Token) -> bool:
    """The next word is a verb that can carry a clause: "it leaks", not "it leaking"."""
    following = doc[token.i + 1 : token.i + 2]
    return bool(following) and following[0].tag_ in {"VBZ", "VBD", "VBP", "MD"}
