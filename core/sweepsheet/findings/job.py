"""What there is to say about a whole job, worst first."""

from __future__ import annotations

from collections.abc import Iterator

from sweepsheet.alignment.pilot import BEARING_ANGLES, largest_sure_angle
from sweepsheet.alignment.rounds import RoundResult
from sweepsheet.findings.depth import depth_findings
from sweepsheet.findings.finding import LEVELS, Finding, finding
from sweepsheet.findings.reach import reach_of
from sweepsheet.findings.readings import reading_findings, roundness_findings, warp_findings
from sweepsheet.findings.settle import settle_message
from sweepsheet.job.assembly import lacks
from sweepsheet.maths.clock import direction_of
from sweepsheet.remedy.chip import THICKEST_DIRT
from sweepsheet.remedy.observed_move import ObservedMove
from sweepsheet.remedy.squaring import Squaring
from sweepsheet.solution import Solution
from sweepsheet.words.messages import (
    Angle,
    BareDistance,
    ClockPosition,
    Degrees,
    Direction,
    Distance,
    Message,
    Probability,
    StockSize,
    round_called,
)


def findings_for(solution: Solution) -> tuple[Finding, ...]:
    """Every finding, ``stop`` first, then in the order of the job."""
    found: list[Finding] = []
    job = solution.job
    for i, (each, measured) in enumerate(zip(job.rounds, solution.measured, strict=True)):
        if measured is not solution.latest:
            found.extend(_earlier_findings(measured, i))
            continue
        field, what = f"rounds.{i}.bore", Message("what.bore")
        found.extend(reading_findings(job, each.bore.sweeps, measured.bore.swept, what, field))
        found.extend(roundness_findings(job, measured.bore.swept, field))
        if each.face is not None and measured.face is not None:
            field, what, swept = f"rounds.{i}.face", Message("what.face"), measured.face.swept
            found.extend(reading_findings(job, each.face.sweeps, swept, what, field))
            if measured.face.trusted:
                found.extend(warp_findings(job, swept, measured.face.limit, field))
    last = f"rounds.{len(job.rounds) - 1}"
    found.extend(_face_findings(solution, f"{last}.face"))
    found.extend(_bore_findings(solution, f"{last}.bore"))
    found.extend(_pilot_findings(solution))
    found.extend(_seat_findings(solution))
    found.extend(depth_findings(solution))
    found.extend(_seating_findings(solution, f"{last}.since"))
    found.extend(_history_findings(solution, f"{last}.dowels"))
    found.extend(_dowel_findings(solution, f"{last}.dowels"))
    found.extend(_companion_findings(solution))
    return tuple(sorted(found, key=lambda f: LEVELS.index(f.level)))


def _earlier_findings(measured: RoundResult, i: int) -> Iterator[Finding]:
    """A round that can't be swept again any more, and does not count."""
    swept = {"bore": measured.bore.swept}
    if measured.face is not None:
        swept["face"] = measured.face.swept
    for part, each in swept.items():
        if each.unreliable:
            what = Message(f"what.{part}")
            called = round_called(i)
            field = f"rounds.{i}.{part}"
            yield finding("earlier-unreliable", "caution", field, round=called, what=what)


def _face_findings(solution: Solution, field: str) -> Iterator[Finding]:
    """The face comes first: whether it can be trusted, what is wrong with it, what mends it."""
    job, face = solution.job, solution.latest.face
    if face is None:
        yield finding("face-not-swept", "note", field)
        return
    if not face.trusted:
        yield finding("face-not-trusted", "caution", f"{field}.end_float")
        return
    change = solution.face_changed
    if change is not None:
        since, most = round_called(change.since - 1), Distance(change.runout, job.units)
        yield finding("face-changed", "caution", field, round=since, change=most)
    if face.limit is None:
        yield finding("no-face-limit", "caution", "limits.face_runout")
        return
    runout = BareDistance(face.runout, job.units)
    pm, limit = BareDistance(face.runout_pm, job.units), Distance(face.limit, job.units)
    settling = solution.face_settling
    if settling is not None and not face.swept.unreliable:
        settle = settle_message(settling, job.units)
        yield finding(
            "face-undecided", "caution", field, runout=runout, pm=pm, limit=limit, settle=settle
        )
    if solution.face_first:
        yield finding("face-first", "stop", field, runout=runout, pm=pm, limit=limit)
    if solution.squares is not None:
        yield from _squaring_findings(solution, solution.squares, field)


def _squaring_findings(solution: Solution, squaring: Squaring, field: str) -> Iterator[Finding]:
    """What squaring takes, and what it does to the bore."""
    job, bore = solution.job, solution.latest.bore
    units = job.units
    if squaring.if_tipped is None and squaring.cause != "rear":
        yield finding("depth-wanted", "note", "housing.depth")
    elif squaring.if_tipped is not None and squaring.cause != "rear":
        known = squaring.cause == "front"
        yield finding(
            "face-swings-bore" if known else "face-may-swing-bore", "caution", field,
            move=Distance((squaring.if_tipped - bore.center).length, units),
            before=BareDistance(bore.offset, units),
            after=Distance(squaring.if_tipped.length, units),
        )  # fmt: skip
    if squaring.shims is None and squaring.cause != "rear":
        yield finding("bolts-wanted", "note", "housing.bolts")
    if squaring.shims is not None:
        worst = max(squaring.shims.shims, key=lambda shim: shim.lacks)
        if worst.lacks > units.hair:
            yield finding(
                "shims-short", "caution", "stock.shim_thicknesses", at=ClockPosition(worst.at_deg),
                wanted=Distance(worst.ideal, units), most=Distance(worst.thickness, units),
            )  # fmt: skip
    if squaring.chip is not None and squaring.cause != "rear":
        thick = squaring.chip > THICKEST_DIRT * units.small_per_inch
        yield finding(
            "too-thick-for-dirt" if thick else "chip-explains", "note", field,
            height=Distance(squaring.chip, units), at=Direction(squaring.taper.deepest_deg),
        )  # fmt: skip


def _bore_findings(solution: Solution, field: str) -> Iterator[Finding]:
    """How sure the latest result is, and what would make it surer."""
    job, bore = solution.job, solution.latest.bore
    limits, units = job.limits, job.units
    if limits.bore_offset is None:
        yield finding("no-limit", "caution", "limits.bore_offset")
    else:
        limit = Distance(limits.bore_offset, units)
        settling = None if bore.swept.unreliable else solution.bore_settling
        if bore.judged.verdict == "undecided" and settling is not None:
            yield finding(
                "undecided", "caution", field,
                offset=BareDistance(bore.offset, units), pm=BareDistance(bore.offset_pm, units),
                limit=limit, settle=settle_message(settling, units),
            )  # fmt: skip
        if solution.too_coarse and not bore.swept.unreliable:
            yield finding("too-coarse", "caution", "limits.bore_offset", limit=limit)
        if job.usual_limit:
            yield finding("limit-source", "note", "limits.source", limit=limit)
    if bore.direction_pm_deg is None and not bore.swept.unreliable:
        yield finding("direction-unknown", "note", field)
    if solution.plate_unknown:
        yield finding("plate-unknown", "stop", "housing.plate_concentricity")
    dial = job.indicator
    low, high = dial.sag_range
    if job.crank.axis == "horizontal" and dial.sag is not None and low < high:
        tested, reach = (
            Message(f"paper.length.{units.name}", {"value": value})
            for value in (dial.sag_reach or 0.0, dial.reach or 0.0)
        )
        yield finding(
            "sag-other-reach", "note", "indicator.reach", tested=tested, reach=reach,
            low=BareDistance(low, units), high=Distance(high, units),
        )  # fmt: skip
    if job.crank.axis == "horizontal" and dial.sag is None:
        yield finding(
            "droop-unmeasured", "note", "indicator.sag",
            most=Distance(job.indicator.sag_allowance, units),
        )  # fmt: skip


def _pilot_findings(solution: Solution) -> Iterator[Finding]:
    """The pilot line: what is missing for it, and whether its bearing stands the angle."""
    job, pilot = solution.job, solution.latest.pilot
    if pilot is None:
        has_one = not lacks(job.housing.assembly, "housing.pilot_distance")
        if has_one and job.housing.pilot_distance is None:
            yield finding("pilot-distance-wanted", "note", "housing.pilot_distance")
        if job.stock.aim_for == "pilot":
            yield finding("aim-for-bore", "caution", "stock.aim_for")
        return
    if pilot.judged.verdict in ("outside", "undecided") and job.limits.pilot_offset is not None:
        yield finding(
            f"pilot-{pilot.judged.verdict}", "caution", "limits.pilot_offset",
            offset=BareDistance(pilot.offset, job.units),
            pm=BareDistance(pilot.offset_pm, job.units),
            limit=Distance(job.limits.pilot_offset, job.units),
        )  # fmt: skip
    bearing = job.housing.pilot_bearing
    if bearing is None:
        return
    careful, generous = BEARING_ANGLES[bearing]
    sure = largest_sure_angle(pilot.angle, pilot.angle_pm)
    if sure > careful:
        beyond = pilot.angle > generous
        yield finding(
            "angle-beyond" if beyond else "angle-near", "caution", "housing.pilot_bearing",
            angle=Angle(pilot.angle, job.units), sure=Angle(sure, job.units),
            careful=Angle(careful, job.units),
            generous=Angle(generous, job.units),
            bearing=Message(f"field.housing.pilot_bearing.{bearing}"),
        )  # fmt: skip


def _seat_findings(solution: Solution) -> Iterator[Finding]:
    """The fit of the gearbox in the bore."""
    seat, units = solution.seat, solution.job.units
    if seat is None:
        return
    field = "housing.register_diameter"
    if seat.clearance < 0:
        yield finding("interference", "stop", field, tight=Distance(-seat.clearance, units))
    elif (
        seat.judged.verdict in ("outside", "undecided")
        and solution.latest.bore.judged.verdict == "within"
    ):
        yield finding(
            "seat-loose", "caution", field, clearance=Distance(seat.clearance, units),
            half=Distance(seat.clearance / 2.0, units),
            chance=Probability(seat.judged.probability or 0.0),
        )  # fmt: skip


def _seating_findings(solution: Solution, field: str) -> Iterator[Finding]:
    """A housing that does not come back to its place."""
    seating, units = solution.seating, solution.job.units
    if seating is not None and seating.beyond_dial:
        yield finding(
            "seat-scatters", "caution", field, radius=Distance(seating.radius, units),
            dial=Distance(seating.dial_radius, units),
        )  # fmt: skip


def _history_findings(solution: Solution, field: str) -> Iterator[Finding]:
    """What the dowels did, whether to trim them, and when to stop."""
    job, history = solution.job, solution.history
    observed, trim = history.observed, history.trim
    fitted = job.rounds[-1].dowels
    if observed is not None:
        yield from _deed_findings(solution, observed, field)
    if trim is None or solution.latest.bore.judged.verdict == "within":
        return
    bore, choice = solution.latest.bore, solution.chosen
    if choice is not None and not choice.leave and choice.offset != fitted[0].offset:
        stock = choice.offset == 0
        yield finding(
            "trim-other-size", "caution", field,
            size=Message("size.stock") if stock else StockSize(choice.offset, job.units),
            after=BareDistance(choice.expected_offset, job.units),
            trimmed=Distance(trim.expected_offset, job.units), turn=Degrees(abs(trim.turn_deg)),
        )  # fmt: skip
        return
    gain = bore.offset - trim.expected_offset
    if gain < bore.offset_pm:
        yield finding(
            "trim-noise", "note", field, gain=Distance(max(0.0, gain), job.units),
            pm=Distance(bore.offset_pm, job.units),
        )  # fmt: skip


def _deed_findings(solution: Solution, observed: ObservedMove, field: str) -> Iterator[Finding]:
    """What the dowels did that they were not told. Once the bore is within nobody need mind."""
    units = solution.job.units
    size, direction = Distance(observed.size, units), Direction(observed.direction_deg)
    aim = Direction(direction_of(observed.told))
    if observed.opposite:
        # Aimed near 3 or 9, the other way is also what left taken for right looks like.
        causes = ("aim", "sense", *(("sides",) if observed.mirrored else ()), "before")
        yield finding(
            "moved-wrong-way", "stop", field, direction=direction, size=size,
            causes=tuple(Message(f"cause.{each}") for each in causes),
        )  # fmt: skip
    elif observed.mirrored:
        at = ClockPosition(direction_of(observed.told))
        yield finding("moved-mirrored", "stop", field, direction=direction, size=size, aim=at)
    elif not observed.agrees and solution.latest.bore.judged.verdict != "within":
        yield finding(
            "moved-otherwise", "caution", field,
            size=BareDistance(observed.size, units), pm=BareDistance(observed.size_pm, units),
            direction=direction, told=Distance(observed.told.length, units), aim=aim,
        )  # fmt: skip


def _dowel_findings(solution: Solution, field: str) -> Iterator[Finding]:
    """What the dowels in the drawer can't do; nothing while something else comes first."""
    job, bore = solution.job, solution.latest.bore
    if solution.history.response is None:
        yield finding("dowels-differ", "caution", field)
        return
    if not solution.something_first:
        yield from _reach_findings(solution)
    judged = bore.judged.verdict in ("outside", "undecided") and not solution.wrong_way
    if judged and job.stock.dowel_offsets and job.housing.dowel_holes is None:
        yield finding("holes-wanted", "note", "housing.dowel_holes")


def _reach_findings(solution: Solution) -> Iterator[Finding]:
    """Whether the drawer reaches, and whether the bolt holes allow it; see ``reach``."""
    if solution.too_coarse or (solution.choice is None and solution.moved_otherwise):
        return
    reach, units, drawer = reach_of(solution), solution.job.units, "stock.dowel_offsets"
    sizes = solution.job.stock.dowel_offsets
    if reach is None or (reach.kind == "stock" and reach.sure):
        return
    size, left = Distance(reach.size, units), Distance(reach.left, units)
    if reach.kind == "stock":
        yield finding("stock-doubtful", "caution", drawer, expected=left)
    elif not sizes:
        yield finding("no-stock", "caution", drawer, wanted=size)
    elif reach.kind == "beyond":
        largest = StockSize(sizes[-1], units)
        yield finding("beyond-stock", "stop", drawer, largest=largest, expected=left)
    elif reach.kind == "unlike":
        yield finding("unlike-reach", "caution", drawer, size=size, expected=left)
    elif reach.kind == "between":
        yield finding("between-sizes", "caution", drawer, size=size, expected=left)
    choice = solution.choice
    if reach.kind == "tight" and choice is not None and not choice.leave:
        # Another pair goes in, and may do.
        left = Distance(choice.target_offset(solution.job.stock.aim_for), units)
        yield finding("stock-doubtful", "caution", drawer, expected=left)
    if reach.kind in ("tight", "between") and reach.fits is False:
        yield finding(
            "bolt-holes", "caution", "housing.bolt_clearance",
            size=StockSize(reach.size, units) if reach.kind == "tight" else size,
            wanted=Distance(reach.clearance, units),
            clearance=Distance(solution.job.housing.bolt_clearance or 0.0, units),
        )  # fmt: skip


def _companion_findings(solution: Solution) -> Iterator[Finding]:
    """Parts that turn with the crank: dowels can't cure them."""
    job = solution.job
    for i, (part, runout) in enumerate(zip(job.companions, solution.companions, strict=True)):
        field, what = f"companions.{i}", Message(f"what.{part.kind}")
        yield from reading_findings(job, part.sweeps, runout.swept, what, field)
        if part.is_face:
            yield from warp_findings(job, runout.swept, part.limit, field)
            yield finding("companion-end-play", "caution", field, what=what)
        if runout.judged.verdict in ("outside", "undecided") and part.limit is not None:
            yield finding(
                f"companion-{runout.judged.verdict}", "caution", field, what=what,
                tir=BareDistance(runout.tir, job.units),
                pm=BareDistance(2.0 * runout.offset_pm, job.units),
                limit=Distance(part.limit, job.units),
            )  # fmt: skip
