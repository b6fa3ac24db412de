"""What to do, step by step, in the order of the work.

The rules, in the order in which they are asked; the first that speaks may end the list:

1. A reading or a fit that can't be right is cleared up before anything is done with the figures:
   so are sweeps that differ, and four readings of which one must be wrong.

2. A sweep counts in full once the dial's return to its start is noted.

3. The face comes before the bore, since squaring it may move the bore. An end play that nobody
   held back, a face never swept or one too close to call is measured, not mended.

4. Nothing is shimmed or cut before the tilt was seen again on a cleaned joint, and before it is
   known which side is out.

5. A part that turns with the crank and is out is put right itself: no housing cures it. So are
   lengths that don't fit: a spacer changes what is swept.

6. A bore that is within is left, tightened for good and swept once more: two sweeps in a row that
   agree end the job. Where the line to the pilot bearing is out all the same, that comes first.

7. A bore too close to call is measured by what gains most. Where no measuring can settle it, it is
   treated as outside.

8. A bore outside gets dowels: those of the drawer, else what would do instead. Where those that
   are in did not do what they should, and no other helps, the cause comes before another size.

Every step has a code, the numbers that go with it, and a sentence ``do.<code>``.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from sweepsheet.findings.finding import Finding
from sweepsheet.findings.reach import reach_of
from sweepsheet.findings.settle import settle_message
from sweepsheet.job.model import Dowel, Hole, Job
from sweepsheet.maths.units import UnitSystem
from sweepsheet.remedy.dowels import Option
from sweepsheet.remedy.seating import seats_of
from sweepsheet.remedy.settling import Settling
from sweepsheet.remedy.trim import Trim
from sweepsheet.remedy.unequal_pairs import Pair
from sweepsheet.solution import Solution
from sweepsheet.words.messages import (
    ClockPosition,
    Degrees,
    Direction,
    Distance,
    Message,
    Quantity,
    Side,
    StockSize,
)

# What is wrong with readings or parts themselves: each has a first step of its own.
FIX_FIRST = (
    "looks-like-inches", "foreign-reading", "closing-error", "moved-wrong-way", "moved-mirrored",
    "interference", "plate-unknown",
)  # fmt: skip
# Who has tried so many rounds with offset dowels has another trouble than their size or aim.
MOST_TRIES = 6


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do: its code, its sentence, and its numbers for programs.

    ``numbers`` are plain: small distances in the job's unit, angles clock degrees.
    """

    code: str
    message: Message
    numbers: Mapping[str, object] = field(default_factory=dict)


def step(code: str, numbers: Mapping[str, object] | None = None, /, **values: Quantity) -> Step:
    """A step with the quantities of its sentence, ``do.<code>``."""
    return Step(code, Message(f"do.{code}", values), numbers or {})


def findings_of_now(job: Job, findings: Sequence[Finding]) -> list[Finding]:
    """What was found in the latest round or of the whole job; earlier rounds are past."""
    latest = _latest_round(job)
    return [f for f in findings if f.field.startswith(latest) or not f.field.startswith("rounds.")]


def _latest_round(job: Job) -> str:
    """How the fields of the latest round begin."""
    return f"rounds.{len(job.rounds) - 1}."


def advice_for(solution: Solution, findings: tuple[Finding, ...]) -> tuple[Step, ...]:
    """The steps of a job, in the order in which they are done."""
    now = findings_of_now(solution.job, findings)
    face = solution.latest.face
    if face is not None and not face.trusted:
        # End play alone does that: the face is swept again all the same, the crank at its stop.
        now = [f for f in now if not f.field.startswith(f"{_latest_round(solution.job)}face")]
    fixes = tuple(_fix(each) for each in now if each.code in FIX_FIRST and each.level == "stop")
    if fixes:
        return fixes
    steps = [
        Step("note-return", Message("do.note-return", each.message.values), {"field": each.field})
        for each in now
        if each.code == "closing-missing"
    ]
    steps += _part_steps(solution)
    steps += _depth_steps(solution)
    steps += _face_steps(solution)
    if not solution.face_rules:
        steps += _bore_steps(solution, steps)
    return tuple(steps)


def _fix(each: Finding) -> Step:
    numbers = {"finding": each.code, "field": each.field}
    return Step("fix-stop", Message(f"do.fix.{each.code}", each.message.values), numbers)


def _part_steps(solution: Solution) -> Iterator[Step]:
    """Parts that turn with the crank: no housing cures them."""
    for part in solution.companions:
        if part.judged.verdict == "outside":
            yield step("mend-part", {"part": part.kind}, what=Message(f"what.{part.kind}"))


def _depth_steps(solution: Solution) -> Iterator[Step]:
    """What does not fit along the crank axis: known before the gearbox goes on."""
    depth = solution.depth
    if depth is None:
        return
    for code, gaps in (("mend-depth", depth.wrong), ("measure-depth", depth.doubtful)):
        if gaps:
            names = [gap.name for gap in gaps]
            yield step(code, {"gaps": names}, what=tuple(Message(f"depth.{n}") for n in names))


# The face -----------------------------------------------------------------------------------


def _face_steps(solution: Solution) -> Iterator[Step]:
    """What to do about the face: sweep it, sweep it again, clean, find the cause, square it."""
    face, limits = solution.latest.face, solution.job.limits
    settling = solution.face_settling
    if face is None:
        if limits.face_runout is not None:
            yield step("sweep-face")
    elif not face.trusted:
        yield step("resweep-face")
    elif settling is not None and settling.can_settle:
        yield _settle("settle-face", settling, solution)
    elif face.swept.warped and face.judged.verdict != "outside":
        yield step("face-not-flat", rest=Distance(face.warp, solution.job.units))
    elif settling is not None:
        yield step("face-at-limit")
    elif face.judged.verdict == "outside":
        yield from _square(solution)


def _square(solution: Solution) -> Iterator[Step]:
    """A face that is out. Metal is cut only for a tilt that came back on a cleaned joint."""
    cause, face = solution.job.housing.tilt_from, solution.latest.face
    if not solution.tilt_seen_again:
        yield step("clean-joint")
    elif face is not None and len(face.swept.fitted.residuals) < 2:
        yield step("sweep-face-twice", {"measure": "sweep"})
    elif face is not None and face.swept.disagreement is not None:
        yield step("steady-the-dial", {"part": "face"}, what=Message("what.face"))
    elif cause is None:
        yield step("find-tilt-cause")
    else:
        yield step("check-sense")
        yield step("square-front" if cause == "front" else "square-rear")
        yield step("start-anew")


# The bore -----------------------------------------------------------------------------------


def _bore_steps(solution: Solution, before: list[Step]) -> Iterator[Step]:
    """What to do about the bore, once the face allows it."""
    bore, choice = solution.latest.bore, solution.choice
    verdict = bore.judged.verdict
    if bore.swept.disagreement is not None:
        yield step("steady-the-dial", {"part": "bore"}, what=Message("what.bore"))
        return
    if solution.one_is_wrong:
        yield step("sweep-eight")
        return
    if verdict is None:
        yield step("no-limit")
    if verdict == "within" and solution.pilot_out and (choice is None or choice.leave):
        aims = solution.job.stock.aim_for == "pilot"
        yield step("pilot-stays-out" if aims else "aim-for-pilot")
        return
    if choice is not None and choice.leave and verdict == "within":
        yield from _leave(solution, before)
        return
    if solution.seat_first:
        yield step("mend-seat")
        return
    if verdict == "undecided" or solution.too_coarse:
        yield from _undecided(solution)
        return
    if bore.direction_pm_deg is not None:
        yield _move(solution)
    yield from _put_right(solution)


def _leave(solution: Solution, before: list[Step]) -> Iterator[Step]:
    """The bore is within: done where the sweep before said so too, on the same dowels."""
    rounds, measured = solution.job.rounds, solution.measured
    seats = seats_of(rounds)
    again = (
        len(seats) > 1
        and rounds[seats[-1]].dowels == rounds[seats[-2]].dowels
        and measured[seats[-2]].bore.judged.verdict == "within"
    )
    if again and not before:
        yield step("done")
        return
    yield step("leave")
    if not again:
        yield step("tighten-and-sweep")


def _tries(solution: Solution) -> int:
    """How often offset dowels were fitted or turned."""
    rounds = solution.job.rounds
    return sum(each.since == "dowels" and each.dowels[0].offset > 0 for each in rounds)


def _undecided(solution: Solution) -> Iterator[Step]:
    """Too close to call: measure what gains most, else take the better of what can be done."""
    settling = solution.bore_settling
    better = _improving(solution)
    if settling is not None and settling.can_settle:
        yield _settle("settle-bore", settling, solution)
        if better is not None:
            yield _or_fit(solution, better)
        return
    yield step("cannot-settle")
    if _tries(solution) >= MOST_TRIES:
        better = None
    if better is None:
        yield step("treat-as-out")
    else:
        yield from _fit(solution, better)


def _settle(code: str, settling: Settling, solution: Solution) -> Step:
    """Measure again, by what gains most."""
    best = settling.best
    numbers = {"measure": None if best is None else best.code}
    settle = settle_message(settling, solution.job.units)
    return Step(code, Message(f"do.{code}", {"settle": settle}), numbers)


def _improving(solution: Solution) -> Option | None:
    """The choice, where it is to leave surely less than there is now."""
    bore, choice = solution.latest.bore, solution.choice
    if choice is None or choice.leave:
        return None
    gain = bore.offset - choice.expected_offset
    return choice if gain > bore.offset_pm or choice.judged.verdict == "within" else None


def _put_right(solution: Solution) -> Iterator[Step]:
    """A bore that is out: dowels from the drawer, else what would do."""
    if solution.history.response is None:
        # What two unlike dowels did can't be told without their holes.
        yield step("back-to-stock")
        return
    choice = _improving(solution)
    if _tries(solution) >= MOST_TRIES:
        yield step("dowels-do-not-hold")
    elif choice is None and solution.moved_otherwise:
        yield step("check-fit")
        yield step("recheck")
    elif choice is None:
        yield from _instead(solution)
    else:
        yield from _fit(solution, choice)


def _instead(solution: Solution) -> Iterator[Step]:
    """What would do where nothing in the drawer does."""
    reach, units = reach_of(solution), solution.job.units
    if reach is None or reach.kind == "stock":
        yield step("nothing-fits")
    elif reach.kind == "tight":
        numbers = {"offset": reach.size, "clearance": reach.clearance}
        size, clearance = StockSize(reach.size, units), Distance(reach.clearance, units)
        yield step("open-holes", numbers, size=size, clearance=clearance)
    elif reach.kind == "unlike" and reach.pair is not None:
        yield from _fit_unlike(reach.pair, solution)
    elif reach.kind == "between" and not solution.job.stock.dowel_offsets:
        yield step("get-pair", {"offset": reach.size}, size=Distance(reach.size, units))
    elif reach.kind == "between":
        left = Distance(reach.left, units)
        yield step("get-size", {"offset": reach.size}, size=Distance(reach.size, units), left=left)
    else:
        yield step("beyond-dowels")


def _fit_unlike(pair: Pair, solution: Solution) -> Iterator[Step]:
    """Two dowels that differ, each for its own hole."""
    holes, units = solution.job.housing.dowel_holes or (), solution.job.units
    dowels = [{"offset": d.offset, "aim_deg": d.aim_deg} for d in pair.dowels]
    each = tuple(_unlike(h, d, units) for h, d in zip(holes, pair.dowels, strict=True))
    expected = Distance(pair.expected_offset, units)
    yield step("fit-unlike", {"dowels": dowels}, dowels=each, expected=expected)
    yield step("recheck")


def _unlike(hole: Hole, dowel: Dowel, units: UnitSystem) -> Message:
    """What goes into one hole."""
    if dowel.offset == 0:
        return Message("do.unlike-stock", {"hole": ClockPosition(hole.at_deg)})
    size, aim = StockSize(dowel.offset, units), ClockPosition(dowel.aim_deg)
    return Message("do.unlike", {"hole": ClockPosition(hole.at_deg), "size": size, "aim": aim})


def _move(solution: Solution) -> Step:
    bore, units = solution.latest.bore, solution.job.units
    numbers = {"offset": bore.offset, "direction_deg": bore.move_deg}
    offset, direction = Distance(bore.offset, units), Direction(bore.move_deg)
    return step("move", numbers, side=Side(bore.move_deg), direction=direction, offset=offset)


def _fit(solution: Solution, choice: Option) -> Iterator[Step]:
    """The dowels to fit, or how to turn those that are in, and the recheck."""
    fit = _dowels(solution, choice)
    if fit.code == "fit-dowels" and len(seats_of(solution.job.rounds)) == 1:
        yield step("reseat")
    yield fit
    yield step("recheck")


def _or_fit(solution: Solution, choice: Option) -> Step:
    """The dowels, where measuring comes first: they may be fitted without it."""
    fit = _dowels(solution, choice)
    return step("or-fit", fit.numbers, fit=fit.message)


def _dowels(solution: Solution, choice: Option) -> Step:
    """One choice of dowels as a step."""
    units = solution.job.units
    trim, (first, second) = solution.history.trim, solution.job.rounds[-1].dowels
    if trim is not None and first == second and first.offset == choice.offset:
        return _turn(trim, units)
    expected, tir = (
        Distance(choice.expected_offset, units),
        Distance(2 * choice.expected_offset, units),
    )
    if choice.offset == 0:
        return step("standard-dowels", expected=expected, tir=tir)
    numbers = {"offset": choice.offset, "aim_deg": choice.aim_deg}
    size, aim = StockSize(choice.offset, units), ClockPosition(choice.aim_deg)
    return step("fit-dowels", numbers, offset=size, aim=aim, expected=expected, tir=tir)


def _turn(trim: Trim, units: UnitSystem) -> Step:
    numbers = {"turn_deg": trim.turn_deg, "aim_deg": trim.aim_deg}
    return Step("trim", turn_message(trim, units), numbers)


def turn_message(trim: Trim, units: UnitSystem) -> Message:
    """How to turn both dowels, and what that should leave."""
    way = "clockwise" if trim.turn_deg >= 0 else "anticlockwise"
    values: dict[str, Quantity] = {
        "turn": Degrees(abs(trim.turn_deg)),
        "way": Message(f"way.{way}"),
        "aim": ClockPosition(trim.aim_deg),
        "degrees": Degrees(trim.aim_deg),
        "expected": Distance(trim.expected_offset, units),
        "tir": Distance(2.0 * trim.expected_offset, units),
    }
    return Message("trim.turn", values)
