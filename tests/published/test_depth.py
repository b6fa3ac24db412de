"""Depth against printed figures: sums of lengths with hard bounds, and one limit."""

from __future__ import annotations

import math

import pytest
from scipy import stats

from sweepsheet import solve
from sweepsheet.maths.normal import one_sided_factor, probability_at_least
from tests.cases.jobs import Data, make_job, readings_of
from tests.published.record import check


def gap_of(name: str, **depth: float) -> Data:
    """One gap of a job with these lengths."""
    gaps = solve(make_job(readings_of(0.0, -1.0), depth=depth))["depth"]["gaps"]
    (found,) = (gap for gap in gaps if gap["name"] == name)
    return dict(found)


def test_four_lengths_each_known_within_bounds() -> None:
    """JCGM 101:2008, 9.2.3: four inputs, each rectangular of variance 1, added: plus or minus 3.92.

    Rear face, pilot bearing, plate and shaft, each within the square root of three.
    """
    bound = math.sqrt(3.0)
    lengths = {"to_face": 10.0, "to_pilot": 1.0, "added": 1.0, "to_tip": 15.0}
    gap = gap_of("engagement", **lengths, engine_pm=bound, gearbox_pm=bound)
    source = "JCGM 101:2008, 9.2.3; from memory, re-computed"
    check(source, "four lengths, 95 % by the GUM's framework", 3.92, gap["size_pm"], within=0.005)
    assert gap["size"] == pytest.approx(3.0)


@pytest.mark.parametrize(
    ("measured", "u", "least", "expected"),
    [
        (509.7, 8.6, 490.0, 0.99),  # at least 490
        (5.47, 0.05, 5.40, 0.92),  # at most -5.40, its sign turned
    ],
)
def test_chance_of_being_above_one_limit(
    measured: float, u: float, least: float, expected: float
) -> None:
    """JCGM 106:2012, section 7; from memory, re-computed. Printed to two digits."""
    source = "JCGM 106:2012, section 7; from memory, re-computed"
    what = f"chance of a gap of {measured:g}, at least {least:g}, u {u:g}"
    check(source, what, expected, probability_at_least(measured, u, least), within=0.005)


def test_a_gap_of_three_lengths_against_its_limit() -> None:
    """The same, through a job: the tip's gap 0.07 above what is needed, its doubt 0.05."""
    bound = 0.05  # three lengths, each within 0.05: the variance is 0.05 squared
    lengths = {"to_face": 6.0, "to_bottom": 1.0, "to_tip": 6.0, "tip_gap_min": 0.93}
    gap = gap_of("tip", **lengths, engine_pm=bound, gearbox_pm=bound)
    source = "JCGM 106:2012, section 7; from memory, re-computed"
    check(source, "chance of the tip's gap", 0.92, gap["probability_within"], within=0.005)


@pytest.mark.parametrize(("level", "k"), [(0.95, 1.644854), (0.975, 1.959964), (0.99, 2.326348)])
def test_one_sided_factors(level: float, k: float) -> None:
    """Quantiles of the standard normal distribution, from memory, re-computed by SciPy."""
    source = "table of the normal distribution; from memory, re-computed"
    check(source, f"one-sided k at {level:g}", k, one_sided_factor(level), within=5e-7)
    assert one_sided_factor(level) == pytest.approx(float(stats.norm.ppf(level)), abs=1e-9)
