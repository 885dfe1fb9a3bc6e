"""`read --json`: the record of each file on standard output or in a folder. One bad file stops no other."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from pathlib import Path

import click

from benchnotes.commands.progress import shown_progress
from benchnotes.commands.telling import FAILED, say
from benchnotes.exports.job_json import job_text
from benchnotes.session.errors import FileThereError
from benchnotes.session.failing import sentence
from benchnotes.session.one_off import OneOff
from benchnotes.session.saving import be_writable, save
from benchnotes.session.settings import read_settings
from benchnotes.session.workshop import find_workshop


def read_to_json(
    files: Sequence[Path], *, currency: str | None, trade: str | None, out: Path | None, overwrite: bool
) -> int:
    """Reads every file by itself; the exit code: 1 where one could not be read."""
    if out is not None:
        _refuse_same_names(files, out)
        be_writable(out)
    workshop = find_workshop()
    reader = OneOff(workshop, read_settings(workshop.settings), currency, trade)
    failed = 0
    with shown_progress() as tell:
        for path in files:
            target = None if out is None else out / f"{path.stem}.json"
            try:
                _refuse_writing_over(target, overwrite)
                text = job_text(reader.read(path, tell).document())
                _give(text, target)
            except Exception as failure:
                if isinstance(failure, BrokenPipeError):
                    raise
                say(sentence(failure))
                failed = FAILED
    return failed


def _give(text: str, target: Path | None) -> None:
    if target is None:
        # bytes: JSON is UTF-8 whatever the terminal's encoding
        click.echo(text.encode("utf-8"), nl=False)
    else:
        save(target, text.encode("utf-8"))


def _refuse_same_names(files: Sequence[Path], out: Path) -> None:
    twice = [stem for stem, count in Counter(path.stem for path in files).items() if count > 1]
    if twice:
        raise click.UsageError(f"Two of the files would both become {out / twice[0]}.json. Give them one at a time.")


def _refuse_writing_over(target: Path | None, overwrite: bool) -> None:
    """Before listening, not after: an hour of listening for nothing would be a poor joke."""
    if target is not None and target.exists() and not overwrite:
        raise FileThereError(
            f"{target} is there already and was left as it is. Name another folder, or add --overwrite."
        )
