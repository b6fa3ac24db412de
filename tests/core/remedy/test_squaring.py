"""The face first: what squaring it does to the bore, by a rigid housing in space."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from sweepsheet import sheet, solve
from sweepsheet.job.read import read_job
from sweepsheet.remedy.squaring import rim_of
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    SEVEN_BOLTS,
    TWO_HOLES,
    Data,
    codes_of,
    face_readings,
    make_job,
    readings_of,
    then,
    with_face,
)

Array = NDArray[np.float64]

DEPTH = 6.5


def leaning(gx: float, gy: float, cx: float = 0.0, cy: float = 0.0, **housing: object) -> Data:
    """A bore at (cx, cy) thou and a face of slope (gx, gy) thou per inch."""
    job = make_job(
        readings_of(cx, cy), indicator=PERFECT, housing={"tilt_from": "front", **housing}
    )
    return with_face(job, face_readings(gx, gy))


def turned_onto(normal: Array) -> Array:
    """The rotation, about a line in the plane, that turns the z axis onto a normal (Rodrigues)."""
    z = np.array([0.0, 0.0, 1.0])
    axis = np.cross(z, normal)
    sine, cosine = float(np.linalg.norm(axis)), float(z @ normal)
    if sine == 0.0:
        return np.eye(3)
    k = axis / sine
    cross = np.array([[0.0, -k[2], k[1]], [k[2], 0.0, -k[0]], [-k[1], k[0], 0.0]])
    return np.asarray(np.eye(3) + sine * cross + (1.0 - cosine) * (cross @ cross))


@pytest.mark.slow
@given(
    st.floats(-3.0, 3.0), st.floats(-3.0, 3.0), st.floats(-20.0, 20.0), st.floats(-20.0, 20.0)
)  # fmt: skip
def test_the_shims_turn_a_rigid_housing_square_and_swing_its_bore(
    gx: float, gy: float, cx: float, cy: float
) -> None:
    """The housing is set on its shims in space, and its rear face and bore are looked up.

    The front flange lies on the plane through the tops of the shims. To first order in the slope
    g: what is left out is g**2 of the depth in the move, and g**2 in the slope.
    """
    found = solve(leaning(gx, gy, cx, cy, depth=DEPTH, bolts=SEVEN_BOLTS))
    at = [(math.radians(b["at_deg"]), 1000.0 * b["radius"]) for b in SEVEN_BOLTS]
    design = np.array([[1.0, r * math.sin(a), r * math.cos(a)] for a, r in at])
    tops = np.array([shim["thickness"] for shim in found["shims"]])
    _, along_x, along_y = np.linalg.lstsq(design, tops, rcond=None)[0]
    normal = np.array([-along_x, -along_y, 1.0])
    rotation = turned_onto(normal / np.linalg.norm(normal))

    g = np.array([gx, gy]) / 1000.0
    second_order = float(g @ g)
    # The rear face as it was made, seen from the flange it is bolted by.
    rear = rotation @ np.array([-g[0], -g[1], 1.0])
    assert rear[:2] / rear[2] == pytest.approx([0.0, 0.0], abs=second_order + 1e-12)
    bore = (rotation @ np.array([cx, cy, 1000.0 * DEPTH]))[:2]
    after = found["squaring"]["bore_after"]
    assert bore == pytest.approx(after, abs=second_order * 1000.0 * DEPTH + 1e-9)


def test_the_bore_swings_by_the_depth_times_the_slope() -> None:
    found = solve(leaning(1.0, -2.0, 5.0, 5.0, depth=6.0))["squaring"]
    assert found["bore_after"] == pytest.approx([5.0 + 6.0, 5.0 - 12.0], abs=1e-9)
    assert found["taper"]["slope"] == pytest.approx(math.hypot(0.001, 0.002), abs=1e-12)


def test_a_chip_and_its_squaring_undo_one_another() -> None:
    """A chip that leans the face by g has swung the bore by -H g; squaring brings it back."""
    chip = {"joint": "front", "height": 16.0, "at_deg": 90, "radius": 8.0}
    swung = solve(make_job((0, 0, 0, 0), chip=chip, housing={"depth": 6.0}))["chip"]
    x, y = (1000.0 * v for v in swung["slope"])
    found = solve(leaning(x, y, *swung["bore"], depth=6.0))["squaring"]
    assert found["bore_after"] == pytest.approx([0.0, 0.0], abs=1e-9)


def test_what_was_not_measured_is_not_worked_out_failure() -> None:
    found = solve(leaning(1.0, 2.0))
    assert found["shims"] == []
    assert found["squaring"]["bore_after"] is None
    assert found["squaring"]["taper"]["across"] is None
    assert found["squaring"]["slope_left"] is found["squaring"]["rock"] is None
    assert {"depth-wanted", "bolts-wanted"} <= set(codes_of(leaning(1.0, 2.0)))


def test_without_a_face_nothing_is_squared_failure() -> None:
    found = solve(make_job(readings_of(1.0, 2.0), housing={"bolts": SEVEN_BOLTS, "depth": 6.0}))
    assert (found["squaring"], found["shims"]) == (None, [])


@pytest.mark.parametrize(
    ("housing", "rim"),
    [
        ({}, None), ({"bolts": SEVEN_BOLTS}, 8.6), ({"dowel_holes": TWO_HOLES}, 7.0),
        ({"bolts": [{"at_deg": 0, "radius": 6.0}], "dowel_holes": TWO_HOLES}, 7.0),
    ],
)  # fmt: skip
def test_rim_of(housing: Data, rim: float | None) -> None:
    found = rim_of(read_job(make_job((0, 0, 0, 0), housing=housing)).housing)
    assert found == (rim if rim is None else pytest.approx(rim))


# Which side is out ---------------------------------------------------------------------------


def squaring_lines(job: Data) -> str:
    return sheet(job).partition("Squaring the face")[2]


def test_while_the_cause_is_not_known_both_figures_are_shown() -> None:
    """Tipped, the bore swings by the depth times the slope; crooked, it stays."""
    job = leaning(0.0, 3.0, 0.0, -7.0, depth=6.0, bolts=SEVEN_BOLTS, tilt_from=None)
    found = solve(job)["squaring"]
    assert (found["cause"], found["bore_after"]) == (None, None)
    assert found["bore_if_tipped"] == pytest.approx([0.0, 11.0])
    assert found["bore_if_crooked"] == pytest.approx([0.0, -7.0])
    lines = squaring_lines(job)
    assert "surface plate" in lines
    assert "Bore expected after: offset 11.0 thou toward 12" in lines
    assert "Bore expected after: offset 7.0 thou toward 6" in lines
    assert "face-may-swing-bore" in codes_of(job)


def test_a_crooked_rear_face_is_recut_and_the_bore_stays() -> None:
    """No shims: they would tip a housing that stands true."""
    job = leaning(0.0, 3.0, 0.0, -7.0, depth=6.0, bolts=SEVEN_BOLTS, tilt_from="rear")
    result = solve(job)
    assert result["squaring"]["bore_after"] == pytest.approx([0.0, -7.0])
    assert result["shims"] == []
    lines = squaring_lines(job)
    assert "Machine the rear face 3.00 thou per inch, deepest toward 12" in lines
    assert "front flange" not in lines
    found = set(codes_of(job))
    assert not {"face-may-swing-bore", "face-swings-bore", "bolts-wanted", "depth-wanted"} & found


def recut(slope: Array, point: Array) -> Array:
    """The bore's centre in the plane of a rear face that was cut square at ``point``.

    The bore's axis is parallel to the crank's: cutting the face does not move a line in space.
    """
    axis, start = np.array([0.0, 0.0, 1.0]), np.array([*point, float(slope @ point)])
    return np.asarray(start - axis * (start[2] / axis[2]))[:2]


@pytest.mark.parametrize("slope", [(1.0, 2.0), (-3.0, 0.5)])
def test_recutting_a_crooked_face_leaves_its_bore_in_space(slope: tuple[float, float]) -> None:
    found = solve(leaning(*slope, 4.0, -6.0, depth=6.0, tilt_from="rear"))["squaring"]
    there = recut(np.array(slope) / 1000.0, np.array([4.0, -6.0]))
    assert found["bore_after"] == pytest.approx(list(there), abs=1e-9)


# What must not be cut by ----------------------------------------------------------------------


@pytest.mark.parametrize(
    "job",
    [
        # End play in it; too close to call; a reading that does not belong; a dial that slipped.
        with_face(make_job(readings_of(0.0, -7.0)), face_readings(0.0, 3.0), end_float="free"),
        with_face(make_job(readings_of(0.0, -7.0)), face_readings(0.0, 0.83)),
        with_face(
            make_job(readings_of(0.0, -7.0)),
            [9.0, 6.4, 0.0, -6.4, 3.0, -6.4, 0.0, 6.4],
            positions=EIGHTHS,
        ),
        with_face(make_job(readings_of(0.0, -7.0)), face_readings(0.0, 3.0), closing=[4.0]),
    ],
)
def test_nothing_is_cut_or_shimmed_by_a_face_that_is_not_sure(job: Data) -> None:
    job["housing"] = {"depth": 6.0, "bolts": SEVEN_BOLTS}
    text = sheet(job)
    assert "Squaring the face" not in text
    assert "front flange" not in text.partition("Show it")[0]
    steps = {step["code"] for step in solve(job)["advice"]}
    assert not {"square-front", "square-rear", "find-tilt-cause", "clean-joint"} & steps


def test_a_face_with_end_play_in_it_has_no_verdict() -> None:
    face = solve(with_face(make_job((0, 0, 0, 0)), end_float="free"))["rounds"][0]["face"]
    assert (face["probability_within"], face["verdict"]) == (None, None)
    held = solve(with_face(make_job((0, 0, 0, 0))))["rounds"][0]["face"]
    assert held["verdict"] == "within"


def rounds_of(*slopes: float, **housing: object) -> Data:
    jobs = [leaning(0.0, slope, 0.0, -7.0, bolts=SEVEN_BOLTS, **housing) for slope in slopes]
    return then(*jobs)


def twice(job: Data, again: float = 0.0) -> Data:
    """The job with its latest face swept once more, the same but for one reading."""
    face = job["rounds"][-1]["face"]
    first = face["sweeps"][0]
    face["sweeps"] = [first, [first[0], first[1] + again, *first[2:]]]
    face["closing"] = [0.0, 0.0]
    return job


@pytest.mark.parametrize(
    ("slopes", "steps"),
    [
        ((3.0,), ["clean-joint"]),
        ((3.0, 3.0), ["sweep-face-twice"]),
        # A chip was in it: another tilt than before, or none.
        ((3.0, 1.5), ["clean-joint"]),
    ],
)
def test_metal_is_cut_for_a_tilt_that_was_seen_again(
    slopes: tuple[float, ...], steps: list[str]
) -> None:
    assert [step["code"] for step in solve(rounds_of(*slopes))["advice"]] == steps


def test_before_it_is_cut_the_side_that_is_out_is_found() -> None:
    """... once the last sweep was repeated and gave the same; two that differ are no measure."""
    for cause, steps in (
        (None, ["find-tilt-cause"]),
        ("front", ["check-sense", "square-front", "start-anew"]),
        ("rear", ["check-sense", "square-rear", "start-anew"]),
    ):
        asked = solve(twice(rounds_of(3.0, 3.0, tilt_from=cause)))["advice"]
        assert [step["code"] for step in asked] == steps
    differ = solve(twice(rounds_of(6.0, 6.0), again=0.5))["advice"]
    assert [step["code"] for step in differ] == ["steady-the-dial"]


def test_an_earlier_face_that_was_not_surely_out_does_not_count_failure() -> None:
    """Within, with end play in it, or slipped: none of them shows the tilt again."""
    late = leaning(0.0, 3.0, bolts=SEVEN_BOLTS)
    afloat, slipped = leaning(0.0, 3.0), leaning(0.0, 3.0)
    afloat["rounds"][0]["face"]["end_float"] = "free"
    slipped["rounds"][0]["face"]["closing"] = [4.0]
    never = make_job((0, 0, 0, 0), indicator=PERFECT)
    for early in (leaning(0.0, 0.2), afloat, slipped, never):
        assert [step["code"] for step in solve(then(early, late))["advice"]] == ["clean-joint"]


# The order of the work ---------------------------------------------------------------------


def test_a_face_outside_comes_before_the_dowels() -> None:
    """The sheet then proposes no dowels as a step: squaring moves the bore."""
    text = sheet(leaning(3.0, 0.0, 0.0, -7.0, depth=6.0, bolts=SEVEN_BOLTS))
    steps = text.partition("What each choice would leave")[0]
    assert "STOP" in text
    for step in ("Look for a burr", "sweep face and bore again"):
        assert step in steps
    for step in ("\nFit ", "\nMove the housing", "\nTurn both"):
        assert step not in steps


def test_a_face_within_leaves_the_dowels_as_the_step_failure() -> None:
    """The same bore with a square face."""
    text = sheet(leaning(0.1, 0.0, 0.0, -7.0, depth=6.0, bolts=SEVEN_BOLTS))
    assert "\nFit 7 thou offset dowels" in text
    assert "Look for a burr" not in text.partition("What each choice would leave")[0]
    assert "Squaring the face" not in text
