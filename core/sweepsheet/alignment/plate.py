"""A plate that was bolted on for the sweep: its own error apart from the housing's.

Where the bore of a plate or adapter was swept, its centre is that of the housing and that of the
plate together, ``m = c + e``. Turned half a turn on its pins, the plate's part is turned with it,
``m' = c - e``. So the two sweeps give both (reversal)::

    c = (m + m') / 2        e = (m - m') / 2

each with a quarter of the covariance of both. It takes pins without play, on which the plate goes
either way round. Source: the reversal method, as in Evans, Hocken and Estler, Self-calibration:
reversal, redundancy, error separation, and "absolute testing", CIRP Annals 45/2 (1996), 617-634.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.seat import seat_covariance
from sweepsheet.job.model import Job, Round
from sweepsheet.maths.eccentricity import Eccentricity
from sweepsheet.maths.vector import ZERO, ZERO_COVARIANCE
from sweepsheet.maths.verdict import NOT_JUDGED, judge


@dataclass(frozen=True, slots=True)
class Plate:
    """What is known of the plate: its ``error`` as it was mounted first, or only a bound of it.

    ``error`` is ``None`` where it was not swept turned, ``within`` where no bound was entered.
    """

    error: Eccentricity | None
    within: float | None

    @property
    def is_known(self) -> bool:
        """Whether anything is known, so that the housing's own place can be told."""
        return self.error is not None or self.within is not None


def turns_of(rounds: Sequence[Round]) -> list[int]:
    """For each round, 1 with the plate as it was mounted first, -1 with it turned half a turn.

    >>> from sweepsheet.job.read import read_job
    >>> sweep = {"bore": {"sweeps": [[0, -5, -10, -5]]}}
    >>> data = {"format": "sweepsheet-job", "version": 1}
    >>> rounds = [sweep, sweep | {"since": "plate_turned"}, sweep]
    >>> turns_of(read_job(data | {"rounds": rounds}).rounds)
    [1, -1, -1]
    """
    signs, sign = [], 1
    for each in rounds:
        sign = -sign if each.since == "plate_turned" else sign
        signs.append(sign)
    return signs


def plate_of(job: Job, raw: Sequence[Bore]) -> Plate | None:
    """What the rounds and the job tell of the plate; ``None`` where none was swept.

    Every turn of it gives its error; their mean counts.
    """
    if job.housing.swept_bore != "plate" and not any(_is_turn(each) for each in job.rounds):
        return None
    signs, turned = turns_of(job.rounds), _turned(job, raw)
    if not turned:
        return Plate(None, job.housing.plate_concentricity)
    center, spread, share = ZERO, ZERO_COVARIANCE, 1.0 / len(turned)
    for before, after in turned:
        one, other = raw[before], raw[after]
        center = center + (one.center - other.center).scaled(signs[before] * share / 2.0)
        spread = spread + (one.noise + other.noise).scaled((share / 2.0) ** 2)
    return Plate(Eccentricity(center, spread, NOT_JUDGED), job.housing.plate_concentricity)


def without_plate(job: Job, raw: Sequence[Bore], plate: Plate | None) -> tuple[Bore, ...]:
    """The bores of the housing itself, round by round, judged anew.

    A round that was swept both ways has the mean of the two. Another has the plate's error taken
    out, whose doubt stays; or only the bound in its doubt: anywhere in a circle of it, no place
    likelier than another. With nothing known nothing is judged.
    """
    if plate is None:
        return tuple(raw)
    signs = turns_of(job.rounds)
    pairs = {i: pair for pair in _turned(job, raw) for i in pair}
    found = []
    for i, bore in enumerate(raw):
        if i in pairs:
            one, other = (raw[j] for j in pairs[i])
            center = (one.center + other.center).scaled(0.5)
            noise = (one.noise + other.noise).scaled(0.25)
            fresh = (one.fresh + other.fresh).scaled(0.25)
            changed = replace(bore, center=center, noise=noise, fresh=fresh)
        elif plate.error is not None:
            center = bore.center - plate.error.center.scaled(float(signs[i]))
            changed = replace(bore, center=center, fixed=plate.error.covariance)
        else:
            changed = replace(bore, fixed=seat_covariance(2.0 * (plate.within or 0.0)))
        found.append(_judged_anew(job, changed, bore, is_known=plate.is_known))
    return tuple(found)


def _judged_anew(job: Job, changed: Bore, raw: Bore, *, is_known: bool) -> Bore:
    """With the covariance of its parts; what sag and lift leave in doubt is as it was."""
    common = raw.covariance + raw.noise.scaled(-1.0)
    covariance = changed.noise + changed.fixed + common
    limits = job.limits
    judged = NOT_JUDGED
    if is_known:
        judged = judge(changed.center, covariance, limits.bore_offset, limits.confidence)
    return replace(changed, covariance=covariance, judged=judged)


def _is_turn(each: Round) -> bool:
    return each.since == "plate_turned"


def _turned(job: Job, raw: Sequence[Bore]) -> list[tuple[int, int]]:
    """Rounds between which only the plate was turned, where both sweeps can be believed."""
    return [
        (i - 1, i)
        for i, each in enumerate(job.rounds)
        if _is_turn(each) and not (raw[i - 1].swept.unreliable or raw[i].swept.unreliable)
    ]
