"""The job record as JSON: one document a job, as `schemas/job-record-1.schema.json` describes it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from decimal import Decimal
from importlib import resources
from typing import Any

from benchnotes.exports.currencies import plain_amount
from benchnotes.record.entries import (
    Advice,
    Charge,
    Entry,
    Fault,
    Item,
    JobRecord,
    LeftApart,
    Machine,
    Notice,
    Part,
    Reading,
    Trial,
    Unsure,
    Work,
)
from benchnotes.record.heard import Evidence, Recording, Unheard, Utterance
from benchnotes.record.job import Heard
from benchnotes.record.money import Money

VERSION = 1
"""Of the published schema; raised where a field changes its meaning or goes."""

Document = dict[str, Any]


def job_document(record: JobRecord, items: Sequence[Item], heard: Heard) -> Document:
    """One job as plain JSON values."""
    return {
        "schema_version": VERSION,
        "currency": record.currency,
        "recordings": [_recording(recording) for recording in heard.recordings],
        "machine": _machine(record.machine),
        "faults": [_fault(fault) for fault in record.faults],
        "parts": [_part(part) for part in record.parts],
        "charges": [_charge(charge) for charge in record.charges],
        "work": [_work(work) for work in record.work],
        "readings": [_reading(reading) for reading in record.readings],
        "tests": [_trial(trial) for trial in record.tests],
        "advice": [_advice(advice) for advice in record.advice],
        "left_apart": [_left_apart(left) for left in record.left_apart],
        "unsure": [_unsure(doubt) for doubt in record.unsure],
        "open_items": [_pointed_out(item) for item in items],
        "notices": [_pointed_out(notice) for notice in record.notices],
        "unheard": [_unheard(gap) for gap in heard.unheard],
        "transcript": [_utterance(said) for said in heard.utterances],
    }


def job_text(document: Document) -> str:
    """The document as text that ends with a line feed."""
    return json.dumps(document, ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def published_schema() -> Document:
    """The JSON Schema (2020-12) that every document keeps."""
    file = resources.files("benchnotes.exports") / "schemas" / f"job-record-{VERSION}.schema.json"
    schema: Document = json.loads(file.read_text(encoding="utf-8"))
    return schema


def _machine(machine: Machine) -> Document:
    return {
        "kind": machine.kind,
        "make": machine.make,
        "model": machine.model,
        "serial": machine.serial,
        "power": machine.power,
        "holds_pressure": machine.holds_pressure,
        **_grounds(machine),
    }


def _fault(fault: Fault) -> Document:
    return {"part": fault.part, "kind": fault.kind, "status": fault.status, **_grounds(fault)}


def _part(part: Part) -> Document:
    return {
        "name": part.name,
        "qty": _number(part.qty),
        "unit_price": _money(part.unit_price),
        "basis": part.basis,
        "prices": [plain_amount(price) for price in part.prices],
        "state": part.state,
        **_grounds(part),
    }


def _charge(charge: Charge) -> Document:
    return {
        "kind": charge.kind,
        "what": charge.what,
        "amount": _money(charge.amount),
        "basis": charge.basis,
        "hours": None if charge.hours is None else _number(charge.hours),
        **_grounds(charge),
    }


def _work(work: Work) -> Document:
    return {"action": work.action, "target": work.target, "status": work.status, "by": work.by, **_grounds(work)}


def _reading(reading: Reading) -> Document:
    return {
        "what": reading.what,
        "value": _number(reading.value),
        "unit": reading.unit,
        "when": reading.when,
        "about": reading.about,
        **_grounds(reading),
    }


def _trial(trial: Trial) -> Document:
    return {"what": trial.what, "result": trial.result, "of": trial.of, **_grounds(trial)}


def _advice(advice: Advice) -> Document:
    return {"text": advice.text, **_grounds(advice)}


def _left_apart(left: LeftApart) -> Document:
    return {"part": left.part, **_grounds(left)}


def _unsure(doubt: Unsure) -> Document:
    return {"about": doubt.about, **_grounds(doubt)}


def _pointed_out(entry: Item | Notice) -> Document:
    return {"kind": entry.kind, "about": entry.about, "why": entry.why, "evidence": _evidence(entry.evidence)}


def _grounds(entry: Entry) -> Document:
    return {"sure": round(entry.sure, 3), "check": entry.check, "evidence": _evidence(entry.evidence)}


def _evidence(evidence: Iterable[Evidence]) -> list[Document]:
    return [{"recording": said.recording, **_span(said.start_s, said.end_s), "heard": said.heard} for said in evidence]


def _recording(recording: Recording) -> Document:
    return {
        "number": recording.number,
        "file": recording.name,
        "kind": recording.kind,
        "sha256": recording.sha256,
        "duration": round(recording.duration_s, 3),
        "started_at": recording.started_at.isoformat() if recording.started_at else None,
        "started_from": recording.started_from,
    }


def _unheard(gap: Unheard) -> Document:
    return {"recording": gap.recording, **_span(gap.start_s, gap.end_s)}


def _utterance(said: Utterance) -> Document:
    return {
        "recording": said.recording,
        **_span(said.start_s, said.end_s),
        "text": said.text,
        "words": [
            {
                "text": word.text,
                **_span(word.start_s, word.end_s),
                "probability": None if word.probability is None else round(word.probability, 3),
            }
            for word in said.words
        ],
    }


def _span(start_s: float, end_s: float) -> Document:
    return {"start": round(start_s, 3), "end": round(end_s, 3)}


def _money(money: Money | None) -> str | None:
    return None if money is None else plain_amount(money)


def _number(value: Decimal) -> int | float:
    return int(value) if value == value.to_integral_value() else float(value)
