"""Weights on this machine: where they are, whether they are whole, and that nothing with a wrong hash is used."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from benchnotes.speech.errors import WeightsError
from benchnotes.speech.weight_pins import Kind, Pin, PinnedFile, cache_folder, pin_own, pins

CHUNK_BYTES = 1 << 20
MODEL_FILES = ("model.bin", "config.json")
"""What every Whisper model in CTranslate2 form has; besides these a tokenizer or a vocabulary."""


@dataclass(frozen=True, slots=True)
class WeightsFolder:
    """A folder whose files are those that were pinned."""

    name: str
    kind: Kind
    path: Path


@dataclass(frozen=True, slots=True)
class WeightsState:
    """How a model stands on this machine."""

    name: str
    kind: Kind
    where: Path
    state: Literal["complete", "missing", "damaged"]
    bytes: int
    """Size of the whole model."""
    licence: str
    trouble: str = ""
    """Where damaged: which file, and what is wrong with it."""


def find(
    name: str, *, folder: Path | None = None, cache: Path | None = None, verify: bool = False
) -> WeightsFolder | None:
    """A model by name: in `folder` (or a folder of that name in it) where one is given, else in the cache (`cache`,
    where another of ours is meant than the usual one).

    None where a file is not there. `verify` works every hash out again. Raises WeightsError where a file is not
    the pinned one; it is deleted from our cache, never from a folder of the user's.
    """
    pin = _pin_of(name)
    if folder is not None:
        return _found(pin, folder if _has_all(pin, folder) else folder / name, verify=verify, ours=False)
    return _found(pin, (cache or cache_folder()) / name, verify=verify, ours=True)


def adopt(folder: Path, *, name: str | None = None) -> WeightsFolder:
    """Any folder with a Whisper model in CTranslate2 form; pinned at the first time, checked at every later one.

    Raises WeightsError where it is no such folder, or its files have changed since.
    """
    path = folder.expanduser().absolute()
    for needed in MODEL_FILES:
        if not (path / needed).is_file():
            raise WeightsError(
                f"{path} holds no speech model: there is no {needed} in it. "
                "Name a folder with a Whisper model in CTranslate2 form."
            )
    called = name or str(path)
    if called not in pins():
        pin_own(pin_of_folder(called, path))
    found = find(called, folder=path)
    if found is None:
        raise WeightsError(f"Files of the speech model in {path} are gone since it was taken in. Put them back.")
    return found


def listing(cache: Path | None = None) -> tuple[WeightsState, ...]:
    """Every pinned model and how it stands in the cache. Hashes that were right before are not worked out again."""
    return tuple(_state(pin, cache or cache_folder()) for pin in pins().values())


def pin_of_folder(name: str, path: Path, *, model: str = "", revision: str = "") -> Pin:
    """The pin for the files that lie in a folder now."""
    files = tuple(
        PinnedFile(file.name, file.stat().st_size, sha256(file))
        for file in sorted(path.iterdir())
        if file.is_file() and file.suffix in (".bin", ".json", ".txt") and file.name != "checked.json"
    )
    return Pin(name, "speech", model or str(path), revision or "as it was when taken in", "see its publisher", files)


def check(pin: Pin, path: Path) -> None:
    """Works out every hash. Raises WeightsError on the first file that is not the pinned one."""
    for file in pin.files:
        trouble = _trouble(file, path / file.name, verify=True)
        if trouble:
            raise WeightsError(trouble)


def sha256(path: Path) -> str:
    digest = hashlib.sha256()
    with path.open("rb") as file:
        while piece := file.read(CHUNK_BYTES):
            digest.update(piece)
    return digest.hexdigest()


def _pin_of(name: str) -> Pin:
    known = pins()
    if name not in known:
        raise WeightsError(
            f'There is no model "{name}" here. Known are: {", ".join(known)}. '
            f"`benchnotes weights fetch {name}` fetches it if there is one of that name."
        )
    return known[name]


def _has_all(pin: Pin, path: Path) -> bool:
    return all((path / file.name).is_file() for file in pin.files)


def _found(pin: Pin, path: Path, *, verify: bool, ours: bool) -> WeightsFolder | None:
    if not _has_all(pin, path):
        return None
    for file in pin.files:
        trouble = _trouble(file, path / file.name, verify=verify)
        if trouble and ours:
            (path / file.name).unlink(missing_ok=True)
            raise WeightsError(f"{trouble} It was deleted; `benchnotes weights fetch {pin.name}` brings it back.")
        if trouble:
            raise WeightsError(f"{trouble} It was left as it is; put the right file there, or name another folder.")
    return WeightsFolder(pin.name, pin.kind, path)


def _state(pin: Pin, cache: Path) -> WeightsState:
    path = cache / pin.name
    if not _has_all(pin, path):
        return WeightsState(pin.name, pin.kind, path, "missing", pin.bytes, pin.licence)
    troubles = [trouble for file in pin.files if (trouble := _trouble(file, path / file.name, verify=False))]
    state: Literal["complete", "damaged"] = "damaged" if troubles else "complete"
    return WeightsState(pin.name, pin.kind, path, state, pin.bytes, pin.licence, " ".join(troubles))


def _trouble(file: PinnedFile, path: Path, *, verify: bool) -> str:
    """Why a file is not the pinned one, as a sentence; empty where it is."""
    try:
        stat = path.stat()
        if stat.st_size != file.bytes:
            return f"The weights in {path} are damaged: {stat.st_size} bytes, where {file.bytes} are expected."
        seen: list[int | str] = [stat.st_size, stat.st_mtime_ns, file.sha256]
        checked = _checked()
        if not verify and checked.get(str(path)) == seen:
            return ""
        if sha256(path) != file.sha256:
            return f"The weights in {path} are not the expected ones: their SHA-256 is wrong, so they are not used."
    except OSError as error:
        return f"The weights in {path} cannot be read ({error.strerror})."
    _remember({**checked, str(path): seen})
    return ""


def _checked() -> dict[str, list[int | str]]:
    """By path: size, time of change and the hash that was found right."""
    try:
        known = json.loads((cache_folder() / "checked.json").read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return known if isinstance(known, dict) else {}


def _remember(checked: dict[str, list[int | str]]) -> None:
    path = cache_folder() / "checked.json"
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        beside = path.with_suffix(".new")
        beside.write_text(json.dumps(checked, indent=1), encoding="utf-8")
        beside.replace(path)
    except OSError:
        # Only speed is lost: the hash is worked out again next time.
        return
