"""What the workshop has set in settings.toml. Strict: an unknown key or a wrong value is refused by name and line."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from benchnotes.exports.currencies import MINOR_DIGITS
from benchnotes.session.errors import SettingsError


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


class _WrongValueError(ValueError):
    """A value that a key cannot have; the text says what it can."""


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
        given = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise SettingsError(f"The settings in {path} are no TOML: {error}. Put it right or move it away.") from error
    values = {}
    for key, value in given.items():
        where = f"{path}, line {_line_of(key, text)}"
        if key not in KEYS:
            raise SettingsError(f'{where}: there is no setting "{key}". The settings are: {", ".join(KEYS)}.')
        try:
            values[key] = KEYS[key](value)
        except _WrongValueError as wrong:
            raise SettingsError(f'{where}: "{key}" is {value!r}; it must be {wrong}.') from wrong
    return Settings(**values)


def currency_code(value: object) -> str:
    """An ISO 4217 code in capitals. Raises ValueError, its text says what is allowed."""
    code = value.strip().upper() if isinstance(value, str) else ""
    if code not in MINOR_DIGITS:
        raise _WrongValueError("an ISO 4217 code such as AUD, EUR, GBP, INR, USD or ZAR")
    return code


def _words(value: object) -> tuple[str, ...]:
    if not isinstance(value, list) or not all(isinstance(word, str) and word.strip() for word in value):
        raise _WrongValueError('a list of trades such as ["lamps", "pumps"]')
    return tuple(word.strip() for word in value)


def _name(value: object) -> str:
    if not isinstance(value, str) or not value.strip():
        raise _WrongValueError('the name of a speech model such as "base"')
    return value.strip()


def _folder(value: object) -> Path:
    if not isinstance(value, str) or not value.strip():
        raise _WrongValueError("a folder, written as text in quotes")
    return Path(value).expanduser()


KEYS: Final[dict[str, Callable[[object], Any]]] = {
    "currency": currency_code,
    "trades": _words,
    "model": _name,
    "model_folder": _folder,
}


def _line_of(key: str, text: str) -> int:
    """Line of a top-level key or table; tomllib does not tell."""
    shown = re.compile(rf"""\s*\[*\s*["']?{re.escape(key)}["']?\s*[=.\]]""")
    return next((number for number, line in enumerate(text.splitlines(), 1) if shown.match(line)), 1)
