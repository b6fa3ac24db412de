"""From a job file's data back to the texts of the form: the inverse of ``to_job``.

Numbers are written exactly, in the fewest digits that give the same number again; positions as the
time of the clock where they lie at a minute of it, else in degrees.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

from sweepsheet.form.photos import photo_fields
from sweepsheet.form.to_job import BLANK_IS_UNKNOWN, CHOICES_OR_BLANK, LISTS, NUMBERS, TEXTS
from sweepsheet.form.typed_sweeps import SECOND_DIAL, USUAL_CONTACT
from sweepsheet.job.assembly import BELLHOUSING_LIMITS, assembly_in
from sweepsheet.job.checklist import in_order
from sweepsheet.maths.clock import normalise

# The lists of positions that the form offers, each in the order in which the crank comes to them.
POSITION_CHOICES = (
    "12 3 6 9", "12 2 4 6 8 10", "12 1:30 3 4:30 6 7:30 9 10:30", "12 1 2 3 4 5 6 7 8 9 10 11",
)  # fmt: skip
_SECOND_DIAL = {crank: choice for choice, crank in SECOND_DIAL.items()}
_PARTED = re.compile(r"[;\s]+")


def form_of(data: Mapping[str, Any]) -> dict[str, str]:
    """The form's texts for a job file's data, so that ``job_of`` of them reads to the same job.

    The data must have the shape of a job file (``shape``), though values may still be wrong: they
    come into their fields as they are. Keys that are left out have no field here.

    >>> form = form_of({"rounds": [{"bore": {"sweeps": [[0, -5.5, -11, None]]}}]})
    >>> [form[f"rounds.0.bore.sweeps.0.{i}"] for i in range(4)], form["positions"]
    (['0', '-5.5', '-11', ''], '12 3 6 9')
    """
    form: dict[str, str] = {"limit_as": "offset"}
    if assembly_in(data):
        # A limit that is left out is not known here, and the form has the usual one at first.
        form |= dict.fromkeys(BELLHOUSING_LIMITS, "")
    # One of blanks is none, as where a job is read.
    if name := data.get("name", "").strip():
        form["name"] = name
    for path in (*TEXTS, *NUMBERS, *BLANK_IS_UNKNOWN, *CHOICES_OR_BLANK):
        section, _, key = path.rpartition(".")
        part = (data.get(section) or {}) if section else data
        if key in part:
            form[path] = number_text(part[key])
    dial = data.get("indicator") or {}
    if "sag" in dial:
        sag = dial["sag"]
        tries = " ".join(_word(number_text(each)) for each in sag) if isinstance(sag, list) else ""
        form["indicator.sag"] = tries or number_text(None if isinstance(sag, list) else sag)
    for path in LISTS:
        section, _, key = path.rpartition(".")
        part = data.get(section) or {}
        if key in part:
            form[path] = " ".join(_word(number_text(size)) for size in part[key])
    for key in ("bolts", "dowel_holes"):
        _holes(form, key, (data.get("housing") or {}).get(key) or ())
    _chip(form, data.get("chip") or {})
    form |= {f"checklist.{code}": "yes" for code in in_order(data.get("checklist") or ())}
    _Refilling(form, data).fill()
    return form | photo_fields(data)


def number_text(value: object) -> str:
    """A number in the fewest digits that give it again; a text as it is; nothing for nothing.

    >>> number_text(5.0), number_text(0.1 + 0.2), number_text(1e-07), number_text(None)
    ('5', '0.30000000000000004', '1e-07', '')
    """
    match value:
        case None:
            return ""
        case bool():
            return "true" if value else "false"
        case float() if value.is_integer() and abs(value) < 1e12:
            return str(int(value))
        case _:
            return str(value)


def position_text(value: object) -> str:
    """A position as it may be typed: the time of the clock at a minute, else degrees.

    >>> position_text(0), position_text(45.0), position_text(37.5), position_text(37.3)
    ('12', '1:30', '1:15', '37.3°')
    """
    if isinstance(value, bool) or not isinstance(value, int | float) or not -360 <= value <= 360:
        is_number = isinstance(value, int | float) and not isinstance(value, bool)
        return f"{number_text(value)}°" if is_number else number_text(value)
    angle = normalise(float(value))
    minutes = angle * 2.0
    if not minutes.is_integer():
        return f"{number_text(angle)}°"
    hour, minute = divmod(int(minutes), 60)
    return f"{hour or 12}:{minute:02d}" if minute else str(hour or 12)


def _word(text: str, parted: re.Pattern[str] = _PARTED) -> str:
    """A text as one word of a list, so that none of those after it moves up."""
    return parted.sub("_", text.strip()).strip(",") or "?"


def _positions_text(positions: Iterable[object]) -> str:
    parted = re.compile(r"[;,\s]+")
    return " ".join(_word(position_text(position), parted) for position in positions)


def _holes(form: dict[str, str], key: str, holes: Iterable[Mapping[str, Any]]) -> None:
    """Positions and distances of bolts or dowel holes; one distance where all are the same."""
    at = [hole.get("at_deg") for hole in holes]
    radii = [hole.get("radius") for hole in holes]
    for values in (at, radii):
        while values and values[-1] is None:
            values.pop()
    texts = [_word(number_text(radius)) for radius in radii]
    if len(texts) == len(at) and len(set(texts)) == 1:
        texts = texts[:1]
    if at or texts:
        form[f"{key}.at"] = _positions_text(at)
        form[f"{key}.radius"] = " ".join(texts)


def _chip(form: dict[str, str], chip: Mapping[str, Any]) -> None:
    if chip:
        form["chip.joint"] = chip.get("joint", "front")
        form["chip.height"] = number_text(chip.get("height"))
        form["chip.at"] = position_text(chip.get("at_deg"))
        form["chip.radius"] = number_text(chip.get("radius"))


class _Refilling:
    """Fills in the rounds and companion sweeps.

    What the first sweep has stands in the fields for all; where another differs, in its own.
    """

    def __init__(self, form: dict[str, str], data: Mapping[str, Any]) -> None:
        self.form = form
        self.rounds = data["rounds"]
        self.companions = data.get("companions") or ()
        self.common: dict[str, str] = {}

    def fill(self) -> None:
        for n, each in enumerate(self.rounds):
            self.round(f"rounds.{n}", each, first=n == 0)
        for part in self.companions:
            kind = part["kind"]
            at = f"companions.{kind}"
            self.form[f"{at}.limit"] = number_text(part.get("limit"))
            contact = part.get("contact", "inside")
            if contact != USUAL_CONTACT.get(kind, "inside"):
                self.form[f"{at}.contact"] = contact
            if part.get("plunger", "forward") != "forward":
                self.form[f"{at}.plunger"] = part["plunger"]
            self.sweeps(at, part)
        positions = self.common["positions"]
        self.form |= self.common | _choice(positions)

    def round(self, at: str, data: Mapping[str, Any], *, first: bool) -> None:
        if data.get("name"):
            self.form[f"{at}.name"] = data["name"]
        bore, face = data["bore"], data.get("face")
        self.sweeps(f"{at}.bore", bore)
        self.setting("bore.contact", f"{at}.bore.contact", bore.get("contact", "inside"))
        if face is not None:
            self.face(f"{at}.face", face)
        since = data.get("since", "dowels")
        if not first:
            self.form[f"{at}.since"] = since
        # Blank dowels are standard ones, and nothing is said of those that were in at first.
        dowels: Iterable[Mapping[str, Any]] = data.get("dowels") or ({}, {})
        typed = [self.dowel(dowel) for dowel in dowels]
        if "dowels" in data or not (first or since != "dowels"):
            alike = typed[0] == typed[1]
            self.form[f"{at}.alike"] = "yes" if alike else "no"
            for i, texts in enumerate(typed[:1] if alike else typed):
                for key, text in texts.items():
                    self.form[f"{at}.dowels.{i}.{key}"] = text

    def dowel(self, data: Mapping[str, Any]) -> dict[str, str]:
        offset, aim = number_text(data.get("offset", 0)), position_text(data.get("aim_deg", 0))
        return {"offset": offset, "aim": "" if (offset, aim) == ("0", "12") else aim}

    def face(self, at: str, data: Mapping[str, Any]) -> None:
        self.sweeps(at, data)
        self.setting("face.radius", f"{at}.radius", number_text(data.get("radius")))
        self.setting("face.plunger", f"{at}.plunger", data.get("plunger", "forward"))
        end_float = data.get("end_float", "free")
        if data.get("opposite") is not None:
            end_float = _SECOND_DIAL[end_float]
            self.rows(f"{at}.opposite", data["opposite"])
        self.setting("face.end_float", f"{at}.end_float", end_float)

    def setting(self, common: str, own: str, text: str) -> None:
        """The first text in the field for all; a different one in the sweep's own."""
        if self.common.setdefault(common, text) != text:
            # A blank own field would take the text for all.
            self.form[own] = text or "?"

    def sweeps(self, at: str, data: Mapping[str, Any]) -> None:
        positions = _positions_text(data.get("positions_deg", (0, 90, 180, 270)))
        self.setting("positions", f"{at}.positions", positions)
        self.rows(f"{at}.sweeps", data["sweeps"])
        for j, closing in enumerate(data.get("closing") or ()):
            self.form[f"{at}.closing.{j}"] = number_text(closing)

    def rows(self, at: str, rows: Iterable[Iterable[Any]]) -> None:
        for j, row in enumerate(rows):
            for i, reading in enumerate(row):
                self.form[f"{at}.{j}.{i}"] = number_text(reading)


def _choice(positions: str) -> dict[str, str]:
    """Which of the lists it is, and which way the crank was turned; else a list of one's own."""
    for choice in POSITION_CHOICES:
        first, *rest = choice.split(" ")
        for turn, order in (("clockwise", rest), ("anticlockwise", rest[::-1])):
            if positions == " ".join([first, *order]):
                return {"positions_choice": choice, "turn": turn}
    return {"positions_choice": "own", "turn": "clockwise"}
