"""How each screen looks, at both sizes and in both lights, as kept in `looks/`.

`BENCHNOTES_KEEP_LOOKS=1 pytest tests/screens/test_looks.py` keeps today's; look at the difference before keeping it.
"""

from __future__ import annotations

import asyncio
import os
from pathlib import Path

import pytest
from rich.color import Color
from screens.looks import look_of
from screens.shop import Shop
from textual.pilot import Pilot

LOOKS = Path(__file__).parent / "looks"
KEYS = {
    "jobs": (),
    "find": tuple("grease"),
    "record": ("down", "enter"),
    "correct": ("down", "enter", "c"),
    "going-back": ("enter", "g"),
}


@pytest.mark.parametrize("size", [(80, 24), (160, 48)], ids=["80x24", "160x48"])
@pytest.mark.parametrize("light", ["slate", "paper"])
@pytest.mark.parametrize("name", KEYS)
def test_it_looks_as_it_did(shop: Shop, name: str, light: str, size: tuple[int, int]) -> None:
    seen = asyncio.run(_seen(shop, KEYS[name], light, size))
    kept = LOOKS / f"{name}-{size[0]}x{size[1]}-{light}.txt"
    if os.environ.get("BENCHNOTES_KEEP_LOOKS"):
        LOOKS.mkdir(exist_ok=True)
        kept.write_text(seen, encoding="utf-8")
    assert seen == kept.read_text(encoding="utf-8")


@pytest.mark.parametrize("light", ["slate", "paper"])
def test_every_letter_can_be_read(shop: Shop, light: str) -> None:
    """WCAG 2.2, 1.4.3: at least 4.5 to 1 between letters and ground, where there are letters."""
    for keys in KEYS.values():
        seen = asyncio.run(_seen(shop, keys, light, (80, 24)))
        for pair in {line.split(": ")[1] for line in seen.rpartition("\n\n")[2].splitlines() if ": " in line}:
            ink, ground = pair.split()[0], pair.split()[2]
            if "none" not in (ink, ground) and ink != ground and " dim" not in pair:
                # the ruled line and the bar at the right are no letters
                assert _contrast(ink, ground) >= (4.5 if ink not in RULED else 1.5), pair


RULED = {"#7c5648", "#b5654a"}


async def _seen(shop: Shop, keys: tuple[str, ...], light: str, size: tuple[int, int]) -> str:
    app = shop.app()
    app.theme = light
    async with app.run_test(size=size) as pilot:
        pilot.app.animation_level = "none"
        for key in keys:
            await pilot.press(key)
            await pilot.pause()
        await _quiet(pilot)
        return look_of(app)


async def _quiet(pilot: Pilot[None]) -> None:
    await pilot.pause(0.4)
    await pilot.pause()


def _contrast(one: str, other: str) -> float:
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(hex_color: str) -> float:
    """WCAG 2.2, relative luminance."""
    triplet = Color.parse(hex_color).get_truecolor()
    parts = (channel / 255 for channel in triplet)
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
