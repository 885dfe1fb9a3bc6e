"""Files read one by one and kept nowhere; what is needed to hear and to read is opened once for all."""

from __future__ import annotations

from pathlib import Path

from benchnotes.session.events import Tell
from benchnotes.session.job import ReadJob, read_job
from benchnotes.session.listening import Ears
from benchnotes.session.looking import look_at
from benchnotes.session.reading_tools import open_reading_tools
from benchnotes.session.settings import Settings
from benchnotes.session.taking_in import hear_alone
from benchnotes.session.workshop import Workshop


class OneOff:
    """Reads any number of files, each as a job of its own."""

    def __init__(self, workshop: Workshop, settings: Settings, currency: str | None, trade: str | None) -> None:
        self._currency = currency or settings.currency
        self._trades = (trade,) if trade else settings.trades
        self._tools = open_reading_tools(workshop, self._trades)
        self._ears = Ears(workshop, settings, self._trades)

    def read(self, path: Path, tell: Tell) -> ReadJob:
        """The record of one file. Raises what `look_at` and the ears raise."""
        facts = hear_alone(look_at(path), self._ears, tell, currency=self._currency, trades=self._trades)
        return read_job(facts, self._tools)
