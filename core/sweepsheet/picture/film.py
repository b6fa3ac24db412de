"""The stops of a film: where a sweep on film stood still, and the best frame of each stop.

At a stop needle and view are both still, but for a hand that shakes and the noise of the camera.
Stops are told from the ways between them by how much less moves, counted in what moves at a stop.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from operator import add, mul, sub

from sweepsheet.maths.linear import solve_linear

# Frames that are looked at together: at five a second somewhat less than the shortest stop.
WINDOW = 7
# On both sides of a stop at least this many times as much moves as at it; as a power of ten.
_LEAST_RISE = 0.3
# A window belongs to a stop while no more moves than this many times the least; a power of ten.
_SAME = 0.15
# What rounding to whole shades of grey leaves, as a variance.
_ROUNDING = 1.0 / 12.0
# How many frames of a stop are offered to be read, the best one first.
_OFFERED = 3


@dataclass(frozen=True, slots=True)
class Stop:
    """A stop: its ``first`` and ``last`` frame, and its ``best`` ones, sharpest first."""

    first: int
    last: int
    best: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class _Frame:
    """A frame without its rim: brightness, its change to the right and down, its squares' sum."""

    parts: tuple[list[int], list[int], list[int]]
    square: int


def movements(frames: Sequence[bytes], side: int) -> list[float]:
    """How much moves in each window of seven frames, as a power of ten; frames are square.

    ``log10(mean |f - m - proj|^2 / var m)`` of the frames f and their mean m, where proj is what
    a brighter light and a small shift of the whole view make of m: the least-squares projection
    on ``1``, ``m`` and the two derivatives of m (Lucas and Kanade, IJCAI 1981). So a hand that
    shakes and an exposure that flickers hardly count, a needle that turns does.

    >>> still, lit = bytes(range(0, 250, 10)), bytes(range(1, 126, 5))
    >>> [each < -4.0 for each in movements([still, lit] * 4, 5)]
    [True, True]
    """
    seen = [_seen(frame, side) for frame in frames]
    found = []
    sums = [[0] * len(part) for part in seen[0].parts] if seen else []
    for i, frame in enumerate(seen):
        sums = [list(map(add, *pair)) for pair in zip(sums, frame.parts, strict=True)]
        if i >= WINDOW - 1:
            window = seen[i - WINDOW + 1 : i + 1]
            found.append(_movement(window, sums))
            sums = [list(map(sub, *pair)) for pair in zip(sums, window[0].parts, strict=True)]
    return found


def find_stops(moved: Sequence[float], sharp: Sequence[float]) -> list[Stop]:
    """The stops of a film, from its ``movements`` and the ``sharpness`` of its frames.

    A stop is a valley of the movements with a rise of 10^0.3 on both sides, but at the film's ends
    (its topological persistence: Edelsbrunner and others, Discrete Comput. Geom. 28, 2002). Its
    frames are those of the windows within 10^0.15 of the least; the sharpest three of that window
    are its best.

    >>> moved = [-4.0, -4.0, -2.0, -1.0, -2.0, -3.9, -4.0, -3.9]
    >>> [(stop.first, stop.last, stop.best) for stop in find_stops(moved, range(14))]
    [(0, 7, (5, 4, 3)), (5, 13, (11, 10, 9))]
    """
    return [_stop(moved, at, sharp) for at in _valleys(moved)]


def sharpness(frame: bytes, side: int) -> float:
    """How sharp a frame is: the squared change from pixel to pixel over the variance of all.

    >>> round(sharpness(bytes([0, 9, 0, 9] * 4), 4), 2), sharpness(bytes(16), 4)
    (3.75, 0.0)
    """
    change = [*map(sub, frame[1:], frame), *map(sub, frame[side:], frame)]
    total = sum(frame)
    variance = float(sum(map(mul, frame, frame))) - total * total / len(frame)
    return float(sum(map(mul, change, change))) / max(1.0, variance)


def _stop(moved: Sequence[float], at: int, sharp: Sequence[float]) -> Stop:
    """The stop about the window in which least moves."""
    low = high = at
    while low > 0 and moved[low - 1] <= moved[at] + _SAME:
        low -= 1
    while high + 1 < len(moved) and moved[high + 1] <= moved[at] + _SAME:
        high += 1
    first, last = low, high + WINDOW - 1
    # Of the window in which least moves; in its first and last frame it may have been moving yet.
    inner = range(at + 1, at + WINDOW - 1)
    return Stop(first, last, tuple(sorted(inner, key=sharp.__getitem__, reverse=True)[:_OFFERED]))


def _valleys(heights: Sequence[float]) -> list[int]:
    """Where the valleys are that are deep enough, but for the ends."""
    found: list[int] = []
    if not heights:
        return found
    low = high = 0
    falling = True
    for i, height in enumerate(heights):
        if falling:
            if height < heights[low]:
                low = i
            if height > heights[low] + _LEAST_RISE:
                found.append(low)
                falling, high = False, i
        else:
            if height > heights[high]:
                high = i
            if height < heights[high] - _LEAST_RISE:
                falling, low = True, i
    # The last one is seen to be one where it was come down to.
    return [*found, low] if falling and found else found


def _seen(frame: bytes, side: int) -> _Frame:
    rows = [frame[y * side : (y + 1) * side] for y in range(side)]
    plain: list[int] = []
    right: list[int] = []
    down: list[int] = []
    for above, row, below in zip(rows, rows[1:], rows[2:], strict=False):
        plain += row[1:-1]
        right += map(sub, row[2:], row)
        down += map(sub, below[1:-1], above[1:-1])
    return _Frame((plain, right, down), sum(map(mul, plain, plain)))


def _movement(window: Sequence[_Frame], sums: Sequence[list[int]]) -> float:
    n, count = len(sums[0]), len(window)
    whole = [sum(part) for part in sums]

    def product(one: list[int], other: list[int], of_one: int, of_other: int) -> float:
        return float(sum(map(mul, one, other))) - of_one * of_other / n

    gram = [[product(one, other, a, b) for other, b in zip(sums, whole, strict=True)]
            for one, a in zip(sums, whole, strict=True)]  # fmt: skip
    of_mean = list(gram[0])
    variance = of_mean[0] / count**2
    for k in range(len(gram)):  # what is flat tells no shift
        gram[k][k] += n * _ROUNDING
    left = -variance * count
    for frame in window:
        plain = frame.parts[0]
        total = sum(plain)
        left += frame.square - total * total / n
        along = [product(plain, part, total, a) - row / count
                 for part, a, row in zip(sums, whole, of_mean, strict=True)]  # fmt: skip
        left -= sum(map(mul, solve_linear(gram, along) or (), along))
    noise = max(_ROUNDING, left / count / n)
    return math.log10(noise / max(_ROUNDING, variance / n))
