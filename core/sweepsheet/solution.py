"""The whole working-out of a job, in the order of the work: face, bore, pilot line, dowels."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.bore import vertical_covariance
from sweepsheet.alignment.face import Face
from sweepsheet.alignment.plate import Plate
from sweepsheet.alignment.rotating_part import Runout, measure_rotating_part
from sweepsheet.alignment.rounds import RoundResult, measure_rounds
from sweepsheet.alignment.seat import Seat, seat_of
from sweepsheet.job.model import Job
from sweepsheet.maths.normal import K_95_PLANE, K_99_PLANE
from sweepsheet.maths.vector import ZERO, Sym2, Vec2
from sweepsheet.remedy.chip import ChipEffect, chip_slope, effect_of
from sweepsheet.remedy.dowel_uncertainty import at_least
from sweepsheet.remedy.dowels import Option, OptionEvaluator, choose, options_for
from sweepsheet.remedy.history import History, history_of
from sweepsheet.remedy.response import DowelResponse
from sweepsheet.remedy.rigid import DowelLine
from sweepsheet.remedy.seating import Seating, play_of, seating_of, seats_of
from sweepsheet.remedy.settling import Settling, bore_settling, face_settling, too_coarse
from sweepsheet.remedy.spacer import DepthFit, depth_fit
from sweepsheet.remedy.squaring import Squaring, rim_of, square
from sweepsheet.remedy.unequal_pairs import Pair, pairs_for
from sweepsheet.sweep.analysis import must_be_repeated


@dataclass(frozen=True, slots=True)
class Solution:
    """A job and all that was worked out from it.

    ``measured`` has one for each round; all else is worked from the latest, and from what the
    rounds together tell of the dowels. ``too_coarse``: even a perfect bore could not be shown to
    hold the limit by such readings.
    """

    job: Job
    measured: tuple[RoundResult, ...]
    plate: Plate | None
    seat: Seat | None
    seating: Seating | None
    depth: DepthFit | None
    squaring: Squaring | None
    history: History
    options: tuple[Option, ...]
    choice: Option | None
    pairs: tuple[Pair, ...]
    chip: ChipEffect | None
    companions: tuple[Runout, ...]
    face_settling: Settling | None
    too_coarse: bool
    bore_settling: Settling | None

    @property
    def latest(self) -> RoundResult:
        """What the latest round tells."""
        return self.measured[-1]

    @property
    def face_first(self) -> bool:
        """Whether the face must be put right before anything is said of dowels."""
        face = self.latest.face
        return face is not None and face.judged.verdict == "outside"

    @property
    def surely_out(self) -> bool:
        """Whether the face or the bore is outside its limit beyond doubt."""
        return self.face_first or self.latest.bore.judged.verdict == "outside"

    @property
    def face_rules(self) -> bool:
        """Whether the face comes before anything is done about the bore.

        So it does where it is out, where it is too close to call and measuring may settle it, and
        where end play may hide that it is out.
        """
        face = self.latest.face
        if face is None or face.limit is None:
            return False
        if not face.trusted:
            return face.runout > face.limit
        settling = self.face_settling
        return self.face_first or (settling is not None and settling.can_settle)

    @property
    def squares(self) -> Squaring | None:
        """How to square the face, where its readings call for it: surely out, and to be trusted."""
        face = self.latest.face
        out = self.face_first and face is not None and not face.swept.unreliable
        return self.squaring if out else None

    @property
    def face_changed(self) -> FaceChange | None:
        """How the face came to lean more than in the last round that tells, beyond noise (99 %)."""
        now, swept = self.latest.face, self.job.rounds[-1].face
        if now is None or swept is None or not now.trusted or now.swept.unreliable:
            return None
        radius = swept.radius * self.job.units.small_per_long
        for n in range(len(self.measured) - 1, 0, -1):
            before = self.measured[n - 1].face
            if before is None or not before.trusted or before.swept.unreliable:
                continue
            miss, apart = _tilts_apart(now, before, radius)
            changed = apart > K_99_PLANE**2
            more = now.slope.length > before.slope.length
            return FaceChange(n, 2.0 * miss.length) if changed and more else None
        return None

    @property
    def tilt_seen_again(self) -> bool:
        """Whether an earlier round, its joint put together anew since, showed the same tilt.

        The two slopes may differ by what their noise explains (95 %, chi-square of two).
        """
        face, swept = self.latest.face, self.job.rounds[-1].face
        if face is None or swept is None or not self.face_first or face.swept.unreliable:
            return False
        radius = swept.radius * self.job.units.small_per_long
        for measured in self.measured[: seats_of(self.job.rounds)[-1]]:
            before = measured.face
            if before is None or before.judged.verdict != "outside" or before.swept.unreliable:
                continue
            _, apart = _tilts_apart(face, before, radius)
            if apart <= K_95_PLANE**2:
                return True
        return False

    @property
    def pilot_out(self) -> bool:
        """Whether the gearbox axis is surely outside its limit at the pilot bearing."""
        pilot = self.latest.pilot
        return pilot is not None and pilot.judged.verdict == "outside"

    @property
    def wrong_way(self) -> bool:
        """Whether the bore went opposite to the aim of its dowels, or as if left were right."""
        return self.history.observed is not None and self.history.observed.contradicts

    @property
    def moved_otherwise(self) -> bool:
        """Whether the bore did not go where its dowels should have put it: no size cures that."""
        return self.history.observed is not None and not self.history.observed.agrees

    @property
    def must_sweep_again(self) -> bool:
        """Whether readings of the latest round, or of a part that turns, can't be right."""
        job, now = self.job, self.job.rounds[-1]
        swept = [(self.latest.bore.swept, now.bore.sweeps)]
        if self.latest.face is not None and now.face is not None:
            swept.append((self.latest.face.swept, now.face.sweeps))
        for part, runout in zip(job.companions, self.companions, strict=True):
            swept.append((runout.swept, part.sweeps))
        return any(must_be_repeated(*each, job.indicator, job.units) for each in swept)

    @property
    def one_is_wrong(self) -> bool:
        """Whether one of four readings must be wrong, or the bore is not round, and it matters."""
        bore = self.latest.bore
        return bore.swept.pairs_differ and bore.judged.verdict != "within"

    @property
    def seat_first(self) -> bool:
        """Whether no dowel can hold: the housing, seated anew, lands anywhere beyond the limit."""
        seating, limit = self.seating, self.job.limits.bore_offset
        if seating is None or limit is None or not seating.beyond_dial:
            return False
        return self.latest.bore.judged.verdict != "within" and seating.radius > limit

    @property
    def plate_unknown(self) -> bool:
        """Whether a plate was swept of which nothing is known: its error is in the readings."""
        return self.plate is not None and not self.plate.is_known

    @property
    def something_first(self) -> bool:
        """Whether anything comes before the dowels: readings, face, a wrong move, a tight fit."""
        tight = self.seat is not None and self.seat.clearance < 0
        differ = self.latest.bore.swept.disagreement is not None or self.one_is_wrong
        wrong = self.must_sweep_again or differ or self.wrong_way or self.plate_unknown
        return wrong or self.face_rules or self.seat_first or tight

    @property
    def chosen(self) -> Option | None:
        """The option to take now; ``None`` where something else comes first, or nothing helps."""
        return None if self.something_first else self.choice

    @property
    def planned(self) -> Option | None:
        """The dowels to fit now; ``None`` to leave it, or where something else comes first."""
        return None if self.chosen is None or self.chosen.leave else self.chosen


@dataclass(frozen=True, slots=True)
class FaceChange:
    """By how much the face leans otherwise than in round ``since`` (from 1), as runout."""

    since: int
    runout: float


def _tilts_apart(now: Face, before: Face, radius: float) -> tuple[Vec2, float]:
    """By how much two tilts differ at a radius, and the chi-square (of two) of that."""
    miss = (now.slope - before.slope).scaled(radius)
    spread = (now.slope_covariance + before.slope_covariance).scaled(radius**2)
    return miss, at_least(spread).inverse().along(miss)


def work_out(job: Job) -> Solution:
    """Everything there is to know about a checked job."""
    housing, per_long = job.housing, job.units.small_per_long
    measured, plate = measure_rounds(job)
    bore, face = measured[-1].bore, measured[-1].face
    line = None
    if housing.dowel_holes is not None:
        line = DowelLine.of(housing.dowel_holes, per_long)
    common = vertical_covariance(job.indicator, job.crank) + bore.fixed
    seating = seating_of(job, measured)
    history = history_of(job, measured, line, common, seating)
    way = None if measured[-1].pilot is None else measured[-1].pilot.way
    options = options_for(
        OptionEvaluator(job, bore, way, common, seating), history.response, job.rounds[-1].dowels
    )
    coarse = too_coarse(job, bore)
    return Solution(
        job=job,
        measured=measured,
        plate=plate,
        seat=seat_of(job, bore),
        seating=seating,
        depth=depth_fit(job),
        squaring=None if face is None else square(job, bore, face),
        history=history,
        options=options,
        choice=choose(options, job.stock.aim_for),
        pairs=_pairs(job, history.response, line, common + play_of(job, seating)),
        chip=_chip(job),
        companions=tuple(
            measure_rotating_part(part, job.indicator, job.limits.confidence)
            for part in job.companions
        ),
        face_settling=face_settling(job, face),
        too_coarse=coarse,
        bore_settling=bore_settling(job, bore, coarse=coarse),
    )


def _pairs(
    job: Job, response: DowelResponse | None, line: DowelLine | None, fit: Sym2
) -> tuple[Pair, ...]:
    """Pairs of unlike dowels, where the holes were measured; ``fit``: what any fit leaves open."""
    if line is None or response is None:
        return ()
    spread = response.covariance_after(ZERO) + fit
    return pairs_for(response.bare, spread, line, job.housing.dowel_clearance, job)


def _chip(job: Job) -> ChipEffect | None:
    """What the chip that was supposed does. The far rim is where it was measured, or as far out."""
    if job.chip is None:
        return None
    housing, per_long = job.housing, job.units.small_per_long
    rim = max(job.chip.radius, rim_of(housing) or 0.0)
    lengths = (housing.depth, housing.pilot_distance, housing.tail_distance)
    depth, nose, tail = (None if d is None else d * per_long for d in lengths)
    slope = chip_slope(job.chip.height, job.chip.at_deg, job.chip.radius * per_long, rim * per_long)
    return effect_of(slope, job.chip.joint, depth, nose, tail)
