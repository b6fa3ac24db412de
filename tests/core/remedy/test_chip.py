"""A chip in a joint, against a rigid body turned about the far rim in space."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet import solve
from sweepsheet.job.model import Joint
from sweepsheet.maths.vector import Vec2
from sweepsheet.remedy.chip import chip_slope, chip_that_explains, effect_of
from tests.cases.jobs import SEVEN_BOLTS, Data, face_readings, make_job, with_face

heights = st.floats(0.5, 20.0)
angles = st.floats(0.0, 359.0)
lengths = st.floats(3000.0, 25000.0)
radii = st.floats(3000.0, 9000.0)


def turned_about_the_far_rim(
    rearward: float, height: float, at_deg: float, radius: float, rim: float
) -> Vec2:
    """Where a point of the axis goes that stands ``rearward`` of the joint.

    In the plane through the axis and the chip: the body turns about the rim on the other side,
    until the joint stands open by ``height`` at the chip.
    """
    angle = math.asin(height / (radius + rim))
    from_pivot = rim
    sideways = from_pivot * math.cos(angle) - rearward * math.sin(angle) - from_pivot
    a = math.radians(at_deg)
    return Vec2(sideways * math.sin(a), sideways * math.cos(a))


@given(heights, angles, radii, radii, lengths, lengths, lengths)
def test_a_chip_under_the_front_flange_against_a_body_in_space(
    height: float, at_deg: float, radius: float, rim: float,
    depth: float, nose: float, tail: float,
) -> None:  # fmt: skip
    """To first order in the tilt t: what is left out is t**2 of the lengths, all of them."""
    slope = chip_slope(height, at_deg, radius, rim)
    effect = effect_of(slope, "front", depth, nose, tail)
    second_order = slope.length**2 * (rim + depth + nose + tail)
    for moved, rearward in (
        (effect.bore, depth), (effect.nose, depth - nose), (effect.tail, depth + tail),
    ):  # fmt: skip
        wanted = turned_about_the_far_rim(rearward, height, at_deg, radius, rim)
        assert moved is not None
        assert (moved - wanted).length <= second_order


@given(heights, angles, radii, radii, lengths, lengths)
def test_a_chip_on_the_rear_face_against_a_body_in_space(
    height: float, at_deg: float, radius: float, rim: float, nose: float, tail: float
) -> None:
    """Only the gearbox leans: its nose is forward of the joint, its tail rearward."""
    slope = chip_slope(height, at_deg, radius, rim)
    effect = effect_of(slope, "rear", None, nose, tail)
    second_order = slope.length**2 * (rim + nose + tail)
    assert effect.bore == Vec2(0.0, 0.0)
    for moved, rearward in ((effect.nose, -nose), (effect.tail, tail)):
        wanted = turned_about_the_far_rim(rearward, height, at_deg, radius, rim)
        assert moved is not None
        assert (moved - wanted).length <= second_order


@given(heights, angles, radii, radii)
def test_the_way_round(height: float, at_deg: float, radius: float, rim: float) -> None:
    """The chip that explains the tilt which a chip made is that chip."""
    slope = chip_slope(height, at_deg, radius, rim)
    assert chip_that_explains(slope, radius, rim) == pytest.approx(height, rel=1e-12)


def test_the_face_stands_rearward_on_the_side_of_the_chip() -> None:
    """Twelve thou between two rims of 6 in: a thou per inch."""
    slope = chip_slope(12.0, 90.0, 6000.0, 6000.0)
    assert (slope.x, slope.y) == pytest.approx((0.001, 0.0), abs=1e-15)


@pytest.mark.parametrize(
    ("joint", "depth", "nose", "tail", "known"),
    [
        ("front", 6000.0, 7000.0, 20000.0, {"bore", "nose", "tail"}),
        ("front", 6000.0, None, 20000.0, {"bore", "tail"}),
        ("front", 6000.0, 7000.0, None, {"bore", "nose"}),
        ("front", None, 7000.0, 20000.0, set()),  # how far the bore swings depends on the depth
        ("rear", None, 7000.0, 20000.0, {"bore", "nose", "tail"}),
        ("rear", None, None, None, {"bore"}),
    ],
)
def test_what_was_not_measured_is_not_told_failure(
    joint: Joint, depth: float | None, nose: float | None, tail: float | None, known: set[str]
) -> None:
    effect = effect_of(Vec2(0.001, 0.0), joint, depth, nose, tail)
    moves = {"bore": effect.bore, "nose": effect.nose, "tail": effect.tail}
    assert {name for name, move in moves.items() if move is not None} == known


# In a job ----------------------------------------------------------------------------------


def chip_job(**housing: object) -> Data:
    chip = {"joint": "front", "height": 16.0, "at_deg": 90, "radius": 8.0}
    return make_job((0, 0, 0, 0), chip=chip, housing=housing)


def test_in_a_job() -> None:
    """Sixteen thou at 8 in, far rim at 8 in: a thou per inch toward 3 o'clock."""
    found = solve(chip_job(depth=6.0, pilot_distance=7.0, tail_distance=20.0))["chip"]
    assert found["slope"] == pytest.approx([0.001, 0.0], abs=1e-15)
    assert found["bore"] == pytest.approx([-6.0, 0.0], abs=1e-12)
    assert found["nose"] == pytest.approx([1.0, 0.0], abs=1e-12)
    assert found["tail"] == pytest.approx([-26.0, 0.0], abs=1e-12)


def test_the_far_rim_is_as_far_out_as_anything_was_measured() -> None:
    """A flange that goes out to 24 in on the far side tilts half as much."""
    wide = chip_job(bolts=[{"at_deg": 270, "radius": 24.0}])
    assert solve(wide)["chip"]["slope"][0] == pytest.approx(16.0 / 32000.0, abs=1e-15)


def test_the_chip_that_explains_a_face_is_told_at_the_rim() -> None:
    """A slope of a thou per inch, bolts out to 8.6 in: 17.2 thou there."""
    job = with_face(make_job((0, 0, 0, 0), housing={"bolts": SEVEN_BOLTS}), face_readings(0.6, 0.8))
    assert solve(job)["squaring"]["chip_that_explains"] == pytest.approx(17.2, abs=1e-9)


def test_without_a_radius_on_the_flange_no_chip_is_told_failure() -> None:
    job = with_face(make_job((0, 0, 0, 0)), face_readings(0.6, 0.8))
    assert solve(job)["squaring"]["chip_that_explains"] is None


def test_no_chip_is_supposed_where_nobody_asks() -> None:
    assert solve(make_job((0, 0, 0, 0)))["chip"] is None
