"""The marks of the drawings: each has its own form, so that none depends on colour.

One drafting ink (``currentColor``), and a red pencil for what must be done. Lengths are pixels
of the drawing, x right and y down.
"""

from __future__ import annotations

import math

from sweepsheet.drawing.svg import Attribute, element, text
from sweepsheet.maths.clock import unit_vector
from sweepsheet.maths.vector import Vec2

PENCIL = "#a3201a"


def nice_length(most: float) -> float:
    """The largest of 1, 2, 5, 10, 20 ... that is not above ``most``.

    >>> nice_length(7.3), nice_length(0.25), nice_length(1.0)
    (5.0, 0.2, 1.0)
    """
    power = 10.0 ** math.floor(math.log10(most))
    lead = max(n for n in (1.0, 2.0, 5.0) if n * power <= most * (1 + 1e-12))
    return lead * power


def paper(width: int, height: int, title: str, description: str, *children: str) -> str:
    """A whole drawing, with a title and a description for who can't see it."""
    return element(
        "svg",
        element("title", text(title)),
        element("desc", text(description)),
        *children,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {width} {height}",
        role="img",
        class_="drawing",
        fill="none",
        stroke="currentColor",
        stroke_width=1.25,
        font_family="system-ui, sans-serif",
        font_size=13,
    )


def label(at: Vec2, content: str, **attributes: Attribute) -> str:
    """A text in ink."""
    return element(
        "text", text(content), x=at.x, y=at.y, fill="currentColor", stroke="none", **attributes
    )


def line(a: Vec2, b: Vec2, **attributes: Attribute) -> str:
    """A straight line."""
    return element("line", x1=a.x, y1=a.y, x2=b.x, y2=b.y, **attributes)


def circle(at: Vec2, r: float, **attributes: Attribute) -> str:
    """A circle."""
    return element("circle", cx=at.x, cy=at.y, r=r, **attributes)


def around(middle: Vec2, angle_deg: float, radius: float) -> Vec2:
    """A point of the drawing by clock angle and distance from a middle.

    >>> around(Vec2(10.0, 10.0), 90.0, 5.0)
    Vec2(x=15.0, y=10.0)
    """
    u = unit_vector(angle_deg)
    return Vec2(middle.x + radius * u.x, middle.y - radius * u.y)


def crank_mark(at: Vec2) -> str:
    """A cross in a circle: an axis seen from its end."""
    x, y = at.x, at.y
    return element("g", circle(at, 5.0), element("path", d=f"M{x - 8} {y}h16M{x} {y - 8}v16"))


def bore_mark(at: Vec2) -> str:
    """The bore centre: a full dot."""
    return circle(at, 2.5, fill="currentColor")


def after_mark(at: Vec2) -> str:
    """Where the bore is expected: an open square on its corner."""
    path = f"M{at.x:.2f} {at.y - 6:.2f}l6 6l-6 6l-6 -6z"
    return element("path", d=path, class_="pencil", stroke=PENCIL, stroke_width=2)


def region_sample(at: Vec2) -> str:
    """The 95 % region, for the legend."""
    return element("ellipse", cx=at.x, cy=at.y, rx=9, ry=6, fill="currentColor", fill_opacity=0.12)


def limit_sample(at: Vec2) -> str:
    """The limit circle, for the legend: a dashed line."""
    a, b = at - Vec2(10.0, 0.0), at + Vec2(10.0, 0.0)
    return line(a, b, stroke_dasharray="7 4", stroke_width=1.5)


def move_sample(at: Vec2) -> str:
    """The move, for the legend: an arrow."""
    return arrow(at - Vec2(10.0, 0.0), at + Vec2(10.0, 0.0))


def glide(start: Vec2, end: Vec2) -> str:
    """What moves the group it is put into, once it is begun: from one shift to another, and a rest.

    Shifts are pixels from where the group is drawn. Before it is begun, when it is over, and on
    paper the group is where it is drawn.
    """
    shifts = ((round(v.x, 2) + 0.0, round(v.y, 2) + 0.0) for v in (start, end, end))
    return element(
        "animateTransform", attributeName="transform", type="translate", begin="indefinite",
        dur="3s", values=";".join(f"{x:g} {y:g}" for x, y in shifts), keyTimes="0;0.6;1",
        calcMode="spline", keySplines="0.4 0 0.2 1;0 0 1 1",
    )  # fmt: skip


def arrow(tail: Vec2, head: Vec2) -> str:
    """A red arrow; one too short to be seen is only its head."""
    way = head - tail
    if way.length < 1e-9:
        return ""
    u = way.scaled(1.0 / way.length)
    side = Vec2(-u.y, u.x)
    neck = head - u.scaled(9.0)
    left, right = neck + side.scaled(5.0), neck - side.scaled(5.0)
    tip = f"M{head.x:.2f} {head.y:.2f}L{left.x:.2f} {left.y:.2f}L{right.x:.2f} {right.y:.2f}z"
    shaft = line(tail, neck, stroke_width=2.5) if way.length > 9.0 else ""
    return element(
        "g",
        shaft,
        element("path", d=tip, class_="pencil-fill", fill=PENCIL, stroke="none"),
        class_="pencil",
        stroke=PENCIL,
    )


def dimension(left: Vec2, right: Vec2) -> str:
    """A dimension line with an arrow head at each end and its witness lines."""
    heads = (
        f"M{left.x:.2f} {left.y}l7 -3v6zM{right.x:.2f} {right.y}l-7 -3v6z"
        if right.x - left.x > 16
        else ""
    )
    ends = f"M{left.x:.2f} {left.y - 6}v12M{right.x:.2f} {right.y - 6}v12"
    return element(
        "g",
        line(left, right),
        element("path", d=ends),
        element("path", d=heads, fill="currentColor", stroke="none") if heads else "",
    )


def dowel_mark(at: Vec2, offset: float, aim_deg: float) -> str:
    """A dowel: its hole, the peg, which stands off where it has an offset, and the aim."""
    hole = element("circle", cx=at.x, cy=at.y, r=9, class_="paper", fill="#fff")
    if offset == 0:
        return element("g", hole, circle(at, 5.0))
    peg, head = around(at, aim_deg, 3.0), around(at, aim_deg, 26.0)
    return element("g", hole, circle(peg, 5.0), arrow(at, head))


def wedge_mark(at: Vec2, way: Vec2) -> str:
    """Where the face stands most rearward: a full wedge that points outward, along ``way``."""
    side = Vec2(-way.y, way.x).scaled(6.0)
    tip, left, right = at + way.scaled(8.0), at + side, at - side
    path = f"M{tip.x:.2f} {tip.y:.2f}L{left.x:.2f} {left.y:.2f}L{right.x:.2f} {right.y:.2f}z"
    return element("path", d=path, fill="currentColor", stroke="none")


def wedge_sample(at: Vec2) -> str:
    """The wedge, for the legend."""
    return wedge_mark(at + Vec2(0.0, 4.0), Vec2(0.0, -1.0))
