"""The listed marker on one-line narrations in several trades and voices, and a user's own words acting in it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from benchnotes.language.marking.listed import ListedMarker
from benchnotes.language.marking.marker import Mark, Marker
from benchnotes.language.pipeline import build
from benchnotes.record.heard import captioned
from benchnotes.trades.english import open_english
from benchnotes.trades.shelf import load

Told = tuple[str, str, str | None]
"""Kind, words, part."""


@pytest.fixture(scope="module")
def marker() -> Marker:
    words = load(None)
    return ListedMarker(build(open_english(), words), words)


def marks(marker: Marker, *talk: str) -> tuple[Mark, ...]:
    return marker.mark([captioned(1, 4.0 * at, 4.0 * at + 4, text) for at, text in enumerate(talk)]).marks


def told(found: Sequence[Mark], *talk: str) -> list[Told]:
    return [
        (
            mark.kind,
            talk[mark.span.utterance][mark.span.start : mark.span.end],
            None if mark.part is None else talk[mark.part.utterance][mark.part.start : mark.part.end],
        )
        for mark in found
    ]


def said(marker: Marker, talk: str) -> list[Told]:
    return told(marks(marker, talk), talk)


# ------------------------------------------------------------------ what is found, denied, supposed


@pytest.mark.parametrize(
    ("talk", "expected"),
    [
        ("The lower bellows are torn at the corner.", ("fault", "torn", "The lower bellows")),
        ("Och, the spokes are bent, the pair of them.", ("fault", "bent", "the spokes")),
        ("the float bowl is leaking all over my bench", ("fault", "leaking", "the float bowl")),
        ("There's a crack in the soundboard.", ("fault", "crack", "the soundboard")),
        ("Mainspring's broken.", ("fault", "broken", "Mainspring")),
        ("There's no play in the headset.", ("clear", "no play", "the headset")),
        ("The gland isn't leaking.", ("clear", "isn't leaking", "The gland")),
        ("The escape wheel's fine.", ("clear", "fine", "The escape wheel")),
        ("It might be the capacitor.", ("guess", "might be", "the capacitor")),
        ("the thermocouple could be burnt", ("guess", "could be burnt", "the thermocouple")),
    ],
)  # fmt: skip
def test_findings(marker: Marker, talk: str, expected: Told) -> None:
    assert said(marker, talk) == [expected]


@pytest.mark.parametrize(
    "talk",
    [
        "They often leak at the gland.",
        "Most people never oil these and the bearings seize.",
        "You'll find the bush is worn on the old ones.",
        "The last one I did had a cracked manifold.",
        "My uncle's boiler leaked for years.",
        "If the diaphragm is torn it would've been the regulator.",
        "Years back when I was an apprentice the valves were always blocked.",
        "Is the needle bent?",
        "Hard work, this, and no wonder.",
        "Open the door, would you.",
        "That's a long time gone in the garden.",
        "Well.",
        "",
    ],
)
def test_lore_other_machines_and_chat_are_no_statements(marker: Marker, talk: str) -> None:
    assert not [kind for kind, _, _ in said(marker, talk) if kind in {"fault", "clear", "work", "test", "guess"}]


def test_the_kind_of_fault_is_that_of_its_words(marker: Marker) -> None:
    found = marks(marker, "The jet is blocked and the wick tube is bent.")
    assert [(mark.kind, mark.attributes["kind"]) for mark in found] == [("fault", "blocked"), ("fault", "deformed")]


# ------------------------------------------------------------------ work and parts


@pytest.mark.parametrize(
    ("talk", "action", "standing"),
    [
        ("I've cleaned the points.", "clean", "done"),
        ("Commutator's been skimmed.", "machine", "done"),
        ("I'll grease the helicoid tomorrow.", "lubricate", "planned"),
        ("The idle needs adjusting.", "adjust", "planned"),
        ("We have to solder that joint.", "repair", "planned"),
        ("I tried to free the seat post, no joy.", "free", "failed"),
        ("Glued the crack, useless, it let go again.", "repair", "failed"),
        ("sent the drum away to be replated", "send_out", "done"),
    ],
)
def test_work_and_how_it_stands(marker: Marker, talk: str, action: str, standing: str) -> None:
    found = [mark.attributes for mark in marks(marker, talk) if mark.kind == "work"]
    assert {(mark["action"], mark["standing"]) for mark in found} == {(action, standing)}


@pytest.mark.parametrize(
    ("talk", "kinds"),
    [
        ("It needs a new fuel line.", {"need"}),
        ("The diaphragm kit's on order.", {"order"}),
        ("I've put a new drive belt on.", {"fit", "work"}),
        ("I'll pop a new gasket on.", {"need", "work"}),
        ("We don't need a new stylus.", {"drop"}),
        ("Took the top cover off.", {"off"}),
        ("Side panel's back on.", {"back"}),
    ],
)
def test_parts_and_covers(marker: Marker, talk: str, kinds: set[str]) -> None:
    assert {kind for kind, _, _ in said(marker, talk)} == kinds


def test_nobody_at_the_bench_did_it(marker: Marker) -> None:
    assert "work" not in {kind for kind, _, _ in said(marker, "Somebody glued the pinion before me.")}
    assert "work" not in {kind for kind, _, _ in said(marker, "The polished plate is there.")}


# ------------------------------------------------------------------ amounts


@pytest.mark.parametrize(
    ("talk", "expected"),
    [
        ("Brake blocks were nine pounds the pair.", ("price", "nine pounds", "Brake blocks")),
        ("Gasket came to six fifty.", ("price", "six fifty", "Gasket")),
        ("Pivot is 1.2 mil.", ("reading", "1.2 mil", "Pivot")),
        ("The spindle measures twenty thou over.", ("reading", "twenty thou", "The spindle")),
        ("Labour, two hours.", ("charge", "Labour", None)),
        ("postage was four pounds 20", ("charge", "postage", None)),
        ("Six, no, sorry, seven pounds for the wick.", ("price", "seven pounds", "the wick")),
    ],
)  # fmt: skip
def test_amounts(marker: Marker, talk: str, expected: Told) -> None:
    assert expected in said(marker, talk)


@pytest.mark.parametrize(
    "talk", ["a penny for them", "It's a thirteen amp plug.", "there were two of us", "a foot of wire"]
)
def test_what_is_no_amount(marker: Marker, talk: str) -> None:
    assert not {"price", "reading", "charge"} & {kind for kind, _, _ in said(marker, talk)}


def test_what_is_taken_back_is_not_marked(marker: Marker) -> None:
    found = said(marker, "Four pounds, no, sorry, five pounds twenty.")
    assert [(kind, words) for kind, words, _ in found] == [("correction", "no, sorry"), ("price", "five pounds twenty")]


def test_about(marker: Marker) -> None:
    assert marks(marker, "The gasket is about forty dollars.")[0].attributes["basis"] == "about"
    assert marks(marker, "The gasket is forty dollars.")[0].attributes["basis"] == "exact"


# ------------------------------------------------------------------ trials, sayings, the machine


@pytest.mark.parametrize(
    ("talk", "what", "result"),
    [
        ("Put it in a bucket of water and not a bubble.", "leak", "pass"),
        ("Insulation test, fifty megohms, pass.", "electrical", "pass"),
        ("Switched it on and away she goes.", "function", "pass"),
        ("Test run, and it just hums.", "function", "fail"),
    ],
)
def test_trials(marker: Marker, talk: str, what: str, result: str) -> None:
    found = [mark.attributes for mark in marks(marker, talk) if mark.kind == "test"]
    assert found == [{"what": what, "result": result}]


@pytest.mark.parametrize(
    ("talk", "kind"),
    [
        ("I don't know what thread that boss is.", "doubt"),
        ("So it wasn't the condenser.", "settled"),
        ("The dent in the horn, I'll live with it.", "leave"),
        ("Tell her to keep it out of the damp.", "advice"),
        ("Hang on, no, I tell a lie.", "correction"),
    ],
)
def test_sayings(marker: Marker, talk: str, kind: str) -> None:
    assert kind in {found for found, _, _ in said(marker, talk)}


def test_what_came_in(marker: Marker) -> None:
    talk = ("Right, a Fenwick Dale Nine table lamp today.", "Serial number 40771, mains.")
    found = {mark.attributes["field"]: mark for mark in marks(marker, *talk) if mark.kind == "machine"}
    words = {field: talk[m.span.utterance][m.span.start : m.span.end] for field, m in found.items()}
    assert words == {"kind": "table lamp", "make": "Fenwick Dale", "model": "Nine", "serial": "40771", "power": "mains"}


# ------------------------------------------------------------------ a user's own words


def test_a_users_words_act(tmp_path: Path) -> None:
    talk = "The sprocklet is wonkified."
    (tmp_path / "common.toml").write_text(
        'parts = ["sprocklet"]\n[conditions.misadjusted]\nis = ["wonkified"]\n', encoding="utf-8"
    )
    with_users, without = load(tmp_path), load(None)
    found = marks(ListedMarker(build(open_english(), with_users), with_users), talk)
    assert told(found, talk) == [("fault", "wonkified", "The sprocklet")]
    assert found[0].attributes == {"kind": "misadjusted"}
    assert not marks(ListedMarker(build(open_english(), without), without), talk)


# ------------------------------------------------------------------ for any talk


def test_marks_lie_inside_the_talk_in_order_and_come_again_the_same(marker: Marker) -> None:
    talk = [
        "the belt's gone but",
        "",
        "it cost a tenner, no, sorry, twelve quid",
        "?",
        "and and and not not no",
        "off off off",
    ]
    heard = [captioned(1, 0, 2, text) for text in talk]
    found = marker.mark(heard)
    assert found == marker.mark(heard)
    assert found.pointers is None
    assert list(found.marks) == sorted(found.marks, key=lambda mark: (mark.span, mark.kind))
    for mark in found.marks:
        for span in filter(None, (mark.span, mark.part)):
            assert 0 <= span.start < span.end <= len(heard[span.utterance].text)


def test_no_talk_no_marks(marker: Marker) -> None:
    assert marker.mark([]).marks == ()
