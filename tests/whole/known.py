"""What is known to be said in the demo recordings, set beside what the program read from their sound."""

from __future__ import annotations

import copy
import importlib.util
import json
from pathlib import Path
from types import ModuleType
from typing import Any

Json = dict[str, Any]


def narration(demo_audio: Path, name: str) -> Json:
    """Words, times on the job's time line, and the known record of one demo job."""
    loaded: Json = json.loads((demo_audio / f"{name}.json").read_text(encoding="utf-8"))
    return loaded


def scorer(root: Path) -> ModuleType:
    """`training/score.py`: a file to be run, not a package of ours, so it is loaded from where it stands."""
    spec = importlib.util.spec_from_file_location("score", root / "training/score.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def on_time_line(record: Json, known: Json) -> Json:
    """The record with every evidence moved to the job's time line, as the scorer counts."""
    moved = copy.deepcopy(record)
    starts = {number: recording["starts_at"] for number, recording in enumerate(known["recordings"], 1)}
    for evidence in evidences(moved):
        evidence["start"] += starts[evidence["recording"]]
        evidence["end"] += starts[evidence["recording"]]
    return moved


def evidences(record: Json) -> list[Json]:
    """Every evidence of the record, of entries and of items still to do."""
    found: list[Json] = []
    for value in record.values():
        for entry in value if isinstance(value, list) else [value]:
            if isinstance(entry, dict):
                found += entry.get("evidence", [])
    return found


def recall(score: ModuleType, known: Json, record: Json) -> dict[str, float]:
    """Share of the known entries that were found, by category, and over all of them."""
    counted = score.score_one(known, on_time_line(record, known))
    by_category = {name: c["loose"] / c["known"] for name, c in counted.items() if c["known"]}
    total = sum(c["known"] for c in counted.values())
    by_category["all"] = sum(c["loose"] for c in counted.values()) / total
    return by_category


def abouts(record: Json, kind: str) -> str:
    """What the items of one kind are about, all in one line, to look for a word in."""
    return " | ".join(item["about"] for item in record["open_items"] if item["kind"] == kind)
