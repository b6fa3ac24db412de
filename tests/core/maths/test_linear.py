"""Small linear systems, held to numpy's."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sweepsheet.maths.linear import least_squares, solve_linear

entries = st.floats(-9.0, 9.0)


@given(st.integers(1, 5), st.data())
def test_a_system_against_numpy(n: int, data: st.DataObject) -> None:
    """Systems that are not nearly singular: a condition of 1e6 costs six of sixteen digits."""
    rows = data.draw(st.lists(st.lists(entries, min_size=n, max_size=n), min_size=n, max_size=n))
    right = data.draw(st.lists(entries, min_size=n, max_size=n))
    assume(np.linalg.cond(np.array(rows)) < 1e6)
    expected = np.linalg.solve(np.array(rows), np.array(right))
    assert solve_linear(rows, right) == pytest.approx(list(expected), rel=1e-7, abs=1e-7)


@given(st.integers(4, 9), st.data())
def test_least_squares_against_numpy(n: int, data: st.DataObject) -> None:
    """By the normal equations, whose condition is the square of the one of the rows."""
    rows = data.draw(st.lists(st.lists(entries, min_size=3, max_size=3), min_size=n, max_size=n))
    right = data.draw(st.lists(entries, min_size=n, max_size=n))
    assume(np.linalg.cond(np.array(rows)) < 1e3)
    expected = np.linalg.lstsq(np.array(rows), np.array(right), rcond=None)[0]
    assert least_squares(rows, right) == pytest.approx(list(expected), rel=1e-6, abs=1e-6)


def test_a_pivot_of_nothing_is_passed_over() -> None:
    assert solve_linear([[0.0, 1.0], [1.0, 0.0]], [2.0, 3.0]) == (3.0, 2.0)


@pytest.mark.parametrize(
    "matrix",
    [
        [[0.0]],
        [[1.0, 2.0], [2.0, 4.0]],
        [[1.0, 0.0, 1.0], [0.0, 1.0, 1.0], [1.0, 1.0, 2.0]],
        [[1e6, 1e6], [1e6, 1e6]],
    ],
)
def test_solve_linear_failure_singular(matrix: list[list[float]]) -> None:
    assert solve_linear(matrix, [1.0] * len(matrix)) is None


def test_least_squares_failure_places_in_one_line() -> None:
    """No plane is determined by places along a line."""
    assert least_squares([[1.0, t, 2.0 * t] for t in range(5)], [0.0, 1.0, 2.0, 3.0, 4.0]) is None
