"""Which offset dowels to fit, and where to aim them.

Both dowels alike, of offset d and aimed at a, move the housing by ``d u(a)``. Aimed where the
housing must go, a pair takes d off the offset. The options are "leave it as it is" and each
size in stock.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.bore import Bore
from sweepsheet.clock import direction_of, unit_vector
from sweepsheet.job import Dowel, Limits, Stock
from sweepsheet.noise import rectangular
from sweepsheet.region import probability_inside
from sweepsheet.vector import NO_SPREAD, Sym2, Vec2, outer
from sweepsheet.verdict import Verdict, verdict_of


@dataclass(frozen=True, slots=True)
class Option:
    """One thing that could be done: leave it (``leave``), or fit a pair of one offset and aim.

    ``center`` is where the bore is then expected. ``aim_deg`` is that of the dowels in place where
    it is left.
    """

    leave: bool
    offset: float
    aim_deg: float
    center: Vec2
    probability: float | None
    verdict: Verdict | None

    @property
    def expected_offset(self) -> float:
        """The offset expected after it."""
        return self.center.length


def without_dowels(center: Vec2, dowels: tuple[Dowel, Dowel]) -> Vec2 | None:
    """Where the bore would be on standard dowels, from where it is on these.

    ``None`` where the two differ: what they then do depends on where their holes are.
    """
    first, second = dowels
    if first.offset == second.offset == 0.0:
        return center
    if first != second:
        return None
    return center - unit_vector(first.aim_deg).scaled(first.offset)


def options_for(
    bore: Bore, dowels: tuple[Dowel, Dowel], limits: Limits, stock: Stock
) -> tuple[Option, ...]:
    """Every option, best first: the likeliest to be inside, then the smallest offset left.

    Without a limit, by the offset left alone.
    """

    def option(*, leave: bool, offset: float, aim_deg: float, center: Vec2, spread: Sym2) -> Option:
        probability = None
        if limits.bore_offset is not None:
            probability = probability_inside(center, bore.covariance + spread, limits.bore_offset)
        verdict = None if probability is None else verdict_of(probability, limits.confidence)
        return Option(leave, offset, aim_deg, center, probability, verdict)

    options = [
        option(
            leave=True,
            offset=0.0,
            aim_deg=dowels[0].aim_deg,
            center=bore.center,
            spread=NO_SPREAD,
        )
    ]
    bare = without_dowels(bore.center, dowels)
    if bare is not None:
        aim = direction_of(-bare)
        for offset in stock.dowel_offsets:
            center = bare + unit_vector(aim).scaled(offset)
            spread = aim_doubt(offset, aim, stock.aim_setting_deg)
            options.append(
                option(leave=False, offset=offset, aim_deg=aim, center=center, spread=spread)
            )
    # Chances that differ by less than a tenth of a percent are the same chance.
    options.sort(key=lambda o: (-round(o.probability or 0.0, 3), o.expected_offset))
    return tuple(options)


def aim_doubt(offset: float, aim_deg: float, setting_deg: float) -> Sym2:
    """What a dowel set off its aim by up to plus or minus ``setting_deg`` adds, across the aim.

    Both dowels are taken to miss alike, which is the worse case.

    >>> aim_doubt(7.0, 0.0, 5.0).xx > 0, aim_doubt(7.0, 0.0, 5.0).yy
    (True, 0.0)
    """
    across = unit_vector(aim_deg + 90.0)
    return outer(across).scaled((offset * rectangular(math.radians(setting_deg))) ** 2)


def choose(options: tuple[Option, ...]) -> Option | None:
    """What to do: leave it where that is within, else the best; ``None`` where nothing helps.

    Nothing helps where even the best option is surely outside.
    """
    for option in options:
        if option.leave and option.verdict == "within":
            return option
    best = options[0]
    return None if best.verdict == "outside" else best
