"""How it looks: ink on paper, chalk on slate; one warm colour for what asks for a person, never as its only sign."""

from __future__ import annotations

from typing import Final

from textual.theme import Theme

SLATE: Final = Theme(
    name="slate",
    dark=True,
    primary="#d9a05b",
    secondary="#8fa3a0",
    accent="#d9a05b",
    warning="#e0b35c",
    error="#e58a76",
    success="#9cb98a",
    foreground="#e6e1d3",
    background="#1e2326",
    surface="#1e2326",
    panel="#2b3236",
    variables={"quiet": "#a3aaa3", "line": "#7c5648", "pointed": "#323b40", "foot": "#181c1f"},
)
PAPER: Final = Theme(
    name="paper",
    dark=False,
    primary="#8a3b12",
    secondary="#4d615e",
    accent="#8a3b12",
    warning="#7a5200",
    error="#9b1c1c",
    success="#35602a",
    foreground="#23303a",
    background="#f6f1e3",
    surface="#f6f1e3",
    panel="#e9e1cc",
    variables={"quiet": "#51564f", "line": "#b5654a", "pointed": "#e6dcbf", "foot": "#ece4d0"},
)
THEMES: Final = (SLATE, PAPER)

STYLES: Final = """
Screen { background: $background; color: $foreground; }
#head { height: 1; padding: 0 1; }
#head Static { width: 1fr; text-style: bold; text-wrap: nowrap; text-overflow: ellipsis; }
#head #sum { width: auto; max-width: 55%; text-align: right; color: $quiet; text-style: none; }
#rule { height: 2; padding: 0 1; color: $quiet; }
#middle { height: 1fr; layout: vertical; }
.-wide #middle { layout: horizontal; }
Page {
    height: 1fr; width: 1fr; background: $background; scrollbar-size-vertical: 1; overflow-x: hidden;
    scrollbar-color: $line; scrollbar-background: $background; scrollbar-color-hover: $primary;
    scrollbar-background-hover: $background; scrollbar-color-active: $primary;
    scrollbar-background-active: $background;
}
.page--margin { color: $quiet; }
.page--mark { color: $primary; text-style: bold; }
.page--line { color: $line; }
.page--text { color: $foreground; }
.page--quiet { color: $quiet; }
.page--heading { color: $foreground; text-style: bold; }
.page--pointed { background: $pointed; }
Around { height: 7; width: 1fr; background: $foot; padding: 0 1; overflow: hidden; }
.-wide Around { height: 1fr; width: 2fr; padding: 1 2; }
.-wide Page { width: 3fr; }
.around--quiet { color: $quiet; }
#told { height: auto; max-height: 5; padding: 0 1; background: $foot; display: none; }
#told.-says { display: block; }
#keys { height: 1; padding: 0 0 0 1; background: $foot; color: $quiet; }
Typed { height: auto; background: $panel; padding: 0 1; display: none; }
Typed.-open { display: block; }
Typed Horizontal { height: 1; }
Typed Label { width: 17; color: $quiet; }
Input, Input:focus {
    height: 1; border: none; padding: 0; background: $panel; background-tint: transparent; color: $foreground;
    width: 1fr;
}
Input > .input--placeholder, Input > .input--suggestion { color: $quiet; }
Input > .input--cursor { background: $foreground; color: $background; text-style: none; }
Input > .input--selection { background: $primary; color: $background; }
Choice { height: 1; width: 1fr; color: $foreground; }
Choice:focus { text-style: bold; background: $pointed; }
Typed Input:focus { background: $pointed; }
#find { height: 1; padding: 0 1; background: $panel; margin: 0 0 1 0; }
#find Label { color: $primary; text-style: bold; width: auto; }
"""
