"""A bore sweep, from readings to a centre that says how sure it is.

``c`` is the centre of the bore relative to the crank axis, seen from behind, in small units. A
dial on the crank that touches the bore inside reads ``m(a) = k - c . u(a)``: it is pushed in most
where the wall is nearest, opposite to where the bore lies. So ``c = -h``, the offset is half the
fitted TIR, and the housing must move toward the highest reading.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.checks import (
    Disagreement,
    Foreign,
    OutOfRound,
    PairSums,
    disagreement,
    foreign_reading,
    mean_readings,
    out_of_round,
    pair_sums,
)
from sweepsheet.clock import direction_of
from sweepsheet.corrections import contact_factor, corrected_bore
from sweepsheet.harmonic import Harmonic, fit
from sweepsheet.job import BoreSweeps, Crank, Indicator
from sweepsheet.noise import Doubt, doubt_of, rectangular, step_uncertainty
from sweepsheet.region import K_95_LINE, Ellipse, ellipse95, probability_inside
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
    fitted: Harmonic
    doubt: Doubt
    means: tuple[float | None, ...]
    ellipse: Ellipse
    offset_pm: float
    direction_pm_deg: float | None
    pairs: PairSums | None
    round_error: OutOfRound | None
    foreign: Foreign | None
    disagreement: Disagreement | None
    closing_error: float | None
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
    readings = corrected_bore(bore, indicator, crank)
    fitted = fit(readings)
    doubt = doubt_of(fitted, indicator, bore.sweeps.closing)
    center = -fitted.amplitude
    covariance = doubt.covariance + vertical_doubt(indicator, crank)
    means = mean_readings(readings, fitted)
    positions = readings.positions_deg
    closing = [c for c in bore.sweeps.closing if c is not None]
    probability = None if limit is None else probability_inside(center, covariance, limit)
    expected = math.hypot(
        contact_factor(indicator.contact_angle_deg) * indicator.repeatability,
        step_uncertainty(indicator.step),
    )
    return Bore(
        center=center,
        covariance=covariance,
        fitted=fitted,
        doubt=doubt,
        means=means,
        ellipse=ellipse95(covariance),
        offset_pm=offset_half_width(center, covariance),
        direction_pm_deg=direction_half_width(center, covariance),
        pairs=pair_sums(positions, means),
        round_error=out_of_round(positions, means),
        foreign=foreign_reading(positions, means, doubt.noise),
        disagreement=disagreement(fitted, expected),
        closing_error=max(closing, key=abs) if closing else None,
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


def offset_half_width(center: Vec2, covariance: Sym2) -> float:
    """The 95 % half width of the offset, along the direction of the centre.

    At the very centre, where no direction is better than another, along the worst one.
    """
    if center.length == 0.0:
        return K_95_LINE * math.sqrt(covariance.principal().major)
    return K_95_LINE * math.sqrt(covariance.along(center.scaled(1.0 / center.length)))


def direction_half_width(center: Vec2, covariance: Sym2) -> float | None:
    """The 95 % half width of the direction in degrees, or ``None`` where it is not known.

    From the standard deviation across the direction over the offset; not known where that
    spread reaches the crank axis.
    """
    if center.length == 0.0:
        return None
    across = Vec2(-center.y, center.x).scaled(1.0 / center.length)
    spread = K_95_LINE * math.sqrt(covariance.along(across))
    reach = offset_half_width(center, covariance)
    if max(spread, reach) >= center.length:
        return None
    return math.degrees(math.asin(spread / center.length))
