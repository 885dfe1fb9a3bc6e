"""Which files a model consists of, with sizes and SHA-256: the tracked models/weights.toml, and the user's own.

What a user adds is pinned in weights.toml of the workshop's folder, never in the tracked file.
"""

from __future__ import annotations

import os
import sys
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import platformdirs

import benchnotes
from benchnotes.speech.errors import WeightsError

Kind = Literal["speech", "encoder"]
ENTRY_KEYS = {"kind", "model", "revision", "licence", "packages", "zip", "files"}
FILE_KEYS = {"bytes", "sha256", "parts", "member"}


@dataclass(frozen=True, slots=True)
class PinnedFile:
    """One file of a model."""

    name: str
    bytes: int
    sha256: str
    parts: tuple[str, ...] = ()
    """Paths inside the packages that joined in this order are the file."""
    member: str | None = None
    """Its name in the zip that the packages' parts are together."""


@dataclass(frozen=True, slots=True)
class Pin:
    """One model."""

    name: str
    kind: Kind
    model: str
    revision: str
    licence: str
    files: tuple[PinnedFile, ...]
    packages: tuple[str, ...] = ()
    """Registry packages, each with its version: "name==1.0.0"."""
    zip: tuple[str, ...] = ()
    """Paths inside the packages that joined in this order are a zip."""

    @property
    def bytes(self) -> int:
        return sum(file.bytes for file in self.files)


def pins() -> dict[str, Pin]:
    """Every pinned model by name; the user's own after the tracked ones. Raises WeightsError."""
    known = _read(tracked_file())
    if own_file().is_file():
        known = {**_read(own_file()), **known}
    return known


def tracked_file() -> Path:
    """models/weights.toml of the checkout; of an installed wheel, what it laid into share/."""
    beside = Path(benchnotes.__file__).resolve().parents[1] / "models" / "weights.toml"
    installed = Path(sys.prefix) / "share" / "benchnotes" / "models" / "weights.toml"
    for path in (beside, installed):
        if path.is_file():
            return path
    raise WeightsError(f"The list of models is missing: {beside}. Put it back from the project, or install it again.")


def models_folder() -> Path:
    """The tracked models/: the list of models, and in `reader` what the reader learnt."""
    return tracked_file().parent


def own_file(environment: Mapping[str, str] = os.environ) -> Path:
    """Where the user's own models are pinned."""
    return _home(environment) / "weights.toml"


def cache_folder(environment: Mapping[str, str] = os.environ) -> Path:
    """Where fetched weights are kept: with the workshop where it was named, else in the platform's cache."""
    if environment.get("BENCHNOTES_HOME", "").strip():
        return _home(environment) / "weights"
    return Path(platformdirs.user_cache_dir("benchnotes", appauthor=False)) / "weights"


def _home(environment: Mapping[str, str]) -> Path:
    named = environment.get("BENCHNOTES_HOME", "").strip()
    if named:
        return Path(named).expanduser().absolute()
    return Path(platformdirs.user_data_dir("benchnotes", appauthor=False))


def pin_own(pin: Pin) -> None:
    """Writes a model of the user's into their own weights.toml, after what stands there. Raises WeightsError."""
    path = own_file()
    lines = [
        "",
        f"[{_quoted(pin.name)}]",
        f'kind = "{pin.kind}"',
        f"model = {_quoted(pin.model)}",
        f"revision = {_quoted(pin.revision)}",
        f"licence = {_quoted(pin.licence)}",
    ]
    for file in pin.files:
        lines += ["", f"[{_quoted(pin.name)}.files.{_quoted(file.name)}]"]
        lines += [f"bytes = {file.bytes}", f'sha256 = "{file.sha256}"']
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("a", encoding="utf-8") as own:
            own.write("\n".join(lines) + "\n")
    except OSError as error:
        raise WeightsError(f"{path} cannot be written: {error.strerror}. The model was not taken in.") from None


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _read(path: Path) -> dict[str, Pin]:
    try:
        entries = tomllib.loads(path.read_text(encoding="utf-8"))
        return {name: _pin(name, entry) for name, entry in entries.items()}
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError, KeyError, TypeError, ValueError) as error:
        raise WeightsError(
            f"The list of models {path} cannot be used: {error}. Put it right or move it away."
        ) from None


def _pin(name: str, entry: dict[str, Any]) -> Pin:
    _only_known(name, entry, ENTRY_KEYS)
    if entry["kind"] not in ("speech", "encoder"):
        raise ValueError(f'{name}: kind is "{entry["kind"]}"; it must be speech or encoder')
    for file_name, file in entry["files"].items():
        _only_known(f"{name}, {file_name}", file, FILE_KEYS)
        if "/" in file_name or "\\" in file_name or file_name.startswith("."):
            raise ValueError(f"{name}: {file_name} is no plain file name")
    return Pin(
        name,
        entry["kind"],
        entry["model"],
        entry["revision"],
        entry["licence"],
        tuple(
            PinnedFile(n, int(f["bytes"]), str(f["sha256"]), tuple(f.get("parts", ())), f.get("member"))
            for n, f in entry["files"].items()
        ),
        tuple(entry.get("packages", ())),
        tuple(entry.get("zip", ())),
    )


def _only_known(where: str, given: Mapping[str, Any], allowed: set[str]) -> None:
    unknown = sorted(set(given) - allowed)
    if unknown:
        raise ValueError(f"{where}: there is no key {unknown[0]}; the keys are {', '.join(sorted(allowed))}")
