"""Companion sweeps: pilot bore, crank flange and flywheel face, which turn with the crank.

The dial stands still on the block, and the part turns under it. A position is the place of the part
that is under the dial, by a clock marked on the part itself. Runout that turns with the crank is
not cured by moving the housing.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.clock import direction_of
from sweepsheet.corrections import corrected_companion
from sweepsheet.job import Companion, CompanionKind, Indicator
from sweepsheet.region import direction_half_width, offset_half_width, probability_inside
from sweepsheet.sweep import Examined, examine
from sweepsheet.vector import Vec2
from sweepsheet.verdict import Verdict, verdict_of


@dataclass(frozen=True, slots=True)
class Runout:
    """What a companion sweep tells, in small units.

    For a bore or spigot ``center`` is that of the part relative to the crank axis, in the part's
    own clock; for a face it points to where the face stands most rearward. ``limit`` is a TIR.
    """

    kind: CompanionKind
    center: Vec2
    offset_pm: float
    direction_pm_deg: float | None
    swept: Examined
    limit: float | None
    probability: float | None
    verdict: Verdict | None

    @property
    def offset(self) -> float:
        """Half the TIR of the first harmonic."""
        return self.center.length

    @property
    def tir(self) -> float:
        """The TIR of the first harmonic."""
        return 2.0 * self.offset

    @property
    def direction_deg(self) -> float:
        """The mark toward which the part is off, or where its face stands most rearward."""
        return direction_of(self.center)


def measure_companion(part: Companion, indicator: Indicator, confidence: float) -> Runout:
    """Correct, fit and judge one companion sweep. The dial does not turn, so nothing droops."""
    swept = examine(corrected_companion(part, indicator), part.sweeps, indicator)
    harmonic, covariance = swept.fitted.amplitude, swept.doubt.covariance
    center = harmonic if part.is_face else -harmonic
    probability = None
    if part.limit is not None:
        probability = probability_inside(center, covariance, part.limit / 2.0)
    return Runout(
        kind=part.kind,
        center=center,
        offset_pm=offset_half_width(center, covariance),
        direction_pm_deg=direction_half_width(center, covariance),
        swept=swept,
        limit=part.limit,
        probability=probability,
        verdict=None if probability is None else verdict_of(probability, confidence),
    )
