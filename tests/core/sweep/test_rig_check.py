"""The check of a rig: repeatability, drift, and the verdict for a limit."""

from __future__ import annotations

import math
import random

import pytest
from scipy import stats

from sweepsheet.maths.quantiles import student_quantile
from sweepsheet.sweep.corrections import CorrectedReadings
from sweepsheet.sweep.harmonic import fit
from sweepsheet.sweep.rig_check import RigCheck, capability_of, check_rig, drift_of
from tests.cases.jobs import EIGHTHS, QUARTERS

Rows = tuple[tuple[float | None, ...], ...]


def checked(rows: Rows, limit: float, positions: tuple[float, ...] = QUARTERS) -> RigCheck:
    check = check_rig(fit(CorrectedReadings(positions, rows)), rows, limit)
    assert check is not None
    return check


def simulated(
    rng: random.Random,
    sigma: float,
    sweeps: int,
    positions: tuple[float, ...] = QUARTERS,
    creep: float = 0.0,
) -> Rows:
    """Sweeps of a bore 7 off, none zeroed anew, by a dial that scatters and creeps."""
    return tuple(
        tuple(
            7.0 * math.sin(math.radians(a + 20.0)) + creep * j + rng.gauss(0.0, sigma)
            for a in positions
        )
        for j in range(sweeps)
    )


def test_by_hand() -> None:
    """Four positions, three sweeps, one reading 3 high in one sweep.

    Free of zeros the third row is off by 2.25 once and by -0.75 thrice: squares 6.75. Less the mean
    of three sweeps, 2/3 of that stands in its row and 1/3 in each other: 6.75 (4 + 1 + 1)/9 = 4.5,
    over 6 degrees of freedom 0.75. The offset of a sweep has sqrt(2/4) of the root of that, and six
    of these stand over a tolerance of 10.
    """
    rows = ((0.0, 5.0, 10.0, 5.0), (0.5, 5.5, 10.5, 5.5), (0.0, 8.0, 10.0, 5.0))
    check = checked(rows, 5.0)
    assert check.sweeps == 3
    assert check.scatter.dof == 6
    assert check.scatter.variance == pytest.approx(0.75, abs=1e-12)
    assert check.ratio == pytest.approx(6.0 * math.sqrt(0.75 / 2.0) / 10.0, abs=1e-12)
    ratio = check.ratio / check.scatter.deviation
    assert check.ratio_range == pytest.approx([ratio * each for each in check.range], abs=1e-12)


def test_more_positions_make_a_sweep_surer() -> None:
    rng = random.Random(53)
    four, eight = (checked(simulated(rng, 0.3, 5, p), 5.0, p) for p in (QUARTERS, EIGHTHS))
    assert four.ratio / four.scatter.deviation == pytest.approx(0.6 * math.sqrt(1 / 2), abs=1e-12)
    assert eight.ratio / eight.scatter.deviation == pytest.approx(0.6 * math.sqrt(1 / 4), abs=1e-12)


def test_a_coarse_step_is_no_fine_dial() -> None:
    """Sweeps that agree to the step count as the step's own scatter, over the whole range."""
    rows = ((0.0, 5.0, 10.0, 5.0),) * 5
    fitted = fit(CorrectedReadings(QUARTERS, rows))
    check = check_rig(fitted, rows, 5.0, 0.5)
    assert check is not None
    counted = 6.0 * 0.5 * math.sqrt(2 / 4) / 10.0
    assert check.ratio == pytest.approx(counted, abs=1e-12)
    assert check.ratio_range == pytest.approx((counted, counted), abs=1e-12)
    assert check.scatter.variance == pytest.approx(0.0, abs=1e-20)
    assert check.capability == "usable"


def test_drift_against_a_library() -> None:
    rng = random.Random(57)
    means = [0.2 * j + rng.gauss(0.0, 0.3) for j in range(7)]
    line = stats.linregress(range(7), means)
    drift = drift_of(means)
    assert drift.slope == pytest.approx(line.slope, abs=1e-12)
    assert drift.pm == pytest.approx(line.stderr * stats.t.ppf(0.975, 5), abs=1e-9)


def test_two_sweeps_are_no_check() -> None:
    rows = ((0.0, 1.0, 2.0, 1.0), (0.0, 1.5, 2.0, 1.0))
    assert check_rig(fit(CorrectedReadings(QUARTERS, rows)), rows, 5.0) is None


def test_sweeps_that_share_no_place_are_no_check() -> None:
    ninths = tuple(40.0 * i for i in range(9))
    rows = tuple(tuple(1.0 if i % 3 == j else None for i in range(9)) for j in range(3))
    assert check_rig(fit(CorrectedReadings(ninths, rows)), rows, 5.0) is None


def test_the_dials_zero_hides_drift() -> None:
    """Where each sweep begins at nothing, nobody knows how the dial crept between them."""
    rows = ((0.0, 5.0, 10.0, 5.0), (0.0, 5.5, 10.0, 5.0), (0.0, 5.0, 10.0, 4.5))
    assert checked(rows, 5.0).drift is None


def test_drift_is_over_the_places_that_every_sweep_reached() -> None:
    rows: Rows = (
        (0.0, 5.0, 10.0, None, 3.0), (1.0, 6.0, None, 4.0, 4.0), (2.0, 7.0, 12.0, 9.0, 5.0),
    )  # fmt: skip
    fifths = tuple(72.0 * i for i in range(5))
    drift = checked(rows, 5.0, fifths).drift
    assert drift is not None
    assert drift.slope == pytest.approx(1.0, abs=1e-12)
    assert drift.seen


def test_no_place_that_every_sweep_reached_tells_no_drift() -> None:
    rows: Rows = (
        (None, 1.0, 2.0, 1.0, 0.0, 1.0), (0.0, None, 2.0, None, 0.0, 1.0),
        (1.0, 1.0, None, 1.0, None, None),
    )  # fmt: skip
    sixths = tuple(60.0 * i for i in range(6))
    assert checked(rows, 5.0, sixths).drift is None


def test_drift_by_hand() -> None:
    """Means 0, 1, 1, 2: slope 0.6, residuals -0.1, 0.3, -0.3, 0.1, sum of squares 0.2."""
    drift = drift_of([0.0, 1.0, 1.0, 2.0])
    assert drift.slope == pytest.approx(0.6, abs=1e-12)
    assert drift.pm == pytest.approx(
        student_quantile(0.95, 2) * math.sqrt(0.2 / 2 / 5.0), abs=1e-12
    )
    assert not drift_of([0.0, 1.0, -1.0, 0.0]).seen


@pytest.mark.parametrize(
    ("ratios", "verdict"),
    [
        ((0.05, 0.1), "good"), ((0.05, 0.1001), "usable"), ((0.2, 0.3), "usable"),
        ((0.2, 0.3001), "open"), ((0.3, 0.9), "open"), ((0.3001, 0.9), "poor"),
    ],
)  # fmt: skip
def test_the_bounds_of_the_guide(ratios: tuple[float, float], verdict: str) -> None:
    """AIAG, Measurement Systems Analysis, 4th ed., 2010: 10 and 30 % of the tolerance."""
    assert capability_of(ratios) == verdict


@pytest.mark.parametrize("sweeps", [3, 5, 10])
def test_the_ranges_hold_what_they_say(sweeps: int) -> None:
    """Repeatability, ratio and drift, each within its 95 % range 93 to 99 times of a hundred."""
    rng, times = random.Random(54), 700
    held = {"scatter": 0, "ratio": 0, "drift": 0}
    for _ in range(times):
        sigma, creep = rng.uniform(0.1, 1.0), rng.uniform(-0.5, 0.5)
        check = checked(simulated(rng, sigma, sweeps, creep=creep), 5.0)
        assert check.drift is not None
        true = 6.0 * sigma * math.sqrt(2 / 4) / 10.0
        held["scatter"] += check.range[0] <= sigma <= check.range[1]
        held["ratio"] += check.ratio_range[0] <= true <= check.ratio_range[1]
        held["drift"] += abs(check.drift.slope - creep) <= check.drift.pm
    for name, n in held.items():
        assert 0.93 <= n / times <= 0.99, name


@pytest.mark.parametrize("sweeps", [3, 5, 10])
@pytest.mark.parametrize("bound", [0.10, 0.30])
def test_a_rig_that_is_not_good_enough_is_passed_once_in_forty(sweeps: int, bound: float) -> None:
    """A rig whose true ratio lies at the bound: passed at 2.5 %, since the range has two sides."""
    rng, times = random.Random(55), 1600
    sigma = bound * 10.0 / (6.0 * math.sqrt(2 / 4))
    passing = ("good",) if bound == 0.10 else ("good", "usable")
    passed = sum(
        checked(simulated(rng, sigma, sweeps), 5.0).capability in passing for _ in range(times)
    )
    assert 0.015 <= passed / times <= 0.035


def test_a_fine_rig_is_known_from_five_sweeps_and_a_poor_one_too() -> None:
    """Two fifths of the lower bound and three times the upper: told apart nearly always."""
    rng = random.Random(56)
    per_ratio = 10.0 / (6.0 * math.sqrt(2 / 4))
    fine = [checked(simulated(rng, 0.04 * per_ratio, 5), 5.0).capability for _ in range(300)]
    poor = [checked(simulated(rng, 0.9 * per_ratio, 5), 5.0).capability for _ in range(300)]
    assert fine.count("good") > 270
    assert poor.count("poor") > 285
    assert not {"good", "usable"} & set(poor)
