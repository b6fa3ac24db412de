"""What finding the stops of a sweep on film is worth, and the readings at them, on drawn films.

``PYTHONPATH=core python -m tests.core.picture.film_measure [how many] [family]`` prints it.
"""

from __future__ import annotations

import sys
import time
from collections import Counter
from collections.abc import Iterable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field, fields
from statistics import median

from sweepsheet.picture.dial import Look, read_dial
from sweepsheet.picture.film import Stop, find_stops, movements, sharpness
from sweepsheet.picture.scale import DialReading, Refusal, Scale
from tests.cases.dial_films import SMALL, Film, any_film
from tests.core.picture.measure import looked_at

# A needle that is within this of where it stops is there, in divisions; and so near to a stop in
# time a frame is one of it.
_THERE, _NEAR_S = 0.1, 0.35


def kind_of(seed: int) -> str:
    """Every fifth film has a rest on the way, every fifth a position that is passed."""
    return {3: "missed", 4: "rest"}.get(seed % 5, "")


@dataclass
class FilmTally:
    """What became of many films."""

    right: int = 0
    wrong: list[str] = field(default_factory=list)
    shifted: int = 0
    false: int = 0
    lost: int = 0
    stops: int = 0
    errors: list[float] = field(default_factory=list)
    held: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    seconds: list[float] = field(default_factory=list)

    @property
    def text(self) -> str:
        """The figures, one a line."""
        films, read = self.right + len(self.wrong), len(self.errors)
        beyond = [sum(error > most for error in self.errors) for most in (0.25, 1.0)]
        offered = self.refused.total() + read
        return "\n".join(
            [
                f"films              {films}",
                f"right stops        {self.right} = {self.right / films:.1%}; not: {self.wrong}",
                f"wrong, unnoticed   {self.shifted}",
                f"stops              {self.stops}, not found {self.lost}, false {self.false}",
                f"stops read         {read} of {offered}; refused {dict(self.refused)}",
                f"> 1/4 division     {beyond[0]} = {beyond[0] / read:.2%} of read",
                f"> 1 division       {beyond[1]}",
                f"largest, median    {max(self.errors):.2f}, {median(self.errors):.3f} divisions",
                f"95 % half width    holds {self.held / read:.1%}",
                f"processor time     {1000 * median(self.seconds):.1f} ms for a frame",
            ]
        )


def found_in(film: Film, tally: FilmTally) -> list[Stop]:
    """The stops that are found."""
    frames = [film.small(i) for i in range(len(film.times))]
    began = time.process_time()
    moved = movements(frames, SMALL)
    found = find_stops(moved, [sharpness(frame, SMALL) for frame in frames])
    tally.seconds.append((time.process_time() - began) / len(frames))
    return found


def place_of(film: Film, frame: int) -> int | None:
    """Which stop a frame is of, if any."""
    at = film.times[frame]
    for k, stop in enumerate(film.stops):
        is_there = abs(film.at(at)[1] - stop.division) <= _THERE
        if stop.start - _NEAR_S <= at < stop.end + _NEAR_S and is_there:
            return k
    return None


def read_at(film: Film, first: Look, stop: Stop) -> DialReading | Refusal:
    """The reading at a stop, off the first of its best frames that can be read."""
    scale = Scale(film.style.divisions, 1.0, clockwise=True)
    refused = Refusal("outline")
    for frame in stop.best:
        look = looked_at(film.photo(frame), film.style.divisions)
        read: Look | DialReading | Refusal = look
        if isinstance(look, Look):
            read = read_dial(look, first, film.stops[0].division, scale)
        if isinstance(read, DialReading):
            return read
        assert isinstance(read, Refusal)
        refused = read
    return refused


def measure(film: Film, tally: FilmTally, *, reading: bool = True) -> None:
    """Find the stops of a film, read the dial at each, and compare with the truth."""
    found = found_in(film, tally)
    places = [place_of(film, stop.best[0]) for stop in found]
    tally.stops += len(film.stops)
    tally.false += len(places) - len(set(places) - {None})
    tally.lost += len(film.stops) - len(set(places) - {None})
    if places == list(range(len(film.stops))):
        tally.right += 1
    else:
        tally.wrong.append(f"{film.way}: {len(found)} for {len(film.stops)}")
        tally.shifted += len(found) == len(film.stops)
    if not found or not reading:
        return
    looks = (looked_at(film.photo(frame), film.style.divisions) for frame in found[0].best)
    first = next((look for look in looks if isinstance(look, Look)), None)
    if first is None:
        tally.refused["first"] += len(found) - 1
        return
    scale = Scale(film.style.divisions, 1.0, clockwise=True)
    for stop, place in list(zip(found, places, strict=True))[1:]:
        if place is None:
            continue
        read = read_at(film, first, stop)
        if isinstance(read, Refusal):
            tally.refused[read.code] += 1
            continue
        error = abs(scale.within_a_turn(read.value - film.stops[place].division))
        tally.errors.append(error)
        tally.held += error <= read.pm


def measured(each: tuple[str, int]) -> FilmTally:
    """One film of a family, by its number."""
    family, seed = each
    tally = FilmTally()
    measure(any_film(family, seed, kind=kind_of(seed)), tally)
    return tally


def together(tallies: Iterable[FilmTally]) -> FilmTally:
    """What became of all of them."""
    whole = FilmTally()
    for tally in tallies:
        for part in fields(FilmTally):
            setattr(whole, part.name, getattr(whole, part.name) + getattr(tally, part.name))
    return whole


if __name__ == "__main__":
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    named = sys.argv[2] if len(sys.argv) > 2 else "held-out"
    with ProcessPoolExecutor(2) as pool:
        print(together(pool.map(measured, [(named, seed) for seed in range(count)])).text)
