"""A job made into a link and opened again, through the page's own door."""

from __future__ import annotations

import json
from typing import Any

import pytest

from sweepsheet.english import ENGLISH
from sweepsheet.form import job_of
from sweepsheet.page import answer_text
from sweepsheet.read_job import read_job
from sweepsheet.share import open_link
from tests.core import old_links
from tests.core.jobs import QUARTERS, make_job, whole_job
from tests.core.links import link_of, ordinary_job, packed, unpacked
from tests.web import forms


def ask(request: dict[str, Any]) -> dict[str, Any]:
    answered: dict[str, Any] = json.loads(answer_text(json.dumps(request)))
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
    assert shared == {key: value for key, value in answered.items() if key != "limit"}


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


@pytest.mark.parametrize("name", ["three rounds", "whole", "metric"])
def test_a_link_is_the_same_whichever_language_made_it(name: str) -> None:
    english = ask({"share": forms.ALL[name], "language": "en"})
    spanish = ask({"share": forms.ALL[name], "language": "es"})
    assert english["fragment"] == spanish["fragment"] != ""
    assert english["paper"] != spanish["paper"]
    opened = ask({"link": english["fragment"], "language": "es"})
    assert opened["agrees"] is True


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("fragment", [old_links.ORDINARY, old_links.WHOLE])
def test_a_link_of_the_first_version_still_opens_and_agrees(fragment: str, language: str) -> None:
    """It claims English words; what comes out of the readings is free of language."""
    opened = ask({"link": fragment, "language": language})
    assert opened["state"] == "link"
    assert opened["agrees"] is True
    english = ("o'clock", "over 99%", "under 1%")
    assert any(word in line for line in opened["claimed"] for word in english)
    assert not any(word in line for line in opened["figures"] for word in english)


def test_a_link_is_held_to_the_figures_of_its_own_version() -> None:
    """The figures of one version in a link of the other do not agree."""
    new = link_of(ordinary_job(QUARTERS))
    assert open_link("1" + new[1:], ENGLISH)["agrees"] is False
    assert open_link("2" + old_links.ORDINARY[1:], ENGLISH)["agrees"] is False


def test_a_link_of_the_first_version_with_other_figures_is_seen() -> None:
    job, figures = json.loads(unpacked(old_links.ORDINARY))
    figures[2] = figures[2].replace("within", "outside")
    changed = "1" + packed(json.dumps([job, figures]))[1:]
    opened = open_link(changed, ENGLISH)
    assert opened["claimed"] == figures
    assert opened["agrees"] is False
