"""Plane vectors and symmetric 2 x 2 matrices, as small frozen values.

The frame is the one of the whole package: seen from behind the engine, x to the right,
y up. A vector of offsets is in the job's small unit (thou or mm); a covariance is in that
unit squared.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

# A vector shorter than this is nothing: far below any reading, far above what can't be divided by.
SHORT = 1e-12


@dataclass(frozen=True, slots=True)
class Vec2:
    """A plane vector.

    >>> Vec2(3.0, 4.0).length
    5.0
    >>> Vec2(1.0, 2.0) - Vec2(0.5, 0.0)
    Vec2(x=0.5, y=2.0)
    """

    x: float
    y: float

    def __add__(self, other: Vec2) -> Vec2:
        return Vec2(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Vec2) -> Vec2:
        return Vec2(self.x - other.x, self.y - other.y)

    def __neg__(self) -> Vec2:
        return Vec2(-self.x, -self.y)

    def scaled(self, factor: float) -> Vec2:
        """The vector times a number.

        >>> Vec2(3.0, -4.0).scaled(0.5)
        Vec2(x=1.5, y=-2.0)
        """
        return Vec2(self.x * factor, self.y * factor)

    def dot(self, other: Vec2) -> float:
        """The scalar product ``x1 x2 + y1 y2``.

        >>> Vec2(1.0, 2.0).dot(Vec2(3.0, 4.0))
        11.0
        """
        return self.x * other.x + self.y * other.y

    @property
    def length(self) -> float:
        """The Euclidean length."""
        return math.hypot(self.x, self.y)

    @property
    def is_zero(self) -> bool:
        """Whether it is next to nothing (``SHORT``), so that its direction means nothing."""
        return self.length < SHORT

    def unit(self) -> Vec2:
        """The unit vector of its direction; straight up for a ``is_zero`` one.

        >>> Vec2(3.0, -4.0).unit(), Vec2(5e-324, 0.0).unit()
        (Vec2(x=0.6, y=-0.8), Vec2(x=0.0, y=1.0))
        """
        if self.is_zero:
            return Vec2(0.0, 1.0)
        return Vec2(self.x / self.length, self.y / self.length)


@dataclass(frozen=True, slots=True)
class Sym2:
    """A symmetric matrix ``[[xx, xy], [xy, yy]]``, mostly a covariance.

    >>> Sym2(2.0, 0.0, 8.0).inverse()
    Sym2(xx=0.5, xy=-0.0, yy=0.125)
    """

    xx: float
    xy: float
    yy: float

    def __add__(self, other: Sym2) -> Sym2:
        return Sym2(self.xx + other.xx, self.xy + other.xy, self.yy + other.yy)

    def scaled(self, factor: float) -> Sym2:
        """The matrix times a number.

        >>> Sym2(1.0, 2.0, 3.0).scaled(2.0)
        Sym2(xx=2.0, xy=4.0, yy=6.0)
        """
        return Sym2(self.xx * factor, self.xy * factor, self.yy * factor)

    def times(self, v: Vec2) -> Vec2:
        """The matrix times a column vector.

        >>> Sym2(1.0, 2.0, 3.0).times(Vec2(1.0, 1.0))
        Vec2(x=3.0, y=5.0)
        """
        return Vec2(self.xx * v.x + self.xy * v.y, self.xy * v.x + self.yy * v.y)

    def along(self, v: Vec2) -> float:
        """The quadratic form ``v' M v``: for a unit vector, the variance along it.

        >>> Sym2(4.0, 0.0, 9.0).along(Vec2(0.0, 1.0))
        9.0
        """
        return v.dot(self.times(v))

    @property
    def determinant(self) -> float:
        """``xx yy - xy**2``."""
        return self.xx * self.yy - self.xy * self.xy

    def inverse(self) -> Sym2:
        """The inverse. The caller has made sure that the matrix is not singular.

        >>> Sym2(2.0, 1.0, 1.0).inverse()
        Sym2(xx=1.0, xy=-1.0, yy=2.0)
        """
        d = self.determinant
        return Sym2(self.yy / d, -self.xy / d, self.xx / d)

    def principal(self) -> Principal:
        """The eigenvalues, larger first, and the unit vector of the larger.

        Closed form for 2 x 2: mean of the diagonal plus and minus the length of
        ``((xx - yy)/2, xy)``. Rounding can push the smaller eigenvalue of a covariance
        below zero; it is held at zero.

        >>> Sym2(1.0, 0.0, 4.0).principal()
        Principal(major=4.0, minor=1.0, axis=Vec2(x=0.0, y=1.0))
        """
        mean = (self.xx + self.yy) / 2
        half = (self.xx - self.yy) / 2
        spread = math.hypot(half, self.xy)
        # Twice the angle of the major axis from x, counter-clockwise.
        angle = math.atan2(self.xy, half) / 2
        axis = Vec2(round(math.cos(angle), 15), round(math.sin(angle), 15))
        return Principal(mean + spread, max(0.0, mean - spread), axis)


@dataclass(frozen=True, slots=True)
class Principal:
    """Eigenvalues of a symmetric matrix, and the unit eigenvector of the larger one."""

    major: float
    minor: float
    axis: Vec2

    @property
    def cross_axis(self) -> Vec2:
        """The unit eigenvector of the smaller eigenvalue."""
        return Vec2(-self.axis.y, self.axis.x)


ZERO = Vec2(0.0, 0.0)
ZERO_COVARIANCE = Sym2(0.0, 0.0, 0.0)


def mean_of(vectors: Sequence[Vec2]) -> Vec2:
    """The mean of some vectors, of which there is one at least.

    >>> mean_of([Vec2(1.0, 2.0), Vec2(3.0, -2.0)])
    Vec2(x=2.0, y=0.0)
    """
    total = ZERO
    for v in vectors:
        total = total + v
    return total.scaled(1.0 / len(vectors))


def outer(v: Vec2) -> Sym2:
    """The dyad ``v v'``: the covariance of a unit-variance effect acting along ``v``.

    >>> outer(Vec2(1.0, 2.0))
    Sym2(xx=1.0, xy=2.0, yy=4.0)
    """
    return Sym2(v.x * v.x, v.x * v.y, v.y * v.y)
