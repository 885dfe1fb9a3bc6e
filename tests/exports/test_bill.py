"""Sums of a bill: by hand from EN 16931-1's rules (BR-CO-10 to -17), and what must hold for any bill."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from exports.bills import bills
from hypothesis import given, settings

from benchnotes.exports.bill import (
    Bill,
    Line,
    digits_of,
    discounts_over,
    line_amount,
    rounded,
    shared_out,
    tax_sums,
    totals,
)
from benchnotes.exports.tax import Tax

FULL, LOW, NONE = Tax("S", Decimal(20)), Tax("S", Decimal(5)), Tax("Z")


def line(price: str, tax: Tax = FULL, quantity: str = "1", per: str = "1") -> Line:
    return Line(what="lid", quantity=Decimal(quantity), price=Decimal(price), per=Decimal(per), tax=tax)


@pytest.mark.parametrize(
    ("value", "digits", "half_up"),
    [("0.125", 2, "0.13"), ("-0.125", 2, "-0.13"), ("2.5", 0, "3"), ("1.0005", 3, "1.001"), ("1.004999", 2, "1.00")],
)
def test_half_goes_up(value: str, digits: int, half_up: str) -> None:
    """BR-CO-17 in CEN's own test cases: 'rounded "half up" to two decimals', for amounts below nothing as well."""
    assert rounded(Decimal(value), digits) == Decimal(half_up)


def test_lines_are_added_as_rounded() -> None:
    """Three times 0.333 of a pound are 0.99, not 1.00: BR-CO-10 adds the lines as they stand."""
    assert totals(Bill(currency="GBP", lines=(line("0.333"),) * 3)).lines == Decimal("0.99")


def test_tax_is_rounded_once_for_each_rate() -> None:
    """0.04 of tax on 0.22 said line by line would be 0.08; on 0.44 it is 0.09 (BR-CO-17), and no line carries tax."""
    summed = totals(Bill(currency="GBP", lines=(line("0.22"), line("0.22"), line("10", LOW), line("3", NONE))))
    assert [(each.taxable, each.amount) for each in summed.taxes] == [
        (Decimal("10.00"), Decimal("0.50")), (Decimal("0.44"), Decimal("0.09")), (Decimal("3.00"), Decimal("0.00")),
    ]  # fmt: skip
    assert (summed.without_tax, summed.tax, summed.with_tax) == (Decimal("13.44"), Decimal("0.59"), Decimal("14.03"))


def test_hours_at_a_price_in_all() -> None:
    """ "Call it a hundred for the three hours": 100, whatever an hour then comes to."""
    assert line_amount(line("100", quantity="3", per="3"), "GBP") == Decimal("100.00")


@pytest.mark.parametrize(
    ("currency", "tax", "with_tax"), [("JPY", "67", "402"), ("GBP", "66.99", "401.94"), ("KWD", "66.990", "401.940")]
)
def test_as_many_digits_as_the_currency_has(currency: str, tax: str, with_tax: str) -> None:
    summed = totals(Bill(currency=currency, lines=(line("334.95"),)))
    assert (str(summed.tax), str(summed.with_tax)) == (tax, with_tax)


def test_a_discount_is_shared_out_over_the_rates() -> None:
    shares = shared_out(Decimal("10.00"), {FULL: Decimal("66.66"), LOW: Decimal("33.34")}, 2)
    assert shares == {FULL: Decimal("6.67"), LOW: Decimal("3.33")}
    assert shared_out(Decimal("0.01"), {FULL: Decimal(1), LOW: Decimal(1), NONE: Decimal(0)}, 2) == {
        LOW: Decimal("0.01")
    }


def test_several_discounts_take_no_rate_below_nothing() -> None:
    said = (line("1.00", FULL), line("0.01", LOW))
    off = discounts_over(said, [("a", Decimal("0.50")), ("b", Decimal("0.51"))], "GBP")
    assert [each.taxable for each in tax_sums(Bill(currency="GBP", lines=said, discounts=tuple(off)))] == [0, 0]


@settings(max_examples=300, deadline=None)
@given(bill=bills())
def test_every_sum_of_any_bill_is_what_the_rules_say(bill: Bill) -> None:
    """The rules once more in exact fractions, written apart from the program."""
    unit = 10 ** digits_of(bill.currency)

    def half_up(value: Fraction) -> Fraction:
        return Fraction((value * unit + Fraction(1, 2)).__floor__(), unit)

    nets = [half_up(Fraction(each.quantity) * Fraction(each.price) / Fraction(each.per)) for each in bill.lines]
    rates = {each.tax for each in bill.lines}
    summed = totals(bill)
    taxes = []
    for tax in rates:
        taxable = sum(net for each, net in zip(bill.lines, nets, strict=True) if each.tax == tax)
        taxable -= sum(Fraction(each.amount) for each in bill.discounts if each.tax == tax)
        assert taxable >= 0
        taxes.append(half_up(taxable * Fraction(tax.rate) / 100))
    assert Fraction(summed.lines) == sum(nets)
    assert Fraction(summed.tax) == sum(taxes)
    assert Fraction(summed.with_tax) == sum(nets) - sum(Fraction(each.amount) for each in bill.discounts) + sum(taxes)
    assert {each.tax for each in summed.taxes} == rates
    assert summed.with_tax >= 0
