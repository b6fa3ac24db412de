"""What the practice page asks for: an exercise, the set-up, and the dowels fitted so far.

The page's form has the fields of the main form under the same names, and a few of its own that
begin with ``exercise.``. All are text; each may be wrong, and then is a fault at its field.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, cast, get_args

from sweepsheet.form.parse import number_or_text, position_or_text
from sweepsheet.job.fields import FieldReader
from sweepsheet.job.model import Contact, Dowel, Plunger, PlusWhen
from sweepsheet.job.read import MOST_ROUNDS
from sweepsheet.job.sweeps import MOST_SWEEPS
from sweepsheet.job.values import name_of
from sweepsheet.maths.units import SYSTEMS, UnitName, UnitSystem
from sweepsheet.practice.housing import (
    FACE_RADIUS,
    HIGHEST_SEED,
    LEVELS,
    PILOT_DISTANCE,
    SetUp,
    TrueHousing,
    true_housing_of,
)

Part = Literal["bore", "face"]

# Each list begins at 12 and runs clockwise.
_POSITIONS = {
    "4": "12 3 6 9",
    "6": "12 2 4 6 8 10",
    "8": "12 1:30 3 4:30 6 7:30 9 10:30",
    "12": "12 1 2 3 4 5 6 7 8 9 10 11",
}
_ONE_SWEEP = re.compile(r"sweeps\.(\d{1,2})\.")


@dataclass(frozen=True, slots=True)
class Exercise:
    """One exercise as far as it has come.

    ``positions`` are clock positions in the order in which the crank comes to them. ``fits`` holds
    the pairs of dowels fitted so far, offsets in mm; ``part`` what the dial now touches, ``sweep``
    which sweep of it is being taken, ``noted`` its readings so far.
    """

    hidden: TrueHousing
    set_up: SetUp
    units: UnitSystem
    positions: tuple[str, ...]
    fits: tuple[Dowel, ...]
    part: Part
    sweep: int
    noted: tuple[float | None, ...]

    @property
    def at(self) -> str:
        """Where the readings that are now taken stand in the form."""
        return f"rounds.{len(self.fits)}.{self.part}"


def exercise_of(form: Mapping[str, str]) -> Exercise:
    """The exercise a form asks for. Raises ``InputError`` with every fault."""
    reader = FieldReader()

    def chosen(name: str, choices: tuple[str, ...]) -> str:
        return reader.choice(form.get(name, choices[0]), name, name_of(name), choices)

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
    fits = tuple(_fit(form, reader, n, units) for n in range(1, rounds))
    reader.raise_faults()
    first, *rest = _POSITIONS[listed].split(" ")
    positions = (first, *(rest if set_up.clockwise else reversed(rest)))
    at = f"rounds.{rounds - 1}.{part}"
    sweep = _latest_sweep(form, at)
    return Exercise(
        hidden=true_housing_of(seed, level),
        set_up=set_up,
        units=units,
        positions=positions,
        fits=fits,
        part=part,
        sweep=sweep,
        noted=tuple(
            _number(form.get(f"{at}.sweeps.{sweep}.{i}", "")) for i in range(len(positions))
        ),
    )


def answer_form(exercise: Exercise, form: Mapping[str, str]) -> dict[str, str]:
    """The form that the main page would have after the same work.

    What the mechanic could measure or read on the parts is filled in; what is hidden is not.
    """
    per_long = exercise.units.mm * exercise.units.small_per_long
    radius, pilot = (f"{mm / per_long:g}" for mm in (FACE_RADIUS, PILOT_DISTANCE))
    copied = ("units", "bore.contact", "indicator.plus_when", "face.plunger", "indicator.sag")
    rounds = tuple(f"rounds.{n}." for n in range(len(exercise.fits) + 1))
    # On the easy level the bracket is said to be stiff.
    stiff = {"indicator.sag": "0"} if exercise.hidden.level == 1 else {}
    return {
        **stiff,
        "positions": " ".join(exercise.positions),
        "limits.bore_offset": f"{exercise.units.bore_offset_limit:g}",
        "face.radius": radius,
        "face.end_float": "held",
        "indicator.holder": "bracket",
        "housing.pilot_distance": pilot,
        **{name: form[name] for name in copied if form.get(name)},
        **{name: text for name, text in form.items() if name.startswith(rounds)},
    }


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
