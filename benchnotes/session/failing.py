"""Any failure as words for the user; an unknown one leaves a file with its details."""

from __future__ import annotations

import os
import platform
import sys
import traceback
from datetime import UTC, datetime
from pathlib import Path

from benchnotes import __version__
from benchnotes.session.known_errors import KNOWN
from benchnotes.session.workshop import find_workshop


def sentence(failure: BaseException) -> str:
    """What to tell the user; writes a crash file where the failure is not a known one."""
    if isinstance(failure, KNOWN):
        return str(failure)
    kept_at = _crash_file(failure)
    where = f"The details are in {kept_at}; please send that file." if kept_at else "The details could not be written."
    return (
        f"Something went wrong that should not have ({type(failure).__name__}). What was kept before is safe. {where}"
    )


def _crash_file(failure: BaseException) -> Path | None:
    moment = datetime.now(UTC)
    folder = find_workshop().crashes
    path = folder / f"crash-{moment:%Y%m%d-%H%M%S}-{os.getpid()}.txt"
    head = f"Bench Notes {__version__}, Python {platform.python_version()}, {platform.platform()}\n{sys.argv[1:]}\n\n"
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        path.touch(mode=0o600)
        path.write_text(head + "".join(traceback.format_exception(failure)), encoding="utf-8")
    except OSError:
        return None
    return path
