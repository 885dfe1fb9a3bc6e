"""The amounts of the training narrations with the talk around them and what they are known to be."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

from benchnotes.language.amounts.unit_words import UnitWords

ROOT = Path(__file__).resolve().parents[3]
TRAIN = ROOT / "training" / "narrations" / "train"
FOLLOWING = 2
"""How many utterances after an amount are read with it: as many as a live reader waits for."""


@dataclass(frozen=True, slots=True)
class Narrated:
    """One `amount` string of a statement, and what the known record makes of it."""

    where: str
    text: str
    currency: str
    what: str
    before: str
    after: str
    known: frozenset[tuple[Decimal, str]]
    """Values with their unit or currency; a price may be any that the record keeps for that part."""
    kind: str | None = None
    """Of a charge."""
    basis: str | None = None
    earlier: Decimal | None = None
    """The price said before of the same thing."""
    an_estimate_overtaken: bool = False
    """The record keeps only the price that later proved near it."""


@cache
def unit_words() -> UnitWords:
    return UnitWords.from_mapping(tomllib.loads((ROOT / "benchnotes" / "trades" / "units.toml").read_text("utf-8")))


@cache
def readings() -> tuple[Narrated, ...]:
    return tuple(_reading(job, name, said, at) for name, job, said, at in _statements({"reading"}))


@cache
def prices() -> tuple[Narrated, ...]:
    """Prices and charges that carry an amount; what was said before of the same thing goes with the next."""
    found, earlier = [], {}
    for name, job, said, at in _statements({"price", "charge"}):
        key = (name, said.get("ref") or said.get("words"))
        price = _price(job, name, said, at, earlier.get(key))
        found.append(price)
        if said.get("ref") and len(price.known) == 1:
            earlier[key] = next(iter(price.known))[0]
    return tuple(found)


@cache
def hours() -> tuple[tuple[str, str, str, Decimal], ...]:
    """Words of a charge, the talk before and the whole utterance, and the hours known; "" where no words are."""
    found = []
    for _, job, said, _ in _statements({"charge"}, with_amount=False):
        if said.get("hours") is not None:
            texts = [utterance["text"] for utterance in job["utterances"]]
            before = texts[said["u"] - 1] if said["u"] else ""
            found.append((said.get("words") or "", before, texts[said["u"]], Decimal(str(said["hours"]))))
    return tuple(found)


def _statements(kinds: set[str], *, with_amount: bool = True) -> Iterator[tuple[str, Any, Any, int]]:
    """File, job, statement and the place of its amount in the utterance (-1 where it has none)."""
    for path in sorted(TRAIN.glob("*.json")):
        job = json.loads(path.read_text("utf-8"))
        taken: dict[tuple[int, str], int] = {}
        for said in job.get("said", ()):
            if said["say"] not in kinds or (with_amount and not said.get("amount")):
                continue
            key = (said["u"], said.get("amount") or "")
            at = job["utterances"][said["u"]]["text"].find(key[1], taken.get(key, 0))
            taken[key] = at + len(key[1])
            yield path.name, job, said, at


def _reading(job: Any, name: str, said: Any, at: int) -> Narrated:
    before, after = _around(job, said, at)
    known = frozenset({(Decimal(str(said["value"])), said["unit"])})
    return Narrated(name, said["amount"], job["currency"], said["ref"] or "", before, after, known)


def _price(job: Any, name: str, said: Any, at: int, earlier: Decimal | None) -> Narrated:
    before, after = _around(job, said, at)
    amounts = _known_part(job, said) if said["say"] == "price" else _known_charge(job, said)
    known = frozenset((Decimal(amount), job["currency"]) for amount in amounts if amount)
    later = [
        other
        for other in job["said"]
        if other["say"] == said["say"] and other.get("ref") == said.get("ref") and other["u"] > said["u"]
    ]
    estimate = bool(later) and (said.get("basis") == "about" or said["say"] == "charge")
    return Narrated(
        name, said["amount"], job["currency"], said.get("ref") or "", before, after, known, said.get("kind"),
        said.get("basis"), earlier, estimate,
    )  # fmt: skip


def _around(job: Any, said: Any, at: int) -> tuple[str, str]:
    texts = [utterance["text"] for utterance in job["utterances"]]
    here = texts[said["u"]]
    before = "\n".join([*texts[: said["u"]], here[:at]])
    after = [here[at + len(said["amount"]) :], *texts[said["u"] + 1 : said["u"] + 1 + FOLLOWING]]
    return before, "\n".join(after)


def _known_part(job: Any, said: Any) -> list[str | None]:
    parts = [part for part in job["gold"]["parts"] if part["name"] == said["ref"]]
    return [amount for part in parts for amount in (part.get("unit_price"), *(part.get("prices") or ()))]


def _known_charge(job: Any, said: Any) -> list[str | None]:
    same_kind = [charge for charge in job["gold"]["charges"] if charge["kind"] == said["kind"]]
    named = [charge for charge in same_kind if charge["what"] == said.get("ref")]
    return [charge["amount"] for charge in named or same_kind]
