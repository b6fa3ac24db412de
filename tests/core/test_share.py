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
from tests.core.jobs import make_job, whole_job
from tests.core.links import link_of
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
