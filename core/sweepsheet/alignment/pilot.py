"""The pilot line: where the gearbox axis meets the pilot bearing, and at what angle.

The gearbox stands square on the rear face, its axis through the bore. Seen from behind, at a
distance L forward of the face the axis lies at ``p = c + L g``: a face that stands rearward on one
side leans the nose of the shaft toward that side. The pilot bearing is at 0, on the crank axis.

What a bearing takes of an angle goes from careful to generous, in thou an inch: ball 1 to 3,
cylindrical roller 0.8 to 1.2, tapered roller 0.5 to 1.2 (Budynas and Nisbett, Shigley's Mechanical
Engineering Design, 9th ed., table 7-2); needle 0.5 to 1, bronze bushing 1 to 3 (common practice, no
source: the clearance of the bushing over its length). The manufacturer's figure comes first.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.face import Face
from sweepsheet.job.model import BearingClass
from sweepsheet.maths.eccentricity import Eccentricity
from sweepsheet.maths.normal import K_95_LINE, K_95_ONE_SIDE, offset_half_width
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.maths.verdict import judge

# Misalignment that bearings take, in radians, from careful to generous. Budynas and Nisbett,
# Shigley's Mechanical Engineering Design, 9th ed., table 7-2:
PUBLISHED_ANGLES: dict[BearingClass, tuple[float, float]] = {
    "ball": (0.001, 0.003),
    "cylindrical_roller": (0.0008, 0.0012),
    "tapered_roller": (0.0005, 0.0012),
}
# Not in that table; common practice, no source. Needles bear along a line, as the other rollers do,
# and a longer one. A shaft in a bushing is free up to its running clearance over the length of the
# bushing, 1 to 3 thou over about an inch, and beyond it bears on the two ends.
PRACTICE_ANGLES: dict[BearingClass, tuple[float, float]] = {
    "bronze_bushing": (0.001, 0.003),
    "needle": (0.0005, 0.001),
}
BEARING_ANGLES = PRACTICE_ANGLES | PUBLISHED_ANGLES


@dataclass(frozen=True, slots=True)
class PilotShift:
    """What the face adds between bore and pilot bearing, ``L g``; covariances of both its parts."""

    shift: Vec2
    tilt: Sym2
    seat: Sym2

    @property
    def covariance(self) -> Sym2:
        """That of the way as a whole."""
        return self.tilt + self.seat


@dataclass(frozen=True, slots=True)
class Pilot(Eccentricity):
    """Offset (small units) and angle (radians) of the gearbox axis at the pilot bearing.

    ``angle_pm`` is a 95 % half width; ``way`` leads there from the bore.
    """

    angle: float
    angle_pm: float
    way: PilotShift


def pilot_shift(face: Face, distance: float, seat: Sym2) -> PilotShift:
    """The way from bore to pilot bearing, ``L g``.

    ``distance`` is L in small units; ``seat`` the doubt of where the gearbox sits in the bore.
    """
    return PilotShift(face.slope.scaled(distance), face.slope_covariance.scaled(distance**2), seat)


def pilot_line(
    bore: Bore,
    face: Face,
    distance: float,
    limit: float | None,
    confidence: float,
    seat: Sym2,
) -> Pilot:
    """The pilot line from the bore and the face of one round.

    ``distance`` and ``seat`` are as in ``pilot_shift``. Bore and face are taken as measured
    independently; a lean of the gearbox beside that of the face it stands on is not seen.
    """
    way = pilot_shift(face, distance, seat)
    center, covariance = bore.center + way.shift, bore.covariance + way.tilt + way.seat
    return Pilot(
        center=center,
        covariance=covariance,
        judged=judge(center, covariance, limit, confidence),
        angle=face.slope.length,
        angle_pm=offset_half_width(face.slope, face.slope_covariance),
        way=way,
    )


def largest_sure_angle(angle: float, half_width: float) -> float:
    """The angle that the true one surely (95 %, one side) does not exceed.

    >>> round(largest_sure_angle(0.001, 0.0005), 5)
    0.00142
    """
    return angle + half_width * K_95_ONE_SIDE / K_95_LINE
