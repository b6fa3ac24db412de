"""What there is to say of the lengths along the crank axis: what does not fit, and what would."""

from __future__ import annotations

from collections.abc import Iterator

from sweepsheet.alignment.depth import Gap
from sweepsheet.findings.finding import Finding, finding
from sweepsheet.maths.units import UnitSystem
from sweepsheet.remedy.spacer import Band, DepthFit
from sweepsheet.solution import Solution
from sweepsheet.words.messages import Length, Message

# The field that a gap is read off last, where a finding leads.
FIELDS = {
    "engagement": "to_tip", "tip": "to_bottom", "hub_front": "to_splines_front",
    "hub_front_worn": "disc_wear", "hub_rear": "to_splines_rear", "release": "to_bearing",
    "release_worn": "fingers_worn", "stroke": "bearing_stroke",
}  # fmt: skip


def need_of(gap: Gap, units: UnitSystem) -> Message:
    """What is needed of a gap, in words."""
    least, most = Length(gap.least, units), Length(gap.most or 0.0, units)
    if gap.most is None and gap.least == 0.0:
        return Message("depth.some")
    if gap.most is None:
        return Message("depth.least", {"least": least})
    return Message("depth.between", {"least": least, "most": most})


def depth_findings(solution: Solution) -> Iterator[Finding]:
    """What does not fit or is too close to call, and what would put it right."""
    depth, units = solution.depth, solution.job.units
    if depth is None:
        return
    for level, gaps in (("outside", depth.wrong), ("undecided", depth.doubtful)):
        for gap in gaps:
            yield finding(
                f"depth-{level}", "stop" if level == "outside" else "caution",
                f"depth.{FIELDS[gap.name]}", what=Message(f"depth.{gap.name}"),
                size=Length(gap.size, units), pm=Length(gap.pm, units), need=need_of(gap, units),
            )  # fmt: skip
    if depth.wrong:
        yield from _remedies(depth, units)


def _remedies(depth: DepthFit, units: UnitSystem) -> Iterator[Finding]:
    """What puts right what does not fit, as far as that is known."""
    field = "depth.added"
    if depth.release_shim is not None:
        shim = _band(depth.release_shim, units)
        yield finding("release-shim", "caution", "depth.to_bearing", band=shim)
    if depth.spacer is not None and depth.spacer.low > 0:
        yield finding("spacer", "caution", field, band=_band(depth.spacer, units))
    elif depth.spacer is not None:
        less = Band(-depth.spacer.high, -depth.spacer.low)
        yield finding("less-between", "caution", field, band=_band(less, units))
    elif depth.release_shim is None and depth.is_bounded:
        yield finding("no-spacer", "caution", field)
    elif depth.release_shim is None:
        yield finding("spacer-unknown", "note", field)


def _band(band: Band, units: UnitSystem) -> Message:
    """From which thickness to which: both are bounded by the shaft, or by the release bearing."""
    least, most = Length(band.low, units), Length(band.high, units)
    return Message("depth.between", {"least": least, "most": most})
