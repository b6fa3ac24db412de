"""What reading a dial off a photo is worth, on drawn photos of dials that it was not tuned on.

``PYTHONPATH=core python -m tests.core.picture.measure [how many] [family]`` prints the figures.
"""

from __future__ import annotations

import sys
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from statistics import median

from sweepsheet.picture.dial import Look, look_at, read_dial
from sweepsheet.picture.outline import Grey
from sweepsheet.picture.scale import DialReading, Refusal, Scale
from tests.cases.dial_pictures import SIDE, Case, any_case


@dataclass
class Tally:
    """What became of many photos: readings with their errors in divisions, and refusals."""

    errors: list[float] = field(default_factory=list)
    held: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    seconds: list[float] = field(default_factory=list)

    @property
    def all(self) -> int:
        """How many photos there were."""
        return len(self.errors) + self.refused.total()

    def beyond(self, divisions: float) -> int:
        """How many readings are wrong by more than this."""
        return sum(error > divisions for error in self.errors)

    @property
    def text(self) -> str:
        """The figures, one a line."""
        read = len(self.errors)
        return "\n".join(
            [
                f"photos             {self.all}",
                f"read               {read}",
                f"refused            {1 - read / self.all:.1%} {dict(self.refused)}",
                f"> 1/4 division     {self.beyond(0.25)} = {self.beyond(0.25) / read:.2%} of read",
                f"> 1 division       {self.beyond(1.0)}",
                f"largest, median    {max(self.errors):.2f}, {median(self.errors):.3f} divisions",
                f"95 % half width    holds {self.held / read:.1%}",
                f"processor time     {1000 * median(self.seconds):.0f} ms for a photo",
            ]
        )


def looked_at(pixels: bytes, divisions: int) -> Look | Refusal:
    """One picture looked at."""
    return look_at(Grey(pixels, SIDE, SIDE), divisions)


def reading_of(case: Case, tally: Tally) -> DialReading | Refusal:
    """What is read off the second photo of a case, in divisions."""
    first = looked_at(case.first, case.style.divisions)
    began = time.process_time()
    now = looked_at(case.photo, case.style.divisions)
    tally.seconds.append(time.process_time() - began)
    for look in (first, now):
        if isinstance(look, Refusal):
            return look
    assert isinstance(first, Look)
    assert isinstance(now, Look)
    scale = Scale(case.style.divisions, 1.0, clockwise=True)
    return read_dial(now, first, case.first_division, scale)


def measure(cases: Iterator[Case]) -> Tally:
    """Read every case and compare with the truth."""
    tally = Tally()
    for case in cases:
        read = reading_of(case, tally)
        if isinstance(read, Refusal):
            tally.refused[read.code] += 1
            continue
        scale = Scale(case.style.divisions, 1.0, clockwise=True)
        error = abs(scale.within_a_turn(read.value - case.division))
        tally.errors.append(error)
        tally.held += error <= read.pm
    return tally


if __name__ == "__main__":
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    family = sys.argv[2] if len(sys.argv) > 2 else "held-out"
    print(measure(any_case(family, seed) for seed in range(count)).text)
