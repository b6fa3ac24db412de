"""What the practice page shows: the dial at every degree of the crank, and in the end the truth.

One answer holds a whole turn, so that the dial follows the finger without a question for each
degree; it holds angles and texts ready to be shown.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.form.to_job import job_of
from sweepsheet.job.read import read_job
from sweepsheet.maths.clock import direction_of, parse_position, turn_between
from sweepsheet.maths.normal import axis_in_region
from sweepsheet.maths.vector import Sym2, Vec2
from sweepsheet.practice.exercise import Exercise, answer_form, exercise_of
from sweepsheet.practice.housing import (
    FACE_RADIUS,
    HIGHEST_SEED,
    TURN,
    bore_after,
    dial_turn,
    droop_on_a_bar,
)
from sweepsheet.practice.view import PRELOAD, crank_view, dial_view, per_turn, turned
from sweepsheet.solution import work_out
from sweepsheet.words.faults import InputError
from sweepsheet.words.messages import ClockPosition, Direction, Distance, Language, StockSize

# A reading is taken with the crank this near to its mark, or nearer: what a job allows for. The
# return to zero is one only with the crank back where it was.
_NEAR_DEG, _BACK_DEG = 5, 1


@dataclass(frozen=True, slots=True)
class Practised:
    """What the practice page shows, and the form to be answered; ``None`` where there is none."""

    shown: dict[str, Any]
    form: dict[str, str] | None


def practise(form: Mapping[str, str], language: Language) -> Practised:
    """The practice page for a filled-in form: ``state`` is ``faults`` or ``ready``.

    >>> from sweepsheet.words.en.core import ENGLISH
    >>> ready = practise({"exercise.seed": "7"}, ENGLISH)
    >>> ready.shown["state"], len(ready.shown["turn"]), ready.shown["turn"][90]["spoken"]
    ('ready', 361, "3 o'clock: −13.5 thou")
    >>> practise({"exercise.seed": "<b>"}, ENGLISH).shown["faults"][0]["field"]
    'exercise.seed'
    """
    try:
        exercise = exercise_of(form)
    except InputError as error:
        faults = [{"field": f.field, "text": f.text(language)} for f in error.faults]
        return Practised({"state": "faults", "faults": faults}, None)
    hidden, say = exercise.hidden, language.say
    title = say("practice.title", seed=hidden.seed, level=hidden.level)
    asked = answer_form(exercise, form) | {"limits.source": title}
    droop = _rounded(exercise, exercise.units.mm, droop_on_a_bar(hidden))
    shown = {
        "state": "ready",
        "title": title,
        "level": say(f"practice.level.{hidden.level}"),
        "round": _round_name(exercise, len(exercise.fits), language),
        "dial": dial_view(exercise, language),
        "crank": crank_view(exercise, language),
        "sense": 1 if exercise.set_up.clockwise else -1,
        "positions": list(exercise.positions),
        "stops": [*_stops(exercise), TURN],
        "turn": _turn(exercise, language),
        "sizes": [_size(size, language) for size in (0.0, *exercise.units.dowel_offsets)],
        "droop": f"{droop:g}",
        "highest_seed": HIGHEST_SEED,
        "truth": _truth(exercise, asked, language) if form.get("exercise.truth") else None,
    }
    return Practised(shown, asked)


def _stops(exercise: Exercise) -> list[int]:
    """How far the crank has turned at each position, in whole degrees, in order."""
    angles = [parse_position(position) or 0.0 for position in exercise.positions]
    return [round(a if exercise.set_up.clockwise else -a) % TURN for a in angles]


def _rounded(exercise: Exercise, mm: float, value: float) -> float:
    """A length in mm as it is read: in small units of ``mm``, to the nearest step of the dial."""
    step = exercise.units.step
    # To a thousandth of a step, so that no rounding error is shown; nothing turns -0 into 0.
    return round(round(value / mm / step) * step, 6) + 0.0


def _turn(exercise: Exercise, language: Language) -> list[dict[str, Any]]:
    """What there is to be seen at every degree, from the start of the turn back to it.

    ``field`` and ``note`` are there where a reading can be noted: the field it goes into, what is
    to be written there, and a sentence for the button.
    """
    units, at, sweep = exercise.units, exercise.at, exercise.sweep
    exact = dial_turn(exercise.hidden, exercise.fits, exercise.set_up, exercise.part, sweep)
    fields = {stop: f"{at}.sweeps.{sweep}.{i}" for i, stop in enumerate(_stops(exercise))}
    fields[TURN] = f"{at}.closing.{sweep}"
    found = []
    for travel, mm in enumerate(exact):
        angle = exercise.set_up.crank_deg(travel)
        small = mm / units.mm
        read = _rounded(exercise, units.mm, mm)
        typed = f"{read:+g}" if read else "0"
        where = ClockPosition(angle)
        entry = {
            "crank": turned("crank", angle),
            "needle": turned("needle", 360.0 * small / per_turn(units)),
            "counter": turned("counter", 36.0 * (PRELOAD + small / per_turn(units))),
            "spoken": language.say(
                "practice.spoken", at=where, reading=_signed(read, exercise, language)
            ),
        }
        near = [
            stop
            for stop in fields
            if abs(stop - travel) <= (_BACK_DEG if stop == TURN else _NEAR_DEG)
        ]
        if near:
            stop = near[0]
            key = "practice.note_closing" if stop == TURN else "practice.note"
            mark = ClockPosition(exercise.set_up.crank_deg(stop))
            entry |= {
                "field": fields[stop],
                "typed": typed,
                "note": language.say(key, reading=language.number(typed), at=mark),
            }
        found.append(entry)
    return found


def _signed(read: float, exercise: Exercise, language: Language) -> str:
    """A reading with its sign and unit."""
    shown = f"{read:+.{1 if exercise.units.name == 'inch' else 2}f}" if read else "0"
    return f"{language.number(shown)} {language.unit(exercise.units)}"


def _size(size: float, language: Language) -> dict[str, str]:
    """One choice of dowels: what stands in the field, and its name."""
    if size == 0:
        return {"value": "0", "text": language.say("pairs.standard")}
    return {"value": f"{size:g}", "text": language.number(f"{size:g}")}


def _round_name(exercise: Exercise, n: int, language: Language) -> str:
    """The name of a round: as found, or what is in since."""
    if n == 0:
        return language.say("usual.first")
    pair = exercise.fits[n - 1]
    if pair.offset == 0:
        return language.say("practice.on_standard", n=n)
    offset = StockSize(round(pair.offset / exercise.units.mm, 6), exercise.units)
    return language.say("practice.on_dowels", n=n, offset=offset, aim=ClockPosition(pair.aim_deg))


def _truth(exercise: Exercise, asked: Mapping[str, str], language: Language) -> dict[str, Any]:
    """What was hidden, beside what was found: a table of all rounds, and what acted on the dial."""
    say, hidden, units = language.say, exercise.hidden, exercise.units
    found = _found(asked)
    rows = []
    for n in range(len(exercise.fits) + 1):
        true = bore_after(hidden, exercise.fits[:n]).scaled(1.0 / units.mm)
        measured = found.get(n)
        rows.append([_round_name(exercise, n, language), _offset(true, exercise, language)])
        if measured is None:
            rows[-1] += [say("practice.not_swept"), ""]
            continue
        bore = measured.bore
        rows[-1] += [
            _offset(bore.center, exercise, language),
            _off_by(bore.center, bore.covariance, true, exercise, language),
        ]
    rows += _face_row(exercise, found.get(0), language)
    last = bore_after(hidden, exercise.fits)
    lines = [
        say(
            "practice.inside" if last.length <= units.to_mm(units.bore_offset_limit)
            else "practice.outside",
            limit=Distance(units.bore_offset_limit, units),
        ),
        say("practice.droop", droop=Distance(droop_on_a_bar(hidden) / units.mm, units)),
    ]  # fmt: skip
    if exercise.fits and exercise.fits[-1].offset:
        lag = say(f"way.{'clockwise' if hidden.lag_deg >= 0 else 'anticlockwise'}")
        lines.append(
            say(
                "practice.dowels", gain=f"{hidden.gain * 100.0:.0f}",
                lag=f"{abs(hidden.lag_deg):.0f}", way=lag,
            )
        )  # fmt: skip
    head = [say(f"practice.head.{key}") for key in ("round", "true", "found", "off")]
    return {"head": head, "rows": rows, "lines": lines}


def _found(asked: Mapping[str, str]) -> dict[int, RoundResult]:
    """What the readings so far tell, by round; nothing where they can't be read or fitted yet."""
    typed = job_of(asked)
    try:
        measured = work_out(read_job(typed.job)).measured
    except InputError:
        # The answer on the page says what is wrong with them.
        return {}
    # A round that was not swept is not in the job: the form's name tells which is which.
    numbers = [int(typed.form_name(f"rounds.{k}").split(".")[1]) for k in range(len(measured))]
    return dict(zip(numbers, measured, strict=True))


def _face_row(exercise: Exercise, first: RoundResult | None, language: Language) -> list[list[str]]:
    """The face as found: the runout of its tilt at the radius swept."""
    say, units, true = language.say, exercise.units, exercise.hidden.slope
    reach = FACE_RADIUS / units.mm
    row = [say("section.face"), _runout(true, reach, exercise, language)]
    if first is None or first.face is None:
        return [[*row, say("practice.not_swept"), ""]]
    face = first.face
    off = _off_by(
        face.slope.scaled(2.0 * reach), face.slope_covariance.scaled(4.0 * reach**2),
        true.scaled(2.0 * reach), exercise, language,
    )  # fmt: skip
    return [[*row, _runout(face.slope, reach, exercise, language), off]]


def _runout(slope: Vec2, reach: float, exercise: Exercise, language: Language) -> str:
    runout = Distance(2.0 * reach * slope.length, exercise.units)
    return language.say("practice.runout", runout=runout, direction=Direction(direction_of(slope)))


def _offset(center: Vec2, exercise: Exercise, language: Language) -> str:
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
