"""The figures of a link are free of language; the customer's view words them in its own."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.cases import old_links
from tests.cases.jobs import EIGHTHS, make_job, then, with_dowels
from tests.cases.links import doctored, link_of, ordinary_job, unpacked
from tests.web.page import PATIENCE

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.web.server import Server

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
    expect(page.locator("html")).to_have_attribute("data-view", state, timeout=PATIENCE)
    parts = ("found", "done", "left", "limits")
    return {name: page.locator(f'#claimed [data-part="{name}"]').inner_text() for name in parts}


@pytest.mark.parametrize(
    ("language", "found", "chance", "done", "limit"),
    [
        (
            "en", "thou off the crank's axis", "inside the limit: under 1%.",
            "Both dowels with 7 thou offset, aimed at 10:40.",
            "The bore may be 5.0 thou off at most, which is TIR 10.0 thou.",
        ),
        (
            "es", "milésimas del eje del cigüeñal", "dentro del límite: menos del 1%.",
            "Los dos pasadores con 7 milésimas de descentrado, orientados a las 10:40.",
            "El alojamiento puede desviarse 5,0 milésimas como máximo, que es TIR 10,0 milésimas.",
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
            "One dowel 7 thou offset, aimed at 1 o'clock; the other standard.",
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
    text = page.locator("#recomputed").inner_text()
    assert "hacia las 4" in text
    for english in ("o'clock", "over", "under", "thou"):
        assert english not in text


def test_figures_of_another_form_stay_as_they_are(page: Page, server: Server) -> None:
    _, figures = json.loads(unpacked(link_of(JOB)))
    figures[1] = "about 8|5.5.5|1.0|noon|>98%|outside"
    page.goto(f"{server.address}view.es.html?language=es#{doctored(link_of(JOB), figures=figures)}")
    expect(page.locator("html")).to_have_attribute("data-view", "disagrees", timeout=PATIENCE)
    found = page.locator('#claimed [data-part="found"]').inner_text()
    assert "a about 8 milésimas" in found
    assert "(± 1,0), hacia noon" in found
    assert "TIR 5.5.5 milésimas" in found
    assert "dentro del límite: >98%." in found
