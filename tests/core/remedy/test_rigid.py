"""Two dowels that need not be alike: a rigid body in its plane, held to a 2-D Kabsch fit."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from numpy.typing import NDArray

from sweepsheet.job.model import Dowel, Hole
from sweepsheet.maths.clock import unit_vector
from sweepsheet.maths.vector import ZERO, Vec2
from sweepsheet.remedy.rigid import DowelLine, nominal_move, shift_of

Array = NDArray[np.float64]

PER_INCH = 1000.0
OPPOSITE = (Hole(270.0, 7.0), Hole(90.0, 7.0))
STANDARD = Dowel(0.0, 0.0)

angles = st.floats(0.0, 359.9)
holes = st.builds(Hole, angles, st.floats(4.0, 10.0))
shifts = st.builds(lambda d, a: unit_vector(a).scaled(d), st.floats(0.0, 25.0), angles)


def places(pair: tuple[Hole, Hole]) -> Array:
    """The two holes in thou from the crank axis, one a row."""
    rows = [unit_vector(hole.at_deg).scaled(hole.radius * PER_INCH) for hole in pair]
    return np.array([[p.x, p.y] for p in rows])


def kabsch(before: Array, after: Array) -> tuple[Array, Array]:
    """The rotation and the shift that bring points nearest to others (Kabsch, in two dimensions).

    The sign of the determinant keeps it a rotation: two points alone would allow a mirror too.
    """
    middle_before, middle_after = before.mean(axis=0), after.mean(axis=0)
    u, _, vt = np.linalg.svd((before - middle_before).T @ (after - middle_after))
    sign = np.sign(np.linalg.det(vt.T @ u.T))
    rotation = vt.T @ np.diag([1.0, sign]) @ u.T
    return rotation, middle_after - rotation @ middle_before


@given(holes, holes, shifts, shifts)
def test_the_move_of_the_bore_is_that_of_the_nearest_rigid_motion(
    one: Hole, two: Hole, first: Vec2, second: Vec2
) -> None:
    """To first order in shift over spacing, which is all that is claimed.

    With d = |v2 - v1| and s the spacing, the turn is d/s at most; what is left out of it is of the
    second order, (d/s)**2 and less, and moves the crank axis by that times its distance from the
    middle of the holes.
    """
    before = places((one, two))
    spacing = float(np.hypot(*(before[1] - before[0])))
    assume(spacing > 3000.0)
    moves = np.array([[first.x, first.y], [second.x, second.y]])
    rotation, shift = kabsch(before, before + moves)
    moved = DowelLine.of((one, two), PER_INCH).moved(first, second)

    second_order = (float(np.hypot(*(moves[1] - moves[0]))) / spacing) ** 2
    arm = float(np.hypot(*before.mean(axis=0)))
    left = np.array([moved.move.x, moved.move.y]) - shift  # the crank axis is at nothing
    assert float(np.hypot(*left)) <= 1.5 * second_order * arm + 1e-9

    turn = math.atan2(rotation[1, 0], rotation[0, 0])  # counter-clockwise plus
    assert moved.turn == pytest.approx(turn, abs=second_order + 1e-12)
    assert moved.turn_deg == pytest.approx(-math.degrees(turn), abs=60.0 * second_order + 1e-9)

    after = before + moves
    stretched = float(np.hypot(*(after[1] - after[0]))) - spacing
    assert -moved.misfit == pytest.approx(stretched, abs=second_order * spacing + 1e-9)


def test_the_kabsch_oracle_keeps_left_and_right() -> None:
    """A quarter turn and a shift are found again; a mirror is not taken for a turn."""
    before = np.array([[0.0, 0.0], [2.0, 0.0], [0.0, 1.0]])
    quarter = np.array([[0.0, -1.0], [1.0, 0.0]])
    rotation, shift = kabsch(before, before @ quarter.T + [3.0, 4.0])
    assert rotation == pytest.approx(quarter, abs=1e-12)
    assert shift == pytest.approx([3.0, 4.0], abs=1e-12)
    mirrored, _ = kabsch(before, before * [-1.0, 1.0])
    assert np.linalg.det(mirrored) == pytest.approx(1.0)


@given(holes, holes, shifts)
def test_two_equal_dowels_only_shift(one: Hole, two: Hole, shift: Vec2) -> None:
    line_ends = places((one, two))
    assume(float(np.hypot(*(line_ends[1] - line_ends[0]))) > 1000.0)
    moved = DowelLine.of((one, two), PER_INCH).moved(shift, shift)
    assert (moved.move.x, moved.move.y) == pytest.approx((shift.x, shift.y), abs=1e-12)
    assert (moved.turn, moved.misfit) == pytest.approx((0.0, 0.0), abs=1e-12)


@given(holes, holes, shifts, shifts)
def test_the_order_of_the_holes_changes_nothing(
    one: Hole, two: Hole, first: Vec2, second: Vec2
) -> None:
    line_ends = places((one, two))
    assume(float(np.hypot(*(line_ends[1] - line_ends[0]))) > 1000.0)
    there = DowelLine.of((one, two), PER_INCH).moved(first, second)
    back = DowelLine.of((two, one), PER_INCH).moved(second, first)
    assert (back.move.x, back.move.y) == pytest.approx((there.move.x, there.move.y), abs=1e-9)
    assert back.turn == pytest.approx(there.turn, abs=1e-12)
    assert back.misfit == pytest.approx(there.misfit, abs=1e-9)


@pytest.mark.parametrize(
    ("first", "second", "move", "turn_deg", "misfit"),
    [
        # The left hole goes up and the right one down: the housing turns clockwise.
        (Vec2(0.0, 7.0), Vec2(0.0, -7.0), (0.0, 0.0), math.degrees(14.0 / 14000.0), 0.0),
        # Only the left one goes up: half the move, half the turn.
        (Vec2(0.0, 7.0), ZERO, (0.0, 3.5), math.degrees(7.0 / 14000.0), 0.0),
        # Toward one another: the spacing is 14 too long for them, the bore stays.
        (Vec2(7.0, 0.0), Vec2(-7.0, 0.0), (0.0, 0.0), 0.0, 14.0),
        # Away from one another: too short.
        (Vec2(-7.0, 0.0), Vec2(7.0, 0.0), (0.0, 0.0), 0.0, -14.0),
    ],
)
def test_signs(
    first: Vec2, second: Vec2, move: tuple[float, float], turn_deg: float, misfit: float
) -> None:
    """Holes opposite one another at 9 and 3 o'clock, seen from behind."""
    moved = DowelLine.of(OPPOSITE, PER_INCH).moved(first, second)
    assert (moved.move.x, moved.move.y) == pytest.approx(move, abs=1e-9)
    assert moved.turn_deg == pytest.approx(turn_deg, abs=1e-9)
    assert moved.misfit == pytest.approx(misfit, abs=1e-9)


# What a pair should do ---------------------------------------------------------------------


@pytest.mark.parametrize(
    ("pair", "move"),
    [
        ((STANDARD, STANDARD), (0.0, 0.0)),
        ((Dowel(0.0, 10.0), Dowel(0.0, 200.0)), (0.0, 0.0)),  # standard dowels have no aim
        ((Dowel(7.0, 90.0), Dowel(7.0, 90.0)), (7.0, 0.0)),
        ((Dowel(14.0, 180.0), Dowel(14.0, 180.0)), (0.0, -14.0)),
    ],
)
def test_nominal_move_of_a_like_pair(pair: tuple[Dowel, Dowel], move: tuple[float, float]) -> None:
    """It needs no holes."""
    found = nominal_move(pair, None)
    assert found is not None
    assert (found.x, found.y) == pytest.approx(move, abs=1e-12)


UNLIKE = [
    (Dowel(7.0, 90.0), Dowel(14.0, 90.0)),
    (Dowel(7.0, 90.0), Dowel(7.0, 95.0)),
    (STANDARD, Dowel(7.0, 0.0)),
]


@pytest.mark.parametrize("pair", UNLIKE)
def test_nominal_move_failure_unlike_dowels_and_no_holes(pair: tuple[Dowel, Dowel]) -> None:
    """What a pair that differs does depends on where its holes are."""
    assert nominal_move(pair, None) is None


@pytest.mark.parametrize("pair", UNLIKE)
def test_nominal_move_of_an_unlike_pair_where_the_holes_are_known(
    pair: tuple[Dowel, Dowel],
) -> None:
    line = DowelLine.of(OPPOSITE, PER_INCH)
    assert nominal_move(pair, line) == line.moved(shift_of(pair[0]), shift_of(pair[1])).move


@given(angles, st.floats(0.0, 25.0))
def test_a_dowel_shifts_its_hole_toward_its_aim(aim: float, offset: float) -> None:
    shift = shift_of(Dowel(offset, aim))
    assert shift.length == pytest.approx(offset, abs=1e-12)
    assert shift.dot(unit_vector(aim)) == pytest.approx(offset, abs=1e-12)
