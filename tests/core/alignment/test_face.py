"""The face: tilt apart from warp, the sense of the dial, end float, and a limit by radius."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet import solve
from sweepsheet.alignment.face import limit_at
from tests.cases.jobs import (
    EIGHTHS,
    PERFECT,
    QUARTERS,
    Data,
    apart,
    codes_of,
    face_readings,
    make_job,
    with_face,
)

# Doubles with some hundred operations between readings and answer, over 3 000 thou of radius.
SAME = 1e-9
SAME_SLOPE = 1e-12
FIVES = (10.0, 70.0, 155.0, 215.0, 300.0)
TRUE_BORE = (0.0, 0.0, 0.0, 0.0)

rows = st.lists(st.floats(-20.0, 20.0), min_size=5, max_size=5)
slopes = st.floats(-5.0, 5.0)  # thou per inch
EVEN = [
    pytest.param(QUARTERS, id="4"),
    pytest.param(tuple(60.0 * i for i in range(6)), id="6"),
    pytest.param(EIGHTHS, id="8"),
    pytest.param(tuple(30.0 * i for i in range(12)), id="12"),
]


def face_of(
    *sweeps: Sequence[float],
    positions: Sequence[float] = QUARTERS,
    indicator: Data = PERFECT,
    limits: Data | None = None,
    **keys: object,
) -> Data:
    """What is said of a face with these readings."""
    job = make_job(TRUE_BORE, indicator=indicator, limits=limits or {})
    face: Data = solve(with_face(job, *sweeps, positions=positions, **keys))["rounds"][0]["face"]
    return face


def same(first: Data, second: Data) -> None:
    """Both say the same, figure by figure."""
    assert second["slope"] == pytest.approx(first["slope"], abs=SAME_SLOPE)
    assert second["runout"] == pytest.approx(first["runout"], abs=SAME)
    assert np.array(second["slope_covariance"]) == pytest.approx(
        np.array(first["slope_covariance"]), abs=SAME_SLOPE
    )


# Signs -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("plunger", "plus_when", "rearmost"),
    [
        # Pointing forward, it touches the face from behind: pushed in where the face is rearward.
        ("forward", "plunger_in", 0.0),
        ("forward", "plunger_out", 180.0),
        ("rearward", "plunger_in", 180.0),
        ("rearward", "plunger_out", 0.0),
    ],
)
def test_which_side_stands_rearward(plunger: str, plus_when: str, rearmost: float) -> None:
    dial = {**PERFECT, "plus_when": plus_when}
    face = face_of((3.0, 0.0, -3.0, 0.0), indicator=dial, plunger=plunger)
    assert apart(face["rearmost_deg"], rearmost) < SAME
    assert face["slope"][1] == pytest.approx(math.cos(math.radians(rearmost)) / 1000.0, abs=1e-15)
    assert face["runout"] == pytest.approx(6.0, abs=1e-12)


@given(slopes, slopes, st.floats(1.0, 12.0), st.sampled_from(["forward", "rearward"]))
def test_the_slope_is_found_at_any_radius(x: float, y: float, radius: float, plunger: str) -> None:
    sense = 1.0 if plunger == "forward" else -1.0
    shown = [sense * m for m in face_readings(x, y, FIVES, radius)]
    face = face_of(shown, positions=FIVES, radius=radius, plunger=plunger)
    assert face["slope"] == pytest.approx([x / 1000.0, y / 1000.0], abs=SAME_SLOPE)
    assert face["runout"] == pytest.approx(2.0 * radius * math.hypot(x, y), abs=SAME)


def test_a_contact_angle_shrinks_the_tilt() -> None:
    slanted = face_of((3.0, 0.0, -3.0, 0.0), indicator={**PERFECT, "contact_angle_deg": 60.0})
    assert slanted["runout"] == pytest.approx(3.0, abs=1e-12)


def test_droop_does_not_tilt_a_face() -> None:
    """An axial plunger slides along the face where the bracket hangs down."""
    same(face_of((3.0, 0.0, -3.0, 0.0)), face_of((3.0, 0, -3, 0), indicator={**PERFECT, "sag": 4}))


# Tilt and warp -----------------------------------------------------------------------------


@pytest.mark.parametrize("positions", EVEN)
@pytest.mark.parametrize("toward", [0.0, 20.0, 45.0, 71.0])
def test_a_saddle_never_leaks_into_the_tilt(positions: tuple[float, ...], toward: float) -> None:
    """The second harmonic of a warped face, at positions spread evenly, whatever its direction."""
    tilt = face_readings(0.4, -0.3, positions)
    saddle = [3.0 * math.cos(2.0 * math.radians(a - toward)) for a in positions]
    face = face_of([t + s for t, s in zip(tilt, saddle, strict=True)], positions=positions)
    assert face["slope"] == pytest.approx([0.0004, -0.0003], abs=SAME_SLOPE)
    assert face["warp"] <= 6.0 + SAME
    if len(positions) > 4:
        assert face["out_of_round"] == pytest.approx(6.0, abs=SAME)


def test_half_the_tir_is_not_the_tilt() -> None:
    """Six thou of saddle and no tilt: a TIR of six, a slope of nothing."""
    face = face_of([3.0, 0.0, -3.0, 0.0] * 2, positions=EIGHTHS)
    assert face["total_reading"] == pytest.approx(6.0, abs=1e-12)
    assert face["runout"] == pytest.approx(0.0, abs=1e-12)
    assert face["warp"] == pytest.approx(6.0, abs=1e-12)


def test_a_plane_face_has_no_warp() -> None:
    face = face_of(face_readings(1.0, 2.0, EIGHTHS), positions=EIGHTHS)
    assert face["warp"] == pytest.approx(0.0, abs=1e-12)
    assert face["total_reading"] == pytest.approx(
        face["runout"]
        * math.cos(0.5 * (math.radians(45.0) - 2.0 * (math.radians(45.0) - math.atan2(1.0, 2.0)))),
        rel=0.1,
    )  # eight positions may pass by the top by up to 22.5 degrees: 8 %


# End float ---------------------------------------------------------------------------------


@given(
    slopes, slopes, st.lists(st.floats(-200.0, 200.0), min_size=5, max_size=5),
    st.sampled_from(["forward", "rearward"]),
)  # fmt: skip
def test_a_second_dial_cancels_end_float_of_any_size(
    x: float, y: float, float_: list[float], plunger: str
) -> None:
    """The crank wanders endwise as it likes: both dials move alike, their difference does not."""
    sense = 1.0 if plunger == "forward" else -1.0
    here = face_readings(x, y, FIVES)
    there = face_readings(x, y, [a + 180.0 for a in FIVES])
    face = face_of(
        [sense * (m + f) for m, f in zip(here, float_, strict=True)],
        positions=FIVES, plunger=plunger, end_float="free",
        opposite=[[sense * (m + f) for m, f in zip(there, float_, strict=True)]],
    )  # fmt: skip
    assert face["slope"] == pytest.approx([x / 1000.0, y / 1000.0], abs=SAME_SLOPE)
    assert face["warp"] == pytest.approx(0.0, abs=SAME)
    assert face["end_float_free"] is True


def test_the_second_dial_is_zeroed_as_it_likes() -> None:
    one = face_readings(1.0, 2.0)
    face = face_of(one, opposite=[[77.0 - m for m in one]])
    assert face["slope"] == pytest.approx([0.001, 0.002], abs=SAME_SLOPE)


def test_a_second_dial_that_reads_only_where_it_can() -> None:
    """A position counts where both dials were read."""
    one = face_readings(1.0, 2.0, EIGHTHS)
    other = [None, *(-m for m in one[1:])]
    face = face_of(one, positions=EIGHTHS, opposite=[other])
    assert face["residuals"][0][0] is None
    assert face["slope"] == pytest.approx([0.001, 0.002], abs=SAME_SLOPE)


@pytest.mark.parametrize(
    ("keys", "trusted"),
    [
        ({"end_float": "free"}, False),
        ({"end_float": "held"}, True),
        ({"end_float": "free", "opposite": [[0.0, 0.0, 0.0, 0.0]]}, True),
    ],
)
def test_without_either_the_face_is_not_to_be_trusted(keys: Data, trusted: bool) -> None:  # noqa: FBT001 - a column of the table
    assert face_of(TRUE_BORE, **keys)["end_float_free"] is trusted
    codes = codes_of(with_face(make_job(TRUE_BORE), TRUE_BORE, **keys))
    assert ("face-not-trusted" in codes) is not trusted


def test_one_dial_takes_end_float_for_tilt_failure() -> None:
    """What the finding warns of: a crank that creeps back as it is turned reads as a slope."""
    face = face_of((0.0, 1.0, 2.0, 3.0), end_float="free")
    assert face["runout"] > 2.0


# What must not change the answer -----------------------------------------------------------


@given(rows, st.floats(-100.0, 100.0))
def test_another_zero_changes_nothing(row: list[float], zero: float) -> None:
    same(face_of(row, positions=FIVES), face_of([m + zero for m in row], positions=FIVES))


@given(rows, st.floats(0.0, 360.0))
def test_turning_all_positions_turns_the_slope(row: list[float], turn: float) -> None:
    turned = [a + turn - (360.0 if a + turn > 360.0 else 0.0) for a in FIVES]
    dial = {**PERFECT, "accuracy": 0.5, "angle_setting_deg": 5.0}
    first = face_of(row, positions=FIVES, indicator=dial)
    second = face_of(row, positions=turned, indicator=dial)
    t = math.radians(turn)
    rotation = np.array([[math.cos(t), math.sin(t)], [-math.sin(t), math.cos(t)]])  # clockwise
    assert second["slope"] == pytest.approx(list(rotation @ first["slope"]), abs=SAME_SLOPE)
    assert np.array(second["slope_covariance"]) == pytest.approx(
        rotation @ np.array(first["slope_covariance"]) @ rotation.T, abs=SAME_SLOPE
    )
    assert second["runout"] == pytest.approx(first["runout"], abs=SAME)


@given(rows)
def test_mirroring_the_positions_mirrors_the_slope(row: list[float]) -> None:
    first = face_of(row, positions=FIVES)
    second = face_of(row, positions=[360.0 - a for a in FIVES])
    x, y = first["slope"]
    assert second["slope"] == pytest.approx([-x, y], abs=SAME_SLOPE)


@given(rows, st.floats(1.0, 12.0))
def test_the_radius_scales_the_slope_and_not_the_runout(row: list[float], radius: float) -> None:
    one, other = (
        face_of(row, radius=1.0, positions=FIVES),
        face_of(row, radius=radius, positions=FIVES),
    )
    assert other["runout"] == pytest.approx(one["runout"], abs=SAME)
    assert other["slope"] == pytest.approx([v / radius for v in one["slope"]], abs=SAME)


# Doubt and decision ------------------------------------------------------------------------


def test_the_covariance_of_the_slope_is_that_of_the_harmonic_over_the_radius() -> None:
    """Four positions, accuracy of one thou: 1/sqrt(3) a reading, u = that over sqrt(2) r."""
    face = face_of(TRUE_BORE, indicator={**PERFECT, "accuracy": 1.0})
    expected = (1.0 / 3.0) / 2.0 / 3000.0**2
    assert face["slope_covariance"][0] == pytest.approx([expected, 0.0], abs=1e-18)
    assert face["slope_covariance"][1] == pytest.approx([0.0, expected], abs=1e-18)
    assert face["runout_pm"] == pytest.approx(2.0 * 1.96 * math.sqrt(1.0 / 6.0), rel=1e-4)


@pytest.mark.parametrize(
    ("runout", "given_at", "radius", "allowed"),
    [
        (5.0, None, 3.0, 5.0), (5.0, 3.0, 3.0, 5.0), (5.0, 6.0, 3.0, 2.5), (1.0, 1.0, 12.0, 12.0),
        (None, 3.0, 3.0, None), (None, None, 3.0, None),
    ],
)  # fmt: skip
def test_limit_at(
    runout: float | None, given_at: float | None, radius: float, allowed: float | None
) -> None:
    assert limit_at(runout, given_at, radius) == allowed


@pytest.mark.parametrize(("runout", "verdict"), [(4.99, "within"), (5.01, "outside")])
def test_a_perfect_dial_judges_by_the_figure_alone(runout: float, verdict: str) -> None:
    readings = (runout / 2.0, 0.0, -runout / 2.0, 0.0)
    assert face_of(readings, limits={"face_runout": 5.0})["verdict"] == verdict
    # The same runout at half the radius for which the limit is given.
    half = face_of(readings, limits={"face_runout": 10.0, "face_radius": 6.0})
    assert (half["verdict"], half["limit"]) == (verdict, 5.0)


def test_without_a_limit_nothing_is_judged() -> None:
    face = face_of(TRUE_BORE, limits={"face_runout": None})
    assert face["verdict"] is face["probability_within"] is face["limit"] is None


def test_a_face_that_was_not_swept_is_not_there() -> None:
    assert solve(make_job(TRUE_BORE))["rounds"][0]["face"] is None
