"""The drawings of a work order: a taper or a move of the bore, as the machinist sees the part.

Each is drawn twice: from behind, the rear face toward who looks, and from the front, its mirror
view. The clock's hours stay where they are on the housing, so that from the front 3 is on the left.
Holes, bolts and bore are to scale; what is cut is drawn far larger than it is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sweepsheet.drawing.marks import (
    PENCIL,
    arrow,
    circle,
    crank_mark,
    dimension,
    label,
    line,
    paper,
    wedge_mark,
)
from sweepsheet.drawing.svg import Attribute, element
from sweepsheet.job.model import Hole
from sweepsheet.maths.clock import clock_time, polar, unit_vector
from sweepsheet.maths.vector import Vec2
from sweepsheet.words.messages import ClockPosition, Language

WIDTH = 360
BORE_HEIGHT = 462
CUT_HEIGHT = 364
PROFILE_HEIGHT = 176
_MIDDLE = Vec2(180.0, 182.0)
_OUTERMOST = 112.0
_RING = 134.0
_HOURS = 152.0
# Where a move is drawn large, and how large it may be there.
_DETAIL = Vec2(180.0, 404.0)
_LARGEST = 44.0


@dataclass(frozen=True, slots=True)
class Size:
    """A size in both unit systems, in words."""

    mm: str
    inch: str


@dataclass(frozen=True, slots=True)
class Side:
    """From which side one looks: ``mirrored`` from the front."""

    mirrored: bool

    @property
    def name(self) -> str:
        """``front`` or ``behind``, as in the keys of the sentences."""
        return "front" if self.mirrored else "behind"

    def seen(self, v: Vec2) -> Vec2:
        """A vector of the housing (x right from behind, y up) on paper, where y points down."""
        return Vec2(-v.x if self.mirrored else v.x, -v.y)


BEHIND, FRONT = Side(mirrored=False), Side(mirrored=True)


@dataclass(frozen=True, slots=True)
class MoveDrawn:
    """A move of the bore: its two legs along and across the line of the holes, and their sizes."""

    along: Vec2
    across: Vec2
    along_size: Size
    across_size: Size


def bore_view_of(
    holes: tuple[Hole, Hole],
    bore_diameter: float | None,
    move: MoveDrawn,
    side: Side,
    language: Language,
) -> str:
    """The two dowel holes, the bore between them, and its move drawn large below.

    A bore whose diameter is not known is only a cross.
    """
    pixels = _OUTERMOST / max(hole.radius for hole in holes)
    a, b = (_MIDDLE + side.seen(polar(hole.at_deg, hole.radius).scaled(pixels)) for hole in holes)
    bore = "" if bore_diameter is None else circle(_MIDDLE, bore_diameter / 2.0 * pixels)
    return paper(
        WIDTH,
        BORE_HEIGHT,
        language.say(f"order_view.{side.name}"),
        language.say(
            "order_view.bore_desc",
            a=ClockPosition(holes[0].at_deg), b=ClockPosition(holes[1].at_deg),
        ),
        _head(side, language),
        _clock(side),
        bore,
        crank_mark(_MIDDLE),
        line(a, b, stroke_dasharray="14 3 3 3", stroke_width=0.9),
        _datum(a, "A"),
        _datum(b, "B"),
        _detail(move, side, language),
    )  # fmt: skip


def cut_view_of(
    places: Sequence[tuple[Hole, Size]], deepest_deg: float, side: Side, language: Language
) -> str:
    """The face with how much goes off at each place, and a wedge outside where it is most."""
    pixels = _OUTERMOST / max(at.radius for at, _ in places)
    outward = side.seen(unit_vector(deepest_deg))
    marks = []
    for at, size in places:
        way = side.seen(unit_vector(at.at_deg))
        spot = _MIDDLE + way.scaled(at.radius * pixels)
        inside = _MIDDLE + way.scaled(at.radius * pixels - 30.0 - 12.0 * abs(way.x))
        marks.append(circle(spot, 6.0, stroke_width=1.5))
        for text, down in ((size.mm, -2.0), (size.inch, 10.0)):
            marks.append(label(inside + Vec2(0.0, down), text, text_anchor="middle", font_size=11))
    listed = language.say("order_view.cut_desc", at=ClockPosition(deepest_deg))
    return paper(
        WIDTH,
        CUT_HEIGHT,
        language.say(f"order_view.{side.name}"),
        listed,
        _head(side, language),
        _clock(side),
        crank_mark(_MIDDLE),
        *marks,
        element(
            "g",
            arrow(_MIDDLE + outward.scaled(_RING + 34.0), _MIDDLE + outward.scaled(_RING + 3.0)),
            class_="deepest",
        ),
        label(
            Vec2(180.0, 358.0),
            language.say("order_view.deepest"),
            text_anchor="middle",
            font_size=11,
        ),
    )


def profile_view_of(
    deepest_deg: float, rise: Size, across: Size, clamped: str, language: Language
) -> str:
    """The part from its side, cut through where most and where least goes off."""
    left, right, top, low, base = 62.0, 256.0, 34.0, 78.0, 112.0
    wedge = f"M{left} {low}L{right} {top}V{low}z"
    body = f"M{left} {low}H{right}V{base}H{left}z"
    ends: dict[str, Attribute] = {"text_anchor": "middle", "font_weight": "bold"}
    feet = "".join(
        element("path", d=f"M{x - 7} {base + 12}h14l-7 -12z", fill="currentColor", stroke="none")
        for x in (left + 24.0, right - 24.0)
    )
    return paper(
        WIDTH,
        PROFILE_HEIGHT,
        language.say("order_view.profile"),
        language.say("order_view.profile_desc", rise=rise.mm),
        element("path", d=wedge, class_="pencil", stroke=PENCIL, stroke_width=1.75),
        element("path", d=body, stroke_width=1.5),
        feet,
        line(Vec2(right + 14.0, top), Vec2(right + 14.0, low)),
        element(
            "path", fill="currentColor", stroke="none",
            d=f"M{right + 14} {top}l-3 7h6zM{right + 14} {low}l-3 -7h6z",
        ),
        label(Vec2(right + 22.0, low - 22.0), rise.mm, font_size=11),
        label(Vec2(right + 22.0, low - 8.0), rise.inch, font_size=11),
        label(Vec2(left, low - 8.0), "0", **ends),
        label(Vec2(left - 36.0, base), clock_time(deepest_deg + 180.0), **ends),
        label(Vec2(right + 36.0, base), clock_time(deepest_deg), **ends),
        dimension(Vec2(left, base + 24.0), Vec2(right, base + 24.0)),
        label(
            Vec2((left + right) / 2.0, base + 19.0), f"{across.mm} = {across.inch}",
            text_anchor="middle", font_size=11,
        ),
        label(Vec2(14.0, base + 50.0), clamped, font_size=11),
    )  # fmt: skip


def _head(side: Side, language: Language) -> str:
    """From which side one looks, over everything else."""
    return label(
        Vec2(180.0, 15.0), language.say(f"order_view.{side.name}"), text_anchor="middle",
        font_weight="bold",
    )  # fmt: skip


def _clock(side: Side) -> str:
    """The ring of the hours as they lie from this side."""
    hours = []
    for hour in (12, 3, 6, 9):
        way = side.seen(unit_vector(hour * 30.0))
        tick = _MIDDLE + way.scaled(_RING)
        hours.append(line(tick, tick + way.scaled(6.0)))
        at = _MIDDLE + way.scaled(_HOURS) + Vec2(0.0, 5.0)
        hours.append(label(at, str(hour), text_anchor="middle", font_weight="bold", class_="hour"))
    return element("g", circle(_MIDDLE, _RING, stroke_width=0.75), *hours)


def _datum(at: Vec2, name: str) -> str:
    """A hole that is measured from: a ring, and its letter in a frame with a full triangle."""
    out = (at - _MIDDLE).unit()
    beside = Vec2(-out.y, out.x) if out.x < 0 else Vec2(out.y, -out.x)
    frame = at - beside.scaled(28.0)
    box = element("rect", x=frame.x - 8, y=frame.y - 8, width=16, height=16)
    letter = label(
        frame + Vec2(0.0, 5.0), name, text_anchor="middle", font_weight="bold", class_="datum"
    )
    return element(
        "g", circle(at, 7.0, stroke_width=1.75), wedge_mark(at - beside.scaled(16.0), beside),
        box, letter,
    )  # fmt: skip


def _detail(move: MoveDrawn, side: Side, language: Language) -> str:
    """The move large: from the present centre along the line of the holes, then across it."""
    longest = max(move.along.length, move.across.length)
    scale = _LARGEST / longest if longest else 0.0
    legs = (side.seen(move.along).scaled(scale), side.seen(move.across).scaled(scale))
    start = _DETAIL - (legs[0] + legs[1]).scaled(0.5)
    corner, end = start + legs[0], start + legs[0] + legs[1]
    return element(
        "g",
        line(start, corner, stroke_width=0.9),
        line(corner, end, stroke_width=0.9),
        arrow(start, end),
        circle(start, 3.0, fill="currentColor"),
        crank_mark(end),
        _sized((start + corner).scaled(0.5), -legs[1], move.along_size, "X"),
        _sized((corner + end).scaled(0.5), legs[0], move.across_size, "Y"),
        label(
            Vec2(180.0, 358.0), language.say("order_view.detail"), text_anchor="middle",
            font_size=11,
        ),
        class_="detail",
    )  # fmt: skip


def _sized(middle: Vec2, outward: Vec2, size: Size, name: str) -> str:
    """The size of a leg, on its outer side."""
    way = outward.unit() if outward.length > 0 else Vec2(0.0, 1.0)
    at = middle + way.scaled(18.0)
    anchor = "middle" if abs(way.x) < 0.5 else "start" if way.x > 0 else "end"
    return "".join(
        label(at + Vec2(0.0, down), text, text_anchor=anchor, font_size=11, **attributes)
        for text, down, attributes in (
            (f"{name} {size.mm}", 0.0, {"class_": f"leg-{name}"}),
            (size.inch, 12.0, {}),
        )
    )
