"""The figures that a link carries beside the readings, as texts already rounded.

They are free of language: ``9`` and ``10:30`` on the clock, ``95%``, ``>99%``, ``<1%``, a decimal
point, ``thou`` or ``mm``. The customer's view puts them into sentences of its own language at once,
before Python is there, and does no arithmetic on them. Then Python works everything out again from
the readings and compares. One line for the whole job, then
one for each round; in a line the texts stand in the order of ``JOB_FIGURES`` or ``ROUND_FIGURES``,
parted by ``|``, empty where there is none. Blanks at the end of a line are left out.
"""

from __future__ import annotations

from collections.abc import Mapping

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.face import Face
from sweepsheet.alignment.pilot import Pilot
from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.findings.finding import Finding
from sweepsheet.job.model import Dowel, Limits
from sweepsheet.maths.units import UnitSystem
from sweepsheet.solution import Solution
from sweepsheet.words.messages import BareDistance, ClockPosition, Language, Probability, Quantity

# The unit of all small distances; the limits of the bore as offset and as TIR, and at the pilot
# bearing; how many findings say STOP.
JOB_FIGURES = ("unit", "limit_offset", "limit_tir", "limit_pilot", "stops")

# Doubts (``_pm``) are 95 % half widths, verdicts codes, directions and aims clock positions; the
# limit of the face is for the radius swept. A second dowel is named where it differs.
ROUND_FIGURES = (
    "offset", "tir", "pm", "toward", "chance", "verdict",
    "face_runout", "face_pm", "face_limit", "face_verdict",
    "pilot_offset", "pilot_pm", "pilot_verdict",
    "dowel_offset", "dowel_aim", "other_offset", "other_aim",
)  # fmt: skip

# What a link is written in: the code stands for no language at all.
FREE = Language(
    "zxx",
    {
        "number.decimal_mark": ".",
        "unit.thou": "thou",
        "unit.mm": "mm",
        "clock.hour": "{hour}",
        "clock.hour_one": "{hour}",
        "clock.time": "{time}",
        "clock.time_one": "{time}",
        "chance.over": ">99%",
        "chance.under": "<1%",
    },
)

Figures = Mapping[str, Quantity | None]


def figures_of(
    solution: Solution, findings: tuple[Finding, ...], language: Language = FREE
) -> tuple[str, ...]:
    """The lines of a job: its limits, then what each round came to.

    The first links had them in English, which is what such a link is compared with.
    """
    job = solution.job
    whole = _limits(job.limits, job.units, language) | {
        "stops": sum(each.level == "stop" for each in findings) or None
    }
    return (
        _line(JOB_FIGURES, whole, language),
        *(
            _line(
                ROUND_FIGURES,
                _measured(measured, job.units) | _dowels(each.dowels, language),
                language,
            )
            for each, measured in zip(job.rounds, solution.measured, strict=True)
        ),
    )


def _line(names: tuple[str, ...], figures: Figures, language: Language) -> str:
    values = (figures.get(name) for name in names)
    texts = ["" if value is None else language.word(value) for value in values]
    return "|".join(texts).rstrip("|")


def _limits(limits: Limits, units: UnitSystem, language: Language) -> dict[str, Quantity | None]:
    bore, pilot = limits.bore_offset, limits.pilot_offset
    return {
        "unit": language.unit(units),
        "limit_offset": _plain(bore, units),
        "limit_tir": _plain(None if bore is None else 2.0 * bore, units),
        "limit_pilot": _plain(pilot, units),
    }


def _plain(value: float | None, units: UnitSystem) -> Quantity | None:
    return None if value is None else BareDistance(value, units)


def _measured(measured: RoundResult, units: UnitSystem) -> dict[str, Quantity | None]:
    found = _bore(measured.bore, units)
    if measured.face is not None:
        found |= _face(measured.face, units)
    if measured.pilot is not None:
        found |= _pilot(measured.pilot, units)
    return found


def _bore(bore: Bore, units: UnitSystem) -> dict[str, Quantity | None]:
    return {
        "offset": BareDistance(bore.offset, units),
        "tir": BareDistance(bore.tir, units),
        "pm": BareDistance(bore.offset_pm, units),
        "toward": None if bore.direction_pm_deg is None else ClockPosition(bore.direction_deg),
        "chance": None if bore.judged.probability is None else Probability(bore.judged.probability),
        "verdict": bore.judged.verdict,
    }


def _face(face: Face, units: UnitSystem) -> dict[str, Quantity | None]:
    return {
        "face_runout": BareDistance(face.runout, units),
        "face_pm": BareDistance(face.runout_pm, units),
        "face_limit": _plain(face.limit, units),
        "face_verdict": face.judged.verdict,
    }


def _pilot(pilot: Pilot, units: UnitSystem) -> dict[str, Quantity | None]:
    return {
        "pilot_offset": BareDistance(pilot.offset, units),
        "pilot_pm": BareDistance(pilot.offset_pm, units),
        "pilot_verdict": pilot.judged.verdict,
    }


def _dowels(dowels: tuple[Dowel, Dowel], language: Language) -> dict[str, Quantity | None]:
    """The dowels that are in, sizes as written on them; nothing where both are standard."""
    first, second = dowels
    if first.offset == second.offset == 0:
        return {}
    found = _dowel("dowel", first, language)
    return found if first == second else found | _dowel("other", second, language)


def _dowel(name: str, dowel: Dowel, language: Language) -> dict[str, Quantity | None]:
    """A standard dowel is one of offset 0, and has no aim."""
    return {
        f"{name}_offset": language.number(f"{dowel.offset:g}"),
        f"{name}_aim": ClockPosition(dowel.aim_deg) if dowel.offset else None,
    }
