"""The pair of dowels that the steps of a job speak of, to be drawn beside them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from sweepsheet.findings.advice import Step
from sweepsheet.job.model import Dowel
from sweepsheet.solution import Solution


@dataclass(frozen=True, slots=True)
class Fitting:
    """A pair to fit; where it is in already and is to be turned, also where it points ``now``."""

    dowels: tuple[Dowel, Dowel]
    now: tuple[Dowel, Dowel] | None


def fitting_of(steps: Iterable[Step], solution: Solution) -> Fitting | None:
    """The pair that is to be fitted or turned; ``None`` where no step says so."""
    now = solution.job.rounds[-1].dowels
    for each in steps:
        match each.numbers:
            case {"turn_deg": float(), "aim_deg": float(aim)}:
                first, second = (Dowel(dowel.offset, aim) for dowel in now)
                return Fitting((first, second), now)
            case {"offset": float(size), "aim_deg": float(aim)}:
                return Fitting((Dowel(size, aim), Dowel(size, aim)), None)
            case {
                "dowels": [
                    {"offset": float(size), "aim_deg": float(aim)},
                    {"offset": float(other_size), "aim_deg": float(other_aim)},
                ]
            }:
                return Fitting((Dowel(size, aim), Dowel(other_size, other_aim)), None)
    return None
