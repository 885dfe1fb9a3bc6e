"""Words gathered from plain mappings: kept as listed, laid over, and said in every form."""

from __future__ import annotations

import pytest

from benchnotes.language.machines import implied, kind_of, power_of
from benchnotes.language.vocabulary import Vocabulary, bias_words, gather
from benchnotes.language.vocabulary_sheets import Phrase, Sheet
from benchnotes.language.word_forms import noun_forms, verb_forms
from benchnotes.trades.shelf import load

KINDS = {
    "machine": [
        {"kind": ["lantern"], "power": "battery"},
        {"kind": ["pressure lantern"], "power": "liquid_fuel", "holds_pressure": True, "checks": ["leak"]},
        {"kind": ["fiddle"]},
    ],
    "powers": {"mains": {"says": ["mains"], "hints": ["plug"]}, "manual": {"hints": ["hand"], "says": ["treadle"]}},
}


@pytest.fixture(scope="module")
def words() -> Vocabulary:
    return gather([Sheet("small", KINDS)])


def test_phrases_keep_their_group_kind_and_shape() -> None:
    sheet = {
        "parts": ["Flange"],
        "conditions": {"deformed": {"is": ["Bent"]}},
        "trials": {"fit": {"passes": ["sit flat"]}},
    }
    told = gather([Sheet("one", sheet)])
    assert told.phrases == (
        Phrase("flange", "part"),
        Phrase("bent", "condition", "deformed", "is"),
        Phrase("sit flat", "passes", "fit"),
    )


def test_sheets_beside_each_other_both_count() -> None:
    one, two = {"conditions": {"weak": {"is": ["flat"]}}}, {"conditions": {"misadjusted": {"is": ["flat"]}}}
    assert {p.kind for p in gather([Sheet("a", one), Sheet("b", two)]).phrases} == {"weak", "misadjusted"}
    assert {p.kind for p in gather([Sheet("a", one), Sheet("b", two, over=True)]).phrases} == {"misadjusted"}


def test_words_of_a_trade_grow_with_the_users(words: Vocabulary) -> None:
    told = gather([Sheet("clocks", {"parts": ["fusee"]}), Sheet("clocks", {"words": ["chronometer"]}, over=True)])
    assert bias_words(told, ["clocks"]) == ("fusee", "chronometer")


@pytest.mark.parametrize(
    ("kind", "told"),
    [
        ("old Marlow pressure lantern", ("liquid_fuel", True)),
        ("lantern", ("battery", False)),
        ("pair of lanterns", ("battery", False)),
        ("pressure-lantern and stove", ("liquid_fuel", True)),
        ("lantern bracket", (None, False)),
        ("fiddle", (None, False)),
        ("treadle grinder", ("manual", False)),
        ("hand grinder", (None, False)),
    ],
)
def test_what_a_kind_implies(words: Vocabulary, kind: str, told: tuple[str | None, bool]) -> None:
    assert implied(kind, words) == told


def test_the_longest_name_is_the_kind(words: Vocabulary) -> None:
    kind = kind_of("pressure lantern", words)
    assert kind is not None
    assert kind.checks == ("leak",)


@pytest.mark.parametrize(
    ("said", "power"),
    [
        ("pulled the plug on it", "mains"),
        ("worked by hand", "manual"),
        ("no plug and no cord", None),
        ("a hand one off the mains", "mains"),
        ("wool", None),
    ],
)
def test_power_in_words(words: Vocabulary, said: str, power: str | None) -> None:
    assert power_of(said, words) == power


@pytest.mark.parametrize(
    ("said", "power"),
    [
        ("pull the plug", "mains"),
        ("two hundred and 240 volt", "mains"),
        ("runs off a battery", "battery"),
        ("it's a treadle", "manual"),
        ("hand crank", "manual"),
        ("burns meths", "liquid_fuel"),
        ("paraffin", "liquid_fuel"),
        ("calor", "gas"),
        ("kerosene, an' all", "liquid_fuel"),
        ("a nine volt", "battery"),
        ("eight-day spring", "manual"),
        ("shop air", "other"),
    ],
)
def test_power_in_the_packages_words(said: str, power: str) -> None:
    assert power_of(said, load(None)) == power


@pytest.mark.parametrize(
    ("verb", "forms"),
    [
        # doubling, silent e, y and sibilants: Quirk et al. 1985, 3.4-3.10, examples from memory
        ("drip", {"drip", "drips", "dripping", "dripped"}),
        ("seize", {"seize", "seizes", "seizing", "seized"}),
        ("dry", {"dry", "dries", "drying", "dried"}),
        ("patch", {"patch", "patches", "patching", "patched"}),
        ("clean", {"clean", "cleans", "cleaning", "cleaned"}),
        ("free", {"free", "frees", "freeing", "freed"}),
        ("refit", {"refit", "refits", "refitting", "refitted"}),
        ("oil", {"oil", "oils", "oiling", "oiled"}),
        ("screw", {"screw", "screws", "screwing", "screwed"}),
    ],
)
def test_forms_of_regular_verbs(verb: str, forms: set[str]) -> None:
    assert set(verb_forms(verb, {})) == forms


def test_forms_of_listed_exceptions() -> None:
    assert verb_forms("wind", {"wind": ("wound",)})["wound"] == "past"
    assert verb_forms("rewind", {"wind": ("wound",)})["rewound"] == "past"
    assert verb_forms("cut", {"cut": ("cut",)})["cut"] == "base"


def test_one_and_many() -> None:
    assert noun_forms("bush") == ("bush", "bushes")
    assert noun_forms("glass") == ("glass", "glasses")
    assert noun_forms("points") == ("points",)
    assert noun_forms("assembly") == ("assembly", "assemblies")
