"""What the latest dowels did, held against what they should have done.

What is wrong with hands and eyes shows in the way the bore went: opposite to the aim where the
dowels were aimed at the other side or the dial's sign is wrong, and its mirror image where left was
taken for right.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.maths.clock import direction_of
from sweepsheet.maths.normal import K_95_LINE, K_95_PLANE
from sweepsheet.maths.vector import ZERO_COVARIANCE, Sym2, Vec2
from sweepsheet.remedy.response import RoundObservation

# An aim this near 12 or 6 (sine of 30 degrees) looks much the same with left and right swapped: a
# dowel that turned while it was fitted would do it, too.
_WELL_OFF = 0.5


@dataclass(frozen=True, slots=True)
class ObservedMove:
    """What the dowels of the latest round did, against standard dowels, and what they should have.

    ``size_pm`` and ``direction_pm_deg`` are 95 % half widths, the latter ``None`` where the move
    is lost in the noise. ``told`` is the move that they should have made. ``agrees`` tells whether
    noise explains the difference; ``opposite`` whether the bore went, beyond noise, the other way;
    ``mirrored`` whether it went, beyond noise, as if 3 and 9 o'clock were swapped.
    """

    size: float
    size_pm: float
    direction_deg: float
    direction_pm_deg: float | None
    told: Vec2
    agrees: bool
    opposite: bool
    mirrored: bool

    @property
    def contradicts(self) -> bool:
        """Whether the round says that aim or readings are wrong, and so nothing of the dowels."""
        return self.opposite or self.mirrored


def observed_move_of(rounds: Sequence[RoundObservation]) -> ObservedMove | None:
    """What the latest dowels did; ``None`` before the bore was swept on standard dowels too.

    The move is the bore now less the mean of the bore on standard dowels, weighted by what each
    sweep is worth. It agrees with the nominal move where it lies in the 95 % region about it;
    it is opposite where its part against the nominal move is over half of that and beyond noise.
    """
    latest = rounds[-1]
    standard = [seen for seen in rounds if seen.standard]
    if latest.standard or not standard or latest.move.is_zero:
        return None
    weights = [seen.covariance.inverse() for seen in standard]
    total = ZERO_COVARIANCE
    moment = Vec2(0.0, 0.0)
    for seen, weight in zip(standard, weights, strict=True):
        total = total + weight
        moment = moment + weight.times(seen.center)
    before = total.inverse()
    moved = latest.center - before.times(moment)
    spread = latest.covariance + before
    along = moved.unit()
    across = Vec2(-along.y, along.x)
    sideways = K_95_LINE * math.sqrt(spread.along(across))
    miss = moved - latest.move
    way = latest.move.unit()
    return ObservedMove(
        size=moved.length,
        size_pm=K_95_LINE * math.sqrt(spread.along(along)),
        direction_deg=direction_of(moved),
        direction_pm_deg=(
            math.degrees(math.asin(sideways / moved.length)) if sideways < moved.length else None
        ),
        told=latest.move,
        agrees=spread.inverse().along(miss) <= K_95_PLANE**2,
        opposite=-moved.dot(way)
        > max(latest.move.length / 2.0, K_95_PLANE * math.sqrt(spread.along(way))),
        mirrored=mirrored(moved, latest.move, spread),
    )


def mirrored(moved: Vec2, told: Vec2, spread: Sym2) -> bool:
    """Whether a move is the mirror image of what was told, left for right, and not that itself.

    So it is where aim or readings are taken from the front of the engine. With ``Q(v) = v' S^-1 v``
    of the spread S, the mirror image must lie in the 95 % region (``Q < K^2``), the move itself
    beyond it by as much again (``Q > 4 K^2``), and the aim at least 30 degrees off 12 and 6.

    >>> fine = Sym2(0.1, 0.0, 0.1)
    >>> mirrored(Vec2(-4.0, 5.5), Vec2(4.0, 5.5), fine), mirrored(Vec2(4, 5), Vec2(4, 5.5), fine)
    (True, False)
    """
    if abs(told.x) < _WELL_OFF * told.length:
        return False
    weight = spread.inverse()
    image = Vec2(-told.x, told.y)
    return (
        weight.along(moved - image) <= K_95_PLANE**2
        and weight.along(moved - told) > 4.0 * K_95_PLANE**2
    )
