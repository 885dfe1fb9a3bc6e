"""Hypothesis-made bills: every unit, category, several rates, discounts shared out; currencies of 0, 2, 3 digits."""

from __future__ import annotations

from decimal import Decimal

from hypothesis import strategies as st

from benchnotes.exports.bill import Bill, Line, digits_of, discounts_over, line_amount
from benchnotes.exports.tax import Tax

TAXES = st.sampled_from(
    [Tax("S", Decimal(20)), Tax("S", Decimal("5.5")), Tax("S", Decimal(7)), Tax("Z"), Tax("E"), Tax("AE")]
)
WHAT = st.text(st.characters(exclude_categories=("C", "Z")), min_size=1, max_size=20) | st.sampled_from(
    ["<lid>", "a & b", "]]>", "&amp;", '"', "ﬁx", "\u0301e"]
)


def lines(taxes: st.SearchStrategy[Tax], digits: int) -> st.SearchStrategy[Line]:
    return st.builds(
        Line,
        what=WHAT,
        quantity=st.integers(1, 40).map(Decimal) | st.decimals(Decimal("0.01"), 99, places=4).map(lambda q: q + 0),
        unit=st.sampled_from(["C62", "HUR", "MTR"]),
        price=st.decimals(0, 5000, places=digits),
        per=st.just(Decimal(1)) | st.sampled_from([Decimal(3), Decimal("1.25"), Decimal(7)]),
        tax=taxes,
    )


@st.composite
def bills(draw: st.DrawFn, currencies: tuple[str, ...] = ("EUR", "GBP", "JPY", "KWD")) -> Bill:
    """A bill that may be written: what is outside the scope of the tax stands alone (BR-O-11)."""
    currency = draw(st.sampled_from(currencies))
    taxes = draw(st.sampled_from([TAXES, st.just(Tax("O"))]))
    said = draw(st.lists(lines(taxes, digits_of(currency)), min_size=1, max_size=5))
    whole = sum(line_amount(line, currency) for line in said)
    taken_off, left = [], whole
    for reason in draw(st.lists(WHAT, max_size=2)):
        amount = draw(st.decimals(0, left, places=digits_of(currency)))
        left -= amount
        if amount:
            taken_off.append((reason, amount))
    return Bill(currency=currency, lines=tuple(said), discounts=tuple(discounts_over(said, taken_off, currency)))
