"""What was heard in a recording, kept stretch by stretch.

A stretch is on disk whole, with how far it reaches, or not at all.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from sqlite_utils import Database

from benchnotes.record.heard import Unheard, Utterance, Word
from benchnotes.store.errors import BusyRecordingError
from benchnotes.store.notebook import Notebook
from benchnotes.store.recordings import KeptRecording


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A piece of a recording that has been listened to. The `recording` numbers inside it do not count here."""

    from_s: float
    until_s: float
    utterances: Sequence[Utterance]
    unheard: Sequence[Unheard] = ()
    warnings: Sequence[str] = ()
    finished: bool = False
    """Nothing comes after it."""


def keep_stretch(notebook: Notebook, recording: int, stretch: Stretch, *, at: datetime) -> None:
    """Keeps a stretch that begins where the kept ones end. Raises BusyRecordingError where another run was faster."""
    with notebook.writing() as db:
        _refuse_second_reader(db, recording, stretch.from_s)
        db.table("utterances").insert_all(
            {
                "recording": recording,
                "start_s": said.start_s,
                "end_s": said.end_s,
                "text": said.text,
                "words": json.dumps([_packed(word) for word in said.words], ensure_ascii=False),
            }
            for said in stretch.utterances
        )
        db.table("unheard").insert_all(
            {"recording": recording, "start_s": gap.start_s, "end_s": gap.end_s} for gap in stretch.unheard
        )
        db.table("warnings").insert_all({"recording": recording, "text": text} for text in stretch.warnings)
        db.table("progress").insert(
            {
                "recording": recording,
                "until_s": stretch.until_s,
                "finished": int(stretch.finished),
                "at": at.isoformat(),
            }
        )


def utterances_in(notebook: Notebook, kept: KeptRecording, number: int) -> tuple[Utterance, ...]:
    """What was said in a recording, in time order, under its number on the job's time line."""
    with notebook.reading() as db:
        rows = db.table("utterances").rows_where("recording = ?", [kept.id], order_by="start_s, id")
        return tuple(
            Utterance(number, row["start_s"], row["end_s"], tuple(Word(*packed) for packed in json.loads(row["words"])))
            for row in rows
        )


def unheard_in(notebook: Notebook, kept: KeptRecording, number: int) -> tuple[Unheard, ...]:
    """Where somebody spoke and no word was read, in time order."""
    with notebook.reading() as db:
        rows = db.table("unheard").rows_where("recording = ?", [kept.id], order_by="start_s, id")
        return tuple(Unheard(number, row["start_s"], row["end_s"]) for row in rows)


def warnings_in(notebook: Notebook, kept: KeptRecording) -> tuple[str, ...]:
    """What went wrong while the recording was taken in, in sentences."""
    with notebook.reading() as db:
        return tuple(row["text"] for row in db.table("warnings").rows_where("recording = ?", [kept.id], order_by="id"))


def _refuse_second_reader(db: Database, recording: int, from_s: float) -> None:
    sql = "SELECT coalesce(max(until_s), 0), coalesce(max(finished), 0) FROM progress WHERE recording = ?"
    until_s, finished = db.execute(sql, [recording]).fetchone()
    if finished or abs(until_s - from_s) > 1e-6:
        raise BusyRecordingError(
            "Another window is taking in the same recording and is further along. What it has heard is kept; "
            "this run stopped. Wait for the other one, or close it and run the command again."
        )


def _packed(word: Word) -> list[object]:
    return [word.text, word.start_s, word.end_s, word.probability]
