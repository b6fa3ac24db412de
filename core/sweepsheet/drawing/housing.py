"""The drawing: the housing from behind, with the middle of its bore magnified.

A shop drawing in one ink, with a red pencil for what must be done. It is meant to be read on
a 360-pixel screen and on paper without colour: every mark has its own form and is named below.
Colours come from the page's style sheet by class; without one it is black with a dark red.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.face import Face
from sweepsheet.drawing.marks import (
    PENCIL,
    after_mark,
    around,
    arrow,
    bore_mark,
    circle,
    crank_mark,
    dimension,
    dowel_mark,
    glide,
    label,
    limit_sample,
    line,
    move_sample,
    nice_length,
    paper,
    region_sample,
    wedge_mark,
    wedge_sample,
)
from sweepsheet.drawing.svg import Attribute, element
from sweepsheet.job.model import Dowel, Housing, Round
from sweepsheet.maths.units import UnitSystem
from sweepsheet.maths.vector import ZERO, Vec2
from sweepsheet.solution import Solution
from sweepsheet.words.messages import Direction, Distance, Language

WIDTH = 360
HEIGHT = 510
_MIDDLE = Vec2(180.0, 172.0)
_RIM = 148.0
_READINGS = 111.0
_BORE = 88.0
_HOURS = 165.0
# The magnified part reaches this far out from the middle.
_REACH = 80.0
# Below the dowels that are drawn at 9 and 3.
_BESIDE_DOWEL = Vec2(0.0, 24.0)
_PIXELS_PER_MM = 96.0 / 25.4
# More readings than this do not fit round the clock at a size that can be read.
_MOST_READINGS_SHOWN = 16


@dataclass(frozen=True, slots=True)
class _Scale:
    """How many pixels of the drawing a small unit takes in the magnified part."""

    pixels: float
    units: UnitSystem

    def place(self, v: Vec2) -> Vec2:
        """Where a vector from the crank axis lies in the drawing."""
        return Vec2(_MIDDLE.x + v.x * self.pixels, _MIDDLE.y - v.y * self.pixels)

    @property
    def magnification(self) -> float:
        """Drawn size over real size on a screen of 96 pixels an inch."""
        return self.pixels / (self.units.mm * _PIXELS_PER_MM)


def drawing_of(
    solution: Solution,
    language: Language,
    *,
    reach: float | None = None,
    came_from: Vec2 | None = None,
) -> str:
    """The SVG of the latest round, with a title and a description for who can't see it.

    ``reach`` is how far from the crank axis must be seen, in small units, where two drawings are to
    have one scale; by itself each has its own. The bore can be made to move once: from
    ``came_from`` to where it is, else from where it is to where the chosen dowels should bring it.
    """
    bore, job = solution.latest.bore, solution.job
    scale = _Scale(_REACH / (reach or reach_of(solution)), job.units)
    say = language.say
    described = say(
        "drawing.desc",
        offset=Distance(bore.offset, job.units),
        direction=Direction(bore.direction_deg),
    )
    return paper(
        WIDTH,
        HEIGHT,
        say("drawing.title"),
        described,
        _definitions(),
        # The page can turn this part for who lies otherwise, about its middle.
        element(
            "g",
            _housing(),
            _readings(job.rounds[-1], bore, language),
            _limit(job.limits.bore_offset, scale),
            _center_lines(),
            _region(bore, scale, _way(solution, came_from)),
            _move(solution, scale),
            _rearmost(solution.latest.face),
            _dowels(solution),
            class_="turns",
        ),
        _legend(solution, scale, language),
    )


def reach_of(solution: Solution) -> float:
    """The distance from the crank axis that must be seen, in small units; never nothing."""
    bore = solution.latest.bore
    wanted = [bore.offset + bore.ellipse.major, solution.job.indicator.step]
    if solution.job.limits.bore_offset is not None:
        wanted.append(1.15 * solution.job.limits.bore_offset)
    return max(*wanted, 10.0**-solution.job.units.decimals)


def _definitions() -> str:
    """The hatch for what is out of limit, and the arrow heads."""
    hatch = element(
        "pattern",
        element("path", d="M0 0V6", stroke="currentColor", stroke_width=0.8, opacity=0.5),
        id="sweepsheet-hatch", width=6, height=6, patternUnits="userSpaceOnUse",
        patternTransform="rotate(45)",
    )  # fmt: skip
    return element("defs", hatch)


def _housing() -> str:
    """Rim and bore of the housing, with the hours of the clock outside."""
    hours = "".join(
        label(
            around(_MIDDLE, hour * 30.0, _HOURS)
            + (_BESIDE_DOWEL if hour in (3, 9) else Vec2(0.0, 5.0)),
            str(hour), text_anchor="middle", font_size=14, font_weight="bold",
        )
        for hour in (12, 3, 6, 9)
    )  # fmt: skip
    ticks = "".join(
        line(around(_MIDDLE, hour * 30.0, _RIM), around(_MIDDLE, hour * 30.0, _RIM - 5.0))
        for hour in range(12)
    )
    return element(
        "g",
        circle(_MIDDLE, _RIM, stroke_width=1.75),
        circle(_MIDDLE, _BORE, stroke_width=2.5),
        ticks,
        hours,
    )


def _readings(last: Round, bore: Bore, language: Language) -> str:
    """What the dial showed, each where it was read: the first sweep, as typed."""
    sweeps = last.bore.sweeps
    if len(sweeps.positions_deg) > _MOST_READINGS_SHOWN:
        return ""
    foreign = bore.swept.foreign.position_deg if bore.swept.foreign else None
    labels = []
    for angle, value in zip(sweeps.positions_deg, sweeps.readings[0], strict=True):
        at = around(_MIDDLE, angle, _READINGS)
        shown = "–" if value is None else language.number(f"{value:+g}" if value else "0")
        labels.append(label(at + Vec2(0.0, 5.0), shown, text_anchor="middle"))
        if angle == foreign:
            labels.append(
                element(
                    "rect", x=at.x - 22, y=at.y - 11, width=44, height=22, class_="pencil",
                    stroke=PENCIL, stroke_width=2,
                )
            )  # fmt: skip
    return element("g", *labels, class_="readings")


def _limit(limit: float | None, scale: _Scale) -> str:
    """The limit circle, hatched outside up to the wall of the bore."""
    if limit is None:
        return ""
    r = limit * scale.pixels
    ring = _circle_path(_BORE) + _circle_path(r)
    return element(
        "g",
        element("path", d=ring, fill="url(#sweepsheet-hatch)", fill_rule="evenodd", stroke="none"),
        circle(_MIDDLE, r, stroke_dasharray="7 4", stroke_width=1.5),
    )


def _circle_path(r: float) -> str:
    x, y = _MIDDLE.x, _MIDDLE.y
    half = f"a{r:.2f} {r:.2f} 0 1 0"
    return f"M{x - r:.2f} {y}{half} {2 * r:.2f} 0{half} {-2 * r:.2f} 0z"


def _center_lines() -> str:
    """The crank axis: a chain line each way and a small cross."""
    chain: dict[str, Attribute] = {"stroke_dasharray": "14 3 3 3", "stroke_width": 0.75}
    reach = _BORE - 4.0
    return element(
        "g",
        element("path", d=f"M{_MIDDLE.x} {_MIDDLE.y - reach}V{_MIDDLE.y + reach}", **chain),
        element("path", d=f"M{_MIDDLE.x - reach} {_MIDDLE.y}H{_MIDDLE.x + reach}", **chain),
        crank_mark(_MIDDLE),
    )


def _way(solution: Solution, came_from: Vec2 | None) -> tuple[Vec2, Vec2] | None:
    """From where to where the bore moves, in small units; ``None`` where it stays."""
    center, planned = solution.latest.bore.center, solution.planned
    if came_from is not None:
        return came_from, center
    return None if planned is None else (center, planned.center)


def _region(bore: Bore, scale: _Scale, way: tuple[Vec2, Vec2] | None) -> str:
    """The bore centre and its 95 % ellipse, which can be made to go a way."""
    at = scale.place(bore.center)
    ellipse = element(
        "ellipse", rx=max(bore.ellipse.major * scale.pixels, 0.5),
        ry=max(bore.ellipse.minor * scale.pixels, 0.5),
        transform=f"translate({at.x:.2f} {at.y:.2f}) rotate({bore.ellipse.at_deg - 90.0:.2f})",
        class_="region", fill="currentColor", fill_opacity=0.12,
    )  # fmt: skip
    moves = "" if way is None else glide(*(scale.place(end) - at for end in way))
    return element("g", moves, ellipse, bore_mark(at))


def _move(solution: Solution, scale: _Scale) -> str:
    """The way the bore must go, and where the chosen dowels are expected to bring it."""
    bore, planned = solution.latest.bore, solution.planned
    if not _has_move(solution):
        return ""
    marks = []
    if planned is not None:
        marks.append(after_mark(scale.place(planned.center)))
    marks.append(arrow(scale.place(bore.center), _MIDDLE))
    return element("g", *marks)


def _has_move(solution: Solution) -> bool:
    """Whether the bore is to move, by readings that can be trusted to say where."""
    bore = solution.latest.bore
    trusted = bore.direction_pm_deg is not None and not bore.swept.unreliable
    return trusted and bore.judged.verdict != "within" and not solution.wrong_way


def _dowels(solution: Solution) -> str:
    """The dowels to fit, each an offset peg with its aim; else those fitted now."""
    planned, now = solution.planned, solution.job.rounds[-1].dowels
    dowels = now
    if planned is not None:
        dowels = (Dowel(planned.offset, planned.aim_deg),) * 2
    marks = []
    for angle, dowel, old in zip(_dowel_angles(solution.job.housing), dowels, now, strict=True):
        at = around(_MIDDLE, angle, _RIM)
        marks.append(dowel_mark(at, dowel.offset, dowel.aim_deg))
        if planned is not None and old.offset > 0:
            # Where the peg points now, so that the turn can be seen.
            tip = around(at, old.aim_deg, 22.0)
            marks.append(line(at, tip, stroke_dasharray="3 2"))
    return element("g", *marks, class_="dowels")


def _rearmost(face: Face | None) -> str:
    """A wedge at the rim where the face stands most rearward."""
    if face is None or face.direction_pm_deg is None:
        return ""
    way = around(ZERO, face.rearmost_deg, 1.0)
    return wedge_mark(around(_MIDDLE, face.rearmost_deg, _RIM + 6.0), way)


def _dowel_angles(housing: Housing) -> tuple[float, float]:
    """Where the dowels are drawn: where they are, or at 9 and 3 where nobody measured."""
    if housing.dowel_holes is None:
        return (270.0, 90.0)
    first, second = housing.dowel_holes
    return (first.at_deg, second.at_deg)


def _legend(solution: Solution, scale: _Scale, language: Language) -> str:
    """What the marks mean, the view, the magnification and a scale bar."""
    say, units = language.say, solution.job.units
    entries = [
        (crank_mark, say("drawing.crank")),
        (bore_mark, say("drawing.bore")),
        (region_sample, say("drawing.region")),
    ]
    limit = solution.job.limits.bore_offset
    if limit is not None:
        entries.append((limit_sample, say("drawing.limit", limit=Distance(limit, units))))
    face = solution.latest.face
    if _has_move(solution):
        entries.append((move_sample, say("drawing.move")))
        if solution.planned is not None:
            entries.append((after_mark, say("drawing.after")))
    if face is not None and face.direction_pm_deg is not None:
        entries.append((wedge_sample, say("drawing.rearmost")))
    rows = []
    for i, (mark, words) in enumerate(entries):
        at = Vec2(24.0 + 170.0 * (i % 2), 362.0 + 20.0 * (i // 2))
        rows.append(mark(at) + label(at + Vec2(18.0, 4.5), words))
    bar = nice_length(_REACH / scale.pixels)
    left = Vec2(14.0, 456.0)
    right = left + Vec2(bar * scale.pixels, 0.0)
    times = f"{scale.magnification:.2g}"
    return element(
        "g",
        *rows,
        dimension(left, right),
        label(right + Vec2(8.0, 4.5), language.word(Distance(bar, units))),
        label(Vec2(14.0, 480.0), say("drawing.scale", times=f"{float(times):.0f}")),
        label(Vec2(14.0, 500.0), say("drawing.view"), class_="as-drawn"),
        class_="legend",
    )
