"""Every failure as words on standard error: known ones by their own sentence, unknown ones by a crash file and one."""

from __future__ import annotations

import os
import platform
import sys
import traceback
from datetime import UTC, datetime
from pathlib import Path

import click

from benchnotes import __version__
from benchnotes.session.known_errors import KNOWN
from benchnotes.session.workshop import find_workshop

FAILED, WRONG_USAGE, INTERRUPTED = 1, 2, 130


def tell_failure(failure: BaseException) -> int:
    """Says what went wrong and gives the exit code for it."""
    match failure:
        case SystemExit():
            return failure.code if isinstance(failure.code, int) else FAILED
        case click.exceptions.Exit():
            return failure.exit_code
        case click.UsageError():
            failure.show()
            return WRONG_USAGE
        case click.Abort() | KeyboardInterrupt():
            say("Stopped. What was kept before is safe.")
            return INTERRUPTED
        case BrokenPipeError():
            # whoever read our output has gone; nothing more can be said to them
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            return FAILED
    say(sentence(failure))
    return FAILED


def sentence(failure: BaseException) -> str:
    """What to tell the user; writes a crash file where the failure is not a known one."""
    if isinstance(failure, KNOWN):
        return str(failure)
    kept_at = _crash_file(failure)
    where = f"The details are in {kept_at}; please send that file." if kept_at else "The details could not be written."
    return (
        f"Something went wrong that should not have ({type(failure).__name__}). What was kept before is safe. {where}"
    )


def say(text: str) -> None:
    """One line of words on standard error."""
    click.echo(f"benchnotes: {text}", err=True)


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
