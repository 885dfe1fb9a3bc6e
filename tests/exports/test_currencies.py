"""The currency table against `iso4217`, which carries the list of the maintenance agency."""

from __future__ import annotations

import iso4217

from benchnotes.record.currencies import MINOR_DIGITS


def test_the_table_is_that_of_iso_4217() -> None:
    published = {currency.code: currency.exponent for currency in iso4217.Currency if currency.exponent is not None}
    # the agency adds and retires codes: a difference of a few is a newer list, more is a mistake of ours
    assert len(published.items() ^ MINOR_DIGITS.items()) <= 6
    everyday = {"AUD", "BHD", "CAD", "CHF", "CLF", "EUR", "GBP", "INR", "JPY", "KRW", "NZD", "TND", "USD", "ZAR"}
    assert {code: MINOR_DIGITS[code] for code in everyday} == {code: published[code] for code in everyday}
