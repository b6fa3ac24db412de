"""What can be done to a practice housing between two rounds, and how it turns when it is squared.

As in ``housing``: bodies in space, every length in millimetres, and nothing from the formulas by
which the error is found again.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.job.model import Dowel
from sweepsheet.maths.vector import Vec2


@dataclass(frozen=True, slots=True)
class Reseat:
    """Loosened and torqued again on the same dowels; ``mended``: its joint and fit put right."""

    mended: bool = False


@dataclass(frozen=True, slots=True)
class PlateTurn:
    """The plate that is swept, turned half a turn on its pins; the housing is not touched."""


@dataclass(frozen=True, slots=True)
class Square:
    """Taken off the front flange: deepest at ``at_deg``, ``slope`` deep a length."""

    slope: float
    at_deg: float


Act = Dowel | Reseat | PlateTurn | Square


def tipped(center: Vec2, before: Vec2, after: Vec2, depth: float) -> Vec2:
    """Where a point of the rear face comes to when its slope goes from ``before`` to ``after``.

    The housing is a solid body that turns about the middle of its front flange, ``depth`` before
    the face, and about no more than it must: the normal ``(-gx, -gy, 1)`` of the face goes straight
    to where it will be. With the unit normals ``n`` and ``n'``, ``w = n x n'`` and ``c = n . n'``
    a point r comes to ``c r + w x r + w (w . r) / (1 + c)`` (the rotation formula of Rodrigues).

    >>> there = tipped(Vec2(0.0, 0.0), Vec2(0.0, 0.0), Vec2(0.001, 0.0), 100.0)
    >>> round(there.x, 4), round(there.y, 4)
    (-0.1, 0.0)
    """
    (ax, ay, az), (bx, by, bz) = _normal_of(before), _normal_of(after)
    wx, wy, wz = ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx
    c = ax * bx + ay * by + az * bz
    along = (wx * center.x + wy * center.y + wz * depth) / (1.0 + c)
    return Vec2(
        c * center.x + wy * depth - wz * center.y + wx * along,
        c * center.y + wz * center.x - wx * depth + wy * along,
    )


def _normal_of(slope: Vec2) -> tuple[float, float, float]:
    """The unit normal of a face ``z = g . (x, y)``, pointing rearward."""
    length = math.sqrt(slope.dot(slope) + 1.0)
    return -slope.x / length, -slope.y / length, 1.0 / length
