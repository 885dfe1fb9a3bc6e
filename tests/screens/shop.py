"""A workshop with two jobs, their talk in a real notebook file, and their records as a reader would give them."""

from __future__ import annotations

import asyncio
import functools
import math
import struct
import wave
from collections.abc import Callable, Coroutine, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from decimal import Decimal
from pathlib import Path
from typing import Any

from textual.app import App
from textual.pilot import Pilot
from textual.widgets import Static

from benchnotes.record.entries import Advice, Charge, Fault, JobRecord, Machine, Part, Reading, Trial, Work
from benchnotes.record.heard import Evidence, Unheard, Utterance, captioned
from benchnotes.record.money import Money
from benchnotes.record.notices.rules import notices
from benchnotes.screens.app import BenchNotes
from benchnotes.screens.page import Page
from benchnotes.session.facts import facts_of_job
from benchnotes.session.reading_room import HasRead
from benchnotes.session.settings import Settings
from benchnotes.session.workshop import Workshop
from benchnotes.store.jobs import Job, open_job
from benchnotes.store.notebook import Notebook, open_notebook
from benchnotes.store.recordings import NewRecording, add_recording
from benchnotes.store.talk import Stretch, keep_stretch

AT = datetime(2026, 3, 2, 9, 30, tzinfo=UTC)

CHURN = (
    "This is a Corvane number six butter churn, four four seven one on the plate.",
    "Lid gasket is split right round so that wants a new one.",
    "They're four pounds fifty, those gaskets.",
    "Drive gear was thick with old grease, that's clean now.",
    "Shaft gauges at eleven point nine, worn a touch.",
    "New gasket's in, five pounds ten it came to in the end.",
    "Filled it to the brim and not a drop comes out.",
    "Tell her to dry it before it is put away.",
)
LAMP = ("A little bridge lamp, runs off the mains.", "The switch is cracked, I have ordered one.")


@dataclass(frozen=True, slots=True)
class Shop:
    """An open notebook, and what a reader makes of each of its jobs."""

    workshop: Workshop
    notebook: Notebook
    read: tuple[HasRead, ...]

    def app(self) -> BenchNotes:
        """The app, its jobs read already, so that no reader is started."""
        app = BenchNotes(self.workshop, self.notebook)
        for read in self.read:
            app.desk.take(read)
        return app


def make_shop(folder: Path) -> Shop:
    """A shop in an empty folder."""
    workshop = Workshop(folder)
    workshop.make()
    notebook = open_notebook(workshop.notebook)
    churn = _job(notebook, "butter churn", folder / "churn.wav", CHURN, unheard=(Unheard(1, 26.0, 29.0),))
    lamp = _job(notebook, "bridge lamp", folder / "lamp.wav", LAMP)
    records = {churn: _churn(), lamp: _lamp()}
    settings = Settings(currency="GBP")
    read = tuple(HasRead(job, facts_of_job(notebook, job, settings), record) for job, record in records.items())
    return Shop(workshop, notebook, read)


def on_screen(test: Callable[..., Coroutine[Any, Any, None]]) -> Callable[..., None]:
    """Runs a test that awaits."""

    @functools.wraps(test)
    def run(*arguments: object, **named: object) -> None:
        asyncio.run(test(*arguments, **named))

    return run


def text_of(app: App[None]) -> str:
    """Everything that can be read on the screen, line by line."""
    return "\n".join(strip.text.rstrip() for strip in app.screen._compositor.render_strips())


def pointed_at(app: App[None]) -> str:
    """The line that is pointed at."""
    return next((line for line in text_of(app).splitlines() if line.startswith("▶")), "")


def told(app: App[None]) -> str:
    """The sentence at the foot."""
    return str(app.screen.query_one("#told", Static).render())


async def open_first_job(pilot: Pilot[None]) -> None:
    """Lays the butter churn open (the older of the two, so the lower one)."""
    await pilot.press("down", "enter")
    await pilot.pause()


async def point_at(pilot: Pilot[None], words: str) -> None:
    """Steps down until the line pointed at holds these words."""
    pilot.app.screen.query_one(Page).action_end(-1)
    await pilot.pause()
    for _ in range(60):
        if words in pointed_at(pilot.app):
            return
        await pilot.press("down")
        await pilot.pause()
    raise AssertionError(f"nothing says {words!r}:\n{text_of(pilot.app)}")


def _job(notebook: Notebook, name: str, sound: Path, lines: Sequence[str], unheard: Sequence[Unheard] = ()) -> Job:
    _tone(sound, seconds=5.0 * len(lines))
    job = open_job(notebook, name, at=AT, facts={"currency": "GBP"})
    new = NewRecording(
        path=sound, name=sound.name, kind="sound", duration_s=5.0 * len(lines),
        sha256=name.encode().hex().ljust(64, "0")[:64], started_at=AT, started_from="container",
    )  # fmt: skip
    kept = add_recording(notebook, job.number, new, at=AT)
    talk = [_said(at, text) for at, text in enumerate(lines)]
    stretch = Stretch(from_s=0.0, until_s=new.duration_s, utterances=talk, unheard=unheard, finished=True)
    keep_stretch(notebook, kept.id, stretch, at=AT)
    return job


def _said(at: int, text: str) -> Utterance:
    return captioned(1, 5.0 * at, 5.0 * at + 4.5, text)


def _tone(path: Path, seconds: float, rate: int = 8000) -> None:
    with wave.open(str(path), "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(rate)
        samples = (int(9000 * math.sin(2 * math.pi * 440 * n / rate)) for n in range(int(seconds * rate)))
        out.writeframes(b"".join(struct.pack("<h", sample) for sample in samples))


def _at(lines: Sequence[str], *places: int) -> tuple[Evidence, ...]:
    return tuple(Evidence(1, 5.0 * at, 5.0 * at + 4.5, lines[at]) for at in places)


def _gbp(amount: str) -> Money:
    return Money(Decimal(amount), "GBP")


def _churn() -> JobRecord:
    gasket = Part(
        name="lid gasket", unit_price=_gbp("5.10"), basis="exact", prices=(_gbp("4.50"), _gbp("5.10")),
        state="fitted", sure=0.9, evidence=_at(CHURN, 1, 2, 5),
    )  # fmt: skip
    record = JobRecord(
        currency="GBP",
        machine=Machine(kind="butter churn", make="Corvane", model="6", serial="4471", evidence=_at(CHURN, 0)),
        faults=(
            Fault(part="lid gasket", kind="cracked", status="verified", sure=0.95, evidence=_at(CHURN, 1)),
            Fault(part="shaft", kind="worn", status="open", sure=0.5, evidence=_at(CHURN, 4)),
        ),
        parts=(gasket,),
        charges=(Charge(kind="labour", what="labour", hours=Decimal("1.5"), sure=0.9),),
        work=(Work(action="clean", target="drive gear", sure=0.9, evidence=_at(CHURN, 3)),),
        readings=(
            Reading(what="shaft", value=Decimal("11.9"), unit="mm", check=True, sure=0.8, evidence=_at(CHURN, 4)),
        ),
        tests=(Trial(what="leak", result="pass", sure=0.9, evidence=_at(CHURN, 6)),),
        advice=(Advice(text="dry it before it is put away", sure=0.9, evidence=_at(CHURN, 7)),),
    )
    return replace(record, notices=notices(record))


def _lamp() -> JobRecord:
    return JobRecord(
        currency="GBP",
        machine=Machine(kind="bridge lamp", power="mains", evidence=_at(LAMP, 0)),
        faults=(Fault(part="switch", kind="cracked", sure=0.9, evidence=_at(LAMP, 1)),),
        parts=(Part(name="switch", state="ordered", sure=0.9, evidence=_at(LAMP, 1)),),
    )
