"""What the practice page asks for: an exercise, the set-up, and what was done to it so far.

The page's form has the fields of the main form under the same names, and a few of its own that
begin with ``exercise.``. All are text; each may be wrong, and then is a fault at its field.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, cast, get_args

from sweepsheet.drawing.depth_measures import FIELDS
from sweepsheet.form.parse import number_or_text, position_or_text
from sweepsheet.job.fields import FieldReader
from sweepsheet.job.model import Contact, Dowel, Plunger, PlusWhen
from sweepsheet.job.read import MOST_ROUNDS
from sweepsheet.job.sweeps import MOST_SWEEPS
from sweepsheet.job.values import name_of
from sweepsheet.maths.units import MM_PER_INCH, SYSTEMS, UnitName, UnitSystem
from sweepsheet.practice.acts import Act, PlateTurn, Reseat, Square
from sweepsheet.practice.course import in_set
from sweepsheet.practice.housing import (
    DEPTH,
    FACE_RADIUS,
    HIGHEST_SEED,
    LENGTHS,
    LEVELS,
    LOOSE,
    PILOT_DISTANCE,
    PLATE,
    TIPPED,
    SetUp,
    TrueHousing,
    true_housing_of,
)
from sweepsheet.practice.lengths import MANUAL, TrueGearbox, true_gearbox_of

Part = Literal["bore", "face"]
ActName = Literal["dowels", "reseated", "cleaned", "plate_turned", "squared"]
# What can be done between two rounds at each level; the first is what it is if nothing is chosen.
OFFERED: dict[int, tuple[ActName, ...]] = {
    LOOSE: ("dowels", "reseated", "cleaned"),
    PLATE: ("dowels", "plate_turned"),
    TIPPED: ("dowels", "cleaned", "squared"),
}
# To be squared by no more than this runout.
_MOST_SQUARED: dict[UnitName, float] = {"inch": 40.0, "metric": 1.0}
# The bolts of the front flange, where they are of use: clock positions, and their radius in mm.
_BOLTS, _BOLTS_RADIUS = "12 2 4 6 8 10", 7.0 * MM_PER_INCH

# Each list begins at 12 and runs clockwise.
_POSITIONS = {
    "4": "12 3 6 9",
    "6": "12 2 4 6 8 10",
    "8": "12 1:30 3 4:30 6 7:30 9 10:30",
    "12": "12 1 2 3 4 5 6 7 8 9 10 11",
}
# The fields of the lengths, and at the end what is put between housing and gearbox.
ADDED = "depth.added"
LENGTH_FIELDS = (*FIELDS.values(), ADDED)
_ONE_SWEEP = re.compile(r"sweeps\.(\d{1,2})\.")


@dataclass(frozen=True, slots=True)
class Exercise:
    """One exercise as far as it has come.

    ``positions`` are clock positions in the order in which the crank comes to them. ``acts`` are
    what was done so far, one between each two rounds, lengths in mm; ``part`` is what the dial now
    touches, ``sweep`` which sweep of it is being taken, ``noted`` its readings so far.
    ``spacer`` is what is put between housing and gearbox, in mm.
    """

    hidden: TrueHousing
    set_up: SetUp
    units: UnitSystem
    positions: tuple[str, ...]
    acts: tuple[Act, ...]
    part: Part
    sweep: int
    noted: tuple[float | None, ...]
    spacer: float = 0.0

    @property
    def at(self) -> str:
        """Where the readings that are now taken stand in the form."""
        return f"rounds.{len(self.acts)}.{self.part}"

    @property
    def gearbox(self) -> TrueGearbox | None:
        """What is to go on the housing, where lengths are the matter."""
        hidden = self.hidden
        return true_gearbox_of(hidden.seed) if hidden.level == LENGTHS else None

    @property
    def fitted(self) -> Dowel | None:
        """The pair of dowels that is in; ``None`` before any was fitted."""
        fits = [act for act in self.acts if isinstance(act, Dowel)]
        return fits[-1] if fits else None


def exercise_of(form: Mapping[str, str]) -> Exercise:
    """The exercise a form asks for. Raises ``InputError`` with every fault."""
    form, reader = in_set(form), FieldReader()

    def chosen(name: str, choices: tuple[str, ...], called: str = "") -> str:
        return reader.choice(form.get(name, choices[0]), name, name_of(called or name), choices)

    def whole(name: str, high: int) -> int:
        value = number_or_text(form.get(name, "1"))
        number = reader.number(value, name, name_of(name), 1.0, float(high))
        if number is not None and number != int(number):
            reader.fault(name, "fault.whole", name=name_of(name))
        return int(number or 1)

    seed = whole("exercise.seed", HIGHEST_SEED)
    level = whole("exercise.level", max(LEVELS))
    units = SYSTEMS[cast(UnitName, chosen("units", get_args(UnitName)))]
    set_up = SetUp(
        contact=cast(Contact, chosen("bore.contact", get_args(Contact))),
        plus_when=cast(PlusWhen, chosen("indicator.plus_when", get_args(PlusWhen))),
        plunger=cast(Plunger, chosen("face.plunger", get_args(Plunger))),
        clockwise=chosen("turn", ("clockwise", "anticlockwise")) == "clockwise",
    )
    listed = chosen("exercise.positions", tuple(_POSITIONS))
    part = cast(Part, chosen("exercise.part", get_args(Part)))
    rounds = whole("exercise.rounds", MOST_ROUNDS)
    names = [chosen(f"rounds.{n}.act", offered(level), "exercise.act") for n in range(1, rounds)]
    acts = tuple(_act(form, reader, n, name, units) for n, name in enumerate(names, 1))
    reader.raise_faults()
    first, *rest = _POSITIONS[listed].split(" ")
    if level in OFFERED:
        # What was turned or seated anew is told from the round before, which must be there.
        for n in range(1, rounds):
            if not _is_swept(form, f"rounds.{n - 1}.bore", 1 + len(rest)):
                reader.fault(f"rounds.{n}.act", "fault.sweep_first")
    reader.raise_faults()
    positions = (first, *(rest if set_up.clockwise else reversed(rest)))
    at = f"rounds.{rounds - 1}.{part}"
    sweep = _latest_sweep(form, at)
    return Exercise(
        hidden=true_housing_of(seed, level),
        set_up=set_up,
        units=units,
        positions=positions,
        acts=acts,
        part=part,
        sweep=sweep,
        noted=tuple(
            _number(form.get(f"{at}.sweeps.{sweep}.{i}", "")) for i in range(len(positions))
        ),
        spacer=units.long_mm * max(0.0, _number(form.get(ADDED, "")) or 0.0),
    )


def offered(level: int) -> tuple[str, ...]:
    """What can be done between two rounds at a level."""
    return OFFERED.get(level, ("dowels",))


def answer_form(exercise: Exercise, form: Mapping[str, str]) -> dict[str, str]:
    """The form that the main page would have after the same work.

    What the mechanic could measure or read on the parts is filled in; what is hidden is not.
    """

    def long(mm: float) -> str:
        return f"{mm / exercise.units.long_mm:g}"

    copied = ("units", "bore.contact", "indicator.plus_when", "face.plunger", "indicator.sag")
    known: dict[int, dict[str, str]] = {
        # On the easy level the bracket is said to be stiff.
        1: {"indicator.sag": "0"},
        PLATE: {"housing.swept_bore": "plate"},
        TIPPED: {
            "housing.depth": long(DEPTH), "housing.tilt_from": "front",
            "bolts.at": _BOLTS, "bolts.radius": long(_BOLTS_RADIUS),
        },
        LENGTHS: {
            **{f"depth.{name}": long(mm) for name, mm in MANUAL.items()},
            "depth.release": "hydraulic",
            **{name: form[name] for name in LENGTH_FIELDS if form.get(name)},
        },
    }  # fmt: skip
    return {
        **known.get(exercise.hidden.level, {}),
        "positions": " ".join(exercise.positions),
        "limits.bore_offset": f"{exercise.units.bore_offset_limit:g}",
        "face.radius": long(FACE_RADIUS),
        "face.end_float": "held",
        "indicator.holder": "bracket",
        "housing.pilot_distance": long(PILOT_DISTANCE),
        **{name: form[name] for name in copied if form.get(name)},
        **_rounds(exercise, form),
    }


def _rounds(exercise: Exercise, form: Mapping[str, str]) -> dict[str, str]:
    """The fields of the rounds so far, and what was done before each but to the dowels."""
    found: dict[str, str] = {}
    for n in range(len(exercise.acts) + 1):
        parts = tuple(f"rounds.{n}.{part}." for part in ("bore", "face", "dowels"))
        found |= {name: text for name, text in form.items() if name.startswith(parts)}
    for n, act in enumerate(exercise.acts, 1):
        match act:
            case PlateTurn():
                found[f"rounds.{n}.since"] = "plate_turned"
            case Reseat(mended=False):
                found[f"rounds.{n}.since"] = "reseated"
            case Reseat() | Square():
                found[f"rounds.{n}.since"] = "cleaned"
    return found


def _act(form: Mapping[str, str], reader: FieldReader, n: int, name: str, units: UnitSystem) -> Act:
    """What was done before round ``n``."""
    if name == "plate_turned":
        return PlateTurn()
    if name == "squared":
        return _square(form, reader, f"rounds.{n}.square", units)
    if name in ("reseated", "cleaned"):
        return Reseat(mended=name == "cleaned")
    return _fit(form, reader, n, units)


def _square(form: Mapping[str, str], reader: FieldReader, at: str, units: UnitSystem) -> Square:
    """What was taken off the front flange, as runout where the face is swept."""
    typed = number_or_text(form.get(f"{at}.runout", ""))
    most = _MOST_SQUARED[units.name]
    size = reader.number(typed, f"{at}.runout", name_of("exercise.squared"), 0.0, most)
    angle = position_or_text(form.get(f"{at}.at", ""))
    if not isinstance(angle, float):
        reader.fault(f"{at}.at", "fault.aim")
    slope = units.to_mm(size or 0.0) / (2.0 * FACE_RADIUS)
    return Square(slope, angle if isinstance(angle, float) else 0.0)


def _is_swept(form: Mapping[str, str], at: str, count: int) -> bool:
    """Whether the first sweep of a bore has a reading at every position."""
    return all(_number(form.get(f"{at}.sweeps.0.{i}", "")) is not None for i in range(count))


def _fit(form: Mapping[str, str], reader: FieldReader, n: int, units: UnitSystem) -> Dowel:
    """The pair of dowels fitted for a round; standard ones need no aim."""
    at = f"rounds.{n}.dowels.0"
    typed = number_or_text(form.get(f"{at}.offset", "")) or 0.0
    name = name_of("fitted.offset", n=1)
    size = reader.number(typed, f"{at}.offset", name, 0.0, 2.0 * units.dowel_offsets[-1])
    angle = position_or_text(form.get(f"{at}.aim", ""))
    if not isinstance(angle, float) and (size or angle is not None):
        reader.fault(f"{at}.aim", "fault.aim")
    return Dowel(units.to_mm(size or 0.0), angle if isinstance(angle, float) else 0.0)


def _number(typed: str) -> float | None:
    """A typed number; ``None`` for anything else."""
    value = number_or_text(typed)
    return value if isinstance(value, float) else None


def _latest_sweep(form: Mapping[str, str], at: str) -> int:
    """The number of the last sweep that the form has at a place."""
    found = (_ONE_SWEEP.match(name.removeprefix(f"{at}.")) for name in form if name.startswith(at))
    return min(MOST_SWEEPS, max((int(match[1]) for match in found if match), default=0))
