"""Slow work goes on in a process of its own, so that a screen never waits: requests in, answers out, both pickled.

What lies behind the door (`serve`) is a module that this side never imports: it may load what takes seconds.
"""

from __future__ import annotations

import os
import pickle
import subprocess
import sys
import threading
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from typing import IO, Any, Final

from benchnotes.session.failing import sentence

SHUT_S: Final = 2.0
"""How long a process may take to end by itself."""


@dataclass(frozen=True, slots=True)
class Failed:
    """A request that could not be done, with what to tell the user."""

    request: Any
    why: str


Told = Callable[[Any], None]


class BackRoom:
    """A process that is started when something is first asked of it, and again should it have ended."""

    def __init__(self, module: str, told: Told) -> None:
        """`module` runs `serve`; `told` is called with every answer, in a thread that is not the caller's."""
        self._module, self._told = module, told
        self._process: subprocess.Popen[bytes] | None = None
        self._open: list[tuple[subprocess.Popen[bytes], Any]] = []
        self._shutting = False
        self._lock = threading.Lock()

    def start(self) -> None:
        """Starts the process before anything is asked, so that what it loads is there by then."""
        with self._lock:
            self._running()

    def ask(self, request: Any) -> None:
        """Hands a request in; its answers come through `told`."""
        with self._lock:
            process = self._running()
            # a process that died takes its own requests along, and no later one
            self._open.append((process, request))
            pipe = process.stdin
            assert pipe is not None
            # a process that has just died is told of by the thread that reads it
            with suppress(BrokenPipeError):
                pickle.dump(request, pipe)
                pipe.flush()

    def close(self) -> None:
        """Ends the process."""
        self._shutting = True
        process = self._process
        if process is None:
            return
        process.terminate()
        with suppress(subprocess.TimeoutExpired):
            process.wait(SHUT_S)
        if process.poll() is None:
            process.kill()

    def _running(self) -> subprocess.Popen[bytes]:
        if self._process is None or self._process.poll() is not None:
            self._process = subprocess.Popen(
                [sys.executable, "-m", self._module],
                stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
                start_new_session=True,  # the terminal's Ctrl+C is the screen's affair
            )  # fmt: skip
            threading.Thread(target=self._listen, args=(self._process,), daemon=True).start()
        return self._process

    def _listen(self, process: subprocess.Popen[bytes]) -> None:
        assert process.stdout is not None
        while True:
            try:
                request, answer = pickle.load(process.stdout)
            except (EOFError, OSError, pickle.UnpicklingError):
                break
            self._done(process, request)
            if answer is not None:
                self._told(answer)
        for request in self._left(process):
            self._told(Failed(request, "The work behind the screen stopped. Nothing kept is lost; ask for it again."))

    def _done(self, process: subprocess.Popen[bytes], request: Any) -> None:
        with self._lock, suppress(ValueError):
            self._open.remove((process, request))

    def _left(self, process: subprocess.Popen[bytes]) -> list[Any]:
        with self._lock:
            left = [request for of, request in self._open if of is process]
            self._open = [(of, request) for of, request in self._open if of is not process]
            return [] if self._shutting else left


def serve(work: Callable[[Any, Told], None]) -> None:
    """The other side of the door: does one request after the other until the screen has gone.

    `work` hands its answers to what it is given; whatever it raises becomes a `Failed`.
    """
    asked, answers, one_by_one = sys.stdin.buffer, _answers(), threading.Lock()
    while True:
        try:
            request = pickle.load(asked)
        except EOFError:
            return
        tell = _telling(answers, request, one_by_one)
        try:
            work(request, tell)
        except Exception as failure:
            tell(Failed(request, sentence(failure)))
        tell(None)


def _answers() -> IO[bytes]:
    """Standard output, taken away from libraries that print."""
    answers = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return answers


def _telling(answers: IO[bytes], request: Any, one_by_one: threading.Lock) -> Told:
    def tell(answer: Any) -> None:
        with one_by_one:
            pickle.dump((request, answer), answers)
            answers.flush()

    return tell
