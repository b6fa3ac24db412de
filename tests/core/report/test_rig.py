"""What a job tells of its rig: the check in words, and what is learned over jobs."""

from __future__ import annotations

import json
import math
import random
from typing import Any

import pytest

from sweepsheet.job.read import read_job
from sweepsheet.page import handle_request
from sweepsheet.report.rig import learned_of, rig_of
from sweepsheet.solution import work_out
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.es.core import SPANISH
from sweepsheet.words.faults import InputError
from tests.cases.jobs import Data, make_job, then

FIVE = (
    (0, -5, -10, -5), (0.5, -5, -10, -5), (0, -5, -10.5, -5), (0, -4.5, -10, -5),
    (0.5, -5, -10, -5.5),
)  # fmt: skip


def told(job: Data, language: Any = ENGLISH) -> Data:
    return rig_of(work_out(read_job(job)), language)


def check_of(*rows: Any, **parts: Any) -> str:
    return " ".join(told(make_job(*rows, **parts))["check"])


def test_five_sweeps_are_a_check() -> None:
    """The figures as a two-way analysis of variance and a straight line of libraries have them."""
    known = "0.18 thou to 0.41 thou, by 12 degrees of freedom"
    said = told(make_job(*FIVE, indicator={"step": 0.1}))["check"]
    assert said == [
        f"5 sweeps: one reading scatters by 0.25 thou. 95% sure: {known}.",
        "Drift 0 thou a sweep, ± 0.12 thou: none is seen.",
        "One sweep's scatter takes 10% of the tolerance (7% to 17%).",
        "Usable: at most 30%, even at the worse end. Take two sweeps or more with it.",
    ]
    assert len(told(make_job(*FIVE), SPANISH)["check"]) == 4


def test_what_the_verdict_hangs_on() -> None:
    assert "Good: at most 10%" in check_of(*FIVE, limits={"bore_offset": 20})
    assert "over 30%" in check_of(*FIVE, limits={"bore_offset": 0.5})
    assert "Too few sweeps" in check_of(*FIVE[:3], limits={"bore_offset": 2.0})
    assert "Enter a bore limit" in check_of(*FIVE, limits={"bore_offset": None})
    assert "sweep one bore five times, 3 at least" in check_of(*FIVE[:2])
    creeping = [[each + 0.5 * j for each in row] for j, row in enumerate(FIVE)]
    assert "The dial creeps" in check_of(*creeping)
    alike = [(0, *row[1:]) for row in FIVE]
    assert "each sweep began at the same reading" in check_of(*alike)
    assert "First clear up" in check_of(*FIVE, closing=[9, 0, 0, 0, 0])


def test_each_round_of_repeated_sweeps_teaches_once() -> None:
    one = make_job(*FIVE[:2])
    both = then(one, make_job(*FIVE[2:4]))
    sweeps = told(both)["sweeps"]
    assert [each["dof"] for each in sweeps] == [3, 3]
    assert sweeps[0] == told(one)["sweeps"][0]
    assert told(make_job(FIVE[0]))["sweeps"] == []
    assert told(make_job(*FIVE[:2], closing=[9, 0]))["sweeps"] == []


def test_a_slanting_contact_shows_too_much_and_is_learned_as_shown() -> None:
    straight, slanting = (
        told(make_job(*FIVE[:2], indicator={"contact_angle_deg": angle}))["sweeps"][0]["variance"]
        for angle in (0, 60)
    )
    assert slanting == pytest.approx(straight, rel=1e-12)
    lines = check_of(*FIVE, indicator={"contact_angle_deg": 60, "step": 0.1})
    assert "scatters by 0.25 thou" in lines


def learned(sweeps: list[Data], units: str = "inch") -> Data:
    return learned_of({"units": units, "sweeps": sweeps}, ENGLISH)


def test_what_jobs_taught_is_pooled_and_a_copy_counts_once() -> None:
    first = {"of": "a", "variance": 0.09, "dof": 3}
    second = {"of": "b", "variance": 0.25, "dof": 12}
    both = learned([first, second, first])
    assert both == learned([second, first])
    s = math.sqrt((3 * 0.09 + 12 * 0.25) / 15)
    assert (
        f"Learned from repeated sweeps (2): one reading scatters by {s:.2g} thou." in both["text"]
    )
    assert "by 15 degrees of freedom" in both["text"]
    assert both["offer"] == f"{s:.2g}"
    assert learned([]) == {
        "text": "Nothing learned of its scatter yet. Two sweeps of one bore begin it.", "offer": "",
    }  # fmt: skip


def test_sweeps_that_agree_by_chance_offer_no_perfect_dial() -> None:
    """Weighed with the usual 0.25 thou, or 0.006 mm, of three degrees of freedom."""
    few = {"of": "a", "variance": 0.0, "dof": 3}
    assert learned([few])["offer"] == f"{0.25 * math.sqrt(0.5):.2g}"
    assert float(learned([few], "metric")["offer"]) < 0.01


@pytest.mark.parametrize(
    "asked",
    [
        {}, {"units": "inch"}, {"units": "furlong", "sweeps": []}, {"units": "inch", "sweeps": {}},
        *(
            {"units": "inch", "sweeps": [each]}
            for each in (
                5, None, {}, {"of": 1, "variance": 1, "dof": 1},
                {"of": "a", "variance": -1, "dof": 1}, {"of": "a", "variance": 1e300, "dof": 1},
                {"of": "a", "variance": "1", "dof": 1}, {"of": "a", "variance": 1, "dof": 0},
                {"of": "a", "variance": 1, "dof": 1.5}, {"of": "a", "variance": 1, "dof": 10**9},
            )
        ),
    ],
)  # fmt: skip
def test_a_store_that_holds_something_else_is_refused(asked: Any) -> None:
    with pytest.raises(InputError):
        learned_of(asked, ENGLISH)


def test_the_page_is_told_and_can_ask() -> None:
    form: dict[str, str] = {}
    for j, row in enumerate(FIVE):
        form |= {f"rounds.0.bore.sweeps.{j}.{i}": str(m) for i, m in enumerate(row)}
    answer = json.loads(handle_request(json.dumps({"form": form})))
    (sweep,) = answer["rig"]["sweeps"]
    assert sweep["dof"] == 12
    asked = {"rig_learned": {"units": "inch", "sweeps": [sweep]}}
    assert "by 12 degrees of freedom" in json.loads(handle_request(json.dumps(asked)))["text"]


def test_the_offer_comes_to_what_the_dial_is() -> None:
    """Forty jobs of two sweeps by a dial that scatters 0.4: what is offered is near it."""
    rng, sweeps = random.Random(71), []
    for _ in range(40):
        rows = [[m + rng.gauss(0.0, 0.4) for m in FIVE[0]] for _ in range(2)]
        sweeps += told(make_job(*rows, indicator={"step": 0.01}))["sweeps"]
    assert len(sweeps) == 40
    assert float(learned(sweeps)["offer"]) == pytest.approx(0.4, abs=0.06)
