"""Progress on standard error while files are listened to: how far, how long yet, and every warning as a line."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager

from rich.console import Console
from rich.progress import BarColumn, Progress, TaskID, TextColumn, TimeRemainingColumn

from benchnotes.exports.wording import clock
from benchnotes.session.events import Began, Ended, Event, Reached, Skipped, Tell, Warned


@contextmanager
def shown_progress() -> Iterator[Tell]:
    """Gives what events are told to. Without a terminal only words are written, no bar."""
    console = Console(file=sys.stderr, highlight=False, markup=False, soft_wrap=not sys.stderr.isatty())
    columns = (
        TextColumn("{task.description}", markup=False),
        BarColumn(),
        TextColumn("{task.fields[reached]}", markup=False),
        TimeRemainingColumn(compact=True),
    )
    with Progress(*columns, console=console, disable=not console.is_terminal) as bar:
        yield _Watch(bar, console).tell


class _Watch:
    """Follows one file after the other."""

    def __init__(self, bar: Progress, console: Console) -> None:
        self.bar = bar
        self.console = console
        self.tasks: list[TaskID] = []

    def tell(self, event: Event) -> None:
        match event:
            case Began(name, from_s, duration_s):
                if from_s > 0:
                    self.console.print(f"{name}: going on from {clock(from_s)}")
                reached = f"of {clock(duration_s)}"
                self.tasks.append(
                    self.bar.add_task(name, total=max(duration_s, 0.001), completed=int(from_s), reached=reached)
                )
            case Reached(until_s):
                self.bar.update(self.tasks[-1], completed=until_s)
            case Warned(text):
                self.console.print(text)
            case Skipped(name):
                self.console.print(f"{name}: this job has that recording already; it was not taken in again.")
            case Ended():
                self.bar.update(self.tasks[-1], completed=self.bar.tasks[self.tasks[-1]].total)
