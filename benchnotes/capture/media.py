"""Sound of any sound or video file through PyAV: mono, 16 kHz, in windows, so that hours need little memory.

Files only: a playlist inside a file cannot make us open a network address.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from fractions import Fraction
from pathlib import Path
from typing import Any, Literal

import av
import numpy as np
from numpy.typing import NDArray

from benchnotes.capture.errors import MediaError
from benchnotes.capture.ogg import is_cut_off

RATE = 16_000
"""Samples a second, as the recognisers want them."""
GAP_S = 0.25
"""A hole in the time stamps longer than this is silence in the recording; shorter ones are rounding."""
SHORT_OF_S = 2.0
"""A file that ends this much before its header says is told to be cut off."""
OPEN_OPTIONS = {"protocol_whitelist": "file"}

Sound = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class MediaFacts:
    """What a file says of itself."""

    kind: Literal["sound", "video"]
    duration_s: float
    started_at: datetime | None
    started_from: Literal["container", "file", "unknown"]


@dataclass(frozen=True, slots=True)
class SoundWindow:
    """A stretch of sound: float32, mono, 16 kHz, -1 to 1. Windows of a file follow one another without a gap."""

    start_s: float
    samples: Sound
    warnings: tuple[str, ...] = ()
    """What could not be read, in sentences."""


def describe(path: Path) -> MediaFacts:
    """Kind, length and start of a file. Raises MediaError where there is no sound to be had."""
    with _opened(path) as container:
        stream = _sound_track(path, container)
        started_at, started_from = _start_of(path, container, stream)
        kind: Literal["sound", "video"] = "video" if _has_picture(container) else "sound"
        return MediaFacts(kind, _duration_s(container, stream), started_at, started_from)


def sound_windows(path: Path, *, window_s: float = 600.0, from_s: float = 0.0) -> Iterator[SoundWindow]:
    """The first sound track in windows of `window_s`, from `from_s` on. Raises MediaError where there is no sound.

    The last window carries the warnings: damaged pieces that were skipped, an end before the header's end.
    """
    with _opened(path) as container:
        stream = _sound_track(path, container)
        reading = _Reading(path, container, stream)
        ready: list[Sound] = []
        length, start_s, wanted = 0, from_s, int(window_s * RATE)
        for piece in reading.pieces(from_s):
            ready.append(piece)
            length += len(piece)
            while length > wanted:
                whole = np.concatenate(ready)
                yield SoundWindow(start_s, whole[:wanted])
                ready, length, start_s = [whole[wanted:]], length - wanted, start_s + window_s
        if not length and from_s <= 0:
            raise MediaError(
                f"{path.name} has a sound track of no length. Nothing was taken in; record or copy it again."
            )
        if length:
            yield SoundWindow(start_s, np.concatenate(ready), reading.warnings(start_s + length / RATE))


class _Reading:
    """Decodes one track in order and remembers what was wrong with it."""

    def __init__(self, path: Path, container: Any, stream: Any) -> None:
        self._path, self._container, self._stream = path, container, stream
        self._origin_s = (container.start_time or 0) / av.time_base
        self._damaged, self._missing_s = 0, 0.0
        self._cut_off = False

    def pieces(self, from_s: float) -> Iterator[Sound]:
        """Sound from `from_s` on; silence where the time stamps leave a hole."""
        if from_s > 2.0:
            self._container.seek(int((from_s - 2.0 + self._origin_s) * av.time_base))
        resampler = av.AudioResampler(format="flt", layout="mono", rate=RATE)
        at: float | None = None
        for frame in self._frames():
            time_s = None if frame.time is None else frame.time - self._origin_s
            at = (time_s or 0.0) if at is None else at
            if time_s is not None and time_s - at > GAP_S:
                yield from _after(np.zeros(round((time_s - at) * RATE), np.float32), at, from_s)
                self._missing_s += time_s - max(at, min(time_s, from_s))
                at = time_s
            for piece in resampler.resample(frame):
                samples = piece.to_ndarray().reshape(-1).astype(np.float32, copy=False)
                yield from _after(samples, at, from_s)
                at += len(samples) / RATE
        for piece in resampler.resample(None) if at is not None else ():
            yield piece.to_ndarray().reshape(-1).astype(np.float32, copy=False)

    def warnings(self, end_s: float) -> tuple[str, ...]:
        said = []
        if self._damaged:
            were = (
                "1 damaged piece of sound was"
                if self._damaged == 1
                else f"{self._damaged} damaged pieces of sound were"
            )
            said.append(f"{self._path.name}: {were} skipped; the rest was read.")
        if self._missing_s:
            said.append(f"{self._path.name}: {self._missing_s:.1f} s hold no sound data; they were taken as silence.")
        expected_s = _duration_s(self._container, self._stream, scan=False)
        if self._cut_off or end_s < expected_s - SHORT_OF_S:
            said.append(
                f"{self._path.name} is cut off: {end_s:.0f} s of sound were read, where it should hold "
                f"{max(expected_s, end_s):.0f} s. Copy it again from the camera or recorder if the rest is wanted."
            )
        elif is_cut_off(self._path):
            said.append(
                f"{self._path.name} ends abruptly after {end_s:.0f} s: the recorder never closed it. All that is in it "
                "was read; copy it again if there should be more."
            )
        return tuple(said)

    def _frames(self) -> Iterator[Any]:
        packets = self._container.demux(self._stream)
        while True:
            try:
                packet = next(packets)
            except StopIteration:
                return
            except av.error.FFmpegError:
                self._cut_off = True
                return
            try:
                frames = packet.decode()
            except av.error.FFmpegError:
                self._damaged += 1
                continue
            yield from frames


def _after(samples: Sound, at_s: float, from_s: float) -> Iterator[Sound]:
    skip = round((from_s - at_s) * RATE)
    if skip < len(samples):
        yield samples[max(0, skip) :]


def _opened(path: Path) -> Any:
    if path.is_dir():
        raise MediaError(f"{path.name} is a folder. Name the files in it.")
    try:
        with path.open("rb") as file:
            head = file.read(4096)
    except OSError as error:
        raise MediaError(
            f"{path.name} cannot be opened: {error.strerror}. Check its name and who may read it."
        ) from None
    if not head:
        raise MediaError(
            f"{path.name} is empty (0 bytes). Nothing was taken in; copy it again from where it was recorded."
        )
    try:
        return av.open(str(path.resolve()), options=OPEN_OPTIONS, metadata_errors="replace")
    except (av.error.FFmpegError, OSError, ValueError):
        raise MediaError(f"{path.name} {_what_it_is(head)}") from None


def _what_it_is(head: bytes) -> str:
    if head.lstrip().startswith(b"#EXTM3U"):
        return "is a playlist, not a recording. Give the sound or video files that it names instead."
    if b"\0" not in head and _is_text(head):
        return "is a text file, not sound or video. Captions are read when they are called .vtt or .srt."
    if head[4:8] == b"ftyp":
        return (
            "was cut off before the recorder wrote its index, so nothing in it can be read. "
            "Copy it again from the camera; if that is all there is, a repair tool for MP4 may save it."
        )
    return "is not sound or video that can be read, or it is damaged. Nothing was taken in; try the original file."


def _is_text(head: bytes) -> bool:
    try:
        head[:4000].decode("utf-8")
    except UnicodeDecodeError as error:
        return error.start > len(head[:4000]) - 4
    return True


def _sound_track(path: Path, container: Any) -> Any:
    if container.streams.audio:
        return container.streams.audio[0]
    if _has_picture(container):
        raise MediaError(f"{path.name} is a video without a sound track, so there is nothing to listen to.")
    with path.open("rb") as file:
        raise MediaError(f"{path.name} {_what_it_is(file.read(4096))}")


def _has_picture(container: Any) -> bool:
    """A moving picture; the cover of a song is none."""
    return any(not stream.disposition & stream.disposition.attached_pic for stream in container.streams.video)


def _duration_s(container: Any, stream: Any, *, scan: bool = True) -> float:
    """As the header says; where it says nothing, by looking through the packets (scan)."""
    if stream.duration and stream.time_base:
        return float(stream.duration * stream.time_base)
    if container.duration:
        return float(Fraction(container.duration, av.time_base))
    return _scanned_s(container, stream) if scan else 0.0


def _scanned_s(container: Any, stream: Any) -> float:
    end = 0.0
    try:
        for packet in container.demux(stream):
            if packet.pts is not None:
                end = max(end, float((packet.pts + (packet.duration or 0)) * packet.time_base))
    except av.error.FFmpegError:
        pass
    return end


def _start_of(
    path: Path, container: Any, stream: Any
) -> tuple[datetime | None, Literal["container", "file", "unknown"]]:
    tags = {**stream.metadata, **container.metadata}
    # Apple's tag first: it keeps the zone in which the film was shot; creation_time is in UTC.
    for key in ("com.apple.quicktime.creationdate", "creation_time", "DATE_RECORDED", "date"):
        moment = _moment(tags.get(key, ""))
        if moment is not None:
            return moment, "container"
    try:
        return datetime.fromtimestamp(path.stat().st_mtime).astimezone(), "file"
    except (OSError, ValueError, OverflowError):
        return None, "unknown"


def _moment(text: str) -> datetime | None:
    """A full date and time; clocks that were never set say 1904 or 1970 and do not count."""
    if ":" not in text:
        return None
    try:
        moment = datetime.fromisoformat(text.strip())
    except ValueError:
        return None
    if moment.year < 1990:
        return None
    return moment if moment.tzinfo else moment.astimezone()
