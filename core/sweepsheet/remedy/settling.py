"""What would settle a verdict that is too close to call: which measure gains most, and by how much.

The doubt of a sweep has parts (``uncertainty``, ``bore.vertical_covariance``). Each measure makes
one of them smaller: a sag test the doubt in height, turning a plate that was swept the plate's own,
one more sweep the scatter, eight positions everything that is new at each position, a finer dial
what the dial itself is worth. What is left after it is worked out from the parts, with ``n`` even
positions and ``m`` sweeps as ``(2/n) (dial**2 + setting**2 + lack**2 + scatter**2/m)``. Whether it
settles the verdict is asked at the offset as it was found; a sag test may find any sag there may
be, so it is asked for none, half and all of it.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from sweepsheet.alignment.bore import Bore, vertical_covariance
from sweepsheet.alignment.face import Face
from sweepsheet.job.model import Crank, Indicator, Job
from sweepsheet.job.sag import SagTest
from sweepsheet.maths.normal import offset_half_width
from sweepsheet.maths.units import UnitSystem
from sweepsheet.maths.vector import ZERO, ZERO_COVARIANCE, Sym2, Vec2
from sweepsheet.maths.verdict import judge
from sweepsheet.sweep.analysis import SweepAnalysis
from sweepsheet.sweep.corrections import contact_factor
from sweepsheet.sweep.uncertainty import rectangular, step_uncertainty

Code = Literal["sag", "plate", "sweep", "positions", "dial"]

# What a mechanic can be asked for: more than three sweeps or eight positions gain little more.
MOST_SWEEPS_ASKED = 3
POSITIONS_ASKED = 8
# A fine dial, in thou: read to a tenth, right to two tenths. Common practice, no source.
FINE_STEP, FINE_ACCURACY = 0.1, 0.2
_TRIES = 3


@dataclass(frozen=True, slots=True)
class Measure:
    """One way of measuring better: the half width after it, and whether it may settle it."""

    code: Code
    pm_after: float
    settles: bool


@dataclass(frozen=True, slots=True)
class Settling:
    """The measures that are left, best first, and whether they may settle it, one or all together.

    ``pm_now`` and ``pm_after`` are 95 % half widths of the offset (of the runout for a face).
    """

    pm_now: float
    measures: tuple[Measure, ...]
    can_settle: bool

    @property
    def best(self) -> Measure | None:
        """What to do first; ``None`` where nothing is left."""
        return self.measures[0] if self.measures else None


def too_coarse(job: Job, bore: Bore) -> bool:
    """Whether even a perfect bore could not be shown to hold the limit by such readings."""
    limits = job.limits
    if limits.bore_offset is None:
        return False
    at_best = judge(ZERO, bore.covariance, limits.bore_offset, limits.confidence)
    return at_best.verdict != "within"


def bore_settling(job: Job, bore: Bore, *, coarse: bool) -> Settling | None:
    """What would settle the bore; ``None`` where it is not too close to call.

    Where the readings are too ``coarse`` to show even a perfect bore to hold the limit, whatever
    the verdict: what would make them fine enough for that.

    >>> from sweepsheet.job.read import read_job
    >>> from sweepsheet.alignment.rounds import measure_round
    >>> rounds = [{"bore": {"sweeps": [[0, -4.5, -9, -4.5]], "closing": [0]}}]
    >>> data = {"format": "sweepsheet-job", "version": 1, "rounds": rounds}
    >>> job = read_job(data | {"indicator": {"holder": "jointed_arm"}})
    >>> bore_settling(job, measure_round(job, job.rounds[0]).bore, coarse=False).best.code
    'sag'
    """
    if job.limits.bore_offset is None or not (coarse or bore.judged.verdict == "undecided"):
        return None
    case = _Case(
        center=ZERO if coarse else bore.center,
        swept=bore.swept,
        noise=bore.noise,
        fixed=bore.fixed,
        limit=job.limits.bore_offset,
        confidence=job.limits.confidence,
        indicator=job.indicator,
        crank=job.crank,
        units=job.units,
        shown=1.0,
        at_best=coarse,
    )
    return case.settling()


def face_settling(job: Job, face: Face | None) -> Settling | None:
    """What would settle the latest face; ``None`` where it is not too close to call.

    Sag is not in it.
    """
    swept = job.rounds[-1].face
    if face is None or swept is None or face.limit is None or face.judged.verdict != "undecided":
        return None
    harmonic = face.slope.scaled(swept.radius * job.units.small_per_long)
    case = _Case(
        center=harmonic,
        swept=face.swept,
        noise=face.swept.uncertainty.covariance,
        fixed=ZERO_COVARIANCE,
        limit=face.limit / 2.0,
        confidence=job.limits.confidence,
        indicator=job.indicator,
        crank=Crank("vertical", 0.0),
        units=job.units,
        shown=2.0,
        at_best=False,
    )
    return case.settling()


@dataclass(frozen=True, slots=True)
class _Case:
    """One verdict to be settled; ``shown`` is the width that is shown over that of ``center``.

    ``at_best`` asks whether a perfect bore could be shown to hold the limit, and nothing else.
    """

    center: Vec2
    swept: SweepAnalysis
    noise: Sym2
    fixed: Sym2
    limit: float
    confidence: float
    indicator: Indicator
    crank: Crank
    units: UnitSystem
    shown: float
    at_best: bool

    def settling(self) -> Settling:
        codes = tuple(self._left())
        measures = [
            Measure(code, self.shown * self._pm((code,)), self._settles((code,))) for code in codes
        ]
        measures.sort(key=lambda m: (not m.settles, m.pm_after))
        can = any(m.settles for m in measures) or self._settles(codes)
        return Settling(self.shown * self._pm(()), tuple(measures), can)

    def _left(self) -> Iterable[Code]:
        """The measures that were not taken yet."""
        dial = self.indicator
        low, high = dial.sag_range
        if self.crank.axis == "horizontal" and high > low:
            yield "sag"
        if self.fixed != ZERO_COVARIANCE:
            yield "plate"
        if self._sweeps < MOST_SWEEPS_ASKED:
            yield "sweep"
        if self._positions < POSITIONS_ASKED:
            yield "positions"
        fine = self._finer()
        if fine.step < dial.step or fine.accuracy < dial.accuracy:
            yield "dial"

    @property
    def _sweeps(self) -> int:
        return len(self.swept.fitted.residuals)

    @property
    def _positions(self) -> int:
        return sum(m is not None for m in self.swept.means)

    def _finer(self) -> Indicator:
        thou = self.units.small_per_inch / 1000.0
        step = min(self.indicator.step, FINE_STEP * thou)
        return replace(
            self.indicator, step=step, accuracy=min(self.indicator.accuracy, FINE_ACCURACY * thou)
        )

    def _part(self, dial: Indicator, positions: int, sweeps: int) -> float:
        """The variance of one component of the harmonic."""
        doubt, factor = self.swept.uncertainty, contact_factor(dial.contact_angle_deg)
        setting = sum(s * s for s in doubt.setting) / len(doubt.setting)
        of_dial = factor**2 * (step_uncertainty(dial.step) ** 2 + rectangular(dial.accuracy) ** 2)
        every = of_dial + setting + doubt.lack_of_fit**2 + doubt.scatter**2 / sweeps
        return 2.0 / positions * every

    def _covariance(self, codes: tuple[Code, ...]) -> Sym2:
        dial = self._finer() if "dial" in codes else self.indicator
        positions = max(self._positions, POSITIONS_ASKED if "positions" in codes else 0)
        sweeps = self._sweeps + ("sweep" in codes)
        before = self._part(self.indicator, self._positions, self._sweeps)
        after = self._part(dial, positions, sweeps)
        found = self.noise.scaled(after / before if before > 0 else 1.0)
        # The mean of two sweeps, the plate turned between them.
        found = found.scaled(0.5) if "plate" in codes else found + self.fixed
        if "sag" in codes:
            low, high = dial.sag_range
            dial = replace(dial, sag=SagTest((low + high) / 2.0, _TRIES, 0.0), reach=None)
        return found + vertical_covariance(dial, self.crank)

    def _pm(self, codes: tuple[Code, ...]) -> float:
        return offset_half_width(self.center, self._covariance(codes))

    def _settles(self, codes: tuple[Code, ...]) -> bool:
        """Whether the verdict could be another with these measures taken."""
        covariance = self._covariance(codes)
        if self.at_best:
            return judge(ZERO, covariance, self.limit, self.confidence).verdict == "within"
        low, high = self.indicator.sag_range
        reach = (high - low) / 4.0 if "sag" in codes else 0.0
        places = (self.center, self.center + Vec2(0.0, reach), self.center - Vec2(0.0, reach))
        verdicts = (judge(p, covariance, self.limit, self.confidence).verdict for p in places)
        return any(verdict != "undecided" for verdict in verdicts)
