"""What a machine shop is to cut: the taper of a face, or a bore to a new centre.

All as seen from behind, x right and y up, in small units. A cut of the slope g takes
``d = g . p + R |g|`` off at the place p: nothing at the rim of the circle of radius R opposite the
deepest place, ``2 R |g|`` at that place. Off the front flange or off the rear face it is deepest at
one clock position, where the face stands rearward.

A bore at c is put right by moving its centre by ``-c``. On a bench nobody sees the crank: there the
line of the two dowel holes, from A to B, is the axis along which the move is laid off, ``across`` a
quarter turn counter-clockwise from it.

Doubts are half widths of 95 %. What two holes are known by turns the move with their line: each
hole's clock position is taken to be as sure as the marks of the crank, rectangular. Where both were
measured to within plus or minus a, that counts instead, any way in the plane, rectangular; then the
crank axis itself can be told from hole A, by the holes alone.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.face import Face
from sweepsheet.job.model import Hole, TiltFrom
from sweepsheet.maths.clock import direction_of, polar, unit_vector
from sweepsheet.maths.normal import K_95_LINE, offset_half_width, radius95
from sweepsheet.maths.vector import Sym2, Vec2, outer
from sweepsheet.remedy.rigid import DowelLine
from sweepsheet.remedy.shims import Shim
from sweepsheet.sweep.uncertainty import rectangular


@dataclass(frozen=True, slots=True)
class Figure:
    """A size and the half width (95 %) by which it may be off."""

    value: float
    pm: float


@dataclass(frozen=True, slots=True)
class Place:
    """How much goes off, or in between, at one place of a flange; ``radius`` in the long unit."""

    at: Hole
    amount: Figure


@dataclass(frozen=True, slots=True)
class FaceCut:
    """A taper to machine off, on the circle of ``radius`` (long unit).

    ``rise`` is how much more goes off at the deepest place than opposite, ``places`` how much at
    some places on or within the circle. ``shorter`` is what the housing loses on its axis at least.
    ``left`` is the runout at the radius swept that measuring alone may leave (95 %), ``spare``
    what of the limit is then the shop's own.
    """

    side: TiltFrom
    radius: float
    deepest_deg: float
    deepest_pm_deg: float
    rise: Figure
    places: tuple[Place, ...]
    shorter: float
    left: float
    spare: float


@dataclass(frozen=True, slots=True)
class BoreMove:
    """How the centre of a bore is moved.

    ``right`` and ``up`` as seen from behind; ``along`` toward hole B, which lies at
    ``along_deg`` from hole A, ``across`` toward ``across_deg``. ``present`` is where the bore is
    now, from hole A, along and across: as good as the holes were measured, and there to find it.
    ``center`` is the new centre from hole A, along and across, by the holes alone; ``None`` where
    nobody says how well they were measured.
    ``left`` is the offset that measuring and the play of the dowels may leave (95 %), ``spare``
    what of the limit is then the shop's own.
    """

    right: Figure
    up: Figure
    along: Figure
    across: Figure
    along_deg: float
    across_deg: float
    present: Vec2
    center: tuple[Figure, Figure] | None
    left: float
    spare: float


def face_cut(
    side: TiltFrom,
    face: Face,
    places: Sequence[Hole],
    radius: float,
    swept_radius: float,
    small_per_long: float,
) -> FaceCut | None:
    """The taper that squares a face; ``None`` where its side or its limit is not known.

    ``radius`` is that of the circle on which it is given, ``swept_radius`` that of the sweep.
    """
    if face.direction_pm_deg is None or face.limit is None:
        return None
    slope, covariance = face.slope, face.slope_covariance
    rim = radius * small_per_long
    left = 2.0 * swept_radius * small_per_long * radius95(covariance)
    return FaceCut(
        side=side,
        radius=radius,
        deepest_deg=direction_of(slope),
        deepest_pm_deg=face.direction_pm_deg,
        rise=Figure(2.0 * rim * slope.length, 2.0 * rim * offset_half_width(slope, covariance)),
        places=tuple(
            Place(at, _depth(slope, covariance, polar(at.at_deg, at.radius * small_per_long), rim))
            for at in places
        ),
        shorter=rim * slope.length,
        left=left,
        spare=face.limit - left,
    )


def _depth(slope: Vec2, covariance: Sym2, place: Vec2, rim: float) -> Figure:
    """How much goes off at a place: its change with the slope is ``p + R g/|g|``."""
    change = place + slope.unit().scaled(rim)
    return Figure(slope.dot(change), K_95_LINE * math.sqrt(covariance.along(change)))


def shim_places(
    shims: Sequence[Shim], bolts: Sequence[Hole], covariance: Sym2, small_per_long: float
) -> tuple[Place, ...]:
    """The ideal shim at each bolt with its doubt, counted from the bolt that has none.

    >>> from sweepsheet.remedy.shims import shims_for
    >>> bolts = [Hole(45.0 + 90.0 * i, 7.0) for i in range(4)]
    >>> shims = shims_for(Vec2(0.0, -0.0005), bolts, 1000.0, ()).shims
    >>> found = shim_places(shims, bolts, Sym2(1e-8, 0.0, 1e-8), 1000.0)
    >>> round(found[0].amount.value, 2), round(found[0].amount.pm, 2)
    (4.95, 2.74)
    """
    places = [polar(bolt.at_deg, bolt.radius * small_per_long) for bolt in bolts]
    least = min(range(len(shims)), key=lambda i: shims[i].ideal)
    return tuple(
        Place(
            bolt,
            Figure(
                shim.ideal, K_95_LINE * math.sqrt(max(0.0, covariance.along(place - places[least])))
            ),
        )
        for shim, bolt, place in zip(shims, bolts, places, strict=True)
    )


def bore_move(
    bore: Bore,
    holes: tuple[Hole, Hole],
    limit: float,
    play: Sym2,
    setting_deg: float,
    small_per_long: float,
    hole_accuracy: float | None = None,
) -> BoreMove:
    """How to move a bore that was swept on standard dowels onto the crank axis.

    ``play`` is the doubt of where the housing comes to rest: it was swept somewhere in it, and will
    sit somewhere in it again. ``setting_deg`` is how far (plus or minus) a hole's clock position
    may be off, ``hole_accuracy`` by how much a hole was measured wrong at most, if that is known.
    """
    line = DowelLine.of(holes, small_per_long)
    move = -bore.center
    if hole_accuracy is None:
        turn = line_variance(holes, setting_deg, small_per_long)
    else:
        turn = 2.0 * (rectangular(hole_accuracy) / line.spacing) ** 2
    turned = outer(Vec2(-move.y, move.x)).scaled(turn)
    covariance = bore.covariance + play
    by_holes = covariance + turned
    now = bore.center - line.first
    # The housing is put back into its play: that of the sweep and that of the refit.
    left = radius95(by_holes + play)

    def figure(way: Vec2, doubt: Sym2) -> Figure:
        return Figure(move.dot(way), K_95_LINE * math.sqrt(doubt.along(way)))

    return BoreMove(
        right=figure(Vec2(1.0, 0.0), covariance),
        up=figure(Vec2(0.0, 1.0), covariance),
        along=figure(line.along, by_holes),
        across=figure(line.across, by_holes),
        along_deg=direction_of(line.along),
        across_deg=direction_of(line.across),
        present=Vec2(now.dot(line.along), now.dot(line.across)),
        center=None if hole_accuracy is None else center_from_a(line, hole_accuracy, play),
        left=left,
        spare=limit - left,
    )


def center_from_a(line: DowelLine, accuracy: float, play: Sym2) -> tuple[Figure, Figure]:
    """The crank axis from hole A, along the line of the holes and across it, by the holes alone.

    With the holes D apart and the axis at (x, y) in their frame, holes off by ``e_A`` and ``e_B``
    turn the frame by ``(e_B - e_A) . across / D``, so that::

        x is off by -e_A . along + y turn,    y is off by -e_A . across - x turn

    each part of an ``e`` being off by plus or minus ``accuracy``, rectangular. The housing may sit
    anywhere in its ``play``.

    >>> line = DowelLine.of((Hole(270.0, 7.0), Hole(90.0, 7.0)), 1000.0)
    >>> x, y = center_from_a(line, 2.0, Sym2(0.0, 0.0, 0.0))
    >>> round(x.value), round(x.pm, 2), abs(round(y.value)), round(y.pm, 2)
    (7000, 2.26, 0, 1.6)
    """
    x, y = -line.first.dot(line.along), -line.first.dot(line.across)
    each = rectangular(accuracy) ** 2
    by_x, by_y = x / line.spacing, y / line.spacing
    along = each * (1.0 + 2.0 * by_y**2) + play.along(line.along)
    across = each * ((1.0 - by_x) ** 2 + by_x**2) + play.along(line.across)
    return Figure(x, K_95_LINE * math.sqrt(along)), Figure(y, K_95_LINE * math.sqrt(across))


def line_variance(holes: tuple[Hole, Hole], setting_deg: float, small_per_long: float) -> float:
    """The variance of the direction of the line of two holes, in radians squared.

    A hole that is off by a small angle e lies ``r e`` off, square to its own radius; of that the
    part across the line, over the spacing, turns the line.

    >>> holes = (Hole(270.0, 7.0), Hole(90.0, 7.0))
    >>> round(math.degrees(math.sqrt(line_variance(holes, 5.0, 1000.0))), 3)
    2.041
    """
    line = DowelLine.of(holes, small_per_long)
    each = rectangular(math.radians(setting_deg)) ** 2
    ways = (
        unit_vector(hole.at_deg + 90.0).dot(line.across) * hole.radius * small_per_long
        for hole in holes
    )
    return each * math.fsum((way / line.spacing) ** 2 for way in ways)
