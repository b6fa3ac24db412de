"""How far the holder of the dial hangs down, measured on a bar or as is usual for its kind.

A holder that gives lets the dial hang the same way wherever the crank stands, so a bore swept from
inside seems too high, never too low. Measured, it is taken out. Not measured, it may be anything
from nothing up to the most that such a holder gives: then the middle of that is taken out, and the
rest is doubt (JCGM 100:2008, 4.3.8, bounds that are not even about the reading).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from sweepsheet.maths.units import UnitSystem

Holder = Literal["bracket", "short_arm", "jointed_arm"]

# The most that a holder usually sags, top to bottom, in thou: bolted up short and stiff; a magnetic
# base with one short arm; one with a jointed or flexible arm. Where nobody says which: between.
# Common practice, no source.
USUAL_SAG: dict[Holder | None, float] = {
    "bracket": 1.0, "short_arm": 3.0, "jointed_arm": 5.0, None: 3.0,
}  # fmt: skip


def usual_allowance(holder: Holder | None, units: UnitSystem) -> float:
    """The most that a holder of this kind usually sags, top to bottom, in the small unit.

    >>> from sweepsheet.maths.units import SYSTEMS
    >>> usual_allowance("jointed_arm", SYSTEMS["inch"]), usual_allowance(None, SYSTEMS["metric"])
    (5.0, 0.076)
    """
    return round(USUAL_SAG[holder] * units.small_per_inch / 1000.0, 3)


# A test at one reach is of no use at one more than so many times as long.
FARTHEST = 2.0


@dataclass(frozen=True, slots=True)
class SagTest:
    """A sag test: the mean of its tries, and the standard deviation of one (0 for a single try)."""

    mean: float
    tries: int
    deviation: float


def sag_test(tries: Sequence[float]) -> SagTest:
    """The test from what was read at the bottom in each try, zeroed on top.

    >>> sag_test([2.0, 3.0, 2.5])
    SagTest(mean=2.5, tries=3, deviation=0.5)
    >>> sag_test([3.0])
    SagTest(mean=3.0, tries=1, deviation=0.0)
    """
    n = len(tries)
    mean = math.fsum(tries) / n
    squares = math.fsum((each - mean) ** 2 for each in tries)
    return SagTest(mean, n, math.sqrt(squares / (n - 1)) if n > 1 else 0.0)


def sag_at(tested: float, ratio: float) -> tuple[float, float]:
    """From where to where the sag may lie at ``ratio`` times the reach at which it was tested.

    What gives decides how fast it grows with the reach: a joint at the dial, not at all; a base
    that tips, with the square; an arm that bends under the dial, with the cube; one that bends
    under its own weight, with the fourth power (``F L**3 / 3EI`` and ``w L**4 / 8EI`` of a
    cantilever; Roark's Formulas for Stress and Strain, from memory). So it lies between
    ``tested`` and ``tested * ratio**4``, the smaller first.

    >>> sag_at(2.0, 1.0), sag_at(2.0, 0.5), sag_at(2.0, 1.5)
    ((2.0, 2.0), (0.125, 2.0), (2.0, 10.125))
    """
    other = tested * ratio**4
    return (min(tested, other), max(tested, other))
