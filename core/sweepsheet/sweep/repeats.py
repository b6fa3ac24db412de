"""What repeated sweeps of one part tell of the dial itself: its scatter, pooled over jobs.

The scatter of one reading belongs to the rig, not to the housing. So the variances that separate
jobs gave are put together, each with its degrees of freedom:
``s**2 = sum(dof_i s_i**2) / sum(dof_i)``, with ``sum(dof_i)`` degrees of freedom (JCGM 100:2008,
4.2.4, a pooled estimate of variance; NIST/SEMATECH e-Handbook of Statistical Methods, 2.4.4.4).
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from sweepsheet.maths.quantiles import chi_squared_quantile
from sweepsheet.sweep.harmonic import Harmonic

# A stated repeatability counts like an estimate with this many degrees of freedom when
# repeated sweeps agree better than it says: two sweeps can agree well by chance.
STATED_DOF = 3


@dataclass(frozen=True, slots=True)
class Scatter:
    """The variance of one reading as repeated sweeps show it, and its degrees of freedom."""

    variance: float
    dof: int

    @property
    def deviation(self) -> float:
        """The standard deviation of one reading."""
        return math.sqrt(self.variance)


def observed_scatter(fitted: Harmonic) -> Scatter | None:
    """The scatter of one reading over repeated sweeps; ``None`` where none were repeated.

    What differs between sweeps at one position, beyond the zero of each, is scatter, with
    ``readings - positions - sweeps + 1`` degrees of freedom. For sweeps with missing readings the
    split between fit and scatter is approximate.

    >>> from sweepsheet.sweep.corrections import CorrectedReadings
    >>> from sweepsheet.sweep.harmonic import fit
    >>> two = ((0.0, 0.0, 0.0, 0.0), (0.0, 2.0, 0.0, 2.0))
    >>> observed_scatter(fit(CorrectedReadings((0.0, 90.0, 180.0, 270.0), two)))
    Scatter(variance=0.6666666666666666, dof=3)
    """
    means = fitted.position_residuals()
    squares = []
    for row in fitted.residuals:
        for residual, mean in zip(row, means, strict=True):
            if residual is not None and mean is not None:
                squares.append((residual - mean) ** 2)
    reached = sum(mean is not None for mean in means)
    dof = len(squares) - reached - len(fitted.residuals) + 1
    if len(fitted.residuals) < 2 or dof < 1:
        return None
    return Scatter(math.fsum(squares) / dof, dof)


def pooled(scatters: Iterable[Scatter]) -> Scatter | None:
    """Separate estimates of one scatter as one; ``None`` where there are none.

    >>> pooled([Scatter(1.0, 3), Scatter(4.0, 6)])
    Scatter(variance=3.0, dof=9)
    """
    known = list(scatters)
    dof = sum(each.dof for each in known)
    if dof == 0:
        return None
    return Scatter(math.fsum(each.dof * each.variance for each in known) / dof, dof)


def weighed(observed: Scatter | None, stated: float) -> float:
    """The variance to reckon with: what was observed, held against a stated standard deviation.

    Where the observed one is larger, it counts as it is; where it is smaller, it is weighed with
    the stated one, which counts ``STATED_DOF`` degrees of freedom, so that a few sweeps that agree
    by chance do not make the dial perfect.

    >>> weighed(Scatter(4.0, 3), 1.0), weighed(Scatter(0.0, 3), 1.0), weighed(None, 1.0)
    (4.0, 0.5, 1.0)
    """
    if observed is None:
        return stated**2
    total = STATED_DOF * stated**2 + observed.dof * observed.variance
    return max(observed.variance, total / (STATED_DOF + observed.dof))


def range95(scatter: Scatter) -> tuple[float, float]:
    """From where to where the true standard deviation lies, with 95 %, for normal scatter.

    ``dof s**2 / sigma**2`` is chi-squared: ``s sqrt(dof / quantile)`` for the quantiles at 97.5 %
    and at 2.5 % (NIST/SEMATECH e-Handbook, 1.3.5.8).

    >>> low, high = range95(Scatter(1.0, 12))
    >>> round(low, 3), round(high, 3)
    (0.717, 1.651)
    """
    low, high = (
        scatter.deviation * math.sqrt(scatter.dof / chi_squared_quantile(p, scatter.dof))
        for p in (0.975, 0.025)
    )
    return low, high
