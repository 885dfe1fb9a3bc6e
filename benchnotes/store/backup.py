"""A consistent copy of the notebook while the program runs."""

from __future__ import annotations

import os
import sqlite3
import tempfile
from contextlib import closing
from pathlib import Path

from benchnotes.store.errors import BackupError, FullDiskError
from benchnotes.store.notebook import Notebook


def back_up(notebook: Notebook, target: Path, *, overwrite: bool = False) -> None:
    """Copies the notebook into `target` (0600), written beside it first. Raises BackupError, FullDiskError."""
    if target.exists() and not overwrite:
        raise BackupError(f"{target} is there already and was left as it is. Name another file, or add --overwrite.")
    if target.exists() and target.samefile(notebook.path):
        raise BackupError(f"{target} is the notebook itself. Nothing was changed. Name another file.")
    beside = _beside(target)
    try:
        with notebook.reading() as db:
            _copy(db.conn, beside)
        beside.replace(target)
    # the notebook itself is only read: a full disk is the target's
    except (OSError, FullDiskError) as error:
        raise FullDiskError(
            f"No backup was made: the disk that holds {target} is full or failing. The notebook is unchanged. "
            "Make room, or name a file on another disk."
        ) from error
    finally:
        beside.unlink(missing_ok=True)


def _beside(target: Path) -> Path:
    try:
        number, name = tempfile.mkstemp(prefix=f".{target.name}.", dir=target.parent)
    except OSError as error:
        raise BackupError(
            f"No backup was made: {target.parent} cannot be written to ({error.strerror}). Name another folder."
        ) from error
    os.close(number)
    return Path(name)


def _copy(source: sqlite3.Connection, beside: Path) -> None:
    with closing(sqlite3.connect(beside)) as copy:
        source.backup(copy)
        # the copy inherits WAL mode; as a backup it should be one file
        copy.execute("PRAGMA journal_mode = DELETE")
        verdict = copy.execute("PRAGMA quick_check").fetchone()[0]
    if verdict != "ok":
        raise BackupError(f"No backup was made: the copy did not prove sound ({verdict}). The notebook is unchanged.")
    with beside.open("rb") as written:
        os.fsync(written.fileno())
