"""The sheet: the result in words, first the number, then what it means, then what to do."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.bore import Bore
from sweepsheet.dowels import Option
from sweepsheet.findings import Finding
from sweepsheet.job import Round
from sweepsheet.solution import Solution
from sweepsheet.units import UnitSystem
from sweepsheet.wording import At, Chance, Degrees, Language, Size, Small, Toward


@dataclass(frozen=True, slots=True)
class Choice:
    """One line of the table of options, in words."""

    what: str
    expected: str
    chance: str
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

    verdict: str
    verdict_text: str
    headline: str
    figures: tuple[str, ...]
    steps: tuple[str, ...]
    choices: tuple[Choice, ...]
    remarks: tuple[Remark, ...]


def sheet_of(solution: Solution, language: Language) -> Sheet:
    """The sheet of the latest round."""
    bore = solution.latest
    verdict = bore.verdict or "none"
    return Sheet(
        verdict=verdict,
        verdict_text=language.say(f"answer.verdict.{verdict}"),
        headline=offset_line(bore, solution, language),
        figures=_figures(solution, language),
        steps=_steps(solution, language),
        choices=tuple(_choice(solution, option, language) for option in solution.options),
        remarks=tuple(_remark(finding, language) for finding in solution.findings),
    )


def sheet_text(solution: Solution, language: Language) -> str:
    """The whole sheet as plain text, every round with its readings."""
    say = language.say
    sheet = sheet_of(solution, language)
    lines = [say("sheet.title"), say("sheet.caution"), ""]
    for n, (each, bore) in enumerate(zip(solution.job.rounds, solution.bores, strict=True), 1):
        lines.append(say("sheet.round", n=n, name=each.name))
        lines.extend(say("sheet.readings", readings=r) for r in _readings(each, language))
        if bore is not solution.latest:
            lines.append(offset_line(bore, solution, language))
    lines += ["", f"{sheet.verdict_text}. {sheet.headline}.", *sheet.figures, ""]
    lines += [*sheet.steps, "", say("sheet.options")]
    for choice in sheet.choices:
        text = say(
            "sheet.option", choice=choice.what, expected=choice.expected, chance=choice.chance
        )
        lines.append(f"{'>' if choice.chosen else ' '} {text}")
    if sheet.remarks:
        lines += ["", say("sheet.findings")]
        lines.extend(say("sheet.finding", level=r.label, text=r.text) for r in sheet.remarks)
    return "\n".join(lines) + "\n"


def offset_line(bore: Bore, solution: Solution, language: Language) -> str:
    """The offset, its TIR, and where it points."""
    units = solution.job.units
    offset, tir = Small(bore.offset, units), Small(bore.tir, units)
    if bore.direction_pm_deg is None:
        return language.say("answer.offset_nowhere", offset=offset, tir=tir)
    toward = Toward(bore.direction_deg)
    return language.say("answer.offset", offset=offset, tir=tir, direction=toward)


def _figures(solution: Solution, language: Language) -> tuple[str, ...]:
    """What stands behind the headline: doubt, degrees, limit, chance."""
    bore, units, say = solution.latest, solution.job.units, language.say
    lines = [say("answer.pm", pm=Small(bore.offset_pm, units))]
    if bore.direction_pm_deg is not None:
        lines.append(
            say(
                "answer.direction_pm",
                degrees=Degrees(bore.direction_deg),
                pm=Degrees(bore.direction_pm_deg),
            )
        )
    lines.append(limit_line(solution.job.limits.bore_offset, units, language))
    if bore.probability is not None:
        lines.append(say("answer.chance", chance=Chance(bore.probability)))
    return tuple(lines)


def limit_line(limit: float | None, units: UnitSystem, language: Language) -> str:
    """The limit, as offset and as TIR, always both."""
    if limit is None:
        return language.say("answer.no_limit")
    return language.say("answer.limit", offset=Small(limit, units), tir=Small(2 * limit, units))


def _steps(solution: Solution, language: Language) -> tuple[str, ...]:
    """What to do, in order."""
    say = language.say
    bore, choice = solution.latest, solution.choice
    steps = [say("do.stop")] if solution.stopped else []
    if choice is not None and choice.leave and bore.verdict in ("within", None):
        return (*steps, say("do.leave"))
    moves = []
    if bore.direction_pm_deg is not None:
        moves.append(
            say(
                "do.move",
                side=language.side(bore.move_deg),
                direction=Toward(bore.move_deg),
                offset=Small(bore.offset, solution.job.units),
            )
        )
    if choice is None:
        return (*steps, *moves, say("do.nothing_fits"))
    if choice.leave:
        # Nothing in stock does better than where it is, but it is not within.
        return (*steps, *moves, say("do.nothing_fits")) if bore.verdict == "outside" else (
            *steps, *_settle(solution, language),
        )  # fmt: skip
    fit = _fit_line(choice, solution, language)
    if bore.verdict == "undecided":
        return (*steps, *_settle(solution, language), say("do.or_fit", fit=fit))
    return (*steps, *moves, fit, say("do.recheck"))


def _settle(solution: Solution, language: Language) -> tuple[str, ...]:
    """What would settle an undecided bore, from its own finding."""
    return tuple(
        language.say("do.settle", settle=finding.message.values["settle"])
        for finding in solution.findings
        if finding.code == "undecided"
    )


def _fit_line(choice: Option, solution: Solution, language: Language) -> str:
    units = solution.job.units
    return language.say(
        "do.fit",
        offset=Size(choice.offset, units),
        aim=At(choice.aim_deg),
        expected=Small(choice.expected_offset, units),
        tir=Small(2 * choice.expected_offset, units),
    )


def _choice(solution: Solution, option: Option, language: Language) -> Choice:
    units, say = solution.job.units, language.say
    if option.leave:
        what = say("option.leave")
    else:
        offset, aim = Size(option.offset, units), At(option.aim_deg)
        what = say("option.dowels", offset=offset, aim=aim)
    expected = option.expected_offset
    return Choice(
        what=what,
        expected=say(
            "option.expected", offset=Small(expected, units), tir=Small(2 * expected, units)
        ),
        chance="" if option.probability is None else language.chance(option.probability),
        chosen=option is solution.choice,
    )


def _remark(finding: Finding, language: Language) -> Remark:
    return Remark(
        code=finding.code,
        level=finding.level,
        field=finding.field,
        label=language.say(f"level.{finding.level}"),
        text=language.text(finding.message),
    )


def _readings(each: Round, language: Language) -> list[str]:
    """The readings of each sweep as typed, with their positions."""
    sweeps = each.bore.sweeps
    return [
        ", ".join(
            language.say(
                "sheet.reading", at=At(a), value="—" if m is None else language.number(f"{m:+g}")
            )
            for a, m in zip(sweeps.positions_deg, row, strict=True)
        )
        for row in sweeps.readings
    ]
