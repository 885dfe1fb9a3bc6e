"""Full text over everything that was ever said in the workshop."""

from __future__ import annotations

from dataclasses import dataclass

from benchnotes.store.notebook import Notebook


@dataclass(frozen=True, slots=True)
class Found:
    """One breath of talk in which the words occur."""

    job: int
    job_name: str
    recording: int
    """Id of the recording; its number follows from the job's time line."""
    start_s: float
    end_s: float
    text: str


def find_said(notebook: Notebook, words: str, *, at_most: int = 200) -> tuple[Found, ...]:
    """Where all of `words` were said (endings do not count; a phrase goes in double quotes), newest job first."""
    sql = """
        SELECT j.number AS job, j.name AS job_name, u.recording, u.start_s, u.end_s, u.text
        FROM utterances_fts f
        JOIN utterances u ON u.rowid = f.rowid
        JOIN recordings r ON r.id = u.recording
        JOIN jobs j ON j.number = r.job
        WHERE f.utterances_fts MATCH ?
        ORDER BY j.number DESC, r.id, u.start_s LIMIT ?
    """
    with notebook.reading() as db:
        # the query language of FTS5 has operators; quoting makes every word of the user's a plain word
        query = db.quote_fts(words)
        if not query:
            return ()
        return tuple(Found(**row) for row in db.query(sql, [query, at_most]))
