"""The job sheet as PDF, set by typst: tagged (PDF/UA-1), with its fonts inside, the same bytes for the same sheet."""

from __future__ import annotations

import json
import re
from dataclasses import asdict
from importlib import resources
from typing import Final

import typst

from benchnotes.exports.sheet import Sheet

LAYOUT: Final = resources.files("benchnotes.exports") / "layouts" / "sheet.typ"
STANDARD: Final = "ua-1"
"""ISO 14289-1: a screen reader can read it."""
NO_LETTER: Final = "could not be displayed"
"""How typst says that a font lacks a letter, which the standard forbids to pass over."""
LONG_AGO: Final = 0
"""No time is written into the file: the sheet has its own dates."""


class NoLetterError(Exception):
    """A letter that no font here can set; the text says which."""


def sheet_pdf(sheet: Sheet) -> bytes:
    """PDF, A4. The text goes in as JSON beside the layout, so none of it can be markup. Raises NoLetterError.

    The machine's own fonts are asked only where those that come with typst lack a letter.
    """
    try:
        return _set(sheet, own_fonts_only=True)
    except typst.TypstError as error:
        if NO_LETTER not in str(error):
            raise
    try:
        return _set(sheet, own_fonts_only=False)
    except typst.TypstError as error:
        if NO_LETTER not in str(error):
            raise
        missing = re.search(r"the text (`.*?`)", str(error))
        raise NoLetterError(f"no font here has the letters {missing[1] if missing else 'of its text'}") from error


def _set(sheet: Sheet, *, own_fonts_only: bool) -> bytes:
    return bytes(
        typst.compile(
            LAYOUT.read_bytes(),
            format="pdf",
            sys_inputs={"sheet": json.dumps(asdict(sheet), ensure_ascii=False)},
            ignore_system_fonts=own_fonts_only,
            pdf_standards=[STANDARD],
            timestamp=LONG_AGO,
        )
    )
