"""A screen as text that a person can read in a diff: every line, and under it how each letter of it is set."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from rich.segment import Segment
from rich.style import Style
from textual.app import App


def look_of(app: App[None]) -> str:
    """The lines of the screen, and of every look in them a letter; the looks are named at the end."""
    letters: dict[str, str] = {}
    lines = []
    for strip in app.screen._compositor.render_strips():
        lines.append(f"  {strip.text}".rstrip())
        lines.append(f"~ {_set(strip, letters)}".rstrip())
    return "\n".join([*lines, "", *_named(letters), ""])


def _set(segments: Iterable[Segment], letters: dict[str, str]) -> str:
    line = ""
    for segment in segments:
        look = _look(segment.style or Style())
        letter = letters.setdefault(look, chr(ord("a") + len(letters)))
        line += letter * segment.cell_length
    return line


def _look(style: Style) -> str:
    ways = [way for way in ("bold", "dim", "italic", "underline", "reverse") if getattr(style, way)]
    ink = style.color.get_truecolor().hex if style.color else "none"
    ground = style.bgcolor.get_truecolor().hex if style.bgcolor else "none"
    return " ".join([f"{ink} on {ground}", *ways])


def _named(letters: Mapping[str, str]) -> list[str]:
    return [f"{letter}: {look}" for look, letter in letters.items()]
