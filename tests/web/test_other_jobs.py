"""What other jobs on the phone tell of such a housing, asked for in the page."""

from __future__ import annotations

import json
import random
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.cases.jobs import make_job, readings_of
from tests.web import axe
from tests.web.page import wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.web.server import Server

pytestmark = pytest.mark.later


def file_of(n: int) -> str:
    """So many jobs of one kind, and one of another."""
    rng = random.Random(4)
    jobs = []
    for i in range(n + 1):
        place = (5.0 + rng.gauss(0.0, 1.0), -3.0 + rng.gauss(0.0, 1.0))
        about = {"housing": "<b>cast</b>, long" if i < n else "another"}
        jobs.append(make_job(readings_of(*place), about=about) | {"name": f"job {i}"})
    return json.dumps({"format": "sweepsheet-jobs", "version": 1, "jobs": jobs})


def test_the_others_are_compared_when_asked_for(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    page.locator("#about").evaluate("(e) => { e.open = true }")
    lines = page.locator("#other-jobs-lines li")
    expect(lines).to_have_count(0)
    page.locator("#other-jobs-ask").click()
    expect(lines).to_have_text(
        ["Enter the housing under About this job: jobs of the same kind are compared."]
    )
    page.locator("#jobs").evaluate("(e) => { e.open = true }")
    page.locator("#file-open").set_input_files(
        {"name": "jobs.json", "mimeType": "application/json", "buffer": file_of(6).encode()}
    )
    expect(page.locator("#job-list button")).to_have_count(6)
    # Another job came: what was said of the one before is gone.
    expect(lines).to_have_count(0)
    page.locator("#job-new").click()
    expect(page.locator("#job-list button")).to_have_count(7)
    page.locator("#about-housing").fill("<B>Cast</B>,  long")
    page.locator("#other-jobs-ask").click()
    expect(lines.first).to_have_text("Other jobs with this housing: 6.")
    expect(page.locator("#other-jobs-view svg circle")).not_to_have_count(0)
    assert page.locator("#other-jobs b").count() == 0
    axe.check(page, "other jobs compared")
