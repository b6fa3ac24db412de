"""A job made into a link and opened again, through the page's own door."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from sweepsheet.form.to_job import job_of
from sweepsheet.job.read import read_job
from sweepsheet.link.codec import read_link
from sweepsheet.link.share import open_link
from sweepsheet.page import handle_request
from sweepsheet.words.en.core import ENGLISH
from tests.cases import forms, old_links
from tests.cases.jobs import QUARTERS, make_job, readings_of, then, whole_job
from tests.cases.links import link_of, ordinary_job, packed, unpacked


def ask(request: dict[str, Any]) -> dict[str, Any]:
    answered: dict[str, Any] = json.loads(handle_request(json.dumps(request)))
    return answered


@pytest.mark.parametrize("name", ["bore", "three rounds", "whole", "second dial", "metric"])
def test_what_is_shared_is_opened_and_agrees(name: str) -> None:
    form = forms.ALL[name]
    shared = ask({"share": form})
    assert shared["state"] == "share"
    assert shared["trouble"] == ""
    opened = ask({"link": shared["fragment"]})
    assert opened["state"] == "link"
    assert opened["agrees"] is True
    assert opened["figures"] == opened["claimed"]
    assert opened["before"].startswith("<svg ")
    assert read_job(job_of(opened["form"]).job) == read_job(job_of(form).job)


@pytest.mark.parametrize("name", ["empty", "faults"])
def test_a_form_without_an_answer_is_told_as_the_answer_tells_it(name: str) -> None:
    shared, answered = ask({"share": forms.ALL[name]}), ask({"form": forms.ALL[name]})
    assert shared == {
        key: value for key, value in answered.items() if key not in ("limit", "stage", "marks")
    }


def test_one_round_has_a_drawing_of_before_alone() -> None:
    opened = open_link(link_of(make_job([0, -5, -11, -5])), ENGLISH)
    assert opened["after"] == ""
    both = open_link(link_of(whole_job()), ENGLISH)
    assert both["after"].startswith("<svg ")
    assert both["before"] != both["after"]


def test_the_texts_of_a_link_come_out_as_they_went_in() -> None:
    about = {"customer": "<b>A. Winter</b>", "notes": "one\ntwo"}
    job = make_job([0, -5, -11, -5], name="Blue", about=about, limits={"source": "a & b"})
    texts = open_link(link_of(job), ENGLISH)["texts"]
    assert texts["name"] == "Blue"
    assert texts["source"] == "a & b"
    assert texts["about"]["customer"] == about["customer"]
    assert texts["about"]["notes"] == about["notes"]


def test_before_and_after_are_drawn_to_one_scale() -> None:
    """12 off and 1.7 off: the limit is as large in both, which alone they would not show."""
    both = open_link(link_of(whole_job()), ENGLISH)
    rings = [
        re.findall(r'<circle [^>]*r="([\d.]+)" stroke-dasharray="7 4"', both[name])
        for name in ("before", "after")
    ]
    assert rings[0] == rings[1]
    assert len(rings[0]) == 1
    assert "animateTransform" in both["after"]


def test_the_name_of_the_last_recheck_is_told_where_it_was_given() -> None:
    found, again = make_job([0, -5, -11, -5]), make_job([0, -1, -2, -1])
    assert open_link(link_of(found), ENGLISH)["texts"]["recheck"] == ""
    assert open_link(link_of(then(found, again)), ENGLISH)["texts"]["recheck"] == ""
    again["rounds"][0]["name"] = "joint cleaned"
    assert open_link(link_of(then(found, again)), ENGLISH)["texts"]["recheck"] == "joint cleaned"


def test_the_shop_goes_with_the_link() -> None:
    job = make_job([0, -5, -11, -5], about={"shop": "Winter Driveline"})
    assert open_link(link_of(job), ENGLISH)["texts"]["about"]["shop"] == "Winter Driveline"


@pytest.mark.parametrize("name", ["three rounds", "whole", "metric"])
def test_a_link_is_the_same_whichever_language_made_it(name: str) -> None:
    english = ask({"share": forms.ALL[name], "language": "en"})
    spanish = ask({"share": forms.ALL[name], "language": "es"})
    assert english["fragment"] == spanish["fragment"] != ""
    assert english["paper"] != spanish["paper"]
    opened = ask({"link": english["fragment"], "language": "es"})
    assert opened["agrees"] is True


OLDER = [old_links.ORDINARY, old_links.WHOLE, old_links.ORDINARY_2, old_links.WHOLE_2]


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("fragment", OLDER)
def test_a_link_of_an_older_release_opens_and_is_called_that(fragment: str, language: str) -> None:
    """Its figures are shown beside those of today: doubt was worked out in another way then."""
    opened = ask({"link": fragment, "language": language})
    assert opened["state"] == "link"
    assert (opened["agrees"], opened["older"]) == (False, True)
    english = ("o'clock", "over 99%", "under 1%")
    has_english = any(word in line for line in opened["claimed"] for word in english)
    assert has_english == (fragment[0] == "1")
    assert not any(word in line for line in opened["figures"] for word in english)
    # What was measured is the same: the limit, and as many rounds.
    assert opened["claimed"][0].split("|")[:2] == opened["figures"][0].split("|")[:2]
    assert len(opened["claimed"]) == len(opened["figures"])


def test_what_an_older_link_left_out_is_what_was_usual_then() -> None:
    """Up to a thou of sag; what it says itself, and what a link of today leaves out, stays."""
    silent = link_of(make_job(readings_of(0.0, -7.0), indicator={}))[1:]
    assert "indicator" not in read_link("3" + silent).data
    for version in ("1", "2"):
        assert read_link(version + silent).data["indicator"] == {"sag_allowance": 1.0}
    metric = link_of(make_job(readings_of(0.0, -0.2), indicator={}, units="metric"))[1:]
    assert read_link("2" + metric).data["indicator"] == {"sag_allowance": 0.025}
    for told in ({"sag": 0}, {"sag_allowance": 4}):
        said = link_of(make_job(readings_of(0.0, -7.0), indicator=told))[1:]
        assert read_link("2" + said).data["indicator"] == told


def test_an_older_link_that_still_comes_out_agrees() -> None:
    """A measured sag and no lift count as they did, where the dial does not scatter."""
    job = make_job(readings_of(0.0, -7.0), indicator={"sag": 1.0, "repeatability": 0.0})
    opened = open_link("2" + link_of(job)[1:], ENGLISH)
    assert (opened["agrees"], opened["older"]) == (True, False)


def test_a_link_is_held_to_the_figures_of_its_own_version() -> None:
    """The figures of one version in a link of the other do not agree; and age is no excuse."""
    new = link_of(ordinary_job(QUARTERS))
    assert open_link("1" + new[1:], ENGLISH)["agrees"] is False
    opened = open_link("3" + old_links.ORDINARY[1:], ENGLISH)
    assert (opened["agrees"], opened["older"]) == (False, False)


def test_a_link_of_the_first_version_with_other_figures_is_seen() -> None:
    job, figures = json.loads(unpacked(old_links.ORDINARY))
    figures[2] = figures[2].replace("within", "outside")
    changed = "1" + packed(json.dumps([job, figures]))[1:]
    opened = open_link(changed, ENGLISH)
    assert opened["claimed"] == figures
    assert opened["agrees"] is False
