"""The needle: a straight mark, darker or lighter than the face, from near the middle to the ticks.

It lies above the face, so in a photo taken aslant it passes beside the middle. What counts is
which way it points, and not where its tip is.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from operator import add, sub

from sweepsheet.maths.median import median
from sweepsheet.picture.outline import Grey
from sweepsheet.picture.straight import fit_straight
from sweepsheet.picture.ticks import Lie, samples_of

# Rings of the face that are looked at, in radii of the circle of the ticks; and between which of
# them the needle is looked for: outside hub and tail, inside the ticks.
RINGS = tuple(0.24 + 0.04 * i for i in range(17))
_FIRST, _LAST = 3, 14
# To both sides of the needle, this far off, lies the face.
_ASIDE = 0.07
# By how much the needle's line may pass beside the middle.
_BESIDE = (0.0, -0.06, -0.03, 0.03, 0.06)
# The places along the needle at which it is measured, and those across it.
_ALONG = tuple(0.2 + 0.0125 * i for i in range(49))
_ACROSS = 0.008
_REACH = 10
# What is darker by less than this share of the needle is a shadow, or the face.
_SHADOW = 0.5
# Of a needle at least this many places are wanted; and its line stays this near to the one that
# was voted for. A mark fainter than this is noise.
_FEWEST, _STRAYED, _FAINTEST = 12, 0.05, 8


@dataclass(frozen=True, slots=True)
class Needle:
    """Where the needle points: ``angle`` clockwise from the top of the face, in radians.

    ``sigma``: its standard uncertainty; ``beside``: by how much its line passes the middle, in
    radii; ``seen``: the share of its length that can be seen; ``lead``: by how much more that is
    than of any other line; ``sign``: 1 where it is darker than the face, -1 where it is lighter.
    """

    angle: float
    sigma: float
    beside: float
    seen: float
    lead: float
    sign: int


def unrolled(grey: Grey, lie: Lie, divisions: int) -> list[list[int]]:
    """The rings of the face, each clockwise from the top, as if seen from straight above.

    Polar unwrapping: ring r at angle a is the pixel at the projection of ``(r sin a, -r cos a)``.

    >>> whole = Lie((10.0, 0.0, 12.0, 0.0, 10.0, 12.0, 0.0, 0.0), 1.0)
    >>> half_dark = Grey(bytes(9 if i % 24 >= 12 else 1 for i in range(24 * 24)), 24, 24)
    >>> rings = unrolled(half_dark, whole, 40)
    >>> len(rings), len(rings[0]), rings[8][90], rings[8][270]
    (17, 360, 9, 1)
    """
    n = samples_of(divisions)
    h0, h1, h2, h3, h4, h5, h6, h7 = lie.h
    ends = [(h0 * u + h1 * v, h3 * u + h4 * v, h6 * u + h7 * v)
            for u, v in ((math.sin(w), -math.cos(w))
                         for w in (math.tau * i / n for i in range(n)))]  # fmt: skip
    pixels, width = grey.pixels, grey.width
    return [
        [pixels[int((h5 + r * y) * near) * width + int((h2 + r * x) * near)]
         for x, y, w in ends for near in (1.0 / (1.0 + r * w),)]
        for r in RINGS
    ]  # fmt: skip


def marks_of(ring: Sequence[int], radius: float, sign: int) -> list[int]:
    """How much darker (``sign`` 1) or lighter (-1) each place of a ring is than both its sides.

    >>> ring = [9] * 100
    >>> ring[40] = 2
    >>> marks = marks_of(ring, 0.5, 1)
    >>> marks[40], max(marks[:40]), max(marks_of(ring, 0.5, -1))
    (7, 0, 0)
    """
    k = max(1, round(_ASIDE / radius * len(ring) / math.tau))
    before, after = [*ring[-k:], *ring[:-k]], [*ring[k:], *ring[:k]]
    if sign > 0:
        return list(map(sub, map(min, before, after), ring))
    return list(map(sub, ring, map(max, before, after)))


def find_needle(
    grey: Grey, lie: Lie, rings: Sequence[Sequence[int]], sigma_beside: float
) -> Needle | None:
    """The straightest, longest mark of the face, or ``None`` where none can be measured.

    First by a vote of the rings for every direction and a few distances from the middle (Duda and
    Hart, Communications of the ACM 15, 1972), then by a line through its middle at many places.
    ``sigma_beside``: the standard deviation of its distance from the middle, in radii.
    """
    both = [_Votes(rings, sign) for sign in (1, -1)]
    best = max(both, key=lambda votes: votes.cap * max(votes.counted(0.0)))
    counts = {each: best.counted(each) for each in _BESIDE}
    beside = max(_BESIDE, key=lambda each: max(counts[each]))
    total = counts[beside]
    n, most = len(total), max(total)
    at = total.index(most)
    rest = max(total[(at + i) % n] for i in range(n // 40, n - n // 40))
    full = best.cap * (_LAST - _FIRST)
    line = _measured(grey, lie, (math.tau * at / n, beside), best.sign, sigma_beside)
    if line is None:
        return None
    angle, beside, sigma = line
    return Needle(angle, sigma, beside, most / full, (most - rest) / full, best.sign)


class _Votes:
    """The votes of the rings for each direction: every ring has the same say."""

    def __init__(self, rings: Sequence[Sequence[int]], sign: int) -> None:
        pairs = list(zip(RINGS, rings, strict=True))[_FIRST:_LAST]
        marks = [marks_of(ring, radius, sign) for radius, ring in pairs]
        self.sign = sign
        self.cap = cap = max(_FAINTEST, round(median(map(max, marks))) // 3)
        self._rows = [[0 if m < 0 else min(cap, m) for m in row] for row in marks]

    def counted(self, beside: float) -> list[int]:
        """The sum for every direction, of lines that pass the middle at a distance."""
        n = len(self._rows[0])
        total = [0] * n
        for radius, row in zip(RINGS[_FIRST:_LAST], self._rows, strict=True):
            k = round(beside / radius * n / math.tau) % n
            total = list(map(add, total, row[k:] + row[:k]))
        return total


def _measured(
    grey: Grey, lie: Lie, rough: tuple[float, float], sign: int, sigma_beside: float
) -> tuple[float, float, float] | None:
    """Direction, distance from the middle and standard uncertainty of a line known roughly.

    First short of the numbers, which may touch it; then with them, at every second place and at
    all, each time from the last line.
    """
    (angle, beside), sigma = rough, 0.0
    for most, every in ((0.66, 1), (0.8, 2), (0.8, 1)):
        places = [along for along in _ALONG[::every] if along < most]
        raised = [_raised(_section(grey, lie, angle, beside, along), sign) for along in places]
        strong = median(map(max, raised))
        if strong < _FAINTEST:
            return None
        spots = [(along, spot) for along, profile in zip(places, raised, strict=True)
                 if (spot := _spot(profile, strong)) is not None]  # fmt: skip
        if len(spots) * every < _FEWEST:
            return None
        # What is much wider than the rest has something else printed against it.
        usual = median(width for _, (_, width) in spots)
        points = [(along, beside + _ACROSS * middle) for along, (middle, width) in spots
                  if width <= 1.5 * usual + 1.0]  # fmt: skip
        beside, slope, sigma = fit_straight(points, sigma_beside)
        angle += math.atan(slope)
    start, near = rough
    if any(abs(along * (angle - start) + beside - near) > _STRAYED for along in (0.36, 0.76)):
        return None
    return angle, beside, sigma


def _section(grey: Grey, lie: Lie, angle: float, beside: float, along: float) -> list[float]:
    """Brightness across the needle, between pixels by their four neighbors."""
    h0, h1, h2, h3, h4, h5, h6, h7 = lie.h
    sine, cosine = math.sin(angle), math.cos(angle)
    u, v = along * sine, -along * cosine
    # Across the needle each of these changes evenly.
    x0, x1 = h0 * u + h1 * v + h2, h0 * cosine + h1 * sine
    y0, y1 = h3 * u + h4 * v + h5, h3 * cosine + h4 * sine
    w0, w1 = h6 * u + h7 * v + 1.0, h6 * cosine + h7 * sine
    pixels, width = grey.pixels, grey.width
    values = []
    for i in range(-_REACH, _REACH + 1):
        off = beside + _ACROSS * i
        w = w0 + off * w1
        # Pixel (0, 0) has its middle at (0.5, 0.5).
        x, y = (x0 + off * x1) / w - 0.5, (y0 + off * y1) / w - 0.5
        i0, j0 = int(x), int(y)
        p, q = x - i0, y - j0
        k = j0 * width + i0
        top = pixels[k] + p * (pixels[k + 1] - pixels[k])
        low = pixels[k + width] + p * (pixels[k + width + 1] - pixels[k + width])
        values.append(top + q * (low - top))
    return values


def _raised(values: Sequence[float], sign: int) -> list[float]:
    """By how much the values of a section stand out over both its ends."""
    ends = sum(values[:3]) / 3.0, sum(values[-3:]) / 3.0
    if sign > 0:
        level = min(ends)
        return [level - value for value in values]
    level = max(ends)
    return [value - level for value in values]


def _spot(profile: Sequence[float], strong: float) -> tuple[float, int] | None:
    """The middle and the width of the mark nearest to the middle of a section, or ``None``."""
    floor = strong * _SHADOW
    high = max(range(_REACH // 2, len(profile) - _REACH // 2), key=profile.__getitem__)
    if profile[high] < floor * 1.2:
        return None
    low = high
    while low > 0 and profile[low - 1] > floor:
        low -= 1
    end = high + 1
    while end < len(profile) and profile[end] > floor:
        end += 1
    if low == 0 or end == len(profile):
        return None
    weights = [profile[i] - floor for i in range(low, end)]
    moment = sum(i * weight for i, weight in enumerate(weights))
    return low + moment / sum(weights) - _REACH, end - low
