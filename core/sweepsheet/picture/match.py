"""By how many divisions the face of one photo is turned against that of another, by its print.

Whatever is printed serves: numbers, words, long ticks, the rim of the small dial. So a dial of any
make can be read, and one that has no print but even ticks can't.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from operator import mul

from sweepsheet.picture.needle import RINGS, Needle, marks_of

# Every second ring is compared.
PRINTS = len(RINGS[::2])
# What the needle covers is left out, to this far off its line; and its tail, out to this ring.
_COVERED, _TAIL = 0.06, 0.42
# Marks above the strongest twelfth of a ring count as these; fainter ones than 12 are noise.
_STRONGEST, _FAINTEST = 12, 12


@dataclass(frozen=True, slots=True)
class Match:
    """How one face is turned against another, clockwise, in divisions.

    ``likeness``: 1 where both are the same; ``lead``: by how much more they are alike than when
    turned by any other number of divisions.
    """

    turned: int
    likeness: float
    lead: float


def print_of(rings: Sequence[Sequence[int]], needle: Needle) -> tuple[bytes, ...]:
    """The print of a face, ring by ring: 0 for paper, 255 for print, without the needle.

    Each ring has a contrast of its own, so that light and shade do not count.

    >>> rings = [[200] * 100 for _ in RINGS]
    >>> rings[2][40] = 60
    >>> prints = print_of(rings, Needle(0.0, 0.01, 0.0, 1.0, 1.0, 1))
    >>> len(prints), prints[1][40], prints[1][60]
    (9, 255, 0)
    """
    n = len(rings[0])
    found = []
    for radius, ring in zip(RINGS[::2], rings[::2], strict=True):
        marks = marks_of(ring, radius, needle.sign)
        cap = max(_FAINTEST, sorted(marks)[-n // _STRONGEST])
        row = [0 if m <= 0 else 255 if m >= cap else m * 255 // cap for m in marks]
        mean, half = round(sum(row) / n), round(_COVERED / radius * n / math.tau)
        for side in (1.0, -1.0) if radius < _TAIL else (1.0,):
            way = needle.angle + side * needle.beside / radius + (math.pi if side < 0.0 else 0.0)
            middle = round(way * n / math.tau)
            for i in range(middle - half, middle + half + 1):
                row[i % n] = mean
        found.append(bytes(row))
    return tuple(found)


def correlation(one: bytes, other: bytes) -> list[int]:
    """``c[k] = sum over i of one[i + k] other[i]``, round and round, for every k.

    The sums are the digits of a product of two long whole numbers, which Python multiplies fast
    (Kronecker's substitution: von zur Gathen and Gerhard, Modern Computer Algebra, 8.4); 255^2 n
    stays below 2^32.

    >>> correlation(bytes([0, 5, 1]), bytes([5, 1, 0]))
    [5, 26, 5]
    """
    n = len(one)
    spread, reverse = bytearray(4 * n), bytearray(4 * n)
    spread[::4], reverse[::4] = one, other[::-1]
    product = int.from_bytes(spread, "little") * int.from_bytes(reverse, "little")
    sums = memoryview(product.to_bytes(8 * n, "little")).cast("I")
    # Digit n - 1 + k holds what has a shift of k; k - 1 what came round once.
    return [sums[n - 1 + k] + (sums[k - 1] if k else 0) for k in range(n)]


def match_prints(first: Sequence[bytes], now: Sequence[bytes], divisions: int) -> Match:
    """By how many divisions the second face is turned against the first.

    For every number of divisions the normalized cross-correlation of both, about each ring's
    mean (Lewis, Vision Interface, 1995); the largest counts.

    >>> first = [bytes([0, 0, 90, 0, 0, 0, 0, 0, 40, 0]), bytes([0, 0, 0, 0, 70, 0, 0, 0, 0, 0])]
    >>> now = [ring[-4:] + ring[:-4] for ring in first]
    >>> found = match_prints(first, now, 5)
    >>> found.turned, round(found.likeness, 6), found.lead > 0.5
    (2, 1.0, True)
    """
    n = len(first[0])
    total = [0.0] * divisions
    first_square = now_square = 0.0
    for one, other in zip(first, now, strict=True):
        a, b = sum(one), sum(other)
        first_square += sum(map(mul, one, one)) - a * a / n
        now_square += sum(map(mul, other, other)) - b * b / n
        sums = correlation(other, one)[:: n // divisions]
        total = [t + c - a * b / n for t, c in zip(total, sums, strict=True)]
    # Nothing printed on either is like nothing.
    size = math.sqrt(first_square * now_square) or 1.0
    best = max(total)
    at = total.index(best)
    rest = max(value for i, value in enumerate(total) if i != at)
    return Match(at, best / size, (best - rest) / size)
