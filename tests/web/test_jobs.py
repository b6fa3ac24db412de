"""Nothing is lost: the job survives reloads and crashes, and two pages at once."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.web.page import open_lines, wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext, Locator, Page

    from tests.web.page import Guard
    from tests.web.server import Server

pytestmark = pytest.mark.later

# Fails every write to the store, as a browser does whose disk is full.
FULL_DISK = """
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (value, key) {
        if (globalThis.isFull) throw new DOMException('The disk is full', 'QuotaExceededError');
        return put.call(this, value, key);
    };
"""


def reading(page: Page, index: int, sweep: int = 0, round_: int = 0) -> Locator:
    return page.locator(f'[name="rounds.{round_}.bore.sweeps.{sweep}.{index}"]')


def values(page: Page, count: int = 4, sweep: int = 0, round_: int = 0) -> list[str]:
    return [reading(page, i, sweep, round_).input_value() for i in range(count)]


def open_page(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)


def kept(page: Page) -> None:
    """Wait until the page says that what was typed is kept."""
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")


def open_jobs(page: Page) -> None:
    page.locator("#jobs").evaluate("details => { details.open = true }")


def typist(server: Server, profile: Path, what: str) -> list[str]:
    """The command that types half a job in a browser of its own, or reads it back."""
    return [sys.executable, "-m", "tests.web.typist", server.address, str(profile), what]


def kill_all(profile: Path) -> int:
    """Kill, without warning, every process that works on a browser's profile."""
    killed = 0
    for process in Path("/proc").iterdir():
        line = process / "cmdline"
        if process.name.isdigit() and line.is_file() and str(profile).encode() in line.read_bytes():
            os.kill(int(process.name), signal.SIGKILL)
            killed += 1
    return killed


def test_half_a_job_is_there_after_a_reload(page: Page, server: Server) -> None:
    """Positions, a second sweep, a recheck with its dowels, and fields of every kind."""
    open_page(page, server)
    open_lines(page)
    page.select_option("#positions-choice", "12 2 4 6 8 10")
    page.get_by_label("TIR", exact=True).check()
    page.locator("#limit").fill("8")
    for i, text in enumerate(["0", "-1", "-2"]):
        reading(page, i).fill(text)
    page.locator(".more-bore").click()
    reading(page, 5, sweep=1).fill("4.5")
    page.locator("#add-round").click()
    page.locator('[name="rounds.1.dowels.0.aim"]').fill("10:30")
    page.locator('[name="rounds.1.alike"]').select_option("no")
    page.locator('[name="rounds.1.dowels.1.offset"]').fill("14")
    kept(page)
    page.reload()
    expect(reading(page, 2)).to_have_value("-2")
    assert values(page, 6) == ["0", "-1", "-2", "", "", ""]
    assert reading(page, 5, sweep=1).input_value() == "4.5"
    assert page.locator("#positions-choice").input_value() == "12 2 4 6 8 10"
    assert page.locator("#limit").input_value() == "8"
    open_lines(page)
    expect(page.get_by_label("TIR", exact=True)).to_be_checked()
    assert page.locator('[name="rounds.1.dowels.0.aim"]').input_value() == "10:30"
    expect(page.locator('[name="rounds.1.dowels.1.offset"]')).to_have_value("14")
    expect(page.locator('[name="rounds.1.dowels.1.offset"]')).to_be_visible()


def test_a_housing_that_was_only_seated_again(page: Page, server: Server) -> None:
    """Its recheck asks for no dowels, says how well it seats, and is the same after a reload."""
    open_page(page, server)
    for i, text in enumerate(["0", "-3", "-6", "-3"]):
        reading(page, i).fill(text)
    page.locator("#add-round").click()
    offset = page.locator('[name="rounds.1.dowels.0.offset"]')
    expect(offset).to_be_visible()
    page.locator('[name="rounds.1.since"]').select_option("reseated")
    expect(offset).to_be_hidden()
    for i, text in enumerate(["0", "-7", "-14", "-7"]):
        page.locator(f'[name="rounds.1.bore.sweeps.0.{i}"]').fill(text)
    page.locator('[name="rounds.1.bore.closing.0"]').fill("0")
    expect(page.locator("#answer")).to_contain_text("lands up to 12.3 thou from its place")
    assert page.locator('[name="rounds.0.since"]').count() == 0
    kept(page)
    page.reload()
    expect(page.locator('[name="rounds.1.since"]')).to_have_value("reseated")
    expect(offset).to_be_hidden()
    expect(page.locator("#answer")).to_contain_text("lands up to 12.3 thou from its place")


@pytest.mark.skipif(not Path("/proc/self/cmdline").exists(), reason="finds processes by /proc")
def test_half_a_job_is_there_after_the_browser_was_killed(server: Server, tmp_path: Path) -> None:
    """Browser and page are killed without warning, as by a flat battery; all is there again."""
    profile = tmp_path / "profile"
    with subprocess.Popen(typist(server, profile, "type"), stdout=subprocess.PIPE, text=True) as at:
        assert at.stdout is not None
        assert at.stdout.readline() == "typed\n"
        assert kill_all(profile) > 1
        at.kill()
    (profile / "SingletonLock").unlink(missing_ok=True)
    read = subprocess.run(
        typist(server, profile, "read"), stdout=subprocess.PIPE, text=True, check=True, timeout=60
    )
    assert json.loads(read.stdout) == ["0", "-5.5", "-11", ""]


def test_two_pages_on_one_job_do_not_eat_each_other_s_readings(
    context: BrowserContext, page: Page, server: Server
) -> None:
    open_page(page, server)
    reading(page, 0).fill("0")
    kept(page)
    second = context.new_page()
    open_page(second, server)
    expect(reading(second, 0)).to_have_value("0")
    reading(page, 1).fill("-5")
    expect(reading(second, 1)).to_have_value("-5")
    reading(second, 2).fill("-11")
    reading(page, 3).fill("-6")
    for each in (page, second):
        expect(reading(each, 2)).to_have_value("-11")
        expect(reading(each, 3)).to_have_value("-6")
        expect(each.locator("#headline")).to_contain_text("6.3 thou off")
    page.locator(".more-bore").click()
    expect(reading(second, 0, sweep=1)).to_be_visible()
    page.reload()
    expect(reading(page, 3)).to_have_value("-6")
    assert values(page) == ["0", "-5", "-11", "-6"]


def test_what_is_being_typed_here_is_not_overwritten_from_there(
    context: BrowserContext, page: Page, server: Server
) -> None:
    open_page(page, server)
    reading(page, 0).fill("0")
    kept(page)
    second = context.new_page()
    open_page(second, server)
    expect(reading(second, 0)).to_have_value("0")
    page.bring_to_front()
    reading(page, 1).fill("7")
    reading(second, 1).evaluate(
        "e => { e.value = '8'; e.dispatchEvent(new Event('input', { bubbles: true })) }"
    )
    reading(second, 2).evaluate(
        "e => { e.value = '9'; e.dispatchEvent(new Event('input', { bubbles: true })) }"
    )
    expect(reading(page, 2)).to_have_value("9")
    expect(reading(page, 1)).to_have_value("7")
    expect(reading(page, 1)).to_be_focused()


def test_several_jobs_named_copied_deleted_and_brought_back(page: Page, server: Server) -> None:
    open_page(page, server)
    open_jobs(page)
    page.locator("#job-name").fill("Blue van")
    for i, text in enumerate(["0", "-5.5", "-11", "-5.5"]):
        reading(page, i).fill(text)
    expect(page.locator("#headline")).to_contain_text("6.2 thou off")
    page.locator("#job-copy").click()
    expect(page.locator("#job-name")).to_have_value("Blue van, copy")
    expect(reading(page, 2)).to_have_value("-11")
    reading(page, 2).fill("-12")
    page.locator("#job-new").click()
    expect(reading(page, 2)).to_have_value("")
    reading(page, 0).fill("1")
    others = page.locator("#job-list button")
    expect(others).to_have_count(2)
    first = others.filter(has_text="Blue van").filter(has_not_text="copy")
    expect(first).to_contain_text("Outside the limit")
    first.click()
    expect(reading(page, 2)).to_have_value("-11")
    page.locator("#job-delete").click()
    expect(others.filter(has_not_text="copy").filter(has_text="Blue van")).to_have_count(0)
    expect(reading(page, 2)).not_to_have_value("-11")
    page.locator("#job-undo").click()
    expect(page.locator("#job-name")).to_have_value("Blue van")
    expect(reading(page, 2)).to_have_value("-11")


def test_a_deleted_job_is_forgotten_at_the_next_start(page: Page, server: Server) -> None:
    open_page(page, server)
    open_jobs(page)
    reading(page, 0).fill("1")
    kept(page)
    page.locator("#job-delete").click()
    expect(reading(page, 0)).to_have_value("")
    page.reload()
    expect(page.locator("#job-list button")).to_have_count(0)
    expect(reading(page, 0)).to_have_value("")


def test_a_full_store_is_said_plainly_and_the_answer_still_comes(
    page: Page, server: Server
) -> None:
    page.add_init_script(FULL_DISK)
    open_page(page, server)
    open_jobs(page)
    reading(page, 0).fill("0")
    kept(page)
    page.evaluate("globalThis.isFull = true")
    for i, text in enumerate(["-5.5", "-11", "-5.5"], 1):
        reading(page, i).fill(text)
    expect(page.locator("#kept")).to_have_attribute("data-kept", "no")
    expect(page.locator("#kept")).to_contain_text("Write the readings down")
    expect(page.locator("#headline")).to_contain_text("6.2 thou off")
    page.evaluate("globalThis.isFull = false")
    reading(page, 3).fill("-5")
    kept(page)
    page.reload()
    expect(reading(page, 3)).to_have_value("-5")
    assert values(page) == ["0", "-5.5", "-11", "-5"]


def test_a_browser_that_keeps_nothing_says_so_and_works(
    page: Page, server: Server, guard: Guard
) -> None:
    page.add_init_script(
        "indexedDB.open = () => { throw new DOMException('Denied', 'SecurityError') }"
    )
    open_page(page, server)
    assert guard.seen == []
    for i, text in enumerate(["0", "-5.5", "-11", "-5.5"]):
        reading(page, i).fill(text)
    expect(page.locator("#headline")).to_contain_text("6.2 thou off")
    expect(page.locator("#kept")).to_contain_text("NOT SAVED")
    expect(page.locator("#kept")).to_be_visible()


def test_what_is_typed_before_the_store_is_open_is_kept_too(page: Page, server: Server) -> None:
    """The store opens late; what was there comes back, and what was typed meanwhile stays."""
    open_page(page, server)
    reading(page, 0).fill("1")
    reading(page, 1).fill("2")
    kept(page)
    page.add_init_script(
        "const { open } = IDBFactory.prototype;"
        "IDBFactory.prototype.open = function (...all) {"
        "  const field = document.getElementsByName('rounds.0.bore.sweeps.0.1')[0];"
        "  setTimeout(() => {"
        "    field.value = '7'; field.dispatchEvent(new Event('input', { bubbles: true }));"
        "  });"
        "  return open.apply(this, all);"
        "};"
    )
    page.reload()
    expect(reading(page, 0)).to_have_value("1")
    expect(reading(page, 1)).to_have_value("7")
    kept(page)


@pytest.mark.new
def test_what_is_typed_before_any_script_has_run_is_kept_and_answered(
    page: Page, server: Server
) -> None:
    """The form stands in the page; the scripts, which come late, take over what stands in it."""
    open_page(page, server)
    for i, text in enumerate(["0", "-5.5", "-11"]):
        reading(page, i).fill(text)
    kept(page)
    page.goto("about:blank")
    cut_off = page.context.new_page()
    server.held.add("main.js")
    cut_off.goto(server.address, wait_until="commit")
    reading(cut_off, 1).fill("-6")
    reading(cut_off, 3).press_sequentially("-5.5")
    assert cut_off.evaluate("document.querySelector('[data-kept]')") is None
    server.release()
    wait_for_python(cut_off)
    expect(cut_off.locator("#headline")).to_contain_text("off, toward")
    assert values(cut_off) == ["0", "-6", "-11", "-5.5"]
    assert cut_off.evaluate("document.activeElement.name") == "rounds.0.bore.sweeps.0.3"
    kept(cut_off)
    cut_off.reload()
    expect(reading(cut_off, 3)).to_have_value("-5.5")
    assert values(cut_off) == ["0", "-6", "-11", "-5.5"]


def test_the_first_round_stands_in_the_page_as_the_script_would_draw_it(
    page: Page, server: Server
) -> None:
    open_page(page, server)
    rows = page.locator(".round .bore-readings")
    as_built = rows.evaluate("place => place.innerHTML")
    assert as_built in (server.folder / "index.html").read_text("utf-8").replace('=""', "")
    open_lines(page)
    page.select_option("#positions-choice", index=1)
    assert rows.evaluate("place => place.innerHTML") != as_built
    page.select_option("#positions-choice", index=0)
    assert rows.evaluate("place => place.innerHTML") == as_built
