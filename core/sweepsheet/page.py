"""What the page asks: a filled-in form in, everything it shows back, as JSON text.

The page itself computes nothing and words nothing: it shows what comes from here. While readings
are still missing the answer is "waiting", with what is wanted next; where something typed is wrong
it is the faults, each with the field it belongs to.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import asdict
from typing import Any

from sweepsheet.drawing.depth_view import depth_view_of
from sweepsheet.drawing.dowel_view import dowel_view_of
from sweepsheet.drawing.flange_view import flange_view_of
from sweepsheet.drawing.housing import drawing_of
from sweepsheet.drawing.side_view import side_view_of
from sweepsheet.drawing.wave import wave_of
from sweepsheet.findings.advice import advice_for
from sweepsheet.findings.finding import Finding
from sweepsheet.findings.fitting import fitting_of
from sweepsheet.findings.job import findings_for
from sweepsheet.form.dial import Dial
from sweepsheet.form.form_job import FormJob
from sweepsheet.form.to_job import job_of
from sweepsheet.job.model import Job
from sweepsheet.job.read import read_job
from sweepsheet.job.strict_json import load_json
from sweepsheet.maths.units import SYSTEMS
from sweepsheet.report.glance import glance_of
from sweepsheet.report.rig import learned_of, rig_of
from sweepsheet.report.sheet import limit_line, sheet_of
from sweepsheet.solution import Solution, work_out
from sweepsheet.words.assemblies import worded
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.faults import Fault, InputError, refused
from sweepsheet.words.glossary import plain_words
from sweepsheet.words.languages import language_of
from sweepsheet.words.messages import ClockPosition, Language, Message

Form = Mapping[str, str]
Shown = dict[str, Any]

# A file within another text, every character of it escaped, or as many jobs as a file may hold.
LONGEST_REQUEST = 24_000_000

_READING = re.compile(r"\.(?:sweeps|opposite|closing)\.\d+")
# Faults that only say that a sweep is not yet typed to its end.
_NOT_YET = ("fault.few_readings", "fault.half_turn")


def handle_request(request: str) -> str:
    """The answer to a request, both as JSON text. Raises ``InputError`` only for no request.

    A request is one of these, each by its name; a form is ``{name: text, ...}``. Beside it stands
    the ``language`` of the answer, by its code; English where there is none, or one not known.

    - ``form``: a form, for the answer to it; ``share``: for its link and its sheet on paper.
    - ``link``: a fragment, for what it comes to; ``csv``: a form, for a file of its readings.
    - ``export``: ``{"forms": [form, ...], "pictures": [base64, ...]}``, for a file; ``import``:
      ``{"text": text, "here": [form, ...]}``, for the jobs in it that are not here yet.
    - ``practice``: a form, for the practice housing; ``guide``: ``{"form": form, "at":
      "rounds.0.bore"}``, for what leads through a sweep, ``"depth"`` through the lengths.
    - ``send_results``: ``{"set": text, "name": text, "work": [form, ...]}``, for a pupil's link;
      ``open_results``: a text of such links, for what they come to.
    - ``memory``: ``{"here": form, "others": [form, ...]}``, for what other jobs tell.
    - ``dial``: the reading of a dial in a photo (``picture.request``); ``film``: the stops of a
      sweep on film (``picture.film_request``).
    - ``rig_learned``: what the jobs of a rig taught; ``rig_out``: a form, ``rig_in``: a text, for a
      rig on its way.

    >>> json.loads(handle_request('{"form": {}}'))["state"]
    'waiting'
    >>> json.loads(handle_request('{"link": "1abc", "language": "en"}'))["state"]
    'refused'
    """
    asked = load_json(request, LONGEST_REQUEST)
    language = language_of(asked.get("language") if isinstance(asked, dict) else None)
    for name, (is_right, handle) in REQUESTS.items():
        if isinstance(asked, dict) and name in asked and is_right(asked[name]):
            return json.dumps(handle(asked[name], language), allow_nan=False)
    raise refused("fault.request")


# What can be asked ------------------------------------------------------------------------------
# Everybody waits for the first answer; what the others need is imported when they are asked.


def share(form: Form, language: Language = ENGLISH) -> Shown:
    """The link and the sheet on paper of a filled-in form, once it has an answer."""
    from sweepsheet.link.share import share_of  # noqa: PLC0415 - an answer can do without

    typed, language = job_of(form), _worded(form, language)
    job = _job(typed, language)
    return share_of(typed.job, work_out(job), language) if isinstance(job, Job) else job


def open_link(fragment: str, language: Language = ENGLISH) -> Shown:
    """What a link comes to."""
    from sweepsheet.link.share import open_link  # noqa: PLC0415 - an answer can do without

    return open_link(fragment, language)


def save_jobs(asked: Mapping[str, Any], language: Language = ENGLISH) -> Shown:
    """Jobs as a file, with what pictures of their photos are at hand."""
    from sweepsheet.files.exchange import export_file  # noqa: PLC0415 - an answer can do without

    return export_file(asked["forms"], language, asked["pictures"])


def save_readings(form: Form, language: Language = ENGLISH) -> Shown:
    """The readings of a job as CSV."""
    from sweepsheet.files.exchange import export_csv  # noqa: PLC0415 - an answer can do without

    return export_csv(form, language)


def open_file(asked: Mapping[str, Any], language: Language = ENGLISH) -> Shown:
    """The jobs in a file that are not on the phone yet."""
    from sweepsheet.files.exchange import import_file  # noqa: PLC0415 - an answer can do without

    return import_file(asked["text"], language, asked["here"])


def practise(form: Form, language: Language = ENGLISH) -> Shown:
    """The practice housing, and what the readings taken of it come to."""
    from sweepsheet.practice.page import practise as practice_of  # noqa: PLC0415 - the main page can do without

    practised = practice_of(form, language)
    answered = None if practised.form is None else answer(practised.form, language)
    return {"practice": practised.shown, "answer": answered}


def send_results(asked: Mapping[str, Any], language: Language = ENGLISH) -> Shown:
    """A pupil's work on a set of exercises, as a link."""
    from sweepsheet.link.results import send_results as sent  # noqa: PLC0415 - the main page can do without

    return sent(asked, language)


def open_results(lines: str, language: Language = ENGLISH) -> Shown:
    """What pupils' links come to."""
    from sweepsheet.link.results import open_results as opened  # noqa: PLC0415 - the main page can do without

    return opened(lines, language)


def guide_sweep(asked: Mapping[str, Any], language: Language = ENGLISH) -> Shown:
    """What leads through a sweep, position by position."""
    worded = _worded(asked["form"], language)
    if asked["at"] == "depth":
        from sweepsheet.guide.lengths import guide_lengths  # noqa: PLC0415 - the same

        return guide_lengths(worded)
    from sweepsheet.guide.steps import guide  # noqa: PLC0415 - an answer can do without

    return guide(asked["form"], asked["at"], worded)


def other_jobs(asked: Mapping[str, Any], language: Language = ENGLISH) -> Shown:
    """What other jobs tell of such a housing."""
    from sweepsheet.memory.page import memory  # noqa: PLC0415 - an answer can do without

    return memory(asked, _worded(asked["here"], language))


def read_photo(asked: Mapping[str, Any], language: Language = ENGLISH) -> Shown:
    """The reading of a dial from its photo; its scale and the first reading may be typed texts.

    The form that they stand beside tells how the dial is numbered.
    """
    from sweepsheet.form.dial_photo import typed_dial  # noqa: PLC0415 - an answer can do without
    from sweepsheet.picture.request import answer_dial  # noqa: PLC0415 - an answer can do without

    numbers = typed_dial(asked)
    if isinstance(numbers, str):
        text = language.say(f"picture.refused.{numbers}")
        return {"state": "refused", "code": numbers, "text": text}
    return answer_dial(numbers, language)


def stops_on_film(asked: Mapping[str, Any], language: Language = ENGLISH) -> Shown:
    """The stops of a sweep on film."""
    from sweepsheet.picture.film_request import answer_film  # noqa: PLC0415 - an answer can do without

    return answer_film(asked, language)


def rig_out(form: Form, language: Language = ENGLISH) -> Shown:
    """The rig in a form, to be handed on."""
    from sweepsheet.link.rig_link import hand_on  # noqa: PLC0415 - an answer can do without

    return hand_on(form, language)


def rig_in(text: str, language: Language = ENGLISH) -> Shown:
    """The rig in a file or a link."""
    from sweepsheet.link.rig_link import open_rig  # noqa: PLC0415 - an answer can do without

    return open_rig(text, language)


def answer(form: Form, language: Language = ENGLISH) -> Shown:
    """What the page shows for a filled-in form.

    ``state`` is ``waiting``, ``faults`` or ``answer``; ``limit`` is the limit as offset and as TIR,
    ``stage`` where in the job it is, ``marks`` what the rows are called that stand by their number.
    """
    typed, language = job_of(form), _worded(form, language)
    measuring = "recheck" if len(typed.job["rounds"]) > 1 else "bore"
    shown: dict[str, Any] = {"limit": _limit(typed, language), "stage": measuring}
    shown["marks"] = _marks(typed, language)
    job = _job(typed, language)
    if not isinstance(job, Job):
        return shown | job
    solution = work_out(job)
    findings = findings_for(solution)
    glance = glance_of(solution, findings, language)
    sheet = asdict(sheet_of(solution, findings, language))
    for remark, each in zip(sheet["remarks"], findings, strict=True):
        remark["field"] = typed.form_name(remark["field"])
        remark["place"] = glance.place_of(each.code, each.level)
    sheet["remarks"] = [*_unfinished(typed, language), *sheet["remarks"]]
    return shown | {
        "state": "answer",
        "sheet": sheet,
        "glance": {
            "actions": [asdict(action) for action in glance.actions],
            "lists": list(glance.lists),
            "not_entered": glance.not_entered,
        },
        "stage": glance.stage,
        "words": _words(sheet["sections"], language, job.limits.confidence),
        "drawing": drawing_of(solution, language),
        "side_view": side_view_of(solution, language),
        "flange_view": flange_view_of(solution, language),
        "depth_view": depth_view_of(solution, language),
        "dowel_view": _dowel_view(solution, findings, language),
        "wave": wave_of(solution, language),
        "order": _order(solution, findings, language),
        "rig": rig_of(solution, language),
    }


def _worded(form: Form, language: Language) -> Language:
    """The language as it speaks of what is put on what."""
    return worded(language, form.get("housing.assembly"))


def _dowel_view(solution: Solution, findings: tuple[Finding, ...], language: Language) -> str:
    """The drawing of the dowels that the steps speak of; empty where they speak of none."""
    fitting = fitting_of(advice_for(solution, findings), solution)
    holes = solution.job.housing.dowel_holes
    return "" if fitting is None else dowel_view_of(fitting.dowels, fitting.now, holes, language)


def _order(solution: Solution, findings: tuple[Finding, ...], language: Language) -> Shown | None:
    """The work order; ``None`` for a job that is not surely out."""
    if not solution.surely_out:
        return None
    from sweepsheet.report.order import order_of  # noqa: PLC0415 - most answers can do without

    return order_of(solution, findings, language)


def _marks(typed: FormJob, language: Language) -> list[str]:
    """What each mark is called, where the readings stand by their marks."""
    marks = typed.marks
    if marks is None:
        return []
    return [language.text(marks.label(i)) for i in range(len(marks.positions))]


def _words(sections: list[dict[str, Any]], language: Language, confidence: float) -> dict[str, Any]:
    """What the figures of the bore and of each section are."""
    words = plain_words(["bore", *(each["name"] for each in sections)], language, confidence)
    return {part: [asdict(word) for word in listed] for part, listed in words.items()}


def _job(typed: FormJob, language: Language) -> Job | dict[str, Any]:
    """The job that was typed; else what is shown instead: what is missing, or what is wrong."""
    of_marks = None if typed.marks is None else typed.marks.fault
    found: tuple[Fault, ...] = tuple(fault for fault in (typed.dial.fault, of_marks) if fault)
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
            "place": "",
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


# The requests -----------------------------------------------------------------------------------


def _is_text(asked: object) -> bool:
    return isinstance(asked, str)


def _is_data(asked: object) -> bool:
    return isinstance(asked, dict)


def _is_form(asked: object) -> bool:
    return isinstance(asked, dict) and all(isinstance(text, str) for text in asked.values())


def _are_forms(asked: object) -> bool:
    return isinstance(asked, list) and all(_is_form(form) for form in asked)


def _are_forms_with_pictures(asked: object) -> bool:
    if not isinstance(asked, dict) or not _are_forms(asked.get("forms")):
        return False
    pictures = asked.get("pictures")
    return isinstance(pictures, list) and all(map(_is_text, pictures))


def _is_file_beside(asked: object) -> bool:
    if not isinstance(asked, dict) or not _is_text(asked.get("text")):
        return False
    return _are_forms(asked.get("here"))


def _is_sweep(asked: object) -> bool:
    return isinstance(asked, dict) and _is_form(asked.get("form")) and _is_text(asked.get("at"))


def _are_jobs(asked: object) -> bool:
    return (
        isinstance(asked, dict) and _is_form(asked.get("here")) and _are_forms(asked.get("others"))
    )


def _is_work(asked: object) -> bool:
    if not isinstance(asked, dict) or not _are_forms(asked.get("work")):
        return False
    return _is_text(asked.get("set")) and _is_text(asked.get("name"))


# What can be asked for, by its name: what must stand beside the name, and who answers.
REQUESTS: dict[str, tuple[Callable[[object], bool], Callable[[Any, Language], Shown]]] = {
    "form": (_is_form, answer),
    "share": (_is_form, share),
    "link": (_is_text, open_link),
    "export": (_are_forms_with_pictures, save_jobs),
    "csv": (_is_form, save_readings),
    "import": (_is_file_beside, open_file),
    "practice": (_is_form, practise),
    "send_results": (_is_work, send_results),
    "open_results": (_is_text, open_results),
    "guide": (_is_sweep, guide_sweep),
    "memory": (_are_jobs, other_jobs),
    "dial": (_is_data, read_photo),
    "film": (_is_data, stops_on_film),
    "rig_learned": (_is_data, learned_of),
    "rig_out": (_is_form, rig_out),
    "rig_in": (_is_text, rig_in),
}
