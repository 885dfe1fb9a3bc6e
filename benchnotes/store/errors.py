"""What can go wrong with the notebook file: each error is a sentence that says what was kept and what to do."""

from __future__ import annotations

import errno
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

LOCKED = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}
DISK = {sqlite3.SQLITE_FULL, sqlite3.SQLITE_IOERR}
SHUT = {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_AUTH}
BROKEN = {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB}


class StoreError(Exception):
    """Something about the notebook file; the text is for the user."""


class NewerNotebookError(StoreError):
    """Written by a newer program than this one."""


class LockedNotebookError(StoreError):
    """Another program held the notebook longer than we wait."""


class FullDiskError(StoreError):
    """No room left for what was to be kept."""


class ShutNotebookError(StoreError):
    """The file or its folder may not be read or written."""


class BrokenNotebookError(StoreError):
    """The file is no notebook, or a damaged one."""


class BusyRecordingError(StoreError):
    """Another window is taking in the same recording."""


class AlreadyIssuedError(StoreError):
    """A bill that cannot be issued, or taken back, a second time."""


class BackupError(StoreError):
    """A backup that was not made."""


def sentence_for(error: sqlite3.Error, path: Path) -> StoreError:
    """The store's own error for what SQLite reported about `path`."""
    # the low byte is the primary result code (sqlite.org, rescode.html)
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
    if code in LOCKED:
        return LockedNotebookError(
            f"Another program is holding the notebook {path}. What was kept before is safe, "
            "the last step was not kept. Close the other program and try again."
        )
    if code in DISK:
        return full_disk(path)
    if code in SHUT:
        return ShutNotebookError(
            f"The notebook {path} cannot be opened for writing. Nothing was changed. "
            "Check who owns the file and its folder, or set BENCHNOTES_HOME to a folder of yours."
        )
    if code in BROKEN:
        return BrokenNotebookError(
            f"The file {path} is damaged or is no notebook ({error}). Nothing was changed. "
            "Put a backup in its place, or move the file away to begin a new notebook."
        )
    return BrokenNotebookError(f"The notebook {path} did not do as asked: {error}. The last step was not kept.")


def full_disk(path: Path) -> FullDiskError:
    """The error for a disk without room under `path`."""
    return FullDiskError(
        f"The disk that holds {path} is full or failing. Everything up to the last finished step is kept; "
        "what came after it is not. Make room, then run the same command again: it goes on from there."
    )


@contextmanager
def in_sentences(path: Path) -> Iterator[None]:
    """Turns whatever SQLite or the disk reports about `path` into one of the errors above."""
    try:
        yield
    except sqlite3.Error as error:
        raise sentence_for(error, path) from error
    except OSError as error:
        if error.errno in (errno.ENOSPC, errno.EDQUOT, errno.EIO):
            raise full_disk(path) from error
        raise ShutNotebookError(f"{path} cannot be used: {error.strerror}. Nothing was changed.") from error
