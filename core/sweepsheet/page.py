"""What the page asks: a filled-in form in, everything it shows back, as JSON text.

The page itself computes nothing and words nothing: it shows what comes from here. While readings
are still missing the answer is "waiting", with what is wanted next; where something typed is wrong
it is the faults, each with the field it belongs to.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from sweepsheet.drawing import drawing_of
from sweepsheet.english import ENGLISH
from sweepsheet.errors import Fault, InputError
from sweepsheet.findings import findings_for
from sweepsheet.form import Typed, job_of
from sweepsheet.load import load_json
from sweepsheet.read_job import read_job
from sweepsheet.sheet import limit_line, sheet_of
from sweepsheet.solution import work_out
from sweepsheet.units import SYSTEMS
from sweepsheet.wording import At, Language, Message

# Faults that only say that a sweep is not yet typed to its end.
_NOT_YET = ("fault.few_readings", "fault.half_turn")


def answer_text(request: str) -> str:
    """The answer to a request, both as JSON text. Raises ``InputError`` only for no request.

    A request is ``{"form": {name: text, ...}}``.

    >>> json.loads(answer_text('{"form": {}}'))["state"]
    'waiting'
    """
    data = load_json(request)
    form = data.get("form") if isinstance(data, dict) else None
    if not isinstance(form, dict) or not all(isinstance(v, str) for v in form.values()):
        raise InputError((Fault("", Message("fault.request")),))
    return json.dumps(answer(form), allow_nan=False)


def answer(form: Mapping[str, str], language: Language = ENGLISH) -> dict[str, Any]:
    """What the page shows for a filled-in form.

    ``state`` is ``waiting``, ``faults`` or ``answer``; ``limit`` is the limit as offset and as TIR.
    """
    typed = job_of(form)
    shown: dict[str, Any] = {"limit": _limit(typed, language)}
    try:
        job = read_job(typed.job)
    except InputError as error:
        if all(fault.message.key in _NOT_YET for fault in error.faults) and _blanks(typed):
            return shown | {"state": "waiting", "text": _waiting(typed, language)}
        faults = [
            {"field": _form_field(fault.field, typed), "text": _fault_text(fault, language)}
            for fault in error.faults
        ]
        return shown | {"state": "faults", "faults": faults}
    solution = work_out(job)
    sheet = asdict(sheet_of(solution, findings_for(solution), language))
    for remark in sheet["remarks"]:
        remark["field"] = _form_field(remark["field"], typed)
    sheet["remarks"] = [*_unfinished(typed, language), *sheet["remarks"]]
    return shown | {"state": "answer", "sheet": sheet, "drawing": drawing_of(solution, language)}


def _limit(typed: Typed, language: Language) -> str:
    """The limit as offset and TIR, as far as it can be read."""
    limit = typed.job.get("limits", {}).get("bore_offset")
    units = SYSTEMS.get(typed.job.get("units", "inch"))
    if units is None or not isinstance(limit, float | None):
        return ""
    return limit_line(limit, units, language)


def _blanks(typed: Typed) -> list[float]:
    """The positions at which the first unfinished sweep has no reading yet."""
    bore = typed.job["rounds"][0]["bore"]
    for row in bore["sweeps"]:
        blank = [a for a, m in zip(bore["positions_deg"], row, strict=True) if m is None]
        if blank:
            return blank
    return []


def _unfinished(typed: Typed, language: Language) -> list[dict[str, str]]:
    """A remark for each sweep that was begun and does not count yet."""
    return [
        {
            "code": "sweep-unfinished",
            "level": "caution",
            "field": f"rounds.0.bore.sweeps.{number}",
            "label": language.say("level.caution"),
            "text": language.say("page.unfinished", n=number + 1),
        }
        for number in typed.unfinished
    ]


def _waiting(typed: Typed, language: Language) -> str:
    """What is still to be typed."""
    return language.say("page.waiting", positions=tuple(At(a) for a in _blanks(typed)))


def _fault_text(fault: Fault, language: Language) -> str:
    """A fault in words; a position is typed as a clock position, not as a number of degrees."""
    if ".positions_deg." in fault.field and fault.message.key == "fault.number":
        got = fault.message.values["got"]
        return language.say("fault.position", name=Message("name.positions"), got=got)
    return fault.text(language)


def _form_field(field: str, typed: Typed) -> str:
    """The form's name for a field of the job: its sweeps are numbered as on the page."""
    parts = field.split(".")
    if len(parts) >= 5 and parts[:3] == ["rounds", "0", "bore"] and parts[3] != "positions_deg":
        parts[4] = str(typed.sweeps[int(parts[4])])
    elif parts[:4] == ["rounds", "0", "bore", "positions_deg"]:
        parts = ["rounds", "0", "bore", "positions"]
    elif parts[:2] == ["stock", "dowel_offsets"]:
        parts = parts[:2]
    return ".".join(parts)
