"""The crank from behind, with the bracket of the dial: what the pictures of a sweep share.

What turns is drawn as it stands at 12 o'clock, and turned round ``MIDDLE``. Lengths are pixels of
the drawing, x right and y down.
"""

from __future__ import annotations

from sweepsheet.drawing.marks import around, arrow, circle, label, line
from sweepsheet.drawing.svg import element
from sweepsheet.maths.vector import Vec2

MIDDLE = Vec2(180.0, 124.0)
RIM = 102.0
BORE = 74.0
SPIGOT = 54.0
ON_FACE = 88.0
HOURS = 112.0


def clock_hours() -> str:
    """The hours 12, 3, 6 and 9 round the housing.

    >>> clock_hours().count("<text")
    4
    """
    return "".join(
        label(
            around(MIDDLE, hour * 30.0, HOURS) + Vec2(0.0, 5.0), str(hour),
            text_anchor="middle", font_size=14, font_weight="bold",
        )
        for hour in (12, 3, 6, 9)
    )  # fmt: skip


def turned_crank(angle_deg: float) -> str:
    """The transform that turns the crank from 12 o'clock, clockwise plus.

    >>> turned_crank(90.0)
    'rotate(90 180 124)'
    """
    return f"rotate({round(angle_deg, 1) + 0.0:g} {MIDDLE.x:g} {MIDDLE.y:g})"


def position_mark(angle_deg: float, *, full: bool) -> str:
    """A wedge on the rim that points inward at a position."""
    tip, left, right = (
        around(MIDDLE, angle_deg + turn, RIM + out)
        for turn, out in ((0.0, -12.0), (-2.2, 0.0), (2.2, 0.0))
    )
    path = f"M{tip.x:.2f} {tip.y:.2f}L{left.x:.2f} {left.y:.2f}L{right.x:.2f} {right.y:.2f}z"
    return element("path", d=path, fill="currentColor" if full else "none", stroke_width=1)


def way_of_turning(clockwise: bool) -> str:  # noqa: FBT001 - the one thing it depends on
    """An arc beside the flange whose head shows which way the crank is turned."""
    side = 1.0 if clockwise else -1.0
    start, end = (around(MIDDLE, side * a, 36.0) for a in (30.0, 78.0))
    sweep = 1 if clockwise else 0
    head = arrow(around(MIDDLE, side * 70.0, 36.0), around(MIDDLE, side * 84.0, 36.0))
    return element(
        "g",
        element(
            "path", d=f"M{start.x:.2f} {start.y:.2f}A36 36 0 0 {sweep} {end.x:.2f} {end.y:.2f}"
        ),
        head,
    )


def flange() -> str:
    """The crank's flange with its six bolts."""
    bolts = "".join(circle(around(MIDDLE, 60.0 * i + 30.0, 18.0), 3.0) for i in range(6))
    return element(
        "g", element("circle", cx=MIDDLE.x, cy=MIDDLE.y, r=26, class_="paper", fill="#fff"),
        circle(MIDDLE, 6.0), bolts, stroke_width=1.5,
    )  # fmt: skip


def bore_bracket(contact: str) -> str:
    """The bracket with its dial on a bore (``inside``) or a spigot (``outside``)."""
    body, tip = (48.0, BORE - 1.5) if contact == "inside" else (RIM - 20.0, SPIGOT + 1.5)
    at = around(MIDDLE, 0.0, body)
    return element(
        "g",
        _rod(body - 12.0),
        line(at, around(MIDDLE, 0.0, tip), stroke_width=3),
        element("circle", cx=at.x, cy=at.y, r=12, class_="paper", fill="#fff", stroke_width=2),
        line(at, at - Vec2(0.0, 8.0), class_="pencil"),
    )


def face_bracket(plunger: str) -> str:
    """The bracket with its dial on the face.

    The plunger points away from who looks (``forward``, a cross) or at him (``rearward``, a dot).
    """
    at = around(MIDDLE, 0.0, ON_FACE)
    body = element("circle", cx=at.x, cy=at.y, r=12, class_="paper", fill="#fff", stroke_width=2)
    x, y = at.x, at.y
    end = (
        element("path", d=f"M{x - 5} {y - 5}l10 10M{x + 5} {y - 5}l-10 10")
        if plunger == "forward"
        else circle(at, 3.0, fill="currentColor")
    )
    return _rod(ON_FACE - 12.0) + body + end


def _rod(reach: float) -> str:
    """The rod of the bracket, from the flange outward."""
    return element(
        "rect", x=MIDDLE.x - 4.0, y=MIDDLE.y - reach, width=8, height=reach - 12.0,
        class_="paper", fill="#fff",
    )  # fmt: skip
