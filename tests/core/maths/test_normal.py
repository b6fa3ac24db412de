"""Regions and chances (see also the outside oracles in tests/published)."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from sweepsheet.maths.normal import (
    K_95_LINE,
    K_95_PLANE,
    K_99_PLANE,
    axis_in_region,
    ellipse95,
    one_sided_factor,
    probability_at_least,
    probability_inside,
    radius95,
)
from sweepsheet.maths.vector import ZERO, ZERO_COVARIANCE, Sym2, Vec2

centres = st.builds(Vec2, st.floats(-20.0, 20.0), st.floats(-20.0, 20.0))
parts = st.floats(-5.0, 5.0)


@st.composite
def covariances(draw: st.DrawFn) -> Sym2:
    """Any covariance, thin ones and none included: L L' of a triangle L."""
    a, b, c = draw(parts), draw(parts), draw(parts)
    return Sym2(a * a, a * b, b * b + c * c)


def test_coverage_factors() -> None:
    assert pytest.approx(math.sqrt(stats.chi2.ppf(0.95, 2)), abs=1e-12) == K_95_PLANE
    assert pytest.approx(math.sqrt(stats.chi2.ppf(0.99, 2)), abs=1e-12) == K_99_PLANE
    assert pytest.approx(stats.norm.ppf(0.975), abs=1e-12) == K_95_LINE


@pytest.mark.parametrize(
    ("cov", "major", "minor", "at_deg"),
    [
        (Sym2(1.0, 0.0, 4.0), 2.0, 1.0, 0.0),
        (Sym2(4.0, 0.0, 1.0), 2.0, 1.0, 90.0),
        (Sym2(2.5, 1.5, 2.5), 2.0, 1.0, 45.0),  # long toward 1:30
        (Sym2(2.5, -1.5, 2.5), 2.0, 1.0, 135.0),  # long toward 4:30
        (ZERO_COVARIANCE, 0.0, 0.0, 90.0),
    ],
)
def test_ellipse95(cov: Sym2, major: float, minor: float, at_deg: float) -> None:
    found = ellipse95(cov)
    assert found.major == pytest.approx(major * K_95_PLANE, abs=1e-12)
    assert found.minor == pytest.approx(minor * K_95_PLANE, abs=1e-12)
    assert found.at_deg == pytest.approx(at_deg, abs=1e-9)


@given(covariances())
def test_the_ellipse_has_a_direction_in_half_a_turn(cov: Sym2) -> None:
    found = ellipse95(cov)
    assert found.major >= found.minor >= 0.0
    assert 0.0 <= found.at_deg < 180.0


@pytest.mark.parametrize(("center", "expected"), [(3.0, 1.0), (5.0, 1.0), (5.1, 0.0)])
def test_without_doubt_it_is_inside_or_not(center: float, expected: float) -> None:
    assert probability_inside(Vec2(0.0, center), ZERO_COVARIANCE, 5.0) == expected


@pytest.mark.parametrize("minor", [0.0, 1e-9, 1e-7, 1e-6, 1.1e-6, 1e-5, 1e-4])
@pytest.mark.parametrize(("x", "y"), [(0.0, 0.0), (3.0, 4.5), (4.9, 0.0), (-4.0, -3.0), (6.0, 0.0)])
def test_a_thin_region_is_a_line(minor: float, x: float, y: float) -> None:
    """With next to no doubt across, the chance is the one of the chord.

    What the thinness leaves is below the thickness over the length, times the steepness of
    the circle there; no centre here lies within many thicknesses of the circle's side.
    """
    cov = Sym2(minor**2, 0.0, 1.0)
    expected = 0.0
    if abs(x) < 5.0:
        half = math.sqrt(25.0 - x * x)
        expected = float(stats.norm.cdf(half - y) - stats.norm.cdf(-half - y))
    assert probability_inside(Vec2(x, y), cov, 5.0) == pytest.approx(
        expected, abs=max(1e-9, 10.0 * minor)
    )


@given(centres, covariances(), st.floats(0.1, 30.0))
def test_a_chance_is_a_chance(center: Vec2, cov: Sym2, radius: float) -> None:
    assert 0.0 <= probability_inside(center, cov, radius) <= 1.0


@given(centres, covariances(), st.floats(0.1, 30.0), st.floats(1.01, 3.0))
def test_a_wider_limit_is_never_less_likely(
    center: Vec2, cov: Sym2, radius: float, more: float
) -> None:
    """To the 1e-9 that is promised."""
    near = probability_inside(center, cov, radius)
    assert probability_inside(center, cov, more * radius) >= near - 2e-9


@given(centres, covariances(), st.floats(0.1, 30.0), st.floats(0.01, 100.0))
def test_the_unit_does_not_matter(center: Vec2, cov: Sym2, radius: float, k: float) -> None:
    """All lengths k times as large, the same chance."""
    scaled = probability_inside(center.scaled(k), cov.scaled(k * k), k * radius)
    # Near the change from a thin region to a line, rounding may decide which is taken.
    assert scaled == pytest.approx(probability_inside(center, cov, radius), abs=1e-6)


@given(centres, covariances(), st.floats(0.1, 30.0))
def test_mirroring_does_not_matter(center: Vec2, cov: Sym2, radius: float) -> None:
    mirrored = probability_inside(Vec2(-center.x, center.y), Sym2(cov.xx, -cov.xy, cov.yy), radius)
    assert mirrored == pytest.approx(probability_inside(center, cov, radius), abs=1e-6)


@pytest.mark.parametrize("size", [1.0, 1e-20, 1e-60, 1e-80, 1e-130])
@pytest.mark.parametrize(("x", "held"), [(2.4, True), (2.5, False)])
def test_the_axis_is_in_the_region_at_any_size(size: float, x: float, held: bool) -> None:  # noqa: FBT001 - a column of the table
    """2.4477 standard deviations off, in a slanted region; the square of 1e-130 is still a number.

    The product of two such squares is not, and must not be divided by.
    """
    cov = Sym2(2.5, 1.5, 2.5).scaled(size**2)  # axes 2 toward 1:30 and 1 toward 4:30
    toward = Vec2(x * size * math.sqrt(0.5), -x * size * math.sqrt(0.5))
    assert axis_in_region(toward, cov) is held
    assert axis_in_region(-toward, cov) is held


@pytest.mark.parametrize(
    ("center", "held"), [(ZERO, True), (Vec2(1e-9, 0.0), False), (Vec2(0.0, 1e-9), False)]
)
def test_a_region_that_is_a_point_holds_itself(center: Vec2, held: bool) -> None:  # noqa: FBT001 - a column of the table
    assert axis_in_region(center, ZERO_COVARIANCE) is held


@pytest.mark.parametrize("sigma", [1e-6, 1e-3, 1.0, 1e3])
def test_the_centre_of_the_circle_against_the_closed_form(sigma: float) -> None:
    """1 - exp(-R**2 / 2 sigma**2), from needle to fog."""
    cov = Sym2(sigma**2, 0.0, sigma**2)
    expected = -math.expm1(-0.5 / sigma**2)
    assert probability_inside(ZERO, cov, 1.0) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("least", [-3.0, -0.5, 0.0, 0.2, 4.0])
@pytest.mark.parametrize(("mean", "sigma"), [(0.0, 1.0), (1.5, 0.5), (-2.0, 3.0)])
def test_one_quantity_above_a_limit(mean: float, sigma: float, least: float) -> None:
    """SciPy's survival function is the oracle."""
    expected = float(stats.norm.sf(least, mean, sigma))
    assert probability_at_least(mean, sigma, least) == pytest.approx(expected, abs=1e-14)


def test_one_quantity_that_is_sure() -> None:
    assert probability_at_least(1.0, 0.0, 1.0) == 1.0
    assert probability_at_least(1.1, 0.0, 1.0) == 1.0
    assert probability_at_least(0.9, 0.0, 1.0) == 0.0


@pytest.mark.parametrize("probability", [0.5001, 0.75, 0.95, 0.975, 0.9999, 1.0 - 1e-12])
def test_how_far_it_stays_above(probability: float) -> None:
    expected = float(stats.norm.ppf(probability))
    assert one_sided_factor(probability) == pytest.approx(expected, abs=1e-4 if probability > 0.9999
                                                          else 1e-9)  # fmt: skip


def test_half_of_it_is_above_its_middle() -> None:
    assert one_sided_factor(0.5) == 0.0


@pytest.mark.parametrize("covariance", [Sym2(1, 0, 1), Sym2(4, 1.5, 2), Sym2(0, 0, 9)])
def test_the_circle_holds_nineteen_of_twenty(covariance: Sym2) -> None:
    assert probability_inside(ZERO, covariance, radius95(covariance)) == pytest.approx(0.95)


def test_nothing_is_within_no_circle() -> None:
    assert radius95(Sym2(0.0, 0.0, 0.0)) == 0.0
