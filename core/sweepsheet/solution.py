"""The whole working-out of a job, in the order of the work: bore, dowels, findings."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.bore import Bore, measure_bore
from sweepsheet.dowels import Option, choose, options_for
from sweepsheet.findings import Finding, findings_for
from sweepsheet.job import Job


@dataclass(frozen=True, slots=True)
class Solution:
    """A job and all that was worked out from it.

    ``bores`` has one for each round; ``options`` and ``choice`` are worked from the latest.
    """

    job: Job
    bores: tuple[Bore, ...]
    options: tuple[Option, ...]
    choice: Option | None
    findings: tuple[Finding, ...]

    @property
    def latest(self) -> Bore:
        """The bore of the latest round."""
        return self.bores[-1]

    @property
    def stopped(self) -> bool:
        """Whether a finding forbids acting on the figures."""
        return any(finding.level == "stop" for finding in self.findings)


def work_out(job: Job) -> Solution:
    """Everything there is to know about a checked job."""
    bores = tuple(
        measure_bore(
            each.bore, job.indicator, job.crank, job.limits.bore_offset, job.limits.confidence
        )
        for each in job.rounds
    )
    options = options_for(bores[-1], job.rounds[-1].dowels, job.limits, job.stock)
    choice = choose(options)
    return Solution(job, bores, options, choice, findings_for(job, bores, options, choice))
