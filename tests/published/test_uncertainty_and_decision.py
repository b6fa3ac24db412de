"""Published figures of uncertainty and decision, and scipy as the oracle for chances.

A job can be made to hold any plane normal distribution: the accuracy of the dial gives the same
variance in both directions (``u**2 2/n`` for n even positions), droop that was not measured adds
to the vertical one.
"""

from __future__ import annotations

import itertools
import math
import random

import numpy as np
import pytest
from scipy import integrate, stats

from sweepsheet.maths.normal import K_95_LINE, K_95_ONE_SIDE
from tests.cases.jobs import PERFECT, Data, bore_of, make_job, readings_of
from tests.published.record import check

SQRT3 = math.sqrt(3.0)
# Double arithmetic on figures of the order of one.
EXACT = 1e-12


def normal_job(x: float, y: float, sigma_x: float, sigma_y: float, limit: float) -> Data:
    """A job whose centre is (x, y) with these standard deviations (sigma_y >= sigma_x)."""
    dial = {**PERFECT, "accuracy": SQRT3 * sigma_x * math.sqrt(2.0)}
    beyond = math.sqrt(max(0.0, sigma_y**2 - sigma_x**2))
    # Sag of nothing up to s makes the bore read s/4 high, plus or minus s/4, rectangular.
    sag = 4.0 * SQRT3 * beyond
    dial |= {"sag": None, "sag_allowance": sag}
    shown = readings_of(x, y + sag / 4.0)
    return make_job(shown, indicator=dial, limits={"bore_offset": limit})


def chance(x: float, y: float, sigma_x: float, sigma_y: float, limit: float) -> float:
    return float(bore_of(normal_job(x, y, sigma_x, sigma_y, limit))["probability_within"])


def test_the_job_holds_the_distribution_it_should() -> None:
    bore = bore_of(normal_job(2.0, -1.0, 0.5, 1.25, 5.0))
    assert bore["center"] == pytest.approx([2.0, -1.0], abs=EXACT)
    assert bore["covariance"][0] == pytest.approx([0.25, 0.0], abs=EXACT)
    assert bore["covariance"][1] == pytest.approx([0.0, 1.5625], abs=EXACT)


# What readings are worth -------------------------------------------------------------------


@pytest.mark.parametrize(("count", "factor"), [(4, 0.70711), (8, 0.5), (12, 0.40825)])
def test_uncertainty_falls_with_the_square_root_of_positions(count: int, factor: float) -> None:
    """u(a) = u(b) = u sqrt(2/n): n = 4, 8, 12 give .70711, .5, .40825 (least squares)."""
    u = 2.0
    positions = [360.0 * i / count for i in range(count)]
    dial = {**PERFECT, "accuracy": SQRT3 * u}
    bore = bore_of(make_job([0.0] * count, positions=positions, indicator=dial))
    found = [math.sqrt(bore["covariance"][i][i]) / u for i in (0, 1)]
    check("least squares", f"u(a)/u, u(b)/u, n = {count}", [factor] * 2, found, within=5e-6)
    assert bore["covariance"][0][1] == pytest.approx(0.0, abs=EXACT)


def one_reading(**dial: float) -> float:
    """The standard uncertainty of one reading of this dial, from four: sqrt(n/2) u(a)."""
    bore = bore_of(make_job((0, 0, 0, 0), indicator={**PERFECT, **dial}))
    return math.sqrt(bore["covariance"][0][0] * 2.0)


def test_rectangular_divisor() -> None:
    """JCGM 100:2008, 4.3.7: plus or minus a counts as a/sqrt(3), .57735 a."""
    check("JCGM 100:2008, 4.3.7", "u of +-1", 0.57735, one_reading(accuracy=1.0), within=5e-6)
    # The example there: a coefficient of expansion known to +-.40 has u = .23 (from memory).
    check("JCGM 100:2008, 4.3.7", "u of +-.40", 0.23, one_reading(accuracy=0.40), within=0.005)


def test_step_divisor() -> None:
    """JCGM 100:2008, F.2.2.1: an indication in steps of q counts as q/sqrt(12), .29 q."""
    check("JCGM 100:2008, F.2.2.1", "u of steps of 1", 0.29, one_reading(step=1.0), within=0.005)
    assert one_reading(step=1.0) == pytest.approx(1.0 / math.sqrt(12.0), abs=EXACT)


def test_stated_repeatability_is_a_standard_deviation_already() -> None:
    assert one_reading(repeatability=1.0) == pytest.approx(1.0, abs=EXACT)


# Plane coverage ----------------------------------------------------------------------------


def test_plane_coverage_factor() -> None:
    """JCGM 102:2011, 6.5.2: chi-squared with 2 degrees, 5.99146 at .95, so k = 2.44775."""
    source = "JCGM 102:2011, 6.5.2"
    check(source, "chi2(2) at .95, by scipy", 5.99146, stats.chi2.ppf(0.95, 2), within=5e-6)
    axes = bore_of(normal_job(0.0, 0.0, 1.0, 1.0, 5.0))["ellipse95"]["semi_axes"]
    check(source, "k of the plane at .95", [2.44775] * 2, axes, within=5e-6)
    found = chance(0.0, 0.0, 1.0, 1.0, math.sqrt(5.99146))
    check(source, "chance within sqrt(5.99146) sigma", 0.95, found, within=5e-6)


@pytest.mark.parametrize(("sigmas", "expected"), [(1, 0.393469), (2, 0.864665), (3, 0.988891)])
def test_plane_chance_of_whole_sigmas(sigmas: int, expected: float) -> None:
    """1 - exp(-k**2/2) for k = 1, 2, 3."""
    found = chance(0.0, 0.0, 1.0, 1.0, sigmas)
    check("Rayleigh distribution", f"chance within {sigmas} sigma", expected, found, within=5e-7)


# The circular error probable and its like: half the shots within 1.1774 sigma (navigation and
# gunnery tables; 1.177 and 39.35 % within one sigma seen quoted, the other digits from memory).
CIRCLES = [(0.5, 1.1774), (0.9, 2.1460), (0.99, 3.0349)]


@pytest.mark.parametrize(("share", "k"), CIRCLES)
def test_circular_error_probable(share: float, k: float) -> None:
    """K is printed to four digits and the density there is below .6."""
    source = "circular error tables; partly from memory"
    found = chance(0.0, 0.0, 1.0, 1.0, k)
    check(source, f"chance within {k} sigma", share, found, within=3e-5)


def test_factors_of_one_normal_quantity() -> None:
    """NIST/SEMATECH e-Handbook, 1.3.6.7.1, and JCGM 100, table G.1: 1.645, 1.960 (from memory)."""
    source = "normal tables (NIST e-Handbook 1.3.6.7.1); from memory"
    check(source, "k, 95 % two-sided", 1.960, K_95_LINE, within=5e-4)
    check(source, "k, 95 % one-sided", 1.645, K_95_ONE_SIDE, within=5e-4)


def test_four_rectangular_inputs() -> None:
    """JCGM 101:2008, 9.2.2 and 9.2.3: four inputs of variance 1, normal +-3.92, rectangular 3.88.

    The core's doubts are rectangular and its factor is that of the normal: the four together come
    out at the normal figure, on the safe side of the exact one, which is found by convolution.
    """
    # One reading's doubt of variance 4, rectangular step and accuracy each twice the unit.
    u = one_reading(step=math.sqrt(12.0 * 2.0), accuracy=math.sqrt(3.0 * 2.0))
    source = "JCGM 101:2008, 9.2.2"
    check(source, "four normal inputs, 95 %", 3.92, K_95_LINE * u, within=0.005)
    exact = sum_of_four_rectangular(0.95)
    check(
        "JCGM 101:2008, 9.2.3",
        "four rectangular inputs, 95 %, by convolution",
        3.88,
        exact,
        within=0.005,
    )
    assert exact == pytest.approx(3.879407, abs=5e-6)
    assert exact < K_95_LINE * u


def sum_of_four_rectangular(share: float) -> float:
    """The half width that holds a share of the sum of four of +-sqrt(3): Irwin-Hall, n = 4."""
    hall = stats.irwinhall(4)
    return float(2.0 * SQRT3 * (hall.ppf(0.5 + share / 2.0) - 2.0))


def test_rice_distribution() -> None:
    """rice.cdf(3, 2) = ncx2.cdf(9, 2, 4) = .7856379: two sigmas off, limit three."""
    known = 0.7856379
    assert stats.rice.cdf(3, 2) == pytest.approx(known, abs=5e-8)
    assert stats.ncx2.cdf(9, 2, 4) == pytest.approx(known, abs=5e-8)
    for x, y in ((2.0, 0.0), (-1.2, 1.6)):
        found = chance(x, y, 1.0, 1.0, 3.0)
        check("scipy, rice and ncx2", f"({x}, {y}), sigma 1, within 3", known, found, within=5e-8)


@pytest.mark.parametrize(
    ("ratio", "k"), [(0.0, 1.95996), (0.2, 1.97041), (0.5, 2.03586), (0.8, 2.23029), (1.0, 2.44775)]
)
def test_elliptical_coverage(ratio: float, k: float) -> None:
    """Harter 1960, circle holding .95 of an elliptical normal; from memory, confirmed anew.

    k is printed to five digits and the density there is below .13, so 1e-6 in chance.
    """
    found = chance(0.0, 0.0, ratio, 1.0, k)
    source = "Harter 1960; from memory, confirmed by quadrature"
    check(source, f"chance within {k}, ratio {ratio}", 0.95, found, within=1e-6)


# Decision ----------------------------------------------------------------------------------


def one_sided(distance: float, u: float) -> Data:
    """A bore that is off straight up, ``distance`` short of a limit that is far from nothing.

    Only its height is in doubt, so it is one quantity against one limit.
    """
    limit = 400.0
    return normal_job(0.0, limit - distance, 0.0, u, limit)


@pytest.mark.parametrize(
    ("distance", "u", "expected"),
    [
        (-5.40 - -5.47, 0.05, 0.92),  # at most -5.40, measured -5.47
        (509.7 - 490.0, 8.6, 0.99),  # at least 490, measured 509.7
    ],
)
def test_chance_of_conforming_to_one_limit(distance: float, u: float, expected: float) -> None:
    """JCGM 106:2012, section 7; from memory, re-computed. Printed to two digits."""
    probability = bore_of(one_sided(distance, u))["probability_within"]
    source = "JCGM 106:2012, section 7; from memory, re-computed"
    what = f"chance, {distance:.2f} inside, u {u}"
    check(source, what, expected, probability, within=0.005)
    # The centre's readings cost some digits of the small distance to a large limit.
    assert probability == pytest.approx(float(stats.norm.cdf(distance / u)), abs=1e-9)


def test_guard_band_of_iso_14253() -> None:
    """ISO 14253-1: one-sided k for 95 % is 1.644854; the verdict turns there on both sides."""
    k, u, hair = 1.644854, 1.0, 2e-6
    check("ISO 14253-1", "one-sided k at 95 %", k, K_95_ONE_SIDE, within=5e-7)
    assert bore_of(one_sided((k + hair) * u, u))["verdict"] == "within"
    assert bore_of(one_sided((k - hair) * u, u))["verdict"] == "undecided"
    assert bore_of(one_sided(-(k - hair) * u, u))["verdict"] == "undecided"
    assert bore_of(one_sided(-(k + hair) * u, u))["verdict"] == "outside"


# scipy as the oracle -----------------------------------------------------------------------


def test_round_chances_against_rice() -> None:
    """The core promises 1e-9; from almost sure to almost impossible."""
    rng = random.Random(11)
    for _ in range(150):
        sigma = 10.0 ** rng.uniform(-2.0, 1.0)
        limit = rng.uniform(0.5, 20.0)
        offset = abs(limit + sigma * rng.uniform(-8.0, 8.0))
        toward = rng.uniform(0.0, 2.0 * math.pi)
        got = chance(offset * math.sin(toward), offset * math.cos(toward), sigma, sigma, limit)
        expected = float(stats.rice.cdf(limit / sigma, offset / sigma))
        assert got == pytest.approx(expected, abs=1e-9), (sigma, limit, offset)


def by_quadrature(mean: np.ndarray, cov: np.ndarray, limit: float) -> float:
    """The chance of lying within ``limit``: scipy's quadrature along the longer principal axis.

    (The core integrates along the shorter one.)
    """
    values, vectors = np.linalg.eigh(cov)
    minor, major = np.sqrt(np.maximum(values, 0.0))
    mu_minor, mu_major = vectors.T @ mean

    def slice_at(t: float) -> float:
        s, half = limit * math.sin(t), limit * math.cos(t)
        ends = stats.norm.cdf((half - mu_minor) / minor) - stats.norm.cdf(
            (-half - mu_minor) / minor
        )
        density = math.exp(-(((s - mu_major) / major) ** 2) / 2) / (major * math.sqrt(2 * math.pi))
        return float(density * ends * half)

    # Where the integrand turns: its bell, and where the circle crosses the ridge of the density.
    corners = {max(-limit, min(limit, mu_major + k * major)) for k in (-9, -5, -2, 0, 2, 5, 9)}
    if abs(mu_minor) < limit:
        edge = math.sqrt(limit**2 - mu_minor**2)
        corners |= {-edge, edge}
    for k in (-6.0, 6.0):
        if abs(mu_minor + k * minor) < limit:
            edge = math.sqrt(limit**2 - (mu_minor + k * minor) ** 2)
            corners |= {-edge, edge}
    points = sorted(math.asin(c / limit) for c in corners | {-limit, limit})
    return math.fsum(
        integrate.quad(slice_at, a, b, epsabs=1e-13, epsrel=1e-11, limit=400)[0]
        for a, b in itertools.pairwise(points)
        if b > a
    )


@pytest.mark.slow
@pytest.mark.parametrize("ratio", [0.9, 0.5, 0.2, 0.05, 0.01, 0.001])
def test_elongated_chances_against_quadrature(ratio: float) -> None:
    """From nearly round to a thousand times longer than wide, centres all round the limit."""
    rng = random.Random(round(1000 * ratio))
    for _ in range(25):
        sigma = 10.0 ** rng.uniform(-1.0, 1.0)
        limit = rng.uniform(1.0, 10.0)
        toward = rng.uniform(0.0, 2.0 * math.pi)
        offset = abs(limit + sigma * rng.uniform(-4.0, 2.0))
        x, y = offset * math.sin(toward), offset * math.cos(toward)
        got = chance(x, y, ratio * sigma, sigma, limit)
        cov = np.diag([(ratio * sigma) ** 2, sigma**2])
        assert got == pytest.approx(by_quadrature(np.array([x, y]), cov, limit), abs=1e-8), (
            sigma, limit, x, y,
        )  # fmt: skip


@pytest.mark.slow
def test_slanted_covariances_against_quadrature() -> None:
    """Positions on uneven places slant the ellipse; the chance is still the one of quadrature."""
    rng = random.Random(21)
    slants = []
    for _ in range(60):
        positions = [0.0, rng.uniform(20.0, 100.0), rng.uniform(181.0, 195.0)]
        x, y = rng.uniform(-8.0, 8.0), rng.uniform(-8.0, 8.0)
        job = make_job(
            readings_of(x, y, positions),
            positions=positions,
            indicator={"sag": None, "sag_allowance": rng.uniform(0.0, 6.0)},
            limits={"bore_offset": 5.0},
        )
        bore = bore_of(job)
        cov = np.array(bore["covariance"])
        slants.append(abs(cov[0, 1]) / math.sqrt(cov[0, 0] * cov[1, 1]))
        expected = by_quadrature(np.array(bore["center"]), cov, 5.0)
        assert bore["probability_within"] == pytest.approx(expected, abs=1e-8)
    assert max(slants) > 0.5  # else they were not slanted


def test_chance_against_a_million_draws() -> None:
    """A check that shares nothing with any quadrature: 1 000 000 draws, fixed seed, 5 sigma."""
    rng = np.random.default_rng(31)
    positions = [0.0, 60.0, 188.0]
    job = make_job(
        readings_of(3.6, -3.0, positions), positions=positions, limits={"bore_offset": 5.0}
    )
    bore = bore_of(job)
    draws = rng.multivariate_normal(bore["center"], bore["covariance"], 1_000_000)
    share = float((np.hypot(draws[:, 0], draws[:, 1]) <= 5.0).mean())
    p = bore["probability_within"]
    assert 0.05 < p < 0.95  # a case in which something is to be counted
    assert share == pytest.approx(p, abs=5.0 * math.sqrt(p * (1.0 - p) / 1e6))


@pytest.mark.parametrize(
    "positions",
    [
        [0.0, 90.0, 180.0, 270.0],
        [0.0, 60.0, 185.0],
        [40.0, 100.0, 222.0],
        [10.0, 20.0, 150.0, 200.0],
    ],
)
def test_the_ellipse_holds_95_in_100(positions: list[float]) -> None:
    """Draws from the covariance, counted in the ellipse as it is reported (axes and clock angle).

    400 000 draws, fixed seed, five standard errors.
    """
    rng = np.random.default_rng(41)
    bore = bore_of(make_job(readings_of(4.0, 1.0, positions), positions=positions))
    draws = rng.multivariate_normal([0.0, 0.0], bore["covariance"], 400_000)
    ellipse = bore["ellipse95"]
    a = math.radians(ellipse["at_deg"])
    along = draws[:, 0] * math.sin(a) + draws[:, 1] * math.cos(a)
    across = draws[:, 0] * math.cos(a) - draws[:, 1] * math.sin(a)
    major, minor = ellipse["semi_axes"]
    share = float(((along / major) ** 2 + (across / minor) ** 2 <= 1.0).mean())
    assert share == pytest.approx(0.95, abs=5.0 * math.sqrt(0.95 * 0.05 / 400_000))
