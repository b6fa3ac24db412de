"""The picture of a kind of housing: where each bore was as found, and where the next one lies."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.drawing.marks import (
    after_mark,
    bore_mark,
    circle,
    crank_mark,
    dimension,
    label,
    nice_length,
    paper,
)
from sweepsheet.drawing.svg import element
from sweepsheet.maths.normal import K_95_PLANE, ellipse95
from sweepsheet.maths.units import UnitSystem
from sweepsheet.maths.vector import Vec2
from sweepsheet.memory.usual import Usual
from sweepsheet.words.messages import Language, StockSize

WIDTH, HEIGHT = 360, 300
_MIDDLE = Vec2(180.0, 130.0)
_REACH = 112.0


@dataclass(frozen=True, slots=True)
class _Scale:
    """Pixels for each mm."""

    pixels: float

    def place(self, v: Vec2) -> Vec2:
        return Vec2(_MIDDLE.x + v.x * self.pixels, _MIDDLE.y - v.y * self.pixels)


def memory_view(
    usual: Usual, here: Vec2 | None, limit: float | None, units: UnitSystem, language: Language
) -> str:
    """The SVG, all in mm: every place, the region, the limit, and the place ``here``.

    Empty where there is no place.
    """
    if not usual.places:
        return ""
    say = language.say
    known = [*usual.places, *([here] if here is not None else [])]
    most = max([v.length for v in known] + ([limit] if limit else []) + [units.to_mm(units.step)])
    scale = _Scale(_REACH / most)
    bar = nice_length(most / units.mm)
    below = Vec2(20.0, HEIGHT - 16.0)
    return paper(
        WIDTH,
        HEIGHT,
        say("memory.view"),
        say("memory.view_desc", n=len(usual.places)),
        *_region(usual, scale),
        *([circle(_MIDDLE, limit * scale.pixels, stroke_dasharray="7 4")] if limit else []),
        crank_mark(_MIDDLE),
        *(bore_mark(scale.place(v)) for v in usual.places),
        *([after_mark(scale.place(here))] if here is not None else []),
        dimension(below, below + Vec2(bar * units.mm * scale.pixels, 0.0)),
        label(below + Vec2(0.0, -10.0), language.word(StockSize(bar, units))),
        label(Vec2(200.0, HEIGHT - 12.0), say("drawing.view"), font_size=12),
    )


def _region(usual: Usual, scale: _Scale) -> list[str]:
    if usual.region is None:
        return []
    # An ellipse of the 95 % of a normal quantity has half axes of K times the deviations.
    ellipse = ellipse95(usual.region.spread.scaled(K_95_PLANE**-2))
    at = scale.place(usual.region.middle)
    drawn = element(
        "ellipse",
        cx=at.x,
        cy=at.y,
        rx=ellipse.minor * scale.pixels,
        ry=ellipse.major * scale.pixels,
        transform=f"rotate({ellipse.at_deg:.2f} {at.x:.2f} {at.y:.2f})",
        fill="currentColor",
        fill_opacity=0.12,
    )
    clip = element("clipPath", element("rect", width=WIDTH, height=HEIGHT - 44), id="memory-clip")
    return [clip, element("g", drawn, clip_path="url(#memory-clip)")]
