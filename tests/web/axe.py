"""Asks axe-core what of WCAG 2.2 AA a page breaks, as it stands on the screen.

Success criteria by their numbers in Web Content Accessibility Guidelines 2.2, W3C Recommendation.
axe-core is a tool of the tests alone and is not shipped. Playwright puts it into the page past the
page's own policy, which stays in force for the page.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import build

if TYPE_CHECKING:
    from playwright.sync_api import Page

SOURCE = (build.NODE / "axe-core" / "axe.min.js").read_text("utf-8")
TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
# The colours are all that changes by night: see `prefers-color-scheme` in the style sheets.
COLOURS = ["color-contrast", "link-in-text-block"]
# `target-size` is off by default in axe-core, because WCAG 2.2 is younger than it.
RUN = """async ([kind, values]) => {
    const options = { runOnly: { type: kind, values }, resultTypes: ['violations'] };
    if (kind === 'tag') options.rules = { 'target-size': { enabled: true } };
    const { violations } = await axe.run(document, options);
    return violations.flatMap(({ id, help, nodes }) => nodes.map(
        ({ target, failureSummary }) => `${id}: ${help}: ${target}: ${failureSummary}`));
}"""
# What one would have to scroll sideways for, and what is cut off at the edge of its own box. Tables
# may scroll by themselves (1.4.10); a drawing shrinks as a whole; `.heard` is for ears alone.
CUT = """width => {
    const wide = width + 0.5, found = [];
    const apart = 'svg, option, .readings, .heard';
    if (document.documentElement.scrollWidth > wide) found.push('the page scrolls sideways');
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let text = walker.nextNode(); text; text = walker.nextNode()) {
        const owner = text.parentElement;
        if (!text.data.trim() || !owner.checkVisibility() || owner.closest(apart)) continue;
        const range = document.createRange();
        range.selectNodeContents(text);
        for (const { left, right } of range.getClientRects()) {
            if (left < -0.5 || right > wide) found.push(`off the screen: ${text.data.trim()}`);
        }
        for (let box = owner; box; box = box.parentElement) {
            const { overflowX, overflowY } = getComputedStyle(box);
            const hides = [overflowX, overflowY].some((how) => how === 'hidden' || how === 'clip');
            const over = box.scrollWidth > box.clientWidth || box.scrollHeight > box.clientHeight;
            if (hides && over) found.push(`cut: ${text.data.trim()}`);
            if (box.matches('button') && box.scrollWidth > box.clientWidth) {
                found.push(`too long for its button: ${text.data.trim()}`);
            }
        }
    }
    return [...new Set(found)];
}"""


def _run(page: Page, kind: str, values: list[str]) -> list[str]:
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(SOURCE)
    found: list[str] = page.evaluate(RUN, [kind, values])
    return found


def check(page: Page, state: str) -> None:
    """Fail where the page, in this state, breaks a rule by day or by night."""
    broken: dict[str, list[str]] = {}
    for scheme in ("dark", "light"):
        page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
        rules = ("tag", TAGS) if scheme == "light" else ("rule", COLOURS)
        broken[scheme] = _run(page, *rules)
    assert broken == {"dark": [], "light": []}, f"{state}: {json.dumps(broken, indent=1)}"


def check_large_text(page: Page, state: str, width: int = 360, times: int = 2) -> None:
    """Fail where text of this many times the size is cut or makes the page scroll sideways.

    1.4.4 Resize Text asks for 200 %; 1.4.10 Reflow for a width of 320 px at the usual size.
    """
    before = page.viewport_size
    assert before
    page.set_viewport_size({"width": width, "height": before["height"]})
    usual = page.evaluate("() => parseFloat(getComputedStyle(document.documentElement).fontSize)")
    grow = "size => { document.documentElement.style.fontSize = size ? `${size}px` : '' }"
    page.evaluate(grow, usual * times)
    found = page.evaluate(CUT, width)
    page.evaluate(grow, 0)
    page.set_viewport_size(before)
    assert found == [], f"{state}, {width} px wide, text {times} times as large: {found}"
