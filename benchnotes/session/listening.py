"""A file becomes stretches of talk: captions at once, sound window by window through the recogniser."""

from __future__ import annotations

from collections.abc import Iterator

from benchnotes.capture.captions import read_captions
from benchnotes.capture.media import sound_windows
from benchnotes.record.heard import captioned
from benchnotes.session.recogniser import Recogniser, open_recogniser
from benchnotes.session.settings import Settings
from benchnotes.session.workshop import Workshop
from benchnotes.speech.hearing import hear
from benchnotes.store.recordings import NewRecording
from benchnotes.store.talk import Stretch


class Ears:
    """Listens to any number of files; the recogniser is opened once, when the first sound needs it."""

    def __init__(self, workshop: Workshop, settings: Settings, trades: tuple[str, ...]) -> None:
        self._workshop = workshop
        self._settings = settings
        self._trades = trades
        self._recogniser: Recogniser | None = None

    def open(self) -> Recogniser:
        """Opens the recogniser. Raises SpeechError where its weights are not here or not right."""
        if self._recogniser is None:
            self._recogniser = open_recogniser(self._workshop, self._settings, self._trades)
        return self._recogniser

    def listen(self, new: NewRecording, *, from_s: float) -> Iterator[Stretch]:
        """What is said from `from_s` on, stretch by stretch, each beginning where the last ended."""
        return _captions(new, from_s) if new.kind == "captions" else self._sound(new, from_s)

    def _sound(self, new: NewRecording, from_s: float) -> Iterator[Stretch]:
        recogniser = self.open()
        windows = sound_windows(new.path, from_s=from_s)
        at = from_s
        for heard in hear(windows, recording=1, transcriber=recogniser.transcriber, bias=recogniser.bias):
            yield Stretch(
                from_s=at,
                until_s=heard.until_s,
                utterances=heard.utterances,
                unheard=heard.unheard,
                warnings=heard.warnings,
            )
            at = heard.until_s


def _captions(new: NewRecording, from_s: float) -> Iterator[Stretch]:
    captions = read_captions(new.path)
    said = tuple(captioned(1, cue.start_s, cue.end_s, cue.text) for cue in captions.cues)
    if from_s < new.duration_s:
        yield Stretch(from_s=from_s, until_s=new.duration_s, utterances=said, warnings=captions.warnings)
