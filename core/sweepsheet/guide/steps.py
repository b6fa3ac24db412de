"""What leads through one sweep, a position at a time: words, spoken words, where the crank stands.

The picture is drawn once; what moves is the group marked ``data-turns``, which the page turns to
the transform of each step. Angles grow on from step to step in the way in which the crank is
turned, so that the last step is a whole turn on from the first.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

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
    turned_crank,
    way_of_turning,
)
from sweepsheet.drawing.marks import circle, label, paper
from sweepsheet.drawing.svg import element
from sweepsheet.form.dial import SIGNED
from sweepsheet.form.parse import number_or_text
from sweepsheet.form.typed_sweeps import SECOND_DIAL, TypedSweeps
from sweepsheet.job.fields import FieldReader, shown
from sweepsheet.job.sweeps import MOST_POSITIONS
from sweepsheet.job.values import name_of
from sweepsheet.maths.clock import normalise, turn_between
from sweepsheet.maths.units import SYSTEMS
from sweepsheet.maths.vector import Vec2
from sweepsheet.sweep.analysis import CLOSING_STEPS
from sweepsheet.words.faults import Fault, InputError
from sweepsheet.words.messages import ClockPosition, Distance, Language, Message

Way = Literal["clockwise", "anticlockwise", "one_way"]

_SWEEP = re.compile(r"rounds\.\d{1,3}\.(bore|face)")
# The front of an engine sees the crank turn the other way.
FROM_FRONT: dict[Way, Way] = {
    "clockwise": "anticlockwise", "anticlockwise": "clockwise", "one_way": "one_way",
}  # fmt: skip
# So near to 6 o'clock a dial is read upside down.
_UPSIDE_DOWN_DEG = 50.0
# Room for rounding where steps are added up to a whole turn.
_ROUNDING_DEG = 1e-6


def way_of(positions_deg: Sequence[float]) -> Way:
    """Which way the crank is turned, seen from behind, to come to the positions in this order.

    Steps that add up to one turn tell it; positions out of their order do not (``one_way``). Of
    two opposite positions either way is right: clockwise.

    >>> way_of((0.0, 90.0, 180.0, 270.0)), way_of((0.0, 270.0, 180.0, 90.0))
    ('clockwise', 'anticlockwise')
    >>> way_of((0.0, 180.0, 90.0, 270.0))
    'one_way'
    """
    following = [*positions_deg[1:], *positions_deg[:1]]
    steps = [normalise(b - a) for a, b in zip(positions_deg, following, strict=True)]
    if abs(sum(steps) - 360.0) < _ROUNDING_DEG:
        return "clockwise"
    back = [normalise(-step) for step in steps]
    return "anticlockwise" if abs(sum(back) - 360.0) < _ROUNDING_DEG else "one_way"


def crank_angles(positions_deg: Sequence[float]) -> tuple[float, ...]:
    """How far the crank is turned at each step, clockwise plus, on to the return to the first.

    >>> crank_angles((0.0, 270.0, 90.0))
    (0.0, -90.0, -270.0, -360.0)
    """
    sense = -1.0 if way_of(positions_deg) == "anticlockwise" else 1.0
    angles = list(positions_deg[:1])
    for position in (*positions_deg[1:], *positions_deg[:1]):
        angles.append(angles[-1] + sense * normalise(sense * (position - angles[-1])))
    if len(positions_deg) == 1:
        angles[-1] += sense * 360.0
    return tuple(angles)


def guide(form: Mapping[str, str], at: str, language: Language) -> dict[str, Any]:
    """The steps of the sweeps that stand at ``at`` in the form, ``rounds.0.bore``.

    ``state`` is ``guide``, or ``faults`` with a ``text`` where the positions can't be read. The
    steps are: make ready, each position, back at the start. Raises ``InputError`` for no sweep.
    """
    found = _SWEEP.fullmatch(at)
    if not found:
        raise InputError((Fault("", Message("fault.request")),))
    typed = TypedSweeps(form, SIGNED)
    try:
        positions = _positions(typed, at)
    except InputError as error:
        text = " ".join(fault.text(language) + "." for fault in error.faults)
        return {"state": "faults", "text": language.say("guide.unreadable", why=text)}
    touching = _touching(typed, at)
    end_float = typed.end_float(at)[0] if found[1] == "face" else "none"
    way = way_of(positions)
    plus = "sign.minus" if form.get("indicator.plus_when") == "plunger_out" else "sign.plus"
    sweep = _Sweep(positions, way, end_float, touching, Message(plus), _most_off(form))
    steps = _steps(sweep, _named(typed, at))
    angles = crank_angles(positions)
    turns = [turned_crank(angle) for angle in (angles[0], *angles)]
    return {
        "state": "guide",
        "picture": _picture(positions, way, touching, language, second=end_float in SECOND_DIAL),
        "steps": [
            step.shown(language) | {"crank": turn} for step, turn in zip(steps, turns, strict=True)
        ],
    }


@dataclass(frozen=True, slots=True)
class _Step:
    """One stop of the crank: its name, what to do there, what to watch for, what is spoken."""

    label: Message
    turn: tuple[Message, ...]
    watch: tuple[Message, ...]
    spoken: tuple[Message, ...]

    def shown(self, language: Language) -> dict[str, Any]:
        """The step in words."""
        return {
            "label": language.text(self.label),
            "turn": " ".join(language.text(message) for message in self.turn),
            "watch": [language.text(message) for message in self.watch],
            "spoken": " ".join(language.text(message) for message in self.spoken),
        }


def _named(sweeps: TypedSweeps, at: str) -> tuple[Message, ...]:
    """What the positions of a sweep are called, where they are marks with a name of their own."""
    marks = sweeps.marks
    _, field = sweeps.positions(at)
    if marks is None or field == f"{at}.positions":
        return ()
    return tuple(marks.label(i) for i in range(len(marks.positions)))


def _positions(sweeps: TypedSweeps, at: str) -> tuple[float, ...]:
    """The positions of the sweeps, in their order. Raises ``InputError`` with every fault."""
    reader = FieldReader()
    typed, field = sweeps.positions(at)
    reader.listing(typed, field, name_of("positions"), 1, MOST_POSITIONS)
    for i, value in enumerate(typed):
        if not isinstance(value, float):
            name = name_of("position", n=i + 1)
            reader.fault(field, "fault.position", name=name, got=shown(value))
    reader.raise_faults()
    return tuple(value for value in typed if isinstance(value, float))


def _touching(sweeps: TypedSweeps, at: str) -> str:
    """What the dial touches, and how: ``inside``, ``outside``, ``forward`` or ``rearward``."""
    if at.endswith(".face"):
        plunger, _ = sweeps.own(f"{at}.plunger", "face.plunger", "forward")
        return "rearward" if plunger == "rearward" else "forward"
    contact, _ = sweeps.own(f"{at}.contact", "bore.contact", "inside")
    return "outside" if contact == "outside" else "inside"


@dataclass(frozen=True, slots=True)
class _Sweep:
    """What is to be swept and how, as the form says."""

    positions: tuple[float, ...]
    way: Way
    end_float: str
    touching: str
    plus: Message
    most: Distance

    @property
    def on_face(self) -> bool:
        """Whether the dial touches the face."""
        return self.touching in ("forward", "rearward")

    @property
    def pushed(self) -> bool:
        """Whether the crank is pushed to its stop before each reading."""
        return self.end_float in ("held", "second_held")

    def turn(self, at: ClockPosition) -> Message:
        """On to a position, with the way as it is seen from behind and from the front."""
        way = Message(f"guide.way.{self.way}")
        if self.way == "one_way":
            return Message("guide.turn", {"at": at, "way": way})
        return Message("guide.turn_front", {"at": at, "way": way, "front": self.front})

    @property
    def front(self) -> Message:
        """The way as a helper at the front of the engine sees it: the other one."""
        return Message(f"guide.way.{FROM_FRONT[self.way]}")


def _ready(sweep: _Sweep) -> tuple[Message, ...]:
    """What is made ready before the crank is turned."""
    first = ClockPosition(sweep.positions[0])
    zero = Message(
        "guide.zero_both" if sweep.end_float in SECOND_DIAL else "guide.zero", {"at": first}
    )
    axial = (Message("guide.choose_push"),) if sweep.pushed else ()
    if sweep.end_float == "free":
        axial = (Message("guide.afloat"),)
    way = Message(f"guide.way.{sweep.way}")
    helper = Message("guide.helper", {"front": sweep.front})
    if sweep.way == "one_way":
        helper = Message("guide.helper_one_way", {"way": way})
    return (
        zero,
        Message("guide.base"),
        Message("guide.rim" if sweep.on_face else "guide.wipe"),
        Message("guide.travel"),
        Message("guide.stiff"),
        Message("guide.sense", {"sign": sweep.plus}),
        *axial,
        Message("guide.bar"),
        helper,
    )


def _steps(sweep: _Sweep, named: tuple[Message, ...] = ()) -> list[_Step]:
    """Make ready, each position, back at the start; ``named``: what the positions are called."""
    first = ClockPosition(sweep.positions[0])
    read = Message("guide.read_both" if sweep.end_float in SECOND_DIAL else "guide.read")
    push = (Message("guide.push"),) if sweep.pushed else ()
    afloat = (Message("guide.afloat"),) if sweep.end_float == "free" else ()
    ready = _ready(sweep)
    steps = [_Step(Message("guide.ready"), (Message("guide.ready_help"),), ready, ready[:1])]
    for i, position in enumerate(sweep.positions):
        at = ClockPosition(position)
        turn = sweep.turn(at) if i else ready[0]
        past = (Message("guide.past"),) if i else ()
        below = abs(turn_between(position, 180.0)) < _UPSIDE_DOWN_DEG
        upside_down = (Message("guide.upside_down"),) if below else ()
        watch = (*afloat, Message("guide.settle"), *upside_down, *past, read)
        steps.append(
            _Step(
                named[i] if named else Message("guide.position", {"at": at}),
                (turn, *push),
                watch,
                (turn, *push, read),
            )
        )
    back = Message("guide.turn_back", {"at": first, "way": Message(f"guide.way.{sweep.way}")})
    watch = (Message("guide.settle"), Message("guide.back_zero", {"most": sweep.most}))
    spoken = (back, *push, Message("guide.read"))
    steps.append(_Step(Message("guide.back"), (back, *push), watch, spoken))
    return steps


def _most_off(form: Mapping[str, str]) -> Distance:
    """How far off the dial may come back: as many of its steps as pass for a good sweep."""
    units = SYSTEMS["metric" if form.get("units") == "metric" else "inch"]
    step = number_or_text(form.get("indicator.step", ""))
    known = step if isinstance(step, float) and step > 0 else units.step
    return Distance(CLOSING_STEPS * known, units)


def _picture(
    positions: tuple[float, ...],
    way: Way,
    touching: str,
    language: Language,
    *,
    second: bool,
) -> str:
    """The housing from behind with the crank in it, as it stands with the dial at 12."""
    say = language.say
    on_face = touching in ("forward", "rearward")
    bracket = face_bracket(touching) if on_face else bore_bracket(touching)
    other = element("g", bracket, transform=turned_crank(180.0)) if second else ""
    desc = [
        say(f"practice.touches.{touching}"),
        say("guide.start_at", at=ClockPosition(positions[0])),
    ]
    return paper(
        360,
        264,
        say("practice.crank_title"),
        " ".join(desc),
        circle(MIDDLE, RIM, stroke_width=1.75),
        circle(MIDDLE, SPIGOT if touching == "outside" else BORE, stroke_width=2.5),
        "".join(position_mark(angle, full=i == 0) for i, angle in enumerate(positions)),
        clock_hours(),
        *(_dowel(side) for side in (-ON_FACE, ON_FACE)),
        way_of_turning(way == "clockwise") if way != "one_way" else "",
        element("g", flange(), other, bracket, data_turns="crank"),
        label(Vec2(8.0, 259.0), say("drawing.view"), font_size=12),
        _start_sample(Vec2(300.0, 255.0)),
        label(Vec2(310.0, 259.0), say("guide.start"), font_size=12),
    )


def _dowel(side: float) -> str:
    """A dowel, at 3 or 9 o'clock."""
    at = MIDDLE + Vec2(side, 0.0)
    hole = element("circle", cx=at.x, cy=at.y, r=8, class_="paper", fill="#fff")
    return hole + circle(at, 4.5)


def _start_sample(at: Vec2) -> str:
    """The full wedge, for the legend."""
    path = f"M{at.x - 4:g} {at.y - 5:g}h8l-4 11z"
    return element("path", d=path, fill="currentColor", stroke_width=1)
