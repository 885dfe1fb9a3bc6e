"""Which currency a job is in where nobody said so."""

from __future__ import annotations

import locale
from contextlib import suppress

from benchnotes.exports.currencies import MINOR_DIGITS

LAST_RESORT = "EUR"


def usual_currency() -> str:
    """The one that the user's locale writes money in; EUR where the locale has none (as "C" has)."""
    before = locale.setlocale(locale.LC_MONETARY)
    with suppress(locale.Error):
        locale.setlocale(locale.LC_MONETARY, "")
    code = str(locale.localeconv()["int_curr_symbol"]).strip()
    locale.setlocale(locale.LC_MONETARY, before)
    return code if code in MINOR_DIGITS else LAST_RESORT
