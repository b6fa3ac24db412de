"""The first harmonic of a sweep, by least squares: what an offset or a tilt leaves on a dial.

The model is ``m[j][i] = k[j] + h . u(a[i])`` for sweep j at position i: one vector ``h`` for all,
a zero ``k`` for each sweep, since each was zeroed anew. A bore centre is ``-h`` and a face slope
``h / r``; neither is known here.

Each sweep's own mean is taken out of its readings and its unit vectors, which leaves a 2 x 2
system (Frisch and Waugh 1933); the answer is the one of the whole system. For positions spread
evenly it is ``(2/n) sum m u`` (as in ISO 4291's least-squares centre).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.maths.clock import unit_vector
from sweepsheet.maths.vector import ZERO, ZERO_COVARIANCE, Vec2, outer
from sweepsheet.sweep.corrections import CorrectedReadings


@dataclass(frozen=True, slots=True)
class Harmonic:
    """A fitted first harmonic.

    ``weights[j][i]`` says how far ``h`` moves when that one reading grows by one (``None`` where
    there is no reading): ``h = sum weights * readings``. ``dof`` are the degrees of freedom left
    between the position means and the model: 0 for three positions.
    """

    positions_deg: tuple[float, ...]
    amplitude: Vec2
    constants: tuple[float, ...]
    residuals: tuple[tuple[float | None, ...], ...]
    weights: tuple[tuple[Vec2 | None, ...], ...]
    dof: int

    @property
    def tir(self) -> float:
        """The total indicator reading of the fitted harmonic, twice its amplitude."""
        return 2.0 * self.amplitude.length

    def position_residuals(self) -> tuple[float | None, ...]:
        """The mean residual at each position over the sweeps, ``None`` where never reached.

        >>> fitted = fit(CorrectedReadings((0.0, 90.0, 180.0, 270.0), ((1.0, 0.0, 1.0, 0.0),)))
        >>> fitted.position_residuals()
        (0.5, -0.5, 0.5, -0.5)
        """
        means = []
        for column in zip(*self.residuals, strict=True):
            known = [r for r in column if r is not None]
            means.append(math.fsum(known) / len(known) if known else None)
        return tuple(means)

    def position_weights(self) -> tuple[Vec2, ...]:
        """How far ``h`` moves when every reading at one position grows by one.

        >>> fitted = fit(CorrectedReadings((0.0, 90.0, 180.0, 270.0), ((0.0, 0.0, 0.0, 0.0),)))
        >>> fitted.position_weights()[1]
        Vec2(x=0.5, y=0.0)
        """
        totals = []
        for column in zip(*self.weights, strict=True):
            total = ZERO
            for weight in column:
                if weight is not None:
                    total = total + weight
            totals.append(total)
        return tuple(totals)


def fit(readings: CorrectedReadings) -> Harmonic:
    """The least-squares first harmonic of one or more sweeps.

    Assumes that the positions were checked (``positions.position_faults``): three or more a
    sweep, over more than half a turn. Checks nothing else; a bad reading bends the answer, and
    ``checks`` looks for it.

    >>> fitted = fit(CorrectedReadings((0.0, 90.0, 180.0, 270.0), ((0.0, -5.0, -11.0, -6.0),)))
    >>> fitted.amplitude, fitted.tir, fitted.dof
    (Vec2(x=0.5, y=5.5), 11.045361017187261, 1)
    """
    units = [unit_vector(a) for a in readings.positions_deg]
    centred = [_centred(units, sweep) for sweep in readings.readings]

    normal = ZERO_COVARIANCE
    right = ZERO
    for sweep in centred:
        for point in sweep.points:
            if point is not None:
                normal = normal + outer(point.u)
                right = right + point.u.scaled(point.m)
    inverse = normal.inverse()
    h = inverse.times(right)

    reached = {i for row in readings.readings for i, m in enumerate(row) if m is not None}
    return Harmonic(
        positions_deg=readings.positions_deg,
        amplitude=h,
        constants=tuple(sweep.mean_m - h.dot(sweep.mean_u) for sweep in centred),
        residuals=tuple(
            tuple(None if p is None else p.m - h.dot(p.u) for p in sweep.points)
            for sweep in centred
        ),
        weights=tuple(
            tuple(None if p is None else inverse.times(p.u) for p in sweep.points)
            for sweep in centred
        ),
        dof=max(0, len(reached) - 3),
    )


@dataclass(frozen=True, slots=True)
class _Point:
    u: Vec2
    m: float


@dataclass(frozen=True, slots=True)
class _Centred:
    mean_u: Vec2
    mean_m: float
    points: tuple[_Point | None, ...]


def _centred(units: Sequence[Vec2], sweep: Sequence[float | None]) -> _Centred:
    """One sweep with its mean unit vector and mean reading taken out."""
    known = [(u, m) for u, m in zip(units, sweep, strict=True) if m is not None]
    n = len(known)
    mean_u = Vec2(math.fsum(u.x for u, _ in known) / n, math.fsum(u.y for u, _ in known) / n)
    mean_m = math.fsum(m for _, m in known) / n
    return _Centred(
        mean_u,
        mean_m,
        tuple(
            None if m is None else _Point(u - mean_u, m - mean_m)
            for u, m in zip(units, sweep, strict=True)
        ),
    )
