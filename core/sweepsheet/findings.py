"""What there is to say about the readings and the result, worst first.

Each finding has a code, a level (``stop``: do not act on this before it is cleared up;
``caution``: know this before you act; ``note``), the field it speaks of, and its message. Words are
in the language's table under ``finding.<code>``.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from sweepsheet.bore import Bore, vertical_doubt
from sweepsheet.dowels import Option, without_dowels
from sweepsheet.job import Job, Round
from sweepsheet.region import probability_inside
from sweepsheet.vector import ZERO
from sweepsheet.wording import At, Message, Plain, Quantity, Size, Small

Level = Literal["stop", "caution", "note"]
LEVELS: tuple[Level, ...] = ("stop", "caution", "note")

# A dial that comes back more than this many steps off makes its sweep unreliable.
CLOSING_STEPS = 2.0
# Pair sums and the second harmonic are spoken of beyond what noise does once in a hundred.
_NORMAL_99 = 2.5758
_RAYLEIGH_99 = 3.0349
# Readings that all lie within this many steps of nothing look like inches typed as thou.
_TINY_STEPS = 0.2


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to know."""

    code: str
    level: Level
    field: str
    message: Message


def findings_for(
    job: Job, bores: tuple[Bore, ...], options: tuple[Option, ...], choice: Option | None
) -> tuple[Finding, ...]:
    """Every finding, ``stop`` first, then in the order of the job."""
    found: list[Finding] = []
    for i, (each, bore) in enumerate(zip(job.rounds, bores, strict=True)):
        found.extend(_reading_findings(job, each, bore, f"rounds.{i}.bore"))
    last = len(job.rounds) - 1
    found.extend(_result_findings(job, bores[last], f"rounds.{last}.bore"))
    found.extend(_dowel_findings(job, bores[last], options, choice))
    found.extend(_face_findings(job.rounds[last], f"rounds.{last}.face"))
    return tuple(sorted(found, key=lambda f: LEVELS.index(f.level)))


def _finding(code: str, level: Level, field: str, **values: Quantity) -> Finding:
    return Finding(code, level, field, Message(f"finding.{code}", values))


def _reading_findings(job: Job, each: Round, bore: Bore, field: str) -> Iterator[Finding]:
    """Whether the readings of one round can be believed."""
    units = job.units
    yield from _closing_findings(job, each, field)
    foreign = bore.foreign
    if foreign is not None:
        yield _finding(
            "foreign-reading", "stop", f"{field}.sweeps",
            at=At(foreign.position_deg), excess=Small(abs(foreign.excess), units),
            sense=Message("sense.high" if foreign.excess > 0 else "sense.low"),
        )  # fmt: skip
    differ = bore.disagreement
    if differ is not None:
        yield _finding(
            "sweeps-disagree", "caution", f"{field}.sweeps.{differ.sweep}",
            at=At(differ.position_deg), excess=Small(2.0 * abs(differ.excess), units),
        )  # fmt: skip
    if foreign is None:
        yield from _shape_findings(job, bore, field)
    missing = [a for a, m in zip(bore.fitted.positions_deg, bore.means, strict=True) if m is None]
    if missing:
        yield _finding(
            "not-reached", "note", f"{field}.sweeps", at=tuple(At(a) for a in missing),
            left=len(bore.means) - len(missing),
        )  # fmt: skip
    if bore.fitted.dof == 0:
        yield _finding("no-check", "caution", f"{field}.positions_deg")
    readings = [m for row in each.bore.sweeps.readings for m in row if m is not None]
    largest = max(abs(m) for m in readings)
    if 0.0 < largest <= _TINY_STEPS * job.indicator.step and units.name == "inch":
        yield _finding("looks-like-inches", "stop", f"{field}.sweeps", largest=largest)


def _closing_findings(job: Job, each: Round, field: str) -> Iterator[Finding]:
    """The return to zero of each sweep."""
    several = len(each.bore.sweeps.closing) > 1
    for j, closing in enumerate(each.bore.sweeps.closing):
        where = f"{field}.closing.{j}"
        sweep = Message("sweep.numbered", {"n": j + 1}) if several else Message("sweep.only")
        if closing is None:
            yield _finding("closing-missing", "note", where, sweep=sweep)
        elif abs(closing) > CLOSING_STEPS * job.indicator.step:
            yield _finding(
                "closing-error", "stop", where, sweep=sweep,
                error=Small(abs(closing), job.units),
                most=Small(CLOSING_STEPS * job.indicator.step, job.units),
            )  # fmt: skip
        elif closing != 0:
            yield _finding(
                "closing-spread", "note", where, sweep=sweep, error=Small(abs(closing), job.units)
            )


def _shape_findings(job: Job, bore: Bore, field: str) -> Iterator[Finding]:
    """Out-of-round where five or more positions tell it, else the pair sums of four."""
    noise = bore.doubt.noise
    known = sum(m is not None for m in bore.means)
    round_error = bore.round_error
    if round_error is not None:
        if round_error.tir > 2.0 * _RAYLEIGH_99 * noise * math.sqrt(2.0 / known):
            yield _finding(
                "out-of-round", "caution", f"{field}.sweeps",
                tir=Small(round_error.tir, job.units), at=At(round_error.at_deg),
                opposite=At(round_error.at_deg + 180.0),
            )  # fmt: skip
    elif bore.pairs is not None and abs(bore.pairs.difference) > _NORMAL_99 * 2.0 * noise:
        start = bore.pairs.at_deg
        yield _finding(
            "pair-sums", "caution", f"{field}.sweeps",
            first=At(start), second=At(start + 180.0),
            third=At(start + 270.0), fourth=At(start + 90.0),
            difference=Small(abs(bore.pairs.difference), job.units),
        )  # fmt: skip


def _result_findings(job: Job, bore: Bore, field: str) -> Iterator[Finding]:
    """How sure the latest result is, and what would make it surer."""
    limits, units = job.limits, job.units
    if limits.bore_offset is None:
        yield _finding("no-limit", "caution", "limits.bore_offset")
    elif bore.verdict == "undecided":
        yield _finding(
            "undecided", "caution", field,
            offset=Plain(bore.offset, units), pm=Plain(bore.offset_pm, units),
            limit=Small(limits.bore_offset, units), settle=_what_would_settle(job, bore),
        )  # fmt: skip
    if limits.bore_offset is not None:
        at_best = probability_inside(ZERO, bore.covariance, limits.bore_offset)
        if at_best < limits.confidence:
            yield _finding(
                "too-coarse", "caution", "limits.bore_offset",
                limit=Small(limits.bore_offset, units),
            )  # fmt: skip
        if not limits.source.strip():
            yield _finding("limit-source", "note", "limits.source")
    if bore.direction_pm_deg is None:
        yield _finding("direction-unknown", "note", field)
    if job.crank.axis == "horizontal" and job.indicator.sag is None:
        yield _finding(
            "droop-unmeasured", "note", "indicator.sag",
            most=Small(job.indicator.sag_allowance, units),
        )  # fmt: skip


def _what_would_settle(job: Job, bore: Bore) -> Message:
    """What would shrink the doubt most, the largest part of it first."""
    droop = vertical_doubt(job.indicator, job.crank)
    along = bore.center.scaled(1.0 / bore.offset) if bore.offset else ZERO
    positions = sum(m is not None for m in bore.means)
    steps: list[Message] = []
    if positions < 8:
        steps.append(Message("settle.positions"))
    if len(bore.fitted.residuals) < 2:
        steps.append(Message("settle.sweep"))
    if job.indicator.sag is None and droop.yy > 0:
        first = droop.along(along) > bore.doubt.covariance.along(along)
        steps.insert(0 if first else len(steps), Message("settle.droop"))
    return Message("settle.any", {"steps": tuple(steps)}) if steps else Message("settle.none")


def _dowel_findings(
    job: Job, bore: Bore, options: tuple[Option, ...], choice: Option | None
) -> Iterator[Finding]:
    """What the stock of dowels can't do."""
    if without_dowels(bore.center, job.rounds[-1].dowels) is None:
        yield _finding("dowels-differ", "caution", f"rounds.{len(job.rounds) - 1}.dowels")
        return
    if bore.verdict == "within" or job.limits.bore_offset is None:
        return
    if not job.stock.dowel_offsets:
        yield _finding(
            "no-stock", "caution", "stock.dowel_offsets", wanted=Small(bore.offset, job.units)
        )
        return
    best = options[0]
    expected = Small(best.expected_offset, job.units)
    if choice is None:
        yield _finding(
            "beyond-stock", "stop", "stock.dowel_offsets",
            largest=Size(job.stock.dowel_offsets[-1], job.units), expected=expected,
        )  # fmt: skip
    elif choice.verdict != "within":
        yield _finding("stock-doubtful", "caution", "stock.dowel_offsets", expected=expected)


def _face_findings(last: Round, field: str) -> Iterator[Finding]:
    """Whether the face was looked at, which comes before the bore."""
    code = "face-not-swept" if last.face is None else "face-not-judged"
    yield _finding(code, "note" if last.face is None else "caution", field)
