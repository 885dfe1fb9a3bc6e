"""Our components in the English pipeline: each says what it needs, and finds what is listed however it is said."""

from __future__ import annotations

import pytest
from spacy.language import Language

from benchnotes.language.amount_hits import amounts_in
from benchnotes.language.pipeline import COMPONENTS, build
from benchnotes.language.vocabulary import Vocabulary, gather
from benchnotes.language.vocabulary_hits import Hit, VocabularyHits
from benchnotes.language.vocabulary_sheets import Sheet
from benchnotes.trades.english import open_english
from benchnotes.trades.shelf import load

SMALL = {
    "parts": ["pump leather", "bush"],
    "conditions": {"worn": {"is": ["had its day"]}, "leaking": {"does": ["weep"]}, "cracked": {"has": ["crack"]}},
    "work": {"clean": ["wash ~ out"], "lubricate": ["oil"], "adjust": ["wind up"]},
    "irregular": {"wind": ["wound"], "weep": ["wept"]},
    "idioms": ["oil lamp"],
}


@pytest.fixture(scope="module")
def small() -> Vocabulary:
    return gather([Sheet("small", SMALL)])


@pytest.fixture(scope="module")
def english(small: Vocabulary) -> Language:
    return build(open_english(), small)


def hits(nlp: Language, text: str) -> list[tuple[str, str]]:
    doc = nlp(text)
    found: tuple[Hit, ...] = doc._.hits
    return [(hit.phrase.kind or hit.phrase.group, doc[hit.start : hit.end].text) for hit in found]


def test_analysis_of_the_pipeline_finds_no_problem(english: Language) -> None:
    analysis = english.analyze_pipes()
    assert not [problem for problems in analysis["problems"].values() for problem in problems]
    assert english.pipe_names[-3:] == list(COMPONENTS)


def test_analysis_would_tell_if_a_component_came_too_early(small: Vocabulary) -> None:
    nlp = open_english()
    nlp.add_pipe("bench_clauses", first=True)
    assert nlp.analyze_pipes()["problems"]["bench_clauses"] == ["token.tag"]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("The pump leathers wept.", [("part", "pump leathers"), ("leaking", "wept")]),
        ("it was weeping at both bushes", [("leaking", "weeping"), ("part", "bushes")]),
        ("two cracks in it", [("cracked", "cracks")]),
        ("Washed the whole tank out.", [("clean", "Washed the whole tank out")]),
        ("Washed, and the tank is out.", []),
        ("I wound it, I wound up the spring", [("adjust", "wound up")]),
        ("had its, erm, day", []),
        ("Had, its day.", [("worn", "Had, its day")]),
        ("He had. Its day.", []),
        ("some oil on the bench", []),
        ("I oil the oil lamp", [("lubricate", "oil")]),
    ],
)
def test_listed_words_are_found_in_every_form(english: Language, text: str, found: list[tuple[str, str]]) -> None:
    assert hits(english, text) == found


@pytest.mark.parametrize("text", ["it didn't weep", "it didnt weep", "it did not weep", "IT DIDN’T WEEP"])
def test_captions_and_print_are_matched_alike(english: Language, text: str) -> None:
    assert [kind for kind, _ in hits(english, text)] == ["leaking"]


def test_building_again_replaces_the_words() -> None:
    nlp = open_english()
    build(nlp, gather([Sheet("a", {"parts": ["flange"]})]))
    build(nlp, gather([Sheet("b", {"parts": ["spigot"]})]))
    assert hits(nlp, "the flange and the spigot") == [("part", "spigot")]
    assert nlp.pipe_names.count("bench_hits") == 1


def test_every_phrase_of_the_package_is_found_as_it_is_written() -> None:
    """Matching goes over words and not over parses, so a phrase said alone has to be found."""
    words = load(None)
    nlp = build(open_english(), words)
    listed = nlp.get_pipe("bench_hits")
    assert isinstance(listed, VocabularyHits)
    forgotten = []
    for phrase in words.phrases:
        said = phrase.text.replace("~", "it")
        if phrase.text not in {hit.phrase.text for hit in listed.anywhere(nlp.make_doc(said))}:
            forgotten.append(phrase)
    assert not forgotten


def test_amounts_stand_where_they_are_said() -> None:
    units = load(None).units
    text = "Bore is 22 mil, four pounds 50 the pair, or six fifty. A foot of wire, three of them"
    found = [(hit.kind, text[hit.start : hit.end]) for hit in amounts_in(text, units)]
    assert found == [
        ("measure", "22 mil"),
        ("money", "four pounds 50"),
        ("pair", "six fifty"),
        ("number", "three"),
    ]
