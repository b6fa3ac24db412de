"""How to turn the dowels for the next round: the best aim brings ``E w`` opposite to ``c0``.

``c0`` is where the bore lies on standard dowels, ``E w`` what the pair does (``response``).
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.maths.clock import direction_of, normalise, polar, turn_between
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.remedy.response import DowelResponse


@dataclass(frozen=True, slots=True)
class Trim:
    """How to turn the pair that is in place: by ``turn_deg`` (clockwise plus), to ``aim_deg``.

    ``move`` is what is then written on the dowels, ``center`` where the bore is then expected.
    """

    turn_deg: float
    aim_deg: float
    move: Vec2
    center: Vec2
    covariance: Sym2

    @property
    def expected_offset(self) -> float:
        """The offset expected after it."""
        return self.center.length


def trim_for(response: DowelResponse, offset: float, aim_deg: float) -> Trim:
    """The turn of a pair of this offset, now aimed at ``aim_deg``, that leaves least.

    >>> known = tuple(tuple(0.0 for _ in range(4)) for _ in range(4))
    >>> trim = trim_for(DowelResponse(Vec2(0.0, -7.5), 1.0, 0.0, known), 7.0, 350.0)
    >>> trim.turn_deg, trim.aim_deg, trim.expected_offset
    (10.0, 0.0, 0.5)
    """
    best = normalise(direction_of(-response.bare) - response.lag_deg)
    move = polar(best, offset)
    return Trim(
        turn_deg=turn_between(aim_deg, best),
        aim_deg=best,
        move=move,
        center=response.after(move),
        covariance=response.covariance_after(move),
    )
