"""One kind of sweep examined: its harmonic, what that is worth, and whether it can be believed.

Bore, face and companion sweeps are all fitted and checked in this way; what the harmonic then
means is theirs to say.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.job.model import Indicator, Sweeps
from sweepsheet.maths.normal import K_99_LINE
from sweepsheet.maths.units import UnitSystem
from sweepsheet.sweep.checks import (
    ROUNDING,
    Disagreement,
    Outlier,
    OutOfRound,
    PairSums,
    disagreement,
    foreign_reading,
    mean_readings,
    out_of_round,
    pair_sums,
)
from sweepsheet.sweep.corrections import CorrectedReadings, contact_factor
from sweepsheet.sweep.harmonic import Harmonic, fit
from sweepsheet.sweep.uncertainty import Uncertainty, step_uncertainty, uncertainty_of

# A dial that comes back more than this many steps off makes its sweep unreliable, beyond what the
# setting of the crank explains: far off, a degree or two at the mark is a thou.
CLOSING_STEPS = 2.0
# Readings that all lie within this many steps of nothing look like inches typed as thou.
_TINY_STEPS = 0.2


@dataclass(frozen=True, slots=True)
class SweepAnalysis:
    """A fitted sweep with its doubt and its checks.

    ``means`` are the corrected readings at each position, freed of each sweep's zero.
    ``closing_error`` is the largest return to zero over the sweeps, ``None`` if none was taken;
    ``closing_limit`` how far off it may be.
    ``unreliable`` tells whether a reading does not belong or the dial did not come back: nothing
    is to be done by such a sweep before it was taken again.
    """

    fitted: Harmonic
    uncertainty: Uncertainty
    means: tuple[float | None, ...]
    pairs: PairSums | None
    second: OutOfRound | None
    foreign: Outlier | None
    disagreement: Disagreement | None
    closing_error: float | None
    closing_limit: float
    unreliable: bool

    @property
    def total_reading(self) -> float:
        """The largest mean reading less the smallest: the TIR of the dial, all harmonics in it."""
        known = [m for m in self.means if m is not None]
        return max(known) - min(known)

    @property
    def pairs_differ(self) -> bool:
        """Whether four readings can't all be right, beyond noise (99 %), or the bore is not round.

        Four positions can't tell which.
        """
        if self.foreign is not None or self.second is not None or self.pairs is None:
            return False
        return abs(self.pairs.difference) > K_99_LINE * 2.0 * self.uncertainty.noise + ROUNDING

    @property
    def warped(self) -> bool:
        """Whether more than noise (99 %) is left beside the first harmonic.

        The residuals of n positions have n - 3 degrees of freedom; their span is at most twice
        their root sum of squares, and that is how it is held against noise.
        """
        dof = self.fitted.dof
        if self.foreign is not None or dof == 0:
            return False
        squares = sum(r * r for r in self.fitted.position_residuals() if r is not None)
        return math.sqrt(squares / dof) > K_99_LINE * self.uncertainty.noise + ROUNDING

    @property
    def rest(self) -> float:
        """The largest mean residual less the smallest: what the first harmonic leaves."""
        known = [r for r in self.fitted.position_residuals() if r is not None]
        return max(known) - min(known)


def examine(readings: CorrectedReadings, sweeps: Sweeps, indicator: Indicator) -> SweepAnalysis:
    """Fit and check corrected readings of these sweeps."""
    fitted = fit(readings)
    uncertainty = uncertainty_of(fitted, indicator, sweeps.closing)
    means = mean_readings(readings, fitted)
    positions = readings.positions_deg
    closing = [c for c in sweeps.closing if c is not None]
    expected = contact_factor(indicator.contact_angle_deg) * math.hypot(
        indicator.repeatability, step_uncertainty(indicator.step)
    )
    foreign = foreign_reading(positions, means, uncertainty.noise)
    error = max(closing, key=abs, default=None)
    limit = CLOSING_STEPS * indicator.step + math.sqrt(3.0) * uncertainty.setting[0]
    drifted = error is not None and abs(error) > limit
    return SweepAnalysis(
        fitted=fitted,
        uncertainty=uncertainty,
        means=means,
        pairs=pair_sums(positions, means),
        second=out_of_round(positions, means),
        foreign=foreign,
        disagreement=disagreement(fitted, expected),
        closing_error=error,
        closing_limit=limit,
        unreliable=foreign is not None or drifted,
    )


def tiny_reading(sweeps: Sweeps, indicator: Indicator, units: UnitSystem) -> float | None:
    """The largest reading where all of them look like inches typed as thou, else ``None``.

    So they do where none reaches a fifth of a step, and not all are nothing.
    """
    largest = max(abs(m) for row in sweeps.readings for m in row if m is not None)
    tiny = 0.0 < largest <= _TINY_STEPS * indicator.step and units.name == "inch"
    return largest if tiny else None


def must_be_repeated(
    swept: SweepAnalysis, sweeps: Sweeps, indicator: Indicator, units: UnitSystem
) -> bool:
    """Whether readings can't be right as they are, so that nothing is to be done on them.

    A reading that does not belong, a dial that came back off its start by more than two steps, or
    inches typed as thou.
    """
    return swept.unreliable or tiny_reading(sweeps, indicator, units) is not None
