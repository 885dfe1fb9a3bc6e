"""Clauses: one thing said of one thing, in print and in captions."""

from __future__ import annotations

import pytest
from spacy.language import Language
from spacy.tokens import Doc

from benchnotes.language.clauses import Clauses
from benchnotes.language.pipeline import build
from benchnotes.language.vocabulary import Vocabulary
from benchnotes.trades.english import open_english


@pytest.fixture(scope="module")
def english() -> Language:
    return build(open_english(), Vocabulary())


def cut(doc: Doc) -> list[str]:
    return [doc[start:end].text for start, end in doc._.clauses]


@pytest.mark.parametrize(
    ("text", "clauses"),
    [
        ("The gland weeps. The rod is fine.", ["The gland weeps.", "The rod is fine."]),
        ("The gland weeps, the rod is fine", ["The gland weeps,", "the rod is fine"]),
        ("The left, the right and the middle one are bent", ["The left, the right and the middle one are bent"]),
        ("The cap is split but the thread survived", ["The cap is split", "but the thread survived"]),
        ("Nuts and bolts were missing", ["Nuts and bolts were missing"]),
        ("I cleaned it and greased it", ["I cleaned it", "and greased it"]),
        ("Cracked; the other one is not", ["Cracked;", "the other one is not"]),
    ],
)
def test_print(english: Language, text: str, clauses: list[str]) -> None:
    assert cut(english(text)) == clauses


@pytest.mark.parametrize(
    ("text", "clauses"),
    [
        ("the belt has perished it came off in bits", ["the belt has perished", "it came off in bits"]),
        (
            "i took the cover off so the fan is out in the open",
            ["i took the cover off", "so the fan is out in the open"],
        ),
        ("i think it is the switch", ["i think it is the switch"]),
    ],
)
def test_captions(english: Language, text: str, clauses: list[str]) -> None:
    assert cut(english(text)) == clauses


@pytest.mark.parametrize("text", ["", "No.", "so", "well, well, well", "and and and it is is", "... ?! ;"])
def test_clauses_cover_the_talk_without_a_gap(english: Language, text: str) -> None:
    doc = english(text)
    ends = [0]
    for start, end in doc._.clauses:
        assert start == ends[-1] < end
        ends.append(end)
    assert ends[-1] == len(doc)


def test_a_document_made_by_hand_will_do(english: Language) -> None:
    words = ["tap", "drips", ",", "cock", "sticks"]
    doc = Doc(english.vocab, words=words, tags=["NN", "VBZ", ",", "NN", "VBZ"], spaces=[True, False, True, True, False])
    assert cut(Clauses()(doc)) == ["tap drips,", "cock sticks"]
