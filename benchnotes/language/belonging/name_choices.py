"""What a thing may be called: what it was called, what was said around it, and the two put together."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from benchnotes.language.belonging.likeness import taken_apart
from benchnotes.language.belonging.naming import plain_name
from benchnotes.language.belonging.phrases import LONGEST, phrases
from benchnotes.language.belonging.pointing import said_part
from benchnotes.language.belonging.quantities import OF_UNIT, QUANTITIES
from benchnotes.language.marking.marker import Mark

AROUND = (0, -1, -2)
"""Utterances from a mention in which its name is looked for."""
MENTIONS = 6
"""Mentions, names and neighbours that are looked at: a bound on the work, more than one in fifty things has."""
NEIGHBOURS = 8
LONGEST_NAME = 40
_LINKS = re.compile(r"\b(?:of|on|for|in|to|from)\b")
Choices = dict[str, dict[str, float]]
"""Name -> where it comes from, each sign 1."""


@dataclass(frozen=True)
class NamingScene:
    """The talk, its marks, and which of them are about one thing."""

    texts: Sequence[str]
    marks: Sequence[Mark]
    thing: Sequence[int | None]

    @cached_property
    def said(self) -> tuple[str, ...]:
        """What each mark calls its thing; empty where it only points."""
        parts = (said_part(mark, self.texts) for mark in self.marks)
        return tuple(plain_name(part) if part and not taken_apart(part).points else "" for part in parts)

    @cached_property
    def members(self) -> dict[int, list[int]]:
        found: dict[int, list[int]] = defaultdict(list)
        for at, thing in enumerate(self.thing):
            if thing is not None:
                found[thing].append(at)
        return dict(found)

    @cached_property
    def named_in(self) -> dict[int, list[tuple[str, int | None]]]:
        """Utterance -> names of things that stand in it, with the thing."""
        found: dict[int, list[tuple[str, int | None]]] = defaultdict(list)
        for mark, name, thing in zip(self.marks, self.said, self.thing, strict=True):
            if name and mark.part:
                found[mark.part.utterance].append((name, thing))
        return found

    @cached_property
    def often_marked(self) -> Counter[str]:
        return Counter(name for name in self.said if name)

    @cached_property
    def often_said(self) -> Counter[str]:
        """In how many utterances each phrase stands."""
        return Counter(name for text in self.texts for name in {phrase.name for phrase in phrases(text)})

    @cached_property
    def owners(self) -> dict[str, set[int | None]]:
        found: dict[str, set[int | None]] = defaultdict(set)
        for name, thing in zip(self.said, self.thing, strict=True):
            if name:
                found[name].add(thing)
        return found

    @cached_property
    def machine(self) -> str:
        """The kind of machine as first said."""
        kinds = (m for m in self.marks if m.kind == "machine" and m.attributes.get("field") == "kind")
        names = (plain_name(self.texts[m.span.utterance][m.span.start : m.span.end]) for m in kinds)
        return next((name for name in names if name), "")

    def own(self, thing: int) -> list[str]:
        return [self.said[at] for at in self.members[thing] if self.said[at]]

    def places(self, thing: int) -> list[int]:
        """Utterances that speak of it, each once."""
        return list(dict.fromkeys(self.marks[at].span.utterance for at in self.members[thing]))

    def unit(self, thing: int) -> str | None:
        marks = (self.marks[at] for at in self.members[thing])
        return next((mark.attributes.get("unit") for mark in marks if mark.kind == "reading"), None)


def choices(scene: NamingScene, thing: int) -> Choices:
    """Every name that is weighed for the thing."""
    found: Choices = {}
    for name, sign in _all(scene, thing):
        if name and len(name) <= LONGEST_NAME:
            found.setdefault(name, {})[sign] = 1.0
    return found


def _all(scene: NamingScene, thing: int) -> Iterator[tuple[str, str]]:
    own = list(dict.fromkeys(scene.own(thing)))
    others = _others(scene, thing)
    yield from _own(scene, thing)
    yield from _around(scene, thing)
    yield from ((name, "other_thing_near") for name in others)
    yield from _measured(scene, thing, [*own[:MENTIONS], *others[:MENTIONS], scene.machine])
    yield from _joined(scene, thing, own[:4], others[:NEIGHBOURS])
    if scene.machine:
        yield from ((name, "machine") for name in (scene.machine, scene.machine.split()[-1]))


def _others(scene: NamingScene, thing: int) -> list[str]:
    """Names of other things said with it or shortly before."""
    own = set(scene.own(thing))
    near = (scene.named_in.get(u + step, ()) for u in scene.places(thing)[:MENTIONS] for step in (0, -1, -2))
    return list(dict.fromkeys(name for names in near for name, of in names if of != thing and name not in own))


def _own(scene: NamingScene, thing: int) -> Iterator[tuple[str, str]]:
    """ "the left rear shoe" -> that, "rear shoe", "shoe", "left rear"; pieces of "X of the Y"."""
    for name in scene.own(thing):
        yield name, "own"
        words = name.split()
        for at in range(1, len(words)):
            yield " ".join(words[at:]), "own_end"
            yield " ".join(words[:at]), "own_start"
    for at in scene.members[thing]:
        pieces = _LINKS.split((said_part(scene.marks[at], scene.texts) or "").lower()) if scene.said[at] else []
        if len(pieces) > 1:
            plain = [plain_name(piece) for piece in pieces]
            yield from ((piece, "own_piece") for piece in plain)
            if plain[0] and plain[-1]:
                yield f"{plain[-1]} {plain[0]}", "own_turned"


def _around(scene: NamingScene, thing: int) -> Iterator[tuple[str, str]]:
    for which, place in enumerate(scene.places(thing)[:MENTIONS]):
        for step in AROUND:
            if 0 <= place + step < len(scene.texts):
                for phrase in phrases(scene.texts[place + step]):
                    yield phrase.name, f"text_{step}"
                    if phrase.first and phrase.last:
                        yield phrase.name, "run_whole"
                    if phrase.first:
                        yield phrase.name, "run_start"
                    if phrase.last:
                        yield phrase.name, "run_end"
                    if which == 0:
                        yield phrase.name, f"first_{step}"


def _measured(scene: NamingScene, thing: int, names: Sequence[str]) -> Iterator[tuple[str, str]]:
    """ "bellows" of which kPa are told -> "bellows pressure"."""
    usual = OF_UNIT.get(scene.unit(thing) or "", ())
    told = [p.name for u in scene.places(thing)[:MENTIONS] for p in phrases(scene.texts[u]) if p.name in QUANTITIES]
    yield from ((quantity, "quantity_of_unit") for quantity in usual)
    for quantity in dict.fromkeys((*usual, *told)):
        for name in names:
            if name and quantity not in name.split():
                yield f"{name} {quantity}", "with_quantity"
                if quantity in told:
                    yield f"{name} {quantity}", "with_told_quantity"


def _joined(scene: NamingScene, thing: int, own: Sequence[str], others: Sequence[str]) -> Iterator[tuple[str, str]]:
    """ "Windings ... on the start" -> "start winding", "winding start"."""
    near = [u + step for u in scene.places(thing)[:MENTIONS] for step in (0, -1) if u + step >= 0]
    words = list(dict.fromkeys(p.name for u in near for p in phrases(scene.texts[u]) if " " not in p.name))
    for name in own:
        said = name.split()
        for other in others:
            if not set(other.split()) & set(said):
                yield f"{other} {name}", "other_before_own"
                yield f"{name} {other}", "own_before_other"
        if len(said) < LONGEST:
            yield from ((f"{word} {name}", "word_before_own") for word in words[:12] if word not in said)
