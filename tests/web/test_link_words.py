"""The figures of a link are free of language; the customer's view words them in its own."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest
from playwright.sync_api import Error, expect

from tests.cases import old_links
from tests.cases.jobs import EIGHTHS, make_job, then, with_dowels, with_face
from tests.cases.links import doctored, link_of, ordinary_job, unpacked
from tests.web.page import until

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.web.server import Server

pytestmark = pytest.mark.later

VIEWS = {"en": "view.html", "es": "view.es.html"}
JOB = ordinary_job(EIGHTHS)
# As found at 1 o'clock, within; then dowels aimed at a full hour, and toward another.
AT_ONE = then(
    make_job([0, -2.4, -9, -6.6], limits={"bore_offset": 9.0}),
    with_dowels(make_job([0, -1, -2, -1], limits={"bore_offset": 9.0}), (7.0, 30.0), (0.0, 0.0)),
)


def opened(page: Page, server: Server, language: str, fragment: str, state: str) -> dict[str, str]:
    """The parts of the view, once they were checked."""
    page.goto(f"{server.address}{VIEWS[language]}?language={language}#{fragment}")
    until(page, "data-view", state)
    parts = ("found", "done", "left", "limits")
    return {
        name: page.locator(f'#claimed [data-part="{name}"]').text_content() or "" for name in parts
    }


@pytest.mark.parametrize(
    ("language", "found", "chance", "done", "limit"),
    [
        (
            "en", "off the crank's axis, toward", "Chance within the limit: under 1%.",
            "Both dowels with 7 thou offset, aimed at 10:40.",
            "Bore: at most 5.0 thou off, which is TIR 10.0 thou.",
        ),
        (
            "es", "del eje del cigüeñal, hacia", "estar dentro del límite: menos del 1%.",
            "Los dos pasadores con 7 milésimas de descentrado, orientados a las 10:40.",
            "Alojamiento: como máximo 5,0 milésimas de desvío, que es TIR 10,0 milésimas.",
        ),
    ],
)  # fmt: skip
def test_the_view_words_what_a_link_claims(
    page: Page, server: Server, language: str, found: str, chance: str, done: str, limit: str
) -> None:
    parts = opened(page, server, language, link_of(JOB), "agrees")
    assert found in parts["found"]
    assert chance in parts["found"]
    assert parts["done"].strip() == done
    assert limit in parts["limits"]


@pytest.mark.parametrize(
    ("language", "aim", "one"),
    [
        (
            "en",
            "One dowel 7 thou offset, aimed at 1 o'clock; the other stock.",
            "toward 6 o'clock",
        ),
        (
            "es",
            "Un pasador con 7 milésimas de descentrado, orientado a la 1; el otro normal.",
            "hacia las 6",
        ),
    ],
)
def test_one_o_clock_has_its_own_article(
    page: Page, server: Server, language: str, aim: str, one: str
) -> None:
    parts = opened(page, server, language, link_of(AT_ONE), "agrees")
    assert parts["done"].strip() == aim
    assert one in parts["left"]


@pytest.mark.parametrize("fragment", [old_links.WHOLE, old_links.WHOLE_2])
def test_a_link_of_an_older_release_is_called_that(
    page: Page, server: Server, fragment: str
) -> None:
    """Not changed, and not agreeing: its figures stand beside those of today, which are worded."""
    opened(page, server, "es", fragment, "older")
    assert "una versión anterior" in page.locator("#check").inner_text()
    text = page.locator("#claimed-recomputed").inner_text()
    assert "hacia las 4" in text
    for english in ("o'clock", "over", "under", "thou"):
        assert english not in text


def test_figures_of_another_form_stay_as_they_are(page: Page, server: Server) -> None:
    _, figures = json.loads(unpacked(link_of(JOB)))
    figures[1] = "about 8|5.5.5|1.0|noon|>98%|outside"
    page.goto(f"{server.address}view.es.html?language=es#{doctored(link_of(JOB), figures=figures)}")
    until(page, "data-view", "disagrees")
    found = page.locator('#claimed [data-part="found"]').inner_text()
    assert "a about 8 milésimas (± 1,0)" in found
    assert "hacia noon" in found
    assert "TIR en el reloj: 5.5.5 milésimas" in found
    assert "estar dentro del límite: >98%." in found


# In short -------------------------------------------------------------------------------------

WITHIN, OUT = make_job([0, -1, -2, -1]), make_job([0, -8, -16, -8])
DIRTY = make_job([0, -1, -2, -1], closing=[9.0])
PILOT = {"pilot_distance": 7.0}


def named(job: dict[str, Any], name: str) -> dict[str, Any]:
    """The job with its latest round named so."""
    job["rounds"][-1]["name"] = name
    return job


@pytest.mark.parametrize(
    ("job", "verdict", "code", "lines"),
    [
        (
            then(OUT, with_dowels(make_job([0, -1, -2, -1]), (7.0, 0.0))),
            "In line: within the limit", "within",
            ["Found 8.0 thou off center. Now 1.0. Allowed 5.0.",
             "Corrected with 7-thou offset dowels."],
        ),
        (
            OUT, "Out of line: over the limit", "outside",
            ["8.0 thou off center. Allowed 5.0. No recheck on record."],
        ),
        (
            make_job([0, -8, -16, -8], limits={"bore_offset": None}),
            "No limit to judge by", "none", ["8.0 thou off center. No recheck on record."],
        ),
        (
            make_job([0, -5, -10, -5]), "Too close to call", "undecided",
            ["5.0 thou off center. Allowed 5.0. No recheck on record."],
        ),
        (
            then(OUT, with_dowels(DIRTY, (7.0, 0.0))),
            "Not finished: a problem is still open. Ask the shop.", "stop",
            ["Found 8.0 thou off center. Now 4.0. Allowed 5.0.", "In now: 7-thou offset dowels."],
        ),
        # A cleaning or a shim is not told as dowels, and nothing is told that the job does not say.
        (
            then(OUT, make_job([0, -1, -2, -1])), "In line: within the limit", "within",
            ["Found 8.0 thou off center. Now 1.0. Allowed 5.0.", "Same dowels as found.",
             "The record names no other work."],
        ),
        (
            then(make_job([0, -8, -16, -8], about={"notes": "Burr stoned off."}),
                 named(make_job([0, -1, -2, -1]), "joint cleaned")),
            "In line: within the limit", "within",
            ["Found 8.0 thou off center. Now 1.0. Allowed 5.0.", "Same dowels as found.",
             "Name of the recheck: joint cleaned", "See the shop's notes below."],
        ),
        (
            then(with_dowels(make_job([0, -8, -16, -8]), (7.0, 90.0)), make_job([0, -1, -2, -1])),
            "In line: within the limit", "within",
            ["Found 8.0 thou off center. Now 1.0. Allowed 5.0.", "Stock dowels are back in."],
        ),
        (
            then(with_dowels(make_job([0, -8, -16, -8]), (7.0, 90.0)),
                 with_dowels(make_job([0, -1, -2, -1]), (7.0, 0.0))),
            "In line: within the limit", "within",
            ["Found 8.0 thou off center. Now 1.0. Allowed 5.0.",
             "The 7-thou offset dowels were turned."],
        ),
        (
            AT_ONE, "In line: within the limit", "within",
            ["Found 5.0 thou off center. Now 1.0. Allowed 9.0.",
             "In now: two unlike dowels. One 7 thou offset, aimed at 1 o'clock; the other stock."],
        ),
        (
            with_face(make_job([0, -1, -2, -1], limits={"bore_offset": 5.0, "face_runout": 1.0}),
                      [0, 3, 6, 3]),
            "Not finished: a problem is still open. Ask the shop.", "stop",
            ["1.0 thou off center. Allowed 5.0. No recheck on record.",
             "Rear face: 6.0 thou out of square. Allowed 1.0."],
        ),
        (
            with_face(make_job([0, -1, -2, -1], limits={"bore_offset": 5.0, "pilot_offset": 2.0},
                               housing=PILOT), [0, 1.5, 3, 1.5]),
            "Bore in line, gearbox axis over its limit at the pilot bearing", "outside",
            ["1.0 thou off center. Allowed 5.0. No recheck on record.",
             "Gearbox axis at the pilot bearing: 4.5 thou off. Allowed 2.0."],
        ),
        (
            with_face(make_job([0, -1, -2, -1], limits={"bore_offset": 5.0, "pilot_offset": 4.5},
                               housing=PILOT), [0, 1.5, 3, 1.5]),
            "Bore in line, gearbox axis too close to call at the pilot bearing", "undecided",
            ["1.0 thou off center. Allowed 5.0. No recheck on record.",
             "Gearbox axis at the pilot bearing: 4.5 thou off. Allowed 4.5."],
        ),
    ],
    ids=["corrected", "no recheck", "no limit", "too close", "stop", "no other work", "cleaned",
         "back to stock", "turned", "unlike", "face", "pilot", "pilot too close"],
)  # fmt: skip
def test_a_job_in_short(
    page: Page, server: Server, job: dict[str, Any], verdict: str, code: str, lines: list[str]
) -> None:
    """Before the check, which holds the same figures against the readings, and after it."""
    server.held.add("library.wasm")
    page.goto(f"{server.address}view.html#{link_of(job)}")
    for state in ("claimed", "agrees"):
        until(page, "data-view", state)
        box = page.locator("#gist .verdict")
        expect(box).to_have_text(verdict)
        expect(box).to_have_attribute("data-verdict", code)
        assert page.locator("#gist > p, #gist > div:not(.verdict) p").all_inner_texts() == lines
        server.release()


def test_the_shop_is_named_above_all_and_stays_text(page: Page, server: Server) -> None:
    shop = "<b>Winter</b> Driveline"
    page.goto(
        f"{server.address}view.html#{link_of(make_job([0, -1, -2, -1], about={'shop': shop}))}"
    )
    until(page, "data-view", "agrees")
    expect(page.locator("header #shop")).to_have_text(shop)
    assert shop not in page.locator("#about").inner_text()


@pytest.mark.parametrize(
    ("unit", "told"), [("inch", "A thou is 0.001 inch"), ("metric", "about 0.1 mm")]
)
def test_the_unit_is_explained(page: Page, server: Server, unit: str, told: str) -> None:
    job = make_job([0, -0.01, -0.02, -0.01], units=unit)
    page.goto(f"{server.address}view.html#{link_of(job)}")
    expect(page.locator("#means")).to_contain_text(told)


@pytest.mark.parametrize("motion", ["no-preference", "reduce"])
def test_the_move_is_shown_on_request_and_not_to_who_wants_no_motion(
    page: Page, server: Server, motion: Any
) -> None:
    page.emulate_media(reduced_motion=motion)
    page.goto(f"{server.address}view.html#{link_of(JOB)}")
    until(page, "data-view", "agrees")
    button = page.locator("#show-move")
    assert button.is_visible() == (motion == "no-preference")
    if motion == "no-preference":
        moving = "() => document.querySelector('#after animateTransform').getStartTime() >= 0"
        # Before it is begun it has no start, and asking for it is an error.
        with pytest.raises(Error):
            page.evaluate(moving)
        button.click()
        assert page.evaluate(moving)
