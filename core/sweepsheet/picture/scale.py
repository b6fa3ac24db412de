"""What is known of a dial before it is read, and what comes of reading it.

Angles are degrees, clockwise as the picture shows them. A picture does not tell how often the
needle went round: every reading is one of a single turn, from minus half a turn to plus half, and
who took it says how many whole turns there are to it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Scale:
    """A dial's scale.

    ``divisions``: how many there are in one turn of the needle; ``step``: what one is worth, in
    the unit of the readings; ``clockwise``: whether readings rise when the needle goes clockwise.
    """

    divisions: int
    step: float
    clockwise: bool

    @property
    def turn(self) -> float:
        """What a whole turn of the needle is worth."""
        return self.divisions * self.step

    def within_a_turn(self, reading: float) -> float:
        """The same needle's reading from minus half a turn, which counts, to plus half.

        >>> Scale(100, 1.0, True).within_a_turn(93.5), Scale(40, 0.5, True).within_a_turn(10.0)
        (-6.5, -10.0)
        """
        return (reading + self.turn / 2.0) % self.turn - self.turn / 2.0

    def reading_at(self, angle_deg: float) -> float:
        """The reading of a needle this far clockwise of zero: ``divisions step angle / 360``.

        Minus that where the scale counts counterclockwise.

        >>> Scale(100, 1.0, True).reading_at(36.0), Scale(100, 0.01, False).reading_at(36.0)
        (10.0, -0.1)
        >>> Scale(100, 1.0, True).reading_at(324.0)
        -10.0
        """
        share = angle_deg / 360.0 if self.clockwise else -angle_deg / 360.0
        # Rounded as a reading of twelve digits, so that no rounding error is shown.
        return float(f"{self.within_a_turn(share * self.turn):.12g}")

    def turns_to(self, reading: float, most: int) -> tuple[float, ...]:
        """What a needle that points here may read: ``reading + i turn``, i from -most to most.

        >>> Scale(100, 1.0, True).turns_to(-43.0, 2), Scale(100, 0.01, True).turns_to(0.07, 1)
        ((-243.0, -143.0, -43.0, 57.0, 157.0), (-0.93, 0.07, 1.07))
        """
        # Rounded as a reading of twelve digits, so that no rounding error is shown.
        return tuple(float(f"{reading + i * self.turn:.12g}") for i in range(-most, most + 1))

    def width_of(self, angle_deg: float) -> float:
        """What an angle's half width is worth as one of a reading.

        >>> Scale(100, 1.0, False).width_of(3.6)
        1.0
        """
        return angle_deg / 360.0 * self.turn


@dataclass(frozen=True, slots=True)
class DialReading:
    """A reading within one turn, and its 95 % half width, both in the unit of the scale."""

    value: float
    pm: float


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why a picture is not read: ``code`` names the sentence ``picture.refused.CODE``."""

    code: str


def turned(angle_deg: float) -> float:
    """An angle from -180, which counts, to 180.

    >>> turned(270.0), turned(-180.0)
    (-90.0, -180.0)
    """
    return (angle_deg + 180.0) % 360.0 - 180.0


def seen_angle(dx: float, dy: float) -> float:
    """The angle of an arrow in a picture, clockwise from up, where y points down.

    ``atan2(dx, -dy)``, in degrees.

    >>> seen_angle(0.0, -1.0), seen_angle(1.0, 0.0), seen_angle(0.0, 1.0)
    (0.0, 90.0, 180.0)
    """
    return math.degrees(math.atan2(dx, -dy))
