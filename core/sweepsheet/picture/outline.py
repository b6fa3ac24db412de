"""The round outline of a dial in a picture: an ellipse near to any of its concentric rings.

Which ring it is does not matter: what is measured later is measured by the ticks.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from sweepsheet.maths.linear import solve_linear

# Rays from the middle of the picture; how near to it they begin, in shorter sides; and by how many
# pixels, about, the outline may change from ray to ray.
_RAYS = 64
_NEAREST = 0.2
_STEP = 3
# The difference of brightness is taken between means of this many pixels.
_REACH = 3
# Changes above those of this share of all places count as these: a bright number is no outline.
# Where most of the picture has none, as above this part of the largest.
_CAP, _WEAKEST = 0.8, 16


@dataclass(frozen=True, slots=True)
class Grey:
    """A grey picture: ``pixels`` row by row from the top left, 0 black to 255."""

    pixels: bytes
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class Oval:
    """An ellipse: the place of its middle, and the picture of the unit circle.

    A point ``(u, v)`` of the disc lies at ``(x + a u + b v, y + b u + c v)``; the matrix is
    symmetric, so the ellipse is not turned.
    """

    x: float
    y: float
    a: float
    b: float
    c: float

    @property
    def axes(self) -> tuple[float, float]:
        """The half axes, major first."""
        mean, half = (self.a + self.c) / 2.0, math.hypot((self.a - self.c) / 2.0, self.b)
        return mean + half, mean - half

    def within(self, grey: Grey) -> bool:
        """Whether all of it lies in the picture.

        >>> [Oval(x, 100.0, 60.0, 0.0, 60.0).within(Grey(bytes(40000), 200, 200)) for x in (70, 50)]
        [True, False]
        """
        right, down = math.hypot(self.a, self.b), math.hypot(self.b, self.c)
        across = right <= self.x <= grey.width - right
        return across and down <= self.y <= grey.height - down


def fit_oval(
    points: Sequence[tuple[float, float]], origin: tuple[float, float] = (0.0, 0.0)
) -> Oval | None:
    """The ellipse through points that lie all round an origin, or ``None`` where there is none.

    The points are given from the origin, and the ellipse is told where that lies.

    Least squares of ``A x^2 + 2 B x y + C y^2 + D x + E y = 1`` (Bookstein, Computer Graphics and
    Image Processing 9, 1979, with the constant fixed: the origin lies inside); then those points
    that lie farthest from it are left out, a quarter of them, and it is fitted once more.

    >>> ring = [(3.0 + 40.0 * math.cos(a / 5.0), 20.0 * math.sin(a / 5.0)) for a in range(32)]
    >>> oval = fit_oval(ring)
    >>> round(oval.x, 6), abs(round(oval.y, 6)), [round(axis, 6) for axis in oval.axes]
    (3.0, 0.0, [40.0, 20.0])
    """
    conic = _conic(points)
    if conic is None:
        return None
    a, b, c, d, e = conic
    off = [(abs(a*x*x + 2*b*x*y + c*y*y + d*x + e*y - 1.0), x, y) for x, y in points]  # fmt: skip
    off.sort()
    conic = _conic([(x, y) for _, x, y in off[: len(off) * 3 // 4]])
    return None if conic is None else _oval(conic, origin)


def _conic(points: Sequence[tuple[float, float]]) -> tuple[float, ...] | None:
    size = max(abs(x) + abs(y) for x, y in points)
    rows = [(x * x, 2.0 * x * y, y * y, x, y)
            for x, y in ((x / size, y / size) for x, y in points)]  # fmt: skip
    matrix = [[sum(row[i] * row[j] for row in rows) for j in range(5)] for i in range(5)]
    found = solve_linear(matrix, [sum(row[i] for row in rows) for i in range(5)])
    if found is None:
        return None
    a, b, c, d, e = found
    return a / size**2, b / size**2, c / size**2, d / size, e / size


def _oval(conic: Sequence[float], origin: tuple[float, float]) -> Oval | None:
    a, b, c, d, e = conic
    determinant = a * c - b * b
    if determinant <= 0.0 or a <= 0.0:
        return None
    x, y = (b * e - c * d) / (2.0 * determinant), (b * d - a * e) / (2.0 * determinant)
    level = 1.0 + a * x * x + 2.0 * b * x * y + c * y * y
    # The inverse of a symmetric root of the matrix takes the circle to the ellipse.
    root = math.sqrt(determinant)
    trace = math.sqrt(a + c + 2.0 * root)
    scale = math.sqrt(level) / root / trace
    return Oval(x + origin[0], y + origin[1], (c + root) * scale, -b * scale, (a + root) * scale)


def find_outline(grey: Grey, every: int = 1) -> Oval | None:
    """The strongest round outline about the middle of a picture, or ``None``.

    Along rays from the middle the change of brightness is taken; of all closed outlines that cross
    every ray once and change little from one to the next, the one with the largest sum is found by
    dynamic programming (Amini, Weymouth and Jain, IEEE Trans. PAMI 12, 1990), and an ellipse is
    fitted to it. ``every``: of how many pixels of a ray one is looked at.

    >>> disc = bytes(
    ...     250 if (x - 62) ** 2 + (y - 58) ** 2 < 1600 else 30
    ...     for y in range(120) for x in range(120)
    ... )
    >>> oval = find_outline(Grey(disc, 120, 120))
    >>> round(oval.x), round(oval.y), [abs(axis - 40.0) < 3.0 for axis in oval.axes]
    (62, 58, [True, True])
    """
    side = min(grey.width, grey.height)
    low, high = round(_NEAREST * side), side // 2 - _REACH
    rows = [_edges(grey, ray, low, high)[::every] for ray in range(_RAYS)]
    few = sorted(change for row in rows[::4] for change in row)
    cap = max(few[int(len(few) * _CAP)], few[-1] // _WEAKEST)
    step = math.ceil(_STEP / every)
    radii = _closed_path([[min(cap, change) for change in row] for row in rows], step)
    ways = [math.tau * ray / _RAYS for ray in range(_RAYS)]
    points = [((low + every * r) * math.sin(w), -(low + every * r) * math.cos(w))
              for r, w in zip(radii, ways, strict=True)]  # fmt: skip
    return fit_oval(points, (grey.width / 2.0, grey.height / 2.0))


def _edges(grey: Grey, ray: int, low: int, high: int) -> list[int]:
    """How much the brightness changes at each pixel of a ray."""
    way = math.tau * ray / _RAYS
    right, down = math.sin(way), -math.cos(way)
    x, y, width, pixels = grey.width / 2.0, grey.height / 2.0, grey.width, grey.pixels
    seen = [pixels[int(y + r * down) * width + int(x + r * right)]
            for r in range(low - _REACH, high + _REACH)]  # fmt: skip
    sums = list(accumulate(seen, initial=0))
    k = _REACH
    return [abs(sums[i + 2 * k] - 2 * sums[i + k] + sums[i]) for i in range(high - low)]


def _closed_path(rows: Sequence[Sequence[int]], step: int) -> list[int]:
    """The place in each row along the closed path of the largest sum, by steps no larger than this.

    Twice round: the second time it begins where the first time ended.
    """
    n, size = len(rows), len(rows[0])
    pad = [-1_000_000] * step
    best = list(rows[0])
    kept = []
    for i in range(1, 2 * n):
        kept.append(best)
        wide = pad + best + pad
        shifted = [wide[k : k + size] for k in range(2 * step + 1)]
        best = [a + b for a, b in zip(map(max, *shifted), rows[i % n], strict=True)]
    at = best.index(max(best))
    path = [at]
    for before in reversed(kept):
        window = range(max(0, at - step), min(size, at + step + 1))
        at = max(window, key=lambda k: before[k])
        path.append(at)
    path.reverse()
    # The middle of the two turns knows what lies before it and after it.
    half = n // 2
    return path[n : n + half] + path[half:n]
