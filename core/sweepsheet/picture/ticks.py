"""The ticks of the scale: they tell how the face lies in the picture, to a part of a division.

Ticks are evenly spaced on the face, whatever else is printed there. Where they lie in the picture
is how the picture is turned, slanted and seen in perspective.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate
from operator import add, mul

from sweepsheet.maths.linear import solve_linear
from sweepsheet.picture.outline import Grey, Oval

# Rings at which ticks are looked for, in radii of the outline: first at every third of them; and
# the reach to both sides of the best of them over which they are taken together.
_RINGS = [0.6 + 0.025 * i for i in range(23)]
_FIRST_STEP, _BAND = 3, 4
# Samples of a ring: so many to a division, and no fewer than these in all.
_TO_A_DIVISION, _LEAST_SAMPLES = 5, 360
# Divisions that are looked at together.
_WINDOW = 3
# A phase, a step of it (both in radians) and a radius that are farther off than this hardly count.
_OFF, _OFF_STEP, _OFF_RADIUS = 1.2, 0.5, 0.06
# So that nothing is not divided by.
_NOTHING = 1e-9
# How many times too large a number of divisions may be and still find a tick at each of its places.
_TOO_MANY = (2, 3)


@dataclass(frozen=True, slots=True)
class Lie:
    """How the face lies in the picture: the projection from face to picture.

    ``(x, y) = ((h0 u + h1 v + h2) / w, (h3 u + h4 v + h5) / w)``, ``w = h6 u + h7 v + 1``. On the
    face v points down and the circle of the ticks has radius 1. The places at which ticks are
    darkest or brightest are at whole divisions from the top. ``agreement``: 1 where every tick lies
    in its place, near 0 where there is none. ``coarseness``: how strong the ticks of fewer
    divisions are beside these; above 1 the scale has fewer.
    """

    h: tuple[float, ...]
    agreement: float
    coarseness: float = 0.0

    @property
    def flatness(self) -> float:
        """The shorter half axis of a small circle at the middle over the longer: ``cos slant``."""
        h = self.h
        a, b = h[0] - h[2] * h[6], h[1] - h[2] * h[7]
        c, d = h[3] - h[5] * h[6], h[4] - h[5] * h[7]
        mean, cross = (a * a + b * b + c * c + d * d) / 2.0, abs(a * d - b * c)
        plus, minus = math.sqrt(mean + cross), math.sqrt(max(0.0, mean - cross))
        return (plus - minus) / (plus + minus)

    def at(self, u: float, v: float) -> tuple[float, float]:
        """Where a place of the face lies in the picture.

        >>> Lie((90.0, 0.0, 120.0, 0.0, 80.0, 110.0, 0.0, 0.0), 1.0).at(0.0, -1.0)
        (120.0, 30.0)
        """
        h = self.h
        w = h[6] * u + h[7] * v + 1.0
        return (h[0] * u + h[1] * v + h[2]) / w, (h[3] * u + h[4] * v + h[5]) / w

    def within(self, grey: Grey) -> bool:
        """Whether the whole circle of the ticks lies in the picture.

        >>> lie = Lie((90.0, 0.0, 120.0, 0.0, 80.0, 110.0, 0.0, 0.0), 1.0)
        >>> lie.within(Grey(bytes(48000), 240, 200)), lie.within(Grey(bytes(36000), 200, 180))
        (True, False)
        """
        ways = [math.tau * i / 16 for i in range(16)]
        ends = [self.at(math.sin(way), math.cos(way)) for way in ways]
        if math.hypot(self.h[6], self.h[7]) >= 1.0:  # part of it lies behind the camera
            return False
        return all(1.0 < x < grey.width - 2.0 and 1.0 < y < grey.height - 2.0 for x, y in ends)


def samples_of(divisions: int) -> int:
    """How many samples a ring has: a whole number to a division.

    >>> samples_of(100), samples_of(40)
    (500, 360)
    """
    return divisions * max(_TO_A_DIVISION, math.ceil(_LEAST_SAMPLES / divisions))


def find_ticks(grey: Grey, oval: Oval, divisions: int) -> Lie | None:
    """How the face lies, from its ticks; ``None`` where too little of it is in the picture.

    Every ring about the outline's middle is multiplied by a wave of as many turns as the scale has
    divisions, three divisions at a time, which gives the strength and phase of the ticks there.
    Rings of strong, steady waves hold the ticks. The phase all the way round, as a mean and two
    harmonics, tells which place of the face each ray goes to, and how far out the waves are tells
    where on the ray; the projection that fits both is found by linear least squares (Hartley and
    Zisserman, Multiple View Geometry, 2nd ed., 4.1).

    The coarseness is the strongest wave of half and of a third as many turns, there, over that of
    ``divisions`` turns, each on its best ring: what is narrow and evenly spaced makes waves of
    twice and three times as many turns too, but weaker ones (Fourier).

    >>> ways = [math.atan2(x - 100, 100 - y) for y in range(200) for x in range(200)]
    >>> ticks = Grey(bytes(0 if math.cos(50 * way) > 0.9 else 200 for way in ways), 200, 200)
    >>> oval = Oval(100.0, 100.0, 90.0, 0.0, 90.0)
    >>> [find_ticks(ticks, oval, divisions).coarseness > 1.0 for divisions in (50, 100)]
    [False, True]
    """
    rings = _Rings(grey, oval, divisions)
    if rings.count <= 2 * _BAND:
        return None
    best = rings.strongest(range(0, rings.count, _FIRST_STEP))
    best = rings.strongest(rings.near(best, _FIRST_STEP - 1))
    near = [rings.at(i) for i in rings.near(best, _BAND)]
    waves = [ring.waves for ring in near]
    whole = [sum(column) for column in zip(*waves, strict=True)]
    ways = [math.tau * (i + _WINDOW / 2.0) / divisions for i in range(divisions)]
    phase, agreement = _phase(whole, ways)
    radius = _radius([ring.radius for ring in near], waves, ways, phase)
    h = _projection(oval, phase, radius, divisions)
    if h is None:
        return None
    parts = [divisions // k for k in _TOO_MANY if divisions % k == 0]
    coarser = [_strength(_waves(ring.row, part)) for part in parts for ring in near]
    return Lie(h, agreement, max(coarser, default=0.0) / (rings.at(best).strength + _NOTHING))


def _strength(row: Sequence[complex]) -> float:
    return sum(map(abs, row)) * _steadiness(row)


def _radius(
    rings: Sequence[float],
    waves: Sequence[Sequence[complex]],
    ways: Sequence[float],
    phase: Sequence[float],
) -> tuple[float, ...]:
    """How far out the ticks lie, all the way round: the middle of what has the right phase."""
    back = [cmath.exp(-1j * _wave(phase, way)) for way in ways]
    power = [[max(0.0, (z * b).real) ** 2 for z, b in zip(row, back, strict=True)]
             for row in waves]  # fmt: skip
    columns = list(zip(*power, strict=True))
    total = [sum(column) + _NOTHING for column in columns]
    radii = [sum(map(mul, column, rings)) / t for column, t in zip(columns, total, strict=True)]
    cap = sorted(total)[len(total) // 2]
    rows = [_basis(way) for way in ways]
    return _robust(rows, radii, [min(t, cap) for t in total], _OFF_RADIUS)


@lru_cache(maxsize=16)
def _circle(n: int, turns: int) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Sines and cosines of so many turns in n places."""
    ways = [math.tau * turns * i / n for i in range(n)]
    return tuple(map(math.sin, ways)), tuple(map(math.cos, ways))


@dataclass(frozen=True, slots=True)
class _Ring:
    """The pixels of a ring, and the waves of the ticks there."""

    radius: float
    row: list[int]
    waves: list[complex]
    strength: float


class _Rings:
    """The rings of an outline that lie in the picture, each made when it is first asked for."""

    def __init__(self, grey: Grey, oval: Oval, divisions: int) -> None:
        around = list(zip(*_circle(samples_of(divisions), 1), strict=True))
        self._grey, self._oval, self._divisions = grey, oval, divisions
        self._xs = [oval.a * sine - oval.b * cosine for sine, cosine in around]
        self._ys = [oval.b * sine - oval.c * cosine for sine, cosine in around]
        right, down = math.hypot(oval.a, oval.b), math.hypot(oval.b, oval.c)
        across = min(oval.x, grey.width - 1.0 - oval.x) / right
        most = min(across, min(oval.y, grey.height - 1.0 - oval.y) / down)
        self.count = sum(radius < most for radius in _RINGS)
        self._made: dict[int, _Ring] = {}

    def at(self, i: int) -> _Ring:
        """One of them."""
        if i not in self._made:
            radius, x, y = _RINGS[i], self._oval.x, self._oval.y
            pixels, width = self._grey.pixels, self._grey.width
            row = [pixels[int(y + radius * b) * width + int(x + radius * a)]
                   for a, b in zip(self._xs, self._ys, strict=True)]  # fmt: skip
            waves = _waves(row, self._divisions)
            self._made[i] = _Ring(radius, row, waves, _strength(waves))
        return self._made[i]

    def near(self, i: int, reach: int) -> range:
        """Those no farther from one than this."""
        return range(max(0, i - reach), min(self.count, i + reach + 1))

    def strongest(self, among: range) -> int:
        """The one with the strongest ticks, of these."""
        return max(among, key=lambda i: self.at(i).strength)


def _waves(row: Sequence[int], divisions: int) -> list[complex]:
    """The wave of the ticks in every window of a ring: its strength and its phase."""
    n = len(row)
    to_division = n // divisions
    size = _WINDOW * to_division
    sines, cosines = _circle(n, divisions)
    re = list(accumulate(map(mul, row, cosines), initial=0.0))
    im = list(accumulate(map(mul, row, sines), initial=0.0))
    # The last windows end in the first divisions.
    re += [re[-1] + part for part in re[1:size]]
    im += [im[-1] + part for part in im[1:size]]
    return [complex(re[i + size] - re[i], im[i] - im[i + size]) for i in range(0, n, to_division)]


def _steadiness(row: Sequence[complex]) -> float:
    """How alike the steps of the phase are from window to window: 1 for a wave, near 0 for none."""
    steps = [b * a.conjugate() for a, b in zip(row, [*row[1:], row[0]], strict=True)]
    return abs(sum(step / (abs(step) + 1e-9) for step in steps)) / len(steps)


def _basis(way: float) -> tuple[float, ...]:
    return 1.0, math.cos(way), math.sin(way), math.cos(2.0 * way), math.sin(2.0 * way)


def _wave(parts: Sequence[float], way: float) -> float:
    return math.fsum(map(mul, parts, _basis(way)))


def _least_squares(
    rows: Sequence[Sequence[float]], values: Sequence[float], weights: Sequence[float]
) -> tuple[float, ...]:
    """The parts that make the values of the rows; all zero where they can't be told."""
    n = len(rows[0])
    columns = list(zip(*rows, strict=True))
    weighted = [list(map(mul, column, weights)) for column in columns]
    matrix = [[sum(map(mul, weighted[i], columns[j])) for j in range(n)] for i in range(n)]
    found = solve_linear(matrix, [sum(map(mul, column, values)) for column in weighted])
    return (0.0,) * n if found is None else found


def _robust(
    rows: Sequence[Sequence[float]],
    values: Sequence[float],
    weights: Sequence[float],
    far: float,
) -> tuple[float, ...]:
    """Least squares, three times: what is farther off than ``far`` hardly counts."""
    parts = _least_squares(rows, values, weights)
    for _ in range(2):
        off = [v - sum(map(mul, parts, row)) for v, row in zip(values, rows, strict=True)]
        near = [w / (1.0 + (d / far) ** 4) for w, d in zip(weights, off, strict=True)]
        parts = _least_squares(rows, values, near)
    return parts


def _phase(whole: Sequence[complex], ways: Sequence[float]) -> tuple[tuple[float, ...], float]:
    """The phase of the ticks all the way round, as a mean and two harmonics, and its agreement.

    First from its steps, which can't be wrong by a whole turn (Kay, IEEE Trans. ASSP 37, 1989),
    then from the phase itself.
    """
    sizes = [abs(z) for z in whole]
    cap = sorted(sizes)[len(sizes) // 2] + _NOTHING
    sizes = [min(size, cap) + _NOTHING for size in sizes]
    step = ways[1] - ways[0]
    after = [*whole[1:], whole[0]]
    steps = [cmath.phase(b * a.conjugate()) for a, b in zip(whole, after, strict=True)]
    slopes = [_slope(way + step / 2.0, step) for way in ways]
    parts: tuple[float, ...] = (0.0, *_robust(slopes, steps, sizes, _OFF_STEP))
    rows = [_basis(way) for way in ways]
    agreement = 0.0
    for _ in range(4):
        left = [z * cmath.exp(-1j * sum(map(mul, parts, row)))
                for z, row in zip(whole, rows, strict=True)]  # fmt: skip
        units = [z / (abs(z) + _NOTHING) for z in left]
        turn = cmath.phase(sum(map(mul, units, sizes)))
        off = [cmath.phase(unit * cmath.exp(-1j * turn)) for unit in units]
        agreement = sum(map(mul, sizes, map(math.cos, off))) / sum(sizes)
        near = [w / (1.0 + (d / _OFF) ** 4) for w, d in zip(sizes, off, strict=True)]
        change = _least_squares(rows, off, near)
        parts = tuple(map(add, parts, (turn + change[0], *change[1:])))
    return parts, agreement


def _slope(way: float, step: float) -> tuple[float, ...]:
    """By how much each harmonic of ``_basis`` changes over a step."""
    one, two = step * math.sin(way), 2.0 * step * math.sin(2.0 * way)
    return -one, step * math.cos(way), -two, 2.0 * step * math.cos(2.0 * way)


def _projection(
    oval: Oval, phase: Sequence[float], radius: Sequence[float], divisions: int
) -> tuple[float, ...] | None:
    """The projection that takes the circle of the ticks to where they are, by least squares."""
    rows: list[list[float]] = []
    values: list[float] = []
    for i in range(24):
        way = math.tau * i / 24
        ring, on_face = _wave(radius, way), way + _wave(phase, way) / divisions
        x = ring * (oval.a * math.sin(way) - oval.b * math.cos(way))
        y = ring * (oval.b * math.sin(way) - oval.c * math.cos(way))
        u, v = math.sin(on_face), -math.cos(on_face)
        rows.append([u, v, 1.0, 0.0, 0.0, 0.0, -u * x, -v * x])
        rows.append([0.0, 0.0, 0.0, u, v, 1.0, -u * y, -v * y])
        values += [x, y]
    h = _least_squares(rows, values, [1.0] * 48)
    if not any(h):
        return None
    # Moved from the middle of the outline to where that is in the picture.
    return (h[0] + oval.x * h[6], h[1] + oval.x * h[7], h[2] + oval.x,
            h[3] + oval.y * h[6], h[4] + oval.y * h[7], h[5] + oval.y, h[6], h[7])  # fmt: skip
