"""The side view: crank axis, housing and gearbox axis, seen from the side and from above.

Lengths along the axis are drawn to one scale and offsets to another, far larger one, which is
said: to life, all of this would be one straight line. Forward is to the left in both. From
the side one stands at 9 o'clock, up is up; from above, the side of 3 o'clock is up.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.drawing.marks import PENCIL, label, line, nice_length, paper
from sweepsheet.drawing.svg import Attribute, element
from sweepsheet.maths.vector import Vec2
from sweepsheet.solution import Solution
from sweepsheet.words.messages import Distance, Language

WIDTH = 360
HEIGHT = 358
_PILOT_X = 64.0
_FACE_X = 236.0
_TAIL_X = 340.0
_ROW = 142.0
_FIRST_ROW = 78.0
# The largest offset is drawn this high.
_REACH = 34.0
_FLANGE = 44.0


@dataclass(frozen=True, slots=True)
class _Lines:
    """Offsets along one axis of the paper: of the bore, at the pilot, and the slope of the face."""

    bore: float
    pilot: float
    slope: float


@dataclass(frozen=True, slots=True)
class _View:
    """One view on paper: its title, its middle, and by how much offsets and slopes are enlarged.

    ``depth`` is that of the housing as a part of the way from the face to the pilot bearing.
    """

    title: str
    lines: _Lines
    middle: float
    pixels: float
    exaggeration: float
    depth: float

    @property
    def at_face(self) -> float:
        """The height of the gearbox axis at the face."""
        return self.middle - self.lines.bore * self.pixels

    @property
    def at_pilot(self) -> float:
        """... at the pilot bearing."""
        return self.middle - self.lines.pilot * self.pixels

    @property
    def fall(self) -> float:
        """How much it falls on the paper, rearward."""
        return (self.at_face - self.at_pilot) / (_FACE_X - _PILOT_X)

    @property
    def at_tail(self) -> float:
        """... at the end of the paper."""
        return self.at_face + self.fall * (_TAIL_X - _FACE_X)


def side_view_of(solution: Solution, language: Language) -> str:
    """The SVG of the latest round's pilot line; empty where that is not known."""
    measured, housing = solution.latest, solution.job.housing
    pilot, face = measured.pilot, measured.face
    if pilot is None or face is None or housing.pilot_distance is None:
        return ""
    units, say = solution.job.units, language.say
    largest = max(measured.bore.offset, pilot.offset, solution.job.indicator.step)
    pixels = _REACH / largest
    length = housing.pilot_distance * units.small_per_long
    exaggeration = pixels / ((_FACE_X - _PILOT_X) / length)
    depth = 0.0 if housing.depth is None else housing.depth / housing.pilot_distance
    rows = [
        (say("side.from_side"), _along(measured, Vec2(0.0, 1.0))),
        (say("side.from_above"), _along(measured, Vec2(1.0, 0.0))),
    ]
    bar = nice_length(_REACH / pixels)
    bar_y = HEIGHT - 44.0
    return paper(
        WIDTH,
        HEIGHT,
        say("side.title"),
        say(
            "side.desc",
            bore=Distance(measured.bore.offset, units),
            pilot=Distance(pilot.offset, units),
        ),
        *(
            _row(_View(title, lines, _FIRST_ROW + i * _ROW, pixels, exaggeration, depth), language)
            for i, (title, lines) in enumerate(rows)
        ),
        line(Vec2(20.0, bar_y), Vec2(20.0, bar_y - bar * pixels)),
        element("path", d=f"M15 {bar_y}h10M15 {bar_y - bar * pixels:.2f}h10"),
        label(Vec2(32.0, bar_y - bar * pixels / 2.0 + 4.5), language.word(Distance(bar, units))),
        label(Vec2(14.0, HEIGHT - 24.0), say("side.exaggerated", times=f"{exaggeration:.0f}")),
        label(Vec2(14.0, HEIGHT - 8.0), say("side.forward")),
    )


def _along(measured: RoundResult, axis: Vec2) -> _Lines:
    """What one view sees: the parts of bore, pilot line and slope along an axis of the paper."""
    pilot = measured.pilot.center if measured.pilot else measured.bore.center
    slope = measured.face.slope if measured.face else Vec2(0.0, 0.0)
    return _Lines(measured.bore.center.dot(axis), pilot.dot(axis), slope.dot(axis))


def _row(view: _View, language: Language) -> str:
    """One view: the crank axis as a chain line, the housing, the gearbox axis through both."""
    middle = view.middle
    axis = line(
        Vec2(14.0, middle), Vec2(346.0, middle), stroke_dasharray="14 3 3 3", stroke_width=0.9
    )
    title = label(Vec2(14.0, middle - _FLANGE - 18.0), view.title, font_weight="bold")
    marks = (_housing(view), _bearing(view), _gearbox(view), _names(view, language))
    return element("g", title, axis, *marks)


def _housing(view: _View) -> str:
    """The rear face as it leans and, where the depth is known, the shell before it."""
    middle = view.middle
    # The face is drawn square to the axis; a steep one would leave the paper.
    lean = max(-16.0, min(16.0, view.lines.slope * view.exaggeration * _FLANGE))
    top, bottom = Vec2(_FACE_X + lean, middle - _FLANGE), Vec2(_FACE_X - lean, middle + _FLANGE)
    face = line(top, bottom, stroke_width=2.5)
    if not view.depth:
        return face
    flange_x = _FACE_X - view.depth * (_FACE_X - _PILOT_X)
    shell = (
        f"M{flange_x:.2f} {middle - _FLANGE - 8}L{top.x:.2f} {top.y}"
        f"M{flange_x:.2f} {middle + _FLANGE + 8}L{bottom.x:.2f} {bottom.y}"
        f"M{flange_x:.2f} {middle - _FLANGE - 8}V{middle + _FLANGE + 8}"
    )
    return element("path", d=shell, stroke_width=0.9) + face


def _bearing(view: _View) -> str:
    """The pilot bearing, cut open."""
    upper = f"M{_PILOT_X - 9} {view.middle - 10}h18v-9h-18z"
    lower = f"M{_PILOT_X - 9} {view.middle + 10}h18v9h-18z"
    return element("path", d=upper + lower)


def _gearbox(view: _View) -> str:
    """The gearbox axis, through the bore and past the pilot bearing."""
    beyond = view.at_pilot - 26 * view.fall
    way = f"M{_PILOT_X - 26} {beyond:.2f}L{_TAIL_X} {view.at_tail:.2f}"
    return (
        element("path", d=way, class_="pencil", stroke=PENCIL, stroke_width=2)
        + element("circle", cx=_FACE_X, cy=view.at_face, r=3.5, fill="currentColor")
        + element("circle", cx=_PILOT_X, cy=view.at_pilot, r=3.5, class_="paper", fill="#fff")
    )


def _names(view: _View, language: Language) -> str:
    """What face, pilot bearing and the two axes are called; the upper axis above."""
    say, middle = language.say, view.middle
    end: dict[str, Attribute] = {"text_anchor": "end"}
    upper, lower = say("side.gearbox"), say("side.crank")
    if view.at_tail >= middle:
        upper, lower = lower, upper
    above, under = min(view.at_tail, middle) - 5.0, max(view.at_tail, middle) + 15.0
    return (
        label(Vec2(_FACE_X + 26.0, middle - _FLANGE + 6.0), say("side.face"))
        + label(Vec2(_PILOT_X, middle + _FLANGE + 10.0), say("side.pilot"), text_anchor="middle")
        + label(Vec2(346.0, above), upper, **end)
        + label(Vec2(346.0, under), lower, **end)
    )
