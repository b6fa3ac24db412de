"""Shims under the front flange, or the taper to machine off it, that bring the face square.

The face stands at ``z = g . (x, y)``. A shim of thickness t at a bolt lifts the housing there, so
``t = t0 - g . (x, y)`` brings it square; ``t0`` makes the least shim zero. The same rotation
swings the bore by ``H g``, H being the depth of the housing from front flange to rear face.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations_with_replacement

from sweepsheet.job.model import Hole
from sweepsheet.maths.clock import direction_of, polar
from sweepsheet.maths.linear import least_squares
from sweepsheet.maths.vector import Vec2

# A stack of more pieces than this springs.
MOST_PIECES = 3


@dataclass(frozen=True, slots=True)
class Shim:
    """The shim at one bolt: what it should be, and the stack in stock that comes nearest.

    ``pieces`` is empty for none, and ``None`` where no stock is known. ``lacks`` is by how much
    three of the thickest in stock are too thin, nothing where they are not.
    """

    at_deg: float
    ideal: float
    pieces: tuple[float, ...] | None
    lacks: float

    @property
    def thickness(self) -> float:
        """The thickness to fit."""
        return self.ideal if self.pieces is None else sum(self.pieces)


@dataclass(frozen=True, slots=True)
class Shims:
    """The shims at all bolts.

    ``slope_left`` is the slope that the face keeps after rounding to the stock; ``rock`` the most
    by which a bolt's shim stands off the plane of all: what bolting down would bend.
    """

    shims: tuple[Shim, ...]
    slope_left: Vec2
    rock: float


@dataclass(frozen=True, slots=True)
class Taper:
    """What to machine off: deepest at ``deepest_deg``, ``slope`` deep a length.

    ``across`` is the depth at the outermost bolt less that at the opposite one, in small units;
    ``None`` where no bolt was measured.
    """

    deepest_deg: float
    slope: float
    across: float | None


def shims_for(
    slope: Vec2, bolts: Sequence[Hole], small_per_long: float, stock: Sequence[float]
) -> Shims | None:
    """The shims that square a face of this slope; ``None`` below three bolts or all in a line.

    Each bolt gets the stack of up to three pieces nearest to its ideal; with no stock, the ideal.
    Shims at the bolts alone leave the flange hanging between them: a full-ring tapered shim, or
    machining, carries it all round.

    >>> square = [Hole(45.0 + 90.0 * i, 7.0) for i in range(4)]
    >>> found = shims_for(Vec2(0.0, -0.0005), square, 1000.0, ())
    >>> [round(shim.thickness, 3) for shim in found.shims]
    [4.95, 0.0, 0.0, 4.95]
    """
    places = [polar(b.at_deg, b.radius * small_per_long) for b in bolts]
    if len(places) < 3:
        return None
    raw = [-slope.dot(place) for place in places]
    least = min(raw)
    stacks = _stacks(stock)
    shims = tuple(
        _shim(bolt, t - least, stacks if stock else None)
        for bolt, t in zip(bolts, raw, strict=True)
    )
    plane = least_squares([[1.0, p.x, p.y] for p in places], [s.thickness for s in shims])
    if plane is None:
        return None
    level, along_x, along_y = plane
    stands = [
        abs(s.thickness - (level + along_x * p.x + along_y * p.y))
        for s, p in zip(shims, places, strict=True)
    ]
    return Shims(shims, slope + Vec2(along_x, along_y), max(stands))


def taper_for(slope: Vec2, bolts: Sequence[Hole], small_per_long: float) -> Taper:
    """The taper that squares a face of this slope when machined off.

    Off the front flange of a housing that stands tipped, or off a rear face that is cut crooked:
    either way most is taken off where the face stands rearward.

    >>> bolts = [Hole(90.0 * i, 7.0) for i in range(4)]
    >>> taper_for(Vec2(0.0, 0.0005), bolts, 1000.0)
    Taper(deepest_deg=0.0, slope=0.0005, across=7.0)
    """
    depths = [slope.dot(polar(b.at_deg, b.radius * small_per_long)) for b in bolts]
    across = max(depths) - min(depths) if depths else None
    return Taper(direction_of(slope), slope.length, across)


def _shim(bolt: Hole, ideal: float, stacks: list[tuple[float, ...]] | None) -> Shim:
    if stacks is None:
        return Shim(bolt.at_deg, ideal, None, 0.0)
    lacks = max(0.0, ideal - max(sum(stack) for stack in stacks))
    return Shim(bolt.at_deg, ideal, _nearest(ideal, stacks), lacks)


def _stacks(stock: Sequence[float]) -> list[tuple[float, ...]]:
    """Every stack of up to three pieces, the fewest pieces first."""
    return [
        stack
        for pieces in range(MOST_PIECES + 1)
        for stack in combinations_with_replacement(sorted(stock, reverse=True), pieces)
    ]


def _nearest(wanted: float, stacks: list[tuple[float, ...]]) -> tuple[float, ...]:
    """The stack nearest in thickness; of two as near, the one of fewer pieces."""
    return min(stacks, key=lambda stack: (round(abs(sum(stack) - wanted), 9), len(stack)))
