"""settings.toml is followed to the letter or refused with the line and what would be right."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchnotes.session.errors import SettingsError
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
