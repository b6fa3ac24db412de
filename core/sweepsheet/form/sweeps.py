"""The sweeps of a form as a job file's data: rounds, and parts that turn with the crank."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, get_args

from sweepsheet.form.form_job import FormJob
from sweepsheet.form.parse import number_or_text, position_or_text
from sweepsheet.form.typed_sweeps import SECOND_DIAL, USUAL_CONTACT, TypedSweep, TypedSweeps
from sweepsheet.job.assembly import known, lacks
from sweepsheet.job.model import RotatingPartKind
from sweepsheet.job.read import MOST_ROUNDS
from sweepsheet.words.messages import Message, round_called


class SweepFiller:
    """Fills in the rounds and companion sweeps of a job.

    ``whole``: everything that was begun, whether it can be fitted or not, and nothing told of it.
    """

    def __init__(self, typed: FormJob, form: Mapping[str, str], *, whole: bool = False) -> None:
        """Fill ``typed`` from ``form``."""
        self.typed = typed
        self.form = form
        self.whole = whole
        self.read = TypedSweeps(form, typed.dial, whole=whole)

    def fill(self) -> None:
        """The first round always, later ones once their bore can be fitted; then companions."""
        rounds: list[dict[str, Any]] = []
        for n in range(MOST_ROUNDS):
            found = self.round(n, len(rounds))
            if found is not None:
                rounds.append(found)
        self.typed.job["rounds"] = rounds
        companions: list[dict[str, Any]] = []
        assembly = None if self.whole else known(self.form.get("housing.assembly"))
        for kind in get_args(RotatingPartKind):
            if lacks(assembly, f"companions.{kind}"):
                continue
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
        if not bore and not (n == 0 or (self.whole and self.read.is_begun(at))):
            return None
        self.typed.names[place] = at
        found: dict[str, Any] = {"bore": self.bore(bore, f"{at}.bore", f"{place}.bore")}
        if face or (self.whole and self.read.face_is_begun(n)):
            found["face"] = self.face(face, f"{at}.face", f"{place}.face")
        since = self.form.get(f"{at}.since", "dowels") if n else "dowels"
        if since != "dowels":
            found["since"] = since
        # Offset dowels in a housing as found are rare: blank says nothing of them.
        elif n or self.read.any_typed(f"{at}.dowels."):
            found["dowels"] = self.dowels(at, place)
        name = self.form.get(f"{at}.name", "")
        return found | {"name": name} if name else found

    def bore(self, counted: list[TypedSweep], at: str, place: str) -> dict[str, Any]:
        """A bore sweep."""
        data = self.data(counted, at, place)
        contact, name = self.read.own(f"{at}.contact", "bore.contact", "")
        if contact:
            data["contact"] = contact
            self.typed.names[f"{place}.contact"] = name
        return data

    def face(self, counted: list[TypedSweep], at: str, place: str) -> dict[str, Any]:
        """A face sweep, with the second dial's readings where there is one."""
        data = self.data(counted, at, place)
        radius, name = self.read.own(f"{at}.radius", "face.radius", "")
        data["radius"] = number_or_text(radius)
        self.typed.names[f"{place}.radius"] = name
        data["plunger"], name = self.read.own(f"{at}.plunger", "face.plunger", "forward")
        self.typed.names[f"{place}.plunger"] = name
        end_float, name = self.read.end_float(at)
        self.typed.names[f"{place}.end_float"] = name
        data["end_float"] = SECOND_DIAL.get(end_float, end_float)
        if end_float in SECOND_DIAL:
            data["opposite"] = [list(sweep.second) for sweep in counted or [self.read.blank(at)]]
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
        if not counted and not (self.whole and self.read.is_begun(at)):
            return None
        self.typed.names[place] = at
        part = self.data(counted, at, place) | {"kind": kind}
        part["limit"] = number_or_text(self.form.get(f"{at}.limit", ""))
        contact = self.form.get(f"{at}.contact") or USUAL_CONTACT.get(kind)
        plunger = self.form.get(f"{at}.plunger")
        return part | {
            key: text for key, text in (("contact", contact), ("plunger", plunger)) if text
        }

    def counted(self, at: str, what: Message, *, always: bool) -> list[TypedSweep]:
        """The sweeps that count: the finished ones, else (``always``) whatever was begun."""
        sweeps = self.read.sweeps(at)
        if self.whole:
            kept = self.read.photographed
            return [each for each in sweeps if each.begun or (at, each.number) in kept]
        begun = [sweep for sweep in sweeps if sweep.begun]
        positions, _ = self.read.positions(at)
        finished = [sweep for sweep in begun if not sweep.unfinished(positions)]
        if not finished and always:
            return begun
        for sweep in begun:
            if sweep not in finished:
                message = Message("page.unfinished", {"what": what, "n": sweep.number + 1})
                self.typed.unfinished.append(message)
        return finished

    def data(self, counted: list[TypedSweep], at: str, place: str) -> dict[str, Any]:
        """Sweeps as job data, with the form's names for them; a blank one where there is none."""
        positions, name = self.read.positions(at)
        self.typed.fields[f"{place}.positions_deg"] = name
        shown = counted or [self.read.blank(at)]
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
    return Message("what.of_round", {"what": what, "round": round_called(n)}) if n else what
