"""What the rounds of a job together tell of its dowels, and the trim that follows from it."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.job.model import Job
from sweepsheet.maths.normal import K_95_PLANE
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.maths.verdict import judge
from sweepsheet.remedy.dowel_uncertainty import PRIOR_SPREAD, aim_covariance, play_covariance
from sweepsheet.remedy.observed_move import ObservedMove, observed_move_of
from sweepsheet.remedy.response import LOOSE_SPREAD, DowelResponse, RoundObservation, response_of
from sweepsheet.remedy.rigid import DowelLine, nominal_move
from sweepsheet.remedy.trim import Trim, trim_for
from sweepsheet.sweep.checks import ROUNDING

# The least variance one way, over that the other way: a spread thinner than this is a line.
_THIN = 1e-9


@dataclass(frozen=True, slots=True)
class History:
    """What is known of the dowels.

    ``response`` is ``None`` where it is not known what the dowels now fitted should do;
    ``observed`` before they can be compared with standard ones; ``trim`` before a like pair was
    fitted and swept, or where it did the opposite of what it should, or its mirror image.
    ``trim_probability`` is ``None`` without a limit.
    """

    response: DowelResponse | None
    observed: ObservedMove | None
    trim: Trim | None
    trim_probability: float | None


def history_of(
    job: Job, measured: tuple[RoundResult, ...], line: DowelLine | None, common: Sym2
) -> History:
    """Compare the rounds; ``common`` is the doubt that they all share."""
    seen = _since_changed(_seen(job, measured, line))
    if not seen:
        return History(None, None, None, None)
    observed = observed_move_of(seen)
    if observed is not None and observed.contradicts:
        # Rounds that contradict what was told of their dowels say nothing more.
        standard = [each for each in seen if each.standard]
        return History(response_of(standard), observed, None, None)
    believed = observed is None or observed.agrees
    response = response_of(seen, PRIOR_SPREAD if believed else LOOSE_SPREAD)
    first, second = job.rounds[-1].dowels
    if first.offset == 0 or first != second:
        return History(response, observed, None, None)
    trim = trim_for(response, first.offset, first.aim_deg)
    spread = trim.covariance + common + refit_covariance(job, trim.move)
    judged = judge(trim.center, spread, job.limits.bore_offset, job.limits.confidence)
    return History(response, observed, trim, judged.probability)


def refit_covariance(job: Job, move: Vec2) -> Sym2:
    """What fitting dowels anew leaves open: the play of their fit, and how well they are aimed."""
    play = play_covariance(job.housing.dowel_clearance)
    return play + aim_covariance(move, job.stock.aim_setting_deg)


def _seen(
    job: Job, measured: tuple[RoundResult, ...], line: DowelLine | None
) -> list[RoundObservation]:
    """The rounds as the dowels' doings see them; none where the latest dowels can't be told.

    The housing sits as it was found in the first round; every round after is a new fit. An earlier
    round whose sweep can't be believed tells nothing, and can't be taken again.
    """
    seen = []
    for i, (each, found) in enumerate(zip(job.rounds, measured, strict=True)):
        move = nominal_move(each.dowels, line)
        if move is None:
            if i == len(measured) - 1:
                return []
            continue
        if found.bore.swept.unreliable and i < len(measured) - 1:
            continue
        covariance = found.bore.swept.uncertainty.covariance
        if i:
            covariance = covariance + refit_covariance(job, move)
        sizes = (each.dowels[0].offset, each.dowels[1].offset)
        seen.append(RoundObservation(found.bore.center, at_least(covariance), sizes, move))
    return seen


def _since_changed(seen: list[RoundObservation]) -> list[RoundObservation]:
    """The rounds since the housing last came to another place on the same standard dowels.

    A joint that was cleaned or a housing that was seated anew begins a history of its own: where
    two rounds on standard dowels differ by more than their noise and two fits explain (95 %), what
    was before the later one no longer tells anything.
    """
    start, last = 0, None
    for i, each in enumerate(seen):
        if not each.standard:
            continue
        if last is not None:
            spread = each.covariance + last.covariance
            if spread.inverse().along(each.center - last.center) > K_95_PLANE**2:
                start = i
        last = each
    return seen[start:]


def at_least(covariance: Sym2) -> Sym2:
    """A covariance that can be inverted, however good the dial is said to be.

    Neither nothing at all, nor nothing beside what it is the other way.

    >>> at_least(Sym2(0.0, 0.0, 4.0)).xx > 0.0
    True
    """
    floor = ROUNDING**2 + _THIN * (covariance.xx + covariance.yy)
    return covariance + Sym2(floor, 0.0, floor)
