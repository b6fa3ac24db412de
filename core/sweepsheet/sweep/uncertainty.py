"""What the readings are worth: the covariance of a fitted harmonic, source by source.

Follows the GUM (JCGM 100:2008, section 5, and JCGM 102 for vectors): every source of doubt has a
standard uncertainty at the dial, and the fit's own weights carry it into the harmonic. A figure
known only as plus or minus ``a`` counts as rectangular, ``a/sqrt(3)`` (JCGM 100, 4.3.7); a dial
read to a step ``q`` as ``q/sqrt(12)``.

What repeating the sweep averages out is kept apart from what it does not: scatter is new in every
reading, but the error of the dial at a place on its scale, the step to which it is read and the
mark to which the crank is set come back the same each time.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.job.model import Indicator
from sweepsheet.maths.clock import unit_vector
from sweepsheet.maths.vector import ZERO_COVARIANCE, Sym2, Vec2, outer
from sweepsheet.sweep.corrections import contact_factor
from sweepsheet.sweep.harmonic import Harmonic
from sweepsheet.sweep.repeats import observed_scatter, weighed


@dataclass(frozen=True, slots=True)
class Uncertainty:
    """The covariance of a harmonic and the standard uncertainties behind it, in small units.

    ``fresh`` is what of the covariance is new in every sweep. ``scatter`` is that of one reading;
    ``setting`` holds one value a position; ``lack_of_fit`` is what the residuals show beyond all
    that. ``noise`` is the typical standard uncertainty of the mean reading at one position without
    lack of fit: the yardstick for residuals.
    """

    covariance: Sym2
    fresh: Sym2
    scatter: float
    dial: float
    setting: tuple[float, ...]
    lack_of_fit: float
    noise: float


def rectangular(half_width: float) -> float:
    """The standard uncertainty of "plus or minus ``half_width``".

    >>> round(rectangular(1.0), 5)
    0.57735
    """
    return half_width / math.sqrt(3.0)


def step_uncertainty(step: float) -> float:
    """The standard uncertainty of reading to the nearest ``step``.

    >>> round(step_uncertainty(1.0), 5)
    0.28868
    """
    return step / math.sqrt(12.0)


def uncertainty_of(
    fitted: Harmonic, indicator: Indicator, closing: Sequence[float | None]
) -> Uncertainty:
    """The covariance of a fitted harmonic from the dial, the scatter, the marks and the drift.

    Assumes that the sources do not depend on one another. Droop that was not measured is not
    in it: it acts on bores and faces differently (see ``bore``).
    """
    factor = contact_factor(indicator.contact_angle_deg)
    scatter = math.sqrt(weighed(observed_scatter(fitted), factor * indicator.repeatability))
    dial = factor * math.hypot(step_uncertainty(indicator.step), rectangular(indicator.accuracy))
    turn = rectangular(math.radians(indicator.angle_setting_deg))
    setting = tuple(
        turn * abs(_change_with_angle(fitted.amplitude, a)) for a in fitted.positions_deg
    )
    variances = _position_variances(fitted, scatter, dial, setting)
    noise = math.fsum(variances) / len(variances)
    lack = _lack_of_fit(fitted, noise)

    covariance = fresh = ZERO_COVARIANCE
    for weight, spread in zip(fitted.position_weights(), setting, strict=True):
        covariance = covariance + outer(weight).scaled(dial**2 + spread**2 + lack)
    for row in fitted.weights:
        for single in row:
            if single is not None:
                fresh = fresh + outer(single).scaled(scatter**2)
    for row, drift in zip(fitted.weights, closing, strict=True):
        covariance = covariance + _drift(row, factor * (drift or 0.0))
    whole, spread = covariance + fresh, math.sqrt(noise)
    return Uncertainty(whole, fresh, scatter, dial, setting, math.sqrt(lack), spread)


def _change_with_angle(h: Vec2, angle_deg: float) -> float:
    """``d(h . u)/da``, in small units a radian: what a crank set off its mark changes."""
    u = unit_vector(angle_deg)
    return h.x * u.y - h.y * u.x


def _position_variances(
    fitted: Harmonic, scatter: float, dial: float, setting: Sequence[float]
) -> list[float]:
    """The variance of the mean reading at each position that was reached."""
    variances = []
    for column, spread in zip(zip(*fitted.weights, strict=True), setting, strict=True):
        n = sum(weight is not None for weight in column)
        if n:
            variances.append(dial**2 + spread**2 + scatter**2 / n)
    return variances


def _lack_of_fit(fitted: Harmonic, noise: float) -> float:
    """The variance, at each position, that the residuals show beyond ``noise`` (a variance)."""
    if fitted.dof == 0:
        return 0.0
    squares = math.fsum(r * r for r in fitted.position_residuals() if r is not None)
    return max(0.0, squares / fitted.dof - noise)


def _drift(weights: Sequence[Vec2 | None], drift: float) -> Sym2:
    """The doubt left after spreading the drift of one sweep evenly.

    If the dial in truth jumped once, at a moment that could be any, the part wrongly spread at
    fractions f <= g of the turn has the covariance ``drift**2 f (1 - g)``.
    """
    total = ZERO_COVARIANCE
    if drift == 0:
        return total
    n = len(weights)
    for i, first in enumerate(weights):
        for j, second in enumerate(weights):
            if first is not None and second is not None:
                shared = drift**2 * (min(i, j) / n) * (1.0 - max(i, j) / n)
                cross = (first.x * second.y + first.y * second.x) / 2.0
                total = total + Sym2(first.x * second.x, cross, first.y * second.y).scaled(shared)
    return total
