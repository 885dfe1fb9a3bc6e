"""How much each sign of a fault's story tells for each status. Made by `python -m training.fit_proof`; not by hand."""

from __future__ import annotations

from collections.abc import Mapping

from benchnotes.record.terms import FaultStatus

Weights = Mapping[str, tuple[float, float, float]]
"""Sign -> how much it tells for each of STATUSES."""
STATUSES: tuple[FaultStatus, ...] = ("open", "fixed", "verified")

WEIGHTS: Weights = {
    "always": (-0.342, -0.439, 0.780),
    "only_near_part_worked_on": (-0.310, 0.264, 0.046),
    "only_elsewhere_worked_on": (0.699, -0.231, -0.467),
    "nothing_worked_on": (1.852, -1.140, -0.712),
    "worked_on_before_only": (-0.585, -0.144, 0.729),
    "machined": (-0.116, -0.838, 0.954),
    "repaired": (-0.259, 0.622, -0.363),
    "other_work": (2.555, -1.202, -1.354),
    "failed_last": (2.365, -1.718, -0.647),
    "planned_only": (2.395, -0.671, -1.724),
    "part_waited_for": (3.009, -1.206, -1.803),
    "seen_right": (-2.182, -0.639, 2.821),
    "seen_right_without_work": (-1.270, 0.273, 0.997),
    "last_trial_bad": (-0.458, 2.609, -2.151),
    "ever_tried_bad": (0.981, -0.967, -0.013),
    "worked_on_and_not_looked_at": (-1.670, 1.580, 0.090),
    "worked_on_and_nothing_passed": (-0.022, 1.101, -1.079),
    "early": (0.946, 0.225, -1.171),
    "passed_since": (-0.177, -0.687, 0.864),
    "next_trial_close_and_good": (-0.313, -0.510, 0.822),
    "worked_on_and_dry": (-0.155, -0.274, 0.429),
    "worked_on_and_cause_of_last_trouble": (-0.488, -0.400, 0.888),
    "worked_on_and_cause_of_a_cure": (-0.531, -0.073, 0.604),
}
"""Where every statement is sure: typed, or known."""

WEIGHTS_READ: Weights = {
    "always": (-0.892, -0.604, 1.495),
    "only_near_part_worked_on": (0.011, -0.142, 0.132),
    "only_elsewhere_worked_on": (0.442, -0.125, -0.317),
    "nothing_worked_on": (1.268, -1.055, -0.213),
    "worked_on_before_only": (-0.038, -0.213, 0.251),
    "machined": (-0.361, -0.685, 1.046),
    "repaired": (0.002, 0.226, -0.228),
    "other_work": (1.345, -0.703, -0.642),
    "failed_last": (0.816, -0.962, 0.145),
    "planned_only": (1.343, -0.547, -0.796),
    "part_waited_for": (2.074, -1.357, -0.718),
    "seen_right": (-1.418, -0.208, 1.626),
    "seen_right_without_work": (0.317, -0.407, 0.090),
    "last_trial_bad": (-0.371, 1.255, -0.884),
    "ever_tried_bad": (0.381, -0.726, 0.345),
    "worked_on_and_not_looked_at": (-0.877, 0.520, 0.358),
    "worked_on_and_nothing_passed": (-0.384, 0.345, 0.039),
    "early": (1.066, 0.539, -1.605),
    "passed_since": (0.007, -0.311, 0.304),
    "next_trial_close_and_good": (-0.329, -0.206, 0.535),
    "worked_on_and_dry": (0.330, -0.476, 0.146),
    "worked_on_and_cause_of_last_trouble": (0.157, -0.314, 0.157),
    "worked_on_and_cause_of_a_cure": (-0.261, 0.090, 0.171),
}
"""Where a reader made the statements, and misses and misnames some."""
