"""What the readings are worth, source by source (see also tests/published)."""

from __future__ import annotations

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.sweep.corrections import CorrectedReadings
from sweepsheet.sweep.harmonic import fit
from sweepsheet.sweep.repeats import STATED_DOF, observed_scatter, weighed
from sweepsheet.sweep.uncertainty import rectangular, step_uncertainty
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    QUARTERS,
    Data,
    bore_of,
    make_job,
    readings_of,
)


def covariance(
    *sweeps: list[float], positions: tuple[float, ...] = QUARTERS, **dial: object
) -> Data:
    """The covariance of a bore swept with a dial that is perfect but for what is named."""
    bore = bore_of(make_job(*sweeps, positions=positions, indicator={**PERFECT, **dial}))
    (xx, xy), (yx, yy) = bore["covariance"]
    assert xy == yx
    return {"xx": xx, "xy": xy, "yy": yy}


def test_standard_uncertainties() -> None:
    assert rectangular(3.0) == pytest.approx(math.sqrt(3.0), abs=1e-15)
    assert step_uncertainty(1.0) == pytest.approx(rectangular(0.5), abs=1e-15)


def test_a_perfect_dial_leaves_no_doubt() -> None:
    cov = covariance(readings_of(3.0, -4.0))
    assert max(map(abs, cov.values())) < 1e-25  # the square of a rounding


@pytest.mark.parametrize(
    ("dial", "variance"),
    [
        ({"accuracy": 1.0}, 1.0 / 3.0),
        ({"step": 1.0}, 1.0 / 12.0),
        ({"repeatability": 1.0}, 1.0),
        ({"step": 1.0, "accuracy": 1.0, "repeatability": 1.0}, 1.0 / 3.0 + 1.0 / 12.0 + 1.0),
    ],
)
def test_sources_add_up_as_variances(dial: Data, variance: float) -> None:
    """Four positions halve the variance of one reading, the same in every direction."""
    cov = covariance([0.0] * 4, **dial)
    # A sag test is the difference of two readings of the dial; it counts half in height.
    cov["yy"] -= (
        dial.get("step", 0.0) ** 2 / 6.0 + 2.0 * dial.get("repeatability", 0.0) ** 2
    ) / 4.0
    assert cov == pytest.approx({"xx": variance / 2, "xy": 0.0, "yy": variance / 2}, abs=1e-12)


def test_setting_of_the_crank_matters_where_the_reading_changes_fast() -> None:
    """An offset straight down changes nothing at 12 and 6 and most at 3 and 9: doubt across."""
    cov = covariance(readings_of(0.0, -10.0), angle_setting_deg=5.0)
    turn = math.radians(5.0) / math.sqrt(3.0)
    assert cov["xx"] == pytest.approx((10.0 * turn) ** 2 / 2.0, abs=1e-12)
    assert cov["yy"] == pytest.approx(0.0, abs=1e-12)


def test_setting_of_the_crank_matters_not_without_an_offset() -> None:
    assert covariance([0.0] * 4, angle_setting_deg=45.0)["xx"] == 0.0


def test_a_second_sweep_halves_the_scatter_but_not_the_error_of_the_dial() -> None:
    """Only what is new in every reading is averaged out."""
    rows = [[0.0] * 4, [0.0] * 4]
    alone, twice = covariance([0.0] * 4, accuracy=1.0), covariance(*rows, accuracy=1.0)
    assert twice == pytest.approx(alone, abs=1e-12)
    # Two sweeps that agree fully say less than the stated scatter, and weigh 3 against 3.
    alone, twice = covariance([0.0] * 4, repeatability=1.0), covariance(*rows, repeatability=1.0)
    assert twice["xx"] == pytest.approx(alone["xx"] / 2.0 * 0.5, abs=1e-12)


@pytest.mark.parametrize(
    ("dial", "yy"),
    [
        ({"sag": None, "sag_allowance": 6.0}, 6.0**2 / 12.0 / 4.0),
        ({"sag": 0.0, "sag_allowance": 6.0}, 0.0),
        ({"sag": 3.0, "sag_allowance": 6.0}, 0.0),
    ],
)
def test_droop_that_was_not_measured_is_doubt_of_the_height(dial: Data, yy: float) -> None:
    assert covariance([0.0, 1.5, 3.0, 1.5], **dial) == pytest.approx(
        {"xx": 0.0, "xy": 0.0, "yy": yy}, abs=1e-12
    )


def test_a_crank_on_end_has_no_doubt_of_the_height() -> None:
    dial = {**PERFECT, "sag": None, "sag_allowance": 6.0}
    bore = bore_of(make_job([0.0] * 4, indicator=dial, crank={"axis": "vertical"}))
    assert bore["covariance"][1][1] == 0.0


def test_a_measured_lift_may_act_from_nothing_to_whole() -> None:
    """Two readings, and plus or minus the lift about the half of it that was taken out."""
    dial = {**PERFECT, "step": 1.0}
    plain = bore_of(make_job([0.0] * 4, indicator=dial))["covariance"][1][1]
    lifted = make_job([0.0, 1.0, 2.0, 1.0], indicator=dial, crank={"lift": 2.0})
    more = bore_of(lifted)["covariance"][1][1]
    assert more - plain == pytest.approx((2.0 / 12.0 + 2.0**2 / 3.0) / 4.0, abs=1e-12)


def test_a_contact_angle_shrinks_the_doubt_with_the_reading() -> None:
    straight = covariance([0.0] * 4, accuracy=1.0, repeatability=1.0)
    slanted = covariance([0.0] * 4, accuracy=1.0, repeatability=1.0, contact_angle_deg=60.0)
    assert slanted["xx"] == pytest.approx(straight["xx"] / 4.0, abs=1e-12)


def test_drift_that_was_spread_leaves_doubt() -> None:
    job = make_job([0.0, 1.0, 2.0, 3.0], indicator=PERFECT, closing=[4.0])
    assert bore_of(job)["covariance"][0][0] > 0.1


def test_drift_that_is_not_known_adds_none() -> None:
    job = make_job([0.0] * 4, indicator=PERFECT, closing=[None])
    assert bore_of(job)["covariance"] == [[0.0, 0.0], [0.0, 0.0]]


def test_lack_of_fit_widens_the_doubt() -> None:
    """An oval bore leaves residuals that no dial explains."""
    oval = [2.0, -2.0, 2.0, -2.0]
    bore = bore_of(make_job(oval, indicator={**PERFECT, "accuracy": 0.1}))
    assert bore["lack_of_fit"] == pytest.approx(math.sqrt(16.0 - 0.01 / 3.0), abs=1e-12)
    assert bore["covariance"][0][0] == pytest.approx(16.0 / 2.0, abs=1e-9)


def test_three_positions_show_no_lack_of_fit() -> None:
    positions = (0.0, 120.0, 240.0)
    assert bore_of(make_job([0.0, 9.0, -9.0], positions=positions))["lack_of_fit"] == 0.0


# Scatter -----------------------------------------------------------------------------------


def scatter(rows: list[list[float]], stated: float) -> float:
    fitted = fit(CorrectedReadings(EIGHTHS, tuple(tuple(row) for row in rows)))
    return math.sqrt(weighed(observed_scatter(fitted), stated))


def test_one_sweep_has_the_stated_scatter() -> None:
    assert scatter([readings_of(1.0, 2.0, EIGHTHS)], 0.25) == 0.25


def test_scatter_above_the_stated_counts_as_it_is() -> None:
    rng = random.Random(3)
    rows = [[rng.gauss(0.0, 2.0) for _ in EIGHTHS] for _ in range(8)]
    # 49 degrees of freedom: the estimate lies within 3 standard errors, 30 %, of the truth.
    assert scatter(rows, 0.25) == pytest.approx(2.0, rel=0.3)


def test_sweeps_that_agree_fully_do_not_make_the_dial_perfect() -> None:
    row = readings_of(1.0, 2.0, EIGHTHS)
    dof = 16 - 8 - 2 + 1
    assert scatter([row, row], 0.25) == pytest.approx(
        0.25 * math.sqrt(STATED_DOF / (STATED_DOF + dof)), abs=1e-12
    )


@given(st.lists(st.floats(-9.0, 9.0), min_size=2, max_size=4))
def test_zeros_of_sweeps_are_not_scatter(zeros: list[float]) -> None:
    """Each sweep may be zeroed as it likes."""
    row = readings_of(1.0, 2.0, EIGHTHS)
    same = [row for _ in zeros]
    moved = [[m + zero for m in row] for zero in zeros]
    assert scatter(moved, 0.25) == pytest.approx(scatter(same, 0.25), abs=1e-9)


def test_more_positions_and_sweeps_never_make_it_worse() -> None:
    """With the same dial: 3, 4, 8, 12 positions; then 1, 2, 3 sweeps."""
    by_count = [
        bore_of(make_job([0.0] * n, positions=[360.0 * i / n for i in range(n)]))["offset_pm"]
        for n in (3, 4, 8, 12)
    ]
    by_sweeps = [bore_of(make_job(*[[0.0] * 4] * k))["offset_pm"] for k in (1, 2, 3)]
    assert by_count == sorted(by_count, reverse=True)
    assert by_sweeps == sorted(by_sweeps, reverse=True)
