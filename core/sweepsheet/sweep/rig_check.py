"""A check of a rig: several sweeps of one bore, and whether they repeat well enough for a limit.

**Repeatability** is the scatter of one reading (``repeats``), with its 95 % range. **Drift** is the
slope of the mean reading over the sweeps. **Capability** is the precision-to-tolerance ratio of the
offset that one sweep gives: six standard deviations of its least sure component over the tolerance.
An offset may lie up to the limit on either side, so the tolerance is twice the limit.

The bounds are those of the automotive guide for measurement systems (AIAG, Measurement Systems
Analysis Reference Manual, 4th ed., 2010): under 10 % of the tolerance acceptable, up to 30 %
perhaps acceptable for the application, above that not. Repeatability alone is held against them
here: one person, one bore, one hour. It says nothing of the dial's own error or of sag, which come
back the same in every sweep and stand in the plus or minus of the result.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from sweepsheet.maths.quantiles import student_quantile
from sweepsheet.maths.vector import ZERO_COVARIANCE, outer
from sweepsheet.sweep.harmonic import Harmonic
from sweepsheet.sweep.repeats import Scatter, observed_scatter, range95

FEWEST_SWEEPS = 3
GOOD, USABLE = 0.10, 0.30

Capability = Literal["good", "usable", "poor", "open"]


@dataclass(frozen=True, slots=True)
class Drift:
    """By how much the mean reading grows a sweep, and its 95 % half width."""

    slope: float
    pm: float

    @property
    def seen(self) -> bool:
        """Whether it is more than scatter."""
        return abs(self.slope) > self.pm


@dataclass(frozen=True, slots=True)
class RigCheck:
    """What repeated sweeps of one bore tell of the rig.

    ``range`` holds the standard deviation of one reading with 95 %; ``ratio`` is six standard
    deviations over the tolerance, ``ratio_range`` its 95 % range. ``drift`` is ``None`` where the
    dial was zeroed for every sweep, which hides it.
    """

    sweeps: int
    scatter: Scatter
    range: tuple[float, float]
    drift: Drift | None
    ratio: float
    ratio_range: tuple[float, float]
    capability: Capability


def drift_of(means: Sequence[float]) -> Drift:
    """The straight line through the sweeps' mean readings, in their order, by least squares.

    The half width is Student's t for ``sweeps - 2`` degrees of freedom times the standard
    uncertainty of the slope, ``sqrt(sum r**2 / (sweeps - 2) / sum (j - mean j)**2)``
    (NIST/SEMATECH e-Handbook, 4.1.4.1 and 4.5.1.2, from memory). Assumes three or more sweeps at
    an even pace.

    >>> line = drift_of([0.0, 0.4, 1.1, 1.5, 2.0])
    >>> round(line.slope, 3), round(line.pm, 3), line.seen
    (0.51, 0.08, True)
    """
    n = len(means)
    middle, mean = (n - 1) / 2.0, math.fsum(means) / n
    spread = math.fsum((j - middle) ** 2 for j in range(n))
    slope = math.fsum((j - middle) * m for j, m in enumerate(means)) / spread
    rest = math.fsum((m - mean - slope * (j - middle)) ** 2 for j, m in enumerate(means))
    pm = student_quantile(0.95, n - 2) * math.sqrt(rest / (n - 2) / spread)
    return Drift(slope, pm)


def capability_of(ratio_range: tuple[float, float]) -> Capability:
    """The verdict for the 95 % range of the ratio: it must hold at the worse end of the range.

    ``good``: the whole range is at most 10 %; ``usable``: at most 30 %; ``poor``: all of it is
    above 30 %; else ``open``: too few sweeps to tell. So a rig whose true ratio is above 30 % is
    passed in at most one check of forty.

    >>> capability_of((0.04, 0.09)), capability_of((0.06, 0.2)), capability_of((0.2, 0.5))
    ('good', 'usable', 'open')
    >>> capability_of((0.31, 0.8))
    'poor'
    """
    low, high = ratio_range
    if high <= GOOD:
        return "good"
    if high <= USABLE:
        return "usable"
    return "poor" if low > USABLE else "open"


def check_rig(
    fitted: Harmonic,
    readings: Sequence[Sequence[float | None]],
    limit: float,
    finest: float = 0.0,
) -> RigCheck | None:
    """The check, from sweeps of one bore and the offset that is allowed.

    ``fitted`` are the corrected sweeps, ``readings`` what the dial showed. ``None`` below three
    sweeps. ``finest`` is the least scatter that the step of the dial lets one see,
    ``step/sqrt(12)``: sweeps that agree to the step count that much against the limit. The
    standard deviation of the offset from one sweep is that of one reading times the square root of
    the larger principal part of ``sum(w w)`` over the fit's weights: ``sqrt(2/n)`` for n even
    positions.

    >>> from sweepsheet.sweep.corrections import CorrectedReadings
    >>> from sweepsheet.sweep.harmonic import fit
    >>> rows = ((0.0, 5.0, 9.0, 5.0), (0.0, 5.5, 9.0, 5.0), (0.5, 5.0, 9.0, 4.5))
    >>> check = check_rig(fit(CorrectedReadings((0.0, 90.0, 180.0, 270.0), rows)), rows, 5.0)
    >>> round(check.scatter.deviation, 4), check.scatter.dof, round(check.ratio, 4)
    (0.2764, 6, 0.1173)
    """
    observed = observed_scatter(fitted)
    if observed is None or len(readings) < FEWEST_SWEEPS:
        return None
    # The weights share one fit over all sweeps; of a single sweep they are so many times larger.
    total = ZERO_COVARIANCE
    for row in fitted.weights:
        for weight in row:
            if weight is not None:
                total = total + outer(weight)
    each = math.sqrt(total.principal().major * len(readings))
    low, high = range95(observed)
    of_tolerance = 6.0 * each / (2.0 * limit)
    ratio, *ends = (of_tolerance * max(s, finest) for s in (observed.deviation, low, high))
    ratios = (ends[0], ends[1])
    return RigCheck(
        sweeps=len(readings),
        scatter=observed,
        range=(low, high),
        drift=_drift(readings),
        ratio=ratio,
        ratio_range=ratios,
        capability=capability_of(ratios),
    )


def _drift(readings: Sequence[Sequence[float | None]]) -> Drift | None:
    """The drift over the places that every sweep reached; hidden where each sweep began alike."""
    reached = [i for i, column in enumerate(zip(*readings, strict=True)) if None not in column]
    if not reached or len({row[0] for row in readings}) == 1:
        return None
    return drift_of([math.fsum(row[i] or 0.0 for i in reached) / len(reached) for row in readings])
