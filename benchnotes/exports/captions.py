"""What was said as captions for the film: WebVTT (W3C), SubRip, and WebVTT chapters at findings and tests.

Text is data: nothing that was said can become a cue time, a tag or a position code.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from benchnotes.exports.plain_words import in_words, one_line
from benchnotes.record.entries import JobRecord
from benchnotes.record.heard import Recording, Unheard, Utterance, Word
from benchnotes.record.job import Heard

LINE_LETTERS: Final = 42
"""Letters in a line of a caption; with two lines a cue common practice of broadcasters, no standard."""
LINES: Final = 2
SHORTEST_MS: Final = 200
NOT_MADE_OUT: Final = "[speech not made out]"
SAME_CHAPTER_S: Final = 2.0
"""Findings told within this much of one another share a chapter."""

# SubRip has no escapes, and players take <...> for tags, {...} for positions, \N for a new line: wide forms are none
_SUBRIP = str.maketrans({"<": "＜", ">": "＞", "{": "｛", "}": "｝", "\\": "＼"})
# WebVTT, "WebVTT cue text span": & and < must be escaped; > is, so that no "-->" is left
_WEBVTT = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})


@dataclass(frozen=True, slots=True)
class Caption:
    """What is shown from one millisecond to another."""

    start_ms: int
    end_ms: int
    lines: tuple[str, ...]


def film_captions(record: JobRecord, heard: Heard) -> dict[str, bytes]:
    """File name -> content, for every recording that is a film (for all, where none is); empty where nobody spoke.

    One film: film.vtt, film.srt, film-chapters.vtt. Several: film-2.vtt and so on, by their number on the time line.
    """
    films = [each for each in heard.recordings if each.kind == "video"] or list(heard.recordings)
    files: dict[str, bytes] = {}
    for film in films:
        stem = "film" if len(films) == 1 else f"film-{film.number}"
        shown = captions_of(film, heard)
        if shown:
            files[f"{stem}.vtt"] = webvtt(shown)
            files[f"{stem}.srt"] = subrip(shown)
        chapters = chapters_of(film, record)
        if chapters:
            files[f"{stem}-chapters.vtt"] = webvtt(chapters)
    return files


def captions_of(film: Recording, heard: Heard) -> tuple[Caption, ...]:
    """All that was said in a recording, and where speech was not made out, in order of time."""
    said = (cue for each in heard.utterances if each.recording == film.number for cue in _cut(each))
    gaps = (_gap(gap) for gap in heard.unheard if gap.recording == film.number)
    return tuple(sorted((*said, *gaps), key=lambda cue: (cue.start_ms, cue.end_ms)))


def chapters_of(film: Recording, record: JobRecord) -> tuple[Caption, ...]:
    """A chapter from each finding or test to the next; none overlap."""
    titles: list[tuple[float, list[str]]] = []
    for start_s, title in sorted(_told_in(film.number, record)):
        if titles and start_s - titles[-1][0] < SAME_CHAPTER_S:
            if title not in titles[-1][1]:
                titles[-1][1].append(title)
        else:
            titles.append((start_s, [title]))
    if not titles:
        return ()
    ends = [start for start, _ in titles[1:]] + [max(film.duration_s, titles[-1][0] + SAME_CHAPTER_S)]
    return tuple(_cue(start, end, ("; ".join(told),)) for (start, told), end in zip(titles, ends, strict=True))


def webvtt(captions: Iterable[Caption]) -> bytes:
    """WebVTT, W3C Candidate Recommendation of 4 April 2019: UTF-8, hours always shown."""
    blocks = ["WEBVTT\n"]
    for cue in captions:
        text = "\n".join(line.translate(_WEBVTT) for line in cue.lines)
        blocks.append(f"{_clock(cue.start_ms, '.')} --> {_clock(cue.end_ms, '.')}\n{text}\n")
    return "\n".join(blocks).encode("utf-8")


def subrip(captions: Iterable[Caption]) -> bytes:
    """SubRip: no standard, common practice; cues numbered from 1."""
    blocks = []
    for number, cue in enumerate(captions, 1):
        text = "\n".join(line.translate(_SUBRIP) for line in cue.lines)
        blocks.append(f"{number}\n{_clock(cue.start_ms, ',')} --> {_clock(cue.end_ms, ',')}\n{text}\n")
    return "\n".join(blocks).encode("utf-8")


def _told_in(number: int, record: JobRecord) -> Iterator[tuple[float, str]]:
    for fault in record.faults:
        for said in fault.evidence[:1]:
            if said.recording == number:
                yield said.start_s, one_line(f"Found: {fault.part}, {in_words(fault.kind)}")
    for trial in record.tests:
        of = f" of {trial.of}" if trial.of else ""
        for said in trial.evidence[:1]:
            if said.recording == number:
                yield said.start_s, one_line(f"Test: {in_words(trial.what)}{of}, {in_words(trial.result)}")


def _cut(said: Utterance) -> Iterator[Caption]:
    """A breath of talk in captions of at most two lines, each shown from its first word to the next one's first."""
    groups = list(_groups(said.words))
    if not groups:
        return
    starts = [said.start_s, *(group[0][0].start_s for group in groups[1:])]
    for (start, end), lines in zip(pairwise([*starts, said.end_s]), groups, strict=True):
        yield _cue(start, end, tuple(" ".join(one_line(word.text) for word in line) for line in lines))


def _groups(words: Iterable[Word]) -> Iterator[list[list[Word]]]:
    lines: list[list[Word]] = []
    room = 0
    for word in words:
        letters = len(one_line(word.text))
        if not letters:
            continue
        if lines and letters < room:
            lines[-1].append(word)
            room -= letters + 1
            continue
        if len(lines) == LINES:
            yield lines
            lines = []
        lines.append([word])
        room = LINE_LETTERS - letters
    if lines:
        yield lines


def _gap(gap: Unheard) -> Caption:
    return _cue(gap.start_s, gap.end_s, (NOT_MADE_OUT,))


def _cue(start_s: float, end_s: float, lines: tuple[str, ...]) -> Caption:
    start_ms = max(0, round(start_s * 1000))
    return Caption(start_ms, max(round(end_s * 1000), start_ms + SHORTEST_MS), lines)


def _clock(ms: int, point: str) -> str:
    return f"{ms // 3_600_000:02}:{ms // 60_000 % 60:02}:{ms // 1000 % 60:02}{point}{ms % 1000:03}"
