"""Whether there is work for a machine shop, what it is, and what is missing before it can be told.

Metal does not grow back. Only for a job that is surely out, by readings that can be believed and
were seen again, is anything told; the face comes before the bore. Each thing that is missing has a
code and a sentence, ``order.lack.<code>``.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sweepsheet.findings.advice import FIX_FIRST, advice_for, findings_of_now
from sweepsheet.findings.finding import Finding
from sweepsheet.job.model import Hole
from sweepsheet.maths.normal import K_95_PLANE
from sweepsheet.remedy.dowel_uncertainty import at_least
from sweepsheet.remedy.machining import (
    BoreMove,
    FaceCut,
    Place,
    bore_move,
    face_cut,
    shim_places,
)
from sweepsheet.remedy.seating import play_of
from sweepsheet.remedy.squaring import rim_of
from sweepsheet.solution import Solution

# Steps that come before a face is cut, by what is then missing.
BEFORE_A_CUT = {
    "note-return": "return",
    "clean-joint": "again",
    "sweep-face-twice": "twice",
    "steady-the-dial": "steady",
    "find-tilt-cause": "cause",
}


@dataclass(frozen=True, slots=True)
class Order:
    """The work, as far as it can be told, and the codes of what is missing.

    ``shims`` is the other way of putting a tipped housing right, empty where there is none.
    """

    cut: FaceCut | None
    shims: tuple[Place, ...]
    bore: BoreMove | None
    lacks: tuple[str, ...]

    @property
    def offered(self) -> bool:
        """Whether there is work to be given out."""
        return self.cut is not None or self.bore is not None


def order_for(solution: Solution, findings: tuple[Finding, ...]) -> Order | None:
    """The order of a job; ``None`` where neither face nor bore is surely out."""
    if not solution.surely_out:
        return None
    now = findings_of_now(solution.job, findings)
    stops = any(each.level == "stop" and each.code in FIX_FIRST for each in now)
    if stops or solution.must_sweep_again:
        return Order(None, (), None, ("readings",))
    if solution.face_first:
        return _squaring(solution, findings)
    return _boring(solution, findings)


# The face -----------------------------------------------------------------------------------


def _squaring(solution: Solution, findings: tuple[Finding, ...]) -> Order:
    steps = [each.code for each in advice_for(solution, findings)]
    lacks = [BEFORE_A_CUT[code] for code in steps if code in BEFORE_A_CUT]
    job, face, squaring = solution.job, solution.latest.face, solution.squares
    swept = job.rounds[-1].face
    side = job.housing.tilt_from
    if lacks or face is None or swept is None or squaring is None or side is None:
        return Order(None, (), None, tuple(lacks) or ("readings",))
    per_long = job.units.small_per_long
    rim = rim_of(job.housing)
    # The rear face is cut where it was swept; of the front flange only bolts and holes are known.
    on_flange = side == "front" and rim is not None
    radius = rim if on_flange and rim is not None else swept.radius
    bolts = job.housing.bolts if on_flange else ()
    places = bolts or tuple(Hole(hour * 30.0, radius) for hour in (12, 3, 6, 9))
    cut = face_cut(side, face, places, radius, swept.radius, per_long)
    if cut is None or cut.spare <= 0:
        return Order(None, (), None, ("coarse",))
    shims: tuple[Place, ...] = ()
    if squaring.shims is not None:
        shims = shim_places(squaring.shims.shims, bolts, face.slope_covariance, per_long)
    return Order(cut, shims, None, ())


# The bore -----------------------------------------------------------------------------------


def _boring(solution: Solution, findings: tuple[Finding, ...]) -> Order:
    lacks = tuple(_bore_lacks(solution, findings))
    job, limit = solution.job, solution.job.limits.bore_offset
    holes = job.housing.dowel_holes
    if lacks or holes is None or limit is None:
        return Order(None, (), None, lacks)
    move = bore_move(
        solution.latest.bore, holes, limit, play_of(job, solution.seating),
        job.indicator.angle_setting_deg, job.units.small_per_long, job.housing.hole_accuracy,
    )  # fmt: skip
    if move.spare <= 0:
        return Order(None, (), None, ("coarse",))
    return Order(None, (), move, ())


def _bore_lacks(solution: Solution, findings: tuple[Finding, ...]) -> Iterator[str]:
    """What must be known before a bore is cut: of its sweeps, the face, the seat and the holes."""
    if any(each.code == "closing-missing" for each in findings):
        yield "return"
    yield from _sweep_lacks(solution)
    if any(dowel.offset for dowel in solution.job.rounds[-1].dowels):
        yield "stock"
    elif not bore_seen_again(solution):
        yield "seated"
    if solution.job.rounds[-1].bore.contact == "outside":
        yield "spigot"
    if solution.plate is not None:
        yield "plate"
    if solution.seat_first:
        yield "seat"
    if solution.job.housing.dowel_holes is None:
        yield "holes"


def _sweep_lacks(solution: Solution) -> Iterator[str]:
    bore, face = solution.latest.bore, solution.latest.face
    if face is None or not face.trusted:
        yield "face"
    elif face.judged.verdict != "within":
        yield "square"
    if len(bore.swept.fitted.residuals) < 2:
        yield "twice-bore"
    if bore.swept.disagreement is not None or solution.one_is_wrong:
        yield "steady"
    if bore.direction_pm_deg is None:
        yield "direction"


def bore_seen_again(solution: Solution) -> bool:
    """Whether an earlier round on standard dowels, seated anew since, found the bore there too.

    The two places may differ by what their noise and two fits in the play explain (95 %).
    """
    play = play_of(solution.job, solution.seating).scaled(2.0)
    now = solution.latest.bore
    for each, measured in zip(solution.job.rounds[:-1], solution.measured, strict=False):
        before = measured.bore
        if before.swept.unreliable or any(dowel.offset for dowel in each.dowels):
            continue
        spread = now.noise + before.noise + play
        if at_least(spread).inverse().along(now.center - before.center) <= K_95_PLANE**2:
            return True
    return False
