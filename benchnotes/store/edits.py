"""Hand edits of a job, one JSON event each. Append-only: an edit is taken back by a later one."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from benchnotes.store.notebook import Notebook


@dataclass(frozen=True, slots=True)
class KeptEdit:
    """One thing that a person changed or closed by hand."""

    id: int
    made_at: datetime
    edit: Mapping[str, Any]


def add_edit(notebook: Notebook, job: int, edit: Mapping[str, Any], *, at: datetime) -> None:
    """Adds one edit; `edit` is anything that JSON can hold."""
    with notebook.writing() as db:
        db.table("edits").insert({"job": job, "made_at": at.isoformat(), "edit": json.dumps(edit, ensure_ascii=False)})


def edits_of(notebook: Notebook, job: int) -> tuple[KeptEdit, ...]:
    """The edits of a job in the order in which they were made."""
    with notebook.reading() as db:
        rows = db.table("edits").rows_where("job = ?", [job], order_by="id")
        return tuple(
            KeptEdit(row["id"], datetime.fromisoformat(row["made_at"]), json.loads(row["edit"])) for row in rows
        )
