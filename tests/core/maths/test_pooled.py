"""What a measured scatter is worth: against F as scipy has it."""

from __future__ import annotations

import math

import pytest
from scipy import stats

from sweepsheet.maths.pooled import plane_factor


@pytest.mark.parametrize("dof", [2, 4, 6, 10, 38])
def test_the_factor_is_that_of_the_f_distribution(dof: int) -> None:
    f = stats.f.ppf(0.95, 2, dof)
    assert plane_factor(dof) == pytest.approx(math.sqrt(2.0 * f), rel=1e-12)
