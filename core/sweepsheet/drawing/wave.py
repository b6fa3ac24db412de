"""The readings of the bore round the clock, and the wave that was fitted to them.

What an offset does to a dial is one wave a turn; what lies beside it is not an offset. Readings and
wave have one scale, so that what is left beside the wave is as large as it is drawn.
"""

from __future__ import annotations

from sweepsheet.drawing.marks import PENCIL, circle, label, line, nice_length, paper
from sweepsheet.drawing.svg import element
from sweepsheet.maths.clock import unit_vector
from sweepsheet.maths.units import UnitSystem
from sweepsheet.maths.vector import Vec2
from sweepsheet.solution import Solution
from sweepsheet.sweep.analysis import SweepAnalysis
from sweepsheet.words.messages import Distance, Language

WIDTH = 360
HEIGHT = 286
LEFT, RIGHT = 24.0, 336.0
MIDDLE = 96.0
# The farthest reading, or the crest of the wave, is drawn this far from the middle.
REACH = 72.0
_LONGEST_BAR = 46.0
# The curve is drawn through a point for each of so many degrees.
_STEP_DEG = 10


def x_of(angle_deg: float) -> float:
    """Where a clock angle is drawn, from 0 on the left to 360 on the right.

    >>> x_of(0.0), x_of(180.0), x_of(360.0)
    (24.0, 180.0, 336.0)
    """
    return LEFT + angle_deg / 360.0 * (RIGHT - LEFT)


def wave_of(solution: Solution, language: Language) -> str:
    """The SVG of the latest round's bore: mean corrected readings and the fitted harmonic."""
    swept, job, say = solution.latest.bore.swept, solution.job, language.say
    known = [
        (angle, mean)
        for angle, mean in zip(swept.fitted.positions_deg, swept.means, strict=True)
        if mean is not None
    ]
    wave = swept.fitted.amplitude
    farthest = max(wave.length, *(abs(mean) for _, mean in known))
    pixels = REACH / max(farthest, job.indicator.step, job.units.hair)
    odd = _odd_position(swept)

    def at(angle: float, value: float) -> Vec2:
        return Vec2(x_of(angle), MIDDLE - value * pixels)

    curve = " ".join(
        f"{p.x:.2f},{p.y:.2f}"
        for p in (at(a, wave.dot(unit_vector(a))) for a in range(0, 361, _STEP_DEG))
    )
    points = []
    for angle, mean in known:
        point = at(angle, mean)
        points.append(line(at(angle, wave.dot(unit_vector(angle))), point, class_="rest"))
        points.append(circle(point, 4.0, fill="currentColor", class_="reading"))
        if angle == odd:
            points.append(circle(point, 10.0, class_="pencil odd", stroke=PENCIL, stroke_width=2.5))
    rest = Distance(max(abs(m - wave.dot(unit_vector(a))) for a, m in known), job.units)
    return paper(
        WIDTH,
        HEIGHT,
        say("wave.title"),
        say("wave.desc", rest=rest),
        _clock(),
        element("polyline", points=curve, stroke_width=2, class_="wave"),
        *points,
        _legend(swept, language),
        _bar(pixels, job.units, language),
        label(Vec2(14.0, 276.0), say("wave.rest", rest=rest)),
    )


def _odd_position(swept: SweepAnalysis) -> float | None:
    """Where the checks name a reading that does not belong, or sweeps that differ."""
    if swept.foreign is not None:
        return swept.foreign.position_deg
    return None if swept.disagreement is None else swept.disagreement.position_deg


def _clock() -> str:
    """The hours, and the line of a dial that does not move."""
    hours = "".join(
        line(Vec2(x_of(angle), 20.0), Vec2(x_of(angle), 172.0), stroke_width=0.5)
        + label(Vec2(x_of(angle), 188.0), hour, text_anchor="middle", font_weight="bold")
        for angle, hour in ((0.0, "12"), (90.0, "3"), (180.0, "6"), (270.0, "9"), (360.0, "12"))
    )
    signs = label(Vec2(6.0, 32.0), "+") + label(Vec2(6.0, 168.0), "\N{MINUS SIGN}")
    still = line(
        Vec2(LEFT, MIDDLE), Vec2(RIGHT, MIDDLE), stroke_dasharray="14 3 3 3", stroke_width=0.75
    )
    return element("g", hours, signs, still)


def _legend(swept: SweepAnalysis, language: Language) -> str:
    """What the marks mean."""
    say, left, words = language.say, 150.0, Vec2(168.0, 0.0)
    rows = [
        circle(Vec2(left, 208.0), 4.0, fill="currentColor"),
        label(words + Vec2(0.0, 212.5), say("wave.reading")),
        line(Vec2(left - 12.0, 228.0), Vec2(left + 12.0, 228.0), stroke_width=2),
        label(words + Vec2(0.0, 232.5), say("wave.fitted")),
    ]
    if _odd_position(swept) is not None:
        what = "wave.differ" if swept.foreign is None else "wave.foreign"
        rows.append(
            circle(Vec2(left, 248.0), 8.0, class_="pencil", stroke=PENCIL, stroke_width=2.5)
        )
        rows.append(label(words + Vec2(0.0, 252.5), say(what)))
    return element("g", *rows, class_="legend")


def _bar(pixels: float, units: UnitSystem, language: Language) -> str:
    """A scale bar, upright, for readings and wave."""
    bar = nice_length(_LONGEST_BAR / pixels)
    low, high = Vec2(18.0, 254.0), Vec2(18.0, 254.0 - bar * pixels)
    ends = f"M13 {low.y:.2f}h10M13 {high.y:.2f}h10"
    words = language.word(Distance(bar, units))
    named = label(Vec2(32.0, (low.y + high.y) / 2.0 + 4.5), words)
    return line(low, high, class_="bar") + element("path", d=ends) + named
