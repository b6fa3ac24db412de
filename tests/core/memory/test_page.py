"""What the page is told of other jobs with the same housing."""

from __future__ import annotations

import json
import random
import re
from typing import Any

import pytest

from sweepsheet.form.from_job import form_of
from sweepsheet.job.read import read_job
from sweepsheet.page import handle_request
from sweepsheet.solution import work_out
from sweepsheet.words.faults import InputError
from tests.cases.jobs import Data, make_job, readings_of, then, with_dowels, with_face


def job(x: float, y: float, housing: str = "Cast, long") -> Data:
    return make_job(readings_of(x, y), about={"housing": housing})


def asked(here: Data | None, *others: Data, language: str = "en") -> dict[str, Any]:
    forms = [form_of(each) for each in others]
    first = {"about.housing": "CAST,  long"} if here is None else form_of(here)
    request = {"memory": {"here": first, "others": forms}, "language": language}
    found: dict[str, Any] = json.loads(handle_request(json.dumps(request)))
    return found


def many(n: int) -> list[Data]:
    """So many of a kind, some of them gone on with."""
    rng = random.Random(2)
    jobs = []
    for _ in range(n):
        x, y = 5.0 + rng.gauss(0.0, 1.0), -3.0 + rng.gauss(0.0, 1.0)
        begun = with_face(job(x, y), [1.0, 0.0, -1.0, 0.0])
        after = with_dowels(job(x, y + 6.3), (7.0, 0.0))
        jobs.append(then(begun, after))
    return jobs


def test_a_kind_is_told_with_its_region_its_face_and_its_dowels() -> None:
    found = asked(job(5.0, -3.0), *many(6), job(90.0, 0.0, "another"))
    assert found["same"] == 6
    lines = " ".join(found["lines"])
    assert "Other jobs with this housing: 6." in lines
    assert "Tried one by one: " in lines
    assert "of 6 are in the part that the others make." in lines
    assert "This one is like the others." in lines
    assert "Faces swept: 6." in lines
    assert "Dowels in 6 jobs: 90% of their mark (90 to 90%), 0° clockwise of their aim." in lines
    assert found["picture"].startswith("<svg")
    assert found["picture"].count('r="2.5"') == 6


def test_one_that_is_unlike_the_others_is_told_so() -> None:
    assert "This one is unlike the others." in " ".join(asked(job(-60.0, 30.0), *many(6))["lines"])


def test_a_coarse_sweep_is_offered_what_the_others_add() -> None:
    """Beside the figure of the sweep alone, which stays what the verdict is of."""
    here = make_job(
        readings_of(5.0, -3.0), about={"housing": "cast, long"}, indicator={"repeatability": 2.0}
    )
    (line,) = (each for each in asked(here, *many(9))["lines"] if each.startswith("Taken"))
    numbers = [float(each) for each in re.findall(r"\d+\.\d", line)]
    alone = work_out(read_job(here)).measured[0].bore.offset
    assert numbers[2] == pytest.approx(alone, abs=0.06)
    assert numbers[1] < 0.9 * numbers[3]
    assert "Only your sweep counts in the verdict." in line
    spanish = asked(here, *many(9), language="es")["lines"]
    assert any("cuenta solo su barrido" in each for each in spanish)


def test_a_fine_sweep_is_told_that_the_others_add_nothing() -> None:
    fine = make_job(
        readings_of(5.0, -3.0), about={"housing": "cast, long"},
        indicator={"step": 0.1, "accuracy": 0.1, "repeatability": 0.05},
    )  # fmt: skip
    lines = asked(fine, *many(9))["lines"]
    assert any(each.startswith("Your sweep tells more than they do.") for each in lines)
    few = asked(fine, *many(7))["lines"]
    assert not any("Taken together" in each for each in few)
    unlike = asked(job(-60.0, 30.0), *many(9))["lines"]
    assert not any("Taken together" in each for each in unlike)


def test_the_open_job_may_be_half_typed() -> None:
    found = asked(None, *many(5))
    assert found["same"] == 5
    assert "like the others" not in " ".join(found["lines"])
    assert found["picture"].startswith("<svg")


def test_jobs_of_another_assembly_do_not_count() -> None:
    """A pump mount of the same name is no bellhousing; its picture has its own words."""

    def of_pump(each: Data) -> Data:
        return {**each, "housing": {"assembly": "pump"}}

    others = [*many(6), *map(of_pump, many(5))]
    assert asked(job(5.0, -3.0), *others)["same"] == 6
    found = asked(of_pump(job(5.0, -3.0)), *others)
    assert found["same"] == 5
    assert "the shaft in the middle" in found["picture"]
    assert "crank in the middle" in asked(job(5.0, -3.0), *others)["picture"]


def test_few_say_that_they_are_few() -> None:
    lines = asked(job(5.0, -3.0), *many(2))["lines"]
    assert "Too few to say where the next one is: 2 of 5." in lines
    assert not any("Dowels in" in line for line in lines)


def test_none_and_unnamed_and_not_to_be_read() -> None:
    assert asked(job(5.0, -3.0))["lines"] == ["No other job names this housing."]
    unnamed = asked(job(5.0, -3.0, ""), *many(2))
    assert unnamed["lines"][0].startswith("Enter the housing")
    half = {"about.housing": "cast, long", "rounds.0.bore.sweeps.0.0": "x"}
    request = {"memory": {"here": form_of(job(5.0, -3.0)), "others": [half]}}
    assert json.loads(handle_request(json.dumps(request)))["same"] == 0


def test_places_that_are_not_believed_leave_the_rest() -> None:
    """Six jobs on offset dowels as found: no place, so no picture."""
    others = [with_dowels(job(5.0, -3.0), (7.0, 0.0)) for _ in range(3)]
    found = asked(None, *others)
    assert (found["same"], found["picture"]) == (3, "")


def test_it_is_told_in_metric_and_in_spanish_where_the_open_job_is() -> None:
    here = make_job([0.0, -0.1, -0.2, -0.1], units="metric", about={"housing": "cast, long"})
    found = asked(here, *many(5), language="es")
    assert any(" mm" in line for line in found["lines"])
    assert found["lines"][0] == "Otros trabajos con esta campana: 5."
    without = {**here, "limits": {"bore_offset": None}}
    assert asked(without, *many(5))["picture"].count("<circle") < found["picture"].count("<circle")


@pytest.mark.parametrize(
    "wrong", [[], {"here": {}}, {"here": {}, "others": [5]}, {"here": 5, "others": []}]
)
def test_what_is_no_question_is_refused(wrong: object) -> None:
    with pytest.raises(InputError):
        handle_request(json.dumps({"memory": wrong}))
