"""What put between housing and gearbox, or behind the release bearing, puts the gaps right."""

from __future__ import annotations

import math
from dataclasses import dataclass

from sweepsheet.alignment.depth import Gap, gaps_of
from sweepsheet.job.model import Job
from sweepsheet.maths.normal import one_sided_factor
from sweepsheet.sweep.uncertainty import rectangular

RELEASE = ("release", "release_worn", "stroke")
# What must be known before anything is put between: it is what a spacer can spoil on either side.
BOUNDS = ("engagement", "tip")


@dataclass(frozen=True, slots=True)
class Band:
    """From which thickness to which."""

    low: float
    high: float


def spacer_for(gaps: tuple[Gap, ...], thickness_pm: float, confidence: float) -> Band | None:
    """How much thicker what lies between housing and gearbox may be, so that all is as needed.

    Negative: thinner. ``thickness_pm`` is how far the spacer's own thickness may be wrong. ``None``
    where no thickness does; an end without bound is infinite.

    >>> from sweepsheet.alignment.depth import Room
    >>> from sweepsheet.maths.verdict import NOT_JUDGED
    >>> gap = Gap("tip", -0.1, 0.0, 0.05, None, True, (Room(-0.15, 0.0, 1),), NOT_JUDGED)
    >>> spacer_for((gap,), 0.0, 0.95)
    Band(low=0.15, high=inf)
    """
    low, high = -math.inf, math.inf
    for gap in gaps:
        factor = one_sided_factor(1.0 - (1.0 - confidence) / len(gap.needs))
        for room in gap.needs:
            sure = room.size - factor * math.hypot(room.deviation, rectangular(thickness_pm))
            if room.per_spacer > 0:
                low = max(low, -sure)
            elif room.per_spacer < 0:
                high = min(high, sure)
            elif room.size < factor * room.deviation:
                return None  # no thickness changes that
    return Band(low, high) if low <= high else None


@dataclass(frozen=True, slots=True)
class DepthFit:
    """The gaps, and what puts them right together.

    ``spacer`` is what to put between housing and gearbox beyond what is there (negative: to take
    away), where something is not as needed and one thickness suits all;
    ``release_shim`` what to put behind a hydraulic release bearing, where its room alone is wrong.
    """

    gaps: tuple[Gap, ...]
    spacer: Band | None
    release_shim: Band | None

    @property
    def wrong(self) -> tuple[Gap, ...]:
        """What is surely not as needed."""
        return tuple(gap for gap in self.gaps if gap.judged.verdict == "outside")

    @property
    def doubtful(self) -> tuple[Gap, ...]:
        """What is too close to call."""
        return tuple(gap for gap in self.gaps if gap.judged.verdict == "undecided")

    @property
    def is_bounded(self) -> bool:
        """Whether it is known what a spacer does to the shaft in the pilot bearing and its hole."""
        return set(BOUNDS) <= {gap.name for gap in self.gaps}


def depth_fit(job: Job) -> DepthFit | None:
    """What the lengths of a job come to; ``None`` where they give no gap."""
    gaps = gaps_of(job)
    if not gaps:
        return None
    found, band = DepthFit(gaps, None, None), None
    if found.wrong and found.is_bounded:
        band = spacer_for(gaps, job.depth.gearbox_pm, job.limits.confidence)
        if band is not None and band.high < -job.depth.added:
            band = None  # more would have to go than is there
    return DepthFit(gaps, band, _release_shim(found, job))


def _release_shim(found: DepthFit, job: Job) -> Band | None:
    """A shim behind a hydraulic release bearing, where nothing but its room is wrong."""
    hydraulic = job.depth.release == "hydraulic"
    if not hydraulic or not found.wrong or any(gap.name not in RELEASE for gap in found.wrong):
        return None
    # A shim there brings the bearing forward, as something thinner under the gearbox would.
    release = tuple(gap for gap in found.gaps if gap.name in RELEASE)
    band = spacer_for(release, job.depth.gearbox_pm, job.limits.confidence)
    return Band(-band.high, -band.low) if band is not None and band.high < 0 else None
