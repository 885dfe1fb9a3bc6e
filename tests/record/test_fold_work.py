"""Work, readings, trials, what came in, what was said to the owner, what was taken off, what stays open."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from record.telling import (
    advise,
    back,
    correction,
    doubt,
    fit,
    job,
    machine,
    off,
    reading,
    settled,
    trial,
    work,
)

from benchnotes.record.entries import JobRecord


def jobs(record: JobRecord) -> list[tuple[str, str, str, str]]:
    return [(w.action, w.target, w.status, w.by) for w in record.work]


def test_planned_then_done_is_done() -> None:
    """I'll pop a clean through that tube. ... Tube's clean."""
    assert jobs(job(work("clean", "tube", "planned"), work("clean", "tube"))) == [("clean", "tube", "done", "bench")]


def test_planned_again_after_it_was_done_stays_done() -> None:
    """Oiled the pivots. ... I'll oil them again in the spring."""
    assert jobs(job(work("lubricate", "pivot"), work("lubricate", "pivot", "planned"))) == [
        ("lubricate", "pivot", "done", "bench")
    ]


def test_done_and_then_found_useless_is_failed() -> None:
    """Drop of cleaner in the pot. ... Cleaner's done nothing for it."""
    assert jobs(job(work("clean", "pot"), work("clean", "pot", "failed"))) == [("clean", "pot", "failed", "bench")]


def test_failed_and_then_done_is_two() -> None:
    """Strap wrench on the cap, won't shift. ... Heat on it. It's letting go."""
    assert jobs(job(work("free", "cap", "failed"), work("free", "cap"))) == [
        ("free", "cap", "failed", "bench"),
        ("free", "cap", "done", "bench"),
    ]


def test_a_new_part_fitted_is_also_replaced() -> None:
    """New belt's on."""
    assert jobs(job(fit("belt"))) == [("replace", "belt", "done", "bench")]


def test_fitted_and_said_to_be_replaced_is_one_work() -> None:
    """New belt's on."""
    assert jobs(job((fit("belt"), work("replace", "belt")))) == [("replace", "belt", "done", "bench")]


def test_sent_out_and_not_back() -> None:
    """Drum's away to the retinner's."""
    assert jobs(job(work("send_out", "drum", by="outside"))) == [("send_out", "drum", "done", "outside")]


def test_sent_out_and_back_is_the_work_done_there() -> None:
    """Tank's off up the road. ... He's silver soldered the tank seam."""
    record = job(work("send_out", "tank", "planned", "outside"), work("repair", "tank seam", by="outside"))
    assert jobs(record) == [("repair", "tank seam", "done", "outside")]
    assert len(record.work[0].evidence) == 2


def test_before_and_after_are_two_readings() -> None:
    """Pivot's one three eight. ... One three five now."""
    record = job(reading("pivot", "1.38", "mm", "before"), reading("pivot", "1.35", "mm", "after"))
    assert [(r.value, r.when) for r in record.readings] == [(Decimal("1.38"), "before"), (Decimal("1.35"), "after")]


def test_a_value_told_again_is_one_reading() -> None:
    """Twenty-two mil bore. ... Twenty-two, as I say."""
    (bore,) = job(reading("bore", "22", "mm", "before"), reading("bore", "22", "mm", "before")).readings
    assert len(bore.evidence) == 2


def test_a_value_taken_back_is_no_reading() -> None:
    """Seven mil, no, hang on, eleven."""
    record = job((reading("brush", "7", "mm"), correction(), reading("brush", "11", "mm")))
    assert [r.value for r in record.readings] == [Decimal(11)]


def test_a_correction_leaves_another_thing_s_value_alone() -> None:
    """This one's nine mil, and that one's seven, hang on, eleven."""
    this_one, that_one = reading("brush", "9", "mm", part="this one"), reading("brush", "11", "mm", part="that one")
    assert len(job((this_one, correction(), that_one)).readings) == 2


def test_tries_with_the_same_outcome_and_no_work_between_are_one() -> None:
    """Away she goes. ... And again, not one hiccup."""
    (run,) = job(trial("function", of="motor"), trial("function", of="motor")).tests
    assert (run.of, len(run.evidence)) == ("motor", 2)


def test_before_and_after_work_are_two_trials() -> None:
    """Dripping. New washer in. Still dripping."""
    record = job(trial("leak", "fail", "tap"), fit("washer"), trial("leak", "fail", "tap"))
    assert [t.result for t in record.tests] == ["fail", "fail"]


def test_trials_of_two_things_are_two() -> None:
    """Kettle clicks off. Toaster pops up."""
    assert len(job(trial("function", of="kettle"), trial("function", of="toaster")).tests) == 2


def test_what_is_said_of_power_outweighs_what_the_kind_implies() -> None:
    """Kettle, this. ... Runs off a camping battery, would you believe."""
    record = job(machine("kettle", power="mains", holds_pressure=False), machine("battery", "power", power="battery"))
    assert (record.machine.kind, record.machine.power, record.machine.holds_pressure) == ("kettle", "battery", False)


def test_a_serial_number_is_written_as_one_writes_it() -> None:
    """Serial five four one three."""
    assert job(machine("five four one three", "serial", written="5413")).machine.serial == "5413"


def test_the_same_advice_twice_is_one() -> None:
    """Tell her, drain it before winter. ... Drain it before winter, mind."""
    (told,) = job(advise("drain it before winter"), advise("Drain it  before winter")).advice
    assert (told.text, len(told.evidence)) == ("drain it before winter", 2)


def test_taken_off_and_never_put_back() -> None:
    """Top cover's off. Knob's off. ... Knob back on."""
    assert [a.part for a in job(off("top cover"), off("knob"), back("the knob")).left_apart] == ["top cover"]


def test_a_new_one_fitted_is_put_back() -> None:
    """Belt's off. ... New belt's on."""
    assert job(off("belt"), fit("belt")).left_apart == ()


def test_a_doubt_answered_is_none() -> None:
    """Is that a weep? ... No, that was my own spilling."""
    assert job(doubt("oiler"), settled("oiler")).unsure == ()


def test_a_doubt_about_another_thing_stays() -> None:
    """No idea if that valve holds backwards. Is the gauge right? ... Gauge is right."""
    assert [d.about for d in job(doubt("valve"), doubt("gauge"), settled("gauge")).unsure] == ["valve"]


def test_a_thing_that_was_only_pointed_at_takes_its_name_from_what_it_refers_to() -> None:
    """Oiled it, the pivot."""
    said = replace(work("lubricate", "pivot"), part="it")
    assert job(said).work[0].target == "pivot"
    assert job(replace(said, ref=None)).work == ()


def test_work_on_nothing_named_is_pointed_out() -> None:
    """Adjusted it."""
    record = job(work("adjust", None))
    assert record.work == ()
    assert [n.kind for n in record.notices] == ["unplaced"]
