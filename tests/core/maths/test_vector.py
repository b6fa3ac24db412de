"""Plane vectors and symmetric matrices."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.maths.vector import ZERO, ZERO_COVARIANCE, Sym2, Vec2, outer

numbers = st.floats(-1e3, 1e3)
vectors = st.builds(Vec2, numbers, numbers)


def matrix(m: Sym2) -> np.ndarray:
    return np.array([[m.xx, m.xy], [m.xy, m.yy]])


@given(vectors, vectors)
def test_sum_and_difference_undo_one_another(a: Vec2, b: Vec2) -> None:
    back = (a + b) - b
    assert (back.x, back.y) == pytest.approx((a.x, a.y), abs=1e-9)
    assert a + -a == ZERO


@given(vectors, vectors)
def test_scalar_product_against_numpy(a: Vec2, b: Vec2) -> None:
    assert a.dot(b) == pytest.approx(float(np.dot([a.x, a.y], [b.x, b.y])), abs=1e-9)
    assert a.length == pytest.approx(math.sqrt(a.dot(a)), abs=1e-9)


def test_scaled() -> None:
    assert Vec2(1.5, -2.0).scaled(-2.0) == Vec2(-3.0, 4.0)
    assert Sym2(1.0, 2.0, 3.0).scaled(2.0) == Sym2(2.0, 4.0, 6.0)


def test_matrix_times_vector_and_form() -> None:
    m, v = Sym2(2.0, 1.0, 3.0), Vec2(1.0, -2.0)
    assert m.times(v) == Vec2(0.0, -5.0)
    assert m.along(v) == 10.0
    assert m.determinant == 5.0
    assert m + ZERO_COVARIANCE == m


@given(st.lists(vectors, min_size=1, max_size=4))
def test_principal_against_numpy(parts: list[Vec2]) -> None:
    """Eigenvalues of any covariance, larger first; the axis is an eigenvector of length 1.

    The error of a root of a quadratic is some roundings of the larger one.
    """
    cov = ZERO_COVARIANCE
    for v in parts:
        cov = cov + outer(v)
    found = cov.principal()
    small, large = np.linalg.eigvalsh(matrix(cov))
    room = 1e-12 * max(1.0, large)
    assert found.major == pytest.approx(large, abs=room)
    assert found.minor == pytest.approx(max(0.0, small), abs=room)
    assert found.major >= found.minor >= 0.0
    assert found.axis.length == pytest.approx(1.0, abs=1e-14)
    assert found.axis.dot(found.cross_axis) == 0.0
    assert cov.along(found.axis) == pytest.approx(found.major, abs=room)


def test_principal_of_nothing_is_nothing() -> None:
    found = ZERO_COVARIANCE.principal()
    assert (found.major, found.minor) == (0.0, 0.0)
    assert found.axis.length == 1.0


@pytest.mark.parametrize("m", [Sym2(2.0, 0.5, 1.0), Sym2(1e-6, 0.0, 4.0), Sym2(5.0, -2.0, 1.0)])
def test_inverse(m: Sym2) -> None:
    assert matrix(m) @ matrix(m.inverse()) == pytest.approx(np.eye(2), abs=1e-12)


def test_inverse_failure() -> None:
    """A singular matrix has none; who calls it must have made sure."""
    with pytest.raises(ZeroDivisionError):
        outer(Vec2(1.0, 2.0)).inverse()
