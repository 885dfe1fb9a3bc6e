"""What stands around the words that an entry rests on, and where their sound lies."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from benchnotes.record.heard import Evidence, Recording, Utterance
from benchnotes.session.errors import SessionError
from benchnotes.session.time_line import in_time_order
from benchnotes.store.notebook import Notebook
from benchnotes.store.recordings import recordings_of


class NoSoundError(SessionError):
    """There is nothing to play."""


@dataclass(frozen=True, slots=True)
class Breath:
    """One utterance near an evidence: its words, each with whether the evidence rests on it."""

    start_s: float
    words: tuple[tuple[str, bool], ...]


@dataclass(frozen=True, slots=True)
class Around:
    """The words of an evidence between those before and after."""

    before: tuple[Breath, ...]
    said: tuple[Breath, ...]
    after: tuple[Breath, ...]


def around(evidence: Evidence, utterances: Sequence[Utterance], breaths: int) -> Around:
    """The utterances of an evidence, and so many before and after it in the same recording."""
    talk = [said for said in utterances if said.recording == evidence.recording]
    within = [at for at, said in enumerate(talk) if _meets(said.start_s, said.end_s, evidence)]
    # where nothing was made out, the talk before it ends and the talk after it begins there
    first = within[0] if within else sum(said.start_s < evidence.start_s for said in talk)
    last = within[-1] + 1 if within else first
    return Around(
        before=tuple(_breath(said, None) for said in talk[max(0, first - breaths) : first]),
        said=tuple(_breath(said, evidence) for said in talk[first:last]),
        after=tuple(_breath(said, None) for said in talk[last : last + breaths]),
    )


def files_of_job(notebook: Notebook, job: int) -> Mapping[int, Path]:
    """Number on the time line -> where the file lies."""
    return {n: kept.path for n, kept in enumerate(in_time_order(recordings_of(notebook, job)), 1)}


def sound_of(evidence: Evidence, recordings: Sequence[Recording], files: Mapping[int, Path]) -> Path:
    """The file with the sound of an evidence. Raises NoSoundError, in words, where there is none."""
    recording = next((r for r in recordings if r.number == evidence.recording), None)
    path = files.get(evidence.recording)
    if recording is None or path is None:
        raise NoSoundError("There is no recording of it any more, so nothing can be played.")
    if recording.kind == "captions":
        raise NoSoundError(f"{recording.name} holds captions, which have no sound. The words are all there is.")
    if not path.exists():
        raise NoSoundError(f"{recording.name} is no longer at {path.parent}. Put it back there to hear it.")
    return path


def _breath(said: Utterance, evidence: Evidence | None) -> Breath:
    words = tuple((w.text, evidence is not None and _meets(w.start_s, w.end_s, evidence)) for w in said.words)
    return Breath(said.start_s, words)


def _meets(start_s: float, end_s: float, evidence: Evidence) -> bool:
    """True where the stretches share time; a stretch of no length counts where it begins."""
    if start_s == end_s or evidence.start_s == evidence.end_s:
        return start_s <= evidence.end_s and evidence.start_s <= end_s
    return start_s < evidence.end_s and evidence.start_s < end_s
