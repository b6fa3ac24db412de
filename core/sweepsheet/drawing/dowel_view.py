"""The pair of dowels from their ends, to be held beside the real ones: where each mark belongs.

Seen from behind the engine, which shows the end face of the part that the housing sits on. Its high
side, where the mark is scribed, points to the aim. The step is drawn far larger than it is.
"""

from __future__ import annotations

from sweepsheet.drawing.marks import PENCIL, around, arrow, circle, label, line, paper
from sweepsheet.drawing.svg import element
from sweepsheet.job.model import Dowel, Hole
from sweepsheet.maths.clock import turn_between, unit_vector
from sweepsheet.maths.vector import Vec2
from sweepsheet.words.messages import ClockPosition, Language, Message

WIDTH = 360
HEIGHT = 256
# The middles of the two holes.
LEFT, RIGHT = Vec2(94.0, 104.0), Vec2(266.0, 104.0)
_PEG = 44.0
_STEP = 12.0
_TURN = 70.0
# A turn smaller than this is too small to be drawn as an arc with a head.
_LEAST_TURN_DEG = 8.0

Pair = tuple[Dowel, Dowel]


def dowel_view_of(
    dowels: Pair, now: Pair | None, holes: tuple[Hole, Hole] | None, language: Language
) -> str:
    """The SVG of a pair to fit, or of the one that is in, to be turned from where it is ``now``.

    Where the holes were measured each dowel is named by its hole, and the one farther left is drawn
    on the left.
    """
    say = language.say
    places = (LEFT, RIGHT)
    if holes is not None and _is_left(holes[1], holes[0]):
        places = (RIGHT, LEFT)
    drawn = []
    largest = max(dowel.offset for dowel in dowels)
    for i, (place, dowel) in enumerate(zip(places, dowels, strict=True)):
        drawn.append(_dowel(place, dowel, dowel.offset / largest * _STEP, language))
        if now is not None:
            drawn.append(_turn(place, now[i].aim_deg, dowel.aim_deg))
        if holes is not None:
            hole = say("dowel_view.hole", hole=ClockPosition(holes[i].at_deg))
            drawn.append(label(Vec2(place.x, 16.0), hole, text_anchor="middle"))
    lines = [say("dowel_view.view"), say("dowel_view.step")]
    if now is not None:
        lines.append(say("dowel_view.now", now=ClockPosition(now[0].aim_deg)))
    return paper(
        WIDTH,
        HEIGHT,
        say("dowel_view.title"),
        _described(dowels, now, language),
        *drawn,
        *(label(Vec2(14.0, 208.0 + 20.0 * i), text) for i, text in enumerate(lines)),
    )


def _is_left(one: Hole, other: Hole) -> bool:
    """Whether a hole is farther left than another."""
    return unit_vector(one.at_deg).x * one.radius < unit_vector(other.at_deg).x * other.radius


def _described(dowels: Pair, now: Pair | None, language: Language) -> str:
    """What the drawing shows, for who can't see it."""
    first, second = (ClockPosition(dowel.aim_deg) for dowel in dowels)
    if now is not None:
        return language.say("dowel_view.turned", now=ClockPosition(now[0].aim_deg), aim=first)
    if dowels[0] == dowels[1]:
        return language.say("dowel_view.both", aim=first)
    marks = tuple(
        Message("dowel_view.mark", {"aim": aim}) if dowel.offset else Message("dowel_view.stock")
        for dowel, aim in zip(dowels, (first, second), strict=True)
    )
    return language.say("dowel_view.each", marks=marks)


def _dowel(at: Vec2, dowel: Dowel, step: float, language: Language) -> str:
    """One dowel: the part in the block behind, the end of the other, and its mark."""
    shank = circle(at, _PEG, stroke_dasharray="5 3")
    under = Vec2(at.x, at.y + 80.0)
    if dowel.offset == 0:
        words = language.say("dowel_view.stock")
        return element("g", circle(at, _PEG), _twelve(at), _named(under, words))
    peg = around(at, dowel.aim_deg, step)
    inner, rim = around(peg, dowel.aim_deg, 0.4 * _PEG), around(peg, dowel.aim_deg, _PEG)
    words = language.say("dowel_view.mark", aim=ClockPosition(dowel.aim_deg))
    return element(
        "g",
        shank,
        element("circle", cx=peg.x, cy=peg.y, r=_PEG, class_="paper", fill="#fff", stroke_width=2),
        _cross(at),
        line(inner, rim, class_="pencil mark", stroke=PENCIL, stroke_width=4),
        _twelve(at),
        _named(under, words),
    )


def _cross(at: Vec2) -> str:
    """The middle of the hole."""
    return element("path", d=f"M{at.x - 7} {at.y}h14M{at.x} {at.y - 7}v14", stroke_width=0.9)


def _twelve(at: Vec2) -> str:
    """Where 12 o'clock is."""
    top = Vec2(at.x, at.y - 60.0)
    return label(top - Vec2(0.0, 6.0), "12", text_anchor="middle", font_weight="bold") + line(
        top, top + Vec2(0.0, 6.0)
    )


def _named(at: Vec2, words: str) -> str:
    return label(at, words, text_anchor="middle", font_weight="bold")


def _turn(at: Vec2, from_deg: float, to_deg: float) -> str:
    """Where the mark is now, and the way it turns, the shorter way round."""
    old = line(
        around(at, from_deg, 0.3 * _PEG), around(at, from_deg, _PEG + 12.0),
        stroke_width=1.5, class_="old",
    )  # fmt: skip
    turn = turn_between(from_deg, to_deg)
    if abs(turn) < _LEAST_TURN_DEG:
        return old
    way = 1.0 if turn > 0 else -1.0
    start, head = around(at, from_deg, _TURN), around(at, to_deg, _TURN)
    tail = around(at, to_deg - way * _LEAST_TURN_DEG, _TURN)
    # Half a turn is the most there is.
    sweep = int(turn > 0)
    arc = f"A{_TURN:g} {_TURN:g} 0 0 {sweep} {tail.x:.2f} {tail.y:.2f}"
    path = element(
        "path", d=f"M{start.x:.2f} {start.y:.2f}{arc}", class_="pencil", stroke=PENCIL,
        stroke_width=2.5,
    )  # fmt: skip
    return element("g", old, path, arrow(tail, head), class_="turn")
