"""Which offset dowels to fit, and where to aim them.

Both dowels alike, of offset d and aimed at a, move the housing by ``d u(a)``. Aimed where the
housing must go, a pair takes d off the offset. The options are "leave it as it is", each
size in stock, and standard dowels where others are fitted now. All start from where the bore is on
standard dowels, as every round so far has shown it (``trim``).
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.pilot import PilotShift
from sweepsheet.job.model import Dowel, Job, Target
from sweepsheet.maths.clock import direction_of, polar
from sweepsheet.maths.vector import ZERO, Sym2, Vec2
from sweepsheet.maths.verdict import NOT_JUDGED, Judged, judge
from sweepsheet.remedy.dowel_uncertainty import unseen_covariance
from sweepsheet.remedy.history import refit_covariance
from sweepsheet.remedy.response import DowelResponse
from sweepsheet.remedy.seating import Seating


@dataclass(frozen=True, slots=True)
class Option:
    """One thing that could be done: leave it (``leave``), or fit a pair of one offset and aim.

    ``center`` is where the bore is then expected, ``pilot`` where the gearbox axis meets the pilot
    bearing (``None`` where that is not known). ``aim_deg`` is that of the dowels in place where it
    is left. ``likely`` tells whether what it leaves is expected to be inside the limit of what the
    dowels are aimed for, where that has one. ``fits`` tells whether the bolt holes allow the move,
    ``None`` where they were not measured.
    """

    leave: bool
    offset: float
    aim_deg: float
    center: Vec2
    judged: Judged
    pilot: Vec2 | None
    pilot_judged: Judged
    likely: bool
    fits: bool | None

    @property
    def expected_offset(self) -> float:
        """The offset of the bore expected after it."""
        return self.center.length

    @property
    def expected_pilot(self) -> float | None:
        """The offset at the pilot bearing expected after it."""
        return None if self.pilot is None else self.pilot.length

    def target_judged(self, aim_for: Target) -> Judged:
        """The judgement on what the dowels are aimed for."""
        return self.pilot_judged if aim_for == "pilot" else self.judged

    def target_offset(self, aim_for: Target) -> float:
        """What is left of what the dowels are aimed for."""
        left = self.expected_pilot if aim_for == "pilot" else None
        return self.expected_offset if left is None else left


@dataclass(frozen=True, slots=True)
class OptionEvaluator:
    """Weighs options of one job against its limits."""

    job: Job
    latest: Bore
    pilot: PilotShift | None
    common: Sym2
    seating: Seating | None = None

    def option(self, *, leave: bool, dowel: Dowel, center: Vec2, covariance: Sym2) -> Option:
        """An option, with its chances and whether it fits the bolt holes."""
        limits, clearance = self.job.limits, self.job.housing.bolt_clearance
        pilot, pilot_judged = None, NOT_JUDGED
        if self.pilot is not None:
            pilot = center + self.pilot.shift
            spread = covariance + self.pilot.covariance
            pilot_judged = judge(pilot, spread, limits.pilot_offset, limits.confidence)
        aimed, limit = center, limits.bore_offset
        if self.job.stock.aim_for == "pilot" and pilot is not None:
            aimed, limit = pilot, limits.pilot_offset
        return Option(
            leave=leave,
            offset=dowel.offset,
            aim_deg=dowel.aim_deg,
            center=center,
            judged=judge(center, covariance, limits.bore_offset, limits.confidence),
            pilot=pilot,
            pilot_judged=pilot_judged,
            likely=limit is None or aimed.length <= limit,
            # Bolts stand in the middle of their holes on standard dowels.
            fits=None if clearance is None else leave or dowel.offset <= clearance / 2.0,
        )

    def left_alone(self, fitted: tuple[Dowel, Dowel]) -> Option:
        """The option of leaving it as it is. Its offset is 0, whatever dowels are fitted."""
        dowel = Dowel(0.0, fitted[0].aim_deg)
        return self.option(
            leave=True, dowel=dowel, center=self.latest.center, covariance=self.latest.covariance
        )

    def refitted(
        self, offset: float, response: DowelResponse, fitted: tuple[Dowel, Dowel]
    ) -> Option:
        """The option of a pair of this offset, aimed as well as can be.

        The pair that is fitted now does again what it has been seen to do; any other, what is
        written on it.
        """
        wanted = response.bare
        if self.job.stock.aim_for == "pilot" and self.pilot is not None:
            wanted = wanted + self.pilot.shift
        aim = direction_of(-wanted)
        same = fitted[0] == fitted[1] and fitted[0].offset == offset > 0
        move = polar(aim - response.lag_deg if same else aim, offset)
        center = response.after(move) if same else response.bare + move
        known = (
            response.covariance_after(move)
            if same
            else response.covariance_after(ZERO) + unseen_covariance(move)
        )
        spread = known + self.common + refit_covariance(self.job, move, self.seating)
        dowel = Dowel(offset, direction_of(move) if offset else 0.0)
        return self.option(leave=False, dowel=dowel, center=center, covariance=spread)


def options_for(
    weigher: OptionEvaluator, response: DowelResponse | None, fitted: tuple[Dowel, Dowel]
) -> tuple[Option, ...]:
    """Every option, best first: the likeliest to be inside, then the smallest offset left.

    Without a limit, by what is left alone. ``response`` is ``None`` where it is not known what the
    dowels now fitted do: then there is but the one option, to leave them.
    """
    aim_for = weigher.job.stock.aim_for
    options = [weigher.left_alone(fitted)]
    if response is not None:
        standard = fitted[0].offset == fitted[1].offset == 0.0
        sizes = weigher.job.stock.dowel_offsets if standard else (
            0.0, *weigher.job.stock.dowel_offsets,
        )  # fmt: skip
        options += [weigher.refitted(size, response, fitted) for size in sizes]
    # Chances that differ by less than a tenth of a percent are the same chance.
    options.sort(
        key=lambda o: (
            -round(o.target_judged(aim_for).probability or 0.0, 3),
            o.target_offset(aim_for),
        )
    )
    return tuple(options)


def choose(options: tuple[Option, ...], aim_for: Target) -> Option | None:
    """What to do: leave it where that is within, else the best that fits the bolt holes.

    ``None`` where nothing helps: where even the best is expected to stay outside the limit. Then
    another size is needed (``reach``).
    """
    for option in options:
        bore, target = option.judged.verdict, option.target_judged(aim_for).verdict
        if option.leave and bore in ("within", None) and target == "within":
            return option
    helping = (option for option in options if option.fits is not False and option.likely)
    best = next(helping, None)
    return None if best is None or best.target_judged(aim_for).verdict == "outside" else best
