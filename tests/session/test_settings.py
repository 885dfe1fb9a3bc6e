"""settings.toml is followed to the letter or refused with the line and what would be right."""

from __future__ import annotations

import re
from decimal import Decimal
from pathlib import Path

import pytest

from benchnotes.exports.invoice import Party, Payment
from benchnotes.exports.tax import Tax, TaxRules
from benchnotes.session.errors import SettingsError
from benchnotes.session.setting_tables import BillSettings
from benchnotes.session.settings import Settings, parse_settings, read_settings

FILE = Path("/shop/settings.toml")


def test_no_file_is_fine(tmp_path: Path) -> None:
    assert read_settings(tmp_path / "settings.toml") == Settings()


def test_every_setting() -> None:
    text = 'currency = "zar"\ntrades = ["pumps", " lamps "]\nmodel = "small.en"\nmodel_folder = "/models/mine"\n'
    assert parse_settings(text, FILE) == Settings(
        currency="ZAR", trades=("pumps", "lamps"), model="small.en", model_folder=Path("/models/mine")
    )


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('\n\ncurency = "GBP"', 'settings.toml, line 3: there is no setting "curency". The settings are: currency,'),
        ('model = "base"\ncurrency = "QQQ"', "line 2: \"currency\" is 'QQQ'; it must be an ISO 4217 code"),
        ("currency = 12", 'line 1: "currency" is 12; it must be'),
        ('trades = "lamps"', 'line 1: "trades" is \'lamps\'; it must be a list of trades such as ["lamps", "pumps"]'),
        ("trades = [1]", "it must be a list"),
        ('model = ""', "it must be the name of a speech model"),
        ("model_folder = true", "it must be a folder"),
        ('# [shop]\n[shop]\nname = "x"', 'line 2: there is no setting "shop"'),
        ('a = 1\n"a b" = 2', 'line 1: there is no setting "a"'),
        ("currency = ", "no TOML"),
    ],
)
def test_what_is_wrong_is_named(text: str, said: str) -> None:
    with pytest.raises(SettingsError) as refused:
        parse_settings(text, FILE)
    assert said in str(refused.value)


def test_a_file_in_another_encoding_is_said(tmp_path: Path) -> None:
    path = tmp_path / "settings.toml"
    path.write_bytes('currency = "GBP" # für'.encode("latin-1"))
    with pytest.raises(SettingsError, match="cannot be read"):
        read_settings(path)


WHOLE = """
currency = "GBP"
[workshop]
name = "Tarn Bench"
street = "3 Weir Lane"
town = "Oldmere"
postcode = "OM1 2AB"
country = "gb"
tax_number = "gb 999 0001 17"
[tax]
usual = "20 %"
postage = "zero"
labour = 5.5
outside_work = "exempt"
exempt_because = "Exempt by its kind"
[bill]
labour_an_hour = 38.50
payment_days = 14
account = "GB33BUKB20201555555555"
number_prefix = "2026-"
by_the_metre = ["Flex"]
"""


def test_what_a_bill_needs() -> None:
    settings = parse_settings(WHOLE, FILE)
    assert settings.workshop == Party(
        name="Tarn Bench", street="3 Weir Lane", town="Oldmere", postcode="OM1 2AB", country="GB",
        tax_number="GB999000117",
    )  # fmt: skip
    assert settings.tax == TaxRules(
        usual=Tax("S", Decimal(20)),
        apart={"labour": Tax("S", Decimal("5.5")), "outside_work": Tax("E"), "postage": Tax("Z")},
        exempt_because="Exempt by its kind",
    )
    assert settings.bill == BillSettings(
        labour_an_hour=Decimal("38.50"),
        payment=Payment(days=14, account="GB33BUKB20201555555555"),
        number_prefix="2026-",
        by_the_metre=("flex",),
    )


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('[workshop]\n\nnam = "x"', 'line 3: there is no setting "workshop.nam". The settings are: name, street,'),
        ('name = "x"', 'line 1: there is no setting "name"'),
        ('[workshop]\ncountry = "UK"', "line 2: \"workshop.country\" is 'UK'; it must be a country by its two letters"),
        ('[workshop]\ntax_number = "999"', "it must be a tax number that begins with its country"),
        ('[workshop]\nname = "a\\nb"', "it must be text in quotes, on one line"),
        (
            'model = "base"\n[bill]\n# rate\nlabour_an_hour = -1.50',
            'line 4: "bill.labour_an_hour" is -1.50; it must be',
        ),
        ("[bill]\nlabour_an_hour = nan", "it must be an amount such as 38.50"),
        ("[bill]\npayment_days = 14.5", "it must be a number of days"),
        (
            '[tax]\nusual = "a fifth"',
            'it must be a rate such as "20 %", or one of: zero, exempt, reverse charge, outside',
        ),
        ("tax.usual = 100", 'line 1: "tax.usual" is 100; it must be'),
        ('tax = { usual = 20, labor = "zero" }', 'line 1: there is no setting "tax.labor"'),
        ("tax = 20", 'line 1: "tax" is 20; it must be a table, begun with [tax].'),
    ],
)
def test_what_is_wrong_in_a_table_is_named(text: str, said: str) -> None:
    with pytest.raises(SettingsError) as refused:
        parse_settings(text, FILE)
    assert said in str(refused.value)


def test_no_tax_is_guessed() -> None:
    assert parse_settings('[tax]\npostage = "zero"', FILE).tax is None


def test_the_settings_in_the_documents_are_followed(root: Path) -> None:
    (example,) = re.findall(r"```toml\n(.*?)```", (root / "docs" / "bills.md").read_text(encoding="utf-8"), re.DOTALL)
    settings = parse_settings(example, FILE)
    assert settings.workshop.name == "Tarn Bench"
    assert settings.tax is not None
    assert settings.bill.payment.days == 14
