"""Quantiles of chi-squared and of Student's t, against a general-purpose library."""

from __future__ import annotations

import math

import pytest
from scipy import stats

from sweepsheet.maths.quantiles import (
    chi_squared_above,
    chi_squared_quantile,
    student_quantile,
    student_within,
)

DOFS = (1, 2, 3, 4, 7, 12, 33, 100, 999, 6000)


@pytest.mark.parametrize("dof", DOFS)
@pytest.mark.parametrize("probability", [0.001, 0.025, 0.5, 0.975, 0.999])
def test_chi_squared(dof: int, probability: float) -> None:
    quantile = chi_squared_quantile(probability, dof)
    assert quantile == pytest.approx(stats.chi2.ppf(probability, dof), rel=1e-9)
    assert chi_squared_above(quantile, dof) == pytest.approx(1.0 - probability, abs=1e-10)


def test_chi_squared_is_never_below_nothing() -> None:
    assert chi_squared_above(0.0, 3) == chi_squared_above(-1.0, 2) == 1.0
    assert chi_squared_above(1e-300, 2) == 1.0
    assert chi_squared_above(5000.0, 3) == pytest.approx(0.0, abs=1e-300)


@pytest.mark.parametrize("dof", DOFS)
@pytest.mark.parametrize("probability", [0.1, 0.5, 0.9, 0.95, 0.99])
def test_students_t(dof: int, probability: float) -> None:
    quantile = student_quantile(probability, dof)
    assert quantile == pytest.approx(stats.t.ppf((1.0 + probability) / 2.0, dof), rel=1e-9)
    assert student_within(quantile, dof) == pytest.approx(probability, abs=1e-10)


def test_students_t_is_nothing_at_nothing() -> None:
    assert student_within(0.0, 3) == student_within(0.0, 4) == 0.0
    # With one degree of freedom, the Cauchy distribution.
    assert student_within(1.0, 1) == pytest.approx(2.0 * math.atan(1.0) / math.pi, abs=1e-15)


@pytest.mark.parametrize("dof", [2, 4, 6, 10, 38])
@pytest.mark.parametrize("squares", [0.0, 0.3, 5.0, 40.0])
def test_the_tail_is_that_of_chi_squared(dof: int, squares: float) -> None:
    assert chi_squared_above(squares, dof) == pytest.approx(stats.chi2.sf(squares, dof), rel=1e-12)
