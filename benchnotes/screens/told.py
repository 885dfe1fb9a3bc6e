"""What the rooms behind tell the screens."""

from __future__ import annotations

from textual.message import Message

from benchnotes.session.back_room import Failed
from benchnotes.session.playing_room import Play, Played
from benchnotes.session.reading_room import HasRead


class Answer(Message):
    """A room behind has answered."""

    def __init__(self, answer: HasRead | Played | Failed) -> None:
        super().__init__()
        self.answer = answer


class Lying(Message):
    """The job that lies open has been read, or has changed."""


def is_sound(failed: Failed) -> bool:
    """True where something was to be played."""
    return isinstance(failed.request, Play)
