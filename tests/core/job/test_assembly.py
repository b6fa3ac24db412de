"""What is put on what: what another assembly has none of is not read, and nothing of it is lost."""

from __future__ import annotations

import json
from typing import get_args

import pytest

from sweepsheet.files.exchange import export_file, import_file
from sweepsheet.form.from_job import form_of
from sweepsheet.form.to_job import draft_of, job_of
from sweepsheet.job.assembly import LACKS, Assembly, lacks
from sweepsheet.job.checklist import CODES
from sweepsheet.job.model import SECTIONS, SETTINGS
from sweepsheet.job.read import read_job
from sweepsheet.link.codec import fragment_of, read_link
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.faults import InputError
from tests.cases.jobs import Data, make_job, whole_job

ASSEMBLIES = get_args(Assembly)
SHAFTS = ("transfer_case", "pump", "other")


def as_(assembly: str, job: Data) -> Data:
    """The job as one of another assembly."""
    return {**job, "housing": {**job.get("housing", {}), "assembly": assembly}}


def test_what_is_lacking_is_a_place_of_the_job() -> None:
    places = {
        *SETTINGS, *SECTIONS, *(f"checklist.{code}" for code in CODES), "companions.pilot_bore",
    }  # fmt: skip
    assert set(LACKS) == set(ASSEMBLIES)
    assert {place for each in LACKS.values() for place in each} <= places


def test_the_main_one_stands_where_nothing_is_said() -> None:
    """Old files and links name none; what does not name it is worked out as ever."""
    plain = make_job([0, -5.5, -11, -5.5])
    said = as_("", plain) | {"housing": {"assembly": None}}
    assert read_job(plain) == read_job(said)
    job = read_job(plain)
    assert (job.housing.assembly, job.limits.bore_offset, job.usual_limit) == (None, 5.0, True)
    assert not any(lacks(None, place) for place in SETTINGS)


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_no_limit_is_usual(assembly: str) -> None:
    """That 5 thou is common holds of bellhousings alone; one that is typed is taken."""
    job = read_job(as_(assembly, make_job([0, -5.5, -11, -5.5])))
    assert (job.limits.bore_offset, job.limits.face_runout) == (None, None)
    typed = as_(assembly, make_job([0, -5.5, -11, -5.5], limits={"bore_offset": 5.0}))
    assert read_job(typed).limits.bore_offset == 5.0
    assert not read_job(typed).usual_limit


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_what_it_lacks_is_not_read(assembly: Assembly) -> None:
    """Nor is it found fault with: it stands in fields that are not shown."""
    full = whole_job()
    full["depth"] = {"to_face": "six", "to_tip": -4}
    full["checklist"] = ["starter_and_release", "faces_clean"]
    for path in ("housing.pilot_distance", "limits.pilot_offset", "stock.aim_for"):
        if lacks(assembly, path):
            section, _, key = path.partition(".")
            full[section] = {**full[section], key: "far"}
    job = read_job(as_(assembly, full))
    assert job.depth == read_job(whole_job()).depth
    assert job.housing.pilot_bearing is None
    assert (job.housing.pilot_distance is None) == (assembly in SHAFTS)
    assert [part.kind for part in job.companions] == (
        ["flywheel_face"] if assembly in SHAFTS else ["pilot_bore", "flywheel_face"]
    )
    assert ("starter_and_release" in job.checklist) == (assembly in ("converter", "pump"))
    assert job.limits.bore_offset == 5.0
    assert job.housing.bolts != ()


def test_a_wrong_assembly_is_a_fault() -> None:
    with pytest.raises(InputError) as caught:
        read_job(as_("gearbox", make_job([0, 1, 2, 1])))
    assert [fault.field for fault in caught.value.faults] == ["housing.assembly"]


# On its way ------------------------------------------------------------------------------------


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_a_link_carries_it_and_not_what_it_lacks(assembly: str) -> None:
    data = as_(assembly, whole_job())
    linked = read_link(fragment_of(data, ("thou", "1.0"))).data
    assert linked["housing"]["assembly"] == assembly
    assert "pilot_bearing" not in linked["housing"]
    assert ("pilot_distance" in linked["housing"]) == (assembly == "converter")
    assert read_job(linked) == read_job(data)


def test_a_file_of_the_main_one_says_nothing_of_it() -> None:
    """So that an older release opens it; one of another assembly it refuses, by its unknown key."""
    text = export_file([{"housing.assembly": "", "housing.depth": "6.5"}], ENGLISH)["text"]
    assert json.loads(text)["housing"] == {"depth": 6.5}
    text = export_file([{"housing.assembly": "pump"}], ENGLISH)["text"]
    assert json.loads(text)["housing"] == {"assembly": "pump"}


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_a_file_keeps_all_that_was_typed(assembly: str) -> None:
    """The choice may be taken back later: what was typed before is there then."""
    form = {
        "housing.assembly": assembly, "housing.pilot_distance": "seven", "depth.to_tip": "5.5",
        "limits.bore_offset": "", "companions.pilot_bore.sweeps.0.0": "1",
    }  # fmt: skip
    (back,) = import_file(export_file([form], ENGLISH)["text"], ENGLISH)["jobs"]
    assert {key: back[key] for key in form} == form


def test_a_limit_left_out_comes_back_blank() -> None:
    """The form begins with the usual limit of a bellhousing, which must not stand there then."""
    form = form_of(as_("pump", make_job([0, 1, 2, 1])))
    assert (form["limits.bore_offset"], form["limits.face_runout"]) == ("", "")
    given = form_of(as_("pump", make_job([0, 1, 2, 1], limits={"bore_offset": 2})))
    assert given["limits.bore_offset"] == "2"
    assert read_job(job_of(form).job).limits.bore_offset is None
    assert "limits.bore_offset" not in form_of(make_job([0, 1, 2, 1]))


def test_a_part_that_is_lacking_is_not_called_unfinished() -> None:
    """Its sweep, begun before the assembly was chosen, is out of sight."""
    form = {"companions.pilot_bore.sweeps.0.0": "1", "companions.crank_flange.sweeps.0.0": "1"}
    assert len(job_of(form).unfinished) == 2
    assert len(job_of(form | {"housing.assembly": "pump"}).unfinished) == 1
    assert len(draft_of(form | {"housing.assembly": "pump"})["companions"]) == 2
