"""The parts of the sheet beside the bore: face, pilot line, dowels seen at work, shims, what-ifs.

Each part is there only where what it needs was measured.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sweepsheet.findings.advice import turn_message
from sweepsheet.findings.depth import need_of
from sweepsheet.job.assembly import lacks
from sweepsheet.job.model import Dowel, Job
from sweepsheet.maths.clock import direction_of
from sweepsheet.maths.units import UnitSystem
from sweepsheet.maths.vector import Vec2
from sweepsheet.maths.verdict import Judged
from sweepsheet.remedy.shims import Shim
from sweepsheet.remedy.squaring import Squaring
from sweepsheet.solution import Solution
from sweepsheet.words.messages import (
    Angle,
    ClockPosition,
    Direction,
    Distance,
    Language,
    Length,
    Message,
    Probability,
    StockSize,
)


@dataclass(frozen=True, slots=True)
class Section:
    """A part of the sheet in words.

    ``verdict`` is the code and ``verdict_text`` the word, both empty where nothing is judged.
    ``head`` and ``rows`` make a table, both empty where there is none.
    """

    name: str
    title: str
    verdict: str = ""
    verdict_text: str = ""
    lines: tuple[str, ...] = ()
    head: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


def sections_of(solution: Solution, language: Language) -> tuple[Section, ...]:
    """Every part of the sheet that the job gives."""
    parts = (
        _plate, _face, _squaring, _pilot, _seat, _seating, _depth, _history, _pairs, _chip,
        _companions,
    )  # fmt: skip
    return tuple(section for part in parts for section in part(solution, language))


def _title(language: Language, name: str) -> str:
    return language.say(f"section.{name}")


def _judged(
    language: Language,
    name: str,
    title: str,
    judged: Judged,
    lines: list[str],
    chance: str | None = None,
) -> Section:
    """A section under its verdict; ``chance`` is the sentence that tells its probability."""
    if chance is not None and judged.probability is not None:
        lines = [*lines, language.say(chance, chance=Probability(judged.probability))]
    text = language.say(f"answer.verdict.{judged.verdict}") if judged.verdict else ""
    return Section(name, title, judged.verdict or "", text, tuple(lines))


def _plate(solution: Solution, language: Language) -> Iterator[Section]:
    """The plate that was swept: its own error, and what became of it."""
    plate, units, say = solution.plate, solution.job.units, language.say
    if plate is None or not plate.is_known:
        return
    error, lines = plate.error, []
    if error is not None:
        offset, pm = Distance(error.offset, units), Distance(error.offset_pm, units)
        known = error.direction_pm_deg is not None
        lines = [
            say("plate.error", offset=offset, pm=pm, direction=Direction(error.direction_deg))
            if known
            else say("plate.error_nowhere", offset=offset, pm=pm),
            say("plate.taken_out"),
        ]
    else:
        most = Distance(plate.within or 0.0, units)
        lines = [say("plate.within", most=most), say("plate.turn")]
    yield Section("plate", _title(language, "plate"), lines=tuple(lines))


def _face(solution: Solution, language: Language) -> Iterator[Section]:
    face, units, say = solution.latest.face, solution.job.units, language.say
    if face is None:
        return
    lines = [
        say(
            "face.runout",
            runout=Distance(face.runout, units), pm=Distance(face.runout_pm, units),
        ),
        say("face.slope", angle=Angle(face.slope.length, units)),
    ]  # fmt: skip
    if face.direction_pm_deg is not None:
        lines.insert(1, say("face.rearmost", direction=Direction(face.rearmost_deg)))
    if face.limit is not None:
        lines.append(say("face.limit", limit=Distance(face.limit, units)))
    lines.append(
        say(
            "face.total",
            total=Distance(face.swept.total_reading, units), rest=Distance(face.warp, units),
        )
    )  # fmt: skip
    if not face.trusted:
        lines.append(say("face.not_judged"))
    title = _title(language, "face")
    yield _judged(language, "face", title, face.judged, lines, "answer.chance_face")


def _squaring(solution: Solution, language: Language) -> Iterator[Section]:
    """What to put under the bolts or machine off; only where the face is surely out."""
    squaring, say = solution.squares, language.say
    if squaring is None:
        return
    lines = [] if squaring.cause else [say("squaring.find_out")]
    if squaring.cause != "rear":
        lines += _front(squaring, solution, language)
    if squaring.cause != "front":
        lines += _rear(squaring, solution, language)
    rows: tuple[tuple[str, ...], ...] = ()
    if squaring.shims is not None:
        rows = tuple(shim_row(shim, solution.job, language) for shim in squaring.shims.shims)
        lines.append(say("squaring.hang"))
    head = tuple(say(f"squaring.head.{k}") for k in ("bolt", "shim", "ideal")) if rows else ()
    title = _title(language, "squaring")
    yield Section("squaring", title, lines=tuple(lines), head=head, rows=rows)


def _front(squaring: Squaring, solution: Solution, language: Language) -> Iterator[str]:
    """A housing that stands tipped: off its front flange, or under it."""
    say, units, taper = language.say, solution.job.units, squaring.taper
    slope, at = Angle(taper.slope, units), Direction(taper.deepest_deg)
    if squaring.cause is None:
        yield say("squaring.if_tipped")
    yield say("squaring.taper", slope=slope, at=at)
    if taper.across is not None:
        yield say("squaring.across", depth=Distance(taper.across, units))
    if squaring.if_tipped is not None:
        yield _after(squaring.if_tipped, units, language)
    shims, swept = squaring.shims, solution.job.rounds[-1].face
    if shims is not None and swept is not None and solution.job.stock.shim_thicknesses:
        left = 2.0 * shims.slope_left.length * swept.radius * units.small_per_long
        yield say("squaring.left", runout=Distance(left, units), rock=Distance(shims.rock, units))


def _rear(squaring: Squaring, solution: Solution, language: Language) -> Iterator[str]:
    """A rear face that is cut crooked: machined itself, and the bore stays."""
    say, units, taper = language.say, solution.job.units, squaring.taper
    slope, at = Angle(taper.slope, units), Direction(taper.deepest_deg)
    if squaring.cause is None:
        yield say("squaring.if_crooked")
    yield say("squaring.recut", slope=slope, at=at)
    yield _after(squaring.if_crooked, units, language)


def _after(bore: Vec2, units: UnitSystem, language: Language) -> str:
    offset, direction = Distance(bore.length, units), Direction(direction_of(bore))
    return language.say("squaring.bore", offset=offset, direction=direction)


def shim_row(shim: Shim, job: Job, language: Language) -> tuple[str, ...]:
    """A bolt, the stack for it, and what it should ideally be."""
    pieces = shim.pieces or ()
    stack = " + ".join(language.word(StockSize(piece, job.units)) for piece in pieces)
    thickness = language.word(Distance(shim.thickness, job.units))
    shown = stack if len(pieces) == 1 else f"{stack} = {thickness}" if pieces else thickness
    if shim.thickness == 0:
        shown = language.say("squaring.none")
    if shim.lacks > job.units.hair:
        shown = language.say("squaring.short", stack=shown)
    return (
        language.word(ClockPosition(shim.at_deg)),
        shown,
        language.word(Distance(shim.ideal, job.units)),
    )


def _pilot(solution: Solution, language: Language) -> Iterator[Section]:
    pilot, units, say = solution.latest.pilot, solution.job.units, language.say
    if pilot is None:
        return
    offset, pm = Distance(pilot.offset, units), Distance(pilot.offset_pm, units)
    known = pilot.direction_pm_deg is not None
    lines = [
        say("pilot.offset", offset=offset, pm=pm, direction=Direction(pilot.direction_deg))
        if known
        else say("pilot.offset_nowhere", offset=offset, pm=pm),
        say("pilot.angle", angle=Angle(pilot.angle, units), pm=Angle(pilot.angle_pm, units)),
    ]
    limit = solution.job.limits.pilot_offset
    if limit is not None:
        both = {"offset": Distance(limit, units), "tir": Distance(2 * limit, units)}
        lines.append(say("answer.limit", **both))
    title = _title(language, "pilot")
    yield _judged(language, "pilot", title, pilot.judged, lines, "answer.chance_pilot")


def _seat(solution: Solution, language: Language) -> Iterator[Section]:
    seat, units, say = solution.seat, solution.job.units, language.say
    if seat is None or seat.clearance < 0:
        return
    lines = [
        say(
            "seat.clearance",
            clearance=Distance(seat.clearance, units), half=Distance(seat.clearance / 2.0, units),
        )
    ]  # fmt: skip
    yield _judged(language, "seat", _title(language, "seat"), seat.judged, lines, "seat.chance")


def _seating(solution: Solution, language: Language) -> Iterator[Section]:
    seating, units, say = solution.seating, solution.job.units, language.say
    if seating is None:
        return
    radius, dial = Distance(seating.radius, units), Distance(seating.dial_radius, units)
    lines = [
        say("seating.back", times=seating.times, radius=radius),
        say("seating.dial", dial=dial),
        *([say("seating.once")] if seating.times == 1 else []),
    ]
    yield Section("seating", _title(language, "seating"), lines=tuple(lines))


def _depth(solution: Solution, language: Language) -> Iterator[Section]:
    """Each gap along the crank axis, what is needed of it, and whether it is so."""
    depth, units, say = solution.depth, solution.job.units, language.say
    if depth is None:
        return
    head = tuple(say(f"depth.head.{key}") for key in ("what", "size", "need", "verdict"))
    rows = tuple(
        (
            say(f"depth.{gap.name}"),
            say("depth.size", size=Length(gap.size, units), pm=Length(gap.pm, units)),
            language.text(need_of(gap, units)),
            say(f"depth.fits.{gap.judged.verdict or 'unknown'}"),
        )
        for gap in depth.gaps
    )
    given = solution.job.depth
    engine, gearbox = Length(given.engine_pm, units), Length(given.gearbox_pm, units)
    lines = [say("depth.measured", engine=engine, gearbox=gearbox)]
    yield Section("depth", _title(language, "depth"), lines=tuple(lines), head=head, rows=rows)


def _history(solution: Solution, language: Language) -> Iterator[Section]:
    """What the dowels did, and how to turn them."""
    history, units, say = solution.history, solution.job.units, language.say
    lines = []
    observed, trim = history.observed, history.trim
    if observed is not None:
        lines.append(
            say(
                "deed.moved",
                size=Distance(observed.size, units), pm=Distance(observed.size_pm, units),
                direction=Direction(observed.direction_deg),
            )
        )  # fmt: skip
        if observed.agrees:
            lines.append(say("deed.agrees"))
    if trim is not None and solution.latest.bore.judged.verdict == "within":
        lines.append(say("trim.stop"))
    elif trim is not None and not solution.something_first:
        lines.append(language.text(turn_message(trim, units)))
        if history.trim_probability is not None:
            lines.append(say("trim.chance", chance=Probability(history.trim_probability)))
    if lines:
        yield Section("trim", _title(language, "trim"), lines=tuple(lines))


def _pairs(solution: Solution, language: Language) -> Iterator[Section]:
    """Unlike dowels, the expert's choice; only where something is to be done, and nothing first."""
    holes, units, say = solution.job.housing.dowel_holes, solution.job.units, language.say
    if holes is None or not solution.pairs or solution.latest.bore.judged.verdict == "within":
        return
    if solution.something_first:
        return
    rows = []
    for pair in solution.pairs:
        chance = "" if pair.judged.probability is None else language.chance(pair.judged.probability)
        first, second = (_dowel(dowel, solution.job, language) for dowel in pair.dowels)
        left = language.word(Distance(pair.expected_offset, units))
        misfit = language.word(Distance(abs(pair.moved.misfit), units))
        rows.append((first, second, left, misfit, chance))
    head = (
        *(say("pairs.head.dowel", at=ClockPosition(hole.at_deg)) for hole in holes),
        *(say(f"pairs.head.{key}") for key in ("left", "misfit", "chance")),
    )
    turn = max(abs(pair.moved.turn_deg) for pair in solution.pairs)
    lines = (say("pairs.caution"), say("pairs.turn", turn=round(turn, 3)))
    yield Section("pairs", _title(language, "pairs"), lines=lines, head=head, rows=tuple(rows))


def _dowel(dowel: Dowel, job: Job, language: Language) -> str:
    if dowel.offset == 0:
        return language.say("pairs.standard")
    size, aim = StockSize(dowel.offset, job.units), ClockPosition(dowel.aim_deg)
    return language.say("pairs.dowel", size=size, aim=aim)


def _chip(solution: Solution, language: Language) -> Iterator[Section]:
    chip, job, say = solution.chip, solution.job, language.say
    if chip is None or job.chip is None:
        return
    lines = [
        say(
            "chip.what",
            height=Distance(job.chip.height, job.units), at=ClockPosition(job.chip.at_deg),
            joint=Message(f"joint.{job.chip.joint}"), angle=Angle(chip.slope.length, job.units),
        )
    ]  # fmt: skip
    moves = {"bore": chip.bore, "nose": chip.nose, "tail": chip.tail}
    if lacks(job.housing.assembly, "housing.pilot_distance"):
        del moves["nose"]
    for key, move in moves.items():
        lines.append(_moved(key, move, job, language))
    lines.append(say("chip.most"))
    yield Section("chip", _title(language, "chip"), lines=tuple(lines))


def _moved(key: str, move: Vec2 | None, job: Job, language: Language) -> str:
    part = Message(f"part.{key}")
    if move is None:
        return language.say("chip.unknown", part=part)
    direction = Direction(direction_of(move))
    if move.length < 10.0**-job.units.decimals / 2.0:
        return language.say("chip.still", part=part)
    return language.say(
        "chip.moves", part=part, move=Distance(move.length, job.units), direction=direction
    )


def _companions(solution: Solution, language: Language) -> Iterator[Section]:
    units, say = solution.job.units, language.say
    for i, runout in enumerate(solution.companions):
        tir, offset = Distance(runout.tir, units), Distance(runout.offset, units)
        pm = Distance(2.0 * runout.offset_pm, units)
        toward = Direction(runout.direction_deg)
        lines = [say("companion.tir", tir=tir, pm=pm, offset=offset, direction=toward)]
        if runout.limit is not None:
            lines.append(say("companion.limit", tir=Distance(runout.limit, units)))
        lines.append(say("companion.turns"))
        title = say("section.companion", what=Message(f"what.{runout.kind}"))
        yield _judged(language, f"companion-{i}", title, runout.judged, lines)
