"""What a chip or a burr does that is caught in a joint, and how small a one explains a tilt.

A chip of height h at radius r lifts the flange there, while the far rim, at radius R, stays down:
the part tilts by ``h / (r + R)`` and stands rearward on the side of the chip. Under the front
flange, the housing leans: its bore goes by ``-H g``, the nose of the shaft by ``(L - H) g``, the
tail of the gearbox by ``-(H + T) g``. On the rear face, only the gearbox leans: its nose goes by
``L g``, its tail by ``-T g``. Bolts that pull the flange down round the chip make it less: these
are the most it can be.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.job.model import Joint
from sweepsheet.maths.clock import polar
from sweepsheet.maths.vector import ZERO, Vec2

# Dirt and burrs are thinner than this, in inches: a joint that is open further has another cause.
# Common practice, no source.
THICKEST_DIRT = 0.010


@dataclass(frozen=True, slots=True)
class ChipEffect:
    """What a chip does; moves are in small units, ``None`` where a dimension is not known."""

    slope: Vec2
    bore: Vec2 | None
    nose: Vec2 | None
    tail: Vec2 | None


def chip_slope(height: float, at_deg: float, radius: float, rim: float) -> Vec2:
    """The slope that a chip makes; ``height``, ``radius`` and ``rim`` in one unit.

    >>> chip_slope(10.0, 90.0, 6000.0, 6000.0).x
    0.0008333333333333334
    """
    return polar(at_deg, height / (radius + rim))


def effect_of(
    slope: Vec2, joint: Joint, depth: float | None, nose: float | None, tail: float | None
) -> ChipEffect:
    """What a slope in one joint moves: bore, nose of the shaft, tail of the gearbox.

    ``depth`` is H, ``nose`` L and ``tail`` T, all from the rear face and in small units.

    >>> moved = effect_of(Vec2(0.001, 0.0), "front", 6000.0, 7000.0, 20000.0)
    >>> moved.bore.x, moved.nose.x, moved.tail.x
    (-6.0, 1.0, -26.0)
    """
    if joint == "rear":
        return ChipEffect(
            slope,
            bore=ZERO,
            nose=None if nose is None else slope.scaled(nose),
            tail=None if tail is None else slope.scaled(-tail),
        )
    if depth is None:
        return ChipEffect(slope, None, None, None)
    return ChipEffect(
        slope,
        bore=slope.scaled(-depth),
        nose=None if nose is None else slope.scaled(nose - depth),
        tail=None if tail is None else slope.scaled(-(depth + tail)),
    )


def chip_that_explains(slope: Vec2, radius: float, rim: float) -> float:
    """The height of a chip at ``radius`` that explains the whole of a slope.

    >>> round(chip_that_explains(Vec2(0.0005, 0.0), 6000.0, 6000.0), 6)
    6.0
    """
    return slope.length * (radius + rim)
