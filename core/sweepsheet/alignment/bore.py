"""A bore sweep, from readings to a centre that says how sure it is.

``c`` is the centre of the bore relative to the crank axis, seen from behind, in small units. A
dial on the crank that touches the bore inside reads ``m(a) = k - c . u(a)``: it is pushed in most
where the wall is nearest, opposite to where the bore lies. So ``c = -h``, the offset is half the
fitted TIR, and the housing must move toward the highest reading.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.job.model import BoreSweeps, Crank, Indicator
from sweepsheet.job.sag import SagTest
from sweepsheet.maths.clock import direction_of
from sweepsheet.maths.eccentricity import Eccentricity
from sweepsheet.maths.normal import Ellipse, ellipse95
from sweepsheet.maths.vector import ZERO_COVARIANCE, Sym2, Vec2
from sweepsheet.maths.verdict import judge
from sweepsheet.sweep.analysis import SweepAnalysis, examine
from sweepsheet.sweep.corrections import contact_factor, corrected_bore, vertical_shift
from sweepsheet.sweep.repeats import Scatter, weighed
from sweepsheet.sweep.uncertainty import rectangular, step_uncertainty


@dataclass(frozen=True, slots=True)
class Bore(Eccentricity):
    """What a bore sweep tells.

    ``noise`` is what of the covariance a new sweep would draw anew: that of the readings. ``fresh``
    is the part of it that scatter makes. ``fixed`` is what a plate that was swept leaves in doubt;
    the rest is common to all sweeps (``vertical_covariance``).
    """

    swept: SweepAnalysis
    noise: Sym2
    fresh: Sym2
    fixed: Sym2 = ZERO_COVARIANCE

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
    noise, fresh = swept.uncertainty.covariance, swept.uncertainty.fresh
    covariance = noise + vertical_covariance(indicator, crank)
    judged = judge(center, covariance, limit, confidence)
    return Bore(center, covariance, judged, swept, noise, fresh)


def needle_swing(bore: Bore, indicator: Indicator, crank: Crank) -> float:
    """By how much the needle should swing in a whole turn, in small units: a check by eye.

    The fitted wave h as the dial shows it, with sag and lift s and the contact angle b put back in:
    ``2 |h - (0, s/2)| / cos b``. It is the TIR only where nothing was taken out.
    """
    shown = bore.swept.fitted.amplitude - Vec2(0.0, vertical_shift(indicator, crank) / 2.0)
    return 2.0 * shown.length / contact_factor(indicator.contact_angle_deg)


def vertical_covariance(indicator: Indicator, crank: Crank) -> Sym2:
    """The doubt that sag and crank lift leave in the height of the bore.

    Both shift the centre by half their total. Sag that was not measured is anything from nothing up
    to the allowance, rectangular about the middle that was taken out: half width ``allowance/2``;
    so is sag that was measured at another reach, over what it may be there. A sag test is the
    difference of two readings, each to one step, and its mean of n tries scatters by ``s/sqrt(n)``:
    s from the tries, weighed with what the dial is said to scatter. What a crank
    does in its clearance while it runs is not known: from nothing to all of the lift, of which half
    was taken out, so that the centre is in doubt by plus or minus half the lift. A crank that
    stands on end has neither.

    >>> from sweepsheet.job.read import read_job
    >>> rounds = [{"bore": {"sweeps": [[0, -5, -10, -5]]}}]
    >>> job = {"format": "sweepsheet-job", "version": 1, "rounds": rounds}
    >>> free = read_job(job | {"indicator": {"sag_allowance": 6}})
    >>> round(vertical_covariance(free.indicator, free.crank).yy, 9)
    0.75
    """
    if crank.axis == "vertical":
        return ZERO_COVARIANCE
    difference = 2.0 * step_uncertainty(indicator.step) ** 2
    low, high = indicator.sag_range
    sag = rectangular((high - low) / 2.0) ** 2
    if indicator.sag is not None:
        # The middle that is taken out grows with what the test showed.
        grown = (low + high) / 2.0 / indicator.sag.mean if indicator.sag.mean > 0 else 1.0
        sag += grown**2 * (difference + _scatter(indicator.sag, indicator.repeatability))
    lift = difference + rectangular(crank.lift) ** 2 if crank.lift > 0 else 0.0
    return Sym2(0.0, 0.0, (sag + lift) / 4.0)


def _scatter(test: SagTest, repeatability: float) -> float:
    """The variance of the mean of a sag test; each of its tries is the difference of two readings.

    As with repeated sweeps: tries that scatter more than the dial should count as they are, and
    tries that agree by chance do not make it perfect.
    """
    observed = Scatter(test.deviation**2, test.tries - 1) if test.tries > 1 else None
    return weighed(observed, math.sqrt(2.0) * repeatability) / test.tries
