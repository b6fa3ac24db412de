"""Jobs as files and back: nothing that was typed is lost, nothing foreign comes in.

One job is a job file, several are a file of job files, readings alone are a CSV. What comes from
outside is either opened whole, as the texts of the form, or refused whole, in words.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from sweepsheet.files.pictures import KEY, LONGEST_PICTURES, put_pictures, taken_pictures
from sweepsheet.files.readings_csv import csv_of, data_of_csv, is_csv
from sweepsheet.files.shape import check_shape
from sweepsheet.form.from_job import form_of
from sweepsheet.form.to_job import draft_of, job_of
from sweepsheet.job.fields import is_harmful, shown
from sweepsheet.job.model import SECTIONS, SETTINGS
from sweepsheet.job.read import FORMAT, LONGEST_NAME, VERSION, read_job
from sweepsheet.job.strict_json import load_json
from sweepsheet.maths.units import INCH, SYSTEMS, UnitSystem
from sweepsheet.words.faults import InputError, refused
from sweepsheet.words.messages import Language

JOBS_FORMAT = "sweepsheet-jobs"
MOST_JOBS = 500
# Without the pictures that it may carry, and with them.
LONGEST_JOBS = 2_000_000
LONGEST_FILE = LONGEST_JOBS + LONGEST_PICTURES
DEEPEST_FILE = 14
_FAULTS_TOLD = 3

Form = Mapping[str, str]
Data = dict[str, Any]

# What makes a job file of one version into one of the next, by the version it is of.
UPGRADES: dict[int, Callable[[Data], Data]] = {}


# To a file ---------------------------------------------------------------------------------


def export_file(forms: Sequence[Form], language: Language, pictures: Sequence[str] = ()) -> Data:
    """One job as a job file, several as a file of them: its name, its text, and what to know.

    ``pictures`` are those of its photos that are at hand, as base64. Refused, in words, is only
    what could not be opened again: too many jobs, too long a text.
    """
    drafts = [_draft(form) for form in forms]
    try:
        if not 1 <= len(drafts) <= MOST_JOBS:
            raise refused("file.many", high=MOST_JOBS, got=len(drafts))
        for draft in drafts:
            check_shape(draft)
        jobs = {"format": JOBS_FORMAT, "version": VERSION, "jobs": drafts}
        one = len(drafts) == 1
        data = drafts[0] if one else jobs
        if len(_json(data).encode()) > LONGEST_JOBS:
            raise refused("file.large", high=LONGEST_JOBS)
        put_pictures(data, pictures)
        text = _json(data)
    except InputError as error:
        return _asrefused(error, language)
    told = _told("file.saved" if one else "file.saved_all", forms, language)
    told += _told_of_photos(drafts, pictures, language)
    name = file_name(drafts[0].get("name", "") or "job" if one else "jobs")
    return {"state": "file", "name": f"{name}.json", "text": f"{text}\n", "told": told}


def _json(data: Data) -> str:
    return json.dumps(data, ensure_ascii=False, allow_nan=False)


def _told_of_photos(drafts: Sequence[Data], pictures: Sequence[str], language: Language) -> str:
    """How many pictures are in a file, and whether any are missing."""
    names = {photo["hash"] for draft in drafts for photo in draft.get("photos", ())}
    told = [language.say("file.pictures", n=len(pictures))] if pictures else []
    if missing := len(names) - len(pictures):
        told.append(language.say("file.pictures_missing", n=missing))
    return "".join(f" {each}" for each in told)


def export_csv(form: Form, language: Language) -> Data:
    """The readings of a job as CSV."""
    draft = _draft(form)
    try:
        check_shape(draft)
    except InputError as error:
        return _asrefused(error, language)
    name = f"{file_name(draft.get('name', '') or 'job')}-readings.csv"
    told = language.say("file.csv_saved")
    return {"state": "file", "name": name, "text": csv_of(draft), "told": told}


def file_name(name: str) -> str:
    """A name for a file after that of a job: letters, digits and hyphens alone.

    >>> file_name("Blue tractor, Ørsted"), file_name("../../?")
    ('sweepsheet-blue-tractor-ørsted', 'sweepsheet-job')
    """
    words = re.sub(r"[\W_]+", "-", name[:60].lower()).strip("-")
    return f"sweepsheet-{words or 'job'}"


def _draft(form: Form) -> Data:
    clean = {name: "".join(map(_harmless, text)) for name, text in form.items()}
    clean["name"] = clean.get("name", "")[:LONGEST_NAME]
    return draft_of(clean)


def _harmless(character: str) -> str:
    return "\N{REPLACEMENT CHARACTER}" if is_harmful(character) else character


# From a file -------------------------------------------------------------------------------


def import_file(text: str, language: Language, here: Sequence[Form] = ()) -> Data:
    """The jobs in the text of a file, as texts of the form; or why it is refused.

    What is ``here`` already, to the last reading and by the same name, does not come a second time.
    """
    try:
        # Only a file that carries pictures may be so long.
        longest = LONGEST_FILE if f'"{KEY}"' in text else LONGEST_JOBS
        if len(text) > longest:
            raise refused("file.large", high=longest)
        from_csv = is_csv(text)
        jobs, pictures = ([data_of_csv(text)], []) if from_csv else _jobs_of(text)
        if len(text) - sum(map(len, pictures)) > LONGEST_JOBS:
            raise refused("file.large", high=LONGEST_JOBS)
        forms = [form_of(check_shape(data)) for data in jobs]
    except InputError as error:
        return _asrefused(error, language)
    known = set(map(_key, here))
    known |= {("", content) for _, content in known}
    new = [form for form in forms if _key(form) not in known]
    told = language.say("file.here", n=len(forms) - len(new)) if len(new) < len(forms) else ""
    if new:
        key = "file.csv_opened" if from_csv else "file.opened"
        opened = _told(key if len(new) == 1 else "file.opened_all", new, language)
        told = f"{opened} {told}".strip()
    named = [{"name": "", **form} for form in new]
    return {"state": "imported", "jobs": named, "text": told, "pictures": pictures}


def _key(form: Form) -> tuple[str, str]:
    """A job by its name, if any, and by all else that stands in it, however it was typed."""
    data = _draft(form_of(_draft(form)))
    units = SYSTEMS.get(data.get("units", ""), INCH)
    for section in ("about", *SECTIONS):
        # What the page puts into a field that nobody touched is as good as a blank.
        data[section] = {
            key: value
            for key, value in (data.get(section) or {}).items()
            if value not in (None, [], "") and not _is_usual(f"{section}.{key}", value, units)
        }
    name = data.pop("name", "")
    data["units"] = data.get("units", INCH.name)
    content = {key: each for key, each in data.items() if each}
    return name, json.dumps(content, sort_keys=True)


def _is_usual(path: str, value: object, units: UnitSystem) -> bool:
    setting = SETTINGS.get(path)
    usual = None if setting is None else setting.usual_in(units)
    return value == (list(usual) if isinstance(usual, tuple) else usual)


def _jobs_of(text: str) -> tuple[list[Data], list[str]]:
    """The job files in a text, in our version, and the pictures that it carries."""
    if not text.lstrip("\ufeff \t\r\n").startswith("{"):
        raise refused("file.foreign")
    data = load_json(text, LONGEST_FILE, DEEPEST_FILE)
    if not isinstance(data, dict) or data.get("format") not in (FORMAT, JOBS_FORMAT):
        raise refused("file.foreign")
    pictures = taken_pictures(data)
    if data["format"] == FORMAT:
        return [upgraded(data)], pictures
    _check_version(data.get("version"), VERSION)
    jobs = data.get("jobs")
    if set(data) != {"format", "version", "jobs"} or not isinstance(jobs, list):
        raise refused("file.jobs")
    if not 1 <= len(jobs) <= MOST_JOBS:
        raise refused("file.many", high=MOST_JOBS, got=len(jobs))
    for job in jobs:
        if not isinstance(job, dict) or job.get("format") != FORMAT:
            raise refused("file.jobs")
    return [upgraded(job) for job in jobs], pictures


def upgraded(
    data: Data, wanted: int = VERSION, upgrades: Mapping[int, Callable[[Data], Data]] = UPGRADES
) -> Data:
    """The data of a job file of this or an older version, as one of the wanted version."""
    _check_version(data.get("version"), wanted)
    for version in range(int(data["version"]), wanted):
        data = {**upgrades[version](data), "version": version + 1}
    return data


def _check_version(version: object, wanted: int) -> None:
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise refused("file.version", got=shown(version))
    if version > wanted:
        raise refused("file.newer", got=shown(version), wanted=wanted)


# In words ----------------------------------------------------------------------------------


def _wrong(form: Form) -> int:
    """How many things in a form are not right yet."""
    try:
        read_job(job_of(form).job)
    except InputError as error:
        return len(error.faults)
    return 0


def _told(key: str, forms: Sequence[Form], language: Language) -> str:
    """What was done, and how many things in the jobs are not right yet."""
    told = language.say(key, n=len(forms))
    wrong = sum(_wrong(form) for form in forms)
    if not wrong:
        return told
    rest = language.say("file.one_wrong") if wrong == 1 else language.say("file.wrong", n=wrong)
    return f"{told} {rest}"


def _asrefused(error: InputError, language: Language) -> Data:
    """Why it is refused: the first few faults, each with its place."""
    told = [
        f"{fault.field}: {fault.text(language)}" if fault.field else fault.text(language)
        for fault in error.faults[:_FAULTS_TOLD]
    ]
    more = len(error.faults) - len(told)
    if more:
        told.append(language.say("file.more", n=more))
    return {"state": "refused", "text": " · ".join(told)}
