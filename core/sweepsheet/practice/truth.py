"""What was hidden in a practice housing, beside what was found."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from sweepsheet.alignment.depth import Gap
from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.form.to_job import job_of
from sweepsheet.job.model import Dowel
from sweepsheet.job.read import read_job
from sweepsheet.maths.clock import direction_of, turn_between
from sweepsheet.maths.normal import K_95_PLANE, axis_in_region
from sweepsheet.maths.vector import ZERO, Sym2, Vec2
from sweepsheet.practice.acts import PlateTurn, Reseat, Square
from sweepsheet.practice.exercise import Exercise
from sweepsheet.practice.housing import (
    FACE_RADIUS,
    TIPPED,
    bore_after,
    droop_on_a_bar,
    state_after,
)
from sweepsheet.practice.lengths import TrueGearbox
from sweepsheet.solution import Solution, work_out
from sweepsheet.words.faults import InputError
from sweepsheet.words.messages import (
    ClockPosition,
    Direction,
    Distance,
    Language,
    Length,
    StockSize,
)


def round_name(exercise: Exercise, n: int, language: Language) -> str:
    """The name of a round: as found, or what is in since."""
    if n == 0:
        return language.say("usual.first")
    pair = exercise.acts[n - 1]
    if not isinstance(pair, Dowel):
        return language.say(_act_key(pair), n=n)
    if pair.offset == 0:
        return language.say("practice.on_standard", n=n)
    offset = StockSize(round(pair.offset / exercise.units.mm, 6), exercise.units)
    return language.say("practice.on_dowels", n=n, offset=offset, aim=ClockPosition(pair.aim_deg))


def _act_key(act: Reseat | PlateTurn | Square) -> str:
    match act:
        case Reseat(mended=mended):
            return "practice.on_mended" if mended else "practice.on_reseated"
        case PlateTurn():
            return "practice.on_turned"
        case _:
            return "practice.on_squared"


def truth_of(exercise: Exercise, asked: Mapping[str, str], language: Language) -> dict[str, Any]:
    """What was hidden, beside what was found: a table of all rounds, and what acted on the dial."""
    say, hidden, units = language.say, exercise.hidden, exercise.units
    known = found_in(asked)
    found, solved = known.rounds, known.solution
    rows = []
    for n in range(len(exercise.acts) + 1):
        true = bore_after(hidden, exercise.acts[:n]).scaled(1.0 / units.mm)
        measured = found.get(n)
        rows.append([round_name(exercise, n, language), offset_text(true, exercise, language)])
        if measured is None:
            rows[-1] += [say("practice.not_swept"), ""]
            continue
        bore = measured.bore
        rows[-1] += [
            offset_text(bore.center, exercise, language),
            _off_by(bore.center, bore.covariance, true, exercise, language),
        ]
    rows += _face_rows(exercise, found, language)
    if exercise.gearbox is not None:
        rows += _gap_rows(exercise, exercise.gearbox, solved, language)
    last = state_after(hidden, exercise.acts)
    lines = [
        say(
            "practice.inside" if last.center.length <= units.to_mm(units.bore_offset_limit)
            else "practice.outside",
            limit=Distance(units.bore_offset_limit, units),
        ),
        say("practice.droop", droop=Distance(droop_on_a_bar(hidden) / units.mm, units)),
    ]  # fmt: skip
    lines += _more(exercise, last.slope, language)
    if exercise.fitted is not None and exercise.fitted.offset:
        lag = say(f"way.{'clockwise' if hidden.lag_deg >= 0 else 'anticlockwise'}")
        lines.append(
            say(
                "practice.dowels", gain=f"{hidden.gain * 100.0:.0f}",
                lag=f"{abs(hidden.lag_deg):.0f}", way=lag,
            )
        )  # fmt: skip
    head = [say(f"practice.head.{key}") for key in ("round", "true", "found", "off")]
    return {"head": head, "rows": rows, "lines": lines}


@dataclass(frozen=True, slots=True)
class Found:
    """What the readings so far tell, by round; nothing where they can't be read or fitted yet."""

    rounds: Mapping[int, RoundResult]
    solution: Solution | None


def found_in(asked: Mapping[str, str]) -> Found:
    """What the readings of a form tell."""
    typed = job_of(asked)
    try:
        solution = work_out(read_job(typed.job))
    except InputError:
        # The answer on the page says what is wrong with them.
        return Found({}, None)
    measured = solution.measured
    # A round that was not swept is not in the job: the form's name tells which is which.
    numbers = [int(typed.form_name(f"rounds.{k}").split(".")[1]) for k in range(len(measured))]
    return Found(dict(zip(numbers, measured, strict=True)), solution)


def _more(exercise: Exercise, slope: Vec2, language: Language) -> Iterator[str]:
    """What else was hidden at the levels that have one thing more."""
    say, hidden, units = language.say, exercise.hidden, exercise.units
    if hidden.seat:
        radius = Distance(K_95_PLANE * hidden.seat / units.mm, units)
        yield say("practice.seat", radius=radius)
    if hidden.plate != ZERO:
        offset = Distance(hidden.plate.length / units.mm, units)
        yield say("practice.plate", offset=offset, direction=Direction(direction_of(hidden.plate)))
    if exercise.gearbox is not None:
        fits = exercise.gearbox.fits(exercise.spacer)
        spacer = Length(exercise.spacer / units.long_mm, units)
        yield say("practice.fits" if fits else "practice.does_not_fit", spacer=spacer)
    if hidden.level == TIPPED:
        limit = units.face_runout_limit
        held = 2.0 * FACE_RADIUS * slope.length <= units.to_mm(limit)
        key = "practice.face_inside" if held else "practice.face_outside"
        yield say(key, limit=Distance(limit, units))


def _gap_rows(
    exercise: Exercise, gearbox: TrueGearbox, solved: Solution | None, language: Language
) -> Iterator[list[str]]:
    """Every gap with what was put between: as it is, as it was found, and how far that is off."""
    say, units = language.say, exercise.units
    gaps = solved.depth.gaps if solved is not None and solved.depth is not None else ()
    found: dict[str, Gap] = {gap.name: gap for gap in gaps}
    for name, mm in gearbox.gaps(exercise.spacer).items():
        true = mm / units.long_mm
        row = [say(f"depth.{name}"), language.word(Length(true, units))]
        gap = found.get(name)
        if gap is None:
            yield [*row, say("practice.not_measured"), ""]
            continue
        miss = abs(gap.size - true)
        key = "practice.off" if miss <= gap.pm else "practice.off_beyond"
        yield [*row, language.word(Length(gap.size, units)), say(key, miss=Length(miss, units))]


def _face_rows(
    exercise: Exercise, found: Mapping[int, RoundResult], language: Language
) -> list[list[str]]:
    """The face as found, and after each time that it was squared."""
    squared = [n for n, act in enumerate(exercise.acts, 1) if isinstance(act, Square)]
    return [_face_row(exercise, n, found.get(n), language) for n in (0, *squared)]


def _face_row(
    exercise: Exercise, n: int, measured: RoundResult | None, language: Language
) -> list[str]:
    """The face in one round: the runout of its tilt at the radius swept."""
    say, units = language.say, exercise.units
    true = state_after(exercise.hidden, exercise.acts[:n]).slope
    reach = FACE_RADIUS / units.mm
    name = say("practice.face_in", n=n) if n else say("section.face")
    row = [name, _runout(true, reach, exercise, language)]
    if measured is None or measured.face is None:
        return [*row, say("practice.not_swept"), ""]
    face = measured.face
    off = _off_by(
        face.slope.scaled(2.0 * reach), face.slope_covariance.scaled(4.0 * reach**2),
        true.scaled(2.0 * reach), exercise, language,
    )  # fmt: skip
    return [*row, _runout(face.slope, reach, exercise, language), off]


def _runout(slope: Vec2, reach: float, exercise: Exercise, language: Language) -> str:
    runout = Distance(2.0 * reach * slope.length, exercise.units)
    return language.say("practice.runout", runout=runout, direction=Direction(direction_of(slope)))


def offset_text(center: Vec2, exercise: Exercise, language: Language) -> str:
    """A place of the bore, as the answer words it."""
    return language.say(
        "answer.offset",
        offset=Distance(center.length, exercise.units),
        tir=Distance(2.0 * center.length, exercise.units),
        direction=Direction(direction_of(center)),
    )


def _off_by(
    found: Vec2, covariance: Sym2, true: Vec2, exercise: Exercise, language: Language
) -> str:
    """How far what was found is from the truth, and whether its doubt covers that."""
    miss = found - true
    turn = turn_between(direction_of(true), direction_of(found))
    if true.length > 0.0 and abs(turn) > 90.0 and axis_in_region(found + true, covariance):
        return language.say("practice.mirrored")
    key = "practice.off" if axis_in_region(miss, covariance) else "practice.off_beyond"
    return language.say(key, miss=Distance(math.hypot(miss.x, miss.y), exercise.units))
