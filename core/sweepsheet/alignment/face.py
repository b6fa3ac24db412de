"""A face sweep, from readings to a slope that says how sure it is.

The rear face stands at ``z(a) = z0 + r g . u(a)`` (z rearward) at the swept radius r: the first
harmonic of the sweep over r is the slope ``g``, which points to the side that stands rearward. The
runout of that tilt is ``2 r |g|``. What the first harmonic leaves is warp. The two are never
mixed: half the TIR of a warped face is not its tilt.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.job.model import FaceSweeps, Indicator
from sweepsheet.maths.clock import direction_of
from sweepsheet.maths.normal import direction_half_width, offset_half_width
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.maths.verdict import NOT_JUDGED, Judged, judge
from sweepsheet.sweep.analysis import SweepAnalysis, examine
from sweepsheet.sweep.corrections import corrected_face


@dataclass(frozen=True, slots=True)
class Face:
    """What a face sweep tells.

    ``slope`` is a ratio; ``harmonic_covariance`` and ``runout_pm`` (a 95 % half width) are in small
    units at the swept radius. ``limit`` is the runout allowed at that radius. ``trusted`` is false
    where the end play of the crank may be in the readings: such a face is not judged.
    """

    slope: Vec2
    slope_covariance: Sym2
    runout: float
    runout_pm: float
    direction_pm_deg: float | None
    swept: SweepAnalysis
    limit: float | None
    trusted: bool
    judged: Judged

    @property
    def rearmost_deg(self) -> float:
        """The clock angle at which the face stands most rearward."""
        return direction_of(self.slope)

    @property
    def warp(self) -> float:
        """What the tilt does not explain, as a total indicator reading."""
        return self.swept.rest


def limit_at(runout: float | None, given_at: float | None, radius: float) -> float | None:
    """The runout allowed at a radius, from a limit given at another (``None``: at the same).

    A limit "per inch of radius" is one given at a radius of one inch. Runout grows with radius.

    >>> limit_at(1.0, 1.0, 12.0), limit_at(5.0, None, 3.0)
    (12.0, 5.0)
    """
    if runout is None or given_at is None:
        return runout
    return runout * radius / given_at


def measure_face(
    face: FaceSweeps,
    indicator: Indicator,
    small_per_long: float,
    limit: float | None,
    confidence: float,
) -> Face:
    """Correct, fit and judge the sweeps of one face; ``limit`` is for the swept radius.

    Assumes that the dial stays at its radius. An arm that sags lets an axial plunger slide along
    the face, which reads nothing on a flat one, and also turns the dial a little: that reads as a
    tilt from top to bottom, in the first order, and is not corrected, nor counted as doubt. The
    same set-up on a stiff bar, its plunger along the bar on a collar that turns with it, shows how
    much from top to bottom. Taken with one dial on a crank that is free to move endwise, the
    figures are worked out all the same, but nothing is judged by them: end play reads as tilt.
    """
    swept = examine(corrected_face(face, indicator), face.sweeps, indicator)
    harmonic, covariance = swept.fitted.amplitude, swept.uncertainty.covariance
    radius = face.radius * small_per_long
    trusted = face.opposite is not None or face.end_float == "held"
    allowed = None if limit is None else limit / 2.0
    return Face(
        slope=harmonic.scaled(1.0 / radius),
        slope_covariance=covariance.scaled(1.0 / radius**2),
        runout=2.0 * harmonic.length,
        runout_pm=2.0 * offset_half_width(harmonic, covariance),
        direction_pm_deg=direction_half_width(harmonic, covariance),
        swept=swept,
        limit=limit,
        trusted=trusted,
        judged=judge(harmonic, covariance, allowed, confidence) if trusted else NOT_JUDGED,
    )
