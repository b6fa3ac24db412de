"""One bore as it was swept, taken together with what others of its kind showed.

Hotelling's region of the next place is that of a Student distribution in the plane with ``n - 2``
degrees of freedom, whose covariance, with ``S`` that of the ``n`` places, is::

    P = (1 + 1/n) (n - 1) / (n - 4) S

(the predictive distribution of a normal quantity of which neither mean nor covariance is known, as
in textbooks of Bayesian statistics, from memory). A normal one of that covariance around their
mean m stands for it. With the place y as swept and N the covariance of its noise, the two together
are at::

    x = m + P (P + N)^-1 (y - m)        with the covariance  P - P (P + N)^-1 P + C

C is what all sweeps of a rig may be off by alike, as by its sag: however many the others are, they
tell nothing of it. The noise of the other sweeps is in S as well, so that P is rather too wide than
too narrow. No verdict counts all this: what others were is no measurement of this one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.memory.usual import spread_of

# The spread of fewer can be far too small by chance, and then the others count too much.
LEAST_TOGETHER = 8


@dataclass(frozen=True, slots=True)
class Together:
    """Where a bore is by its own sweep and the others, and how sure that is."""

    place: Vec2
    covariance: Sym2


def together(places: Sequence[Vec2], swept: Vec2, noise: Sym2, common: Sym2) -> Together | None:
    """A place taken together with the places of others; ``None`` where these are too few.

    ``noise`` and ``common`` make up the covariance of the sweep; all in one unit.

    >>> from sweepsheet.maths.clock import unit_vector
    >>> ring = [unit_vector(45.0 * i) for i in range(8)]
    >>> both = together(ring, Vec2(0.0, 4.0), Sym2(1.125, 0.0, 1.125), Sym2(0.0, 0.0, 0.5))
    >>> round(both.place.y, 3), round(both.covariance.xx, 4), round(both.covariance.yy, 4)
    (2.0, 0.5625, 1.0625)
    """
    n = len(places)
    found = spread_of(places) if n >= LEAST_TOGETHER else None
    if found is None:
        return None
    middle, spread = found
    expected = spread.scaled((1.0 + 1.0 / n) * (n - 1) / (n - 4))
    weight = (expected + noise).inverse()
    # What is left of each unit vector, column by column: e - (P + N)^-1 P e, times P.
    x, y = (
        expected.times(each - weight.times(expected.times(each)))
        for each in (Vec2(1.0, 0.0), Vec2(0.0, 1.0))
    )
    place = middle + expected.times(weight.times(swept - middle))
    return Together(place, Sym2(x.x, (x.y + y.x) / 2.0, y.y) + common)
