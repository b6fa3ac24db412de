"""What it is worth that a pair of dowels should move the housing by what is written on it.

A housing comes to rest somewhere in its clearance, dowels are set a little off their aim, and a
pair that was not seen at work may do a little more or less than it should: three covariances.
"""

from __future__ import annotations

import math

from sweepsheet.maths.vector import Sym2, Vec2, outer
from sweepsheet.sweep.checks import ROUNDING
from sweepsheet.sweep.uncertainty import rectangular

# What is believed of gain and lag before anything was seen: within about 8 % and 5 degrees,
# one standard deviation each. Common practice, no source.
PRIOR_SPREAD = 0.08
# The least variance one way, over that the other way: a spread thinner than this is a line.
_THIN = 1e-9


def play_covariance(clearance: float) -> Sym2:
    """The doubt of where a housing comes to rest on its dowels, from their clearance (diameter).

    Half the clearance either way, rectangular, along x and y.

    >>> round(play_covariance(1.0).xx, 5)
    0.08333
    """
    variance = rectangular(clearance / 2.0) ** 2
    return Sym2(variance, 0.0, variance)


def aim_covariance(move: Vec2, setting_deg: float) -> Sym2:
    """What dowels set off their aim by up to plus or minus ``setting_deg`` add, across the move.

    Both dowels are taken to miss alike, which is the worse case.

    >>> aim_covariance(Vec2(0.0, 7.0), 5.0).xx > 0, aim_covariance(Vec2(0.0, 7.0), 5.0).yy
    (True, 0.0)
    """
    return outer(Vec2(-move.y, move.x)).scaled(rectangular(math.radians(setting_deg)) ** 2)


def unseen_covariance(move: Vec2) -> Sym2:
    """What a pair that was not seen at work may do beside its move: ``PRIOR_SPREAD`` of it.

    Its gain acts along the move, its lag across, and both are believed alike.

    >>> round(unseen_covariance(Vec2(0.0, 10.0)).xx, 6)
    0.64
    """
    variance = PRIOR_SPREAD**2 * move.dot(move)
    return Sym2(variance, 0.0, variance)


def at_least(covariance: Sym2) -> Sym2:
    """A covariance that can be inverted, however good the dial is said to be.

    Neither nothing at all, nor nothing beside what it is the other way.

    >>> at_least(Sym2(0.0, 0.0, 4.0)).xx > 0.0
    True
    """
    floor = ROUNDING**2 + _THIN * (covariance.xx + covariance.yy)
    return covariance + Sym2(floor, 0.0, floor)
