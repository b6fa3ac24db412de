"""What the rounds of a job together tell of its dowels, and the trim that follows from it."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.job.model import Job
from sweepsheet.maths.normal import K_95_PLANE
from sweepsheet.maths.vector import Sym2, Vec2, mean_of
from sweepsheet.maths.verdict import judge
from sweepsheet.remedy.dowel_uncertainty import PRIOR_SPREAD, aim_covariance, at_least
from sweepsheet.remedy.observed_move import ObservedMove, observed_move_of
from sweepsheet.remedy.response import LOOSE_SPREAD, DowelResponse, RoundObservation, response_of
from sweepsheet.remedy.rigid import DowelLine, nominal_move
from sweepsheet.remedy.seating import Seating, chains_of, mean_covariance, play_of
from sweepsheet.remedy.trim import Trim, trim_for


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
    job: Job,
    measured: tuple[RoundResult, ...],
    line: DowelLine | None,
    common: Sym2,
    seating: Seating | None = None,
) -> History:
    """Compare the rounds; ``common`` is the doubt that they all share, ``seating`` the seat's."""
    seen = _since_changed(_seen(job, measured, line, seating))
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
    spread = trim.covariance + common + refit_covariance(job, trim.move, seating)
    judged = judge(trim.center, spread, job.limits.bore_offset, job.limits.confidence)
    return History(response, observed, trim, judged.probability)


def refit_covariance(job: Job, move: Vec2, seating: Seating | None = None) -> Sym2:
    """What fitting dowels anew leaves open: where the housing comes to rest, and the dowels' aim.

    How well it comes back to its place is known from seating it again, or else from the play.
    """
    return play_of(job, seating) + aim_covariance(move, job.stock.aim_setting_deg)


def _seen(
    job: Job, measured: tuple[RoundResult, ...], line: DowelLine | None, seating: Seating | None
) -> list[RoundObservation]:
    """The rounds as the dowels' doings see them; none where the latest dowels can't be told.

    The housing sits as it was found in the first round; every round after is a new fit, and those
    in which it was only seated again are one with the round before: the mean of their centres,
    whose seats average out. An earlier round whose sweep can't be believed tells nothing, and can't
    be taken again.
    """
    seen = []
    chains = chains_of(job.rounds)
    for chain in chains:
        is_latest = chain is chains[-1]
        dowels = job.rounds[chain[0]].dowels
        move = nominal_move(dowels, line)
        if move is None:
            if is_latest:
                return []
            continue
        bores = [measured[i].bore for i in chain]
        believed = [bore for bore in bores if not bore.swept.unreliable]
        if not believed:
            if not is_latest:
                continue
            believed = bores[-1:]
        center = mean_of([bore.center for bore in believed])
        covariance = mean_covariance(believed)
        if seating is not None:
            covariance = covariance + seating.play.scaled(1.0 / len(believed))
        elif chain[0]:
            covariance = covariance + play_of(job, None)
        if chain[0]:
            covariance = covariance + aim_covariance(move, job.stock.aim_setting_deg)
        sizes = (dowels[0].offset, dowels[1].offset)
        seen.append(RoundObservation(center, at_least(covariance), sizes, move))
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
