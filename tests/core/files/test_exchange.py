"""Jobs as files: what goes out comes back, and what is no file of ours is refused in words."""

from __future__ import annotations

import copy
import json
import random
from collections.abc import Callable
from typing import Any

import pytest

from sweepsheet.files.exchange import (
    LONGEST_FILE,
    MOST_JOBS,
    export_csv,
    export_file,
    import_file,
    upgraded,
)
from sweepsheet.files.readings_csv import COLUMNS, csv_of, data_of_csv
from sweepsheet.form.from_job import form_of
from sweepsheet.form.to_job import job_of
from sweepsheet.job.read import read_job
from sweepsheet.page import answer, handle_request
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.faults import InputError
from tests.cases.jobs import make_job, whole_job, with_face

Data = dict[str, Any]

WHOLE = {**form_of(whole_job()), "name": "Blue tractor", "checklist.crank_turns": "yes"}
HALF = {
    "name": "Half", "positions": "12 3 noon", "rounds.0.bore.sweeps.0.0": "4 or 5",
    "housing.depth": "=HYPERLINK(1)", "about.notes": "<b>two</b>\nlines", "chip.at": "1:30",
}  # fmt: skip


def saved(*forms: dict[str, str]) -> Data:
    shown = export_file(forms, ENGLISH)
    assert shown["state"] == "file", shown
    return shown


def opened(text: str) -> list[dict[str, str]]:
    shown = import_file(text, ENGLISH)
    assert shown["state"] == "imported", shown
    jobs: list[dict[str, str]] = shown["jobs"]
    return jobs


def refusal(text: str) -> str:
    shown = import_file(text, ENGLISH)
    assert shown["state"] == "refused"
    return str(shown["text"])


# Out and back ------------------------------------------------------------------------------


@pytest.mark.parametrize("form", [WHOLE, HALF, {"name": ""}])
def test_a_job_goes_out_and_comes_back(form: dict[str, str]) -> None:
    (back,) = opened(saved(form)["text"])
    assert {name: back.get(name, "") for name in form} == form


def test_a_choice_that_is_not_known_comes_back_blank() -> None:
    job = make_job((0.0, 1.0, 2.0, 1.0), housing={"pilot_bearing": None, "tilt_from": "rear"})
    (back,) = opened(json.dumps(job))
    assert (back["housing.pilot_bearing"], back["housing.tilt_from"]) == ("", "rear")


def test_several_jobs_go_into_one_file() -> None:
    shown = saved(WHOLE, HALF)
    assert shown["name"] == "sweepsheet-jobs.json"
    assert json.loads(shown["text"])["format"] == "sweepsheet-jobs"
    assert [job["name"] for job in opened(shown["text"])] == ["Blue tractor", "Half"]


def test_one_job_is_a_job_file_that_the_core_reads() -> None:
    shown = saved(WHOLE)
    assert shown["name"] == "sweepsheet-blue-tractor.json"
    assert read_job(json.loads(shown["text"])) == read_job(job_of(WHOLE).job)
    assert shown["told"] == "The job is saved."


def test_what_is_not_right_is_told_and_marked_at_its_field() -> None:
    typed = {f"rounds.0.bore.sweeps.0.{i}": text for i, text in enumerate(("0", "x", "2", "1"))}
    shown = saved(typed)
    assert shown["told"].endswith("One thing is missing or not right yet.")
    back = import_file(shown["text"], ENGLISH)
    assert back["text"].endswith("One thing is missing or not right yet.")
    (fault,) = answer(back["jobs"][0])["faults"]
    assert fault["field"] == "rounds.0.bore.sweeps.0.1"


def test_what_can_t_be_shown_is_replaced_so_that_the_file_opens() -> None:
    (back,) = opened(saved({"about.vehicle": "a\u202eb\x00\ud800"})["text"])
    assert back["about.vehicle"] == "a\ufffdb\ufffd\ufffd"


@pytest.mark.slow
def test_a_text_that_is_too_long_is_refused_before_it_is_saved() -> None:
    shown = export_file([{"about.notes": "n" * 10_001}], ENGLISH)
    assert shown["state"] == "refused"
    assert "about.notes" in shown["text"]
    assert export_file([{}] * (MOST_JOBS + 1), ENGLISH)["state"] == "refused"
    assert export_file([], ENGLISH)["state"] == "refused"
    notes = {"about.notes": "n" * 9000, "about.vehicle": "v" * 9000, "limits.source": "s" * 9000}
    assert export_file([notes] * MOST_JOBS, ENGLISH)["state"] == "refused"


def test_a_file_without_the_newer_keys_opens() -> None:
    (job,) = opened(json.dumps(make_job((0, 1, 2, 1))))
    assert job["name"] == ""
    assert not [name for name in job if name.startswith("checklist.")]


# Versions ----------------------------------------------------------------------------------


@pytest.mark.parametrize("version", [2, 3, 10**30])
@pytest.mark.parametrize("several", [False, True])
def test_a_newer_version_is_refused(version: int, *, several: bool) -> None:
    job = {**make_job((0, 1, 2, 1)), "version": version}
    data = {"format": "sweepsheet-jobs", "version": version, "jobs": [job]} if several else job
    assert "made by a newer Sweepsheet" in refusal(json.dumps(data))


@pytest.mark.parametrize("version", [0, -1, "1", True, None, 1.5, [], {}])
def test_what_never_was_a_version_is_refused(version: object) -> None:
    assert "no version" in refusal(json.dumps({**make_job((0, 1, 2, 1)), "version": version}))


def test_an_older_version_is_brought_up_step_by_step() -> None:
    """By a table in which each step leads to the next version."""
    steps: dict[int, Callable[[Data], Data]] = {
        1: lambda data: {**data, "b": data["a"]},
        2: lambda data: {**data, "c": data["b"]},
    }
    wanted = {"version": 3, "a": 1, "b": 1, "c": 1}
    assert upgraded({"version": 1, "a": 1}, 3, steps) == wanted
    assert upgraded({"version": 2, "a": 1, "b": 1}, 3, steps) == wanted
    assert upgraded({"version": 3}, 3, steps) == {"version": 3}
    with pytest.raises(InputError, match="newer"):
        upgraded({"version": 4}, 3, steps)


# Refused, or opened and marked -------------------------------------------------------------


def changed(path: str, value: object) -> str:
    """A whole job with one thing changed, as text."""
    data: Any = copy.deepcopy(whole_job())
    *parents, last = path.split(".")
    place = data
    for key in parents:
        place = place[int(key) if isinstance(place, list) else key]
    place[int(last) if isinstance(place, list) else last] = value
    return json.dumps(data)


@pytest.mark.parametrize(
    ("path", "value", "told"),
    [
        ("extra", 1, "not a field"), ("limits.__proto__", {}, "not a field"),
        ("constructor", {}, "not a field"), ("limits", [], "a group of fields"),
        ("limits.bore_offset", [1], "a number"), ("limits.bore_offset", {}, "a number"),
        ("rounds", [], "1 to 20"), ("rounds", {}, "a list"), ("rounds", None, "a list"),
        ("rounds.0", [], "a group"), ("rounds.0.bore", None, "a group"),
        ("rounds.0.bore.sweeps", [[0]] * 11, "1 to 10"),
        ("rounds.0.bore.sweeps.0", [0] * 9, "0 to 8"),
        ("rounds.0.bore.positions_deg", [0] * 201, "0 to 200"),
        ("rounds.0.bore.closing", [0] * 3, "0 to 2"),
        ("rounds.0.dowels", [{}], "2 to 2"), ("rounds.0.bore.contact", "beside", "one of"),
        ("rounds.0.bore.positions_deg", "12 3 6 9", "a list"),
        ("units", "furlong", "one of"), ("housing.pilot_bearing", "soap", "one of"),
        ("companions.1.kind", "pilot_bore", "twice"), ("companions.0.kind", None, "one of"),
        ("checklist", ["soap"], "one of"), ("name", "n" * 121, "120"), ("name", 5, "text"),
        ("about", {"vehicle": "a\u202eb"}, "can't be shown"),
        ("rounds.0.bore.sweeps.0.0", "\ud800", "can't be shown"),
        ("about", {"notes": "n" * 10_001}, "10000"),
        ("stock", {"dowel_offsets": None}, "a list"),
    ],
)  # fmt: skip
def test_what_has_no_place_in_the_form_is_refused(path: str, value: object, told: str) -> None:
    assert told in refusal(changed(path, value))


@pytest.mark.parametrize(
    ("path", "value", "field"),
    [
        ("rounds.0.bore.sweeps.0.0", "o", "rounds.0.bore.sweeps.0.0"),
        ("rounds.0.bore.sweeps.0.0", 10**400, "rounds.0.bore.sweeps.0.0"),
        ("rounds.0.bore.sweeps.0.0", True, "rounds.0.bore.sweeps.0.0"),
        ("rounds.0.bore.sweeps.0.0", 900, "rounds.0.bore.sweeps.0.0"),
        ("rounds.0.bore.positions_deg.1", 400, "positions"),
        ("rounds.0.bore.positions_deg.1", None, "positions"),
        ("rounds.0.face.radius", None, "face.radius"),
        ("limits.bore_offset", "five", "limits.bore_offset"),
        ("housing.bolts.2.radius", "far", "bolts.radius"),
        ("housing.bolts.2.at_deg", None, "bolts.at"),
        ("chip.at_deg", "=1+1", "chip.at"),
        ("companions.0.limit", -3, "companions.pilot_bore.limit"),
        ("about", {"notes": "n" * 2001}, "about.notes"),
    ],
)  # fmt: skip
def test_what_can_be_mended_is_opened_and_marked(path: str, value: object, field: str) -> None:
    shown = import_file(changed(path, value), ENGLISH)
    assert shown["state"] == "imported", shown["text"]
    assert "not right yet" in shown["text"]
    faults = answer(shown["jobs"][0])["faults"]
    assert field in [fault["field"] for fault in faults]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "neither"), ("hello", "neither"), ("[]", "neither"), ("null", "neither"),
        ("{", "not a job file"), ('{"format": "other"}', "neither"), ("{}", "neither"),
        ('{"format": "sweepsheet-job", "version": NaN}', "not a number"),
        ('{"format": "sweepsheet-job", "format": "sweepsheet-job"}', "twice"),
        ("{" * 100, "nested"), ('{"a": ' * 20 + "1" + "}" * 20, "nested"),
        (" " * (LONGEST_FILE + 1), "larger"),
        ('{"format": "sweepsheet-jobs", "version": 1, "jobs": []}', "One to 500"),
        ('{"format": "sweepsheet-jobs", "version": 1, "jobs": [1]}', "no job"),
        ('{"format": "sweepsheet-jobs", "version": 1, "jobs": 1}', "no job"),
        ('{"format": "sweepsheet-jobs", "version": 1, "jobs": [], "x": 1}', "no job"),
    ],
)  # fmt: skip
def test_import_failure(text: str, told: str) -> None:
    assert told in refusal(text)


def test_a_byte_order_mark_does_no_harm() -> None:
    assert opened("\ufeff" + json.dumps(make_job((0, 1, 2, 1))))


# CSV ---------------------------------------------------------------------------------------


def swept_only(form: dict[str, str]) -> Any:
    job = read_job(job_of(form).job)
    parts = [(part.kind, part.sweeps) for part in job.companions]
    return [(r.bore.sweeps, r.face and (r.face.sweeps, r.face.opposite)) for r in job.rounds], parts


def test_readings_go_out_as_csv_and_come_back() -> None:
    data = whole_job()
    data["rounds"][0]["face"]["opposite"] = data["rounds"][0]["face"]["sweeps"]
    data["rounds"][0]["bore"]["sweeps"][1][3] = None
    form = form_of(data) | {"name": "Blue"}
    shown = export_csv(form, ENGLISH)
    assert shown["name"] == "sweepsheet-blue-readings.csv"
    back = import_file(shown["text"], ENGLISH)
    assert "check limits" in back["text"]
    (again,) = back["jobs"]
    assert swept_only({**again, "face.radius": "3"}) == swept_only(form)


def test_a_csv_in_mm_with_semicolons_and_decimal_commas_opens() -> None:
    """As a spreadsheet of another country saves it."""
    text = csv_of(make_job((0, 0.125, 0.25, 0.125), units="metric"))
    rows = [line.split(",") for line in text.replace("\r\n", "\n").splitlines()]
    foreign = "\n".join(";".join(cell.replace(".", ",") for cell in row) for row in rows)
    (form,) = opened(foreign)
    assert form["units"] == "metric"
    assert form["rounds.0.bore.sweeps.0.1"] == "0.125"


@pytest.mark.parametrize("typed", ["=1+1", "+x", "-x", "@sum", "'=1", "''", "=", '"quoted"', "a,b"])
def test_a_text_is_no_formula_in_a_csv(typed: str) -> None:
    form = {"rounds.0.bore.sweeps.0.0": typed, "rounds.0.bore.sweeps.0.1": "-3"}
    text = export_csv(form, ENGLISH)
    cell = text["text"].splitlines()[1].split(",", 4)[4].strip('"')
    assert cell[0] not in "=+-@\t\r"
    assert ",-3," in text["text"]
    assert opened(text["text"])[0]["rounds.0.bore.sweeps.0.0"] == typed


HEAD = ",".join(COLUMNS)


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ([], "no readings"), (["1,bore,1,0,0,,thou,"], "7 cells"), (["1,soap,1,0,0,,thou"], "part"),
        (["1,bore,1,0,0,,inch"], "unit"), (["1,bore,1,0,0,,thou", "1,bore,1,90,0,,mm"], "all in"),
        (["0,bore,1,0,0,,thou"], "round"), (["21,bore,1,0,0,,thou"], "1 to 20"),
        (["1,bore,11,0,0,,thou"], "1 to 10"), (["1,bore,x,0,0,,thou"], "sweep"),
        (["1,bore,1,0,0,,thou"] * 2, "twice"), (["1,bore,1,,,0,thou"] * 2, "twice"),
        (["1,bore,1,,4,,thou"], "without a position"),
        (["1,bore,1,0,0,,thou"] * 30_001, "twice"), (["\n"] * 30_001, "30000 lines"),
        ([f"1,bore,1,{i},0,,thou" for i in range(201)], "0 to 200"),
    ],
)  # fmt: skip
def test_csv_failure(lines: list[str], told: str) -> None:
    assert told in refusal("\n".join([HEAD, *lines]))


def test_half_a_csv_is_opened_and_marked() -> None:
    """Face lines alone: the bore's are still wanted."""
    text = csv_of(with_face(make_job((0, 1, 2, 1)), (0, 1, 2, 1)))
    alone = "".join(line for line in text.splitlines(keepends=True) if ",bore," not in line)
    data = data_of_csv(alone)
    assert data["rounds"][0]["bore"]["sweeps"] == [[None] * 4]
    assert "not right yet" in import_file(alone, ENGLISH)["text"]


# Requests ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "request_",
    [
        {"export": {}},
        {"export": [1]},
        {"export": [{"a": 1}]},
        {"csv": []},
        {"import": 1},
        {},
        {"export": {"forms": [{"a": 1}], "pictures": []}},
        {"import": "{}"},
    ],
)
def test_no_request(request_: Data) -> None:
    with pytest.raises(InputError):
        handle_request(json.dumps(request_))


def test_requests() -> None:
    def ask(request: Data) -> Any:
        return json.loads(handle_request(json.dumps(request)))

    text = ask({"export": {"forms": [WHOLE], "pictures": []}})["text"]
    assert ask({"import": {"text": text, "here": []}})["jobs"][0]["name"] == "Blue tractor"
    assert ask({"csv": WHOLE})["text"].startswith(HEAD)


# By the thousand ---------------------------------------------------------------------------

ODD_TOKENS = (
    "null", "true", "NaN", "-Infinity", "1e999", "1e-999", "-0", "9" * 400, "9" * 5000, "[]", "{}",
    '""', '"=1+1"', '"<script>alert(1)</script>"', '"\\ud800"', '"\\u202e"', '"__proto__"',
    '"constructor"', '{"__proto__": 1}', '"\\u0000"', "[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]", "]", "}",
    '"a": 1, "a": 2', '"' + "x" * 3000 + '"', "0x10", "1.", "\u2028", "'", "//", "2", "1.5", "-1",
)  # fmt: skip
ODD_VALUES: tuple[Any, ...] = (
    None, True, -1, 0, 1e308, 10**30, 2, "", "x", "=cmd", "\u202e", [], {}, [[]], [None],
    "n" * 3000, {"a": 1}, [0] * 50, [0] * 300, 400, 1e-300, "12 3", "?", ",", "sweepsheet-job", 1.0,
)  # fmt: skip
ODD_KEYS = ("__proto__", "constructor", "toString", "x", "", "\ud800", "rounds", "format", "kind")


def spoil_text(rng: random.Random, text: str) -> str:
    """A character, a piece, or a token changed, doubled or taken out."""
    i, j = sorted(rng.randrange(len(text) + 1) for _ in range(2))
    match rng.randrange(6):
        case 0:
            return (
                text[:i] + chr(rng.choice((0, 9, 13, 34, 44, 61, 92, 123, 0x202E))) + text[i + 1 :]
            )
        case 1:
            return text[:i] + text[min(j, i + 40) :]
        case 2:
            return text[:i]
        case 3:
            return text[:j] + text[i:j][:200] + text[j:]
        case 4:
            return text[:i] + rng.choice(ODD_TOKENS) + text[i:]
        case _:
            # At a place where a value stands.
            places = [k for k, c in enumerate(text) if c in ":,["] or [0]
            k = rng.choice(places) + 1
            end = next((n for n in range(k, len(text)) if text[n] in ",]}\n"), len(text))
            return text[:k] + rng.choice(ODD_TOKENS) + text[end:]


def spoil_data(rng: random.Random, data: Any) -> str:
    """One value, anywhere in it, replaced, taken out, doubled, or with a key added."""
    data = copy.deepcopy(data)
    places = [data]
    while (
        isinstance(places[-1], dict | list)
        and places[-1]
        and (len(places) < 2 or rng.random() < 0.8)
    ):
        last = places[-1]
        places.append(
            last[rng.choice(list(last)) if isinstance(last, dict) else rng.randrange(len(last))]
        )
    groups = [place for place in places if isinstance(place, dict | list)]
    group = groups[-1]
    value = copy.deepcopy(rng.choice(ODD_VALUES))
    if isinstance(group, dict):
        key = rng.choice((*group, *ODD_KEYS))
        if rng.random() < 0.2:
            group.pop(key, None)
        else:
            group[key] = value
    elif group and rng.random() < 0.5:
        group[rng.randrange(len(group))] = value
    else:
        group.extend(copy.deepcopy(group[:1]) * rng.choice((1, 12, 60)))
    return json.dumps(data, allow_nan=True)


SMALL = json.loads(saved(HALF)["text"])
MIDDLE = with_face(make_job((0, 1, 2, 1), (0, 1, 2, 1), name="M", checklist=["end_float"]))
FILES = (SMALL, MIDDLE, {"format": "sweepsheet-jobs", "version": 1, "jobs": [SMALL, MIDDLE]})
CSVS = (csv_of(MIDDLE), csv_of(SMALL))


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(20))
def test_a_spoiled_file_is_opened_or_refused(seed: int) -> None:
    """A thousand each, none of which brings anything but an answer; opened ones can be asked."""
    rng = random.Random(seed)
    states = {"imported": 0, "refused": 0}
    for n in range(1000):
        text = rng.choice(CSVS) if n % 4 == 0 else spoil_data(rng, rng.choice(FILES))
        for _ in range((1, 0, 1, 0)[n % 4]):
            text = spoil_text(rng, text)
        shown = json.loads(handle_request(json.dumps({"import": {"text": text, "here": []}})))
        states[shown["state"]] += 1
        assert shown["text"]
        for form in shown.get("jobs", ()):
            assert all(isinstance(value, str) for value in form.values())
            assert not {"__proto__", "constructor"} & set(form)
    assert min(states.values()) > 80, states


@pytest.mark.slow
def test_spoiled_files_that_are_opened_can_be_answered_and_saved_again() -> None:
    rng = random.Random(99)
    tried = 0
    for _ in range(400):
        shown = import_file(spoil_data(rng, rng.choice(FILES[:2])), ENGLISH)
        for form in shown.get("jobs", ()):
            tried += 1
            assert answer(form)["state"] in ("answer", "faults", "waiting")
            text = saved(form)["text"]
            assert opened(text)[0] == opened(saved(opened(text)[0])["text"])[0]
    assert tried > 100


# What is here already -----------------------------------------------------------------------------


def beside(text: str, *here: dict[str, str]) -> dict[str, Any]:
    request = {"import": {"text": text, "here": list(here)}}
    found: dict[str, Any] = json.loads(handle_request(json.dumps(request)))
    return found


def test_a_file_that_is_read_twice_gives_no_doubles() -> None:
    """Typed otherwise, but the same; and what has changed since comes as another job."""
    first = form_of(whole_job()) | {"name": "van"}
    other = form_of(make_job((0, 1, 2, 1))) | {"name": "tractor"}
    text = export_file([first, other], ENGLISH)["text"]
    typed = other | {"rounds.0.bore.sweeps.0.1": "1.0"}
    again = beside(text, first, typed)
    assert (again["state"], again["jobs"]) == ("imported", [])
    assert again["text"] == "Already on this phone: 2."
    changed = beside(text, first, other | {"rounds.0.bore.sweeps.0.1": "2"})
    assert [job["name"] for job in changed["jobs"]] == ["tractor"]
    assert changed["text"] == "The job is opened as a new one. Already on this phone: 1."
    renamed = beside(text, first, other | {"name": "digger"})
    assert [job["name"] for job in renamed["jobs"]] == ["tractor"]
    assert len(beside(text)["jobs"]) == 2


def test_a_job_without_a_name_is_known_by_what_stands_in_it() -> None:
    """It has been given the file's name here."""
    form = form_of(make_job((0, 1, 2, 1)))
    text = export_file([form], ENGLISH)["text"]
    assert beside(text, form | {"name": "jobs.json"})["jobs"] == []


def test_two_alike_in_one_file_both_come() -> None:
    form = form_of(make_job((0, 1, 2, 1)))
    text = export_file([form, form], ENGLISH)["text"]
    assert len(beside(text)["jobs"]) == 2


@pytest.mark.parametrize("wrong", ["", [], {"text": "{}"}, {"text": 1, "here": []}, {"here": []}])
def test_what_is_no_file_beside_jobs_is_refused(wrong: object) -> None:
    with pytest.raises(InputError):
        handle_request(json.dumps({"import": wrong}))
