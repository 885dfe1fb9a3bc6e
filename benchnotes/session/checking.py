"""What works here, what does not, and what to do: one small check a thing."""

from __future__ import annotations

import importlib
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from benchnotes.session.jobs import all_jobs, open_workshop
from benchnotes.session.known_errors import KNOWN
from benchnotes.session.reading_tools import open_reading_tools, said_of
from benchnotes.session.recogniser import open_recogniser
from benchnotes.session.settings import read_settings
from benchnotes.session.workshop import Workshop

LEAST_ROOM = 1 << 30
"""Bytes: an hour of sound takes a tenth of this, an hour of film all of it."""


@dataclass(frozen=True, slots=True)
class Check:
    """One thing that was looked at."""

    name: str
    works: bool
    says: str
    to_do: str = ""
    needed: bool = True
    """Without it, nothing can be read."""


def checks(workshop: Workshop) -> Iterator[Check]:
    """Every check in turn; none stops another."""
    yield _tried("settings", lambda: _settings(workshop))
    yield _tried("notebook", lambda: _notebook(workshop))
    yield _tried("disk room", lambda: _room(workshop.folder))
    yield _tried("speech model", lambda: _speech(workshop))
    yield _tried("reader", lambda: _reader(workshop))
    yield _microphone()
    yield _camera()


def _tried(name: str, look: Callable[[], str]) -> Check:
    """Works and says what `look` gives; or does not, and its error says what to do."""
    try:
        return Check(name, True, look())
    except KNOWN as error:
        says, _, to_do = str(error).partition(". ")
        return Check(name, False, says, to_do)


def _settings(workshop: Workshop) -> str:
    settings = read_settings(workshop.settings)
    if not workshop.settings.exists():
        return f"none set; {workshop.settings} would hold them"
    return f"{workshop.settings}, currency {settings.currency or 'not set'}"


def _notebook(workshop: Workshop) -> str:
    with open_workshop(workshop) as notebook:
        count = len(all_jobs(notebook))
    return f"{workshop.notebook}, {count} job{'' if count == 1 else 's'}"


def _room(folder: Path) -> str:
    there = next(path for path in (folder, *folder.parents) if path.exists())
    free = shutil.disk_usage(there).free
    shown = f"{free / (1 << 30):.1f} GiB free"
    return shown if free >= LEAST_ROOM else f"{shown}: little for long films"


def _speech(workshop: Workshop) -> str:
    settings = read_settings(workshop.settings)
    weights = open_recogniser(workshop, settings, settings.trades).weights
    return f"{weights.name}, in {weights.path}"


def _reader(workshop: Workshop) -> str:
    settings = read_settings(workshop.settings)
    return said_of(open_reading_tools(workshop, settings.trades))


def _microphone() -> Check:
    # opened by name here and nowhere else in a check: importing it fails where its system library is missing
    try:
        device = importlib.import_module("sounddevice").query_devices(kind="input")
    except OSError:
        to_do = "Install PortAudio (Debian: libportaudio2). Files can be read without it."
        return Check("microphone", False, "the sound system's library is missing", to_do, needed=False)
    except Exception:
        return Check("microphone", False, "none found", "Plug one in. Files can be read without it.", needed=False)
    return Check("microphone", True, str(device["name"]), needed=False)


def _camera() -> Check:
    found = sorted(str(path) for path in Path("/dev").glob("video*"))
    if not found:
        return Check("camera", False, "none found", "Plug one in. Video files can be read without it.", needed=False)
    return Check("camera", True, ", ".join(found), needed=False)
