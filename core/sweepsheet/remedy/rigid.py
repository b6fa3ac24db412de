"""A housing on two dowels that need not be alike: a rigid body in its plane.

Dowel i shifts hole i, at ``P_i``, by ``v_i = d_i u(a_i)``. The two holes keep their distance, so
only dowels fit whose shifts agree along the line of the holes to within the clearance; what is
left of the difference is shared evenly. Across that line the housing turns by ``w = ((v_2 - v_1) .
n) / s``, and a point C goes to ``C + v_1 + w k x (C - P_1)``.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.job.model import Dowel, Hole
from sweepsheet.maths.clock import polar
from sweepsheet.maths.vector import ZERO, Vec2


@dataclass(frozen=True, slots=True)
class DowelLine:
    """The two dowel holes, in small units from the crank axis.

    ``along`` is the unit vector from the first hole to the second, ``across`` a quarter turn
    counter-clockwise from it.
    """

    first: Vec2
    along: Vec2
    across: Vec2
    spacing: float

    @classmethod
    def of(cls, holes: tuple[Hole, Hole], small_per_long: float) -> DowelLine:
        """The line of two measured holes. They must not be in one place (checked on reading).

        >>> DowelLine.of((Hole(270.0, 7.0), Hole(90.0, 7.0)), 1000.0).spacing
        14000.0
        """
        one, two = (polar(h.at_deg, h.radius * small_per_long) for h in holes)
        spacing = (two - one).length
        along = (two - one).scaled(1.0 / spacing)
        return cls(one, along, Vec2(-along.y, along.x), spacing)

    def moved(self, first: Vec2, second: Vec2) -> RigidMove:
        """What the shifts of the two holes do to a point at the crank axis.

        The bore centre lies within thousandths of that axis, which makes no difference here.

        >>> line = DowelLine.of((Hole(270.0, 7.0), Hole(90.0, 7.0)), 1000.0)
        >>> moved = line.moved(Vec2(0.0, 7.0), Vec2(0.0, 14.0))
        >>> moved.move.y, moved.turn, moved.misfit
        (10.5, 0.0005, 0.0)
        """
        misfit = (first - second).dot(self.along)
        turn = (second - first).dot(self.across) / self.spacing
        # Half the misfit is taken up at either hole.
        shift = first - self.along.scaled(misfit / 2.0)
        arm = -self.first
        swing = Vec2(-turn * arm.y, turn * arm.x)
        return RigidMove(shift + swing, turn, misfit)


@dataclass(frozen=True, slots=True)
class RigidMove:
    """The move of the bore centre, the turn of the housing, and the spacing misfit.

    ``turn`` is in radians, counter-clockwise plus as seen from behind.
    """

    move: Vec2
    turn: float
    misfit: float

    @property
    def turn_deg(self) -> float:
        """The turn in degrees, clockwise plus, like every angle that is shown."""
        return -math.degrees(self.turn)


def shift_of(dowel: Dowel) -> Vec2:
    """By how much a dowel shifts its hole: its offset toward its aim.

    >>> shift_of(Dowel(7.0, 90.0))
    Vec2(x=7.0, y=0.0)
    """
    return polar(dowel.aim_deg, dowel.offset)


def nominal_move(dowels: tuple[Dowel, Dowel], line: DowelLine | None) -> Vec2 | None:
    """The move that fitted dowels should have made.

    ``None`` for two that differ, where nobody measured their holes: what such a pair does
    depends on where they are.

    >>> nominal_move((Dowel(7.0, 180.0), Dowel(7.0, 180.0)), None)
    Vec2(x=0.0, y=-7.0)
    >>> nominal_move((Dowel(7.0, 180.0), Dowel(14.0, 180.0)), None) is None
    True
    """
    first, second = dowels
    if first.offset == second.offset == 0.0:
        return ZERO
    if first == second:
        return shift_of(first)
    return None if line is None else line.moved(shift_of(first), shift_of(second)).move
