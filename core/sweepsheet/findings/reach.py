"""How far the dowels in the drawer reach, and what would do where they don't.

A pair of offset d leaves ``|w - d|`` of what must be moved by w, and needs ``2 d`` of clearance on
the diameter of the bolt holes: the bolts stand in their middle on stock dowels, and with offset
dowels only the move counts, not the aim.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from sweepsheet.job.model import Housing, Target
from sweepsheet.maths.clock import polar
from sweepsheet.maths.vector import Vec2
from sweepsheet.remedy.dowels import Option
from sweepsheet.remedy.unequal_pairs import Pair
from sweepsheet.solution import Solution

Kind = Literal["stock", "tight", "between", "unlike", "beyond"]

_SURE, _LIKELY, _OUT = 2, 1, 0


@dataclass(frozen=True, slots=True)
class Reach:
    """What dowels can do for one job.

    ``kind`` is ``stock`` where a pair in the drawer brings it within, surely or only expected to
    (``sure`` tells which); ``tight`` where one would and the bolt holes don't allow it; ``unlike``
    where two dowels that differ bring it within; ``between`` where another size is needed;
    ``beyond`` where it is further off than the largest dowel and the limit together.

    ``size`` is the offset of the pair that is spoken of, or for ``unlike``, ``between`` and
    ``beyond`` of the equal pair that would be needed; ``left`` what the kind's best leaves: that
    size of the drawer, the unlike pair, or for ``between`` and ``beyond`` the nearest in the
    drawer. ``clearance`` is what ``size`` needs in the bolt holes, on the diameter, and ``fits``
    whether they have it, ``None`` where they were not measured. ``pair`` is the best unlike pair
    that is surely within and goes in, whatever the kind.
    """

    kind: Kind
    size: float
    left: float
    sure: bool
    clearance: float
    fits: bool | None
    pair: Pair | None


def reach_of(solution: Solution) -> Reach | None:
    """How far the drawer reaches; ``None`` where it is not needed or not known.

    That is, where what the dowels are aimed for is within or has no limit, or where it is not
    known what the dowels now fitted do.

    Asked in this order: a size of the drawer that fits and is surely within, or is expected to be
    where none is sure; one that does better and does not fit the bolt holes; a pair of unlike
    dowels; another size.

    >>> from sweepsheet.job.read import read_job
    >>> from sweepsheet.solution import work_out
    >>> rounds = [{"bore": {"sweeps": [[0, -10.5, -21, -10.5]], "closing": [0]}}]
    >>> job = {"format": "sweepsheet-job", "version": 1, "rounds": rounds}
    >>> job["indicator"] = {"sag": 0}
    >>> reach = reach_of(work_out(read_job(job | {"limits": {"bore_offset": 3}})))
    >>> reach.kind, reach.size, reach.clearance
    ('between', 10.5, 21.0)
    """
    aim_for = solution.job.stock.aim_for
    needed = _needed(solution)
    limit = _limit(solution)
    (now,) = (option for option in solution.options if option.leave)
    if needed is None or limit is None or now.target_judged(aim_for).verdict == "within":
        return None
    sizes = sorted((o for o in solution.options if not o.leave), key=lambda o: o.offset)
    ranks = {o.offset: _rank(o, aim_for) for o in sizes}
    fitting = [o for o in sizes if o.fits is not False]
    fit_rank = max((ranks[o.offset] for o in fitting), default=_OUT)
    any_rank = max(ranks.values(), default=_OUT)
    pair = None if aim_for == "pilot" and now.pilot is not None else _pair(solution)
    if fit_rank != _OUT and fit_rank == any_rank:
        # The options come best first.
        best = next(o for o in solution.options if o in fitting and ranks[o.offset] == fit_rank)
        left, sure = best.target_offset(aim_for), fit_rank == _SURE
        return _of("stock", solution, best.offset, left, pair, sure=sure)
    if any_rank > fit_rank:
        # The smallest that does: it needs the least clearance.
        tight = next(o for o in sizes if ranks[o.offset] == any_rank)
        left = tight.target_offset(aim_for)
        return _of("tight", solution, tight.offset, left, pair, sure=any_rank == _SURE)
    if pair is not None:
        return _of("unlike", solution, needed, pair.expected_offset, pair, sure=True)
    left = min(option.target_offset(aim_for) for option in solution.options)
    largest = max(solution.job.stock.dowel_offsets, default=None)
    far = largest is not None and needed > largest + limit
    return _of("beyond" if far else "between", solution, needed, left, None, sure=False)


def _rank(option: Option, aim_for: Target) -> int:
    if option.target_judged(aim_for).verdict == "within":
        return _SURE
    return _LIKELY if option.likely else _OUT


def _of(
    kind: Kind, solution: Solution, size: float, left: float, pair: Pair | None, *, sure: bool
) -> Reach:
    room = solution.job.housing.bolt_clearance
    fits = None if room is None else 2.0 * size <= room
    return Reach(kind, size, left, sure, 2.0 * size, fits, pair)


def _needed(solution: Solution) -> float | None:
    """By how much a pair would have to move it from where it is on stock dowels."""
    response, latest = solution.history.response, solution.latest
    if response is None:
        return None
    if solution.job.stock.aim_for == "pilot" and latest.pilot is not None:
        return (response.bare + (latest.pilot.center - latest.bore.center)).length
    return response.bare.length


def _limit(solution: Solution) -> float | None:
    """The limit of what the dowels are aimed for; ``None`` where nothing is judged."""
    limits = solution.job.limits
    for_pilot = solution.job.stock.aim_for == "pilot" and solution.latest.pilot is not None
    return limits.pilot_offset if for_pilot else limits.bore_offset


def _pair(solution: Solution) -> Pair | None:
    """The best pair of unlike dowels that is surely within and goes in."""
    per_long = solution.job.units.small_per_long
    good = (
        pair
        for pair in solution.pairs
        if pair.judged.verdict == "within" and _goes_in(pair, solution.job.housing, per_long)
    )
    return next(good, None)


def _goes_in(pair: Pair, housing: Housing, per_long: float) -> bool:
    """Whether the bolt holes allow an unlike pair, which turns the housing as well.

    A bolt at r goes by ``move + turn k x r``; where the bolts were not measured, by the move alone.
    """
    if housing.bolt_clearance is None:
        return True
    moved = pair.moved
    bolts = [polar(b.at_deg, b.radius * per_long) for b in housing.bolts]
    arms: Iterable[Vec2] = bolts or [Vec2(0.0, 0.0)]
    moves = (moved.move + Vec2(-moved.turn * arm.y, moved.turn * arm.x) for arm in arms)
    return all(2.0 * move.length <= housing.bolt_clearance for move in moves)
