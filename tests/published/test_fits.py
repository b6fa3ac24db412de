"""The fit and its covariance against published fits and numpy's least squares.

Each outside oracle is first held to a published result, then the core is held to the oracle.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import files
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import least_squares

from sweepsheet import solve
from sweepsheet.maths.linear import least_squares as core_least_squares
from tests.cases.jobs import PERFECT, Data, Reading, bore_of, make_job
from tests.published.record import check

Array = NDArray[np.float64]

# Positions on paper and in the core are the same doubles, so the two differ by rounding alone;
# poorly spread positions magnify it by their condition number, at most some thousands here.
ROUNDING = 1e-9


# The harmonic ------------------------------------------------------------------------------


def first_harmonic(readings: Sequence[float]) -> tuple[float, float]:
    """Cosine and sine part of the first harmonic, by numpy's Fourier transform."""
    spectrum = np.fft.rfft(np.array(readings))
    value = spectrum[1] * 2.0 / len(readings)
    return float(value.real), float(-value.imag)


@pytest.mark.parametrize("count", [3, 4, 5, 6, 8, 12, 24, 36])
def test_even_positions_give_the_fourier_coefficient(count: int) -> None:
    """Centre by a = (2/N) sum r cos, b = (2/N) sum r sin: ISO 4291, explicit least squares.

    (The text of the standard was not read.) The centre is the harmonic with its sign turned.
    """
    rng = random.Random(count)
    for _ in range(20):
        readings = [rng.uniform(-20.0, 20.0) for _ in range(count)]
        cosine, sine = first_harmonic(readings)
        positions = [360.0 * i / count for i in range(count)]
        bore = bore_of(make_job(readings, positions=positions, indicator=PERFECT))
        assert bore["center"] == pytest.approx([-sine, -cosine], abs=ROUNDING)
        assert bore["tir"] == pytest.approx(2.0 * math.hypot(cosine, sine), abs=ROUNDING)


def polar_readings(radius: float, e: float, toward_deg: float, at: Sequence[float]) -> list[float]:
    """What a dial inside a true circle shows: minus the exact distance to the wall."""
    found = []
    for angle in at:
        t = math.radians(angle - toward_deg)
        found.append(-(e * math.cos(t) + math.sqrt(radius**2 - (e * math.sin(t)) ** 2)))
    return found


def test_exact_circle_of_60_off_by_1() -> None:
    """Radius 60, off by 1, eight points: amplitude 1, mean less radius about -e**2/4R = -.0041669.

    What is not first harmonic in the distance to an eccentric circle is even in the angle, so that
    eight points leave the first one clean. Re-computed.
    """
    positions = [45.0 * i for i in range(8)]
    from_wall = polar_readings(60.0, 1.0, 0.0, positions)
    mean = math.fsum(-m for m in from_wall) / 8
    source = "first harmonic of an exact circle, re-computed"
    check(source, "mean less radius, R 60, e 1, mm", -0.0041669, mean - 60.0, within=5e-8)
    dial = [m + 60.0 for m in from_wall]
    bore = bore_of(make_job(dial, positions=positions, units="metric", indicator=PERFECT))
    check(source, "offset, R 60, e 1, mm", 1.0, bore["offset"], within=1e-12)
    assert bore["center"] == pytest.approx([0.0, 1.0], abs=1e-12)


# Circles -----------------------------------------------------------------------------------


def circle_through(points: Array) -> tuple[float, float, float]:
    """The circle of least squared distances, by scipy's Levenberg-Marquardt."""

    def distances(parameters: Array) -> Array:
        x, y, r = parameters
        return np.asarray(np.hypot(points[:, 0] - x, points[:, 1] - y) - r)

    middle = points.mean(axis=0)
    start = np.array([middle[0], middle[1], np.hypot(*(points - middle).T).mean()])
    solved = least_squares(distances, start, method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    x, y, r = solved.x
    return float(x), float(y), float(r)


@pytest.mark.parametrize(
    ("source", "xs", "ys", "circle"),
    [
        (
            "Gander, Golub, Strebel, BIT 34 (1994) 558; from memory, re-computed",
            (1, 2, 5, 7, 9, 3),
            (7, 6, 8, 7, 5, 7),
            (4.73978, 2.98353, 4.71423),
        ),
        (
            "SciPy Cookbook, least-squares circle",
            (9, 35, -13, 10, 23, 0),
            (34, 10, 6, -14, 27, -10),
            (10.50009, 9.65995, 23.33353),
        ),
    ],
)
def test_the_circle_oracle_reproduces_published_fits(
    source: str, xs: Sequence[float], ys: Sequence[float], circle: tuple[float, float, float]
) -> None:
    found = circle_through(np.column_stack([xs, ys]).astype(float))
    check(source, "circle x, y, r (oracle of the fit)", circle, found, within=1e-5)


def test_a_small_offset_is_the_centre_of_the_geometric_circle() -> None:
    """Points of a worn bore, fitted as a circle: the sweep's centre is the same to e**2/R.

    The first-order formula leaves out terms of the order of offset times form error over
    radius: with 0.1 mm, 0.02 mm and 60 mm well below 1e-4 mm.
    """
    rng = random.Random(7)
    for _ in range(50):
        e, toward = rng.uniform(0.0, 0.1), rng.uniform(0.0, 360.0)
        positions = [30.0 * i for i in range(12)]
        walls = [m + rng.uniform(-0.01, 0.01) for m in polar_readings(60.0, e, toward, positions)]
        points = np.array(
            [
                [-m * math.sin(math.radians(a)), -m * math.cos(math.radians(a))]
                for a, m in zip(positions, walls, strict=True)
            ]
        )
        x, y, _ = circle_through(points)
        bore = bore_of(make_job([m + 60.0 for m in walls], positions=positions, units="metric"))
        assert bore["center"] == pytest.approx([x, y], abs=1e-4)


# Least squares with covariance -------------------------------------------------------------


@dataclass(frozen=True)
class LinearFit:
    """A least-squares fit by numpy: parameters, and the weights that make them of the data."""

    parameters: Array
    weights: Array
    residuals: Array

    def covariance(self, of_data: Array) -> Array:
        """Propagation of the covariance of the data (JCGM 102, 6.2)."""
        return np.asarray(self.weights @ of_data @ self.weights.T)


def linear_fit(design: Array, data: Array) -> LinearFit:
    """Fit ``design @ parameters`` to data."""
    parameters: Array = np.asarray(np.linalg.lstsq(design, data, rcond=None)[0], dtype=float)
    weights: Array = np.asarray(np.linalg.pinv(design), dtype=float)
    return LinearFit(parameters, weights, data - design @ parameters)


def test_the_linear_oracle_reproduces_the_gum() -> None:
    """JCGM 100:2008, H.3: calibration of a thermometer, with standard uncertainties in brackets.

    -.1712(29), .00218(67), r -.930, s .0035, b(30) = -.1494(41).
    """
    t = np.array([
        21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511,
    ])  # fmt: skip
    b = np.array([
        -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160,
    ])  # fmt: skip
    fitted = linear_fit(np.column_stack([np.ones(11), t - 20.0]), b)
    s2 = float(fitted.residuals @ fitted.residuals) / 9
    cov = fitted.covariance(np.eye(11) * s2)
    source = "JCGM 100:2008, H.3"
    y1, y2 = (float(v) for v in fitted.parameters)
    u1, u2 = (math.sqrt(cov[i, i]) for i in (0, 1))
    check(source, "intercept (oracle of the fit)", -0.1712, y1, within=5e-5)
    check(source, "slope (oracle of the fit)", 0.00218, y2, within=5e-6)
    check(source, "u of the intercept", 0.0029, u1, within=5e-5)
    check(source, "u of the slope", 0.00067, u2, within=5e-6)
    check(source, "correlation of the two", -0.930, cov[0, 1] / (u1 * u2), within=5e-4)
    check(source, "s of the fit", 0.0035, math.sqrt(s2), within=5e-5)
    at_30 = np.array([1.0, 10.0])
    u_30 = math.sqrt(float(at_30 @ cov @ at_30))
    check(
        source, "correction at 30 degrees C", -0.1494, float(at_30 @ fitted.parameters), within=5e-5
    )
    check(source, "u of the correction at 30 degrees C", 0.0041, u_30, within=5e-5)
    # The core's own small solver on the same data: the same line.
    line = core_least_squares([[1.0, float(v) - 20.0] for v in t], [float(v) for v in b])
    assert line is not None
    check(source, "intercept by the core's solver", -0.1712, line[0], within=5e-5)
    check(source, "slope by the core's solver", 0.00218, line[1], within=5e-6)


def norris() -> tuple[list[float], list[float]]:
    """The x and y of NIST's data set Norris, as scipy carries it."""
    place = files("scipy.stats.tests.data") / "nist_linregress" / "Norris.dat"
    lines = place.read_text("utf-8").splitlines()[60:96]
    pairs = [[float(word) for word in line.split()] for line in lines]
    return [x for _, x in pairs], [y for y, _ in pairs]


def test_the_solver_of_the_core_against_a_certified_fit() -> None:
    """NIST Statistical Reference Datasets, Norris (linear, lower difficulty): certified values."""
    xs, ys = norris()
    assert len(xs) == 36
    line = core_least_squares([[1.0, x] for x in xs], ys)
    assert line is not None
    source = "NIST StRD, Norris (data file in scipy)"
    check(source, "certified intercept", -0.262323073774029, line[0], within=1e-10)
    check(source, "certified slope", 1.00211681802045, line[1], within=1e-13)
    left = math.fsum((y - line[0] - line[1] * x) ** 2 for x, y in zip(xs, ys, strict=True))
    check(source, "certified residual s", 0.884796396144373, math.sqrt(left / 34), within=1e-11)


@dataclass(frozen=True)
class Case:
    """A random sweep job: positions in any order, some blocked, swept one to three times."""

    positions: list[float]
    sweeps: list[list[Reading]]
    indicator: Data

    @property
    def job(self) -> Data:
        """The case as a job file."""
        return make_job(*self.sweeps, positions=self.positions, indicator=self.indicator)

    @property
    def known(self) -> list[tuple[int, int, float]]:
        """Sweep, position and value of every reading there is."""
        return [
            (j, i, m)
            for j, row in enumerate(self.sweeps)
            for i, m in enumerate(row)
            if m is not None
        ]

    def fitted(self) -> LinearFit:
        """All at once: a zero for each sweep, then the harmonic's x and y."""
        rows = []
        for j, i, _ in self.known:
            a = math.radians(self.positions[i])
            zeros = [1.0 if k == j else 0.0 for k in range(len(self.sweeps))]
            rows.append([*zeros, math.sin(a), math.cos(a)])
        return linear_fit(np.array(rows), np.array([m for *_, m in self.known]))


def spread(positions: Sequence[float]) -> bool:
    """Whether no gap comes near half a turn."""
    ordered = sorted(positions)
    following = [*ordered[1:], ordered[0] + 360.0]
    return max(b - a for a, b in zip(ordered, following, strict=True)) < 178.0


def random_case(rng: random.Random, *, blocked: bool, sweeps: int) -> Case:
    """Unequal positions three degrees apart or more, and readings of a bore that is a bit rough."""
    while True:
        count = rng.randint(3, 12)
        positions = [float(a) for a in rng.sample(range(0, 360, 3), count)]
        x, y = rng.uniform(-15.0, 15.0), rng.uniform(-15.0, 15.0)
        rows: list[list[Reading]] = []
        for _ in range(sweeps):
            zero = rng.uniform(-5.0, 5.0)
            rows.append([
                zero - x * math.sin(math.radians(a)) - y * math.cos(math.radians(a))
                + rng.gauss(0.0, 0.8)
                for a in positions
            ])  # fmt: skip
        if blocked:
            for row in rows:
                row[rng.randrange(count)] = None
        indicator: Data = {
            "step": rng.choice([0.1, 0.5, 1.0]),
            "accuracy": rng.uniform(0.0, 1.0),
            "repeatability": rng.uniform(0.1, 0.5),
            "sag": None if rng.random() < 0.5 else 0.0,
            "sag_allowance": rng.uniform(0.0, 4.0),
            "angle_setting_deg": rng.uniform(0.0, 10.0),
        }
        reached = [
            [a for a, m in zip(positions, row, strict=True) if m is not None] for row in rows
        ]
        if all(len(each) >= 3 and spread(each) for each in reached):
            return Case(positions, rows, indicator)


KINDS = [(blocked, sweeps) for blocked in (False, True) for sweeps in (1, 2, 3)]


@pytest.mark.parametrize(("blocked", "sweeps"), KINDS)
def test_fit_against_numpy(blocked: bool, sweeps: int) -> None:  # noqa: FBT001 - a table's column
    rng = random.Random(1000 + sweeps)
    for _ in range(60):
        case = random_case(rng, blocked=blocked, sweeps=sweeps)
        fitted = case.fitted()
        bore = bore_of(case.job)
        # Sag that was not measured makes the bore read high, by a quarter of the most it may be.
        dial = case.indicator
        high = dial["sag_allowance"] / 4.0 if dial["sag"] is None else 0.0
        expected = -fitted.parameters[-2:] - np.array([0.0, high])
        assert bore["center"] == pytest.approx(list(expected), abs=ROUNDING)
        residuals = [r for row in bore["residuals"] for r in row if r is not None]
        assert residuals == pytest.approx(list(fitted.residuals), abs=ROUNDING)


def pooled_scatter(case: Case, stated: float) -> float:
    """Variance of one reading: the residual of a two-way layout, weighed with what is stated.

    One effect a sweep, one a position, by numpy; 3 degrees of freedom for the stated value.
    """
    if len(case.sweeps) == 1:
        return stated**2
    count = len(case.positions)
    rows = []
    for j, i, _ in case.known:
        sweep = [1.0 if k == j else 0.0 for k in range(len(case.sweeps))]
        position = [1.0 if k == i else 0.0 for k in range(count)]
        rows.append(sweep + position)
    data = np.array([m for *_, m in case.known])
    left = linear_fit(np.array(rows), data).residuals
    dof = len(data) - count - len(case.sweeps) + 1
    pooled = float(left @ left) / dof
    return max(pooled, (3 * stated**2 + dof * pooled) / (3 + dof))


def covariance_of(case: Case, bore: Data, scatter: float, lack: float) -> Any:
    """The covariance of the centre: that of all readings, put together and propagated by numpy.

    What belongs to a position (dial, setting, lack of fit) is common to all sweeps there.
    """
    dial = case.indicator
    x, y = bore["center"]
    systematic = []
    for a in case.positions:
        turn = math.radians(dial["angle_setting_deg"]) / math.sqrt(3.0)
        slope = -x * math.cos(math.radians(a)) + y * math.sin(math.radians(a))
        systematic.append(
            dial["step"] ** 2 / 12.0 + dial["accuracy"] ** 2 / 3.0 + (turn * slope) ** 2 + lack
        )
    size = len(case.known)
    of_data = np.zeros((size, size))
    for p, (_, i, _) in enumerate(case.known):
        for q, (_, k, _) in enumerate(case.known):
            of_data[p, q] = (systematic[i] if i == k else 0.0) + (scatter if p == q else 0.0)
    cov = case.fitted().covariance(of_data)[-2:, -2:]
    # Not measured: rectangular from nothing to the allowance. Measured: two readings' difference.
    sag = dial["step"] ** 2 / 6.0 + 2.0 * dial["repeatability"] ** 2
    if dial["sag"] is None:
        sag = dial["sag_allowance"] ** 2 / 12.0
    cov[1, 1] += sag / 4.0
    return cov


@pytest.mark.parametrize("sweeps", [1, 2, 3])
def test_covariance_against_numpy(sweeps: int) -> None:
    """Every term worked out anew, for sweeps that reach all positions."""
    rng = random.Random(2000 + sweeps)
    for _ in range(60):
        case = random_case(rng, blocked=False, sweeps=sweeps)
        bore = bore_of(case.job)
        scatter = pooled_scatter(case, case.indicator["repeatability"])
        assert bore["repeatability"] == pytest.approx(math.sqrt(scatter), abs=ROUNDING)
        lack = lack_of_fit(case, bore, scatter)
        assert bore["lack_of_fit"] ** 2 == pytest.approx(lack, abs=1e-8)
        expected = covariance_of(case, bore, scatter, lack)
        for got, wanted in zip(bore["covariance"], expected, strict=True):
            assert got == pytest.approx(list(wanted), rel=1e-7, abs=ROUNDING)


def lack_of_fit(case: Case, bore: Data, scatter: float) -> float:
    """What the position means' residuals have beyond the mean variance that is expected."""
    count = len(case.positions)
    if count == 3:
        return 0.0
    means = np.array(bore["residuals"], dtype=float).mean(axis=0)
    dial = case.indicator
    x, y = bore["center"]
    turn = math.radians(dial["angle_setting_deg"]) / math.sqrt(3.0)
    expected = [
        dial["step"] ** 2 / 12.0
        + dial["accuracy"] ** 2 / 3.0
        + (turn * (-x * math.cos(math.radians(a)) + y * math.sin(math.radians(a)))) ** 2
        + scatter / len(case.sweeps)
        for a in case.positions
    ]
    return max(0.0, float(means @ means) / (count - 3) - float(sum(expected)) / count)


@pytest.mark.parametrize("sweeps", [1, 2, 3])
def test_covariance_with_blocked_positions_against_numpy(sweeps: int) -> None:
    """Where positions are blocked, scatter and lack of fit as reported are carried rightly."""
    rng = random.Random(3000 + sweeps)
    for _ in range(60):
        case = random_case(rng, blocked=True, sweeps=sweeps)
        bore = bore_of(case.job)
        expected = covariance_of(case, bore, bore["repeatability"] ** 2, bore["lack_of_fit"] ** 2)
        for got, wanted in zip(bore["covariance"], expected, strict=True):
            assert got == pytest.approx(list(wanted), rel=1e-7, abs=ROUNDING)


def test_drift_covariance_against_a_jump_at_random() -> None:
    """A dial that jumps once at a moment that could be any, spread evenly: seeded simulation.

    What is left at fraction f of the turn is (jumped before f) - f, times the drift; 40 000
    jumps give the variance to within 4 standard errors, 4 sqrt(2/40000) of it or 3 percent.
    """
    rng = np.random.default_rng(5)
    drift = 4.0
    clean = make_job((0, 0, 0, 0), indicator=PERFECT, closing=[0.0])
    drifted = make_job((0, 1, 2, 3), indicator=PERFECT, closing=[drift])
    moments = rng.uniform(0.0, 1.0, 40_000)
    f = np.array([0.0, 0.25, 0.5, 0.75])
    left = drift * ((moments[:, None] <= f[None, :]) - f[None, :])
    centres = np.column_stack([-(left[:, 1] - left[:, 3]) / 2, -(left[:, 0] - left[:, 2]) / 2])
    expected = np.cov(centres.T)
    assert solve(clean)["rounds"][0]["bore"]["covariance"] == [[0.0, 0.0], [0.0, 0.0]]
    bore = bore_of(drifted)
    assert bore["center"] == pytest.approx([0.0, 0.0], abs=1e-12)
    got = np.array(bore["covariance"])
    assert got == pytest.approx(expected, rel=0.03, abs=0.03 * drift**2)
