"""A rig, which is a dial with its bracket, as a file and back.

A rig is some fields of the form under a name. Its file holds them as a job file holds them, so that
what comes from outside is checked as a job is: opened whole, or refused whole, in words.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from sweepsheet.files.exchange import file_name
from sweepsheet.form.dial import ALL_ROUND, dial_of
from sweepsheet.form.from_job import form_of, number_text
from sweepsheet.form.to_job import draft_of
from sweepsheet.job.fields import FieldReader, shown
from sweepsheet.job.model import SETTINGS, Job
from sweepsheet.job.read import FORMAT, LONGEST_NAME, VERSION, read_job
from sweepsheet.job.strict_json import load_json
from sweepsheet.maths.units import UnitSystem
from sweepsheet.words.faults import Fault, InputError, refused

RIG_FORMAT = "sweepsheet-rig"
RIG_VERSION = 1
LONGEST_RIG = 20_000

NAME = "indicator.rig"
# The fields of the form that belong to a rig. How far it reaches in a job is the job's.
RIG_FIELDS = (
    "units", "indicator.plus_when", "indicator.shows", "indicator.turn", "indicator.holder",
    "indicator.sag", "indicator.sag_allowance", "indicator.sag_date", "indicator.sag_bar",
    "indicator.sag_reach", "indicator.contact_angle_deg", "indicator.step", "indicator.accuracy",
    "indicator.repeatability",
)  # fmt: skip
_KEYS = ("format", "version", "name", "units", "turn", "indicator")
_PARTS = frozenset(
    path.partition(".")[2] for path in RIG_FIELDS if path in SETTINGS or path == "indicator.sag"
)

Data = dict[str, Any]
Form = Mapping[str, str]


def rig_data(form: Form) -> Data:
    """The rig in a form, as the data of its file. Raises ``InputError`` where it is not right.

    >>> rig_data({"indicator.rig": "Long arm", "units": "inch", "indicator.sag": "2"})
    ... # doctest: +NORMALIZE_WHITESPACE
    {'format': 'sweepsheet-rig', 'version': 1, 'name': 'Long arm', 'units': 'inch', 'turn': None,
     'indicator': {'sag': 2.0}}
    """
    of_rig = {path: text for path, text in form.items() if path in RIG_FIELDS}
    draft = draft_of(of_rig)
    dial = dial_of(form)
    data = {
        "format": RIG_FORMAT,
        "version": RIG_VERSION,
        "name": form.get(NAME, "").strip(),
        "units": draft.get("units", "inch"),
        "turn": dial.turn,
        "indicator": draft.get("indicator", {}),
    }
    read_rig(data)
    return data


def read_rig(data: object) -> tuple[Job, dict[str, str]]:
    """A job with the dial of the rig and no true reading, and the rig as texts of the form.

    Every field of a rig is there, as is usual where the data leave it out. Raises ``InputError``
    with every fault there is.
    """
    reader = FieldReader()
    top = reader.section(data, "", _KEYS)
    if top.get("format") != RIG_FORMAT:
        raise refused("rig.foreign")
    version = top.get("version")
    if isinstance(version, bool) or version != RIG_VERSION:
        newer = isinstance(version, int) and version > RIG_VERSION
        raise refused("rig.newer" if newer else "file.version", got=shown(version))
    part = top.get("indicator")
    reader.section({} if part is None else part, "indicator", tuple(sorted(_PARTS)))
    name = top.get("name")
    if not isinstance(name, str) or not name.strip() or len(name) > LONGEST_NAME:
        raise InputError((Fault("name", refused("rig.no_name").faults[0].message),))
    reader.raise_faults()
    indicator = {**(part or {}), "rig": name}
    rounds = [{"bore": {"sweeps": [[0, 0, 0, 0]]}}]
    job_data = {
        "format": FORMAT, "version": VERSION, "units": top.get("units", "inch"),
        "indicator": indicator, "rounds": rounds,
    }  # fmt: skip
    job = read_job(job_data)
    return job, _usual(job.units) | _turn(top.get("turn")) | _texts(job_data)


def _texts(job_data: Data) -> dict[str, str]:
    """The fields that the data tell of."""
    return {path: text for path, text in form_of(job_data).items() if path in (*RIG_FIELDS, NAME)}


def _usual(units: UnitSystem) -> dict[str, str]:
    """The fields of a rig of which nothing is known."""
    found = dict.fromkeys(RIG_FIELDS, "")
    for path in RIG_FIELDS:
        if path in SETTINGS:
            found[path] = number_text(SETTINGS[path].usual_in(units))
    return found | {"units": units.name}


def _turn(turn: object) -> dict[str, str]:
    """How the face of the dial is numbered: all round, with what a whole turn is, or by signs."""
    if turn is None:
        return {"indicator.shows": "signed", "indicator.turn": ""}
    is_number = isinstance(turn, int | float) and not isinstance(turn, bool)
    typed = number_text(turn) if is_number else ""
    form = {"indicator.shows": ALL_ROUND, "indicator.turn": typed}
    if dial_of(form).fault is not None:
        message = refused("fault.turn", got=shown(turn)).faults[0].message
        raise InputError((Fault("turn", message),))
    return form


def rig_text(data: Data) -> str:
    """The text of a rig's file."""
    return json.dumps(data, ensure_ascii=False, allow_nan=False) + "\n"


def rig_file_name(data: Data) -> str:
    """The name of a rig's file."""
    return f"{file_name(data['name'])}-rig.json"


def load_rig(text: str) -> object:
    """The data in the text of a rig's file. Raises ``InputError`` where it is none."""
    if len(text) > LONGEST_RIG or not text.lstrip("\ufeff \t\r\n").startswith("{"):
        raise refused("rig.foreign")
    try:
        return load_json(text, LONGEST_RIG)
    except InputError:
        raise refused("rig.foreign") from None
