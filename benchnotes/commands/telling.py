"""Every failure as words on standard error: known ones by their own sentence, unknown ones by a crash file and one."""

from __future__ import annotations

import os
import shutil
import sys
import textwrap

import click

from benchnotes.session.failing import sentence

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


def say(text: str) -> None:
    """Words on standard error: one line, or on a terminal as many as its width asks for."""
    line = f"benchnotes: {text}"
    if sys.stderr.isatty():
        line = textwrap.fill(line, shutil.get_terminal_size().columns, break_long_words=False, break_on_hyphens=False)
    click.echo(line, err=True)
