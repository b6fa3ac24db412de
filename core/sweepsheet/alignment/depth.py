"""Depth: does the shaft reach the pilot bearing, and what room is there along the crank axis.

Places on that axis count rearward from where the engine was measured, the crank's flange or the
pilot bearing itself. The housing's rear face is at ``F = to_face + added``; what was measured on
the gearbox lies its own length forward of that, so the tip is at ``F - to_tip``. A gap is a
difference of two places, so each is a sum of measured lengths with signs, and its variance the sum
of theirs. A length that may be wrong by plus or minus a has the variance a²/3, no error within
being likelier than another (JCGM 100:2008, 4.3.7).

A thickness put between housing and gearbox moves the gearbox rearward by just that.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from sweepsheet.job.model import Depth, Job
from sweepsheet.maths.normal import K_95_LINE, probability_at_least
from sweepsheet.maths.verdict import NOT_JUDGED, Judged, verdict_of
from sweepsheet.sweep.uncertainty import rectangular

GapName = Literal[
    "engagement", "tip", "hub_front", "hub_front_worn", "hub_rear", "release", "release_worn",
    "stroke",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Room:
    """Something that must not be negative: its size, its variance, and what a spacer does to it.

    ``per_spacer`` is 1 where a thickness between housing and gearbox makes it larger by just that,
    -1 where it makes it smaller, 0 where it leaves it.
    """

    size: float
    variance: float
    per_spacer: int

    def above(self, least: float) -> Room:
        """What of it is above a least size.

        >>> Room(2.0, 0.01, 1).above(0.5)
        Room(size=1.5, variance=0.01, per_spacer=1)
        """
        return Room(self.size - least, self.variance, self.per_spacer)

    def below(self, most: float) -> Room:
        """What it falls short of a most size.

        >>> Room(2.0, 0.01, 1).below(5.0)
        Room(size=3.0, variance=0.01, per_spacer=-1)
        """
        return Room(most - self.size, self.variance, -self.per_spacer)

    @property
    def deviation(self) -> float:
        """Its standard deviation."""
        return math.sqrt(self.variance)

    @property
    def chance(self) -> float:
        """The probability that it is not negative."""
        return probability_at_least(self.size, self.deviation, 0.0)


@dataclass(frozen=True, slots=True)
class Gap:
    """One gap or overlap along the axis, in the long unit, and what is needed of it.

    ``pm`` is a 95 % half width. ``least`` and ``most`` are what it is held to; where nobody gave
    a least it must not be negative, and is not called within for that alone (``is_given``). Nor is
    an engagement, as long as the length of bearing or journal is not known: it is at most that.
    ``needs`` are what must not be negative for it to be as needed.
    """

    name: GapName
    size: float
    pm: float
    least: float
    most: float | None
    is_given: bool
    needs: tuple[Room, ...]
    judged: Judged


@dataclass(frozen=True, slots=True)
class _Lengths:
    """Sums of measured lengths of a job."""

    of: Depth

    @property
    def engine(self) -> float:
        """The variance of one that was taken on the engine."""
        return rectangular(self.of.engine_pm) ** 2

    @property
    def gearbox(self) -> float:
        """... on the gearbox."""
        return rectangular(self.of.gearbox_pm) ** 2

    def room(self, engine: tuple[float | None, ...], gearbox: tuple[float | None, ...],
             per_spacer: int) -> Room | None:  # fmt: skip
        """A sum of lengths of engine and gearbox; ``None`` where one of them is not known."""
        known = [each for each in (*engine, *gearbox) if each is not None]
        if len(known) < len(engine) + len(gearbox):
            return None
        variance = len(engine) * self.engine + len(gearbox) * self.gearbox
        if per_spacer and self.of.added:
            variance += self.gearbox
        return Room(math.fsum(known) + per_spacer * self.of.added, variance, per_spacer)


def gaps_of(job: Job) -> tuple[Gap, ...]:
    """Every gap that the measured lengths give, in the order of the axis; in the long unit."""
    given, found = job.depth, []
    lengths, confidence = _Lengths(given), job.limits.confidence
    face, tip = given.to_face, _negative(given.to_tip)

    overlaps = _overlaps(lengths)
    if overlaps:
        whole = given.pilot_length is not None and given.journal_length is not None
        least = given.engagement_min
        found.append(_gap("engagement", overlaps, least, None, confidence, is_whole=whole))
    tip_gap = lengths.room((face, given.to_bottom), (tip,), 1)
    if tip_gap:
        found.append(_gap("tip", (tip_gap,), given.tip_gap_min, None, confidence))

    front = lengths.room((given.to_hub_front, _negative(face)), (given.to_splines_front,), -1)
    hub, ends = _negative(given.to_hub_rear), _negative(given.to_splines_rear)
    rear = lengths.room((face, hub), (ends,), 1)
    # Both facings wear alike: the hub goes forward by what the one on the flywheel loses.
    worn = None if front is None or given.disc_wear is None else front.above(given.disc_wear / 2.0)
    on_splines: dict[GapName, Room | None] = {
        "hub_front": front, "hub_front_worn": worn, "hub_rear": rear,
    }  # fmt: skip
    for name, room in on_splines.items():
        if room:
            found.append(_gap(name, (room,), None, None, confidence, is_fact=True))

    fingers, bearing = _negative(given.to_fingers), _negative(given.to_bearing)
    release = lengths.room((face, fingers), (bearing,), 1)
    if release:
        limits = given.release_gap_min, given.release_gap_max
        found.append(_gap("release", (release,), *limits, confidence))
        if given.fingers_worn is not None:
            left = release.above(given.fingers_worn)
            found.append(_gap("release_worn", (left,), None, None, confidence, is_fact=True))
        if given.bearing_stroke is not None and given.release_travel is not None:
            spare = release.below(given.bearing_stroke - given.release_travel)
            # The stroke was measured, too; how far it must push is told by the manufacturer.
            spare = Room(spare.size, spare.variance + lengths.gearbox, spare.per_spacer)
            found.append(_gap("stroke", (spare,), None, None, confidence, is_fact=True))
    return tuple(found)


def _overlaps(lengths: _Lengths) -> tuple[Room, ...]:
    """What bounds how much of the journal is in the bearing; the least of them is that.

    The tip's way past the bearing's rear end, the length of either, and what is left where the
    journal's own rear end has gone into the bearing.
    """
    given = lengths.of
    reach = lengths.room((_negative(given.to_face), _negative(given.to_pilot)), (given.to_tip,), -1)
    if reach is None:
        return ()
    if given.to_pilot == 0.0:
        # Measured from the bearing itself: that is no length, and has no error.
        reach = Room(reach.size, reach.variance - lengths.engine, -1)
    rooms = [
        reach,
        lengths.room((given.pilot_length,), (), 0),
        lengths.room((), (given.journal_length,), 0),
    ]
    if given.pilot_length is not None and given.journal_length is not None:
        left = given.pilot_length + given.journal_length - reach.size
        rooms.append(Room(left, lengths.engine + lengths.gearbox + reach.variance, 1))
    return tuple(room for room in rooms if room is not None)


def _negative(length: float | None) -> float | None:
    return None if length is None else -length


def _gap(
    name: GapName, rooms: tuple[Room, ...], least: float | None, most: float | None,
    confidence: float, *, is_fact: bool = False, is_whole: bool = True,
) -> Gap:  # fmt: skip
    """A gap as wide as the least of its rooms.

    ``is_fact``: not to be negative is all it needs; ``is_whole``: all that bounds it is known.
    """
    narrowest = min(rooms, key=lambda room: room.size)
    needs = [room.above(least or 0.0) for room in rooms]
    needs += [room.below(most) for room in rooms if most is not None]
    is_given = is_fact or least is not None or most is not None
    judged = judge_all(tuple(needs), confidence)
    if judged.verdict == "within" and not (is_given and is_whole):
        judged = NOT_JUDGED
    pm = K_95_LINE * narrowest.deviation
    return Gap(name, narrowest.size, pm, least or 0.0, most, is_given, tuple(needs), judged)


def judge_all(needs: tuple[Room, ...], confidence: float) -> Judged:
    """The judgement on several things of which none must be negative.

    Their errors have lengths in common, so that the chance of all is only known to be at least one
    less the sum of the chances of each to fail (Bonferroni), and at most the least of them. The
    first is the probability, and makes it within; the second makes it outside.

    >>> [judge_all((Room(size, 1.0, 0),), 0.95).verdict for size in (2.0, 1.0, -2.0)]
    ['within', 'undecided', 'outside']
    """
    chances = [room.chance for room in needs]
    all_of_them = max(0.0, 1.0 - math.fsum(1.0 - chance for chance in chances))
    if verdict_of(min(chances), confidence) == "outside":
        return Judged(all_of_them, "outside")
    verdict = verdict_of(all_of_them, confidence)
    return Judged(all_of_them, "undecided" if verdict == "outside" else verdict)
