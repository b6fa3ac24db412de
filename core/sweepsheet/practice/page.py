"""What the practice page shows: the dial at every degree of the crank, and in the end the truth.

One answer holds a whole turn, so that the dial follows the finger without a question for each
degree; it holds angles and texts ready to be shown.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sweepsheet.drawing.depth_measures import FIELDS, called, one_measure
from sweepsheet.maths.clock import parse_position
from sweepsheet.practice.course import place_of
from sweepsheet.practice.exercise import Exercise, answer_form, exercise_of, offered
from sweepsheet.practice.housing import HIGHEST_SEED, TURN, dial_turn, droop_on_a_bar
from sweepsheet.practice.truth import round_name, truth_of
from sweepsheet.practice.view import PRELOAD, crank_view, dial_view, per_turn, turned
from sweepsheet.words.faults import InputError
from sweepsheet.words.messages import ClockPosition, Language, Length

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
    hidden, say, place = exercise.hidden, language.say, place_of(form)
    title = say("practice.title", seed=hidden.seed, level=hidden.level)
    asked = answer_form(exercise, form) | {"limits.source": title}
    droop = _rounded(exercise, exercise.units.mm, droop_on_a_bar(hidden))
    shown = {
        "state": "ready",
        "title": title,
        "level": say(f"practice.level.{hidden.level}"),
        "round": round_name(exercise, len(exercise.acts), language),
        "dial": dial_view(exercise, language),
        "crank": crank_view(exercise, language),
        "sense": 1 if exercise.set_up.clockwise else -1,
        "positions": list(exercise.positions),
        "stops": [*_stops(exercise), TURN],
        "turn": _turn(exercise, language),
        "sizes": [_size(size, language) for size in (0.0, *exercise.units.dowel_offsets)],
        "acts": [
            {"name": name, "text": say(f"practice.act.{name}")} for name in offered(hidden.level)
        ],
        "lengths": _lengths(exercise, language),
        "droop": f"{droop:g}",
        "highest_seed": HIGHEST_SEED,
        "place": None if place is None else say("practice.place", n=place[0], of=place[1]),
        "places": [] if place is None else [f"{n + 1}" for n in range(place[1])],
        "truth": truth_of(exercise, asked, language) if form.get("exercise.truth") else None,
    }
    return Practised(shown, asked)


def _stops(exercise: Exercise) -> list[int]:
    """How far the crank has turned at each position, in whole degrees, in order."""
    angles = [parse_position(position) or 0.0 for position in exercise.positions]
    return [round(a if exercise.set_up.clockwise else -a) % TURN for a in angles]


def _lengths(exercise: Exercise, language: Language) -> list[dict[str, str]]:
    """What a gauge shows of each length, where lengths are the matter: a picture for each field."""
    gearbox, units = exercise.gearbox, exercise.units
    if gearbox is None:
        return []
    found = []
    for name, field in FIELDS.items():
        shown = language.word(Length(gearbox.length(name) / units.long_mm, units))
        picture = one_measure(name, language, shown)
        found.append({"field": field, "label": called(name, language), "picture": picture})
    return found


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
    exact = dial_turn(exercise.hidden, exercise.acts, exercise.set_up, exercise.part, sweep)
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
