"""What the dowels have been seen to do: an estimate from every round.

With standard dowels the bore lies at ``c0``; a pair of offset d aimed at a should move it by
``w = d u(a)``. What it does move it by is taken as ``w`` made larger by a gain and turned by a lag,
the same each time this pair is turned: ``c = c0 + E w``, where E stretches and turns. Four
unknowns, two figures a round: they are found by least squares from every round, weighted by what
each sweep is worth, together with what is known beforehand: that the gain is near 1 and the lag
near 0.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.remedy.dowel_uncertainty import PRIOR_SPREAD, unseen_covariance

# Where the dowels were seen to do something else, what was believed hardly counts any more.
LOOSE_SPREAD = 1.0


@dataclass(frozen=True, slots=True)
class RoundObservation:
    """One round: where the bore was, how well that is known, and what the dowels should have done.

    ``covariance`` holds what differs from round to round; what all rounds share, such as a droop
    that was not measured, is left out. ``sizes`` are the offsets of the two dowels; ``move`` is the
    zero vector for standard ones.
    """

    center: Vec2
    covariance: Sym2
    sizes: tuple[float, float]
    move: Vec2

    @property
    def standard(self) -> bool:
        """Whether the bore was swept on standard dowels."""
        return self.sizes == (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class DowelResponse:
    """The estimate from all rounds: ``c0``, gain and lag, with the covariance of the four.

    ``gain_x + i gain_y`` is E as a complex number in the plane of x and y (counter-clockwise).
    """

    bare: Vec2
    gain_x: float
    gain_y: float
    spread: tuple[tuple[float, ...], ...]

    @property
    def gain(self) -> float:
        """The true move over what is written on the dowel."""
        return math.hypot(self.gain_x, self.gain_y)

    @property
    def lag_deg(self) -> float:
        """By how much the move is turned from the aim, clockwise plus."""
        return -math.degrees(math.atan2(self.gain_y, self.gain_x))

    def after(self, move: Vec2) -> Vec2:
        """Where the bore is expected with dowels that should move it by ``move``: ``c0 + E w``.

        >>> DowelResponse(Vec2(0.0, -7.0), 0.9, 0.0, ()).after(Vec2(0.0, 7.0))
        Vec2(x=0.0, y=-0.7000000000000002)
        """
        return self.bare + Vec2(
            self.gain_x * move.x - self.gain_y * move.y,
            self.gain_x * move.y + self.gain_y * move.x,
        )

    def covariance_after(self, move: Vec2) -> Sym2:
        """The covariance of ``after``: the four unknowns' own, carried through ``c0 + E w``.

        >>> sure = tuple(tuple(0.01 * (i == j) for j in range(4)) for i in range(4))
        >>> response = DowelResponse(Vec2(0.0, 0.0), 1.0, 0.0, sure)
        >>> round(response.covariance_after(Vec2(0.0, 7.0)).xx, 9)
        0.5
        """
        x, y = _design_rows(move)
        return Sym2(
            _quadratic_form(x, self.spread, x),
            _quadratic_form(x, self.spread, y),
            _quadratic_form(y, self.spread, y),
        )


def response_of(
    rounds: Sequence[RoundObservation], prior_spread: float = PRIOR_SPREAD
) -> DowelResponse:
    """Where the bore is on standard dowels, and what the latest pair does, from all rounds.

    ``prior_spread`` is how far, as a standard deviation, gain and lag (in radians) may be expected
    to lie from what is written on the dowels. A round with a pair of another size says nothing of
    the gain of this one: it counts with its nominal move and a doubt of ``PRIOR_SPREAD`` of it.
    The first round, with what is believed of gain and lag, tells where ``c0`` is; each round after
    improves the estimate (least squares one round at a time, so that nothing is lost where a sweep
    is next to perfect).
    """
    first, *others = (_as_evidence_for(seen, rounds[-1].sizes) for seen in rounds)
    prior = prior_spread**2
    x, y = _design_rows(first.move)
    place = first.covariance + Sym2(1.0, 0.0, 1.0).scaled(prior * first.move.dot(first.move))
    bare = first.center - first.move
    state = [bare.x, bare.y, 1.0, 0.0]
    spread = [
        [place.xx, place.xy, -prior * x[2], -prior * x[3]],
        [place.xy, place.yy, -prior * y[2], -prior * y[3]],
        [-prior * x[2], -prior * y[2], prior, 0.0],
        [-prior * x[3], -prior * y[3], 0.0, prior],
    ]
    for seen in others:
        state, spread = _updated(state, spread, seen)
    return DowelResponse(
        Vec2(state[0], state[1]), state[2], state[3], tuple(tuple(row) for row in spread)
    )


def _as_evidence_for(seen: RoundObservation, sizes: tuple[float, float]) -> RoundObservation:
    """A round as it counts for a pair of these sizes."""
    if seen.standard or seen.sizes == sizes:
        return seen
    covariance = seen.covariance + unseen_covariance(seen.move)
    return RoundObservation(seen.center - seen.move, covariance, seen.sizes, Vec2(0.0, 0.0))


def _updated(
    state: Sequence[float], spread: Sequence[Sequence[float]], seen: RoundObservation
) -> tuple[list[float], list[list[float]]]:
    """The four unknowns and their covariance, improved by one more round.

    Recursive least squares; the covariance in the form that stays symmetric and positive:
    ``(1 - K H) P (1 - K H)' + K R K'``.
    """
    rows = _design_rows(seen.move)
    miss = seen.center - Vec2(_dot(rows[0], state), _dot(rows[1], state))
    expected = Sym2(
        _quadratic_form(rows[0], spread, rows[0]),
        _quadratic_form(rows[0], spread, rows[1]),
        _quadratic_form(rows[1], spread, rows[1]),
    )
    weight = (expected + seen.covariance).inverse()
    gains = [weight.times(Vec2(_dot(line, rows[0]), _dot(line, rows[1]))) for line in spread]
    kept = [
        [float(i == j) - gain.x * rows[0][j] - gain.y * rows[1][j] for j in range(4)]
        for i, gain in enumerate(gains)
    ]
    return (
        [value + gain.dot(miss) for value, gain in zip(state, gains, strict=True)],
        [
            [
                _quadratic_form(kept[i], spread, kept[j])
                + gains[i].dot(seen.covariance.times(gains[j]))
                for j in range(4)
            ]
            for i in range(4)
        ],
    )


def _design_rows(move: Vec2) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The rows by which (c0x, c0y, gain_x, gain_y) make the x and y of the bore."""
    return (1.0, 0.0, move.x, -move.y), (0.0, 1.0, move.y, move.x)


def _dot(a: Sequence[float], b: Sequence[float]) -> float:
    return math.fsum(x * y for x, y in zip(a, b, strict=True))


def _quadratic_form(
    a: Sequence[float], matrix: Sequence[Sequence[float]], b: Sequence[float]
) -> float:
    """``a' M b``."""
    return math.fsum(a[i] * matrix[i][j] * b[j] for i in range(len(a)) for j in range(len(b)))
