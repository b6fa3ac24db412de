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
from sweepsheet.off_axis import OffAxis
from sweepsheet.region import Ellipse, ellipse95
from sweepsheet.sweep import Examined, examine
from sweepsheet.vector import Sym2
from sweepsheet.verdict import judge


@dataclass(frozen=True, slots=True)
class Bore(OffAxis):
    """What a bore sweep tells."""

    swept: Examined

    @property
    def ellipse(self) -> Ellipse:
        """The 95 % region of the centre."""
        return ellipse95(self.covariance)

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

    Assumes checked positions and, for the uncertainty, normal errors in the end result. It does not
    see a face that is out of square, a bracket that gives, or a dial that sticks. A bent crank
    flange does no harm: a dial that the crank carries turns about the main bearings, whatever the
    flange does.
    """
    swept = examine(corrected_bore(bore, indicator, crank), bore.sweeps, indicator)
    center = -swept.fitted.amplitude
    covariance = swept.doubt.covariance + vertical_doubt(indicator, crank)
    return Bore(center, covariance, judge(center, covariance, limit, confidence), swept)


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
