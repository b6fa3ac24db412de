"""Each other assembly worked from end to end: as found, put right, swept again, closed up.

The shop is the simulated solid of ``tests.core.shop``; the mechanic obeys. That the arithmetic is
that of the main assembly is geometry; that no limit of a bellhousing is lent to another assembly is
a rule of ours: common practice knows none, no source.
"""

from __future__ import annotations

from typing import Any, get_args

import pytest

from sweepsheet import sheet, solve
from sweepsheet.job.assembly import Assembly, lacks
from sweepsheet.job.checklist import CLOSING_UP, RECORDED
from sweepsheet.job.read import read_job
from sweepsheet.page import answer
from sweepsheet.report.paper import paper_of
from sweepsheet.solution import work_out
from sweepsheet.words.assemblies import worded
from sweepsheet.words.en.core import ENGLISH
from tests.cases import forms
from tests.cases.jobs import Data, codes_of, make_job, whole_job, with_face
from tests.core.shop import Mechanic, Shop, shop_of
from tests.core.states import leaning, off, quiet
from tests.core.words.test_assemblies import foreign

ASSEMBLIES = get_args(Assembly)


def mechanic_of(assembly: str, shop: Shop) -> Mechanic:
    """Who chose the assembly before he typed anything, and has the manual's limits."""
    mechanic = Mechanic(0, shop)
    mechanic.job["housing"]["assembly"] = assembly
    return mechanic


def of(assembly: str, data: Data) -> Data:
    return {**data, "housing": {**data.get("housing", {}), "assembly": assembly}}


# One job of each, from end to end ------------------------------------------------------------


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_offset_dowels_bring_the_bore_within(assembly: str) -> None:
    """12 thou off, 2 allowed: the joint cleaned, dowels, recheck, final torque, done."""
    mechanic = mechanic_of(assembly, quiet(**off(12.0, 4), limit=2.0, drawer=[6.0, 12.0]))
    before = mechanic.shop.offset
    end = mechanic.work()
    steps = " ".join(end.told).split()
    assert (end.kind, end.fooled, end.needless) == ("within", False, [])
    assert end.offset < 2.0 < before
    wanted = ["move", "reseat", "fit-dowels", "tighten-and-sweep", "done"]
    places = [steps.index(code) for code in wanted]
    assert places == sorted(places)
    assert foreign(assembly, sheet(mechanic.job)) == ""


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_shims_bring_the_face_square(assembly: str) -> None:
    """A housing tipped on its front flange: cleaned, seen again, shimmed, all swept anew."""
    shop = quiet(**off(1.0, 4), **leaning(36.0, 3, "block"))
    mechanic = mechanic_of(assembly, shop)
    before = shop.runout
    end = mechanic.work()
    steps = " ".join(end.told).split()
    assert (end.kind, end.fooled, end.needless) == ("within", False, [])
    assert end.runout < 5.0 < before
    assert end.offset <= end.limit
    wanted = ["clean-joint", "find-tilt-cause", "square-front", "start-anew", "done"]
    places = [steps.index(code) for code in wanted]
    assert places == sorted(places)


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_what_is_left_to_do_is_listed_in_its_own_words(assembly: Assembly) -> None:
    """Closing up: what it has none of is not asked for, and not called NOT checked."""
    job = read_job(of(assembly, make_job([0, -1, -2, -1], limits={"bore_offset": 5})))
    paper = paper_of(work_out(job), (), worded(ENGLISH, assembly))
    listed = [code for code in RECORDED if not lacks(assembly, f"checklist.{code}")]
    assert len(paper["open"]) == len(listed) >= len(RECORDED) - 1
    assert paper["done"] == []
    assert [line for line in paper["open"] if foreign(assembly, line)] == []
    ticked = of(assembly, make_job([0, -1, -2, -1], checklist=list(CLOSING_UP)))
    done = paper_of(work_out(read_job(ticked)), (), worded(ENGLISH, assembly))["done"]
    wanted = [code for code in CLOSING_UP if not lacks(assembly, f"checklist.{code}")]
    assert done == [worded(ENGLISH, assembly).say(f"checklist.{code}") for code in wanted]


@pytest.mark.slow
@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_shops_by_chance_end_as_well_as_those_of_the_main_one(assembly: str) -> None:
    """By the rules of ``test_shop``: nobody is fooled, and nobody is worse off."""
    fooled, ended = 0, set()
    for seed in range(150):
        shop = shop_of(seed)
        before = shop.offset
        end = mechanic_of(assembly, shop).work()
        ended.add(end.kind)
        fooled += end.fooled
        assert end.needless == []
        if end.kind == "within" and not end.fooled:
            assert end.offset <= max(before, end.limit)
    assert ended == {"within", "stopped"}
    assert fooled <= 1


# Limits and parts ----------------------------------------------------------------------------


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_without_a_limit_nothing_is_judged(assembly: str) -> None:
    """5 thou off is neither within nor outside: the manual's figure is asked for."""
    job = of(assembly, with_face(make_job([0, -5, -10, -5])))
    result = solve(job)
    assert result["rounds"][-1]["bore"]["verdict"] is None
    assert result["rounds"][-1]["face"]["verdict"] is None
    codes = codes_of(job)
    assert {"no-limit", "no-face-limit"} <= set(codes)
    assert "limit-source" not in codes
    assert ("pilot-distance-wanted" in codes) == (assembly == "converter")
    assert result["advice"][0]["code"] == "no-limit"
    assert "No limit is known for this bore. Enter the manufacturer's." in sheet(job)
    assert "5.0 thou offset (10.0 thou TIR)" not in sheet(job).partition("Limit")[2]


@pytest.mark.parametrize("assembly", ASSEMBLIES)
def test_it_is_worked_out_as_if_what_it_lacks_had_never_been_typed(assembly: Assembly) -> None:
    """A whole job of the main one, the assembly chosen afterward."""
    result: dict[str, Any] = solve(of(assembly, whole_job()))
    latest = result["rounds"][-1]
    assert (latest["pilot"] is None) == lacks(assembly, "housing.pilot_distance")
    assert result["depth"] is None
    main = solve(whole_job())["rounds"][-1]
    assert latest["bore"] == main["bore"]
    assert latest["face"] == main["face"]
    sections = sheet(of(assembly, whole_job()))
    assert ("At the converter pilot" in sections) == (assembly == "converter")
    assert ("hub of the converter" in sections) == (assembly == "converter")
    assert "nose of the shaft" not in sections


def test_the_converter_is_judged_at_its_pilot() -> None:
    """The hub sits in the crank: where the transmission's axis passes there is worked out."""
    main, converter = solve(whole_job()), solve(of("converter", whole_job()))
    assert converter["rounds"][-1]["pilot"] == main["rounds"][-1]["pilot"]
    data = of("converter", make_job([0, -1, -2, -1]))
    assert "pilot-distance-wanted" in codes_of(data)


def test_the_page_has_no_lengths_for_what_has_none() -> None:
    """Though they are typed: no section, no drawing, no fault at a field out of sight."""
    depth = forms.DEPTH | {"depth.to_tip": "6.9x", "housing.pilot_distance": "far"}
    assert answer(depth)["state"] == "faults"
    shown = answer(depth | {"housing.assembly": "pump"})
    assert shown["state"] == "answer"
    assert shown["depth_view"] == shown["side_view"] == ""
    assert {"depth", "pilot"} & {each["name"] for each in shown["sheet"]["sections"]} == set()
