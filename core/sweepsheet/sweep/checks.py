"""What the readings say about themselves: do they belong to one round bore at all?"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.job.positions import largest_gap
from sweepsheet.maths.clock import normalise, turn_between, unit_vector
from sweepsheet.maths.linear import least_squares, normal_matrix, solve_linear
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.sweep.corrections import CorrectedReadings
from sweepsheet.sweep.harmonic import Harmonic, fit

# A reading is called foreign from this many standard uncertainties off what the others say:
# about one false alarm in two hundred sweeps of eight positions.
FOREIGN_SIGMAS = 3.5
# ... and only where leaving out any other reading would leave at least this many times more.
FOREIGN_CONTRAST = 4.0
# What rounding in the arithmetic leaves is never a finding, however good the dial is said to be.
ROUNDING = 1e-6
_SAME_DEG = 1e-6


@dataclass(frozen=True, slots=True)
class PairSums:
    """Opposite readings added up: ``difference`` is (first pair) - (second pair).

    ``at_deg`` is the first position of the first pair: 0 means (12 + 6) - (9 + 3). An offset
    cancels in each sum, so a round bore gives nothing but noise.
    """

    at_deg: float
    difference: float


@dataclass(frozen=True, slots=True)
class OutOfRound:
    """The second harmonic: its TIR on a dial set true, and where it is high (and opposite).

    ``spread`` is the standard uncertainty of its amplitude, in the direction in which it is known
    least, over that of one mean reading: ``sqrt(2/n)`` for n even positions, more for others.
    """

    tir: float
    at_deg: float
    spread: float


@dataclass(frozen=True, slots=True)
class Outlier:
    """A reading that does not belong: its position, and what it is off from what others say."""

    position_index: int
    position_deg: float
    excess: float


def mean_readings(readings: CorrectedReadings, fitted: Harmonic) -> tuple[float | None, ...]:
    """The mean reading at each position, each sweep freed of its own zero.

    >>> rows = ((5.0, 5.0, 5.0, 5.0), (1.0, 2.0, 1.0, 0.0))
    >>> two = CorrectedReadings((0.0, 90.0, 180.0, 270.0), rows)
    >>> mean_readings(two, fit(two))
    (0.0, 0.5, 0.0, -0.5)
    """
    means = []
    for i in range(len(readings.positions_deg)):
        known = [
            m - k
            for m, k in zip((row[i] for row in readings.readings), fitted.constants, strict=True)
            if m is not None
        ]
        means.append(math.fsum(known) / len(known) if known else None)
    return tuple(means)


def pair_sums(positions_deg: tuple[float, ...], means: tuple[float | None, ...]) -> PairSums | None:
    """Compare two opposite pairs at right angles; ``None`` where no four positions form them.

    The pair that lies nearest to 12 o'clock comes first.
    Source: validity rule of shaft alignment (Piotrowski, Shaft Alignment Handbook, 3rd ed.).

    >>> pair_sums((0.0, 90.0, 180.0, 270.0), (3.0, -2.0, 0.0, 4.0))
    PairSums(at_deg=0.0, difference=1.0)
    """

    def at(angle: float) -> float | None:
        for position, mean in zip(positions_deg, means, strict=True):
            if abs(turn_between(position, angle)) < _SAME_DEG:
                return mean
        return None

    for start in sorted(positions_deg, key=lambda a: abs(turn_between(0.0, a))):
        four = [at(normalise(start + quarter)) for quarter in (0.0, 180.0, 90.0, 270.0)]
        known = [m for m in four if m is not None]
        if len(known) == len(four):
            return PairSums(start, (known[0] + known[1]) - (known[2] + known[3]))
    return None


def out_of_round(
    positions_deg: tuple[float, ...], means: tuple[float | None, ...]
) -> OutOfRound | None:
    """The second harmonic beside the first, by least squares.

    ``None`` below five positions, or where the positions can't tell the two apart.
    Model: ``k + h . u(a) + p sin 2a + q cos 2a``; the TIR of the part in 2a is ``2 |(p, q)|``.

    >>> eighths = tuple(45.0 * i for i in range(8))
    >>> oval = out_of_round(eighths, (1.0, 0.0, -1.0, 0.0, 1.0, 0.0, -1.0, 0.0))
    >>> round(oval.tir, 9), round(oval.at_deg, 9), round(oval.spread, 9)
    (2.0, 0.0, 0.5)
    """
    known = [(a, m) for a, m in zip(positions_deg, means, strict=True) if m is not None]
    if len(known) < 5:
        return None
    rows = []
    for a, _ in known:
        u, double = unit_vector(a), unit_vector(2.0 * a)
        rows.append([1.0, u.x, u.y, double.x, double.y])
    solved = least_squares(rows, [m for _, m in known])
    normal = normal_matrix(rows)
    # Two columns of the inverse: how far p and q can be trusted.
    of_p, of_q = (solve_linear(normal, [float(i == j) for i in range(5)]) for j in (3, 4))
    if solved is None or of_p is None or of_q is None:
        return None
    p, q = solved[3], solved[4]
    return OutOfRound(
        tir=2.0 * math.hypot(p, q),
        at_deg=normalise(math.degrees(math.atan2(p, q)) / 2.0),
        spread=math.sqrt(Sym2(of_p[3], of_p[4], of_q[4]).principal().major),
    )


def foreign_reading(
    positions_deg: tuple[float, ...], means: tuple[float | None, ...], noise: float
) -> Outlier | None:
    """The one reading that the others contradict, if there is one and it can be named.

    Each position in turn is left out of the fit. One is named where its reading is more than
    ``FOREIGN_SIGMAS`` off what the rest says, and where leaving out any other would not mend the
    fit nearly as well. ``noise`` is the standard uncertainty of a mean reading. From four
    positions nothing can be named: their one spare degree of freedom says that something is
    wrong, not where.

    >>> eighths = tuple(45.0 * i for i in range(8))
    >>> found = foreign_reading(eighths, (0.0, 0.0, 9.0, 0.0, 0.0, 0.0, 0.0, 0.0), 0.5)
    >>> found.position_deg, round(found.excess, 9)
    (90.0, 9.0)
    """
    index = [i for i, m in enumerate(means) if m is not None]
    spare = len(index) - 4
    if spare < 1:
        return None
    angles = tuple(positions_deg[i] for i in index)
    if any(largest_gap(angles[:k] + angles[k + 1 :]) >= 180.0 for k in range(len(angles))):
        return None
    trials = _leave_each_out(fit(CorrectedReadings(angles, (tuple(means[i] for i in index),))))
    trials.sort(key=lambda t: t.squares)
    best, second = trials[0], trials[1]
    variance = max(best.squares / spare, noise**2, ROUNDING**2)
    sigma = math.sqrt(variance * best.spread)
    contrast = second.squares / (spare * variance)
    if abs(best.excess) > FOREIGN_SIGMAS * sigma and contrast > FOREIGN_CONTRAST:
        return Outlier(index[best.index], angles[best.index], best.excess)
    return None


@dataclass(frozen=True, slots=True)
class Disagreement:
    """Where repeated sweeps differ most, which of them reads highest there, and by how much."""

    position_deg: float
    sweep: int
    span: float


def disagreement(fitted: Harmonic, scatter: float) -> Disagreement | None:
    """The position at which repeated sweeps differ most, where scatter does not explain it.

    ``scatter`` is the standard uncertainty that one reading is expected to have. The difference
    of two readings has its square root of two times; of more, the largest difference is a
    little more, which the wide limit allows for.

    >>> two = ((0.0, 0.0, 0.0, 0.0), (0.0, 8.0, 0.0, 0.0))
    >>> disagreement(fit(CorrectedReadings((0.0, 90.0, 180.0, 270.0), two)), 0.5)
    Disagreement(position_deg=90.0, sweep=1, span=6.0)
    """
    worst: Disagreement | None = None
    for i, angle in enumerate(fitted.positions_deg):
        column = [(row[i], j) for j, row in enumerate(fitted.residuals)]
        known = [(residual, j) for residual, j in column if residual is not None]
        if len(known) > 1:
            highest, sweep = max(known)
            span = highest - min(known)[0]
            if worst is None or span > worst.span:
                worst = Disagreement(angle, sweep, span)
    allowed = max(FOREIGN_SIGMAS * scatter * math.sqrt(2.0), ROUNDING)
    return worst if worst is not None and worst.span > allowed else None


@dataclass(frozen=True, slots=True)
class _LeftOut:
    """The fit without one reading: what that reading is off by, and how well that is known.

    ``spread`` is the variance of ``excess`` in units of the variance of one reading.
    """

    index: int
    squares: float
    excess: float
    spread: float


def _leave_each_out(fitted: Harmonic) -> list[_LeftOut]:
    """Leave each reading of a single sweep out in turn, from the residuals of the whole fit.

    With the leverage ``l`` of a reading and its residual r, the fit without it misses it by
    ``r / (1 - l)`` and has ``r**2 / (1 - l)`` less in its sum of squares (Cook and Weisberg,
    Residuals and Influence in Regression, 1982, section 2.2; from memory).
    """
    units = [unit_vector(a) for a in fitted.positions_deg]
    n = len(units)
    mean = Vec2(math.fsum(u.x for u in units) / n, math.fsum(u.y for u in units) / n)
    residuals = [r or 0.0 for r in fitted.residuals[0]]
    squares = math.fsum(r * r for r in residuals)
    trials = []
    for i, (u, weight, r) in enumerate(zip(units, fitted.weights[0], residuals, strict=True)):
        leverage = 1.0 / n + (weight.dot(u - mean) if weight else 0.0)
        rest = 1.0 - leverage
        trials.append(_LeftOut(i, max(0.0, squares - r * r / rest), r / rest, 1.0 / rest))
    return trials
