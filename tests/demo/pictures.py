"""Drawn pictures of the boardwalk viewer's parts: what the camera of the demo video sees."""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, sin

from PIL import Image, ImageDraw, ImageFilter, ImageFont

SIZE = (640, 360)
BENCH, SHADE, IRON, BRASS, RUST, GLASS, DARK = (
    "#8a6a48",
    "#5d452d",
    "#5e6a70",
    "#c9a24a",
    "#a4552e",
    "#bcd6dc",
    "#22272a",
)

Pen = ImageDraw.ImageDraw


def picture(name: str) -> Image.Image:
    """The bench with one part of the machine on it, and a paper tag that says which."""
    image = Image.new("RGB", SIZE, BENCH)
    pen = ImageDraw.Draw(image)
    for y in range(18, SIZE[1], 45):
        pen.line((0, y, SIZE[0], y + 6), fill=SHADE, width=2)
    DRAWN[name](pen)
    pen.rectangle((16, 314, 226, 348), fill="#f2ead6", outline=DARK)
    pen.text((26, 319), name, fill=DARK, font=ImageFont.load_default(size=20))
    return image


def moving(image: Image.Image, shift: int) -> Image.Image:
    """The same picture while the camera is swung: shifted and blurred, no good as a still."""
    return image.transform(SIZE, Image.Transform.AFFINE, (1, 0, shift, 0, 1, shift // 3)).filter(
        ImageFilter.GaussianBlur(5)
    )


def _viewer(pen: Pen) -> None:
    pen.polygon([(290, 210), (350, 210), (365, 330), (275, 330)], fill=IRON, outline=DARK)
    pen.rounded_rectangle((190, 80, 450, 215), radius=40, fill=IRON, outline=DARK, width=3)
    for x in (215, 345):
        pen.ellipse((x, 100, x + 80, 180), fill=DARK, outline=BRASS, width=6)
        pen.ellipse((x + 18, 118, x + 62, 162), fill=GLASS)
    pen.rectangle((300, 190, 340, 205), fill=BRASS, outline=DARK)


def _coin_chute(pen: Pen) -> None:
    pen.polygon([(180, 60), (300, 60), (440, 260), (320, 260)], fill=IRON, outline=DARK)
    pen.polygon([(215, 75), (270, 75), (390, 245), (335, 245)], fill=DARK)
    for i in range(60):
        x, y = 290 + (i * 37) % 90, 170 + (i * 23) % 70
        pen.ellipse((x, y, x + 7, y + 5), fill="#d9c48f")
    pen.arc((300, 150, 372, 206), 20, 200, fill="#d8dcdd", width=12)


def _timer(pen: Pen) -> None:
    pen.rectangle((150, 50, 490, 290), fill=BRASS, outline=DARK, width=3)
    for x, y, r in ((250, 170, 90), (385, 120, 45), (400, 225, 38)):
        pen.ellipse((x - r, y - r, x + r, y + r), fill="#e2c379", outline=DARK, width=2)
        for tooth in range(24):
            a = tooth * pi / 12
            pen.line((x + r * cos(a), y + r * sin(a), x + (r + 8) * cos(a), y + (r + 8) * sin(a)), fill=DARK, width=3)
    for turn in range(5):
        r = 16 + turn * 14
        pen.arc((250 - r, 170 - r, 250 + r, 170 + r), 30 if turn == 0 else 0, 340, fill=IRON, width=4)


def _shutter(pen: Pen) -> None:
    pen.rectangle((170, 70, 470, 280), fill=IRON, outline=DARK, width=3)
    pen.ellipse((230, 95, 390, 255), fill=DARK)
    pen.polygon([(240, 110), (430, 150), (430, 215), (260, 250)], fill="#8d9498", outline=DARK)
    for i in range(18):
        x, y = 270 + (i * 53) % 140, 130 + (i * 31) % 100
        pen.ellipse((x, y, x + 16, y + 9), fill=RUST)


def _eyepieces(pen: Pen) -> None:
    for x, glass in ((160, GLASS), (360, "#8f8a70")):
        pen.ellipse((x, 80, x + 150, 230), fill=DARK, outline=BRASS, width=10)
        pen.ellipse((x + 32, 112, x + 118, 198), fill=glass)
    pen.ellipse((395, 115, 425, 145), fill="#a59f84")
    pen.ellipse((270, 225, 370, 285), outline=DARK, width=9)


def _pedestal(pen: Pen) -> None:
    pen.polygon([(270, 30), (370, 30), (410, 200), (230, 200)], fill=IRON, outline=DARK)
    pen.ellipse((170, 180, 470, 290), fill=IRON, outline=DARK, width=3)
    for x, y, head in ((215, 222, BRASS), (400, 222, BRASS), (308, 256, DARK)):
        pen.ellipse((x, y, x + 26, y + 18), fill=head, outline=DARK, width=2)


def _lock(pen: Pen) -> None:
    pen.rectangle((180, 60, 460, 280), fill=IRON, outline=DARK, width=3)
    pen.ellipse((270, 110, 370, 210), fill=BRASS, outline=DARK, width=3)
    pen.rectangle((312, 140, 328, 182), fill=DARK)
    pen.polygon([(330, 200), (430, 235), (420, 258), (318, 222)], fill="#d8dcdd", outline=DARK)


DRAWN: dict[str, Callable[[Pen], None]] = {
    "viewer": _viewer,
    "coin chute": _coin_chute,
    "timer": _timer,
    "shutter": _shutter,
    "eyepieces": _eyepieces,
    "pedestal": _pedestal,
    "lock": _lock,
}
