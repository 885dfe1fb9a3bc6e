"""Captions (WebVTT, SRT) become cues: plain text with its time, in order, without overlap.

pysubs2 reads the times and lines; what is mended on the way is told in a warning, never done in silence.
"""

from __future__ import annotations

import codecs
import html
import re
from dataclasses import dataclass, replace
from itertools import pairwise
from pathlib import Path

import pysubs2
from pysubs2.exceptions import Pysubs2Error

from benchnotes.capture.errors import CaptionError

MARKUP = re.compile(r"</?[A-Za-z][^<>]*>|</?\d[\d:.]*>|\{\\[^{}]*\}")
"""Tags (`<i>`, `<v Ann>`), inline times (`<00:01.000>`) and position codes (`{\\an8}`). A bare "<" is text."""
TOUCHING_S = 0.06
"""Rolling captions follow one another within 10 ms; two frames of a slow film are the limit here."""
SHORTEST_S = 0.3
"""A cue whose own times say nothing gets this much per word, or what is left before the next cue."""


@dataclass(frozen=True, slots=True)
class Cue:
    """One caption."""

    start_s: float
    end_s: float
    text: str


@dataclass(frozen=True, slots=True)
class Captions:
    """The cues of one file in order of time, and what had to be mended to get them so."""

    cues: tuple[Cue, ...]
    warnings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Lines:
    """A cue as the file has it: its lines apart, its times unmended."""

    start_s: float
    end_s: float
    lines: tuple[str, ...]


def read_captions(path: Path) -> Captions:
    """Every caption of a WebVTT or SRT file. Raises CaptionError where there is none to be read."""
    text, warnings = _text_of(path)
    raw = _raw_cues(path, text)
    kept, repeated = _without_rolling(raw)
    if repeated:
        warnings.append(f"{path.name}: {repeated} lines that rolling captions show again were kept once.")
    cues, mended = _in_order([Cue(c.start_s, c.end_s, " ".join(c.lines)) for c in kept])
    if not cues:
        raise CaptionError(f"{path.name} holds no captions, only empty cues. Choose the file with the words in it.")
    return Captions(tuple(cues), (*warnings, *(f"{path.name}: {what}" for what in mended)))


def _text_of(path: Path) -> tuple[str, list[str]]:
    try:
        data = path.read_bytes()
    except OSError as error:
        raise CaptionError(
            f"{path.name} cannot be opened: {error.strerror}. Check its name and who may read it."
        ) from None
    if not data.strip():
        raise CaptionError(f"{path.name} is empty. Nothing was taken in; fetch the file again from where it came.")
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return data.decode("utf-16", errors="replace"), []
    try:
        return data.decode("utf-8-sig"), []
    except UnicodeDecodeError:
        if b"\0" in data:
            raise CaptionError(
                f"{path.name} is not a caption file: it holds no text. Choose a .vtt or .srt file."
            ) from None
        return data.decode("cp1252", errors="replace"), [f"{path.name} is not UTF-8; it was read as Windows-1252."]


def _raw_cues(path: Path, text: str) -> list[_Lines]:
    lines = text.replace("\r\n", "\n").replace("\r", "\n")
    form = "vtt" if lines.lstrip().startswith("WEBVTT") else "srt"
    if form == "vtt":
        lines = _only_cue_blocks(lines)
    try:
        events = pysubs2.SSAFile.from_string(lines, format_=form, keep_html_tags=True, keep_ssa_tags=True)
    except (Pysubs2Error, ValueError, OverflowError):
        events = pysubs2.SSAFile()
    cues = [_Lines(event.start / 1000, event.end / 1000, _plain_lines(event.text)) for event in events]
    if not cues:
        raise CaptionError(
            f"{path.name} is not a caption file: no time lines (00:01.000 --> 00:04.000) were found in it."
        )
    return [cue for cue in cues if cue.lines]


def _only_cue_blocks(text: str) -> str:
    """A WebVTT file without its head, notes, styles and cue names: pysubs2 would read them into the cue before."""
    blocks = []
    for block in re.split(r"\n[ \t]*\n", text):
        before, arrow, after = block.partition("-->")
        if arrow and not before.lstrip().startswith("NOTE"):
            start = before.rsplit("\n", 1)[-1]
            blocks.append(f"{start}{arrow}{after}")
    return "\n\n".join(["WEBVTT", *blocks, ""])


def _plain_lines(text: str) -> tuple[str, ...]:
    lines = text.replace("\\N", "\n").split("\n")
    plain = (" ".join(html.unescape(MARKUP.sub("", line)).split()) for line in lines)
    return tuple(line for line in plain if line)


def _without_rolling(raw: list[_Lines]) -> tuple[list[_Lines], int]:
    """Lines that roll up and are shown again are kept where they first stood; a real repeat after a pause stays."""
    if not _rolls(raw):
        return raw, 0
    kept: list[_Lines] = []
    shown: tuple[str, ...] = ()
    shown_until, repeated = -1.0, 0
    for cue in raw:
        again = _rolled_up(shown, cue.lines) if abs(cue.start_s - shown_until) <= TOUCHING_S else 0
        repeated += again
        if again < len(cue.lines):
            kept.append(replace(cue, lines=cue.lines[again:]))
        elif kept:
            kept[-1] = replace(kept[-1], end_s=max(kept[-1].end_s, cue.end_s))
        shown, shown_until = cue.lines, cue.end_s
    return kept, repeated


def _rolls(raw: list[_Lines]) -> bool:
    """Some cue opens with the line that the cue before ended with, and then goes on."""
    return any(
        len(b.lines) > 1 and a.lines[-1] == b.lines[0] and b.start_s - a.end_s <= TOUCHING_S for a, b in pairwise(raw)
    )


def _rolled_up(before: tuple[str, ...], now: tuple[str, ...]) -> int:
    """How many lines at the head of `now` ended `before`."""
    for count in range(min(len(before), len(now)), 0, -1):
        if before[-count:] == now[:count]:
            return count
    return 0


def _in_order(cues: list[Cue]) -> tuple[list[Cue], list[str]]:
    """Cues by time, none backwards, none overlapping, none lost; and what was mended, in words."""
    mended = []
    if any(later.start_s < earlier.start_s for earlier, later in pairwise(cues)):
        cues = sorted(cues, key=lambda cue: cue.start_s)
        mended.append("captions out of order were put in order of their start.")
    backwards = [i for i, cue in enumerate(cues) if cue.end_s <= cue.start_s]
    for i in backwards:
        cues[i] = replace(cues[i], end_s=cues[i].start_s + SHORTEST_S * len(cues[i].text.split()))
    if backwards:
        mended.append(
            f"Captions that end before they start: {len(backwards)}. Their end was estimated from their words."
        )
    overlaps = _part_overlaps(cues)
    if overlaps:
        mended.append(f"Captions that overlap the next: {overlaps}. Each was ended where the next begins.")
    return cues, mended


def _part_overlaps(cues: list[Cue]) -> int:
    """Ends each cue where the next begins, in place; two that begin together share the time. Returns how many."""
    count = 0
    for i in range(len(cues) - 1):
        this, following = cues[i], cues[i + 1]
        if this.end_s <= following.start_s:
            continue
        count += 1
        if following.start_s <= this.start_s:
            middle = (this.start_s + max(this.end_s, following.end_s)) / 2
            following = replace(following, start_s=middle, end_s=max(following.end_s, middle + SHORTEST_S))
        cues[i], cues[i + 1] = replace(this, end_s=following.start_s), following
    return count
