"""How a notebook file came to its present form: one function a step, never edited once released.

Every step sets `user_version` to its own number, so that the number of the last step is the version of the file.
"""

from __future__ import annotations

import sqlite_utils
from sqlite_utils import Database

STEPS = sqlite_utils.Migrations("benchnotes")

LATEST = 2
"""Version that this program writes, the number of the last step below."""

APPLICATION_ID = 0x42_4E_6F_74
""""BNot" in the file's header: tells a notebook from any other SQLite file."""

NEVER_REWRITTEN = ("recordings", "utterances", "unheard", "progress", "warnings", "job_facts", "edits")


JOBS = """
CREATE TABLE jobs (
    number INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    name_key TEXT NOT NULL UNIQUE,
    opened_at TEXT NOT NULL
);
CREATE TABLE job_facts (
    id INTEGER PRIMARY KEY,
    job INTEGER NOT NULL REFERENCES jobs(number),
    noted_at TEXT NOT NULL,
    field TEXT NOT NULL,
    value TEXT
);
CREATE INDEX job_facts_job ON job_facts(job);
CREATE TABLE edits (
    id INTEGER PRIMARY KEY,
    job INTEGER NOT NULL REFERENCES jobs(number),
    made_at TEXT NOT NULL,
    edit TEXT NOT NULL
);
CREATE INDEX edits_job ON edits(job);
"""
RECORDINGS = """
CREATE TABLE recordings (
    id INTEGER PRIMARY KEY,
    job INTEGER NOT NULL REFERENCES jobs(number),
    path TEXT NOT NULL,
    name TEXT NOT NULL,
    kind TEXT NOT NULL,
    duration_s REAL NOT NULL,
    sha256 TEXT NOT NULL,
    started_at TEXT,
    started_from TEXT NOT NULL,
    added_at TEXT NOT NULL,
    UNIQUE (job, sha256)
);
CREATE INDEX recordings_sha256 ON recordings(sha256);
"""
HEARD = """
CREATE TABLE utterances (
    id INTEGER PRIMARY KEY,
    recording INTEGER NOT NULL REFERENCES recordings(id),
    start_s REAL NOT NULL,
    end_s REAL NOT NULL,
    text TEXT NOT NULL,
    words TEXT NOT NULL
);
CREATE INDEX utterances_recording ON utterances(recording);
CREATE TABLE unheard (
    id INTEGER PRIMARY KEY,
    recording INTEGER NOT NULL REFERENCES recordings(id),
    start_s REAL NOT NULL,
    end_s REAL NOT NULL
);
CREATE INDEX unheard_recording ON unheard(recording);
CREATE TABLE progress (
    id INTEGER PRIMARY KEY,
    recording INTEGER NOT NULL REFERENCES recordings(id),
    until_s REAL NOT NULL,
    finished INTEGER NOT NULL,
    at TEXT NOT NULL
);
CREATE INDEX progress_recording ON progress(recording);
CREATE TABLE warnings (
    id INTEGER PRIMARY KEY,
    recording INTEGER NOT NULL REFERENCES recordings(id),
    text TEXT NOT NULL
);
CREATE INDEX warnings_recording ON warnings(recording);
"""


@STEPS(name="0001_facts")
def facts(db: Database) -> None:
    """Jobs, their recordings and what was heard in them; hand edits; search over all that was said."""
    for script in (JOBS, RECORDINGS, HEARD):
        db.executescript(script)
    db.table("utterances").enable_fts(["text"], tokenize="porter unicode61 remove_diacritics 2", create_triggers=True)
    for table in NEVER_REWRITTEN:
        # facts are added or, by an owner's erasure, deleted; nothing ever rewrites one
        db.execute(
            f"CREATE TRIGGER {table}_kept BEFORE UPDATE ON {table} "
            "BEGIN SELECT RAISE(ABORT, 'facts are never rewritten'); END"
        )
    db.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    db.execute("PRAGMA user_version = 1")


ISSUED = """
CREATE TABLE issued (
    number INTEGER PRIMARY KEY,
    shown TEXT NOT NULL UNIQUE,
    job INTEGER NOT NULL REFERENCES jobs(number),
    issued_on TEXT NOT NULL,
    issued_at TEXT NOT NULL,
    takes_back INTEGER UNIQUE REFERENCES issued(number),
    frozen TEXT NOT NULL
);
CREATE INDEX issued_job ON issued(job);
CREATE TRIGGER issued_kept BEFORE UPDATE ON issued
    BEGIN SELECT RAISE(ABORT, 'an issued bill is never rewritten'); END;
CREATE TRIGGER issued_stays BEFORE DELETE ON issued
    BEGIN SELECT RAISE(ABORT, 'an issued bill is never taken away'); END;
"""


@STEPS(name="0002_issued")
def issued(db: Database) -> None:
    """Bills and credit notes: one row of numbers without gaps, each frozen as it left."""
    db.executescript(ISSUED)
    db.execute("PRAGMA user_version = 2")
