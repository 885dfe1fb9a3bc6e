"""How far the facts of each job reach: two equal states of a job are the same facts."""

from __future__ import annotations

from collections.abc import Mapping

from benchnotes.store.notebook import Notebook


def job_states(notebook: Notebook) -> Mapping[int, str]:
    """Job number -> the last fact of each kind. Facts are only added or erased, so their last numbers and their counts
    tell."""
    sql = """
        SELECT j.number,
            coalesce((SELECT max(f.id) || '/' || count(*) FROM job_facts f WHERE f.job = j.number), '') || ' ' ||
            coalesce((SELECT max(e.id) || '/' || count(*) FROM edits e WHERE e.job = j.number), '') || ' ' ||
            coalesce((SELECT max(r.id) || '/' || count(*) FROM recordings r WHERE r.job = j.number), '') || ' ' ||
            coalesce((SELECT max(p.id) || '/' || count(*) FROM progress p JOIN recordings r ON r.id = p.recording
                      WHERE r.job = j.number), '') AS state
        FROM jobs j
    """
    with notebook.reading() as db:
        return {row["number"]: row["state"] for row in db.query(sql)}
