"""What housings of one kind usually show as found, and what dowels did in them.

Each job gives one place of the bore as found. With ``m`` their mean and ``S`` their covariance
(``n - 1`` below), the next housing's place x, measured as well, lies with 95 % in::

    (x - m)' S^-1 (x - m) <= (1 + 1/n) (n - 1) / (n - 2) g(n - 2)^2

which is Hotelling's prediction region in the plane; ``g^2`` (``plane_factor``) is twice F with 2
and ``n - 2`` degrees of freedom (Hotelling 1931, The generalization of Student's ratio, Annals of
Mathematical Statistics 2; the region as in textbooks of multivariate statistics, from memory). It
takes places that are drawn from one plane normal distribution, and jobs that have nothing else in
common. Whether it is honest for these jobs is asked one by one: of how many does the region that
all the others make hold the place?
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.maths.clock import direction_of, turn_between
from sweepsheet.maths.pooled import plane_factor
from sweepsheet.maths.vector import ZERO_COVARIANCE, Sym2, Vec2, mean_of, outer
from sweepsheet.solution import Solution

# Fewer make a region so wide that it says nothing.
LEAST_PLACES = 5
LEAST_MOVES = 3


@dataclass(frozen=True, slots=True)
class Case:
    """What one job adds: lengths in mm; ``None`` where it tells nothing.

    ``place``: the bore as found. ``runout``: of the face, for each mm of the radius swept.
    ``gain``, ``lag_deg``: what its dowels did of what is marked on them, and by how much that was
    turned from their aim, clockwise.
    """

    place: Vec2 | None
    runout: float | None
    gain: float | None
    lag_deg: float | None


@dataclass(frozen=True, slots=True)
class Region:
    """Where the next place lies with 95 %: ``(x - middle)' spread^-1 (x - middle) <= 1``."""

    middle: Vec2
    spread: Sym2

    def holds(self, place: Vec2) -> bool:
        """Whether a place lies in it.

        >>> Region(Vec2(0.0, 1.0), Sym2(4.0, 0.0, 4.0)).holds(Vec2(0.0, 2.9))
        True
        """
        return self.spread.inverse().along(place - self.middle) <= 1.0


@dataclass(frozen=True, slots=True)
class Usual:
    """What a kind of housing usually shows; ``None`` where the jobs are too few.

    ``held`` is of how many places the region of all the others holds them.
    """

    places: tuple[Vec2, ...]
    region: Region | None
    held: int
    runouts: tuple[float, ...]
    gains: tuple[float, ...]
    lags_deg: tuple[float, ...]


def case_of(solution: Solution) -> Case:
    """What a job that was worked out adds: nothing where its readings can't be believed."""
    job, first = solution.job, solution.measured[0]
    bore, face, dowels = first.bore, first.face, job.rounds[0].dowels
    is_stock = dowels[0].offset == dowels[1].offset == 0
    believed = is_stock and not bore.swept.unreliable and not solution.plate_unknown
    place = bore.center.scaled(job.units.mm) if believed else None
    runout = None
    if face is not None and face.trusted and not face.swept.unreliable:
        runout = 2.0 * face.slope.length
    gain = lag = None
    observed = solution.history.observed
    if observed is not None and not observed.contradicts:
        gain = observed.size / observed.told.length
        lag = turn_between(direction_of(observed.told), observed.direction_deg)
    return Case(place, runout, gain, lag)


def usual_of(cases: Sequence[Case]) -> Usual:
    """What the cases show together.

    >>> from sweepsheet.maths.clock import unit_vector
    >>> ring = [unit_vector(72.0 * i) for i in range(5)]
    >>> usual = usual_of([Case(place, None, None, None) for place in ring])
    >>> usual.held, usual.region.holds(Vec2(0.0, 0.0)), usual.region.holds(Vec2(9.0, 0.0))
    (5, True, False)
    """
    places = tuple(case.place for case in cases if case.place is not None)
    others = ([p for j, p in enumerate(places) if j != i] for i in range(len(places)))
    regions = [region_of(each) for each in others] if len(places) >= LEAST_PLACES else []
    held = sum(
        region is not None and region.holds(place)
        for region, place in zip(regions, places, strict=False)
    )
    moves = [(c.gain, c.lag_deg) for c in cases if c.gain is not None and c.lag_deg is not None]
    return Usual(
        places=places,
        region=region_of(places) if len(places) >= LEAST_PLACES else None,
        held=held,
        runouts=tuple(sorted(case.runout for case in cases if case.runout is not None)),
        gains=tuple(gain for gain, _ in moves),
        lags_deg=tuple(lag for _, lag in moves),
    )


def region_of(places: Sequence[Vec2]) -> Region | None:
    """The region of the next place; ``None`` where places are too few or lie on a line.

    >>> region_of([Vec2(0.0, 0.0)] * 6) is None
    True
    """
    n = len(places)
    found = spread_of(places) if n >= LEAST_PLACES - 1 else None
    if found is None:
        return None
    middle, spread = found
    widen = (1.0 + 1.0 / n) * (n - 1) / (n - 2) * plane_factor(n - 2) ** 2
    return Region(middle, spread.scaled(widen))


def spread_of(places: Sequence[Vec2]) -> tuple[Vec2, Sym2] | None:
    """Mean and covariance of two places or more; ``None`` where they lie on a line.

    >>> spread_of([Vec2(1.0, 0.0), Vec2(-1.0, 0.0), Vec2(0.0, 1.0), Vec2(0.0, -1.0)])[1].xx
    0.6666666666666666
    """
    middle = mean_of(places)
    spread = ZERO_COVARIANCE
    for place in places:
        spread = spread + outer(place - middle).scaled(1.0 / (len(places) - 1))
    # Readings are read to a step; places on a line are of somebody who typed one job many times.
    if spread.determinant <= 1e-9 * (spread.xx + spread.yy) ** 2:
        return None
    return middle, spread
