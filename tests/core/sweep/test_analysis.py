"""What any sweep says of itself, whatever was swept."""

from __future__ import annotations

import math

import pytest

from sweepsheet.job.model import Indicator, Sweeps
from sweepsheet.job.sag import sag_test
from sweepsheet.sweep.analysis import SweepAnalysis, examine
from sweepsheet.sweep.corrections import CorrectedReadings
from tests.cases.jobs import EIGHTHS, QUARTERS, Reading, readings_of

DIAL = Indicator(
    step=0.5, accuracy=0.5, repeatability=0.25, plus_when="plunger_in", contact_angle_deg=0.0,
    holder=None, sag=sag_test([0.0]), sag_allowance=1.0, angle_setting_deg=5.0,
    rig="", sag_date="", sag_bar="", sag_reach=None, reach=None,
)  # fmt: skip


def examined(
    *rows: list[float] | list[Reading],
    positions: tuple[float, ...] = EIGHTHS,
    closing: tuple[Reading, ...] | None = None,
) -> SweepAnalysis:
    readings = tuple(tuple(row) for row in rows)
    sweeps = Sweeps(positions, readings, closing or (None,) * len(rows))
    return examine(CorrectedReadings(positions, readings), sweeps, DIAL)


def test_the_total_reading_holds_every_harmonic_and_the_rest_all_but_the_first() -> None:
    tilted = readings_of(0.0, 3.0, EIGHTHS)
    swept = examined([m + (-1.0) ** i for i, m in enumerate(tilted)])
    assert swept.fitted.tir == pytest.approx(6.0, abs=1e-12)
    assert swept.rest == pytest.approx(2.0, abs=1e-12)
    # Highest at 6, where the waviness adds 1, lowest at 1:30, where it takes 1.
    assert swept.total_reading == pytest.approx(4.0 + 3.0 / math.sqrt(2.0) + 1.0, abs=1e-12)


def test_sweeps_are_taken_together_without_their_zeros() -> None:
    row = readings_of(2.0, 3.0, EIGHTHS)
    swept = examined(row, [m + 50.0 for m in row])
    assert swept.total_reading == pytest.approx(examined(row).total_reading, abs=1e-9)
    assert swept.disagreement is None


def test_a_position_never_reached_counts_for_nothing() -> None:
    row: list[Reading] = [None, *readings_of(2.0, 3.0, EIGHTHS)[1:]]
    swept = examined(row)
    assert swept.means[0] is None
    assert swept.rest == pytest.approx(0.0, abs=1e-12)


def test_the_checks_need_positions_enough() -> None:
    four = examined([0.0, 1.0, 0.0, 1.0], positions=QUARTERS)
    assert (four.second, four.foreign) == (None, None)
    assert four.pairs is not None
    three = examined([0.0, 1.0, 2.0], positions=(0.0, 120.0, 240.0))
    assert (three.pairs, three.second, three.foreign) == (None, None, None)
    assert three.rest == pytest.approx(0.0, abs=1e-12)


def test_the_largest_return_to_zero_is_kept_with_its_sign() -> None:
    row = readings_of(2.0, 3.0, EIGHTHS)
    assert examined(row, row, closing=(0.25, -0.5)).closing_error == -0.5
    assert examined(row).closing_error is None
