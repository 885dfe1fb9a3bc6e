"""The files that leave for one job: each made if it can be, else a sentence that says what is missing."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from benchnotes.exports.captions import film_captions
from benchnotes.exports.job_json import job_text
from benchnotes.exports.parts_list import parts_csv
from benchnotes.session.job import ReadJob
from benchnotes.session.saving import save_all


@dataclass(frozen=True, slots=True)
class LeftOut:
    """An output that cannot be written yet."""

    why: str
    """In sentences, with what would help."""


@dataclass(frozen=True, slots=True)
class Written:
    """What was written, and what was not."""

    paths: tuple[Path, ...]
    left_out: tuple[str, ...] = ()
    """One line each: the output's name, and why."""


Files = Mapping[str, bytes]
"""File name -> content."""


def _captions(ending: str) -> Callable[[ReadJob], Files | LeftOut]:
    def made(job: ReadJob) -> Files | LeftOut:
        files = film_captions(job.record, job.facts.heard)
        mine = {name: content for name, content in files.items() if name.endswith(ending)}
        return mine or LeftOut("nothing was heard in this job yet. Take in a recording first.")

    return made


OUTPUTS: Final[dict[str, Callable[[ReadJob], Files | LeftOut]]] = {
    "record.json": lambda job: {"record.json": job_text(job.document()).encode("utf-8")},
    "parts.csv": lambda job: {"parts.csv": parts_csv(job.record)},
    "film.vtt": _captions(".vtt"),
    "film.srt": _captions(".srt"),
}
"""What `--only` can name, in the order in which they are written."""


def save_outputs(job: ReadJob, folder: Path, *, only: Sequence[str] = (), overwrite: bool) -> Written:
    """Writes what can be written into `folder`, of `only` or of everything. Raises FileThereError, NotSavedError."""
    files: dict[Path, bytes] = {}
    left_out = []
    for name in only or OUTPUTS:
        made = OUTPUTS[name](job)
        if isinstance(made, LeftOut):
            left_out.append(f"{name}: {made.why}")
        else:
            files |= {folder / file: content for file, content in made.items()}
    save_all(files, overwrite=overwrite)
    return Written(tuple(files), tuple(left_out))
