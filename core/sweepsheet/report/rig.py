"""What a job tells of the rig it was taken with: its check, and what there is to learn from it."""

from __future__ import annotations

import json
import zlib
from collections.abc import Iterator, Mapping
from typing import Any

from sweepsheet.job.model import Job
from sweepsheet.maths.units import SYSTEMS, UnitSystem
from sweepsheet.solution import Solution
from sweepsheet.sweep.analysis import must_be_repeated
from sweepsheet.sweep.corrections import contact_factor
from sweepsheet.sweep.repeats import Scatter, observed_scatter, pooled, range95, weighed
from sweepsheet.sweep.rig_check import FEWEST_SWEEPS, Drift, check_rig
from sweepsheet.sweep.uncertainty import step_uncertainty
from sweepsheet.words.faults import refused
from sweepsheet.words.messages import Language, StockSize

# More than the jobs of any shop give.
MOST_LEARNED = 20_000

Data = dict[str, Any]


def rig_of(solution: Solution, language: Language) -> Data:
    """The check of the rig in words, and ``sweeps``: the scatter of each round of repeated sweeps.

    A round whose readings can't be right as they are teaches nothing. ``of`` is a checksum of what
    was read, so that the sweeps of a copied job count once.
    """
    job, sweeps = solution.job, []
    for each, measured in zip(job.rounds, solution.measured, strict=True):
        bore, swept = each.bore.sweeps, measured.bore.swept
        observed = observed_scatter(swept.fitted)
        if observed is None or must_be_repeated(swept, bore, job.indicator, job.units):
            continue
        shown = _at_dial(observed, job)
        typed = json.dumps([bore.positions_deg, bore.readings, bore.closing])
        of = f"{zlib.crc32(typed.encode()):08x}"
        sweeps.append({"of": of, "variance": shown.variance, "dof": shown.dof})
    return {"check": list(_check(solution, language)), "sweeps": sweeps}


def _at_dial(scatter: Scatter, job: Job) -> Scatter:
    """The scatter of what the dial shows, of which a slanting contact makes too much."""
    factor = contact_factor(job.indicator.contact_angle_deg)
    return Scatter(scatter.variance / factor**2, scatter.dof)


def _check(solution: Solution, language: Language) -> Iterator[str]:
    """The check of the rig by the latest round's sweeps of the bore."""
    job, say, units = solution.job, language.say, solution.job.units
    sweeps, swept = job.rounds[-1].bore.sweeps, solution.latest.bore.swept
    if must_be_repeated(swept, sweeps, job.indicator, units):
        yield say("rig.check.unsure")
        return
    factor = contact_factor(job.indicator.contact_angle_deg)
    finest = factor * step_uncertainty(job.indicator.step)
    limit = job.limits.bore_offset
    # Without a limit the ratio is one to nothing, and is not told.
    check = check_rig(swept.fitted, sweeps.readings, limit or 1.0, finest)
    if check is None:
        yield say("rig.check.few", n=FEWEST_SWEEPS)
        return
    shown = _at_dial(check.scatter, job)
    low, high = range95(shown)
    yield say(
        "rig.check.scatter", n=check.sweeps, scatter=_size(shown.deviation, units),
        low=_size(low, units), high=_size(high, units), dof=shown.dof,
    )  # fmt: skip
    yield _drift(check.drift, units, language)
    if limit is None:
        yield say("rig.check.no_limit")
        return
    parts = {"ratio": check.ratio, "low": check.ratio_range[0], "high": check.ratio_range[1]}
    yield say("rig.check.ratio", **{name: round(100.0 * part) for name, part in parts.items()})
    yield say(f"rig.check.{check.capability}")


def _drift(drift: Drift | None, units: UnitSystem, language: Language) -> str:
    if drift is None:
        return language.say("rig.check.drift_hidden")
    key = "rig.check.drift" if drift.seen else "rig.check.no_drift"
    return language.say(key, slope=_size(abs(drift.slope), units), pm=_size(drift.pm, units))


def _size(value: float, units: UnitSystem) -> StockSize:
    """A scatter, to two digits: it is smaller than the digits of a result."""
    return StockSize(float(f"{round(value, 6):.2g}"), units)


def learned_of(asked: Mapping[str, Any], language: Language) -> Data:
    """What the jobs of a rig have taught of its scatter, in words, and the scatter to reckon with.

    ``sweeps`` are those of ``rig_of``, of all jobs; sweeps that stand twice count once. ``offer``
    is the standard deviation that the form is offered, empty where nothing was learned: pooled,
    and weighed with what is usual for a dial where it is smaller. Raises ``InputError`` where what
    is asked is none of ours.
    """
    match asked:
        case {"units": "inch" | "metric" as name, "sweeps": list() as sweeps}:
            units = SYSTEMS[name]
        case _:
            raise refused("fault.request")
    found = dict(map(_learned, sweeps[:MOST_LEARNED]))
    whole = pooled(found.values())
    if whole is None:
        return {"text": language.say("rig.learned_nothing"), "offer": ""}
    low, high = range95(whole)
    text = language.say(
        "rig.learned", n=len(found), scatter=_size(whole.deviation, units),
        low=_size(low, units), high=_size(high, units), dof=whole.dof,
    )  # fmt: skip
    offer = weighed(whole, units.repeatability) ** 0.5
    return {"text": text, "offer": f"{offer:.2g}"}


def _learned(each: object) -> tuple[str, Scatter]:
    """One learned scatter by its name, checked: it comes from a store."""
    match each:
        case {"of": str() as of, "variance": int() | float() as variance, "dof": int() as dof}:
            if 0.0 <= variance < 1e9 and 1 <= dof < MOST_LEARNED:
                return of, Scatter(float(variance), int(dof))
    raise refused("fault.request")
