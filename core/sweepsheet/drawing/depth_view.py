"""Shaft, pilot bearing, clutch and release bearing from the side, to scale along the crank axis.

Forward is to the left. Heights mean nothing: they only keep the parts apart. Below stands each gap
as a dimension between the two places that make it; what does not fit is drawn with the red pencil.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sweepsheet.alignment.depth import Gap
from sweepsheet.alignment.places import Places, places_of
from sweepsheet.drawing.marks import PENCIL, dimension, label, line, paper
from sweepsheet.drawing.svg import element, text
from sweepsheet.maths.vector import Vec2
from sweepsheet.solution import Solution
from sweepsheet.words.messages import Language, Length

WIDTH = 360
_LEFT, _RIGHT = 22.0, 338.0
_AXIS = 74.0
_TOP = 14.0
_FIRST_ROW = 156.0
_ROW = 34.0
# Half heights of the parts.
_JOURNAL, _SHAFT, _BEARING, _HUB, _FINGERS = 8.0, 11.0, 17.0, 24.0, 46.0


@dataclass(frozen=True, slots=True)
class Scale:
    """Where a place on the axis lies on the paper."""

    first: float
    pixels: float

    def at(self, place: float) -> float:
        """The distance from the left."""
        return _LEFT + (place - self.first) * self.pixels


def depth_view_of(solution: Solution, language: Language) -> str:
    """The SVG of the lengths along the axis; empty where they give no gap."""
    depth, job = solution.depth, solution.job
    places, say = places_of(job.depth), language.say
    if depth is None or places.face is None:
        return ""
    known = places.known
    first, last = min(known), max(known)
    scale = Scale(first, (_RIGHT - _LEFT) / (last - first))
    shown = [(gap, ends) for gap in depth.gaps if (ends := places.ends_of(gap.name)) is not None]
    height = _FIRST_ROW + _ROW * len(shown) + 14.0
    told = tuple(
        f"{say(f'depth.{gap.name}')} {language.word(Length(gap.size, job.units))}"
        for gap in depth.gaps
    )
    return paper(
        WIDTH,
        round(height),
        say("depth_view.title"),
        say("depth_view.desc", gaps=told),
        *crank_end(places, scale),
        *parts_of(places, places.face, scale),
        *(
            _row(i, gap, (scale.at(ends[0]), scale.at(ends[1])), solution, language)
            for i, (gap, ends) in enumerate(shown)
        ),
        label(Vec2(14.0, height - 6.0), say("depth_view.scale")),
    )


def parts_of(places: Places, face: float, scale: Scale) -> Iterator[str]:
    """The parts whose places are known, each a form of its own, but for the crank's end."""
    at = scale.at
    yield line(Vec2(8.0, _AXIS), Vec2(352.0, _AXIS), stroke_dasharray="14 3 3 3", stroke_width=0.9)
    if places.pilot_front is not None:
        yield _pair(at(places.pilot_front), at(places.pilot_rear), _JOURNAL, _BEARING, filled=True)
    if places.tip is not None:
        yield _shaft(places, places.tip, face, scale)
    if places.splines_front is not None and places.splines_rear is not None:
        for height in (-_SHAFT + 3.0, _SHAFT - 3.0):
            y = _AXIS + height
            ends = Vec2(at(places.splines_front), y), Vec2(at(places.splines_rear), y)
            yield line(*ends, stroke_width=4, stroke_dasharray="1 2")
    if places.hub_front is not None and places.hub_rear is not None:
        yield _pair(at(places.hub_front), at(places.hub_rear), _SHAFT + 2.0, _HUB)
    if places.fingers is not None:
        x = at(places.fingers)
        for way in (-1.0, 1.0):
            tip, root = Vec2(x, _AXIS + way * _HUB), Vec2(x - 7.0, _AXIS + way * _FINGERS)
            yield line(tip, root, stroke_width=2.5)
    if places.bearing is not None:
        yield _pair(at(places.bearing), at(places.bearing) + 12.0, _SHAFT + 4.0, _BEARING + 16.0)
    x = at(face)
    yield line(Vec2(x, _TOP), Vec2(x, 2.0 * _AXIS - _TOP), stroke_width=2.5)


def crank_end(places: Places, scale: Scale) -> Iterator[str]:
    """The crank's end, from which the engine was measured, and the hole in it."""
    x = scale.at(0.0)
    for way in (-1.0, 1.0):
        yield line(
            Vec2(x, _AXIS + way * _BEARING), Vec2(x, _AXIS + way * (_AXIS - _TOP)),
            stroke_width=1.75,
        )  # fmt: skip
    if places.bottom is not None:
        end = scale.at(places.bottom)
        yield element(
            "path",
            d=f"M{x:.2f} {_AXIS - _BEARING}H{end:.2f}V{_AXIS + _BEARING}H{x:.2f}",
            stroke_width=1.75,
        )


def _shaft(places: Places, tip: float, face: float, scale: Scale) -> str:
    """The shaft from its tip to the gearbox, thinner where it fits the bearing."""
    x, end = scale.at(tip), scale.at(face)
    if places.journal_rear is None:
        return element("path", d=f"M{end:.2f} {_AXIS - _SHAFT}H{x:.2f}v{2 * _SHAFT}H{end:.2f}")
    step = scale.at(places.journal_rear)
    upper = f"M{end:.2f} {_AXIS - _SHAFT}H{step:.2f}V{_AXIS - _JOURNAL}H{x:.2f}"
    lower = f"V{_AXIS + _JOURNAL}H{step:.2f}V{_AXIS + _SHAFT}H{end:.2f}"
    return element("path", d=upper + lower, stroke_width=1.75)


def _pair(left: float, right: float, inner: float, outer: float, *, filled: bool = False) -> str:
    """A ring cut open: a box above the axis, and one below."""
    width, height = right - left, outer - inner
    boxes = "".join(
        f"M{left:.2f} {top:.2f}h{width:.2f}v{height:.2f}h{-width:.2f}z"
        for top in (_AXIS - outer, _AXIS + inner)
    )
    return element("path", d=boxes, fill="currentColor" if filled else "none", fill_opacity=0.25)


def _row(
    index: int, gap: Gap, ends: tuple[float, float], solution: Solution, language: Language
) -> str:
    """A gap as a dimension below the parts, with its name and size above it."""
    y = _FIRST_ROW + index * _ROW
    left, right = min(ends), max(ends)
    size = Length(gap.size, solution.job.units)
    told = language.say("depth_view.gap", what=language.say(f"depth.{gap.name}"), size=size)
    red = gap.judged.verdict == "outside"
    marks = (
        element(
            "path",
            d=f"M{left:.2f} {_AXIS + _HUB}V{y + 8.0}M{right:.2f} {_AXIS + _HUB}V{y + 8.0}",
            stroke_width=0.5,
            stroke_dasharray="2 3",
        ),
        dimension(Vec2(left, y + 2.0), Vec2(right, y + 2.0)),
        # Its own paper round it, where the lines to the parts pass.
        element(
            "text",
            text(told),
            x=14.0,
            y=y - 8.0,
            fill="currentColor",
            stroke="#fff",
            stroke_width=4,
            paint_order="stroke",
            class_="halo",
        ),
    )
    if not red:
        return element("g", *marks)
    return element("g", *marks, class_="pencil", stroke=PENCIL)
