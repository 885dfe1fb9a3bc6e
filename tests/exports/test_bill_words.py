"""What somebody reads on a terminal before a bill is issued."""

from __future__ import annotations

from decimal import Decimal

from exports.invoices import LID, SHOP, invoice

from benchnotes.exports.bill import Bill, Line, discounts_over
from benchnotes.exports.bill_words import bill_lines
from benchnotes.exports.invoice import Party
from benchnotes.exports.tax import Tax


def test_every_line_and_sum() -> None:
    hours = Line(
        what="Labour", quantity=Decimal(3), unit="HUR", price=Decimal(100), per=Decimal(3), tax=Tax("E"), check=True
    )
    lines = (LID, hours)
    bill = Bill(currency="GBP", lines=lines, discounts=tuple(discounts_over(lines, [("Discount", Decimal(9))], "GBP")))
    assert list(bill_lines(invoice(bill, exempt_because="Small"))) == [
        "Job 1, Corvane churn, for Mrs Quillby",
        "  9.00  lid gasket, 2 at 4.50",
        "  100.00  Labour, 3 h for 100.00  (check by ear)",
        "  -8.26  Discount",
        "  -0.74  Discount",
        "  0.00  0 % tax on 91.74 (Small)",
        "  1.65  20 % tax on 8.26",
        "  101.65 GBP to pay",
    ]


def test_nothing_reaches_the_terminal_but_text() -> None:
    told = list(bill_lines(invoice(buyer=Party(name="\x1b[2J\nMrs\u202e"), seller=SHOP, about="a\x07b\r")))
    assert all(line.isprintable() for line in told)
