"""The work order for the machine shop: one sheet, every size in millimetres and inches.

Both are rounded once, each from the full value, and never finer than a tenth of their doubt.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from typing import Any

from sweepsheet.drawing.order_view import (
    BEHIND,
    FRONT,
    MoveDrawn,
    Size,
    bore_view_of,
    cut_view_of,
    profile_view_of,
)
from sweepsheet.findings.finding import Finding
from sweepsheet.findings.order import Order, order_for
from sweepsheet.job.model import Job
from sweepsheet.maths.clock import clock_time, normalise, polar
from sweepsheet.maths.rounding import step_for, to_step, up_to_step
from sweepsheet.maths.units import MM_PER_INCH, UnitSystem
from sweepsheet.remedy.machining import BoreMove, FaceCut, Figure, Place
from sweepsheet.report.paper import Entry, Table
from sweepsheet.report.sections import shim_row
from sweepsheet.solution import Solution
from sweepsheet.words.messages import ClockPosition, Language

# What of the job's own words goes to the shop: who pays is none of its business.
ABOUT = ("vehicle", "engine", "gearbox", "housing", "technician", "date")
# Nobody works finer than this.
FINEST_MM, FINEST_INCH, FINEST_DEG = 0.001, 0.0001, 0.1
# Bounds are given as coarse as this.
BOUND_MM, BOUND_INCH = 0.01, 0.0005

_CENTER = ("order.row.center_x", "order.row.center_y")

Rows = tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class OrderSheet:
    """One order in words; ``views`` and ``profile`` are SVG, ``measured`` has cells left blank."""

    title: str
    shop: str
    job: str
    about: tuple[Entry, ...]
    work: str
    steps: tuple[str, ...]
    views: tuple[str, ...]
    profile: str
    tables: tuple[Table, ...]
    measured: Table
    cautions: tuple[str, ...]
    sign: tuple[str, ...]


def order_of(
    solution: Solution, findings: tuple[Finding, ...], language: Language
) -> dict[str, Any] | None:
    """The order as plain data; ``None`` for a job that is not surely out.

    ``sheet`` is ``None`` where something is missing, ``lacks`` says what.
    """
    order = order_for(solution, findings)
    if order is None:
        return None
    lacks = [language.say(f"order.lack.{code}") for code in order.lacks]
    sheet = None
    if order.cut is not None:
        sheet = _cut_sheet(solution, order, order.cut, language)
    elif order.bore is not None:
        sheet = _bore_sheet(solution.job, order.bore, language)
    return {
        "title": language.say("order.title"),
        "lacking": language.say("order.lacking"),
        "lacks": lacks,
        "sheet": None if sheet is None else asdict(sheet),
    }


# A taper ------------------------------------------------------------------------------------


def _cut_sheet(solution: Solution, order: Order, cut: FaceCut, language: Language) -> OrderSheet:
    job, say = solution.job, language.say
    units, side = job.units, cut.side
    steps = [
        say("order.clock"),
        *_holes(job, language),
        say(f"order.clamp.{side}"),
        say("order.deepest", at=_angle(cut.deepest_deg, cut.deepest_pm_deg, language)),
        say(f"order.set.{side}"),
        say(f"order.cut.{side}"),
    ]
    swept = job.rounds[-1].face
    radius = 0.0 if swept is None else swept.radius
    rows = (
        ("order.row.rise", _both(cut.rise, units, language)),
        ("order.row.circle", _length(2.0 * cut.radius, units, language)),
        ("order.row.shorter", _plain(cut.shorter, units, language)),
        ("order.row.left", _plain(cut.left, units, language, up=True)),
        ("order.row.spare_face", _plain(cut.spare, units, language, up=False)),
        ("order.row.swept", _length(radius, units, language)),
    )
    tables = [
        _table("", tuple((say(key), size.mm, size.inch) for key, size in rows), language),
        Table(
            say("order.depths"),
            (say("order.head.at"), *_units(language)),
            _places(cut.places, units, language),
        ),
    ]
    if order.shims and solution.squaring is not None and solution.squaring.shims is not None:
        stacks = [shim_row(s, job, language)[1] for s in solution.squaring.shims.shims]
        sizes = _places(order.shims, units, language)
        tables.append(
            Table(
                say("order.shims"),
                (say("order.head.at"), say("order.head.stack"), *_units(language)),
                tuple((at, stack, *both) for (at, *both), stack in zip(sizes, stacks, strict=True)),
            )
        )
    drawn = [(place.at, _alone(place.amount, units, language)) for place in cut.places]
    # The side that is cut comes first: that is how it lies on the machine.
    sides = (FRONT, BEHIND) if side == "front" else (BEHIND, FRONT)
    return _sheet(
        job, f"order.work.{side}", language,
        steps=tuple(steps),
        views=tuple(cut_view_of(drawn, cut.deepest_deg, each, language) for each in sides),
        profile=profile_view_of(
            cut.deepest_deg, _alone(cut.rise, units, language),
            _with_units(_length(2.0 * cut.radius, units, language), language),
            say(f"order_view.clamped.{side}"), language,
        ),
        tables=tuple(tables),
        measured=("order.after.runout", "order.after.rise", "order.after.depth"),
        cautions=("order.caution.side", "order.caution.maker", "order.caution.again"),
    )  # fmt: skip


def _places(places: tuple[Place, ...], units: UnitSystem, language: Language) -> Rows:
    rows = []
    for place in places:
        size = _both(place.amount, units, language)
        rows.append((_at(place.at.at_deg, language), size.mm, size.inch))
    return tuple(rows)


# A bore -------------------------------------------------------------------------------------


def _bore_sheet(job: Job, move: BoreMove, language: Language) -> OrderSheet:
    say, units, holes = language.say, job.units, job.housing.dowel_holes
    along, across = (ClockPosition(a) for a in (move.along_deg, move.across_deg))
    steps = (
        say("order.clock"),
        *_holes(job, language),
        say("order.clamp.bore"),
        say("order.axes", along=along, across=across),
        say(
            "order.present",
            x=_about_size(move.present.x, units, language),
            y=_about_size(move.present.y, units, language),
        ),
        say("order.add"),
        *([say("order.check_center")] if move.center is not None else []),
        say("order.fill"),
    )
    mirror = Figure(-move.right.value, move.right.pm)
    rows = [
        (say("order.row.x", along=along), _both(move.along, units, language, signed=True)),
        (say("order.row.y", across=across), _both(move.across, units, language, signed=True)),
        (say("order.row.right_behind"), _both(move.right, units, language, signed=True)),
        (say("order.row.up_behind"), _both(move.up, units, language, signed=True)),
        (say("order.row.right_front"), _both(mirror, units, language, signed=True)),
        (say("order.row.up_front"), _both(move.up, units, language, signed=True)),
        *(
            (say(key), _both(figure, units, language, signed=True))
            for key, figure in zip(_CENTER, move.center or (), strict=False)
        ),
        (say("order.row.diameter"), _diameter(job, language)),
        (say("order.row.left_bore"), _plain(move.left, units, language, up=True)),
        (say("order.row.spare_bore"), _plain(move.spare, units, language, up=False)),
    ]
    drawn = MoveDrawn(
        polar(move.along_deg, move.along.value), polar(move.across_deg, move.across.value),
        _alone(move.along, units, language, signed=True),
        _alone(move.across, units, language, signed=True),
    )  # fmt: skip
    views = (
        tuple(
            bore_view_of(holes, job.housing.bore_diameter, drawn, side, language)
            for side in (BEHIND, FRONT)
        )
        if holes is not None
        else ()
    )
    table = _table(
        say("order.move"), tuple((name, size.mm, size.inch) for name, size in rows), language
    )
    return _sheet(
        job, "order.work.bore", language,
        steps=steps, views=views, profile="", tables=(table,),
        measured=(
            "order.after.x0", "order.after.y0", "order.after.x", "order.after.y",
            "order.after.diameter",
        ),
        cautions=(
            "order.caution.dowels", "order.caution.side", "order.caution.maker",
            "order.caution.again",
        ),
    )  # fmt: skip


def _diameter(job: Job, language: Language) -> Size:
    """The finished diameter, exactly as it was entered; never assumed."""
    diameter = job.housing.bore_diameter
    if diameter is None:
        drawing = language.say("order.as_drawing")
        return Size(drawing, drawing)
    mm = diameter * job.units.long_mm
    return _size(f"{mm:.3f}", f"{mm / MM_PER_INCH:.4f}", language)


# What every order has -----------------------------------------------------------------------


def _sheet(
    job: Job,
    work: str,
    language: Language,
    *,
    steps: tuple[str, ...],
    views: tuple[str, ...],
    profile: str,
    tables: tuple[Table, ...],
    measured: tuple[str, ...],
    cautions: tuple[str, ...],
) -> OrderSheet:
    say = language.say
    blanks = tuple((say(key), "", "") for key in measured)
    return OrderSheet(
        title=say("order.title"),
        shop=job.about["shop"].strip(),
        job=job.name,
        about=tuple(
            Entry(say(f"name.about.{key}"), job.about[key])
            for key in ABOUT
            if job.about[key].strip()
        ),
        work=say(work),
        steps=steps,
        views=views,
        profile=profile,
        tables=tables,
        measured=_table(say("order.measured"), blanks, language),
        cautions=tuple(say(key) for key in cautions),
        sign=(say("order.done_by"), say("order.date")),
    )


def _table(title: str, rows: Rows, language: Language) -> Table:
    return Table(title, (language.say("order.head.what"), *_units(language)), rows)


def _units(language: Language) -> tuple[str, str]:
    """What millimetre and inch are called."""
    return language.say("order.unit.mm"), language.say("order.unit.inch")


def _holes(job: Job, language: Language) -> Iterator[str]:
    """Where the clock is on the bench: by the two holes, or by a mark."""
    holes = job.housing.dowel_holes
    if holes is None:
        yield language.say("order.mark")
        return
    a, b = (_at(hole.at_deg, language) for hole in holes)
    yield language.say("order.holes", a=a, b=b)


def _at(angle_deg: float, language: Language) -> str:
    """A place on the clock, by hours and in degrees."""
    degrees = language.number(f"{round(normalise(angle_deg), 1):g}")
    return language.say("order.at", time=clock_time(angle_deg), degrees=degrees)


def _angle(angle_deg: float, pm: float, language: Language) -> str:
    """A clock position with its doubt."""
    step = step_for(pm, FINEST_DEG)
    rounded = normalise(float(to_step(angle_deg, step)))
    shown = language.number(up_to_step(pm, step))
    return language.say("order.at_pm", at=_at(rounded, language), pm=shown)


def _texts(figure: Figure, units: UnitSystem, language: Language) -> Iterator[tuple[str, str]]:
    """Value and half width as text in each system, rounded from the full value."""
    sizes = (units.mm, units.mm / MM_PER_INCH)
    for size, finest in zip(sizes, (FINEST_MM, FINEST_INCH), strict=True):
        step = step_for(figure.pm * size, finest)
        value = to_step(figure.value * size, step)
        yield language.number(value), language.number(up_to_step(figure.pm * size, step))


def _both(figure: Figure, units: UnitSystem, language: Language, *, signed: bool = False) -> Size:
    """A size with its doubt in both systems."""
    mm, inch = (
        language.say("paper.pm", value=_sign(value) if signed else value, pm=pm)
        for value, pm in _texts(figure, units, language)
    )
    return Size(mm, inch)


def _sign(number: str) -> str:
    """A number with a sign, whatever it is."""
    return number if number.startswith("\N{MINUS SIGN}") else f"+{number}"


def _alone(figure: Figure, units: UnitSystem, language: Language, *, signed: bool = False) -> Size:
    """A size without its doubt, with its units."""
    mm, inch = (_sign(v) if signed else v for v, _ in _texts(figure, units, language))
    return _with_units(Size(mm, inch), language)


def _plain(value: float, units: UnitSystem, language: Language, *, up: bool | None = None) -> Size:
    """A bound in both systems: rounded ``up``, down (``False``) or to the nearest."""
    texts = []
    for size, step in ((units.mm, BOUND_MM), (units.mm / MM_PER_INCH, BOUND_INCH)):
        exact = value * size
        if up:
            texts.append(up_to_step(exact, step_for(exact, step / 10.0)))
        elif up is None:
            texts.append(to_step(exact, step))
        else:
            texts.append(to_step(max(0.0, exact - step / 2.0), step))
    mm, inch = texts
    return _size(mm, inch, language)


def _length(value: float, units: UnitSystem, language: Language) -> Size:
    """A length of the part in both systems, from the long unit."""
    mm = value * units.long_mm
    return _size(f"{mm:.1f}", f"{mm / MM_PER_INCH:.3f}", language)


def _size(mm: str, inch: str, language: Language) -> Size:
    """Two numbers in words."""
    return Size(language.number(mm), language.number(inch))


def _with_units(size: Size, language: Language) -> Size:
    """The same, to stand alone."""
    mm, inch = _units(language)
    return Size(f"{size.mm} {mm}", f"{size.inch} {inch}")


def _about_size(value: float, units: UnitSystem, language: Language) -> str:
    """Where to look for something, from the small unit: no finer than a ruler."""
    mm = units.to_mm(value)
    size = _size(to_step(mm, 1.0), to_step(mm / MM_PER_INCH, 0.05), language)
    alone = _with_units(size, language)
    return f"{alone.mm} = {alone.inch}"
