"""The gearbox in the bore: interference, play, and the chance of the finished joint."""

from __future__ import annotations

import math

import numpy as np
import pytest

from sweepsheet import sheet, solve
from sweepsheet.alignment.seat import clearance_of, seat_covariance
from sweepsheet.job.read import read_job
from tests.cases.jobs import EIGHTHS, Data, codes_of, make_job, readings_of


def joint_job(
    clearance: float, y: float = -3.0, indicator: Data | None = None, **parts: object
) -> Data:
    """A bore ``y`` high, and a register that has this clearance in it, in thou."""
    return make_job(
        readings_of(0.0, y, EIGHTHS), positions=EIGHTHS, indicator=indicator or {"sag": 0.0},
        housing={"bore_diameter": 4.0 + clearance / 1000.0, "register_diameter": 4.0},
        **parts,  # type: ignore[arg-type]  # any part of a job, by its key
    )  # fmt: skip


@pytest.mark.parametrize(
    ("housing", "clearance"),
    [
        ({}, None), ({"bore_diameter": 4.0}, None), ({"register_diameter": 4.0}, None),
        ({"bore_diameter": 4.002, "register_diameter": 4.0}, 2.0),
        ({"bore_diameter": 4.0, "register_diameter": 4.001}, -1.0),
    ],
)  # fmt: skip
def test_clearance_of(housing: Data, clearance: float | None) -> None:
    found = clearance_of(read_job(make_job((0, 0, 0, 0), housing=housing)))
    assert found == (clearance if clearance is None else pytest.approx(clearance, abs=1e-9))


def test_clearance_in_millimetres() -> None:
    housing = {"bore_diameter": 119.05, "register_diameter": 119.0}
    job = read_job(make_job((0, 0, 0, 0), units="metric", housing=housing))
    assert clearance_of(job) == pytest.approx(0.05, abs=1e-12)


@pytest.mark.parametrize("clearance", [None, 0.0, -1.0])
def test_seat_doubt_failure_no_play(clearance: float | None) -> None:
    doubt = seat_covariance(clearance)
    assert (doubt.xx, doubt.xy, doubt.yy) == (0.0, 0.0, 0.0)


def test_seat_doubt_is_that_of_a_circle() -> None:
    """Anywhere in a circle of radius 3: a variance of 9/4 along any line. 200 000 draws, seeded."""
    rng = np.random.default_rng(1)
    radius, angle = 3.0 * np.sqrt(rng.uniform(size=200_000)), rng.uniform(0, 2 * math.pi, 200_000)
    drawn = np.column_stack([radius * np.sin(angle), radius * np.cos(angle)])
    doubt = seat_covariance(6.0)
    expected = np.array([[doubt.xx, doubt.xy], [doubt.xy, doubt.yy]])
    assert np.cov(drawn.T) == pytest.approx(expected, abs=0.02 * doubt.xx)


@pytest.mark.parametrize("clearance", [0.5, 2.0, 4.0, 6.0, 8.0])
@pytest.mark.parametrize("y", [-1.0, -3.0, -4.5, -6.0])
def test_the_chance_of_the_finished_joint_against_a_simulation(clearance: float, y: float) -> None:
    """The bore normal as measured, the register anywhere in its play; 100 000 draws, seeded.

    The core takes the play as normal too, with the same covariance. Where the play is most of the
    doubt that is off by up to six in a hundred, mostly to the careful side; chance adds 0.2 in a
    hundred. Where it says "within", it is.
    """
    result = solve(joint_job(clearance, y))
    bore, joint = result["rounds"][0]["bore"], result["joint"]
    rng = np.random.default_rng(2)
    n = 100_000
    bores = rng.multivariate_normal(bore["center"], bore["covariance"], n)
    radius = clearance / 2.0 * np.sqrt(rng.uniform(size=n))
    angle = rng.uniform(0.0, 2.0 * math.pi, n)
    seats = np.column_stack([radius * np.sin(angle), radius * np.cos(angle)])
    inside = float((np.hypot(*(bores + seats).T) <= 5.0).mean())
    assert joint["clearance"] == pytest.approx(clearance, abs=1e-9)
    assert joint["probability_within"] == pytest.approx(inside, abs=0.06)
    assert joint["verdict"] != "within" or inside >= 0.95


def test_it_is_said_apart_from_the_figure_of_the_bore() -> None:
    """The bore's own figures do not change with the register."""
    tight, loose = solve(joint_job(0.1)), solve(joint_job(8.0))
    assert tight["rounds"] == loose["rounds"]
    assert tight["joint"]["verdict"] == "within"
    assert loose["joint"]["verdict"] == "undecided"
    assert "the gearbox may sit up to 4.0 thou off" in sheet(joint_job(8.0))


def test_a_register_larger_than_its_bore_is_a_stop() -> None:
    result = solve(joint_job(-0.5, -7.0))
    assert result["joint"]["verdict"] is result["joint"]["probability_within"] is None
    assert "interference" in codes_of(joint_job(-0.5))
    steps = sheet(joint_job(-0.5, -7.0)).partition("What each choice")[0]
    assert "Measure bore and register again." in steps
    assert "\nFit " not in steps


def test_without_a_limit_it_is_told_and_not_judged() -> None:
    joint = solve(joint_job(4.0, limits={"bore_offset": None}))["joint"]
    assert (joint["verdict"], joint["probability_within"]) == (None, None)
    assert joint["clearance"] == pytest.approx(4.0)


def test_where_it_was_not_measured_nothing_is_said_failure() -> None:
    assert solve(make_job(readings_of(0.0, -3.0)))["joint"] is None
