"""How well the housing comes back to its place: what sweeps of the same dowels, seated anew, tell.

Between two rounds a housing was only loosened and torqued again. Its centres then scatter by the
seat itself and by what is new in each sweep. Pooled over all that belong together (a *chain*), with
``m`` squares that are free (two for each time that it was seated again), the variance along any
line is ``s^2 = sum |c - mean|^2 / m``.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.job.model import Job, Round
from sweepsheet.maths.normal import K_95_PLANE
from sweepsheet.maths.pooled import plane_factor
from sweepsheet.maths.quantiles import chi_squared_above
from sweepsheet.maths.vector import ZERO_COVARIANCE, Sym2, mean_of
from sweepsheet.remedy.dowel_uncertainty import at_least, play_covariance
from sweepsheet.sweep.repeats import STATED_DOF

# Scatter is laid to the seat where the dial alone would do as much once in a hundred jobs.
_RARE = 0.01


@dataclass(frozen=True, slots=True)
class Seating:
    """What is known of the seat, in small units.

    ``times``: how often it was seated again. ``radius``: the next sweep of it, seated anew, finds
    the centre within this of where it sits on the average (95 %). ``dial_radius``: the same, if the
    seat did nothing. ``beyond_dial``: whether it scatters more than the dial does. ``play``: the
    doubt of where it comes to rest, for every promise.
    """

    times: int
    radius: float
    dial_radius: float
    beyond_dial: bool
    play: Sym2


def chains_of(rounds: Sequence[Round]) -> list[list[int]]:
    """The rounds, by number, in groups between which dowels or joint were changed.

    >>> from sweepsheet.job.read import read_job
    >>> sweep = {"bore": {"sweeps": [[0, -5, -10, -5]]}}
    >>> again = sweep | {"since": "reseated"}
    >>> data = {"format": "sweepsheet-job", "version": 1, "rounds": [sweep, again, sweep]}
    >>> chains_of(read_job(data).rounds)
    [[0, 1], [2]]
    """
    chains: list[list[int]] = []
    for i in seats_of(rounds):
        if rounds[i].since == "reseated":
            chains[-1].append(i)
        else:
            chains.append([i])
    return chains


def seats_of(rounds: Sequence[Round]) -> list[int]:
    """The rounds, by number, before which the housing itself was touched, and the first.

    A round in which only a plate on it was turned is one with the round before.
    """
    return [i for i, each in enumerate(rounds) if each.since != "plate_turned"]


def _chains_of_this_joint(rounds: Sequence[Round]) -> list[list[int]]:
    """The chains since the joint was last cleaned: one that was mended has a seat of its own."""
    chains = chains_of(rounds)
    cleaned = [i for i, chain in enumerate(chains) if rounds[chain[0]].since == "cleaned"]
    return chains[cleaned[-1] :] if cleaned else chains


def seating_of(job: Job, measured: Sequence[RoundResult]) -> Seating | None:
    """What the rounds tell of the seat; ``None`` where it was not seated again, or is not believed.

    The play of the fit counts as an estimate with ``2 STATED_DOF`` squares. For every promise the
    seat has the larger of two variances, each widened by ``g(m)`` for how few squares it rests on
    (``plane_factor``): what was seen and the play, pooled, and what was seen alone, less what is
    new in every sweep (``w``)::

        max(g(2 STATED_DOF + m) pooled, g(m) s^2 - w)

    So a few tries that agree by chance don't make the seat perfect, and one that differs counts.
    """
    squares, free, dial, new, unlikely = 0.0, 0, 0.0, 0.0, 0.0
    for chain in _chains_of_this_joint(job.rounds):
        bores = [measured[i].bore for i in chain if not measured[i].bore.swept.unreliable]
        if len(bores) < 2:
            continue
        middle = mean_of([bore.center for bore in bores])
        noise = mean_covariance(bores)
        weight = at_least(noise).inverse()
        seen = 2 * (len(bores) - 1)
        apart = [bore.center - middle for bore in bores]
        squares += math.fsum(each.dot(each) for each in apart)
        unlikely += math.fsum(weight.along(each) for each in apart)
        free += seen
        dial += seen * (noise.xx + noise.yy) / 2.0
        new += seen * _new_in_each(bores)
    if not free:
        return None
    stated = play_covariance(job.housing.dowel_clearance).xx
    variance, new, dof = squares / free, new / free, 2 * STATED_DOF
    pooled = (dof * stated + free * max(0.0, variance - new)) / (dof + free)
    own = max(
        _widened(pooled, dof + free),
        _widened(variance, free) - new,
    )
    return Seating(
        times=free // 2,
        radius=plane_factor(free) * math.sqrt(variance),
        dial_radius=K_95_PLANE * math.sqrt(dial / free),
        beyond_dial=chi_squared_above(unlikely, free) < _RARE,
        play=Sym2(own, 0.0, own),
    )


def play_of(job: Job, seating: Seating | None) -> Sym2:
    """The doubt of where the housing comes to rest: as it was seen to, or from its clearance.

    >>> from sweepsheet.job.read import read_job
    >>> rounds = [{"bore": {"sweeps": [[0, -5, -10, -5]]}}]
    >>> data = {"format": "sweepsheet-job", "version": 1, "rounds": rounds}
    >>> round(play_of(read_job(data), None).xx, 5)
    0.08333
    """
    return play_covariance(job.housing.dowel_clearance) if seating is None else seating.play


def mean_covariance(bores: Sequence[Bore]) -> Sym2:
    """What one sweep of these leaves open, on the average; what all sweeps share is not in it."""
    total = ZERO_COVARIANCE
    for bore in bores:
        total = total + bore.noise
    return total.scaled(1.0 / len(bores))


def _new_in_each(bores: Sequence[Bore]) -> float:
    """The variance along a line that scatter of the dial alone gives a centre."""
    fresh = [bore.fresh for bore in bores]
    return math.fsum(each.xx + each.yy for each in fresh) / (2.0 * len(fresh))


def _widened(variance: float, dof: int) -> float:
    """The variance of a normal quantity whose 95 % circle is as wide as one known so well."""
    return variance * (plane_factor(dof) / K_95_PLANE) ** 2
