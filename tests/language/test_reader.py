"""From talk to statements with a marker of our own making: what is marked is said, in order, each with its evidence."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

import pytest
from language.marking.sealed import any_marker, talk_of

from benchnotes.language.marking.heads import ATTRIBUTES, ATTRIBUTES_OF, MARK_KINDS
from benchnotes.language.marking.marker import Mark, Marked, Marker, Pointer, Span
from benchnotes.language.pipeline import build
from benchnotes.language.reader import ReadingTools, named, read, read_marks
from benchnotes.record.heard import Evidence, Utterance
from benchnotes.record.money import Money
from benchnotes.record.statements import Finds, Names, Prices, Works
from benchnotes.trades.english import open_english
from benchnotes.trades.shelf import load


@dataclass(frozen=True)
class Written:
    """Marks as somebody wrote them down, whatever is said."""

    marked: Marked

    def mark(self, talk: Sequence[Utterance]) -> Marked:
        return self.marked


@pytest.fixture(scope="module")
def tools() -> ReadingTools:
    words = load(None)
    return ReadingTools(nlp=build(open_english(), words), vocabulary=words, marker=any_marker())


def with_marks(tools: ReadingTools, marker: Marker) -> ReadingTools:
    return ReadingTools(nlp=tools.nlp, vocabulary=tools.vocabulary, marker=marker)


def span(talk: Sequence[Utterance], utterance: int, words: str) -> Span:
    start = talk[utterance].text.index(words)
    return Span(utterance, start, start + len(words))


TALK = talk_of(
    "It's a Corvane bellows, serial four one one eight.",
    "The left strap has perished,",
    "so I cut a new one. Six fifty, the strap.",
)
FAULT = Mark("fault", span(TALK, 1, "perished"), span(TALK, 1, "The left strap"), {"kind": "perished"})
WORK = Mark(
    "work", span(TALK, 2, "cut"), span(TALK, 2, "a new one"), {"action": "cut", "standing": "done", "by": "bench"}
)
PRICE = Mark("price", span(TALK, 2, "Six fifty"), span(TALK, 2, "the strap"), {"basis": "exact"})
SERIAL = Mark("machine", span(TALK, 0, "four one one eight"), None,
              {"field": "serial", "power": "none", "holds_pressure": "no"})  # fmt: skip
MARKS = (SERIAL, FAULT, WORK, PRICE)


def test_what_is_marked_is_said(tools: ReadingTools) -> None:
    said = read(TALK, currency="NZD", tools=with_marks(tools, Written(Marked(MARKS))))
    serial, fault, work, price = said
    assert isinstance(serial, Names)
    assert serial.written == "4118"
    assert isinstance(fault, Finds)
    assert (fault.kind, fault.words, fault.part) == ("perished", "perished", "The left strap")
    assert isinstance(work, Works)
    assert (work.action, work.standing, work.by) == ("cut", "done", "bench")
    assert isinstance(price, Prices)
    assert price.price == Money(Decimal("6.50"), "NZD")
    assert fault.ref == work.ref == price.ref
    assert fault.ref is not None
    assert [statement.order for statement in said] == [0, 1, 2, 2]


def test_evidence_is_the_breath_in_which_it_was_said(tools: ReadingTools) -> None:
    said = read_marks(TALK, Marked(MARKS), currency="NZD", vocabulary=tools.vocabulary)
    assert [s.evidence for s in said] == [
        Evidence(1, TALK[at].start_s, TALK[at].end_s, TALK[at].text) for at in (0, 1, 2, 2)
    ]


def test_a_mark_that_points_back_is_about_the_same_thing() -> None:
    """Pointers decide, whatever the names are like: the blower is the bellows again, no third thing."""
    talk = talk_of("the bellows leak", "the strap has gone", "eight quid for the blower")
    marks = (
        Mark("fault", span(talk, 0, "leak"), span(talk, 0, "the bellows"), {"kind": "leaking"}),
        Mark("fault", span(talk, 1, "gone"), span(talk, 1, "the strap"), {"kind": "missing"}),
        Mark("price", span(talk, 2, "eight quid"), span(talk, 2, "the blower"), {"basis": "exact"}),
    )
    new = (Pointer(-1, -0.1),)
    bellows, strap, price = named(
        Marked(marks, (new, new, (Pointer(0, -0.2), Pointer(1, -2.0)))), [utterance.text for utterance in talk]
    )
    assert price == bellows != strap


@pytest.mark.parametrize("talk", [(), ("",), ("...", "?!"), ("🔧",)])
def test_talk_without_words_says_nothing(tools: ReadingTools, talk: tuple[str, ...]) -> None:
    assert read(talk_of(*talk), currency="EUR", tools=tools) == ()


def test_whatever_is_marked_is_read_and_the_same_again(tools: ReadingTools) -> None:
    """Marks of a marker that knows nothing stand anywhere; none may bring the reader down, and none is read twice."""
    talk = talk_of(
        *(f"so the left strap {n} needs 4 mm off, two quid fifty; ran at {n} volts, serial {n}" for n in range(9))
    )
    marks = any_marker().mark(talk).marks
    said = read(talk, currency="EUR", tools=tools)
    assert said == read(talk, currency="EUR", tools=tools)
    assert 0 < len(said) <= len(marks)
    assert [s.order for s in said] == sorted(s.order for s in said)
    assert all(s.words in s.evidence.heard for s in said)


@pytest.mark.parametrize("kind", MARK_KINDS)
def test_every_kind_with_every_value_is_a_statement(tools: ReadingTools, kind: str) -> None:
    """Every value that the learned marker can give is one that the record knows."""
    talk = talk_of("the strap is 4.5 mm and two quid fifty a metre")
    amount = "4.5 mm" if kind == "reading" else "two quid fifty"
    for name in ATTRIBUTES_OF[kind] or ("",):
        for value in ATTRIBUTES.get(name, ("",)):
            firsts = {each.split(".")[1]: ATTRIBUTES[each][0] for each in ATTRIBUTES_OF[kind]}
            attributes = firsts | ({name.split(".")[1]: value} if name else {})
            mark = Mark(kind, span(talk, 0, amount), span(talk, 0, "the strap"), attributes)
            (statement,) = read_marks(talk, Marked((mark,)), currency="EUR", vocabulary=tools.vocabulary)
            assert statement.say == kind
