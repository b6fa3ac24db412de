"""A bore sweep, from readings to a centre that says how sure it is.

``c`` is the centre of the bore relative to the crank axis, seen from behind, in small units. A
dial on the crank that touches the bore inside reads ``m(a) = k - c . u(a)``: it is pushed in most
where the wall is nearest, opposite to where the bore lies. So ``c = -h``, the offset is half the
fitted TIR, and the housing must move toward the highest reading.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.clock import direction_of
from sweepsheet.corrections import corrected_bore
from sweepsheet.job import BoreSweeps, Crank, Indicator
from sweepsheet.noise import rectangular, step_uncertainty
from sweepsheet.region import (
    Ellipse,
    direction_half_width,
    ellipse95,
    offset_half_width,
    probability_inside,
)
from sweepsheet.sweep import Examined, examine
from sweepsheet.vector import Sym2, Vec2
from sweepsheet.verdict import Verdict, verdict_of


@dataclass(frozen=True, slots=True)
class Bore:
    """What a bore sweep tells.

    ``offset_pm`` and ``direction_pm_deg`` are 95 % half widths; the latter is ``None`` where the
    95 % ellipse reaches the crank axis, so that the direction is not known at all. ``probability``
    and ``verdict`` are ``None`` where there is no limit.
    """

    center: Vec2
    covariance: Sym2
    swept: Examined
    ellipse: Ellipse
    offset_pm: float
    direction_pm_deg: float | None
    probability: float | None
    verdict: Verdict | None

    @property
    def offset(self) -> float:
        """The distance of the bore centre from the crank axis."""
        return self.center.length

    @property
    def tir(self) -> float:
        """The total indicator reading of a true dial: twice the offset."""
        return 2.0 * self.offset

    @property
    def direction_deg(self) -> float:
        """The clock angle toward which the bore is off."""
        return direction_of(self.center)

    @property
    def move_deg(self) -> float:
        """The clock angle toward which the housing must move."""
        return direction_of(-self.center)


def measure_bore(
    bore: BoreSweeps,
    indicator: Indicator,
    crank: Crank,
    limit: float | None,
    confidence: float,
) -> Bore:
    """Correct, fit and judge the sweeps of one bore.

    Assumes checked positions and, for the uncertainty, normal errors in the end result. It does
    not see a face that is out of square, a crank with a bent flange, or a dial that sticks.
    """
    swept = examine(corrected_bore(bore, indicator, crank), bore.sweeps, indicator)
    center = -swept.fitted.amplitude
    covariance = swept.doubt.covariance + vertical_doubt(indicator, crank)
    probability = None if limit is None else probability_inside(center, covariance, limit)
    return Bore(
        center=center,
        covariance=covariance,
        swept=swept,
        ellipse=ellipse95(covariance),
        offset_pm=offset_half_width(center, covariance),
        direction_pm_deg=direction_half_width(center, covariance),
        probability=probability,
        verdict=None if probability is None else verdict_of(probability, confidence),
    )


def vertical_doubt(indicator: Indicator, crank: Crank) -> Sym2:
    """The doubt that droop and crank lift leave in the height of the bore.

    Both shift the centre by half their total. Droop that was not measured may be anything up to
    the allowance either way (rectangular); a measured one, like a measured lift, is the
    difference of two dial readings, each to one step. A crank that stands on end has neither.
    """
    if crank.axis == "vertical":
        return Sym2(0.0, 0.0, 0.0)
    difference = math.sqrt(2.0) * step_uncertainty(indicator.step)
    droop = rectangular(indicator.sag_allowance) if indicator.sag is None else difference
    lift = difference if crank.lift > 0 else 0.0
    return Sym2(0.0, 0.0, (droop**2 + lift**2) / 4.0)
