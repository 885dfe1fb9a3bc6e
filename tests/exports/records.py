"""Hypothesis-made job records: every field the types allow, so that what leaves the program is tried on all of it."""

from __future__ import annotations

from datetime import datetime, timedelta, timezone
from decimal import Decimal

from hypothesis import strategies as st

from benchnotes.record import entries, terms
from benchnotes.record.currencies import MINOR_DIGITS
from benchnotes.record.heard import Evidence, Recording, Unheard, Utterance, Word
from benchnotes.record.job import Heard
from benchnotes.record.money import Money

TEXT = st.text(st.characters(exclude_categories=("Cs",)), min_size=1, max_size=20)
NAME = TEXT | st.sampled_from(["=1+1", "+44", "-12 thread", "@lid", " =cmd", "lid, left", 'the "big" one', "a\r\nb"])
SECONDS = st.floats(0, 20_000, allow_nan=False)
SHARE = st.floats(0, 1)
AMOUNT = st.decimals(Decimal("-9999"), Decimal("99999"), allow_nan=False, places=2) | st.integers(0, 99).map(Decimal)
COUNT = st.integers(1, 40).map(Decimal) | st.sampled_from([Decimal("0.5"), Decimal("2.50"), Decimal("1E+1")])
WHEN = st.datetimes(datetime(1990, 1, 1), datetime(2090, 1, 1)).map(
    lambda moment: moment.replace(tzinfo=timezone(timedelta(hours=5, minutes=30)))
)
EVIDENCE = st.lists(st.builds(Evidence, st.integers(1, 3), SECONDS, SECONDS, TEXT), max_size=3).map(tuple)


def _lists(entry: type[entries.Entry], /, **fields: st.SearchStrategy[object]) -> st.SearchStrategy[tuple[object, ...]]:
    grounds = {"evidence": EVIDENCE, "sure": SHARE, "check": st.booleans()}
    return st.lists(st.builds(entry, **grounds, **fields), max_size=3).map(tuple)


@st.composite
def records(draw: st.DrawFn) -> entries.JobRecord:
    """Any record in one currency."""
    currency = draw(st.sampled_from(sorted(MINOR_DIGITS)))
    money = st.builds(Money, AMOUNT, st.just(currency))
    basis = st.none() | st.sampled_from(terms.BASES)
    maybe = st.none() | NAME
    machine = st.builds(
        entries.Machine,
        kind=maybe,
        make=maybe,
        model=maybe,
        serial=maybe,
        evidence=EVIDENCE,
        power=st.none() | st.sampled_from(terms.POWERS),
        holds_pressure=st.none() | st.booleans(),
    )
    return draw(
        st.builds(
            entries.JobRecord,
            currency=st.just(currency),
            machine=machine,
            faults=_lists(entries.Fault, part=NAME),
            parts=_lists(
                entries.Part,
                name=NAME,
                qty=COUNT,
                unit_price=st.none() | money,
                basis=basis,
                prices=st.lists(money, max_size=3).map(tuple),
                state=st.sampled_from(terms.PART_STATES),
            ),
            charges=_lists(
                entries.Charge,
                kind=st.sampled_from(terms.CHARGE_KINDS),
                what=TEXT,
                amount=st.none() | money,
                basis=basis,
                hours=st.none() | COUNT,
            ),
            work=_lists(entries.Work, action=st.sampled_from(terms.ACTIONS), target=TEXT),
            readings=_lists(entries.Reading, what=TEXT, value=AMOUNT, unit=st.sampled_from(terms.UNITS)),
            tests=_lists(entries.Trial, what=st.sampled_from(terms.TRIAL_KINDS), of=maybe),
            advice=_lists(entries.Advice, text=TEXT),
            left_apart=_lists(entries.LeftApart, part=TEXT),
            unsure=_lists(entries.Unsure, about=TEXT),
            notices=_lists(entries.Notice, kind=TEXT, about=TEXT, why=TEXT),
        )
    )


ITEMS = _lists(entries.Item, kind=st.sampled_from(terms.ITEM_KINDS), about=TEXT, why=TEXT, close_by=TEXT)
RECORDINGS = st.builds(
    Recording, st.integers(1, 9), TEXT, st.sampled_from(["sound", "video", "captions"]), SECONDS,
    st.from_regex(r"\A[0-9a-f]{64}\Z"), st.none() | WHEN, st.sampled_from(["container", "file", "typed", "unknown"]),
)  # fmt: skip
WORDS = st.builds(Word, TEXT, SECONDS, SECONDS, st.none() | SHARE)
UTTERANCES = st.builds(Utterance, st.integers(1, 9), SECONDS, SECONDS, st.lists(WORDS, max_size=3).map(tuple))
HEARD = st.builds(
    Heard,
    st.lists(RECORDINGS, max_size=2).map(tuple),
    st.lists(UTTERANCES, max_size=3).map(tuple),
    st.lists(st.builds(Unheard, st.integers(1, 9), SECONDS, SECONDS), max_size=2).map(tuple),
)
