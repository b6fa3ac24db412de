"""The pilot line, against a line in space that stands square on a tilted face."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet import sheet, solve
from sweepsheet.alignment.pilot import largest_sure_angle
from sweepsheet.maths.normal import K_95_LINE, K_95_ONE_SIDE
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    Data,
    codes_of,
    face_readings,
    make_job,
    readings_of,
    with_face,
)

DIAL: Data = {"step": 0.5, "accuracy": 0.5, "repeatability": 0.25, "sag": 0.0}


def pilot_job(
    center: tuple[float, float],
    slope: tuple[float, float],
    indicator: Data = PERFECT,
    **parts: object,
) -> Data:
    """A bore centre in thou, a slope in thou per inch, the pilot bearing 7 in ahead of the face."""
    job = make_job(
        readings_of(*center, EIGHTHS), positions=EIGHTHS, indicator=indicator,
        **{"housing": {"pilot_distance": 7.0}, **parts},  # type: ignore[arg-type]  # any part of a job, by its key
    )  # fmt: skip
    return with_face(job, face_readings(*slope, EIGHTHS), positions=EIGHTHS)


def pilot_of(job: Data) -> Data:
    pilot: Data = solve(job)["rounds"][-1]["pilot"]
    return pilot


@pytest.mark.slow
@given(
    st.floats(-20.0, 20.0), st.floats(-20.0, 20.0), st.floats(-5.0, 5.0), st.floats(-5.0, 5.0),
    st.floats(1.0, 30.0),
)  # fmt: skip
def test_the_gearbox_axis_against_a_line_in_space(
    cx: float, cy: float, gx: float, gy: float, distance: float
) -> None:
    """With x right, y up, z rearward, the face is the plane z = g . (x, y), the axis its normal.

    Through the bore's centre in the plane of the crank's clock at the face; exact, since the
    plane of the bearing lies square to the crank.
    """
    job = pilot_job((cx, cy), (gx, gy), housing={"pilot_distance": distance})
    normal = np.array([-gx / 1000.0, -gy / 1000.0, 1.0])
    at_face = np.array([cx, cy, 0.0])
    # Forward along the normal until z = -L.
    meets = at_face + normal * (-1000.0 * distance / normal[2])
    pilot = pilot_of(job)
    assert pilot["center"] == pytest.approx(list(meets[:2]), abs=1e-8)
    assert pilot["offset"] == pytest.approx(float(np.hypot(*meets[:2])), abs=1e-8)
    between = math.atan(math.hypot(normal[0], normal[1]))
    # The angle told is its tangent: the same to t**3 / 3.
    assert pilot["angle"] == pytest.approx(between, abs=between**3 / 2.0 + 1e-12)


def test_a_face_that_stands_rearward_at_12_leans_the_nose_up() -> None:
    """Two thou per inch over 7 in: 14 up."""
    assert pilot_of(pilot_job((0.0, 0.0), (0.0, 2.0)))["center"] == pytest.approx([0.0, 14.0])


def test_bore_and_face_may_cancel_at_the_pilot() -> None:
    pilot = pilot_of(pilot_job((0.0, -14.0), (0.0, 2.0)))
    assert pilot["offset"] == pytest.approx(0.0, abs=1e-9)
    assert pilot["direction_pm_deg"] is None
    assert pilot["angle"] == pytest.approx(0.002, abs=1e-12)


# Doubt -------------------------------------------------------------------------------------


def test_the_covariance_against_a_simulation() -> None:
    """Bore, face and seat drawn apart from one another; 200 000 draws, seeded.

    The register lies anywhere in a circle of half its clearance. A variance is told to
    sqrt(2/n), 0.3 percent, one standard error; two percent are allowed.
    """
    job = pilot_job(
        (3.0, -4.0), (0.5, 1.0), DIAL,
        housing={"pilot_distance": 7.0, "bore_diameter": 4.003, "register_diameter": 4.0},
    )  # fmt: skip
    measured = solve(job)["rounds"][0]
    rng = np.random.default_rng(4)
    n = 200_000
    bores = rng.multivariate_normal(measured["bore"]["center"], measured["bore"]["covariance"], n)
    face = measured["face"]
    slopes = rng.multivariate_normal(face["slope"], face["slope_covariance"], n)
    radius, angle = 1.5 * np.sqrt(rng.uniform(size=n)), rng.uniform(0.0, 2.0 * math.pi, n)
    seats = np.column_stack([radius * np.cos(angle), radius * np.sin(angle)])
    drawn = bores + 7000.0 * slopes + seats
    pilot = measured["pilot"]
    assert drawn.mean(axis=0) == pytest.approx(pilot["center"], abs=0.02)
    got, wanted = np.array(pilot["covariance"]), np.cov(drawn.T)
    assert got == pytest.approx(wanted, rel=0.02, abs=0.02 * float(wanted[0, 0]))
    along = np.array(pilot["center"]) / pilot["offset"]
    assert pilot["offset_pm"] == pytest.approx(1.96 * math.sqrt(along @ got @ along), rel=1e-4)


@pytest.mark.parametrize("seat", [{}, {"bore_diameter": 4.0}, {"register_diameter": 4.0}])
def test_a_seat_that_was_not_measured_adds_no_doubt(seat: Data) -> None:
    job = pilot_job((3.0, -4.0), (0.5, 1.0), DIAL, housing={"pilot_distance": 7.0, **seat})
    assert pilot_of(job) == pilot_of(pilot_job((3.0, -4.0), (0.5, 1.0), DIAL))


def test_the_largest_sure_angle_is_one_sided() -> None:
    """Two-sided 95 % is 1.96 standard deviations, one-sided 1.645."""
    assert largest_sure_angle(0.001, K_95_LINE * 1e-4) == pytest.approx(
        0.001 + K_95_ONE_SIDE * 1e-4
    )
    assert largest_sure_angle(0.001, 0.0) == 0.001


# Decision ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slope", "verdict"), [(0.4, "within"), (0.714, "undecided"), (1.4, "outside")]
)
def test_its_own_limit_is_an_offset(slope: float, verdict: str) -> None:
    job = pilot_job((0.0, 0.0), (slope, 0.0), DIAL, limits={"pilot_offset": 5.0})
    assert pilot_of(job)["verdict"] == verdict


def test_without_a_limit_it_is_told_and_not_judged() -> None:
    pilot = pilot_of(pilot_job((0.0, 0.0), (3.0, 0.0)))
    assert pilot["verdict"] is pilot["probability_within"] is None
    assert pilot["offset"] == pytest.approx(21.0)


def test_without_the_distance_there_is_no_pilot_line_failure() -> None:
    job = pilot_job((0.0, 0.0), (3.0, 0.0), housing={})
    assert solve(job)["rounds"][0]["pilot"] is None
    assert "pilot-distance-wanted" in codes_of(job)
    assert "At the pilot bearing" not in sheet(job)


def test_without_a_face_there_is_no_pilot_line_failure() -> None:
    """... and nobody is asked for a distance that is there."""
    job = make_job(readings_of(1.0, 2.0), housing={"pilot_distance": 7.0})
    assert solve(job)["rounds"][0]["pilot"] is None
    assert {"pilot-distance-wanted", "face-not-swept"} & set(codes_of(job)) == {"face-not-swept"}


def test_the_sheet_says_it() -> None:
    text = sheet(pilot_job((0.0, -1.0), (0.0, 2.0), DIAL, limits={"pilot_offset": 5.0}))
    assert "At the pilot bearing: Outside the limit" in text
    assert "Gearbox axis off by 13.0 thou" in text
    assert "toward 12 o'clock" in text
