"""Plays sound in a process of its own (`python -m`): a sound system that prints or hangs never reaches the screen."""

from __future__ import annotations

import threading

from benchnotes.capture.loudspeaker import play, seconds_of
from benchnotes.session.back_room import Failed, Told, serve
from benchnotes.session.failing import sentence
from benchnotes.session.playing_room import Play, Played, Stop


class Player:
    """Plays one thing at a time, the last that was asked for."""

    def __init__(self) -> None:
        self._thread: threading.Thread | None = None
        self._stop = threading.Event()

    def work(self, asked: Play | Stop, tell: Told) -> None:
        """Ends what is playing and begins the new; comes back at once, so that it can be stopped."""
        self._stop.set()
        if self._thread is not None:
            self._thread.join()
        if isinstance(asked, Play):
            self._stop = threading.Event()
            self._thread = threading.Thread(target=self._play, args=(asked, self._stop, tell), daemon=True)
            self._thread.start()

    def _play(self, asked: Play, stop: threading.Event, tell: Told) -> None:
        try:
            play(seconds_of(asked.path, asked.start_s, asked.end_s), stop.is_set)
        except Exception as failure:
            tell(Failed(asked, sentence(failure)))
        else:
            tell(Played(asked))


if __name__ == "__main__":
    serve(Player().work)
