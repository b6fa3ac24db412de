"""Two dowels of different size or aim: what equal pairs can't reach.

An equal pair moves the bore by just one of the sizes in stock. Two dowels that differ can move it
by anything between, where the spacing of the holes allows it (``rigid``). For each two sizes in
stock, standard dowels included, the aims are sought that bring the bore nearest to the crank axis:
first without regard to the spacing, and where those do not fit it, on the edge of what fits.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from sweepsheet.job.model import Dowel, Job, Limits, Stock
from sweepsheet.maths.clock import direction_of
from sweepsheet.maths.vector import ZERO, Sym2, Vec2, outer
from sweepsheet.maths.verdict import Judged, judge
from sweepsheet.remedy.dowel_uncertainty import unseen_covariance
from sweepsheet.remedy.rigid import DowelLine, RigidMove
from sweepsheet.sweep.uncertainty import rectangular

MOST_PAIRS = 5
# Places tried before narrowing down: along the line of the holes, and round the clock.
_SCAN = 7
_AIMS = 24
_GOLDEN_STEPS = 16
_GOLDEN = (math.sqrt(5.0) - 1.0) / 2.0
# A lever shorter than this (over the spacing) moves the bore across by nothing to speak of.
_NO_LEVER = 1e-6


@dataclass(frozen=True, slots=True)
class Pair:
    """Two dowels, the first for the first hole, and what they are expected to do.

    ``center`` is where the bore is then expected, relative to the crank axis.
    """

    dowels: tuple[Dowel, Dowel]
    center: Vec2
    moved: RigidMove
    judged: Judged

    @property
    def expected_offset(self) -> float:
        """The offset expected after it."""
        return self.center.length


@dataclass(frozen=True, slots=True)
class _Shifts:
    """The shifts of the two holes, and what they leave: the distance from the target."""

    first: Vec2
    second: Vec2
    left: float


@dataclass(frozen=True, slots=True)
class _Search:
    """The search for one pair of sizes, in the frame of the dowel line (x along, y across).

    ``a`` and ``b`` are the place of the crank axis from the first hole, along and across, over the
    spacing; the move of the bore is ``((e1 + e2)/2 - b (n2 - n1), (1 - a) n1 + a n2)``.
    """

    target: Vec2
    one: float
    two: float
    clearance: float
    hair: float
    a: float
    b: float

    def left(self, e1: float, n1: float, e2: float, n2: float) -> float:
        """The distance from the target that two shifts leave, each along and across the line."""
        return math.hypot(
            (e1 + e2) / 2.0 - self.b * (n2 - n1) - self.target.x,
            (1.0 - self.a) * n1 + self.a * n2 - self.target.y,
        )

    def at_least(self) -> float:
        """What these sizes leave at least, whatever their aims.

        The move is ``L1 v1 + L2 v2``; each part has a length between the singular values of its L,
        times its size. Along the line both shift alike to within the clearance, so that the smaller
        dowel bounds that part.
        """
        least_one, most_one = _singular_values(self.b, 1.0 - self.a)
        least_two, most_two = _singular_values(-self.b, self.a)
        near, far = self.one * least_one, self.one * most_one
        other_near, other_far = self.two * least_two, self.two * most_two
        wanted = self.target.length
        along = min(self.one, self.two) + self.clearance / 2.0
        along += abs(self.b) * (self.one + self.two)
        return max(
            0.0,
            wanted - far - other_far,
            near - other_far - wanted,
            other_near - far - wanted,
            abs(self.target.x) - along - 1e-6,
        )

    def best(self) -> _Shifts | None:
        """The shifts that fit the spacing and leave least; ``None`` where none fit."""
        free = [s for s in self._free() if abs(s.first.x - s.second.x) <= self.clearance + 1e-9]
        best = min(free, key=lambda s: s.left, default=None)
        if best is not None and best.left < self.hair / 10.0:
            return best
        edges = [e for m in (-self.clearance, self.clearance) for e in self._edge(m)]
        return min([*free, *edges], key=lambda s: s.left, default=None)

    def _shifts(self, e1: float, n1: float, e2: float, n2: float) -> _Shifts:
        return _Shifts(Vec2(e1, n1), Vec2(e2, n2), self.left(e1, n1, e2, n2))

    def _free(self) -> Iterator[_Shifts]:
        """The least that two aims leave without regard to the spacing.

        For each aim of the first dowel the second is aimed so as to leave least, which is along
        what is still wanted of it; the aims of the first that leave least are narrowed down.
        """

        def left_at(angle: float) -> float:
            return self.left(*self._with_first(angle))

        step = 2.0 * math.pi / _AIMS if self.one else 0.0
        lefts = [left_at(i * step) for i in range(_AIMS if self.one else 1)]
        for i, left in enumerate(lefts):
            before, after = lefts[i - 1], lefts[(i + 1) % len(lefts)]
            if left <= before and left <= after:
                angle = _narrowed(left_at, (i - 1) * step, (i + 1) * step)
                yield self._shifts(*self._with_first(angle))

    def _with_first(self, angle: float) -> tuple[float, float, float, float]:
        """The first dowel aimed at an angle from the line, the second aimed to leave least.

        Both shifts, each along and across the line.
        """
        e1, n1 = self.one * math.cos(angle), self.one * math.sin(angle)
        e2 = n2 = 0.0
        if self.two:
            # What the second must do to the bore, and so, undoing the lever, by what shift.
            lack_x = self.target.x - e1 / 2.0 - self.b * n1
            lack_y = self.target.y - (1.0 - self.a) * n1
            across = lack_y / self.a if abs(self.a) > _NO_LEVER else lack_y
            along = 2.0 * (lack_x + self.b * across)
            length = math.hypot(along, across)
            if length > 0:
                e2, n2 = self.two * along / length, self.two * across / length
        return e1, n1, e2, n2

    def _edge(self, misfit: float) -> Iterator[_Shifts]:
        """The best shifts whose parts along the line differ by just ``misfit``."""
        half, one_squared, two_squared = misfit / 2.0, self.one**2, self.two**2
        low = max(-self.one - half, -self.two + half)
        high = min(self.one - half, self.two + half)
        if low > high:
            return
        step = (high - low) / (_SCAN - 1)
        scanned = [low + i * step for i in range(_SCAN)]
        a, b, x, y = self.a, self.b, self.target.x, self.target.y
        sqrt, hypot = math.sqrt, math.hypot
        for s1, s2 in ((1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)):

            def across(middle: float, s1: float = s1, s2: float = s2) -> tuple[float, float]:
                n1 = s1 * sqrt(max(0.0, one_squared - (middle + half) ** 2))
                return n1, s2 * sqrt(max(0.0, two_squared - (middle - half) ** 2))

            # What is done most often, and so written out: ``left`` of the two shifts.
            def left_at(middle: float, s1: float = s1, s2: float = s2) -> float:
                n1 = s1 * sqrt(max(0.0, one_squared - (middle + half) ** 2))
                n2 = s2 * sqrt(max(0.0, two_squared - (middle - half) ** 2))
                return hypot(middle - b * (n2 - n1) - x, (1.0 - a) * n1 + a * n2 - y)

            nearest = min(scanned, key=left_at)
            middle = _narrowed(left_at, max(low, nearest - step), min(high, nearest + step))
            n1, n2 = across(middle)
            yield self._shifts(middle + half, n1, middle - half, n2)


def _singular_values(lever: float, across: float) -> tuple[float, float]:
    """Those of ``[[1/2, lever], [0, across]]``, the smaller first.

    With the sum of squares ``s`` and the determinant ``d``: ``(s -+ sqrt(s^2 - 4 d^2)) / 2`` are
    their squares.
    """
    total = 0.25 + lever**2 + across**2
    root = math.sqrt(max(0.0, total**2 - across**2))
    largest = math.sqrt((total + root) / 2.0)
    return abs(across) / (2.0 * largest), largest


def _narrowed(left: Callable[[float], float], low: float, high: float) -> float:
    """Where ``left`` is least between two places, by golden section."""
    one, two = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
    left_one, left_two = left(one), left(two)
    for _ in range(_GOLDEN_STEPS):
        if left_one < left_two:
            high, two, left_two = two, one, left_one
            one = high - _GOLDEN * (high - low)
            left_one = left(one)
        else:
            low, one, left_one = one, two, left_two
            two = low + _GOLDEN * (high - low)
            left_two = left(two)
    return one if left_one < left_two else two


def pairs_for(
    bare: Vec2, covariance: Sym2, line: DowelLine, clearance: float, job: Job
) -> tuple[Pair, ...]:
    """The best pairs of unlike dowels, best first, at most five.

    ``bare`` is where the bore is on standard dowels, ``covariance`` its doubt together with that of
    the fit; ``clearance`` the most by which the two shifts may differ along the line of the holes.
    """
    target = Vec2(-bare.dot(line.along), -bare.dot(line.across))
    a = -line.first.dot(line.along) / line.spacing
    b = -line.first.dot(line.across) / line.spacing
    hair = job.units.hair
    sizes = sorted({0.0, *job.stock.dowel_offsets})
    searches = [_Search(target, one, two, clearance, hair, a, b) for one in sizes for two in sizes]
    unlike = _best_of(searches, hair)
    pairs = [_judged(s, bare, covariance, line, job.limits, job.stock) for s in unlike]
    pairs.sort(
        key=lambda p: (-round(p.judged.probability or 0.0, 3), round(p.expected_offset / hair))
    )
    return tuple(pairs)


def _best_of(searches: list[_Search], hair: float) -> list[_Shifts]:
    """The best shifts of two sizes that differ, best first, at most ``MOST_PAIRS``.

    Of two as good (to a ``hair``) the smaller are preferred. The sizes that may leave least are
    tried first, and none any more that can't be among the best.
    """
    order = sorted(
        ((round(search.at_least() / hair), search.one + search.two, i, search)
         for i, search in enumerate(searches)),
        key=lambda each: each[:3],
    )  # fmt: skip
    found: list[tuple[tuple[int, float, int], _Shifts]] = []
    for least, size, i, search in order:
        if len(found) >= MOST_PAIRS and found[MOST_PAIRS - 1][0][:2] < (least, size - 1e-6):
            break
        best = search.best()
        # Dowels that are alike are an option of their own.
        if best is not None and (best.first - best.second).length > 1e-6:
            both = best.first.length + best.second.length
            found.append(((round(best.left / hair), both, i), best))
            found.sort(key=lambda each: each[0])
    return [shifts for _, shifts in found[:MOST_PAIRS]]


def _judged(
    shifts: _Shifts, bare: Vec2, covariance: Sym2, line: DowelLine, limits: Limits, stock: Stock
) -> Pair:
    """The pair as dowels, with its chance of bringing the bore inside."""
    first, second = (
        line.along.scaled(v.x) + line.across.scaled(v.y) for v in (shifts.first, shifts.second)
    )
    moved = line.moved(first, second)
    center = bare + moved.move
    # Each dowel is aimed by itself and may miss its mark by itself, and none was seen at work.
    variance = rectangular(math.radians(stock.aim_setting_deg)) ** 2
    misses = (
        line.moved(Vec2(-first.y, first.x), ZERO).move,
        line.moved(ZERO, Vec2(-second.y, second.x)).move,
    )
    spread = covariance
    for miss in misses:
        spread = spread + outer(miss).scaled(variance) + unseen_covariance(miss)
    return Pair(
        dowels=(_dowel(first), _dowel(second)),
        center=center,
        moved=moved,
        judged=judge(center, spread, limits.bore_offset, limits.confidence),
    )


def _dowel(shift: Vec2) -> Dowel:
    """The dowel that makes a shift, its size freed of rounding so that it is one in stock."""
    size = round(shift.length, 9)
    return Dowel(size, direction_of(shift)) if size else Dowel(0.0, 0.0)
