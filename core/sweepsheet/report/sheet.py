"""The sheet: the result in words, first the number, then what it means, then what to do."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from sweepsheet.alignment.bore import Bore, needle_swing
from sweepsheet.alignment.face import Face
from sweepsheet.alignment.pilot import Pilot
from sweepsheet.findings.advice import advice_for
from sweepsheet.findings.finding import Finding
from sweepsheet.job.model import Round, Sweeps
from sweepsheet.job.read import usual_name
from sweepsheet.maths.units import UnitSystem
from sweepsheet.remedy.dowels import Option
from sweepsheet.report.sections import Section, sections_of
from sweepsheet.solution import Solution
from sweepsheet.words.messages import (
    BareDistance,
    ClockPosition,
    Degrees,
    Direction,
    Distance,
    Language,
    Message,
    Probability,
    StockSize,
    round_called,
)

# What may stand over the answer, as its code; ``STANDINGS`` lists them for the page.
Standing = Literal[
    "within",
    "within_but_face",
    "within_but_pilot",
    "within_but_depth",
    "within_face_open",
    "within_pilot_open",
    "outside",
    "undecided",
    "again",
    "none",
]
STANDINGS: tuple[Standing, ...] = get_args(Standing)


@dataclass(frozen=True, slots=True)
class Choice:
    """One line of the table of options, in words; ``pilot`` is empty where it is not known."""

    what: str
    expected: str
    chance: str
    pilot: str
    chosen: bool


@dataclass(frozen=True, slots=True)
class Remark:
    """A finding in words, with the word for its level."""

    code: str
    level: str
    field: str
    label: str
    text: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """The latest round in words. ``verdict`` is the code, ``verdict_text`` the word for it."""

    verdict: Standing
    verdict_text: str
    headline: str
    figures: tuple[str, ...]
    steps: tuple[str, ...]
    choices: tuple[Choice, ...]
    sections: tuple[Section, ...]
    remarks: tuple[Remark, ...]


def sheet_of(solution: Solution, findings: tuple[Finding, ...], language: Language) -> Sheet:
    """The sheet of the latest round."""
    bore = solution.latest.bore
    standing = standing_of(solution)
    return Sheet(
        verdict=standing,
        verdict_text=language.say(f"answer.verdict.{standing}"),
        headline=offset_line(bore, solution.job.units, language),
        figures=_figures(solution, language),
        steps=tuple(language.text(each.message) for each in advice_for(solution, findings)),
        choices=tuple(_choice(solution, option, language) for option in solution.options),
        sections=sections_of(solution, language),
        remarks=tuple(_remark(each, language) for each in findings),
    )


def standing_of(solution: Solution) -> Standing:
    """What stands over the answer: what is within is not called so where more is wrong."""
    bore = solution.latest.bore
    if bore.swept.unreliable or solution.plate_unknown:
        return "again"
    if bore.judged.verdict != "within":
        return bore.judged.verdict or "none"
    latest, depth = solution.latest, solution.depth
    more: tuple[tuple[bool, Standing], ...] = (
        (solution.face_first, "within_but_face"),
        (solution.pilot_out, "within_but_pilot"),
        (depth is not None and bool(depth.wrong), "within_but_depth"),
        (solution.face_rules or _undecided(latest.face), "within_face_open"),
        (_undecided(latest.pilot), "within_pilot_open"),
    )
    return next((standing for holds, standing in more if holds), "within")


def _undecided(part: Face | Pilot | None) -> bool:
    return part is not None and part.judged.verdict == "undecided"


def sheet_text(solution: Solution, findings: tuple[Finding, ...], language: Language) -> str:
    """The whole sheet as plain text, every round with its readings."""
    say, job = language.say, solution.job
    sheet = sheet_of(solution, findings, language)
    lines = [say("sheet.title"), say("sheet.caution"), ""]
    for i, (each, measured) in enumerate(zip(job.rounds, solution.measured, strict=True)):
        lines.append(round_name(i, each, language))
        lines.extend(_readings("sheet.bore", each.bore.sweeps, language))
        if (face := job.face_swept_in(i)) is not None:
            lines.extend(_readings("sheet.face", face.sweeps, language))
        if measured is not solution.latest:
            lines.append(offset_line(measured.bore, job.units, language))
    lines += ["", f"{sheet.verdict_text}. {sheet.headline}.", *sheet.figures, ""]
    lines += [*sheet.steps, "", say("sheet.options", unit=language.unit(job.units))]
    for choice in sheet.choices:
        lines.append(f"{'>' if choice.chosen else ' '} {_choice_line(choice, language)}")
    for section in sheet.sections:
        lines += ["", *_section_lines(section, language)]
    if sheet.remarks:
        lines += ["", say("sheet.findings")]
        lines.extend(say("sheet.finding", level=r.label, text=r.text) for r in sheet.remarks)
    return "\n".join(lines) + "\n"


def round_name(index: int, each: Round, language: Language) -> str:
    """What a round is called, and the name that it was given, if any."""
    called = language.text(round_called(index))
    if each.since != "dowels":
        called = language.say("usual.since", usual=called, since=Message(f"since.{each.since}"))
    if each.name == usual_name(index):
        return called
    return language.say("usual.named", usual=called, name=each.name)


def offset_line(bore: Bore, units: UnitSystem, language: Language) -> str:
    """The offset, its TIR, and where it points."""
    offset, tir = Distance(bore.offset, units), Distance(bore.tir, units)
    if bore.direction_pm_deg is None:
        return language.say("answer.offset_nowhere", offset=offset, tir=tir)
    toward = Direction(bore.direction_deg)
    return language.say("answer.offset", offset=offset, tir=tir, direction=toward)


def limit_line(limit: float | None, units: UnitSystem, language: Language) -> str:
    """The limit of the bore, as offset and as TIR, always both."""
    if limit is None:
        return language.say("answer.no_limit")
    return language.say(
        "answer.limit", offset=Distance(limit, units), tir=Distance(2 * limit, units)
    )


def _figures(solution: Solution, language: Language) -> tuple[str, ...]:
    """What stands behind the headline: doubt, degrees, limit, chance."""
    bore, units, say = solution.latest.bore, solution.job.units, language.say
    lines = [say("answer.pm", pm=Distance(bore.offset_pm, units))]
    swing = needle_swing(bore, solution.job.indicator, solution.job.crank)
    if abs(swing - bore.tir) > max(solution.job.indicator.step, units.hair):
        lines.append(say("answer.swing", swing=Distance(swing, units)))
    if bore.direction_pm_deg is not None:
        degrees, pm = Degrees(bore.direction_deg), Degrees(bore.direction_pm_deg)
        lines.append(say("answer.direction_pm", degrees=degrees, pm=pm))
    lines.append(limit_line(solution.job.limits.bore_offset, units, language))
    if bore.judged.probability is not None:
        lines.append(say("answer.chance", chance=Probability(bore.judged.probability)))
    return tuple(lines)


def _choice(solution: Solution, option: Option, language: Language) -> Choice:
    units, say = solution.job.units, language.say
    if option.leave:
        what = say("option.leave")
    elif option.offset == 0:
        what = say("option.standard")
    else:
        offset, aim = StockSize(option.offset, units), ClockPosition(option.aim_deg)
        what = say("option.dowels", offset=offset, aim=aim)
    if option.fits is False:
        what = say("option.tight", what=what)
    return Choice(
        what=what,
        expected=_left(option.expected_offset, units, language),
        chance=""
        if option.judged.probability is None
        else language.chance(option.judged.probability),
        pilot=(
            "" if option.expected_pilot is None else _left(option.expected_pilot, units, language)
        ),
        chosen=option is solution.chosen,
    )


def _left(offset: float, units: UnitSystem, language: Language) -> str:
    """What an option leaves, as offset and as TIR."""
    return language.say(
        "option.expected", offset=BareDistance(offset, units), tir=BareDistance(2 * offset, units)
    )


def _choice_line(choice: Choice, language: Language) -> str:
    say = language.say
    line = say("sheet.option", choice=choice.what, expected=choice.expected)
    if choice.chance:
        line += say("sheet.option_chance", chance=choice.chance)
    if choice.pilot:
        line += say("sheet.option_pilot", pilot=choice.pilot)
    return line


def _section_lines(section: Section, language: Language) -> list[str]:
    title = section.title
    if section.verdict_text:
        title = language.say("sheet.section", title=title, verdict=section.verdict_text)
    table = (section.head, *section.rows) if section.rows else ()
    return [title, *section.lines, *(" | ".join(row) for row in table)]


def _remark(each: Finding, language: Language) -> Remark:
    return Remark(
        code=each.code,
        level=each.level,
        field=each.field,
        label=language.say(f"level.{each.level}"),
        text=language.text(each.message),
    )


def _readings(key: str, sweeps: Sweeps, language: Language) -> list[str]:
    """The readings of each sweep as typed, with their positions."""
    return [
        language.say(
            key,
            readings=", ".join(
                language.say(
                    "sheet.reading",
                    at=ClockPosition(a),
                    value="—" if m is None else language.number(f"{m:+g}"),
                )
                for a, m in zip(sweeps.positions_deg, row, strict=True)
            ),
        )
        for row in sweeps.readings
    ]
