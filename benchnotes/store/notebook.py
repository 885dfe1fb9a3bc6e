"""Opens the notebook file: safe against power cuts, brought up to date, and refused where it is newer than us."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from sqlite_utils import Database

from benchnotes.store.errors import BrokenNotebookError, NewerNotebookError, in_sentences
from benchnotes.store.migrations import APPLICATION_ID, LATEST, STEPS

WAIT_S = 10.0
"""How long another program may hold the file before we give up."""


@dataclass(frozen=True, slots=True)
class Notebook:
    """An open notebook file. Use `reading` and `writing` around whatever touches `db`."""

    path: Path
    db: Database

    @contextmanager
    def reading(self) -> Iterator[Database]:
        """Errors of SQLite come out as sentences."""
        with in_sentences(self.path):
            yield self.db

    @contextmanager
    def writing(self) -> Iterator[Database]:
        """One transaction: all of it is on disk when the block ends, or none of it."""
        with in_sentences(self.path), at_once(self.db):
            yield self.db

    def close(self) -> None:
        self.db.close()


def open_notebook(path: Path, *, wait_s: float = WAIT_S) -> Notebook:
    """Opens `path`, making it (0600, its folder 0700) where it is missing. Raises StoreError."""
    with in_sentences(path):
        _make_private(path)
        if path.stat().st_size:
            _refuse_foreign(path, wait_s)
        # isolation_level None: only BEGIN starts a transaction, never the driver on its own
        db = Database(sqlite3.connect(path, timeout=wait_s, isolation_level=None))
        try:
            _make_safe(db)
            _bring_up(db)
        except BaseException:
            db.close()
            raise
        return Notebook(path, db)


@contextmanager
def at_once(db: Database) -> Iterator[None]:
    """A transaction that takes the write lock first, so that waiting happens here and never half-way."""
    db.conn.execute("BEGIN IMMEDIATE")
    try:
        yield
        db.conn.execute("COMMIT")
    except BaseException:
        # SQLite may have rolled back by itself (a full disk does that)
        if db.conn.in_transaction:
            db.conn.execute("ROLLBACK")
        raise


def _make_private(path: Path) -> None:
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    # SQLite gives its -wal and -shm files the mode of the main file
    os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))


def _refuse_foreign(path: Path, wait_s: float) -> None:
    """Looks at the version through a connection that cannot write, so that a refused file stays as it is."""
    connection = sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True, timeout=wait_s)
    try:
        version = connection.execute("PRAGMA user_version").fetchone()[0]
        owner = connection.execute("PRAGMA application_id").fetchone()[0]
        tables = connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
    finally:
        connection.close()
    if tables and owner != APPLICATION_ID:
        raise BrokenNotebookError(
            f"The file {path} belongs to another program. Nothing was changed. "
            "Move it away, or set BENCHNOTES_HOME to another folder."
        )
    if version > LATEST:
        raise NewerNotebookError(
            f"The notebook {path} was written by a newer Bench Notes (version {version} of the file; this program "
            f"knows versions up to {LATEST}). Nothing was changed. Install the newer Bench Notes, "
            "or set BENCHNOTES_HOME to another folder."
        )


def _make_safe(db: Database) -> None:
    db.conn.execute("PRAGMA journal_mode = WAL")
    # FULL, not NORMAL: in WAL mode NORMAL may lose the last commits in a power cut (sqlite.org/pragma.html)
    db.conn.execute("PRAGMA synchronous = FULL")
    db.conn.execute("PRAGMA foreign_keys = ON")


def _bring_up(db: Database) -> None:
    """Steps not yet taken are taken in one transaction: two programs starting together do not meet half-way."""
    if db.conn.execute("PRAGMA user_version").fetchone()[0] == LATEST:
        return
    with at_once(db):
        STEPS.apply(db)
