"""The sweeps of a filled-in form, as a job file's data: rounds and parts that turn with the crank.

The form has one set of positions and one way of sweeping for all; a sweep that was taken otherwise
has fields of its own (``rounds.1.bore.positions``), which count where something stands in them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, get_args

from sweepsheet.form.dial import SIGNED, Dial
from sweepsheet.form.parse import Value, number_or_text, position_list, position_or_text
from sweepsheet.job.model import RotatingPartKind
from sweepsheet.job.positions import position_faults
from sweepsheet.job.read import MOST_ROUNDS
from sweepsheet.job.sweeps import MOST_POSITIONS, MOST_SWEEPS
from sweepsheet.words.messages import Message

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
class FormJob:
    """What was typed, as job data, with what the page needs to know about it.

    ``names`` tells, for places of the job that the form calls otherwise, the form's name;
    ``fields``, for places that are one field of the form with all that is below them, which one.
    ``unfinished`` names what was begun and does not count yet; ``dial`` is how readings were
    written, which have their sign in the job.
    """

    job: dict[str, Any]
    names: dict[str, str] = field(default_factory=dict)
    fields: dict[str, str] = field(default_factory=dict)
    unfinished: list[Message] = field(default_factory=list)
    dial: Dial = SIGNED

    def form_name(self, place: str) -> str:
        """The form's name for a place of the job: the longest known beginning counts."""
        parts = place.split(".")
        for n in range(len(parts), 0, -1):
            beginning = ".".join(parts[:n])
            if beginning in self.fields:
                return self.fields[beginning]
            if beginning in self.names:
                return ".".join([self.names[beginning], *parts[n:]])
        return place


@dataclass(frozen=True, slots=True)
class _Sweep:
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


class SweepFiller:
    """Fills in the rounds and companion sweeps of a job.

    ``whole``: everything that was begun, whether it can be fitted or not, and nothing told of it.
    """

    def __init__(self, typed: FormJob, form: Mapping[str, str], *, whole: bool = False) -> None:
        """Fill ``typed`` from ``form``."""
        self.typed = typed
        self.form = form
        self.whole = whole
        self.most_positions = MOST_WORDS if whole else MOST_POSITIONS
        # Which sweeps the form has at each place, so that no more is looked for.
        self.numbers: dict[str, set[int]] = {}
        for name in form:
            found = _SWEEP_NAME.match(name)
            if found and int(found["sweep"]) < MOST_SWEEPS:
                self.numbers.setdefault(found["at"], set()).add(int(found["sweep"]))

    def fill(self) -> None:
        """The first round always, later ones once their bore can be fitted; then companions."""
        rounds: list[dict[str, Any]] = []
        for n in range(MOST_ROUNDS):
            found = self.round(n, len(rounds))
            if found is not None:
                rounds.append(found)
        self.typed.job["rounds"] = rounds
        companions: list[dict[str, Any]] = []
        for kind in get_args(RotatingPartKind):
            found = self.companion(kind, f"companions.{len(companions)}")
            if found is not None:
                companions.append(found)
        self.typed.job["companions"] = companions

    # Rounds and parts ----------------------------------------------------------------------

    def round(self, n: int, index: int) -> dict[str, Any] | None:
        """Round n of the form as round ``index`` of the job; ``None`` where it does not count."""
        at, place = f"rounds.{n}", f"rounds.{index}"
        bore = self.counted(f"{at}.bore", _what("bore", n), always=n == 0)
        face = self.counted(f"{at}.face", _what("face", n), always=False)
        if not bore and not (n == 0 or (self.whole and self.is_begun(at))):
            return None
        self.typed.names[place] = at
        found: dict[str, Any] = {"bore": self.bore(bore, f"{at}.bore", f"{place}.bore")}
        if face or (self.whole and self.face_is_begun(n)):
            found["face"] = self.face(face, f"{at}.face", f"{place}.face")
        # Offset dowels in a housing as found are rare: blank says nothing of them.
        if n or self.any_typed(f"{at}.dowels."):
            found["dowels"] = self.dowels(at, place)
        name = self.form.get(f"{at}.name", "")
        return found | {"name": name} if name else found

    def bore(self, counted: list[_Sweep], at: str, place: str) -> dict[str, Any]:
        """A bore sweep."""
        data = self.data(counted, at, place)
        contact, name = self.own(f"{at}.contact", "bore.contact", "")
        if contact:
            data["contact"] = contact
            self.typed.names[f"{place}.contact"] = name
        return data

    def face(self, counted: list[_Sweep], at: str, place: str) -> dict[str, Any]:
        """A face sweep, with the second dial's readings where there is one."""
        data = self.data(counted, at, place)
        radius, name = self.own(f"{at}.radius", "face.radius", "")
        data["radius"] = number_or_text(radius)
        self.typed.names[f"{place}.radius"] = name
        data["plunger"], name = self.own(f"{at}.plunger", "face.plunger", "forward")
        self.typed.names[f"{place}.plunger"] = name
        end_float, name = self.end_float(at)
        self.typed.names[f"{place}.end_float"] = name
        data["end_float"] = SECOND_DIAL.get(end_float, end_float)
        if end_float in SECOND_DIAL:
            data["opposite"] = [list(sweep.second) for sweep in counted or [self.blank(at)]]
            for k, sweep in enumerate(counted):
                self.typed.names[f"{place}.opposite.{k}"] = f"{at}.opposite.{sweep.number}"
        return data

    def dowels(self, at: str, place: str) -> list[dict[str, Any]]:
        """The dowels that are in for a round: the second is as the first unless told otherwise."""
        dowels = []
        for i in range(2):
            source = 0 if self.form.get(f"{at}.alike", "yes") == "yes" else i
            self.typed.names[f"{place}.dowels.{i}"] = f"{at}.dowels.{source}"
            self.typed.fields[f"{place}.dowels.{i}.aim_deg"] = f"{at}.dowels.{source}.aim"
            offset = number_or_text(self.form.get(f"{at}.dowels.{source}.offset", ""))
            aim = position_or_text(self.form.get(f"{at}.dowels.{source}.aim", ""))
            dowel: dict[str, Any] = {"offset": offset, "aim_deg": aim}
            # A blank is a standard dowel, whose aim is nothing.
            dowels.append({key: 0.0 if value is None else value for key, value in dowel.items()})
        return dowels

    def companion(self, kind: str, place: str) -> dict[str, Any] | None:
        """A part that turns with the crank; ``None`` where it was not swept."""
        at = f"companions.{kind}"
        counted = self.counted(at, Message(f"what.{kind}"), always=False)
        if not counted and not (self.whole and self.is_begun(at)):
            return None
        self.typed.names[place] = at
        part = self.data(counted, at, place) | {"kind": kind}
        part["limit"] = number_or_text(self.form.get(f"{at}.limit", ""))
        contact = self.form.get(f"{at}.contact") or USUAL_CONTACT.get(kind)
        plunger = self.form.get(f"{at}.plunger")
        return part | {
            key: text for key, text in (("contact", contact), ("plunger", plunger)) if text
        }

    # What was typed ------------------------------------------------------------------------

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
        return position_list(text, self.most_positions), name

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

    def counted(self, at: str, what: Message, *, always: bool) -> list[_Sweep]:
        """The sweeps that count: the finished ones, else (``always``) whatever was begun."""
        begun = [sweep for sweep in self.sweeps(at) if sweep.begun]
        if self.whole:
            return begun
        positions, _ = self.positions(at)
        finished = [sweep for sweep in begun if not sweep.unfinished(positions)]
        if not finished and always:
            return begun
        for sweep in begun:
            if sweep not in finished:
                message = Message("page.unfinished", {"what": what, "n": sweep.number + 1})
                self.typed.unfinished.append(message)
        return finished

    def sweeps(self, at: str) -> list[_Sweep]:
        """Every sweep that the form may hold at a place."""
        numbers = sorted(self.numbers.get(at, ()))
        if not numbers:
            return []
        count = len(self.positions(at)[0])
        second = at.endswith(".face") and self.end_float(at)[0] in SECOND_DIAL
        return [
            _Sweep(
                j,
                self.row(f"{at}.sweeps.{j}", count),
                self.row(f"{at}.opposite.{j}", count) if second else (),
                self.reading(f"{at}.closing.{j}"),
            )
            for j in numbers
        ]

    def row(self, at: str, count: int) -> tuple[Value, ...]:
        """The readings of one sweep."""
        return tuple(self.reading(f"{at}.{i}") for i in range(count))

    def reading(self, name: str) -> Value:
        """One reading, with its sign."""
        return self.typed.dial.reading(self.form.get(name, ""), whole=self.whole)

    def blank(self, at: str) -> _Sweep:
        """A sweep in which nothing was typed."""
        nothing = (None,) * len(self.positions(at)[0])
        return _Sweep(0, nothing, nothing, None)

    def data(self, counted: list[_Sweep], at: str, place: str) -> dict[str, Any]:
        """Sweeps as job data, with the form's names for them; a blank one where there is none."""
        positions, name = self.positions(at)
        self.typed.fields[f"{place}.positions_deg"] = name
        shown = counted or [self.blank(at)]
        for k, sweep in enumerate(shown):
            self.typed.names[f"{place}.sweeps.{k}"] = f"{at}.sweeps.{sweep.number}"
            self.typed.names[f"{place}.closing.{k}"] = f"{at}.closing.{sweep.number}"
        return {
            "positions_deg": positions,
            "sweeps": [list(sweep.readings) for sweep in shown],
            "closing": [sweep.closing for sweep in shown],
        }


def _what(part: str, n: int) -> Message:
    """The name of a sweep of round n, for what is unfinished."""
    what = Message(f"what.{part}")
    return Message("what.of_round", {"what": what, "n": n + 1}) if n else what
