"""The sweeps of a filled-in form, field by field: what stands where, and what was begun.

The form has one set of positions and one way of sweeping for all; a sweep that was taken otherwise
has fields of its own (``rounds.1.bore.positions``), which count where something stands in them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from sweepsheet.form.dial import Dial
from sweepsheet.form.marks import marks_of
from sweepsheet.form.parse import Value, position_list
from sweepsheet.form.photos import SUFFIX, named_in
from sweepsheet.job.positions import position_faults
from sweepsheet.job.sweeps import MOST_POSITIONS, MOST_SWEEPS

# More words than this in one field are passed over when a form is kept whole.
MOST_WORDS = 200
# The value of the form's end float for a second dial, and what it says of the crank.
SECOND_DIAL = {"second": "free", "second_held": "held"}
# Where the dial touches a part, unless the form tells otherwise.
USUAL_CONTACT = {"crank_flange": "outside"}
USUAL_POSITIONS = "12 3 6 9"

_SWEEP_NAME = re.compile(r"(?P<at>.+)\.(?:sweeps|opposite|closing)\.(?P<sweep>\d{1,3})(?:\.|$)")

_FACE_NAME = re.compile(r"rounds\.\d+\.face\.")


@dataclass(frozen=True, slots=True)
class TypedSweep:
    """One sweep of the form: its number there, its readings and its return to zero."""

    number: int
    readings: tuple[Value, ...]
    second: tuple[Value, ...]
    closing: Value

    @property
    def begun(self) -> bool:
        """Whether anything was typed."""
        return any(value is not None for value in (*self.readings, *self.second, self.closing))

    def unfinished(self, positions: list[Value]) -> bool:
        """Whether nothing typed is wrong, but it is too little to be fitted."""
        angles = [a for a in positions if isinstance(a, float)]
        rows = [row for row in (self.readings, self.second) if row]
        if len(angles) < len(positions) or any(isinstance(m, str) for row in rows for m in row):
            return False
        both = [None if None in column else 0.0 for column in zip(*rows, strict=True)]
        return any(True for _ in position_faults(angles, [both]))


class TypedSweeps:
    """The sweeps of a filled-in form, as they were typed.

    ``whole``: a form is kept with all that was begun, and too many words are passed over.
    """

    def __init__(self, form: Mapping[str, str], dial: Dial, *, whole: bool = False) -> None:
        """Read from ``form``, whose readings are written as ``dial`` tells."""
        self.form = form
        self.dial = dial
        self.whole = whole
        self.marks = marks_of(form)
        # Which sweeps the form has at each place, so that no more is looked for.
        self.numbers: dict[str, set[int]] = {}
        photographed = named_in(form)
        # Those with a photo, whether anything was typed or not.
        self.photographed: set[tuple[str, int]] = set()
        for name in form:
            found = _SWEEP_NAME.match(name)
            if found and int(found["sweep"]) < MOST_SWEEPS:
                self.numbers.setdefault(found["at"], set()).add(int(found["sweep"]))
                if name.removesuffix(SUFFIX) in photographed:
                    self.photographed.add((found["at"], int(found["sweep"])))

    def own(self, own: str, common: str, usual: str) -> tuple[str, str]:
        """What stands in a sweep's own field, else in the one for all; and in which of them."""
        text = self.form.get(own, "")
        return (text, own) if text.strip() else (self.form.get(common, usual), common)

    def end_float(self, at: str) -> tuple[str, str]:
        """How the end float was dealt with in a face sweep, and the field that says so."""
        return self.own(f"{at}.end_float", "face.end_float", "free")

    def positions(self, at: str) -> tuple[list[Value], str]:
        """The positions of a sweep, and the field in which they stand."""
        text, name = self.own(f"{at}.positions", "positions", USUAL_POSITIONS)
        if name == "positions" and self.marks is not None:
            return self.marks.positions, "marks.first"
        return position_list(text, MOST_WORDS if self.whole else MOST_POSITIONS), name

    def sweeps(self, at: str) -> list[TypedSweep]:
        """Every sweep that the form may hold at a place."""
        numbers = sorted(self.numbers.get(at, ()))
        if not numbers:
            return []
        count = len(self.positions(at)[0])
        second = at.endswith(".face") and self.end_float(at)[0] in SECOND_DIAL
        return [
            TypedSweep(
                j,
                self.row(f"{at}.sweeps.{j}", count),
                self.row(f"{at}.opposite.{j}", count) if second else (),
                self.reading(f"{at}.closing.{j}"),
            )
            for j in numbers
        ]

    def blank(self, at: str) -> TypedSweep:
        """A sweep in which nothing was typed."""
        nothing = (None,) * len(self.positions(at)[0])
        return TypedSweep(0, nothing, nothing, None)

    def row(self, at: str, count: int) -> tuple[Value, ...]:
        """The readings of one sweep."""
        return tuple(self.reading(f"{at}.{i}") for i in range(count))

    def reading(self, name: str) -> Value:
        """One reading, with its sign."""
        return self.dial.reading(self.form.get(name, ""), whole=self.whole)

    def any_typed(self, beginning: str) -> bool:
        """Whether anything stands in a field whose name begins like this."""
        return any(text.strip() and name.startswith(beginning) for name, text in self.form.items())

    def is_begun(self, at: str) -> bool:
        """Whether anything stands in the fields of a round or part; a usual choice is nothing."""
        contact = USUAL_CONTACT.get(at.removeprefix("companions."), "")
        usual = {(f"{at}.alike", "yes"), (f"{at}.alike", "no"), (f"{at}.contact", contact)}
        return any(
            text.strip() and name.startswith(f"{at}.") and (name, text) not in usual
            for name, text in self.form.items()
        )

    def face_is_begun(self, n: int) -> bool:
        """Whether anything was said of a round's face; where of none, what is said for all counts.

        It then stands with the first round, for a job file has no other place for it.
        """
        if n or any(text.strip() and _FACE_NAME.match(name) for name, text in self.form.items()):
            return self.is_begun(f"rounds.{n}.face")
        common = (("face.radius", ""), ("face.plunger", "forward"), ("face.end_float", "free"))
        return any(self.form.get(name, usual) != usual for name, usual in common)
