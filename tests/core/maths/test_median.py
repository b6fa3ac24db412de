"""The median, against Python's own library of statistics."""

from __future__ import annotations

import random
import statistics

import pytest

from sweepsheet.maths.median import median


@pytest.mark.parametrize("n", range(1, 12))
def test_it_is_that_of_the_standard_library(n: int) -> None:
    rng = random.Random(n)
    values = [rng.gauss(0.0, 1.0) for _ in range(n)]
    assert median(values) == pytest.approx(statistics.median(values))
