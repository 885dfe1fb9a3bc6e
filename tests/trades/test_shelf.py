"""The shelf of words: the package's files, a user's folder over them, and what is refused."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

from benchnotes.language.machines import implied
from benchnotes.language.vocabulary import Vocabulary, bias_words
from benchnotes.language.vocabulary_sheets import VocabularyError
from benchnotes.record.terms import FAULT_KINDS
from benchnotes.trades.shelf import SHELF, load, trades_on_the_shelf

FILES = sorted(SHELF.glob("*.toml"))
SHEETS = [path for path in FILES if path.stem != "units"]


@pytest.fixture(scope="module")
def words() -> Vocabulary:
    return load(None)


def listed(path: Path) -> list[str]:
    """Every string of a file's lists, by TOML alone."""

    def strings(value: object) -> list[str]:
        if isinstance(value, dict):
            return [text for inner in value.values() for text in strings(inner)]
        if isinstance(value, list):
            return [text for inner in value for text in ([inner] if isinstance(inner, str) else strings(inner))]
        return []

    plain = tomllib.loads(path.read_text(encoding="utf-8"))
    return strings({key: value for key, value in plain.items() if key not in {"irregular", "machine", "hazards"}})


def write(folder: Path, name: str, text: str) -> Path:
    (folder / name).write_text(text, encoding="utf-8")
    return folder


@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.stem)
def test_every_phrase_of_every_file_loads(path: Path, words: Vocabulary) -> None:
    known = {phrase.text for phrase in words.phrases}
    expected = {word.lower() for trade in words.trades.values() for word in trade.words}
    assert {text.lower() for text in listed(path)} <= known | expected


def test_every_trade_has_a_title_and_parts(words: Vocabulary) -> None:
    for name in trades_on_the_shelf(None):
        assert words.trades[name].title
        assert len(words.trades[name].words) >= 40


def test_no_kind_of_fault_is_without_words(words: Vocabulary) -> None:
    assert {phrase.kind for phrase in words.listed("condition")} == set(FAULT_KINDS)


def test_no_machine_stands_under_two_powers(words: Vocabulary) -> None:
    powers: dict[str, set[tuple[object, bool]]] = {}
    for machine in words.machines:
        for name in machine.words:
            powers.setdefault(name, set()).add((machine.power, machine.holds_pressure))
    assert not [name for name, told in powers.items() if len(told) > 1]


def test_hazards_have_a_caution_that_defers_to_local_rules(words: Vocabulary) -> None:
    for machine in words.machines:
        assert set(machine.hazards) <= set(words.hazards)
    for hazard in words.hazards.values():
        assert re.search(r"local|licensed|certified|maker", hazard.caution), hazard.name


def test_machines_that_hold_pressure_or_gas_or_mains_name_their_check(words: Vocabulary) -> None:
    for machine in words.machines:
        if machine.holds_pressure:
            assert {"leak", "pressure"} & set(machine.checks), machine.words
        if machine.power == "mains":
            assert "electrical" in machine.checks, machine.words
        if machine.power == "gas":
            assert "gas" in machine.checks, machine.words


def test_only_the_named_trades_are_read() -> None:
    words = load(None, ["clocks"])
    assert "fusee" in {phrase.text for phrase in words.listed("part")}
    assert "looper" not in {phrase.text for phrase in words.listed("part")}
    assert "bearing" in {phrase.text for phrase in words.listed("part")}


def test_a_trade_that_is_not_there_is_refused_with_those_that_are() -> None:
    with pytest.raises(VocabularyError, match=r"no trade 'zithers'.*bicycles.*clocks"):
        load(None, ["zithers"])


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ('prats = ["flange"]', ("prats", "parts", "conditions")),
        ('[conditions.wonky]\nis = ["wonky"]', ("wonky", "conditions", "cracked", "seized")),
        ('[conditions.worn]\nwas = ["tired"]', ("was", "conditions.worn", "does, has, is")),
        ('[work]\nbodge = ["bodge"]', ("bodge", "work", "lubricate")),
        ('[triggers.denied]\nsideways = ["no"]', ("sideways", "triggers.denied", "forward")),
        ('[[machine]]\nkind = ["press"]\npowr = "gas"', ("powr", "machine", "holds_pressure")),
        ('[[machine]]\nkind = ["press"]\npower = "nuclear"', ("nuclear", "machine.power", "liquid_fuel")),
        ('[[machine]]\nkind = ["press"]\nchecks = ["sniff"]', ("sniff", "machine.checks", "electrical")),
        ('[[machine]]\nkind = ["press"]\nholds_pressure = "yes"', ("holds_pressure", "true or false")),
        ('parts = "flange"', ("parts", "list of words")),
        ("title = 3", ("title", "words in quotes")),
        ('conditions = ["bent"]', ("conditions", "table")),
        ("machine = 3", ("machine", "[[machine]]")),
    ],
)
def test_what_is_wrong_is_refused_by_name_with_what_is_allowed(
    tmp_path: Path, text: str, told: tuple[str, ...]
) -> None:
    with pytest.raises(VocabularyError) as refused:
        load(write(tmp_path, "clocks.toml", text))
    for word in (str(tmp_path / "clocks.toml"), *told):
        assert word in str(refused.value)


def test_a_file_that_is_no_toml_is_named(tmp_path: Path) -> None:
    with pytest.raises(VocabularyError, match=r"clocks\.toml is not TOML"):
        load(write(tmp_path, "clocks.toml", "parts = ["))


def test_a_file_that_is_no_text_is_named(tmp_path: Path) -> None:
    (tmp_path / "clocks.toml").write_bytes(b"title = '\xff\xfe'")
    with pytest.raises(VocabularyError, match=r"clocks\.toml cannot be read"):
        load(tmp_path)


def test_a_wrong_unit_word_names_the_users_file(tmp_path: Path) -> None:
    with pytest.raises(VocabularyError, match=r"units\.toml"):
        load(write(tmp_path, "units.toml", '[[unit]]\nwords = ["smoot"]\nsymbol = "smoot"'))


def test_a_users_unit_words_come_beside_the_packages(tmp_path: Path) -> None:
    words = load(write(tmp_path, "units.toml", '[[unit]]\nwords = ["barleycorn"]\nsymbol = "mm"\ntimes = "8.47"'))
    assert ("barleycorn",) in words.units.units
    assert ("thou",) in words.units.units


def test_a_users_meaning_replaces_the_packages(tmp_path: Path) -> None:
    words = load(write(tmp_path, "common.toml", '[conditions.weak]\nis = ["tired"]'))
    assert {p.kind for p in words.listed("condition") if p.text == "tired"} == {"weak"}


def test_a_forgotten_phrase_means_nothing(tmp_path: Path) -> None:
    words = load(write(tmp_path, "common.toml", 'forget = ["tired"]'))
    assert "tired" not in {phrase.text for phrase in words.phrases}


def test_a_users_kind_of_machine_goes_before_the_packages(tmp_path: Path) -> None:
    text = '[[machine]]\nkind = ["hand pump"]\npower = "mains"\nholds_pressure = true\nchecks = ["pressure"]'
    assert implied("hand pump", load(write(tmp_path, "machines.toml", text))) == ("mains", True)


def test_a_users_trade_is_on_the_shelf(tmp_path: Path) -> None:
    write(tmp_path, "beehives.toml", 'title = "Beehives"\nparts = ["crown board"]')
    assert "beehives" in trades_on_the_shelf(tmp_path)
    assert bias_words(load(tmp_path, ["beehives"]), ["beehives"])[0] == "crown board"


def test_a_folder_that_is_not_there_is_no_error(tmp_path: Path) -> None:
    assert load(tmp_path / "none") == load(None)


def test_words_for_the_recogniser_are_of_the_trade_first(words: Vocabulary) -> None:
    told = bias_words(words, ["clocks"])
    assert told[0] == "mainspring"
    assert len(told) == len(set(told)) == 120
    assert len(bias_words(words, ["clocks"], most=10)) == 10


def test_without_a_trade_the_trades_share_the_room(words: Vocabulary) -> None:
    told = set(bias_words(words))
    assert sum(bool(told & set(trade.words)) for trade in words.trades.values()) >= len(trades_on_the_shelf(None))
