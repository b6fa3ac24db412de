"""Which positions round the clock can be fitted at all: refused before anything is solved.

Three readings that are spread over more than half a turn determine a centre. All within half a
turn, they may determine one on paper, but a small error of one reading then moves it far; two at
one place are one place.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sweepsheet.maths.clock import turn_between
from sweepsheet.words.messages import ClockPosition, Quantity

LEAST_POSITIONS = 3
# Two positions nearer to one another than this, five minutes of the clock, are one position.
SAME_POSITION_DEG = 2.5
# Room for rounding where positions are exactly half a turn apart.
_ROUNDING_DEG = 1e-9


@dataclass(frozen=True, slots=True)
class PositionFault:
    """What is wrong with the positions: message key, place below the sweeps, quantities."""

    key: str
    where: str
    values: dict[str, Quantity]


def largest_gap(positions_deg: Sequence[float]) -> float:
    """The largest turn without a position, in degrees.

    >>> largest_gap([0.0, 90.0, 180.0]), largest_gap([0.0, 120.0, 240.0])
    (180.0, 120.0)
    """
    ordered = sorted(positions_deg)
    following = [*ordered[1:], ordered[0] + 360.0]
    return max(b - a for a, b in zip(ordered, following, strict=True))


def position_faults(
    positions_deg: Sequence[float], sweeps: Sequence[Sequence[float | None]]
) -> Iterator[PositionFault]:
    """What keeps these sweeps from being fitted; nothing where all is well.

    Every sweep must stand by itself: its dial has a zero of its own.

    >>> [fault.key for fault in position_faults((0.0, 90.0, 180.0), ((0.0, 1.0, 0.0),))]
    ['fault.half_turn']
    """
    same = False
    for i, second in enumerate(positions_deg):
        for first in positions_deg[:i]:
            if abs(turn_between(first, second)) < SAME_POSITION_DEG:
                same = True
                yield PositionFault(
                    "fault.same_position", f"positions_deg.{i}", {"at": ClockPosition(second)}
                )
                break
    if same:
        return
    for j, sweep in enumerate(sweeps):
        reached = [p for p, m in zip(positions_deg, sweep, strict=False) if m is not None]
        if len(reached) < LEAST_POSITIONS:
            yield PositionFault(
                "fault.few_readings", f"sweeps.{j}", {"n": j + 1, "got": len(reached)}
            )
        elif largest_gap(reached) >= 180.0 - _ROUNDING_DEG:
            yield PositionFault("fault.half_turn", f"sweeps.{j}", {"n": j + 1})
