"""Scatter from repeats: published tables of quantiles, a worked example of pooling, the bounds."""

from __future__ import annotations

import math

import pytest

from sweepsheet.maths.quantiles import chi_squared_quantile, student_quantile
from sweepsheet.sweep.repeats import Scatter, pooled
from sweepsheet.sweep.rig_check import GOOD, USABLE
from tests.published.record import check

HANDBOOK = "NIST/SEMATECH e-Handbook of Statistical Methods"
# Section 1.3.6.7.4: lower 2.5 %, lower 5 %, upper 10 %, 5 % and 2.5 % of chi-squared.
CHI_SQUARED = {
    1: (0.001, 0.004, 2.706, 3.841, 5.024),
    2: (0.051, 0.103, 4.605, 5.991, 7.378),
    5: (0.831, 1.145, 9.236, 11.070, 12.833),
    8: (2.180, 2.733, 13.362, 15.507, 17.535),
    10: (3.247, 3.940, 15.987, 18.307, 20.483),
    12: (4.404, 5.226, 18.549, 21.026, 23.337),
    15: (6.262, 7.261, 22.307, 24.996, 27.488),
    30: (16.791, 18.493, 40.256, 43.773, 46.979),
}
PROBABILITIES = (0.025, 0.05, 0.9, 0.95, 0.975)
# Section 1.3.6.7.2: Student's t, upper 2.5 % (from memory).
STUDENT = {1: 12.706, 2: 4.303, 3: 3.182, 4: 2.776, 8: 2.306, 18: 2.101}


@pytest.mark.parametrize("dof", CHI_SQUARED)
def test_the_table_of_chi_squared(dof: int) -> None:
    computed = [chi_squared_quantile(p, dof) for p in PROBABILITIES]
    what = f"chi-squared, {dof} dof, at 2.5, 5, 90, 95 and 97.5 %"
    check(f"{HANDBOOK}, 1.3.6.7.4", what, CHI_SQUARED[dof], computed, within=0.0005001)


@pytest.mark.parametrize("dof", STUDENT)
def test_the_table_of_students_t(dof: int) -> None:
    what = f"Student's t, {dof} dof, within ± at 95 %"
    source = f"{HANDBOOK}, 1.3.6.7.2 (from memory)"
    check(source, what, STUDENT[dof], student_quantile(0.95, dof), within=0.0005001)


def test_the_pooled_repeatability_of_five_wafers() -> None:
    """Sums of squares with 60 degrees of freedom each; 300 in all, and 0.10290 together."""
    sums = (0.48115, 0.69209, 0.48483, 1.21752, 0.30076)
    whole = pooled(Scatter(each / 60, 60) for each in sums)
    assert whole is not None
    source = f"{HANDBOOK}, 2.4.4.4"
    check(source, "pooled degrees of freedom", 300, whole.dof, within=0.0)
    check(source, "pooled repeatability", 0.10290, whole.deviation, within=0.000005)


def test_the_bounds_of_precision_to_tolerance() -> None:
    source = "AIAG, Measurement Systems Analysis, 4th ed., 2010 (acceptance of %GRR)"
    check(
        source, "acceptable up to, and not acceptable above", (0.1, 0.3), (GOOD, USABLE), within=0
    )
    assert math.isclose(USABLE, 3 * GOOD)
