"""The drawings of the practice housing: the dial, magnified, and the crank that carries it.

Both are drawn once for a state of the exercise. What moves is a group marked ``data-turns``, and
the page turns it to the angle that ``page`` gives for each degree of the crank.
"""

from __future__ import annotations

from sweepsheet.drawing.crank_marks import (
    BORE,
    MIDDLE,
    ON_FACE,
    RIM,
    SPIGOT,
    bore_bracket,
    clock_hours,
    face_bracket,
    flange,
    position_mark,
    way_of_turning,
)
from sweepsheet.drawing.marks import around, arrow, circle, dowel_mark, label, line, paper
from sweepsheet.drawing.svg import element
from sweepsheet.maths.units import UnitSystem
from sweepsheet.maths.vector import Vec2
from sweepsheet.practice.exercise import Exercise
from sweepsheet.words.messages import Language

# The dial: a hundred lines round, one for each step that is read, zero on top, counted both ways.
LINES = 100
_DIAL = Vec2(180.0, 94.0)
_DIAL_RIM = 86.0
_COUNTER = Vec2(180.0, 126.0)
_COUNTER_RIM = 18.0
# As many turns the plunger is pushed in to begin with, so that it can go either way.
PRELOAD = 5.0

# Where readings that were noted stand: inside the bore or outside the spigot, past the mark, clear
# of the dial on it. More of them could not be read.
_NOTED, _NOTED_OUTSIDE, _PAST_DEG = 57.0, 80.0, 22.0
_MOST_NOTED = 8


def turned(what: str, angle_deg: float) -> str:
    """The transform of one of the groups that move: ``crank``, ``needle`` or ``counter``.

    >>> turned("needle", 90.0)
    'rotate(90 180 94)'
    """
    at = {"crank": MIDDLE, "needle": _DIAL, "counter": _COUNTER}[what]
    return f"rotate({round(angle_deg, 1) + 0.0:g} {at.x:g} {at.y:g})"


def per_turn(units: UnitSystem) -> float:
    """What one turn of the needle is worth, in small units."""
    return LINES * units.step


def dial_view(exercise: Exercise, language: Language) -> str:
    """The dial, as large as the paper allows, and never upside down."""
    units, say = exercise.units, language.say
    lines = "".join(_line(i) for i in range(LINES))
    # Half the dial is as far as plus and minus can be told apart without the small hand.
    numbers = "".join(
        label(
            around(_DIAL, 3.6 * i, _DIAL_RIM - 26.0) + Vec2(0.0, 5.0),
            language.number(f"{min(i, LINES - i) * units.step:g}"),
            text_anchor="middle", font_size=14,
        )
        for i in range(0, LINES, 10)
    )  # fmt: skip
    worth = say(
        "practice.dial", step=units.step, turn=per_turn(units),
        unit=language.unit(units),
    )  # fmt: skip
    return paper(
        360,
        206,
        say("practice.dial_title"),
        worth,
        circle(_DIAL, _DIAL_RIM + 4.0, stroke_width=2.5),
        lines,
        numbers,
        label(_DIAL + Vec2(-30.0, -16.0), "\N{MINUS SIGN}", text_anchor="middle", font_size=18),
        label(_DIAL + Vec2(30.0, -16.0), "+", text_anchor="middle", font_size=18),
        _counter(),
        element("g", _needle(), data_turns="needle"),
        label(Vec2(180.0, 202.0), worth, text_anchor="middle", font_size=12),
    )


def crank_view(exercise: Exercise, language: Language) -> str:
    """The housing from behind with the crank in it, and the bracket that carries the dial."""
    say = language.say
    spigot = exercise.part == "bore" and exercise.set_up.contact == "outside"
    return paper(
        360,
        264,
        say("practice.crank_title"),
        say(f"practice.touches.{_touching(exercise)}"),
        circle(MIDDLE, RIM, stroke_width=1.75),
        circle(MIDDLE, SPIGOT if spigot else BORE, stroke_width=2.5),
        _marks(exercise),
        clock_hours(),
        _noted(exercise, _NOTED_OUTSIDE if spigot else _NOTED, language),
        _dowels(exercise),
        way_of_turning(exercise.set_up.clockwise),
        element("g", flange(), _bracket(exercise), data_turns="crank"),
        label(Vec2(8.0, 259.0), say("drawing.view"), font_size=12),
        element("circle", cx=MIDDLE.x, cy=MIDDLE.y, r=RIM, class_="grip", stroke="none"),
    )


def _touching(exercise: Exercise) -> str:
    set_up = exercise.set_up
    return set_up.contact if exercise.part == "bore" else set_up.plunger


def _line(i: int) -> str:
    """One line of the dial; each fifth longer, each tenth longest."""
    length = 12.0 if i % 10 == 0 else 9.0 if i % 5 == 0 else 6.0
    width = 1.75 if i % 10 == 0 else 1.0
    outer, inner = (around(_DIAL, 3.6 * i, _DIAL_RIM - d) for d in (0.0, length))
    return line(outer, inner, stroke_width=width)


def _needle() -> str:
    """The needle at zero: a slim arrow in red pencil, with its tail."""
    return element(
        "g",
        arrow(_DIAL + Vec2(0.0, 24.0), _DIAL - Vec2(0.0, _DIAL_RIM - 2.0)),
        circle(_DIAL, 5.0, fill="currentColor"),
    )


def _counter() -> str:
    """The small dial that counts the turns of the needle: ten round."""
    ticks = "".join(
        line(
            around(_COUNTER, 36.0 * i, _COUNTER_RIM),
            around(_COUNTER, 36.0 * i, _COUNTER_RIM - (6.0 if i % 5 == 0 else 4.0)),
        )
        for i in range(10)
    )
    hand = line(_COUNTER + Vec2(0.0, 5.0), _COUNTER - Vec2(0.0, _COUNTER_RIM - 6.0), stroke_width=2)
    return circle(_COUNTER, _COUNTER_RIM) + ticks + element("g", hand, data_turns="counter")


def _marks(exercise: Exercise) -> str:
    """A wedge on the rim where a reading is wanted, full once it was noted."""
    return "".join(
        position_mark(angle, full=value is not None)
        for angle, value in zip(_angles(exercise), exercise.noted, strict=True)
    )


def _angles(exercise: Exercise) -> list[float]:
    """The clock angles of the positions, which are spread evenly, in the order of the sweep."""
    n = len(exercise.positions)
    return [exercise.set_up.crank_deg(360.0 * i / n) for i in range(n)]


def _noted(exercise: Exercise, radius: float, language: Language) -> str:
    """What was noted of the sweep that is being taken, each where it was read."""
    if len(exercise.positions) > _MOST_NOTED:
        return ""
    past = exercise.set_up.crank_deg(_PAST_DEG)
    return "".join(
        label(
            around(MIDDLE, angle + past, radius) + Vec2(0.0, 4.5),
            language.number(f"{value:+g}" if value else "0"),
            text_anchor="middle", font_size=12,
        )
        for angle, value in zip(_angles(exercise), exercise.noted, strict=True)
        if value is not None
    )  # fmt: skip


def _dowels(exercise: Exercise) -> str:
    """The two dowels, with the way their pegs point where offset ones are in."""
    pair = exercise.fitted
    offset, aim_deg = (0.0, 0.0) if pair is None else (pair.offset, pair.aim_deg)
    places = (MIDDLE + Vec2(side, 0.0) for side in (-ON_FACE, ON_FACE))
    return element("g", *(dowel_mark(at, offset, aim_deg) for at in places))


def _bracket(exercise: Exercise) -> str:
    """The bracket with the dial, its plunger on what it touches, as it stands at 12."""
    if exercise.part == "face":
        return face_bracket(exercise.set_up.plunger)
    return bore_bracket(exercise.set_up.contact)
