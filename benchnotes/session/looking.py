"""What a file is, before anybody listens to it."""

from __future__ import annotations

import os
from pathlib import Path

from benchnotes.capture.captions import read_captions
from benchnotes.capture.fingerprint import sha256
from benchnotes.capture.media import describe
from benchnotes.store.recordings import NewRecording

CAPTIONS = (".vtt", ".srt", ".webvtt")
"""Endings of caption files; everything else is sound or video."""

LookedAt = NewRecording


def look_at(path: Path) -> LookedAt:
    """Kind, length, start and fingerprint of a file. Raises CaptureError where nothing in it can be heard or read."""
    if path.suffix.lower() in CAPTIONS:
        return _captions(path)
    facts = describe(path)
    return NewRecording(
        path=path.absolute(),
        name=_shown(path),
        kind=facts.kind,
        duration_s=facts.duration_s,
        sha256=sha256(path),
        started_at=facts.started_at,
        started_from=facts.started_from,
    )


def _shown(path: Path) -> str:
    """The file's name as text: a name that is no UTF-8 can be opened, but neither kept nor printed."""
    return os.fsencode(path.name).decode("utf-8", errors="replace")


def _captions(path: Path) -> LookedAt:
    """A caption file does not tell when the talk was: the time of the file is that of a download."""
    cues = read_captions(path).cues
    return NewRecording(
        path=path.absolute(),
        name=_shown(path),
        kind="captions",
        duration_s=max(cue.end_s for cue in cues),
        sha256=sha256(path),
    )
