"""`benchnotes` alone, on a terminal: opens the app."""

from __future__ import annotations

from benchnotes.screens.app import BenchNotes
from benchnotes.session.jobs import open_workshop
from benchnotes.session.workshop import find_workshop


def open_app() -> int:
    """Opens the app and gives the exit code. What ended it, where something did that should not have, is raised."""
    workshop = find_workshop()
    with open_workshop(workshop) as notebook:
        app = BenchNotes(workshop, notebook)
        app.run()
    if app.failure is not None:
        raise app.failure
    return app.return_code or 0
