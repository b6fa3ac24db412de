"""What a machine shop is to cut, by hand."""

from __future__ import annotations

import math

import pytest

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.face import Face
from sweepsheet.job.model import Hole
from sweepsheet.job.read import read_job
from sweepsheet.maths.normal import K_95_LINE, radius95
from sweepsheet.maths.vector import ZERO_COVARIANCE, Sym2
from sweepsheet.remedy.dowel_uncertainty import play_covariance
from sweepsheet.remedy.machining import bore_move, face_cut, line_variance, shim_places
from sweepsheet.remedy.shims import shims_for
from sweepsheet.solution import work_out
from tests.cases.jobs import PERFECT, face_readings, make_job, readings_of, with_face

HOLES = (Hole(270.0, 7.0), Hole(90.0, 7.0))


def swept(x: float, y: float, gx: float, gy: float, **indicator: object) -> tuple[Bore, Face]:
    """Bore and face of a job."""
    job = with_face(
        make_job(readings_of(x, y), indicator={**PERFECT, **indicator}), face_readings(gx, gy)
    )
    latest = work_out(read_job(job)).latest
    assert latest.face is not None
    return latest.bore, latest.face


def test_a_bore_low_and_right_is_moved_up_and_left() -> None:
    """6 low and 4 right; the holes lie at 9 and 3, so along is right and across is up."""
    bore, _ = swept(4.0, -6.0, 0.0, 0.0)
    move = bore_move(bore, HOLES, 5.0, ZERO_COVARIANCE, 0.0, 1000.0)
    assert (move.right.value, move.up.value) == pytest.approx((-4.0, 6.0))
    assert (move.along.value, move.across.value) == pytest.approx((-4.0, 6.0))
    assert (move.along_deg, move.across_deg) == pytest.approx((90.0, 0.0))
    assert (move.present.x, move.present.y) == pytest.approx((7004.0, -6.0))
    assert move.left < 1e-6
    assert move.spare == pytest.approx(5.0)


def test_with_the_holes_the_other_way_round_both_axes_turn() -> None:
    bore, _ = swept(4.0, -6.0, 0.0, 0.0)
    move = bore_move(bore, (HOLES[1], HOLES[0]), 5.0, ZERO_COVARIANCE, 0.0, 1000.0)
    assert (move.along.value, move.across.value) == pytest.approx((4.0, -6.0))
    assert (move.along_deg, move.across_deg) == pytest.approx((270.0, 180.0))
    assert (move.present.x, move.present.y) == pytest.approx((6996.0, 6.0))


def test_holes_above_one_another_make_x_upright() -> None:
    """From 6 to 12: X is up, and Y, a quarter turn counter-clockwise from it, is left."""
    bore, _ = swept(4.0, -6.0, 0.0, 0.0)
    move = bore_move(bore, (Hole(180.0, 6.0), Hole(0.0, 8.0)), 5.0, ZERO_COVARIANCE, 0.0, 1000.0)
    assert (move.along.value, move.across.value) == pytest.approx((6.0, 4.0))
    assert (move.along_deg, move.across_deg) == pytest.approx((0.0, 270.0))
    assert (move.present.x, move.present.y) == pytest.approx((5994.0, -4.0))


def test_the_doubt_of_a_move_by_hand() -> None:
    """Play, and the line's turn, which acts square to the move; the play counts once more after."""
    bore, _ = swept(10.0, 0.0, 0.0, 0.0)
    move = bore_move(bore, HOLES, 5.0, play_covariance(1.0), 5.0, 1000.0)
    play = 0.25 / 3.0
    turned = 100.0 * line_variance(HOLES, 5.0, 1000.0)
    assert move.right.pm == pytest.approx(K_95_LINE * math.sqrt(play), rel=1e-6)
    assert move.along.pm == pytest.approx(K_95_LINE * math.sqrt(play), rel=1e-6)
    assert move.across.pm == pytest.approx(K_95_LINE * math.sqrt(play + turned), rel=1e-6)
    after = Sym2(2.0 * play, 0.0, 2.0 * play + turned)
    assert move.left == pytest.approx(radius95(after), rel=1e-6)
    assert move.spare == pytest.approx(5.0 - move.left)


def test_the_line_of_two_holes_turns_with_both() -> None:
    """Two holes at 9 and 3: each swings square to the line, by its radius; over the spacing."""
    each = math.radians(5.0) / math.sqrt(3.0)
    expected = 2.0 * (7.0 * each / 14.0) ** 2
    assert line_variance(HOLES, 5.0, 1000.0) == pytest.approx(expected)
    # Close together the same clock turns the line far more.
    near = (Hole(60.0, 7.0), Hole(120.0, 7.0))
    assert line_variance(near, 5.0, 1000.0) == pytest.approx(2.0 * (3.5 * each / 7.0) ** 2)


def test_the_center_from_hole_a_by_hand() -> None:
    """Holes at 9 and 3, 14 in apart: x takes the error of A alone, y half of each.

    An error of the same size in both turns the line by sqrt(2) of it over the spacing.
    """
    bore, _ = swept(10.0, 0.0, 0.0, 0.0)
    move = bore_move(bore, HOLES, 5.0, ZERO_COVARIANCE, 5.0, 1000.0, 3.0)
    assert move.center is not None
    x, y = move.center
    each = 3.0 / math.sqrt(3.0)
    assert (x.value, y.value) == pytest.approx((7000.0, 0.0), abs=1e-9)
    assert x.pm == pytest.approx(K_95_LINE * each)
    assert y.pm == pytest.approx(K_95_LINE * each / math.sqrt(2.0))
    # The 5 degrees of the crank's marks no longer count.
    assert move.across.pm == pytest.approx(
        K_95_LINE * 10.0 * math.sqrt(2.0) * each / 14000.0, rel=1e-6
    )
    unknown = bore_move(bore, HOLES, 5.0, ZERO_COVARIANCE, 5.0, 1000.0)
    assert unknown.center is None


def test_a_center_far_from_the_line_of_the_holes_by_hand() -> None:
    """From (-6, 8) to (6, 8): the axis is 6 along and 8 below, so the turn moves x as well."""
    holes = tuple(Hole(math.degrees(math.atan2(x, 8.0)) % 360.0, 10.0) for x in (-6.0, 6.0))
    bore, _ = swept(10.0, 0.0, 0.0, 0.0)
    move = bore_move(bore, (holes[0], holes[1]), 5.0, play_covariance(1.0), 5.0, 1000.0, 3.0)
    assert move.center is not None
    x, y = move.center
    each, play = 3.0, 0.25 / 3.0
    assert (x.value, y.value) == pytest.approx((6000.0, -8000.0))
    assert x.pm == pytest.approx(K_95_LINE * math.sqrt(each * (1.0 + 2.0 * 64.0 / 144.0) + play))
    assert y.pm == pytest.approx(K_95_LINE * math.sqrt(each * (0.25 + 0.25) + play))


def test_a_taper_by_hand() -> None:
    """3 thou an inch toward 12, on a circle of 8 in: 48 across, 24 in the middle, 0 at 6."""
    _, face = swept(0.0, 0.0, 0.0, 3.0)
    places = (Hole(0.0, 8.0), Hole(90.0, 8.0), Hole(180.0, 8.0), Hole(180.0, 4.0))
    cut = face_cut("front", face, places, 8.0, 3.0, 1000.0)
    assert cut is not None
    assert cut.rise.value == pytest.approx(48.0)
    assert [p.amount.value for p in cut.places] == pytest.approx([48.0, 24.0, 0.0, 12.0])
    assert cut.shorter == pytest.approx(24.0)
    assert cut.deepest_deg == pytest.approx(0.0, abs=1e-9)
    assert (cut.left, cut.spare) == pytest.approx((0.0, 5.0), abs=1e-9)


def test_the_doubt_of_a_taper_by_hand() -> None:
    _, face = swept(0.0, 0.0, 0.0, 3.0, repeatability=0.3)
    sigma = math.sqrt(face.slope_covariance.xx)
    assert face.slope_covariance.yy == pytest.approx(sigma**2)
    places = (Hole(0.0, 8.0), Hole(90.0, 8.0), Hole(180.0, 8.0))
    cut = face_cut("rear", face, places, 8.0, 3.0, 1000.0)
    assert cut is not None
    per = K_95_LINE * sigma * 8000.0
    assert cut.rise.pm == pytest.approx(2.0 * per)
    expected = [2.0 * per, math.sqrt(2.0) * per, 0.0]
    assert [p.amount.pm for p in cut.places] == pytest.approx(expected, abs=1e-9)
    assert cut.left == pytest.approx(2.0 * 3000.0 * 2.44775 * sigma, rel=1e-5)
    assert cut.spare == pytest.approx(5.0 - cut.left)
    assert cut.deepest_pm_deg == face.direction_pm_deg


def test_a_face_without_limit_or_side_has_no_taper() -> None:
    bare = with_face(
        make_job(readings_of(0, 0), limits={"face_runout": None}), face_readings(0.0, 3.0)
    )
    face = work_out(read_job(bare)).latest.face
    assert face is not None
    assert face_cut("rear", face, (), 8.0, 3.0, 1000.0) is None
    _, square = swept(0.0, 0.0, 0.0, 0.0)
    assert face_cut("rear", square, (), 8.0, 3.0, 1000.0) is None


def test_a_shim_is_counted_from_the_bolt_without() -> None:
    bolts = [Hole(0.0, 8.0), Hole(120.0, 8.0), Hole(240.0, 8.0)]
    _, face = swept(0.0, 0.0, 0.0, 3.0, repeatability=0.3)
    shims = shims_for(face.slope, bolts, 1000.0, ())
    assert shims is not None
    found = shim_places(shims.shims, bolts, face.slope_covariance, 1000.0)
    assert [p.amount.value for p in found] == pytest.approx([0.0, 36.0, 36.0], abs=1e-9)
    apart = 8000.0 * math.sqrt(3.0) * K_95_LINE * math.sqrt(face.slope_covariance.xx)
    assert [p.amount.pm for p in found] == pytest.approx([0.0, apart, apart], abs=1e-9)
