"""WCAG 2.2 AA on every page: by axe-core, by keyboard, in large text, without motion."""

from __future__ import annotations

import json
from itertools import groupby
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.cases.jobs import EIGHTHS
from tests.cases.links import doctored, link_of, ordinary_job, unpacked
from tests.web import axe
from tests.web.page import PATIENCE, make_share, open_lines, until, wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.web.server import Server

pytestmark = [pytest.mark.slow, pytest.mark.later]


def open_all(page: Page) -> None:
    """Open every part that can be folded."""
    page.locator("details").evaluate_all("all => all.forEach((d) => { d.open = true })")


def type_sweep(page: Page, *readings: str, round_: int = 0) -> None:
    for i, text in enumerate(readings):
        page.locator(f'[name="rounds.{round_}.bore.sweeps.0.{i}"]').fill(text)


def is_answered(page: Page, state: str = "answer") -> None:
    until(page, "data-answer", state)
    expect(page.locator("#shown.stale")).to_have_count(0)


def test_the_page_for_the_mechanic(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    statuses = page.get_by_role(
        "status"
    )  # those that a screen reader listens to; none that is hidden
    listened_to = statuses.evaluate_all("all => all.map(({ id }) => id)")
    assert "heard" in listened_to
    axe.check(page, "empty")

    type_sweep(page, "0", "-5.5")
    is_answered(page, "waiting")
    axe.check(page, "half filled")

    type_sweep(page, "0", "x", "-11", "-5.5")
    open_lines(page)
    page.locator("#limit").fill("9999")
    is_answered(page, "faults")
    open_all(page)
    axe.check(page, "faults, all parts open")
    axe.check_large_text(page, "faults")

    page.locator("#limit").fill("5")
    page.locator("#example").click()
    is_answered(page)
    expect(statuses.filter(has_text="Outside the limit. ")).to_have_count(1)
    make_share(page)
    page.locator("#share-qr").click()
    open_all(page)
    axe.check(page, "the example, all parts open, the QR code shown")
    axe.check_large_text(page, "the example")
    axe.check_large_text(page, "the example", width=320, times=1)

    for n, offset in enumerate(("7", "7"), start=1):
        page.locator("#add-round").click()
        page.locator(f'[name="rounds.{n}.dowels.0.offset"]').fill(offset)
        page.locator(f'[name="rounds.{n}.dowels.0.aim"]').fill("12")
        type_sweep(page, "0", "-9", "-13", "-4", round_=n)
    is_answered(page)
    open_all(page)
    axe.check(page, "three rounds")
    axe.check_large_text(page, "three rounds")

    page.locator("#job-name").fill("Blue van")
    page.locator("#job-copy").click()
    page.locator("#job-new").click()
    expect(page.locator("#job-list button")).to_have_count(2)
    page.locator("#job-delete").click()
    expect(page.locator("#job-undo")).to_be_visible()
    axe.check(page, "several jobs, one deleted")
    axe.check_large_text(page, "several jobs")


# What can be reached, in the order it stands in. A group of radio buttons is one stop, the one that
# is chosen. The plus and minus keys are left out on purpose: whoever has Tab has a minus key.
STOPS = """() => [...document.querySelectorAll(
    'a[href], button, input, select, textarea, summary, [tabindex]')]
    .filter((e) => e.checkVisibility() && !e.disabled)
    .filter((e) => !e.matches('.sign, [type=radio]:not(:checked), #strip'))
    .map((e) => e.id || e.name || e.textContent.trim())"""
# Where the focus is, and what is wrong with how it shows there.
FOCUSED = """() => {
    const e = document.activeElement;
    const { outlineStyle, outlineWidth } = getComputedStyle(e);
    const faults = [];
    if (outlineStyle === 'none' || parseFloat(outlineWidth) < 2) faults.push('no outline');
    const { top, bottom } = e.getBoundingClientRect();
    const strip = document.querySelector('#strip');
    const room = e === strip ? 0 : 72; // the strip comes and goes: its room is left at all times
    if (bottom <= 0 || bottom > innerHeight - room) faults.push('out of sight');
    return e === document.body ? null : [e.id || e.name || e.textContent.trim(), faults];
}"""


def test_every_control_is_reached_by_tab_in_order_and_shows_it(page: Page, server: Server) -> None:
    """2.1.1 Keyboard, 2.4.3 Focus Order, 2.4.7 Focus Visible, 2.4.11 Focus Not Obscured."""
    page.emulate_media(reduced_motion="reduce")
    page.goto(server.address)
    wait_for_python(page)
    page.locator("#example").click()
    is_answered(page)
    make_share(page)
    open_all(page)
    expected = page.evaluate(STOPS)
    page.evaluate("() => { document.activeElement.blur(); scrollTo(0, 0); getSelection().empty() }")
    page.mouse.click(1, 1)  # before everything
    reached: list[str] = []
    for _ in range(3 * len(expected)):
        page.keyboard.press("Tab")
        focused = page.evaluate(FOCUSED)
        if focused is None or (focused[0] == expected[0] and reached):
            break
        name, faults = focused
        assert faults == [], f"{name}: {faults}"
        # The strip comes and goes with what is seen above it.
        if name != "strip" and reached[-1:] != [name]:  # a date is several stops in one field
            reached.append(name)
    # Two stops of one name in a row are taken for one.
    assert reached == [name for name, _ in groupby(expected)]


def test_nothing_moves_for_who_wants_no_motion(page: Page, server: Server) -> None:
    """The crank of the practice page, which turns by steps, is tried in test_practice.py."""
    page.emulate_media(reduced_motion="reduce")
    for name in ("", "practice.html", "view.html", "how.html"):
        page.goto(f"{server.address}{name}")
        open_all(page)
        moving = page.evaluate(
            """() => [...document.querySelectorAll('*')].filter((e) => {
                const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(e);
                return animationName !== 'none' || scrollBehavior === 'smooth' ||
                    transitionDuration.split(',').some((time) => parseFloat(time) > 0);
            }).map((e) => e.outerHTML.slice(0, 80))"""
        )
        assert moving == [], name


def test_the_customer_s_view(page: Page, server: Server) -> None:
    link = link_of(ordinary_job(EIGHTHS))
    _, figures = json.loads(unpacked(link))
    figures[2] = figures[2].replace("1.9|3.8", "0.4|0.8")

    def show(fragment: str, state: str) -> None:
        page.goto("about:blank")
        page.goto(f"{server.address}view.html#{fragment}")
        until(page, "data-view", state)
        open_all(page)
        axe.check(page, state)
        axe.check_large_text(page, state)

    show(link[:-20], "refused")
    server.held.add("library.wasm")
    show(link, "claimed")
    server.release()
    until(page, "data-view", "agrees")
    open_all(page)
    axe.check(page, "agrees")
    axe.check_large_text(page, "agrees")
    axe.check_large_text(page, "agrees", width=320, times=1)
    show(doctored(link, figures=figures), "disagrees")


def test_the_practice_page(page: Page, server: Server) -> None:
    page.goto(f"{server.address}practice.html#seed=417&level=3")
    wait_for_python(page)
    expect(page.locator("#crank-view svg")).to_be_visible()
    axe.check(page, "start")
    axe.check_large_text(page, "start")
    page.emulate_media(reduced_motion="reduce")
    for _ in range(5):
        page.locator("#note").click()
        page.locator("#on").click()
    is_answered(page)
    page.locator("#tell").click()
    expect(page.locator("#truth")).to_be_visible(timeout=PATIENCE)
    open_all(page)
    axe.check(page, "noted, the truth shown")
    axe.check_large_text(page, "noted, the truth shown")
    axe.check_large_text(page, "noted, the truth shown", width=320, times=1)
    page.locator("#fit-offset").select_option("14")
    page.locator("#fit-aim").fill("7")
    page.locator("#fit").click()
    expect(page.locator("#old-answer")).to_be_visible(timeout=PATIENCE)
    open_all(page)
    axe.check(page, "dowels fitted, the old answer still shown")


def test_the_page_that_tells_how(page: Page, server: Server) -> None:
    page.goto(f"{server.address}how.html")
    axe.check(page, "how it is worked out")
    open_all(page)
    axe.check(page, "how it is worked out, all parts open")
    axe.check_large_text(page, "how it is worked out")
    axe.check_large_text(page, "how it is worked out", width=320, times=1)
