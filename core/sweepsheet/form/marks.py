"""Even steps of the crank from a first mark: nobody types a list of clock times for them.

The form then names the readings by their marks, 1 to n; where each is on the clock is worked out
here. The marks are quarters and the like, the bolts of the flywheel, or those of a degree wheel.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from sweepsheet.form.parse import Value, number_or_text, position_or_text
from sweepsheet.job.fields import shown
from sweepsheet.job.sweeps import MOST_POSITIONS
from sweepsheet.maths.clock import normalise
from sweepsheet.words.faults import Fault
from sweepsheet.words.messages import ClockPosition, Degrees, Message, Quantity

# Three places fix a circle; fewer are no sweep.
FEWEST = 3
# Marks that are counted: their kind, by the form's choice of positions.
COUNTED = ("bolts", "wheel")
OWN, PLAIN_FIRST = "own", "12"
# Finer than any crank is set, and short in a link.
_DECIMALS = 4


@dataclass(frozen=True, slots=True)
class Marks:
    """Marks evenly round the crank, in the order in which it comes to them.

    ``first`` is the clock angle of the first in degrees, or the text that is none; ``count`` how
    many there are, or what is no such number; ``clockwise`` is the way of the crank, seen from
    behind.
    """

    kind: str
    count: Value
    first: Value
    clockwise: bool

    @property
    def fault(self) -> Fault | None:
        """What is wrong with the number of marks."""
        if self._number is not None:
            return None
        values: dict[str, Quantity] = {
            "got": shown(self.count),
            "low": FEWEST,
            "high": MOST_POSITIONS,
        }
        return Fault("marks.count", Message("fault.marks", values))

    @property
    def _number(self) -> int | None:
        n = self.count
        whole = isinstance(n, float) and n.is_integer() and FEWEST <= n <= MOST_POSITIONS
        return int(n) if whole and isinstance(n, float) else None

    @property
    def turned_deg(self) -> tuple[float, ...]:
        """How far the crank has been turned at each mark: ``360 i / n`` degrees.

        Where the number is wrong, quarters stand for it until it is right.
        """
        n = self._number or 4
        return tuple(round(360.0 * i / n, _DECIMALS) for i in range(n))

    @property
    def positions(self) -> list[Value]:
        """The clock angles, ``first ± 360 i / n``; a first mark that is none stands as it is.

        >>> Marks("bolts", 9.0, 0.0, clockwise=False).positions[:4]
        [0.0, 320.0, 280.0, 240.0]
        >>> Marks("", 4.0, "noon", clockwise=True).positions
        ['noon', 90.0, 180.0, 270.0]
        """
        start = self.first if isinstance(self.first, float) else 0.0
        way = 1.0 if self.clockwise else -1.0
        found: list[Value] = [
            round(normalise(start + way * turned), _DECIMALS) for turned in self.turned_deg
        ]
        return found if isinstance(self.first, float) else [self.first, *found[1:]]

    def label(self, i: int) -> Message:
        """What the i-th mark is called: its bolt or its degrees, and where it is on the clock."""
        position = self.positions[i]
        at = ClockPosition(position if isinstance(position, float) else 0.0)
        if self.kind == "bolts":
            return Message("mark.bolt", {"n": i + 1, "at": at})
        if self.kind == "wheel":
            return Message("mark.wheel", {"turned": Degrees(self.turned_deg[i]), "at": at})
        return Message("mark.plain", {"at": at})


def marks_of(form: Mapping[str, str]) -> Marks | None:
    """The marks that a form tells of; ``None`` where it lists the positions themselves.

    >>> marks_of({"positions_choice": "12 3 6 9", "marks.first": "12"}) is None
    True
    >>> form = {"positions_choice": "12 3 6 9", "marks.first": "1:30", "turn": "clockwise"}
    >>> marks_of(form).positions
    [45.0, 135.0, 225.0, 315.0]
    """
    choice, first = form.get("positions_choice", ""), form.get("marks.first", "").strip()
    clockwise = form.get("turn") == "clockwise"
    at = position_or_text(first or PLAIN_FIRST)
    if choice in COUNTED:
        count = number_or_text(form.get("marks.count", ""))
        return Marks(choice, count, at, clockwise)
    if choice in ("", OWN) or first in ("", PLAIN_FIRST):
        return None
    return Marks("", float(len(choice.split())), at, clockwise)
