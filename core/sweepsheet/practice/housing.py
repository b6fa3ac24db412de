"""A housing to practise on: an error hidden in it, and the dial that shows it.

Everything is built from solids in space, and nothing from the formulas by which the error is found
again. The bore is a cylinder and the face a plane; both lean together, and both move with the
housing. What is done between two rounds (``acts``) is done to these bodies. The dial stands on a
base that the crank carries round; what it shows is the length of its plunger, from that base to the
wall or to the face. A bracket that droops lets the base hang down.

Frame as everywhere: seen from behind, x right, y up, z rearward, clock angles. The crank axis is
the z axis, the rear face lies about z = 0. Every length here is in millimetres.

A seed and a level make the housing, always the same one: of the random module only ``random()``
itself is used, which gives the same numbers for the same seed in every version of Python.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from sweepsheet.job.model import Contact, Dowel, Plunger, PlusWhen
from sweepsheet.maths.clock import polar, unit_vector
from sweepsheet.maths.units import MM_PER_INCH
from sweepsheet.maths.vector import ZERO, Vec2
from sweepsheet.practice.acts import Act, PlateTurn, Square, tipped

HIGHEST_SEED = 999_999
LEVELS = (1, 2, 3, 4, 5, 6, 7)
# The levels at which the housing seats badly, a plate is swept, the face is to be squared, and the
# lengths along the crank axis are the matter.
LOOSE, PLATE, TIPPED, LENGTHS = 4, 5, 6, 7
# A turn of the crank in degrees; the last of them is back at the start.
TURN = 360

# An invented housing: a bore of 120 mm, swept on its face at 3 in, 7 in before the pilot bearing;
# 6.5 in deep.
BORE_RADIUS = 60.0
FACE_RADIUS = 3.0 * MM_PER_INCH
PILOT_DISTANCE = 7.0 * MM_PER_INCH
DEPTH = 6.5 * MM_PER_INCH
# How far from the crank axis the dial's base stands inside the bore and outside a spigot, and how
# far behind or before the face.
_INSIDE, _OUTSIDE, _CLEAR = 30.0, 90.0, 25.0

_THOU = MM_PER_INCH / 1000.0
# Scatter of one reading (standard deviation), largest error of the dial, most droop top to bottom,
# clearance of the dowels: what a job allows for where nothing else is said. Common practice, no
# source. The dial and the droop here do not go to the very end of it.
_SCATTER, _DIAL_ERROR, _MOST_DROOP, _PLAY = 0.25 * _THOU, 0.4 * _THOU, 0.9 * _THOU, 1.0 * _THOU
_LARGEST_OFFSET = {level: (12.0 if level in (1, TIPPED) else 20.0) * _THOU for level in LEVELS}
_LARGEST_OFFSET[LENGTHS] = 2.0 * _THOU
_LEAST_OFFSET = {level: (6.0 if level == 1 else 1.0) * _THOU for level in LEVELS}
# The steepest face: 4 thou of runout at the radius that is swept, inside the usual limit.
_STEEPEST = 2.0 * _THOU / FACE_RADIUS
# One that must be squared: 8 to 14 thou of it. A loose seat scatters by so much each way, one
# standard deviation; a plate's bore is off its pins by so much.
_TIPPED = (4.0 * _THOU / FACE_RADIUS, 7.0 * _THOU / FACE_RADIUS)
_LOOSE_SEAT, _PLATE_ERROR = (1.5 * _THOU, 3.0 * _THOU), (3.0 * _THOU, 8.0 * _THOU)
# How far dowels stray from what is written on them, one standard deviation.
_GAIN_SPREAD, _LAG_SPREAD_DEG, _AIM_SETTING_DEG = 0.05, 3.0, 4.0
# The scatter of the dial is new at every knot of the turn, and runs straight between two.
_KNOT = 15


@dataclass(frozen=True, slots=True)
class TrueHousing:
    """What is wrong with a housing on standard dowels, and how its dial and its dowels behave.

    ``center`` is where the axis of the bore meets the plane of the face, ``slope`` the slope of
    the face, ``droop`` by how much the bracket lets the dial hang down. ``gain`` and ``lag_deg``
    tell what a pair of dowels really does: so many times its offset, turned clockwise from its aim.
    ``seat`` is how far it scatters each way, every time it comes to rest, where it does not seat
    well, one standard deviation; ``plate`` how far the bore of the plate that is swept is off its
    pins, as it was mounted first.
    """

    seed: int
    level: int
    center: Vec2
    slope: Vec2
    droop: float
    gain: float
    lag_deg: float
    play: float
    scatter: float
    dial_error: float
    seat: float = 0.0
    plate: Vec2 = ZERO


@dataclass(frozen=True, slots=True)
class State:
    """What the acts have made of it: centre of its bore, slope of its face, and the bore swept."""

    center: Vec2
    slope: Vec2
    swept: Vec2


@dataclass(frozen=True, slots=True)
class SetUp:
    """How the mechanic has set up the dial, and which way the crank is turned."""

    contact: Contact = "inside"
    plus_when: PlusWhen = "plunger_in"
    plunger: Plunger = "forward"
    clockwise: bool = True

    def crank_deg(self, travel: float) -> float:
        """Where the crank's dial stands on the clock after so many degrees of turning."""
        return travel if self.clockwise else -travel


def true_housing_of(seed: int, level: int) -> TrueHousing:
    """The housing of a seed (1 to ``HIGHEST_SEED``) and a level.

    Level 1: the bore alone is off, the dial is perfect and the bracket stiff, dowels do what is
    written on them. Level 2: dial, bracket and dowels are those of a workshop. Level 3: the face
    leans, too. The others are as level 2, and one thing more: at ``LOOSE`` the housing seats badly,
    at ``PLATE`` the bore of a plate is swept, at ``TIPPED`` it stands tipped at its front flange,
    and what else its bore is off will be left when that is mended. At ``LENGTHS`` the bore is good.

    >>> true_housing_of(417, 2) == true_housing_of(417, 2)
    True
    """
    draw = _stream(seed, level)
    least, largest = _LEAST_OFFSET[level], _LARGEST_OFFSET[level]
    offset = least + (largest - least) * math.sqrt(draw.random())
    center = polar(360.0 * draw.random(), offset)
    lean = polar(360.0 * draw.random(), _STEEPEST * math.sqrt(draw.random()))
    droop = _MOST_DROOP / 2.0 * draw.random()
    gain, lag = 1.0 + _GAIN_SPREAD * _normal(draw), _LAG_SPREAD_DEG * _normal(draw)
    real = level > 1
    extra = _stream(seed, level, 4)
    seat = _between(extra, _LOOSE_SEAT)
    plate = polar(360.0 * extra.random(), _between(extra, _PLATE_ERROR))
    if level == TIPPED:
        lean = polar(360.0 * extra.random(), _between(extra, _TIPPED))
        center = tipped(center, ZERO, lean, DEPTH)
    return TrueHousing(
        seed=seed,
        level=level,
        center=center,
        slope=lean if level in (3, TIPPED) else ZERO,
        droop=droop if real else 0.0,
        gain=gain if real else 1.0,
        lag_deg=lag if real else 0.0,
        play=_PLAY if real else 0.0,
        scatter=_SCATTER if real else 0.0,
        dial_error=_DIAL_ERROR * draw.random() if real else 0.0,
        seat=seat if level == LOOSE else 0.0,
        plate=plate if level == PLATE else ZERO,
    )


def bore_after(hidden: TrueHousing, acts: Sequence[Act]) -> Vec2:
    """Where the bore is after these acts.

    >>> first = true_housing_of(5, 1)
    >>> there = bore_after(first, [Dowel(0.1, 90.0)])
    >>> round(there.x - first.center.x, 6), round(there.y - first.center.y, 6)
    (0.1, 0.0)
    """
    return state_after(hidden, acts).center


def state_after(hidden: TrueHousing, acts: Sequence[Act]) -> State:
    """What these acts, one after the other, have made of the housing (lengths in mm).

    A pair of dowels moves the housing the way its pegs point, as far as their offset; the last pair
    counts, and no pair moves it not at all. Beyond level 1 it does a little more or less, a little
    to the side, and the housing comes to rest somewhere within the play of its dowels, anew with
    every act that loosens it, or as far off as a bad seat lets it. What is taken off the front
    flange takes as much from the slope, and the housing turns with it. A plate that is turned
    carries its bore to the other side, and leaves the housing where it is.
    """
    base, slope, plate, spread = hidden.center, hidden.slope, hidden.plate, hidden.seat
    moved, seat = ZERO, ZERO
    if spread:
        seat = _rest(hidden, spread, _stream(hidden.seed, hidden.level, 5, 0))
    for n, act in enumerate(acts, 1):
        if isinstance(act, PlateTurn):
            plate = -plate
            continue
        draw = _stream(hidden.seed, hidden.level, 1 if isinstance(act, Dowel) else 5, n)
        if isinstance(act, Dowel):
            missed = _AIM_SETTING_DEG * (2.0 * draw.random() - 1.0) if hidden.play else 0.0
            moved = polar(act.aim_deg + hidden.lag_deg + missed, hidden.gain * act.offset)
        elif isinstance(act, Square):
            left = slope - polar(act.at_deg, act.slope)
            base, slope = tipped(base, slope, left, DEPTH), left
        elif act.mended:
            spread = 0.0
        seat = _rest(hidden, spread, draw)
    center = base + moved + seat
    return State(center, slope, center + plate)


def wall_distance(center: Vec2, slope: Vec2, base: Vec2, way: Vec2) -> float:
    """From a base in the plane z = 0 along the unit vector ``way`` to the wall of the bore.

    The wall is the cylinder of ``BORE_RADIUS`` about the line through ``center`` along the normal
    of the face, ``(-gx, -gy, 1)``. With p from ``center`` and q its part square to that line, the
    wall is where ``|q| = R``: a quadratic equation in the distance. From inside the ray leaves by
    the farther root, from outside it enters by the nearer.

    >>> wall_distance(Vec2(0.0, -1.0), ZERO, Vec2(0.0, 30.0), Vec2(0.0, 1.0))
    29.0
    """
    length = math.sqrt(slope.dot(slope) + 1.0)
    normal = Vec2(-slope.x / length, -slope.y / length)
    start = base - center
    # Scalar products of the parts square to the axis; both points lie at z = 0.
    a = 1.0 - way.dot(normal) ** 2
    b = start.dot(way) - start.dot(normal) * way.dot(normal)
    c = start.dot(start) - start.dot(normal) ** 2 - BORE_RADIUS**2
    root = math.sqrt(b * b - a * c)
    return (-b + root) / a if c < 0.0 else (-b - root) / a


def face_distance(slope: Vec2, base: Vec2, plunger: Plunger) -> float:
    """From a base that stands clear of the face along the crank axis to the face.

    The face is the plane ``z = g . (x, y)``. A plunger that points forward comes from behind.
    """
    height = slope.dot(base)
    return _CLEAR - height if plunger == "forward" else _CLEAR + height


def plunger_length(
    hidden: TrueHousing, now: State, set_up: SetUp, part: str, crank_deg: float
) -> float:
    """How long the dial's plunger is from its base, with the crank at a clock angle."""
    out, hang = unit_vector(crank_deg), Vec2(0.0, -hidden.droop)
    if part == "face":
        return face_distance(now.slope, out.scaled(FACE_RADIUS) + hang, set_up.plunger)
    if set_up.contact == "inside":
        return wall_distance(now.swept, now.slope, out.scaled(_INSIDE) + hang, out)
    return wall_distance(now.swept, now.slope, out.scaled(_OUTSIDE) + hang, -out)


def dial_turn(
    hidden: TrueHousing, acts: Sequence[Act], set_up: SetUp, part: str, sweep: int
) -> tuple[float, ...]:
    """What the dial shows at every degree of a whole turn, in mm, zeroed where the turn begins.

    ``part`` is ``bore`` or ``face``; ``sweep`` counts the sweeps, each with a scatter of its own.
    A plunger that is pushed in becomes shorter. The last value is back at the start.
    """
    now = state_after(hidden, acts)
    sense = -1.0 if set_up.plus_when == "plunger_in" else 1.0
    draw = _stream(hidden.seed, hidden.level, 2 + (part == "face"), len(acts), sweep)
    knots = [hidden.scatter * _normal(draw) for _ in range(TURN // _KNOT + 1)]
    phase = 2.0 * math.pi * draw.random()
    first = plunger_length(hidden, now, set_up, part, 0.0)
    shown = []
    for travel in range(TURN + 1):
        length = plunger_length(hidden, now, set_up, part, set_up.crank_deg(travel))
        # Gear and rack of a dial err in waves along its travel; half a millimetre is one of them.
        wave = hidden.dial_error * math.sin(phase + 4.0 * math.pi * (length - first))
        knot, between = divmod(travel, _KNOT)
        after = knots[min(knot + 1, len(knots) - 1)]
        scatter = knots[knot] + (after - knots[knot]) * between / _KNOT
        shown.append(sense * (length + wave) + scatter)
    return tuple(value - shown[0] for value in shown)


def droop_on_a_bar(hidden: TrueHousing) -> float:
    """What the dial reads with its bracket on a stiff bar: zeroed on top, then rolled to below."""
    return 2.0 * hidden.droop


def _rest(hidden: TrueHousing, spread: float, draw: Random) -> Vec2:
    """Where the housing comes to rest, from where it would sit on the average."""
    if spread:
        return Vec2(_normal(draw), _normal(draw)).scaled(spread)
    return Vec2(draw.random() - 0.5, draw.random() - 0.5).scaled(hidden.play)


def _between(draw: Random, ends: tuple[float, float]) -> float:
    """Anything between two lengths."""
    return ends[0] + (ends[1] - ends[0]) * draw.random()


def _stream(*numbers: int) -> Random:
    """A stream of random numbers of its own for each purpose."""
    seed = 0
    for number in numbers:
        seed = seed * 1009 + number
    return Random(seed)  # noqa: S311 - an exercise that anybody may foretell is no secret


def _normal(draw: Random) -> float:
    """A normal number, mean 0 and standard deviation 1 (Box and Muller 1958)."""
    radius = math.sqrt(-2.0 * math.log(1.0 - draw.random()))
    return radius * math.cos(2.0 * math.pi * draw.random())
