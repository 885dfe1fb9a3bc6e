"""What is wrong with the machine, and what became of it."""

from __future__ import annotations

from record.telling import back, clear, fault, fit, job, leave, machine, need, trial, work

from benchnotes.record.entries import JobRecord


def statuses(record: JobRecord) -> dict[str, str]:
    return {f"{f.part} {f.kind}": f.status for f in record.faults}


def test_a_fault_told_twice_is_one() -> None:
    """The hose tail's split. ... So that's the split tail there, look."""
    (found,) = job(fault("hose tail", "cracked"), clear("inlet"), fault("Hose tails", "cracked")).faults
    assert (found.part, found.kind, found.status) == ("hose tail", "cracked", "open")
    assert [e.start_s for e in found.evidence] == [0, 20]


def test_two_conditions_of_one_part_are_two_faults() -> None:
    """The brake shoes are swimming in grease, and the linings on them are down to nothing."""
    assert len(job(fault("brake shoe", "dirty"), fault("brake shoe", "worn")).faults) == 2


def test_a_symptom_with_no_part_is_of_the_machine() -> None:
    """Mixer, this one. ... Growls like a badger."""
    (found,) = job(machine("mixer"), fault(None, "noisy")).faults
    assert found.part == "mixer"


def test_a_fault_with_neither_part_nor_machine_named_is_still_kept() -> None:
    """Growls like a badger."""
    assert job(fault(None, "noisy")).faults[0].part == "machine"


def test_nothing_done_leaves_a_fault_open() -> None:
    """Gong's loose on its block. ... Strikes the hour all the same."""
    assert statuses(job(fault("gong", "loose"), trial("function", of="strike"))) == {"gong loose": "open"}


def test_put_right_and_tried_is_verified() -> None:
    """Leather's split. New leather in. Pumps up a treat now, that leather."""
    record = job(fault("pump leather", "cracked"), fit("pump leather"), trial("pressure", of="pump leather"))
    assert statuses(record) == {"pump leather cracked": "verified"}


def test_put_right_and_looked_at_is_verified() -> None:
    """Rust patch on the sole. Scotch pad and oil. Gone, no pits."""
    record = job(fault("sole", "corroded"), work("clean", "sole"), clear("sole"))
    assert statuses(record) == {"sole corroded": "verified"}


def test_put_right_and_nothing_tried_is_only_fixed() -> None:
    """Handle's split. Epoxied it and clamped it."""
    assert statuses(job(fault("handle", "cracked"), work("repair", "handle"))) == {"handle cracked": "fixed"}


def test_a_symptom_cured_by_work_on_its_cause_is_verified() -> None:
    """Won't hold pressure. Cap seal's perished. New seal in. Holds now."""
    record = job(
        fault("tank pressure", "leaking"), trial("pressure", "fail", "tank pressure"), fault("cap seal", "perished"),
        fit("cap seal"), trial("pressure", of="tank pressure"),
    )  # fmt: skip
    assert statuses(record) == {"tank pressure leaking": "verified", "cap seal perished": "verified"}


def test_still_leaking_after_the_work_is_not_verified() -> None:
    """Gland's weeping. Nipped it up. Still weeping."""
    record = job(fault("gland", "leaking"), work("adjust", "gland"), trial("leak", "fail", "gland"))
    assert statuses(record)["gland leaking"] != "verified"


def test_failed_work_leaves_a_fault_open() -> None:
    """Speed pot's scratchy. Cleaner in it: useless. Needs a new one."""
    record = job(fault("speed pot", "electrical"), work("clean", "speed pot", "failed"), need("speed pot"))
    assert statuses(record) == {"speed pot electrical": "open"}


def test_left_as_it_is() -> None:
    """Wee dent in the body. That's to stay."""
    assert statuses(job(fault("body", "deformed"), leave("body"))) == {"body deformed": "left"}


def test_left_and_then_mended_after_all_is_not_left() -> None:
    """Dent in the body, leave that. ... Och, I've knocked the dent out. Straight as you like."""
    record = job(fault("body", "deformed"), leave("body"), work("repair", "body"), clear("body"))
    assert statuses(record) == {"body deformed": "verified"}


def test_what_is_left_is_the_fault_found_last_not_the_one_mended() -> None:
    """Impeller's full of string. Cut that out. A vane's chipped, mind: that can stop. Spins free now, the impeller."""
    record = job(
        fault("impeller", "blocked"), work("clean", "impeller"), fault("impeller", "cracked"), leave("impeller"),
        clear("impeller"),
    )  # fmt: skip
    assert statuses(record) == {"impeller blocked": "verified", "impeller cracked": "left"}


def test_putting_back_is_no_remedy() -> None:
    """Cover's bent. Cover back on."""
    assert statuses(job(fault("cover", "deformed"), back("cover"))) == {"cover deformed": "open"}
