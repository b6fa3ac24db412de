"""How far and which way something lies off the crank axis: what bore, pilot and runout share."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.maths.clock import direction_of
from sweepsheet.maths.normal import direction_half_width, offset_half_width
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.maths.verdict import Judged


@dataclass(frozen=True, slots=True)
class Eccentricity:
    """A centre relative to the crank axis, in small units, its covariance, and the judgement on it.

    >>> from sweepsheet.maths.verdict import NOT_JUDGED
    >>> off = Eccentricity(Vec2(3.0, 4.0), Sym2(0.25, 0.0, 0.25), NOT_JUDGED)
    >>> off.offset, off.tir, round(off.offset_pm, 4)
    (5.0, 10.0, 0.98)
    >>> round(off.direction_deg, 2), round(off.direction_pm_deg, 2)
    (36.87, 11.3)
    """

    center: Vec2
    covariance: Sym2
    judged: Judged

    @property
    def offset(self) -> float:
        """The distance from the crank axis."""
        return self.center.length

    @property
    def offset_pm(self) -> float:
        """The 95 % half width of the offset."""
        return offset_half_width(self.center, self.covariance)

    @property
    def tir(self) -> float:
        """The total indicator reading of the first harmonic: twice the offset."""
        return 2.0 * self.offset

    @property
    def direction_deg(self) -> float:
        """The clock angle toward which it is off."""
        return direction_of(self.center)

    @property
    def direction_pm_deg(self) -> float | None:
        """The 95 % half width of the direction.

        ``None`` where the 95 % ellipse reaches the crank axis, so that it is not known at all.
        """
        return direction_half_width(self.center, self.covariance)
