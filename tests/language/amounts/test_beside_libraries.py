"""The grammar beside general libraries, on the narrated amounts and on the ten spoken quantities.

Libraries (as installed by the tests extra): quantulum3, text2num, word2number, price-parser, pint. Each is asked in
its easiest way and given every benefit of the doubt: the first amount that it finds counts, and its unit may be named
anyhow. Ours is asked with the talk around the amount, which none of them takes; so "value" is the fair column for
bare numbers.
"""

from __future__ import annotations

import csv
import re
import warnings
from collections.abc import Callable
from decimal import Decimal
from functools import cache
from pathlib import Path

import pint
import pytest
from language.amounts.narrated import Narrated, prices, readings, unit_words
from price_parser import Price
from text_to_num import alpha2digit
from word2number import w2n

from benchnotes.language.amounts.finding import find_amounts
from benchnotes.language.amounts.prices import read_price
from benchnotes.language.amounts.readings import read_reading

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # quantulum3 tells that its optional classifier is not installed
    from quantulum3 import parser as quantulum

EVERY = 4
"""Every fourth narrated amount: the libraries are slow."""
Answer = tuple[Decimal | None, str]
"""A value, and whatever the library calls its unit."""
CALLED = {
    "mm": ("millimet", "mill"), "in": ("inch",), "thou": ("thou", "mil"), "V": ("volt",), "A": ("amp",),
    "mA": ("milliamp",), "ohm": ("ohm",), "kohm": ("kiloohm", "kilohm"), "Mohm": ("megaohm", "megohm"),
    "uF": ("microfarad",), "rpm": ("rpm", "revolution"), "C": ("degree",), "F": ("degree",), "N.m": ("newton",),
    "bar": ("bar",), "psi": ("psi", "pound-force per square inch", "pound_force_per_square_inch"), "s": ("second",),
    "min": ("minute",), "h": ("hour",), "kPa": ("pascal",), "Hz": ("hertz",), "g": ("gram",), "kg": ("kilo",),
    "ml": ("millilit",), "l": ("lit",), "W": ("watt",), "%": ("percent",), "GBP": ("pound", "£", "quid"),
    "USD": ("dollar", "$", "buck"), "CAD": ("dollar", "$"), "AUD": ("dollar", "$"), "NZD": ("dollar", "$"),
    "EUR": ("euro", "€"), "ZAR": ("rand", "R"), "INR": ("rupee", "₹"),
}  # fmt: skip


@cache
def registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()


def by_quantulum(text: str) -> Answer:
    found = quantulum.parse(text)
    return (Decimal(str(found[0].value)), str(found[0].unit.name)) if found else (None, "")


def by_text2num(text: str) -> Answer:
    figures = re.search(r"-?\d+(?:[.,]\d+)*", alpha2digit(text, "en"))
    return (
        (Decimal(figures.group().replace(",", "")), text) if figures and figures.group().count(".") < 2 else (None, "")
    )


def by_word2number(text: str) -> Answer:
    return Decimal(str(w2n.word_to_num(text))), text


def by_price_parser(text: str) -> Answer:
    found = Price.fromstring(text)
    return found.amount, found.currency or ""


def by_pint(text: str) -> Answer:
    found = registry().Quantity(alpha2digit(text, "en"))
    return Decimal(str(found.magnitude)), str(found.units)


LIBRARIES: dict[str, Callable[[str], Answer]] = {
    "quantulum3": by_quantulum,
    "text2num": by_text2num,
    "word2number": by_word2number,
    "price-parser": by_price_parser,
    "pint after text2num": by_pint,
}


def asked(library: Callable[[str], Answer], text: str) -> Answer:
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            return library(text)
    except Exception:  # each library has errors of its own; any is no answer
        return None, ""


def value_right(answer: Answer, said: Narrated) -> bool:
    return answer[0] is not None and any(abs(answer[0] - value) < Decimal("1e-6") for value, _ in said.known)


def all_right(answer: Answer, said: Narrated) -> bool:
    named = any(called in answer[1] for _, unit in said.known for called in CALLED.get(unit, (unit,)))
    return value_right(answer, said) and named


def our_reading(said: Narrated) -> Answer:
    around = {"what": said.what, "before": said.before, "after": said.after, "currency": said.currency}
    found = read_reading(said.text, words=unit_words(), **around)  # type: ignore[arg-type]
    return (None, "") if found is None else (found.value, found.unit)


def our_price(said: Narrated) -> Answer:
    found = read_price(said.text, words=unit_words(), currency=said.currency, kind=said.kind, like=said.earlier)  # type: ignore[arg-type]
    return (None, "") if found is None else (found.amount.amount, found.amount.currency)


@pytest.mark.parametrize(("cases", "ours"), [(readings, our_reading), (prices, our_price)])
def test_no_library_reads_the_narrated_amounts_as_well(
    cases: Callable[[], tuple[Narrated, ...]], ours: Callable[[Narrated], Answer]
) -> None:
    some = [said for said in cases() if said.known][::EVERY]
    mine = [ours(said) for said in some]
    our_values = sum(value_right(answer, said) for answer, said in zip(mine, some, strict=True))
    our_all = sum((answer[0], answer[1]) in said.known for answer, said in zip(mine, some, strict=True))
    table = [f"{'ours':22}{our_values / len(some):8.1%}{our_all / len(some):8.1%}"]
    for name, library in LIBRARIES.items():
        answers = [asked(library, said.text) for said in some]
        values = sum(value_right(answer, said) for answer, said in zip(answers, some, strict=True))
        whole = sum(all_right(answer, said) for answer, said in zip(answers, some, strict=True))
        table.append(f"{name:22}{values / len(some):8.1%}{whole / len(some):8.1%}")
        assert values < our_values, "\n".join(table)
        assert whole < our_all, "\n".join(table)
    print(f"\n{cases.__name__}: value, value and unit", *table, sep="\n")


def test_the_ten_spoken_quantities(root: Path) -> None:
    """tests/published/quantities; the best general library reads 5 of the 10 (measured with quantulum3 0.10.0)."""
    table = root / "tests" / "published" / "quantities" / "expected.tsv"
    rows = list(csv.DictReader(table.read_text("utf-8").splitlines(), delimiter="\t"))
    assert len(rows) == 10
    for row in rows:
        said = row["utterance"]
        (found,) = find_amounts(said, currency="GBP", words=unit_words())
        assert (found.value, found.unit or found.currency) == (Decimal(row["value"]), row["unit"].split(" ")[0]), said
        assert said[found.start : found.end] == said.removeprefix("about ")
