"""The first harmonic by least squares (see also the outside oracles in tests/published)."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.maths.vector import ZERO, Vec2
from sweepsheet.sweep.corrections import CorrectedReadings
from sweepsheet.sweep.harmonic import Harmonic, fit
from tests.cases.jobs import EIGHTHS, QUARTERS, readings_of

small = st.floats(-20.0, 20.0)


def fit_rows(positions: tuple[float, ...], *rows: list[float] | list[float | None]) -> Harmonic:
    return fit(CorrectedReadings(positions, tuple(tuple(row) for row in rows)))


@given(small, small, small)
def test_a_pure_harmonic_is_found_again(x: float, y: float, zero: float) -> None:
    fitted = fit_rows((10.0, 70.0, 150.0, 300.0), readings_of(x, y, (10, 70, 150, 300), zero))
    assert (fitted.amplitude.x, fitted.amplitude.y) == pytest.approx((-x, -y), abs=1e-10)
    assert fitted.constants == pytest.approx((zero,), abs=1e-10)
    assert fitted.residuals[0] == pytest.approx((0.0,) * 4, abs=1e-10)
    assert fitted.tir == pytest.approx(2.0 * math.hypot(x, y), abs=1e-10)


def test_each_sweep_has_its_own_zero() -> None:
    fitted = fit_rows(QUARTERS, readings_of(3.0, -4.0, zero=5.0), readings_of(3.0, -4.0, zero=-8.0))
    assert fitted.constants == pytest.approx((5.0, -8.0), abs=1e-12)
    assert (fitted.amplitude.x, fitted.amplitude.y) == pytest.approx((-3.0, 4.0), abs=1e-12)


def test_blocked_positions_are_passed_over() -> None:
    full = readings_of(3.0, -4.0, EIGHTHS)
    gaps: list[float | None] = [None if i in (1, 6) else m for i, m in enumerate(full)]
    fitted = fit_rows(EIGHTHS, gaps)
    assert (fitted.amplitude.x, fitted.amplitude.y) == pytest.approx((-3.0, 4.0), abs=1e-12)
    assert fitted.residuals[0][1] is fitted.residuals[0][6] is None
    assert fitted.weights[0][1] is fitted.weights[0][6] is None
    assert fitted.position_weights()[1] == ZERO


@pytest.mark.parametrize(
    ("rows", "dof"),
    [
        ([[0.0, 1.0, 2.0, 1.0]], 1),
        ([[0.0, 1.0, 2.0, 1.0]] * 3, 1),
    ],
)
def test_degrees_of_freedom_count_places_not_sweeps(rows: list[list[float]], dof: int) -> None:
    assert fit_rows(QUARTERS, *rows).dof == dof
    assert fit_rows((0.0, 120.0, 240.0), [0.0, 1.0, 2.0]).dof == 0


@given(st.lists(small, min_size=5, max_size=5), st.integers(0, 4))
def test_weights_say_how_the_answer_moves(row: list[float], place: int) -> None:
    """One more at one reading moves the harmonic by that reading's weight."""
    positions = (0.0, 50.0, 110.0, 200.0, 290.0)
    before = fit_rows(positions, row)
    after = fit_rows(positions, [m + (i == place) for i, m in enumerate(row)])
    moved = after.amplitude - before.amplitude
    weight = before.weights[0][place]
    assert weight is not None
    assert (moved.x, moved.y) == pytest.approx((weight.x, weight.y), abs=1e-10)


@given(st.lists(small, min_size=8, max_size=8))
def test_residuals_are_square_to_the_model(row: list[float]) -> None:
    """Least squares: no constant and no harmonic is left in what is left over."""
    left = fit_rows(EIGHTHS, row).residuals[0]
    known = [r for r in left if r is not None]
    assert math.fsum(known) == pytest.approx(0.0, abs=1e-9)
    for turn in (math.sin, math.cos):
        total = math.fsum(r * turn(math.radians(a)) for r, a in zip(known, EIGHTHS, strict=True))
        assert total == pytest.approx(0.0, abs=1e-9)


def test_position_means_over_the_sweeps() -> None:
    rows: list[list[float | None]] = [[0.0, 1.0, 0.0, 1.0, 2.0], [0.0, 3.0, 0.0, 1.0, None]]
    positions = (0.0, 72.0, 144.0, 216.0, 288.0)
    fitted = fit_rows(positions, *rows)
    first, second = fitted.residuals
    means = fitted.position_residuals()
    assert first[1] is not None
    assert second[1] is not None
    assert means[1] == pytest.approx((first[1] + second[1]) / 2, abs=1e-12)
    assert means[4] == first[4]


def test_a_place_that_is_never_reached_has_no_mean() -> None:
    row: list[float | None] = [0.0, 1.0, None, 1.0, 2.0]
    assert fit_rows((0.0, 72.0, 144.0, 216.0, 288.0), row).position_residuals()[2] is None


def test_a_steady_dial_has_no_harmonic() -> None:
    fitted = fit_rows(QUARTERS, [3.0] * 4)
    assert fitted.amplitude == Vec2(0.0, 0.0)
    assert fitted.tir == 0.0


def test_fit_failure() -> None:
    """All at one place can't be fitted; positions are refused before it comes to that."""
    with pytest.raises(ZeroDivisionError):
        fit_rows((90.0, 90.0, 90.0), [0.0, 1.0, 2.0])
