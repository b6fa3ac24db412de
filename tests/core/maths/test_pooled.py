"""What a measured scatter is worth: against F and chi-squared as scipy has them."""

from __future__ import annotations

import math

import pytest
from scipy import stats

from sweepsheet.maths.pooled import chance_of_more, plane_factor


@pytest.mark.parametrize("dof", [2, 4, 6, 10, 38])
def test_the_factor_is_that_of_the_f_distribution(dof: int) -> None:
    f = stats.f.ppf(0.95, 2, dof)
    assert plane_factor(dof) == pytest.approx(math.sqrt(2.0 * f), rel=1e-12)


@pytest.mark.parametrize("dof", [2, 4, 6, 10, 38])
@pytest.mark.parametrize("squares", [0.0, 0.3, 5.0, 40.0])
def test_the_tail_is_that_of_chi_squared(dof: int, squares: float) -> None:
    assert chance_of_more(squares, dof) == pytest.approx(stats.chi2.sf(squares, dof), rel=1e-12)
