"""What the workshop has set in settings.toml. Strict: an unknown key or a wrong value is refused by name and line."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

from benchnotes.exports.invoice import Party
from benchnotes.exports.tax import TaxRules
from benchnotes.record.currencies import MINOR_DIGITS
from benchnotes.session.errors import SettingsError
from benchnotes.session.setting_tables import TABLES, BillSettings, Reader, WrongValueError


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """Everything has a default, so that no file is needed."""

    currency: str | None = None
    """ISO 4217; None where the workshop has not said."""
    trades: tuple[str, ...] = ()
    """Names of trades whose words come on top of the common ones."""
    model: str = "base"
    """Speech model by name."""
    model_folder: Path | None = None
    """A folder with a CTranslate2 speech model, instead of `model`."""
    workshop: Party = field(default_factory=Party)
    """Who bills."""
    tax: TaxRules | None = None
    """None where the workshop has not said."""
    bill: BillSettings = field(default_factory=BillSettings)


def read_settings(path: Path) -> Settings:
    """The settings in `path`; the defaults where there is no such file. Raises SettingsError."""
    try:
        text = path.read_text(encoding="utf-8")
    except FileNotFoundError:
        return Settings()
    except (OSError, UnicodeDecodeError) as error:
        raise SettingsError(f"The settings in {path} cannot be read: {error}. Put it right or move it away.") from error
    return parse_settings(text, path)


def parse_settings(text: str, path: Path) -> Settings:
    """The settings in `text`; `path` is named in errors only."""
    try:
        given = tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        raise SettingsError(f"The settings in {path} are no TOML: {error}. Put it right or move it away.") from error
    values = {}
    for key, value in given.items():
        where = f"{path}, line {_line_of(key, text)}"
        if key in TABLES:
            values[key] = _table(key, value, text, path)
        else:
            values[key] = _read(key, value, KEYS, where=where, allowed=(*KEYS, *TABLES))
    return Settings(**values)


def _table(name: str, value: object, text: str, path: Path) -> Any:
    """A whole table, each of its keys followed to the letter."""
    if not isinstance(value, dict):
        raise SettingsError(
            f'{path}, line {_line_of(name, text)}: "{name}" is {value!r}; it must be a table, begun with [{name}].'
        )
    keys = TABLES[name].keys
    values = {}
    for key, each in value.items():
        where = f"{path}, line {_line_of(key, text, name)}"
        values[key] = _read(key, each, keys, where=where, allowed=keys, under=f"{name}.")
    return TABLES[name].made(values)


def _read(
    key: str, value: object, readers: Mapping[str, Reader], *, where: str, allowed: Iterable[str], under: str = ""
) -> Any:
    """One setting, followed to the letter. `under` is its table, with a point, for the words of an error."""
    if key not in readers:
        raise SettingsError(f'{where}: there is no setting "{under}{key}". The settings are: {", ".join(allowed)}.')
    try:
        return readers[key](value)
    except WrongValueError as wrong:
        shown = str(value) if isinstance(value, Decimal) else repr(value)
        raise SettingsError(f'{where}: "{under}{key}" is {shown}; it must be {wrong}.') from wrong


def currency_code(value: object) -> str:
    """An ISO 4217 code in capitals. Raises ValueError, its text says what is allowed."""
    code = value.strip().upper() if isinstance(value, str) else ""
    if code not in MINOR_DIGITS:
        raise WrongValueError("an ISO 4217 code such as AUD, EUR, GBP, INR, USD or ZAR")
    return code


def _words(value: object) -> tuple[str, ...]:
    if not isinstance(value, list) or not all(isinstance(word, str) and word.strip() for word in value):
        raise WrongValueError('a list of trades such as ["lamps", "pumps"]')
    return tuple(word.strip() for word in value)


def _name(value: object) -> str:
    if not isinstance(value, str) or not value.strip():
        raise WrongValueError('the name of a speech model such as "base"')
    return value.strip()


def _folder(value: object) -> Path:
    if not isinstance(value, str) or not value.strip():
        raise WrongValueError("a folder, written as text in quotes")
    return Path(value).expanduser()


KEYS: Final[dict[str, Callable[[object], Any]]] = {
    "currency": currency_code,
    "trades": _words,
    "model": _name,
    "model_folder": _folder,
}


def _line_of(key: str, text: str, table: str = "") -> int:
    """Line of a key or table, or of a key inside a table; tomllib does not tell."""
    lines = list(enumerate(text.splitlines(), 1))
    if table:
        start = _line_of(table, text)
        # the table's own lines come first; written in one line, or as table.key, it is that line
        lines = lines[start:] + lines[start - 1 : start]
        shown = re.compile(rf"""\s*(?:{re.escape(table)}\s*\.\s*)?["']?{re.escape(key)}["']?\s*[=.]""")
        return next((number for number, line in lines if shown.match(line)), start)
    shown = re.compile(rf"""\s*\[*\s*["']?{re.escape(key)}["']?\s*[=.\]]""")
    return next((number for number, line in lines if shown.match(line)), 1)
