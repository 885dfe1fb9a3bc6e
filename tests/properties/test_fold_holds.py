"""What holds for the fold whatever was said."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import fields, replace
from decimal import Decimal
from typing import Any, get_args, get_type_hints

from hypothesis import given, settings
from hypothesis import strategies as st

from benchnotes.record import statements as told
from benchnotes.record.entries import Entry, JobRecord
from benchnotes.record.fold import fold
from benchnotes.record.heard import Evidence
from benchnotes.record.money import Money
from benchnotes.record.statements import KINDS, Statement
from benchnotes.record.still_to_do.rules import still_to_do

NAMES = st.sampled_from(
    [None, "", "cap", "filler cap", "the caps", "pump leather", "left hinge", "it", "M8 thread", "4k9 resistor"]
)
WORDS = st.sampled_from(["", "gone", "no, sorry", "M8", "nine fifty"])
AMOUNTS = st.decimals(min_value=0, max_value=10_000, places=2)
LISTS = ("faults", "parts", "charges", "work", "readings", "tests", "advice", "left_apart", "unsure", "notices")


def evidence(order: int) -> Evidence:
    return Evidence(1, 10.0 * order, 10.0 * order + 5, f"breath {order}")


def _values(hint: Any) -> st.SearchStrategy[Any]:
    """Values of a field by its type: any allowed word, money, number, or nothing where nothing may be."""
    if hint is Money:
        return st.builds(Money, AMOUNTS, st.sampled_from(["GBP", "EUR"]))
    if hint is Decimal:
        return AMOUNTS
    if hint is bool:
        return st.booleans()
    if hint is str:
        return WORDS
    choices = get_args(hint)
    if choices and all(isinstance(choice, str) for choice in choices):
        return st.sampled_from(choices)
    return st.one_of(*(st.none() if choice is type(None) else _values(choice) for choice in choices))


@st.composite
def statements(draw: st.DrawFn) -> Statement:
    kind = draw(st.sampled_from(KINDS))
    order = draw(st.integers(0, 12))
    hints = get_type_hints(kind)
    own = {f.name: draw(_values(hints[f.name])) for f in fields(kind) if f.name not in _COMMON}
    return kind(
        order=order, evidence=evidence(order), words=draw(WORDS), part=draw(NAMES), ref=draw(NAMES),
        sure=draw(st.sampled_from([1.0, 0.5])), check=draw(st.booleans()), **own,
    )  # fmt: skip


_COMMON = {field.name for field in fields(Statement)}
TALKS = st.lists(statements(), max_size=25)


def entries(record: JobRecord) -> list[Entry]:
    return [record.machine, *(entry for name in LISTS for entry in getattr(record, name))]


def counts(record: JobRecord) -> dict[str, int]:
    return {name: len(getattr(record, name)) for name in LISTS}


@given(TALKS)
@settings(deadline=None)
def test_no_talk_is_too_odd(talk: Sequence[Statement]) -> None:
    """Any statements in any order give a record, and items that can be told."""
    record = fold(talk, "GBP")
    assert all(item.why and item.close_by and item.about for item in still_to_do(record))
    assert all(notice.why for notice in record.notices)


@given(TALKS)
@settings(deadline=None)
def test_every_evidence_was_heard(talk: Sequence[Statement]) -> None:
    heard = {s.evidence for s in talk}
    record = fold(talk, "GBP")
    assert all(set(entry.evidence) <= heard for entry in entries(record))
    assert all(len(set(entry.evidence)) == len(entry.evidence) for entry in entries(record))


KEPT = (told.Names, told.Finds, told.PartStatement, told.Prices, told.Charges, told.Works, told.Measures, told.Tries)


@given(TALKS)
@settings(deadline=None)
def test_nothing_said_is_silently_lost(talk: Sequence[Statement]) -> None:
    """What makes an entry is in the record, or pointed out as having no place, unless it was taken back."""
    if any(isinstance(s, told.Corrects) for s in talk):
        return
    resting = {heard for entry in entries(fold(talk, "GBP")) for heard in entry.evidence}
    assert {s.evidence for s in talk if isinstance(s, KEPT)} <= resting


@given(TALKS)
@settings(deadline=None)
def test_a_mention_repeated_adds_no_entry(talk: Sequence[Statement]) -> None:
    """The same said twice in one breath is said once."""
    once = [s for s in talk if not isinstance(s, told.Works | told.Fits)]  # work done twice between trials parts them
    twice = [again for s in once for again in (s, s)]
    before, after = counts(fold(once, "GBP")), counts(fold(twice, "GBP"))
    assert {k: v for k, v in before.items() if k != "notices"} == {k: v for k, v in after.items() if k != "notices"}


@given(TALKS, st.randoms(use_true_random=False))
@settings(deadline=None)
def test_the_time_line_decides_not_the_order_of_the_list(talk: Sequence[Statement], dice: Any) -> None:
    """Statements of different breaths may be handed in shuffled."""
    apart = [replace(s, order=at, evidence=evidence(at)) for at, s in enumerate(talk)]
    shuffled = list(apart)
    dice.shuffle(shuffled)
    assert fold(shuffled, "GBP") == fold(apart, "GBP")


@given(TALKS)
@settings(deadline=None)
def test_money_never_mixes_and_is_never_made_up(talk: Sequence[Statement]) -> None:
    """Every amount in the record was said, in the currency in which it was said."""
    said = Counter(s.price for s in talk if isinstance(s, told.Prices | told.Charges) and s.price is not None)
    record = fold(talk, "GBP")
    kept = [p.unit_price for p in record.parts] + [c.amount for c in record.charges]
    kept += [price for p in record.parts for price in p.prices]
    assert all(money in said for money in kept if money is not None)


@given(TALKS)
@settings(deadline=None)
def test_talk_of_another_part_changes_nothing_of_this_one(talk: Sequence[Statement]) -> None:
    """A part that is needed, priced and fitted reads the same whatever is said of others."""
    mine = [
        told.Needs(order=3, evidence=evidence(3), ref="zither peg", quantity=Decimal(2)),
        told.Prices(order=5, evidence=evidence(5), ref="zither peg", price=Money(Decimal("1.20"), "GBP")),
    ]
    alone = fold(mine, "GBP").parts
    talk = [s for s in talk if not isinstance(s, told.Corrects)]
    assert [p for p in fold([*talk, *mine], "GBP").parts if p.name == "zither peg"] == list(alone)
