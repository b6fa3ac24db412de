"""The seat of the gearbox in the bore: the register that sits in it, and what its play leaves open.

A register smaller than its bore lets the gearbox sit off by up to half their clearance, whatever
the bore itself does. That joins the doubt of the finished joint, and is said apart from the bore's
own figure. A register larger than its bore does not go in.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.bore import Bore
from sweepsheet.job.model import Job
from sweepsheet.maths.vector import ZERO_COVARIANCE, Sym2
from sweepsheet.maths.verdict import NOT_JUDGED, Judged, judge


@dataclass(frozen=True, slots=True)
class Seat:
    """The fit: clearance on the diameter (negative: interference), and the finished joint.

    ``judged`` is the gearbox, wherever it sits in the bore; with an interference nothing is judged.
    """

    clearance: float
    judged: Judged


def clearance_of(job: Job) -> float | None:
    """Bore less register in small units; ``None`` where one of them was not measured."""
    bore, register = job.housing.bore_diameter, job.housing.register_diameter
    if bore is None or register is None:
        return None
    return (bore - register) * job.units.small_per_long


def seat_covariance(clearance: float | None) -> Sym2:
    """The doubt of where the register sits: nothing where the clearance is not known.

    Anywhere in a circle of half the clearance, no place likelier than another: the variance along
    any line is a quarter of the radius squared.

    >>> seat_covariance(2.0)
    Sym2(xx=0.25, xy=0.0, yy=0.25)
    """
    if clearance is None or clearance <= 0:
        return ZERO_COVARIANCE
    variance = (clearance / 2.0) ** 2 / 4.0
    return Sym2(variance, 0.0, variance)


def seat_of(job: Job, bore: Bore) -> Seat | None:
    """The seat, judged with the bore as it is now; ``None`` where it was not measured."""
    clearance = clearance_of(job)
    if clearance is None:
        return None
    if clearance < 0:
        return Seat(clearance, NOT_JUDGED)
    limits, covariance = job.limits, bore.covariance + seat_covariance(clearance)
    return Seat(clearance, judge(bore.center, covariance, limits.bore_offset, limits.confidence))
