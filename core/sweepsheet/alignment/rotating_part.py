"""Companion sweeps: pilot bore, crank flange and flywheel face, which turn with the crank.

The dial stands still on the block, and the part turns under it. A position is the place of the part
that is under the dial, by a clock marked on the part itself. Runout that turns with the crank is
not cured by moving the housing.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.job.model import Indicator, RotatingPart, RotatingPartKind
from sweepsheet.maths.eccentricity import Eccentricity
from sweepsheet.maths.verdict import judge
from sweepsheet.sweep.analysis import SweepAnalysis, examine
from sweepsheet.sweep.corrections import corrected_rotating_part


@dataclass(frozen=True, slots=True)
class Runout(Eccentricity):
    """What a companion sweep tells, in small units.

    For a bore or spigot ``center`` is that of the part relative to the crank axis, in the part's
    own clock; for a face it points to where the face stands most rearward. ``limit`` is a TIR.
    """

    kind: RotatingPartKind
    swept: SweepAnalysis
    limit: float | None


def measure_rotating_part(part: RotatingPart, indicator: Indicator, confidence: float) -> Runout:
    """Correct, fit and judge one companion sweep.

    The dial stands still and the part turns under it, so that sag and its turning of the dial are
    the same at every reading, and drop out. End play does not: a dial on a face reads all of it, as
    runout of that face, and nothing in the readings tells the two apart. The crank is pushed to its
    stop one way at every stop.
    """
    swept = examine(corrected_rotating_part(part, indicator), part.sweeps, indicator)
    harmonic, covariance = swept.fitted.amplitude, swept.uncertainty.covariance
    center = harmonic if part.is_face else -harmonic
    offset_limit = None if part.limit is None else part.limit / 2.0
    return Runout(
        center=center,
        covariance=covariance,
        judged=judge(center, covariance, offset_limit, confidence),
        kind=part.kind,
        swept=swept,
        limit=part.limit,
    )
