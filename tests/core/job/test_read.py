"""From the job file to a checked job: defaults, and every fault with its field."""

from __future__ import annotations

import copy
import math
import operator
from collections.abc import Callable, Iterable
from typing import Any

import pytest

from sweepsheet import InputError, solve
from sweepsheet.job.model import SECTIONS, SETTINGS, Chip, Dowel, Hole
from sweepsheet.job.read import read_job
from sweepsheet.job.sag import sag_test
from sweepsheet.maths.units import INCH, METRIC
from tests.cases.jobs import Data, make_job
from tests.cases.settings import every_setting

# Every field there is, with a value that is not its default.
FULL: Data = {
    "format": "sweepsheet-job",
    "version": 1,
    "units": "inch",
    "about": {
        "shop": "z",
        "vehicle": "a", "engine": "b", "gearbox": "c", "housing": "d", "technician": "e",
        "customer": "f", "date": "2000-01-01", "notes": "two\nlines",
    },
    **every_setting(),
    "chip": {"joint": "rear", "height": 3.0, "at_deg": -45, "radius": 8.0},
    "companions": [
        {
            "kind": "crank_flange", "contact": "outside", "plunger": "rearward", "limit": 2.0,
            "positions_deg": [0, 120, 240], "sweeps": [[0, 1, 2]], "closing": [0.5],
        },
    ],
    "rounds": [
        {
            "name": "first",
            "dowels": [{"offset": 7, "aim_deg": 370 - 360}, {"offset": 14, "aim_deg": -90}],
            "bore": {
                "contact": "outside", "positions_deg": [0, 120, -120, 300],
                "sweeps": [[0, 1, 2, None], [1, 2, 3, 4]], "closing": [None, 0.5],
            },
            "face": {
                "radius": 3.0, "plunger": "rearward", "end_float": "held",
                "positions_deg": [0, 90, 180, 225, 300],
                "sweeps": [[0, 1, 2, 1, 0], [0, 1, 3, None, 0]], "closing": [0, None],
                "opposite": [[0, -1, -2, None, 0], [0, -1, -3, -1, 0]],
            },
        }
    ],
}  # fmt: skip

FULL["indicator"]["sag"] = 1.5
FULL["housing"] |= {
    "dowel_holes": [{"at_deg": 270, "radius": 7.0}, {"at_deg": -270, "radius": 7.5}],
    "bolts": [{"at_deg": 45, "radius": 8.0}],
}


def put(data: Data, path: str, value: object) -> Data:
    """A copy of a job with one field set, or left out for ``...``."""
    changed = copy.deepcopy(data)
    *way, last = path.split(".")
    part: Any = changed
    for key in way:
        part = part[int(key)] if isinstance(part, list) else part[key]
    if value is ...:
        del part[last]
    else:
        part[int(last) if isinstance(part, list) else last] = value
    return changed


def faults_of(data: object) -> list[tuple[str, str]]:
    with pytest.raises(InputError) as caught:
        read_job(data)
    return [(fault.field, fault.text()) for fault in caught.value.faults]


def leaves(part: object, path: str = "") -> list[tuple[str, object]]:
    """Every single value below a part, with its path."""
    items: Any
    if isinstance(part, dict):
        items = part.items()
    elif isinstance(part, list):
        items = enumerate(part)
    else:
        return [(path, part)]
    found = []
    for key, value in items:
        found.extend(leaves(value, f"{path}.{key}" if path else str(key)))
    return found


# Good jobs ---------------------------------------------------------------------------------


def test_every_field_is_read() -> None:
    job = read_job(FULL)
    assert job.units is INCH
    assert job.about["notes"] == "two\nlines"
    wrong = []
    for path, setting in SETTINGS.items():
        section, _, key = path.partition(".")
        wanted = FULL[section][key]
        if setting.kind == "sizes":
            wanted = tuple(sorted({size for size in wanted if size}))
        if operator.attrgetter(path)(job) != wanted:
            wrong.append(path)
    assert wrong == []
    assert job.indicator.sag == sag_test([1.5])
    assert job.housing.dowel_holes == (Hole(270.0, 7.0), Hole(90.0, 7.5))
    assert job.housing.bolts == (Hole(45.0, 8.0),)
    assert job.chip == Chip("rear", 3.0, 315.0, 8.0)
    (part,) = job.companions
    assert (part.kind, part.contact, part.plunger) == ("crank_flange", "outside", "rearward")
    assert (part.limit, part.sweeps.closing, part.is_face) == (2.0, (0.5,), False)
    (each,) = job.rounds
    assert each.name == "first"
    assert each.dowels == (Dowel(7.0, 10.0), Dowel(14.0, 270.0))
    assert each.bore.contact == "outside"
    assert each.bore.sweeps.positions_deg == (0.0, 120.0, 240.0, 300.0)
    assert each.bore.sweeps.readings == ((0.0, 1.0, 2.0, None), (1.0, 2.0, 3.0, 4.0))
    assert each.bore.sweeps.closing == (None, 0.5)
    assert each.face is not None
    assert (each.face.radius, each.face.plunger) == (3.0, "rearward")
    assert each.face.end_float == "held"
    assert each.face.opposite == ((0, -1, -2, None, 0), (0, -1, -3, -1, 0))


@pytest.mark.parametrize(("name", "units"), [("inch", INCH), ("metric", METRIC)])
def test_every_field_but_the_readings_has_its_default(name: str, units: object) -> None:
    small = {
        "format": "sweepsheet-job", "version": 1, "units": name,
        "rounds": [{"bore": {"sweeps": [[0, 1, 2, 1]]}}, {"bore": {"sweeps": [[0, 1, 2, 1]]}}],
    }  # fmt: skip
    job = read_job(small)
    assert job.units is units
    assert set(job.about.values()) == {""}
    usual = {path: setting.usual_in(job.units) for path, setting in SETTINGS.items()}
    usual["indicator.sag_allowance"] = 3.0 if name == "inch" else 0.076  # as the holder has it
    got = {
        path: getattr(getattr(job, path.partition(".")[0]), path.partition(".")[2])
        for path in usual
    }
    assert got == usual
    assert (job.indicator.sag, job.housing.dowel_holes, job.housing.bolts) == (None, None, ())
    assert [each.name for each in job.rounds] == ["as found", "round 2"]
    first = job.rounds[0]
    assert first.dowels == (Dowel(0.0, 0.0), Dowel(0.0, 0.0))
    assert first.bore.contact == "inside"
    assert first.bore.sweeps.positions_deg == (0.0, 90.0, 180.0, 270.0)
    assert first.bore.sweeps.closing == (None,)
    assert first.face is None
    assert (job.chip, job.companions) == (None, ())


def test_what_is_usual() -> None:
    """The figures that stand in the form before anything is typed; common practice, no source."""
    usual = {path: each.usual_in(INCH) for path, each in SETTINGS.items() if each.usual is not None}
    assert usual == {
        "limits.bore_offset": 5.0, "limits.face_runout": 5.0, "limits.confidence": 0.95,
        "limits.source": "", "indicator.step": 0.5, "indicator.accuracy": 0.5,
        "indicator.repeatability": 0.25, "indicator.plus_when": "plunger_in",
        "indicator.contact_angle_deg": 0.0, "indicator.angle_setting_deg": 5.0,
        "indicator.rig": "", "indicator.sag_date": "", "indicator.sag_bar": "",
        "crank.axis": "horizontal", "crank.lift": 0.0, "housing.dowel_clearance": 1.0,
        "housing.swept_bore": "housing",
        "depth.to_pilot": 0.0, "depth.added": 0.0, "depth.engine_pm": 0.01,
        "depth.gearbox_pm": 0.005,
        "stock.dowel_offsets": (7.0, 14.0, 21.0), "stock.aim_setting_deg": 5.0,
        "stock.aim_for": "bore", "stock.shim_thicknesses": (),
    }  # fmt: skip
    metric = {path: each.usual_in(METRIC) for path, each in SETTINGS.items()}
    assert (metric["limits.bore_offset"], metric["limits.face_runout"]) == (0.127, 0.127)
    assert (metric["indicator.step"], metric["indicator.repeatability"]) == (0.01, 0.005)
    assert metric["stock.dowel_offsets"] == (0.178, 0.356, 0.533)


def test_a_face_and_a_companion_have_their_defaults() -> None:
    """A crank is free to move endwise until someone says otherwise."""
    sweep = {"sweeps": [[0, 1, 2, 1]]}
    job = read_job(
        {
            **make_job((0, 1, 2, 1)),
            "rounds": [{"bore": sweep, "face": {"radius": 3, **sweep}}],
            "companions": [{"kind": "flywheel_face", **sweep}],
            "chip": {"height": 1, "at_deg": 0, "radius": 8},
        }
    )
    face = job.rounds[0].face
    assert face is not None
    assert (face.plunger, face.end_float, face.opposite) == ("forward", "free", None)
    (part,) = job.companions
    assert (part.contact, part.plunger, part.limit, part.is_face) == (
        "inside",
        "forward",
        None,
        True,
    )
    assert job.chip == Chip("front", 1.0, 0.0, 8.0)


@pytest.mark.parametrize("section", [
    "about", "limits", "indicator", "crank", "housing", "stock", "chip", "companions",
])  # fmt: skip
def test_a_section_that_is_null_has_its_defaults(section: str) -> None:
    job = make_job((0, 1, 2, 1))
    job.pop(section, None)
    assert read_job({**job, section: None}) == read_job(job)


def test_inch_is_the_default() -> None:
    assert read_job(make_job((0, 1, 2, 1))).units is INCH


NULLABLE = (
    *(path for path, setting in SETTINGS.items() if setting.nullable),
    "indicator.sag", "housing.dowel_holes", "chip", "companions", "companions.0.limit",
    "companions.0.closing", "rounds.0.face.opposite", "rounds.0.face.opposite.1.3", "rounds.0.face",
    "rounds.0.bore.closing", "rounds.0.bore.closing.1", "rounds.0.bore.sweeps.1.3",
)  # fmt: skip


def test_null_means_not_known() -> None:
    full = read_job(FULL)
    told = [path for path in NULLABLE if path != "housing.assembly"]  # null in the full one
    assert [path for path in told if read_job(put(FULL, path, None)) == full] == []


def test_a_whole_number_version_may_be_written_as_it_likes() -> None:
    assert read_job(put(FULL, "version", 1.0)) == read_job(FULL)


# Bad jobs ----------------------------------------------------------------------------------

NUMBERS = [path for path, value in leaves(FULL) if isinstance(value, int | float)]
TEXTS = [path for path, value in leaves(FULL) if isinstance(value, str) and path != "format"]
CHOICES = {
    *(path for path, setting in SETTINGS.items() if setting.kind == "choice"),
    "units", "rounds.0.bore.contact", "rounds.0.face.plunger", "rounds.0.face.end_float",
    "chip.joint", "companions.0.kind", "companions.0.contact", "companions.0.plunger",
}  # fmt: skip


def refused(paths: Iterable[str], value: object, phrase: Callable[[str], str]) -> list[object]:
    """The places that do not refuse a value at themselves, there only, and in these words."""
    wrong: list[object] = []
    for path in paths:
        found = faults_of(put(FULL, path, value))
        if [field for field, _ in found] != [path] or phrase(path) not in found[0][1]:
            wrong.append((path, found))
    return wrong


def test_a_number_failure() -> None:
    """Every number in the job refuses what is none, at its own field and nowhere else."""
    places = [path for path in NUMBERS if path not in ("version", "indicator.sag")]
    assert refused(places, "o", lambda _: ", not ") == []


@pytest.mark.parametrize("value", [True, [1], {"a": 1}, math.nan, math.inf, -math.inf, 10**400])
@pytest.mark.parametrize("path", ["housing.depth", "rounds.0.bore.sweeps.0.1"])
def test_what_is_no_number_failure(path: str, value: object) -> None:
    assert refused([path], value, lambda _: ", not ") == []


@pytest.mark.parametrize(
    ("value", "field"),
    [
        ("o", "indicator.sag"), (True, "indicator.sag"), ({"a": 1}, "indicator.sag"),
        (-1, "indicator.sag"), ([2.0, "o"], "indicator.sag.1"), ([2.0, -1.0], "indicator.sag.1"),
        ([1.0] * 13, "indicator.sag"),
    ],
)  # fmt: skip
def test_a_sag_test_failure(value: object, field: str) -> None:
    """One number or the tries of a test; a try is refused at its own place."""
    assert [at for at, _ in faults_of(put(FULL, "indicator.sag", value))] == [field]


def test_a_sag_test_has_one_try_or_several() -> None:
    tests = [read_job(put(FULL, "indicator.sag", v)).indicator.sag for v in (1.5, [1, 2])]
    assert tests == [sag_test([1.5]), sag_test([1.0, 2.0])]
    nothings: list[object] = [[], None]
    for nothing in nothings:
        assert read_job(put(FULL, "indicator.sag", nothing)).indicator.sag is None


@pytest.mark.parametrize(
    ("units", "holder", "most"),
    [
        ("inch", "bracket", 1.0),
        ("inch", None, 3.0),
        ("inch", "jointed_arm", 5.0),
        ("metric", "short_arm", 0.076),
    ],
)
def test_what_a_holder_usually_sags_counts_where_nothing_was_typed(
    units: str, holder: str | None, most: float
) -> None:
    """Common practice, no source."""
    plain = make_job((0, 1, 2, 1), units=units, indicator={"holder": holder})
    typed = make_job((0, 1, 2, 1), units=units, indicator={"holder": holder, "sag_allowance": 2})
    assert read_job(plain).indicator.sag_allowance == most
    assert read_job(typed).indicator.sag_allowance == 2.0


def test_a_text_failure() -> None:
    values: list[object] = [5, False, ["a"]]
    for value in values:
        wrong = refused(TEXTS, value, lambda p: "one of" if p in CHOICES else "enter text")
        assert wrong == []


def test_a_text_is_not_null_failure() -> None:
    """But for what may well not be known."""
    places = [path for path in TEXTS if path not in NULLABLE]
    assert len(places) > 15
    assert refused(places, None, lambda _: "nothing") == []


def test_a_choice_failure() -> None:
    """What can be chosen is said in full."""
    assert refused(CHOICES, "neither", lambda _: "not 'neither'") == []


GROUPS = (
    "about", *SECTIONS, "rounds.0", "rounds.0.bore", "rounds.0.face", "rounds.0.dowels.1",
    "housing.bolts.0", "housing.dowel_holes.0", "chip", "companions.0",
)  # fmt: skip


def test_a_key_that_is_not_known_failure() -> None:
    """A mistyped limit must not be passed over in silence."""
    told = [("ofset", "'ofset' is not a field of a job")]
    for path in GROUPS:
        assert faults_of(put(FULL, f"{path}.ofset", 1)) == [
            (f"{path}.{key}", text) for key, text in told
        ]


def test_a_section_failure() -> None:
    for path in GROUPS:
        assert path in [field for field, _ in faults_of(put(FULL, path, "text"))]


@pytest.mark.parametrize(
    ("path", "value", "field", "phrase"),
    [
        ("format", "other", "format", "the format 'sweepsheet-job', not 'other'"),
        ("format", ..., "format", "not nothing"),
        ("version", 2, "version", "a newer release wrote this job (version 2)"),
        ("version", 0, "version", "version 1, not 0"),
        ("version", True, "version", "version 1, not true"),
        ("version", "1", "version", "version 1, not '1'"),
        ("version", ..., "version", "not nothing"),
        ("version", math.nan, "version", "version 1"),
        ("units", "cm", "units", "enter one of inch and metric, not 'cm'"),
        ("rounds", ..., "rounds", "enter a list, not nothing"),
        ("rounds", [], "rounds", "enter 1 to 20 of them, not 0"),
        ("rounds", FULL["rounds"] * 21, "rounds", "enter 1 to 20 of them, not 21"),
        ("limits.bore_offset", 0, "limits.bore_offset", "bore limit: enter 0.1 to 500"),
        ("limits.bore_offset", -5, "limits.bore_offset", "not -5"),
        ("limits.bore_offset", 501, "limits.bore_offset", "not 501"),
        ("limits.confidence", 1, "limits.confidence", "confidence: enter 0.5 to 0.9999"),
        ("limits.confidence", 0.4, "limits.confidence", "not 0.4"),
        ("indicator.step", -0.1, "indicator.step", "smallest step of the dial: enter 0"),
        ("indicator.contact_angle_deg", 90, "indicator.contact_angle_deg", "contact angle"),
        ("indicator.sag", -1, "indicator.sag", "sag test: enter 0"),
        ("indicator.angle_setting_deg", 46, "indicator.angle_setting_deg", "to 45"),
        ("crank.axis", "sideways", "crank.axis", "one of horizontal and vertical"),
        ("housing.depth", 0, "housing.depth", "depth of the housing"),
        ("housing.dowel_holes", [{"at_deg": 0, "radius": 7}], "housing.dowel_holes", "2 to 2"),
        ("housing.dowel_holes.0.radius", -7, "housing.dowel_holes.0.radius", "hole 1, distance"),
        ("housing.bolts", None, "housing.bolts", "bolts: enter a list, not nothing"),
        ("stock.dowel_offsets.1", -7, "stock.dowel_offsets.1", "dowel size 2 in stock"),
        ("stock.dowel_offsets", 7, "stock.dowel_offsets", "dowels in stock: enter a list"),
        ("about.notes", "x" * 2001, "about.notes", "at most 2000 characters"),
        ("about.vehicle", "\x1b[2J", "about.vehicle", "characters that can't be shown"),
        ("rounds.0.name", 5, "rounds.0.name", "name of the round: enter text, not 5"),
        ("rounds.0.dowels", [], "rounds.0.dowels", "enter 2 to 2 of them, not 0"),
        ("rounds.0.dowels.0.offset", -1, "rounds.0.dowels.0.offset", "fitted dowel 1, offset"),
        ("rounds.0.dowels.1.aim_deg", 361, "rounds.0.dowels.1.aim_deg", "fitted dowel 2, aim"),
        ("rounds.0.bore", ..., "rounds.0.bore", "enter a group of fields, not nothing"),
        ("rounds.0.bore.sweeps", ..., "rounds.0.bore.sweeps", "enter a list, not nothing"),
        ("rounds.0.bore.sweeps", [], "rounds.0.bore.sweeps", "1 to 10 of them"),
        ("rounds.0.bore.sweeps.0", [0, 1, 2], "rounds.0.bore.sweeps.0",
         "sweep 1: enter 4 readings, one per position, not 3"),
        ("rounds.0.bore.sweeps.0.1", "o", "rounds.0.bore.sweeps.0.1",
         "4 o'clock reading of sweep 1: enter a number, not 'o'"),
        ("rounds.0.bore.sweeps.0.1", 501, "rounds.0.bore.sweeps.0.1", "to 500, not 501"),
        ("rounds.0.bore.closing", [0, 0, 0], "rounds.0.bore.closing", "enter 2 readings"),
        ("rounds.0.bore.closing.1", "x", "rounds.0.bore.closing.1", "return to zero of sweep 2"),
        ("rounds.0.bore.positions_deg", [0, 120], "rounds.0.bore.positions_deg", "3 to 72 of them"),
        ("rounds.0.bore.positions_deg", list(range(0, 365, 5)), "rounds.0.bore.positions_deg",
         "enter 3 to 72 of them, not 73"),
        ("rounds.0.bore.positions_deg.1", 361, "rounds.0.bore.positions_deg.1", "position 2"),
        ("rounds.0.bore.positions_deg.1", 360, "rounds.0.bore.positions_deg.1",
         "12 o'clock is there twice"),
        ("rounds.0.bore.positions_deg", [0, 60, 120, 150], "rounds.0.bore.sweeps.0",
         "sweep 1: all its readings are within half a turn"),
        ("rounds.0.bore.sweeps.1", [None, None, 1, 2], "rounds.0.bore.sweeps.1",
         "sweep 2: enter at least three readings, not 2"),
        ("rounds.0.face.radius", ..., "rounds.0.face.radius", "radius of the face sweep"),
        ("rounds.0.face.sweeps.0.2", "x", "rounds.0.face.sweeps.0.2",
         "6 o'clock reading of sweep 1: enter a number"),
        ("rounds.0.face.positions_deg", [0, 30, 60, 90, 120], "rounds.0.face.sweeps.0",
         "half a turn"),
        ("limits.face_radius", 0, "limits.face_radius", "radius of the face limit: enter"),
        ("limits.face_runout", 0, "limits.face_runout", "face limit: enter 0.1 to 500"),
        ("limits.pilot_offset", 0.01, "limits.pilot_offset", "pilot limit: enter 0.1 to 500"),
        ("housing.tail_distance", 200, "housing.tail_distance", "distance to the gearbox tail"),
        ("housing.pilot_bearing", "soap", "housing.pilot_bearing",
         "enter one of bronze_bushing, needle, ball, cylindrical_roller and tapered_roller"),
        ("housing.bore_diameter", -4, "housing.bore_diameter", "diameter of the bore: enter"),
        ("housing.register_diameter", 0, "housing.register_diameter", "gearbox register: enter"),
        ("housing.dowel_holes.1", {"at_deg": 270, "radius": 7.0}, "housing.dowel_holes",
         "dowel holes: enter two different places"),
        ("housing.dowel_holes.1", {"at_deg": -85, "radius": 7.0}, "housing.dowel_holes",
         "two different places"),
        ("housing.bolts", [{"at_deg": 0, "radius": 7}] * 25, "housing.bolts", "0 to 24 of them"),
        ("stock.aim_for", "both", "stock.aim_for", "enter one of bore and pilot"),
        ("stock.shim_thicknesses.2", -2, "stock.shim_thicknesses.2", "shim 3 in stock: enter 0"),
        ("stock.shim_thicknesses", [1] * 9, "stock.shim_thicknesses", "0 to 8 of them"),
        ("stock.dowel_offsets", [1] * 9, "stock.dowel_offsets", "0 to 8 of them"),
        ("chip.joint", "middle", "chip.joint", "joint of the chip: enter one of front and rear"),
        ("chip.height", ..., "chip.height", "height of the chip: enter a number, not nothing"),
        ("chip.height", -1, "chip.height", "enter 0 to 500"),
        ("chip.at_deg", 400, "chip.at_deg", "clock angle of the chip: enter -360 to 360"),
        ("chip.radius", ..., "chip.radius", "radius of the chip: enter a number"),
        ("companions", {}, "companions", "companion sweeps: enter a list, not a group"),
        ("companions", FULL["companions"] * 7, "companions", "enter 0 to 3 of them, not 7"),
        ("companions.0.kind", ..., "companions.0.kind",
         "enter one of pilot_bore, crank_flange and flywheel_face, not nothing"),
        ("companions.0.limit", 0, "companions.0.limit", "limit of the part, TIR: enter 0.1"),
        ("companions.0.sweeps", ..., "companions.0.sweeps", "sweeps: enter a list"),
        ("companions.0.sweeps.0.1", "o", "companions.0.sweeps.0.1",
         "4 o'clock reading: enter a number, not 'o'"),
        ("companions.0.positions_deg.1", 1, "companions.0.positions_deg.1", "is there twice"),
        ("rounds.0.face.end_float", "loose", "rounds.0.face.end_float",
         "end play of the crank: enter one of free and held, not 'loose'"),
        ("rounds.0.face.opposite", [[0, 1, 2, 3, 4]], "rounds.0.face.opposite",
         "second dial: enter 2 to 2 of them, not 1"),
        ("rounds.0.face.opposite.0", [0, 1, 2], "rounds.0.face.opposite.0",
         "sweep 1: enter 5 readings"),
        ("rounds.0.face.opposite.1.0", "x", "rounds.0.face.opposite.1.0",
         "12 o'clock reading of sweep 2: enter a number"),
        ("rounds.0.face.opposite.0", [0, None, 2, None, None], "rounds.0.face.opposite.0",
         "sweep 1: enter at least three readings, not 2"),
        ("rounds.0.face.opposite.1", [None, None, -3, -1, 0], "rounds.0.face.opposite.1",
         "enter at least three readings, not 2"),
    ],
)  # fmt: skip
def test_read_job_failure(path: str, value: object, field: str, phrase: str) -> None:
    found = faults_of(put(FULL, path, value))
    assert field in [where for where, _ in found]
    text = next(text for where, text in found if where == field)
    assert phrase.replace("-", "−") in text.replace("-", "−")


@pytest.mark.parametrize("data", [None, [], "job", 5, True, math.nan])
def test_what_is_no_group_of_fields_failure(data: object) -> None:
    assert faults_of(data)[0][0] == ""


def test_an_empty_job_failure() -> None:
    assert [field for field, _ in faults_of({})] == ["format", "version", "rounds"]


def test_every_fault_at_once() -> None:
    """Faults of a part do not hide those of another."""
    bad = put(
        put(put(FULL, "indicator.step", "x"), "rounds.0.bore.sweeps.0.0", "o"), "units", "ell"
    )
    bad = put(put(bad, "rounds.0.bore.sweeps.1.3", []), "stock.dowel_offsets.0", None)
    assert [field for field, _ in faults_of(bad)] == [
        "units", "indicator.step", "stock.dowel_offsets.0", "rounds.0.bore.sweeps.0.0",
        "rounds.0.bore.sweeps.1.3",
    ]  # fmt: skip


def test_a_mistyped_reading_is_not_also_called_bad_geometry() -> None:
    bad = make_job((0, "o", 2), positions=(0, 120, 240))  # type: ignore[arg-type]  # wrong on purpose
    assert [field for field, _ in faults_of(bad)] == ["rounds.0.bore.sweeps.0.1"]


def test_a_fault_of_the_first_dial_is_not_also_one_of_the_second() -> None:
    """The second dial's readings are held against positions only where those are known."""
    for path, value in (("sweeps", ...), ("positions_deg", [0, 30, 60, 90, 120])):
        bad = put(FULL, f"rounds.0.face.{path}", value)
        assert not [field for field, _ in faults_of(bad) if "opposite" in field]


def test_limits_of_readings_are_the_same_length_in_both_units() -> None:
    """500 thou are 12.7 mm."""
    assert faults_of(make_job((0, 501, 2, 1)))[0][0] == "rounds.0.bore.sweeps.0.1"
    assert faults_of(make_job((0, 12.8, 2, 1), units="metric"))[0][0] == "rounds.0.bore.sweeps.0.1"
    assert solve(make_job((0, 12.7, 2, 1), units="metric"))["units"] == "metric"


def test_a_sag_test_says_nothing_of_a_reach_of_more_than_twice_its_own() -> None:
    dial = {"sag": 2, "sag_reach": 8, "reach": 16}
    assert read_job(make_job((0, 1, 2, 1), indicator=dial)).indicator.reach == 16.0
    with pytest.raises(InputError) as refused:
        read_job(make_job((0, 1, 2, 1), indicator={**dial, "reach": 17}))
    (fault,) = refused.value.faults
    assert fault.field == "indicator.reach"
    assert "One at 8 says nothing of 17" in fault.text()
