"""Shims and taper that bring a face square."""

from __future__ import annotations

import math
from itertools import product

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from sweepsheet.job.model import Hole
from sweepsheet.maths.vector import Vec2
from sweepsheet.remedy.shims import Shims, shims_for, taper_for
from tests.cases.jobs import SEVEN_BOLTS, apart

PER_INCH = 1000.0
BOLTS = tuple(Hole(bolt["at_deg"], bolt["radius"]) for bolt in SEVEN_BOLTS)
STOCK = (1.0, 2.0, 5.0)

slopes = st.builds(Vec2, st.floats(-0.002, 0.002), st.floats(-0.002, 0.002))


def places(bolts: tuple[Hole, ...]) -> NDArray[np.float64]:
    """The bolts in thou, one a row."""
    at = [(math.radians(b.at_deg), b.radius * PER_INCH) for b in bolts]
    return np.array([[r * math.sin(a), r * math.cos(a)] for a, r in at])


def found(slope: Vec2, stock: tuple[float, ...] = (), bolts: tuple[Hole, ...] = BOLTS) -> Shims:
    shims = shims_for(slope, bolts, PER_INCH, stock)
    assert shims is not None
    return shims


@given(slopes)
def test_without_a_stock_the_face_comes_square(slope: Vec2) -> None:
    """Under each bolt just what the face lacks there: face and shims together are one plane."""
    shims = found(slope)
    stands = places(BOLTS) @ [slope.x, slope.y] + [s.thickness for s in shims.shims]
    assert stands == pytest.approx([stands[0]] * len(BOLTS), abs=1e-9)
    assert (shims.slope_left.x, shims.slope_left.y) == pytest.approx((0.0, 0.0), abs=1e-15)
    assert shims.rock == pytest.approx(0.0, abs=1e-9)
    assert {s.pieces for s in shims.shims} == {None}


@given(slopes)
def test_the_least_shim_is_nothing_and_none_is_less(slope: Vec2) -> None:
    ideal = [shim.ideal for shim in found(slope).shims]
    assert min(ideal) == 0.0


@given(slopes, st.lists(st.floats(0.5, 20.0), min_size=1, max_size=4, unique=True))
def test_rounding_takes_the_best_stack(slope: Vec2, stock: list[float]) -> None:
    """Against every stack of up to three pieces, in any order."""
    for shim in found(slope, tuple(stock)).shims:
        every = [sum(pieces) for n in range(4) for pieces in product(stock, repeat=n)]
        best = min(abs(total - shim.ideal) for total in every)
        assert abs(shim.thickness - shim.ideal) == pytest.approx(best, abs=1e-8)
        assert shim.pieces is not None
        assert len(shim.pieces) <= 3
        assert set(shim.pieces) <= set(stock)


def test_of_two_stacks_as_good_the_one_of_fewer_pieces_is_taken() -> None:
    """Five, rather than two, two and one."""
    shims = found(Vec2(0.0, 5.0 / 16000.0), STOCK, bolts=tuple(Hole(a, 8.0) for a in (0, 90, 180)))
    assert [shim.pieces for shim in shims.shims] == [(), (2.0,), (5.0,)]


@given(slopes)
def test_what_rounding_leaves_is_told(slope: Vec2) -> None:
    """The slope left is that of the plane of least squares through face and shims, by numpy."""
    shims = found(slope, STOCK)
    thickness = np.array([shim.thickness for shim in shims.shims])
    design = np.column_stack([np.ones(len(BOLTS)), places(BOLTS)])
    plane = np.linalg.lstsq(design, thickness, rcond=None)[0]
    assert shims.slope_left.x == pytest.approx(slope.x + plane[1], abs=1e-9)
    assert shims.slope_left.y == pytest.approx(slope.y + plane[2], abs=1e-9)
    assert shims.rock == pytest.approx(float(np.abs(thickness - design @ plane).max()), abs=1e-6)


def test_three_bolts_never_rock() -> None:
    """Three feet stand on any floor."""
    three = tuple(Hole(a, 8.0) for a in (10.0, 130.0, 250.0))
    assert found(Vec2(0.0007, -0.0003), (4.0,), three).rock == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    "bolts",
    [
        (),
        (Hole(0.0, 8.0), Hole(120.0, 8.0)),
        (Hole(0.0, 8.0), Hole(180.0, 8.0), Hole(0.0, 4.0)),  # all on one line
        (Hole(30.0, 8.0), Hole(30.0, 8.0), Hole(30.0, 8.0)),
    ],
)
def test_shims_for_failure(bolts: tuple[Hole, ...]) -> None:
    """What is not held at three places round the clock can't be tilted."""
    assert shims_for(Vec2(0.001, 0.0), bolts, PER_INCH, ()) is None


# Taper -------------------------------------------------------------------------------------


@given(st.floats(0.0, 359.0), st.floats(1e-5, 0.002))
def test_the_taper_is_deepest_where_the_face_stands_rearward(toward: float, size: float) -> None:
    a = math.radians(toward)
    slope = Vec2(size * math.sin(a), size * math.cos(a))
    taper = taper_for(slope, BOLTS, PER_INCH)
    assert apart(taper.deepest_deg, toward) < 1e-6
    assert taper.slope == pytest.approx(size, rel=1e-12)
    depths = places(BOLTS) @ [slope.x, slope.y]
    assert taper.across == pytest.approx(float(depths.max() - depths.min()), abs=1e-9)


@given(slopes)
def test_taper_and_shims_differ_by_a_constant(slope: Vec2) -> None:
    """What is taken off at one bolt and put under another is the same plane."""
    depths = places(BOLTS) @ [slope.x, slope.y]
    both = depths + [shim.ideal for shim in found(slope).shims]
    assert both == pytest.approx([both[0]] * len(BOLTS), abs=1e-9)


def test_taper_without_bolts_has_no_depth_across() -> None:
    assert taper_for(Vec2(0.001, 0.0), (), PER_INCH).across is None
