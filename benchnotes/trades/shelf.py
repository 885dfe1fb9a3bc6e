"""Takes the words off the shelf: the package's TOML, then the user's own folder over it."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from benchnotes.language.amounts.unit_words import UnitWords, UnitWordsError
from benchnotes.language.vocabulary import Vocabulary, gather
from benchnotes.language.vocabulary_sheets import Sheet, VocabularyError

SHELF = Path(__file__).parent
EVERY_TRADE = ("common", "standing", "machines")
"""Files that every job reads; each other file is a trade of its own."""
UNITS = "units"
"""Unit and money words: a file with keys of its own (`language/amounts/unit_words.py`)."""


def load(user_folder: Path | None, trades: Sequence[str] = ()) -> Vocabulary:
    """The words of the trades named, or of all trades where none is.

    A file in the user's folder lies over the package's file of that name; a new name is a new trade. VocabularyError
    names the file and the key that is wrong, or the trade that is not there and those that are.
    """
    package, own = _files(SHELF), _files(user_folder)
    there = sorted({*package, *own}.difference(EVERY_TRADE, {UNITS}))
    for trade in trades:
        if trade not in there:
            raise VocabularyError(f"There is no trade {trade!r}. There are: {', '.join(there)}.")
    names = (*EVERY_TRADE, *(trades or there))
    sheets = [_sheet(package[name], over=False) for name in names if name in package]
    sheets += [_sheet(own[name], over=True) for name in names if name in own]
    return gather(sheets, units=_units([files[UNITS] for files in (package, own) if UNITS in files]))


def trades_on_the_shelf(user_folder: Path | None) -> tuple[str, ...]:
    """Names of all trades, the package's and the user's."""
    return tuple(sorted({*_files(SHELF), *_files(user_folder)}.difference(EVERY_TRADE, {UNITS})))


def _files(folder: Path | None) -> dict[str, Path]:
    if folder is None or not folder.is_dir():
        return {}
    return {path.stem: path for path in sorted(folder.glob("*.toml"))}


def _sheet(path: Path, *, over: bool) -> Sheet:
    return Sheet(path.stem, _plain(path), where=str(path), over=over)


def _units(paths: Sequence[Path]) -> UnitWords:
    """The package's unit words with the user's after them: lists grow, a table's keys are replaced."""
    together: dict[str, Any] = {}
    for path in paths:
        plain = _plain(path)
        try:
            UnitWords.from_mapping(plain)
        except UnitWordsError as error:
            raise VocabularyError(f"{path}: {error}") from error
        for key, value in plain.items():
            before = together.get(key)
            together[key] = (
                {**before, **value}
                if isinstance(before, dict)
                else [*(before or ()), *value]
                if isinstance(value, list)
                else value
            )
    return UnitWords.from_mapping(together)


def _plain(path: Path) -> Mapping[str, Any]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except tomllib.TOMLDecodeError as error:
        raise VocabularyError(f"{path} is not TOML: {error}. Nothing of it was used; mend it and try again.") from error
    except (OSError, UnicodeDecodeError) as error:
        raise VocabularyError(f"{path} cannot be read: {error}. Check that it is a text file in UTF-8.") from error
