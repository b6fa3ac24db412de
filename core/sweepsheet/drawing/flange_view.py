"""The front flange from behind: the shim at each bolt, and where most would be machined off.

Bolts stand at their own clock angles and, beside one another, at their own distances.
"""

from __future__ import annotations

from sweepsheet.drawing.marks import (
    around,
    circle,
    crank_mark,
    label,
    paper,
    wedge_mark,
    wedge_sample,
)
from sweepsheet.drawing.svg import element
from sweepsheet.job.model import Hole
from sweepsheet.maths.vector import ZERO, Vec2
from sweepsheet.solution import Solution
from sweepsheet.words.messages import BareDistance, ClockPosition, Distance, Language, Message

WIDTH = 360
HEIGHT = 372
_MIDDLE = Vec2(180.0, 164.0)
_OUTERMOST = 118.0
_RIM = 136.0


def flange_view_of(solution: Solution, language: Language) -> str:
    """The SVG of the shims; empty where the face is not surely out or no shims are known."""
    squaring, job = solution.squares, solution.job
    if squaring is None or squaring.shims is None:
        return ""
    say, units, bolts = language.say, job.units, job.housing.bolts
    shims = squaring.shims.shims
    pixels = _OUTERMOST / max(bolt.radius for bolt in bolts)
    listed = tuple(
        Message(
            "flange.shim", {"at": ClockPosition(s.at_deg), "shim": Distance(s.thickness, units)}
        )
        for s in shims
    )
    outward = around(ZERO, squaring.taper.deepest_deg, 1.0)
    return paper(
        WIDTH,
        HEIGHT,
        say("flange.title"),
        say("flange.desc", shims=listed),
        circle(_MIDDLE, _RIM, stroke_width=1.75),
        circle(_MIDDLE, _OUTERMOST * 0.62),
        crank_mark(_MIDDLE),
        *(
            _bolt(bolt, pixels, language.word(BareDistance(shim.thickness, units)))
            for bolt, shim in zip(bolts, shims, strict=True)
        ),
        wedge_mark(_MIDDLE + outward.scaled(_RIM + 3.0), outward),
        label(Vec2(180.0, 16.0), "12", text_anchor="middle", font_weight="bold"),
        wedge_sample(Vec2(24.0, 338.0)),
        label(Vec2(42.0, 342.5), say("flange.deepest")),
        label(Vec2(14.0, 364.0), say("flange.view", unit=language.unit(units))),
    )


def _bolt(bolt: Hole, pixels: float, shim: str) -> str:
    """A bolt hole, and the thickness of its shim on the side of the middle."""
    at = around(_MIDDLE, bolt.at_deg, bolt.radius * pixels)
    inside = around(_MIDDLE, bolt.at_deg, bolt.radius * pixels - 24.0)
    return element(
        "g",
        circle(at, 7.0),
        label(inside + Vec2(0.0, 5.0), shim, text_anchor="middle", font_weight="bold"),
    )
