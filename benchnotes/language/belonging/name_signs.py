"""What speaks for each name of a thing, as numbers that learned weights add up."""

from __future__ import annotations

import math
from collections import Counter

from benchnotes.language.belonging.likeness import likeness, taken_apart
from benchnotes.language.belonging.name_choices import Choices, NamingScene
from benchnotes.language.belonging.naming import LEFT_OUT, SIDES
from benchnotes.language.belonging.phrases import phrases, spoken_words
from benchnotes.language.belonging.quantities import OF_UNIT, QUANTITIES

Signs = dict[str, float]
_PART_KINDS = frozenset(("need", "order", "fit", "drop", "price"))
BY_GROUP = frozenset(
    [
        "own",
        "own_share",
        "like",
        "covered",
        "covers",
        "machine",
        "quantity_head",
        "unit_quantity",
        "with_quantity",
        "with_told_quantity",
        "text_0",
        "text_-1",
        "text_-2",
        "other_thing_near",
        "of_others",
        "marked_often",
        "said_often",
        "words_1",
        "words_2",
        "words_3",
        "words_4",
        "side_first",
        "own_turned",
        "own_piece",
        "other_before_own",
        "word_before_own",
        "in_span",
        "never_said",
        "head_share",
    ]
)
"""Signs that tell something else of a part than of a value, a trial or a doubt."""


def group(scene: NamingScene, thing: int) -> str:
    """What sort of thing it is, by what is said of it."""
    kinds = {scene.marks[at].kind for at in scene.members[thing]}
    if kinds & _PART_KINDS:
        return "part"
    for name, within in (("reading", {"reading"}), ("test", {"reading", "test"}), ("doubt", {"doubt", "settled"})):
        if kinds <= within:
            return name
    return "fault" if "fault" in kinds else "other"


class Weighing:
    """One thing and what all its names are measured against."""

    def __init__(self, scene: NamingScene, thing: int) -> None:
        self.scene, self.thing = scene, thing
        self.own = scene.own(thing)
        self.group = group(scene, thing)
        self.counts = Counter(self.own)
        self.words = Counter(word for name in self.own for word in name.split())
        self.heads = Counter(name.split()[-1] for name in self.own)
        self.apart = [(taken_apart(name), count) for name, count in self.counts.items()]
        self.usual = OF_UNIT.get(scene.unit(thing) or "", ())
        places = scene.places(thing)
        self.said_with = [{phrase.name for phrase in phrases(scene.texts[place])} for place in places]
        spans = (scene.marks[at].span for at in scene.members[thing])
        texts = (scene.texts[span.utterance][span.start : span.end] for span in spans)
        self.span_words = frozenset(word for text in texts for word in spoken_words(text))

    def signs(self, name: str, sources: Signs) -> Signs:
        """`sources`: where the name comes from, see `choices`. Signs that are nought are left out."""
        made = sources | self._of_own(name) | self._of_talk(name) | _of_words(name)
        words = name.split()
        made["unit_quantity"] = float(words[-1] in self.usual)
        made["in_span"] = sum(word in self.span_words for word in words) / len(words)
        told = {sign: value for sign, value in made.items() if value}
        more = {f"{sign}|{self.group}": value for sign, value in told.items() if sign in BY_GROUP}
        return told | more

    def _of_own(self, name: str) -> Signs:
        if not self.own:
            return {"nameless": 1.0}
        words, other = name.split(), taken_apart(name)
        like = [(likeness(other, own).best, count) for own, count in self.apart]
        return {
            "own_share": self.counts[name] / len(self.own),
            "own_often": math.log1p(self.counts[name]),
            "is_first": float(name == self.own[0]),
            "is_last": float(name == self.own[-1]),
            "covered": sum(word in self.words for word in words) / len(words),
            "covers": sum(n for word, n in self.words.items() if word in words) / self.words.total(),
            "head_share": self.heads[words[-1]] / len(self.own),
            "head_in_own": float(words[-1] in self.words),
            "like": sum(best * count for best, count in like) / len(self.own),
            "likest": max(best for best, _ in like),
        }

    def _of_talk(self, name: str) -> Signs:
        said = self.scene.often_said[name]
        return {
            "marked_often": math.log1p(self.scene.often_marked[name]),
            "said_often": math.log1p(said),
            "never_said": float(said == 0),
            "of_others": float(bool(self.scene.owners.get(name, set()) - {self.thing})),
            "said_with_share": sum(name in said_with for said_with in self.said_with) / len(self.said_with),
        }


def _of_words(name: str) -> Signs:
    words = name.split()
    return {
        f"words_{min(len(words), 5)}": 1.0,
        "letters": math.log1p(len(name)),
        "quantity_head": float(words[-1] in QUANTITIES),
        "side_first": float(words[0] in SIDES),
        "side_head": float(words[-1] in SIDES or words[-1] in LEFT_OUT),
        "figures": float(any(letter.isdigit() for letter in name)),
        "said_twice": float(len(set(words)) < len(words)),
        "like_a_verb": float(words[-1].endswith(("ing", "ed", "ly"))),
    }


def signs_of(scene: NamingScene, thing: int, names: Choices) -> dict[str, Signs]:
    """Name -> what speaks for it."""
    weighing = Weighing(scene, thing)
    return {name: weighing.signs(name, sources) for name, sources in names.items()}
