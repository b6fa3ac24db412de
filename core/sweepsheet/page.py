"""What the page asks: a filled-in form in, everything it shows back, as JSON text.

The page itself computes nothing and words nothing: it shows what comes from here. While readings
are still missing the answer is "waiting", with what is wanted next; where something typed is wrong
it is the faults, each with the field it belongs to.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from sweepsheet.drawing.flange_view import flange_view_of
from sweepsheet.drawing.housing import drawing_of
from sweepsheet.drawing.side_view import side_view_of
from sweepsheet.files.exchange import export_csv, export_file, import_file
from sweepsheet.findings.job import findings_for
from sweepsheet.form.dial import Dial
from sweepsheet.form.to_job import FormJob, job_of
from sweepsheet.job.model import Job
from sweepsheet.job.read import read_job
from sweepsheet.job.strict_json import load_json
from sweepsheet.link.share import open_link, share_of
from sweepsheet.maths.units import SYSTEMS
from sweepsheet.report.sheet import limit_line, sheet_of
from sweepsheet.solution import work_out
from sweepsheet.words.english import ENGLISH
from sweepsheet.words.faults import Fault, InputError
from sweepsheet.words.glossary import plain_words
from sweepsheet.words.languages import language_of
from sweepsheet.words.messages import ClockPosition, Language, Message

# A file within another text, every character of it escaped, or as many jobs as a file may hold.
LONGEST_REQUEST = 12_000_000

_READING = re.compile(r"\.(?:sweeps|opposite|closing)\.\d+")
# Faults that only say that a sweep is not yet typed to its end.
_NOT_YET = ("fault.few_readings", "fault.half_turn")


def handle_request(request: str) -> str:
    """The answer to a request, both as JSON text. Raises ``InputError`` only for no request.

    A request is ``{"form": {name: text, ...}}`` for the answer to a form, ``{"share": {...}}`` for
    its link and its sheet on paper, ``{"link": fragment}`` for what a link comes to,
    ``{"export": [form, ...]}`` and ``{"csv": form}`` for a file, ``{"import": text}`` for the jobs
    in one, ``{"practice": form}`` for the practice housing, ``{"guide": {"form": form, "at":
    "rounds.0.bore"}}`` for what leads through a sweep. Beside it stands the ``language`` of the
    answer, by its code; English where there is none, or one that is not known.

    >>> json.loads(handle_request('{"form": {}}'))["state"]
    'waiting'
    >>> json.loads(handle_request('{"link": "1abc", "language": "en"}'))["state"]
    'refused'
    """
    asked = load_json(request, LONGEST_REQUEST)
    language = language_of(asked.get("language") if isinstance(asked, dict) else None)
    match asked:
        case {"form": dict() as form} if _is_form(form):
            shown = answer(form, language)
        case {"share": dict() as form} if _is_form(form):
            shown = share(form, language)
        case {"link": str() as fragment}:
            shown = open_link(fragment, language)
        case {"export": [*forms]} if all(
            isinstance(form, dict) and _is_form(form) for form in forms
        ):
            shown = export_file(forms, language)
        case {"csv": dict() as form} if _is_form(form):
            shown = export_csv(form, language)
        case {"import": str() as text}:
            shown = import_file(text, language)
        case {"practice": dict() as form} if _is_form(form):
            shown = practice(form, language)
        case {"guide": {"form": dict() as form, "at": str() as at}} if _is_form(form):
            shown = guide_sweep(form, at, language)
        case _:
            raise InputError((Fault("", Message("fault.request")),))
    return json.dumps(shown, allow_nan=False)


def _is_form(form: Mapping[Any, Any]) -> bool:
    return all(isinstance(text, str) for text in form.values())


def practice(form: Mapping[str, str], language: Language = ENGLISH) -> dict[str, Any]:
    """The practice housing, and what the readings taken of it come to."""
    from sweepsheet.practice.page import practise  # noqa: PLC0415 - the main page need not wait for it

    practised = practise(form, language)
    answered = None if practised.form is None else answer(practised.form, language)
    return {"practice": practised.shown, "answer": answered}


def guide_sweep(form: Mapping[str, str], at: str, language: Language = ENGLISH) -> dict[str, Any]:
    """What leads through a sweep, position by position."""
    from sweepsheet.guide.steps import guide  # noqa: PLC0415 - the first answer need not wait for it

    return guide(form, at, language)


def answer(form: Mapping[str, str], language: Language = ENGLISH) -> dict[str, Any]:
    """What the page shows for a filled-in form.

    ``state`` is ``waiting``, ``faults`` or ``answer``; ``limit`` is the limit as offset and as TIR.
    """
    typed = job_of(form)
    shown: dict[str, Any] = {"limit": _limit(typed, language)}
    job = _job(typed, language)
    if not isinstance(job, Job):
        return shown | job
    solution = work_out(job)
    sheet = asdict(sheet_of(solution, findings_for(solution), language))
    for remark in sheet["remarks"]:
        remark["field"] = typed.form_name(remark["field"])
    sheet["remarks"] = [*_unfinished(typed, language), *sheet["remarks"]]
    return shown | {
        "state": "answer",
        "sheet": sheet,
        "words": _words(sheet["sections"], language, job.limits.confidence),
        "drawing": drawing_of(solution, language),
        "side_view": side_view_of(solution, language),
        "flange_view": flange_view_of(solution, language),
    }


def _words(sections: list[dict[str, Any]], language: Language, confidence: float) -> dict[str, Any]:
    """What the figures of the bore and of each section are."""
    words = plain_words(["bore", *(each["name"] for each in sections)], language, confidence)
    return {part: [asdict(word) for word in listed] for part, listed in words.items()}


def share(form: Mapping[str, str], language: Language = ENGLISH) -> dict[str, Any]:
    """The link and the sheet on paper of a filled-in form, once it has an answer."""
    typed = job_of(form)
    job = _job(typed, language)
    return share_of(typed.job, work_out(job), language) if isinstance(job, Job) else job


def _job(typed: FormJob, language: Language) -> Job | dict[str, Any]:
    """The job that was typed; else what is shown instead: what is missing, or what is wrong."""
    found: tuple[Fault, ...] = (typed.dial.fault,) if typed.dial.fault else ()
    try:
        job = read_job(typed.job)
    except InputError as error:
        found += error.faults
    if not found:
        return job
    blanks = _blanks(typed)
    if all(fault.message.key in _NOT_YET for fault in found) and blanks:
        text = language.say("page.waiting", positions=tuple(ClockPosition(a) for a in blanks))
        return {"state": "waiting", "text": text}
    faults = [
        {"field": typed.form_name(fault.field), "text": _fault_text(fault, typed.dial, language)}
        for fault in found
    ]
    return {"state": "faults", "faults": faults}


def _limit(typed: FormJob, language: Language) -> str:
    """The limit as offset and TIR, as far as it can be read."""
    limit = typed.job.get("limits", {}).get("bore_offset")
    units = SYSTEMS.get(typed.job.get("units", "inch"))
    if units is None or not isinstance(limit, float | None):
        return ""
    return limit_line(limit, units, language)


def _blanks(typed: FormJob) -> list[float]:
    """The positions at which the first round's first unfinished bore sweep has no reading."""
    bore = typed.job["rounds"][0]["bore"]
    for row in bore["sweeps"]:
        blank = [a for a, m in zip(bore["positions_deg"], row, strict=True) if m is None]
        if blank:
            return blank
    return []


def _unfinished(typed: FormJob, language: Language) -> list[dict[str, str]]:
    """A remark for each sweep that was begun and does not count yet."""
    return [
        {
            "code": "sweep-unfinished",
            "level": "caution",
            "field": "",
            "label": language.say("level.caution"),
            "text": language.text(message),
        }
        for message in typed.unfinished
    ]


def _fault_text(fault: Fault, dial: Dial, language: Language) -> str:
    """A fault in words; a position is typed as a clock position, a reading as the dial shows it."""
    if fault.message.key != "fault.number":
        return fault.text(language)
    if ".positions_deg." in fault.field or fault.field.endswith(("at_deg", "aim_deg")):
        return language.text(Message("fault.position", fault.message.values))
    if isinstance(dial.turn, float) and _READING.search(fault.field):
        values = {**fault.message.values, "turn": dial.turn, "half": dial.turn / 2.0}
        return language.text(Message("fault.all_round", values))
    return fault.text(language)
