"""One name for each thing: the likeliest of those that were said, that stand near, or that are made of the two."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from benchnotes.language.belonging.name_choices import NamingScene, choices
from benchnotes.language.belonging.name_signs import signs_of
from benchnotes.language.belonging.name_weights import WEIGHTS
from benchnotes.language.marking.marker import Mark


def thing_names(
    marks: Sequence[Mark],
    thing: Sequence[int | None],
    texts: Sequence[str],
    weights: Mapping[str, float] = WEIGHTS,
) -> dict[int, str | None]:
    """Thing -> its name, the repairer's own words; None where nothing near it has a name.

    `thing`: the thing each mark is about, see `pointing.things`. "Windings, I checked: 310 on the start" -> the thing
    called "the start" is "start winding".
    """
    scene = NamingScene(texts, marks, thing)
    return {each: _likeliest(scene, each, weights) for each in scene.members}


def _likeliest(scene: NamingScene, thing: int, weights: Mapping[str, float]) -> str | None:
    told = signs_of(scene, thing, choices(scene, thing))
    scores = {
        name: sum(weights.get(sign, 0.0) * value for sign, value in signs.items()) for name, signs in told.items()
    }
    return max(scores, key=scores.__getitem__, default=None)
