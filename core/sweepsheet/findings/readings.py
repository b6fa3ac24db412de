"""Whether the readings of a sweep can be believed."""

from __future__ import annotations

from collections.abc import Iterator

from sweepsheet.findings.finding import Finding, finding
from sweepsheet.job.model import Job, Sweeps
from sweepsheet.sweep.analysis import SweepAnalysis, tiny_reading
from sweepsheet.sweep.checks import ROUNDING
from sweepsheet.words.messages import ClockPosition, Distance, Message

# The second harmonic is spoken of beyond what noise does once in a hundred.
_RAYLEIGH_99 = 3.0349


def reading_findings(
    job: Job, sweeps: Sweeps, swept: SweepAnalysis, what: Message, field: str
) -> Iterator[Finding]:
    """What the checks of one kind of sweep found, whatever was swept; ``what`` names it."""
    yield from _closing_findings(job, sweeps, swept.closing_limit, what, field)
    foreign = swept.foreign
    if foreign is not None:
        yield finding(
            "foreign-reading", "stop", f"{field}.sweeps", what=what,
            at=ClockPosition(foreign.position_deg), excess=Distance(abs(foreign.excess), job.units),
            sense=Message("sense.high" if foreign.excess > 0 else "sense.low"),
        )  # fmt: skip
    differ = swept.disagreement
    if differ is not None:
        yield finding(
            "sweeps-disagree", "caution", f"{field}.sweeps.{differ.sweep}", what=what,
            at=ClockPosition(differ.position_deg), excess=Distance(differ.span, job.units),
        )  # fmt: skip
    positions = swept.fitted.positions_deg
    missing = [a for a, m in zip(positions, swept.means, strict=True) if m is None]
    if missing:
        yield finding(
            "not-reached", "note", f"{field}.sweeps", what=what,
            at=tuple(ClockPosition(a) for a in missing), left=len(positions) - len(missing),
        )  # fmt: skip
    if swept.fitted.dof == 0:
        yield finding("no-check", "caution", f"{field}.positions_deg", what=what)
    tiny = tiny_reading(sweeps, job.indicator, job.units)
    if tiny is not None:
        yield finding("looks-like-inches", "stop", f"{field}.sweeps", what=what, largest=tiny)


def _closing_findings(
    job: Job, sweeps: Sweeps, most: float, what: Message, field: str
) -> Iterator[Finding]:
    """The return to zero of each sweep, which may be off by ``most``."""
    several = len(sweeps.closing) > 1
    for j, closing in enumerate(sweeps.closing):
        where = f"{field}.closing.{j}"
        numbered = Message("sweep.numbered", {"n": j + 1, "what": what})
        sweep = numbered if several else Message("sweep.only", {"what": what})
        if closing is None:
            yield finding("closing-missing", "note", where, sweep=sweep)
        elif abs(closing) > most:
            yield finding(
                "closing-error", "stop", where, sweep=sweep,
                error=Distance(abs(closing), job.units), most=Distance(most, job.units),
            )  # fmt: skip
        elif closing != 0:
            yield finding(
                "closing-spread",
                "note",
                where,
                sweep=sweep,
                error=Distance(abs(closing), job.units),
            )


def roundness_findings(job: Job, swept: SweepAnalysis, field: str) -> Iterator[Finding]:
    """Out-of-round where five or more positions tell it, else the pair sums of four."""
    if swept.foreign is not None:
        return
    noise = swept.uncertainty.noise
    second = swept.second
    if second is not None:
        if second.tir > 2.0 * _RAYLEIGH_99 * noise * second.spread + ROUNDING:
            yield finding(
                "out-of-round", "caution", f"{field}.sweeps",
                tir=Distance(second.tir, job.units), at=ClockPosition(second.at_deg),
                opposite=ClockPosition(second.at_deg + 180.0),
            )  # fmt: skip
        return
    pairs = swept.pairs
    if pairs is not None and swept.pairs_differ:
        start = pairs.at_deg
        yield finding(
            "pair-sums", "caution", f"{field}.sweeps",
            first=ClockPosition(start), second=ClockPosition(start + 180.0),
            third=ClockPosition(start + 270.0), fourth=ClockPosition(start + 90.0),
            difference=Distance(abs(pairs.difference), job.units),
        )  # fmt: skip


def warp_findings(
    job: Job, swept: SweepAnalysis, limit: float | None, field: str
) -> Iterator[Finding]:
    """What a face shows beside its tilt, and whether the dial's own TIR breaks the limit."""
    if swept.foreign is not None or swept.fitted.dof == 0:
        return
    if swept.warped:
        yield finding(
            "face-warp", "caution", f"{field}.sweeps",
            total=Distance(swept.total_reading, job.units),
            tilt=Distance(swept.fitted.tir, job.units), rest=Distance(swept.rest, job.units),
        )  # fmt: skip
    if limit is not None and swept.fitted.tir <= limit < swept.total_reading:
        yield finding(
            "face-tir-over", "caution", f"{field}.sweeps",
            total=Distance(swept.total_reading, job.units), limit=Distance(limit, job.units),
        )  # fmt: skip
