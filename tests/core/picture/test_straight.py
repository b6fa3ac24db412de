"""The robust line: against least squares, and against its own equation solved to the end."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest

from sweepsheet.picture.straight import fit_straight

Points = list[tuple[float, float]]


def points(seed: int, n: int = 60, wrong: int = 0) -> Points:
    """Points of a line with noise, some of them far off to one side."""
    rng = random.Random(seed)
    found = [(x := rng.uniform(0.1, 1.0), 0.3 + 0.2 * x + rng.gauss(0.0, 0.01)) for _ in range(n)]
    return found + [(rng.uniform(0.1, 1.0), 0.3 + rng.uniform(0.2, 0.5)) for _ in range(wrong)]


def solved(data: Points, sigma_zero: float) -> tuple[float, float, float]:
    """Holland and Welsch's iteration with the weights of the docstring, until nothing changes."""
    x, y = np.array(data).T
    a = np.stack([np.ones_like(x), x], axis=1)
    w, s = np.ones_like(x), 0.01
    for _ in range(200):
        information = a.T @ (w[:, None] * a)
        information[0, 0] += (s / sigma_zero) ** 2
        line = np.linalg.solve(information, a.T @ (w * y))
        off = np.abs(y - a @ line)
        before = information
        s = max(0.001, 1.4826 * float(np.median(off)))
        w = 1.0 / (1.0 + (off / (2.5 * s)) ** 4)
    return float(line[0]), float(line[1]), s * math.sqrt(np.linalg.inv(before)[1, 1])


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize(("wrong", "sigma_zero"), [(0, 1e3), (0, 0.05), (12, 1e3), (12, 0.3)])
def test_it_is_what_its_equation_comes_to(seed: int, wrong: int, sigma_zero: float) -> None:
    data = points(seed, wrong=wrong)
    y_zero, slope, sigma = fit_straight(data, sigma_zero)
    expected = solved(data, sigma_zero)
    assert (y_zero, slope) == pytest.approx(expected[:2], abs=0.15 * expected[2])
    assert sigma == pytest.approx(expected[2], rel=0.03)


@pytest.mark.parametrize("n", [20, 80])
def test_the_uncertainty_is_that_of_least_squares(n: int) -> None:
    """S / sqrt(sum (x - mean)^2), the textbook's; on the average of 200 lines."""
    ratios = []
    for seed in range(200):
        data = points(seed, n)
        x = np.array(data)[:, 0]
        textbook = 0.01 / math.sqrt(float(((x - x.mean()) ** 2).sum()))
        ratios.append(fit_straight(data, 1e3)[2] / textbook)
    assert sum(ratios) / len(ratios) == pytest.approx(1.0, abs=0.12)
