"""Nothing is lost meanwhile: what is done while the store is slow belongs to the job in the form.

Every wait of the page is held open in turn, something is done, the wait is let go, nothing more is
typed, and a page that is opened afterwards has it.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.cases.jobs import make_job
from tests.web.page import wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext, Locator, Page

    from tests.web.server import Server

# Holds the store as a slow disk does. `holdAt` is 0 for its opening, n for its n-th transaction
# from now on: this one waits behind a transaction of ours, which is kept at work until `letGo`.
HOLD = """
    globalThis.isHeld = false;
    globalThis.letGo = () => undefined;
    let isFree = true;
    globalThis.hold = (n) => {
        globalThis.holdAt = n;
        globalThis.isHeld = false;
        isFree = false;
        globalThis.free = new Promise((resolve) => {
            globalThis.letGo = () => { isFree = true; resolve(); };
        });
    };
    const { addEventListener } = IDBRequest.prototype;
    IDBOpenDBRequest.prototype.addEventListener = function (kind, act, ...rest) {
        const late = async (event) => {
            if (globalThis.holdAt === 0) {
                globalThis.isHeld = true;
                await globalThis.free;
            }
            act.call(this, event);
        };
        addEventListener.call(this, kind, kind === 'success' ? late : act, ...rest);
    };
    const { transaction } = IDBDatabase.prototype;
    IDBDatabase.prototype.transaction = function (...all) {
        // The answers of last time have a store of their own.
        if (!this.objectStoreNames.contains('jobs')) return transaction.apply(this, all);
        globalThis.holdAt -= 1;
        if (globalThis.holdAt === 0) {
            const places = ['jobs', 'fields'];
            const ours = transaction.call(this, places, 'readwrite').objectStore('jobs');
            const work = () => { if (!isFree) ours.get('').onsuccess = work; };
            work();
            globalThis.isHeld = true;
        }
        return transaction.apply(this, all);
    };
"""
OPENING = 0
# The store is opened, what was deleted is forgotten, the jobs are listed, the open one is read and
# stands in the form, and the list is shown.
STAGES = ["script", OPENING, 1, 2, 3, 4]


def reading(page: Page, index: int, round_: int = 0) -> Locator:
    return page.locator(f'[name="rounds.{round_}.bore.sweeps.0.{index}"]')


def kept(page: Page) -> None:
    """Wait until the page says that what was typed is kept."""
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")


def opened(context: BrowserContext, server: Server) -> Page:
    """A page whose jobs are there, and their list open."""
    page = context.new_page()
    page.add_init_script(HOLD)
    page.goto(server.address)
    page.wait_for_function("() => sessionStorage.length > 0")  # a job stands in the form
    page.locator("#jobs").evaluate("details => { details.open = true }")
    return page


def starting(context: BrowserContext, server: Server, stage: str | int) -> Page:
    """A page whose start is held open at a stage."""
    page = context.new_page()
    if stage == "script":
        server.held.add("main.js")
        page.goto(server.address, wait_until="commit")
        expect(reading(page, 0)).to_be_visible()
        return page
    page.add_init_script(f"{HOLD} globalThis.hold({stage});")
    page.goto(server.address)
    page.wait_for_function("() => globalThis.isHeld")
    return page


def hold(page: Page) -> None:
    """Hold the next transaction of the store."""
    page.evaluate("globalThis.hold(1)")


def held(page: Page) -> None:
    page.wait_for_function("() => globalThis.isHeld")


def let_go(page: Page, server: Server | None = None) -> None:
    if server:
        server.release()
    page.evaluate("globalThis.letGo?.()")


def job(page: Page, name: str) -> Locator:
    """A job of the list, which has all but the open one."""
    return page.locator("#job-list button").filter(has_text=name)


def two_jobs(context: BrowserContext, server: Server) -> Page:
    """A page with the job Two in the form, whose first reading is 2, and One in the list."""
    page = opened(context, server)
    for name, text in (("One", "1"), ("Two", "2")):
        page.locator("#job-name").fill(name)
        reading(page, 0).fill(text)
        kept(page)
        if name == "One":
            page.locator("#job-new").click()
            expect(reading(page, 0)).to_have_value("")
    expect(job(page, "One")).to_have_count(1)
    expect(page.locator("#job-name")).to_have_value("Two")
    return page


@pytest.fixture
def phone(context: BrowserContext, server: Server) -> BrowserContext:
    """A phone whose pages come from the server alone, and to which Python has not come yet."""
    server.held |= {"worker.js", "pyodide.asm.wasm", "library.wasm"}
    return context


# The start --------------------------------------------------------------------------------


@pytest.mark.parametrize("stage", STAGES)
@pytest.mark.parametrize("before", ["nothing", "a job"])
def test_what_is_typed_at_any_moment_of_the_start_is_kept(
    phone: BrowserContext, server: Server, stage: str | int, before: str
) -> None:
    """With nothing kept yet, and with a job that comes back under what is typed."""
    if before == "a job":
        page = opened(phone, server)
        reading(page, 0).fill("1")
        reading(page, 1).fill("2")
        kept(page)
        page.close()
    page = starting(phone, server, stage)
    reading(page, 1).fill("-5.5")
    let_go(page, server if stage == "script" else None)
    kept(page)
    expect(reading(page, 1)).to_have_value("-5.5")
    page.close()
    again = opened(phone, server)
    expect(reading(again, 1)).to_have_value("-5.5")
    expect(reading(again, 0)).to_have_value("1" if before == "a job" else "")


@pytest.mark.parametrize("stage", STAGES[1:])
def test_a_name_typed_at_any_moment_of_the_start_is_kept(
    phone: BrowserContext, server: Server, stage: int
) -> None:
    """Its field comes with the script."""
    page = starting(phone, server, stage)
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.locator("#job-name").fill("Blue van")
    page.locator("#job-name").blur()
    let_go(page)
    kept(page)
    expect(page.locator("#job-name")).to_have_value("Blue van")
    page.close()
    expect(opened(phone, server).locator("#job-name")).to_have_value("Blue van")


@pytest.mark.parametrize("stage", STAGES[1:])
def test_a_recheck_added_at_any_moment_of_the_start_is_kept(
    phone: BrowserContext, server: Server, stage: int
) -> None:
    page = starting(phone, server, stage)
    page.locator("#add-round").click()
    let_go(page)
    kept(page)
    page.close()
    expect(reading(opened(phone, server), 0, round_=1)).to_be_visible()


@pytest.mark.parametrize("stage", STAGES[1:4])
def test_a_recheck_added_before_its_job_is_there_takes_nothing_from_it(
    phone: BrowserContext, server: Server, stage: int
) -> None:
    """What is typed in it goes on being typed, and over what was kept there."""
    page = opened(phone, server)
    page.locator("#add-round").click()
    page.locator('[name="rounds.1.alike"]').select_option("no")
    reading(page, 0, round_=1).fill("3")
    reading(page, 1, round_=1).fill("4")
    kept(page)
    page.close()
    page = starting(phone, server, stage)
    page.locator("#add-round").click()
    reading(page, 1, round_=1).press_sequentially("7")
    let_go(page)
    expect(reading(page, 0, round_=1)).to_have_value("3")
    expect(reading(page, 1, round_=1)).to_have_value("7")
    expect(reading(page, 1, round_=1)).to_be_focused()
    expect(page.locator('[name="rounds.1.alike"]')).to_have_value("no")
    page.close()
    again = opened(phone, server)
    expect(reading(again, 0, round_=1)).to_have_value("3")
    expect(reading(again, 1, round_=1)).to_have_value("7")


@pytest.mark.parametrize("stage", STAGES[1:4])
def test_one_step_back_gives_the_job_that_came_under_what_was_done(
    phone: BrowserContext, server: Server, stage: int
) -> None:
    """The example, filled in before the job is there, comes off its readings again."""
    page = opened(phone, server)
    for i, text in enumerate(["1", "2", "3", "4"]):
        reading(page, i).fill(text)
    kept(page)
    page.close()
    page = starting(phone, server, stage)
    page.locator("#example").evaluate("button => button.click()")
    expect(reading(page, 7)).to_have_value("-6")
    let_go(page)
    kept(page)
    expect(reading(page, 7)).to_have_value("-6")
    page.locator("#undo").click()
    expect(reading(page, 7)).to_have_count(0)
    assert [reading(page, i).input_value() for i in range(4)] == ["1", "2", "3", "4"]
    page.close()
    again = opened(phone, server)
    expect(reading(again, 3)).to_have_value("4")
    assert [reading(again, i).input_value() for i in range(4)] == ["1", "2", "3", "4"]


def test_a_form_in_which_nothing_was_done_is_no_job(phone: BrowserContext, server: Server) -> None:
    server.held.clear()
    page = opened(phone, server)
    wait_for_python(page)
    page.locator("#job-new").click()
    page.locator("#job-new").click()
    page.wait_for_timeout(500)
    assert page.locator("#kept").get_attribute("data-kept") is None
    page.close()
    page = opened(phone, server)
    expect(page.locator("#job-title")).to_have_text("Unnamed job")
    expect(page.locator("#job-list button")).to_have_count(0)


# From job to job --------------------------------------------------------------------------


def test_what_is_typed_while_another_job_is_opened_stays_in_its_own(
    phone: BrowserContext, server: Server
) -> None:
    page = two_jobs(phone, server)
    hold(page)
    job(page, "One").click()
    held(page)
    reading(page, 1).press_sequentially("7")
    let_go(page)
    expect(reading(page, 0)).to_have_value("1")
    expect(reading(page, 1)).to_have_value("")
    job(page, "Two").click()
    expect(reading(page, 0)).to_have_value("2")
    expect(reading(page, 1)).to_have_value("7")
    page.reload()
    expect(reading(page, 1)).to_have_value("7")
    page.locator("#jobs").evaluate("details => { details.open = true }")
    job(page, "One").click()
    expect(reading(page, 0)).to_have_value("1")
    expect(reading(page, 1)).to_have_value("")


def test_what_is_typed_while_a_new_job_is_begun_stays_in_the_old(
    phone: BrowserContext, server: Server
) -> None:
    page = two_jobs(phone, server)
    hold(page)
    page.locator("#job-new").click()
    held(page)
    reading(page, 1).press_sequentially("7")
    let_go(page)
    expect(reading(page, 0)).to_have_value("")
    expect(reading(page, 1)).to_have_value("")
    job(page, "Two").click()
    expect(reading(page, 1)).to_have_value("7")


def test_what_is_typed_while_a_job_is_copied_is_in_the_copy(
    phone: BrowserContext, server: Server
) -> None:
    page = two_jobs(phone, server)
    hold(page)
    page.locator("#job-copy").click()
    held(page)
    reading(page, 1).press_sequentially("7")
    let_go(page)
    expect(job(page, "Two")).to_have_count(1)
    expect(page.locator("#job-name")).to_have_value("Two, copy")
    expect(reading(page, 1)).to_have_value("7")
    page.reload()
    expect(page.locator("#job-name")).to_have_value("Two, copy")
    expect(reading(page, 0)).to_have_value("2")
    expect(reading(page, 1)).to_have_value("7")
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.locator("#job-list button").filter(has_text="Two").click()
    expect(page.locator("#job-name")).to_have_value("Two")
    expect(reading(page, 1)).to_have_value("")


def test_a_job_that_is_typed_in_while_it_is_deleted_stays_deleted_and_comes_back_whole(
    phone: BrowserContext, server: Server
) -> None:
    page = two_jobs(phone, server)
    hold(page)
    page.locator("#job-delete").click()
    held(page)
    reading(page, 1).press_sequentially("7")
    let_go(page)
    expect(page.locator("#job-name")).to_have_value("One")
    expect(page.locator("#job-undo")).to_be_visible()
    expect(job(page, "Two")).to_have_count(0)
    page.locator("#job-undo").click()
    expect(page.locator("#job-name")).to_have_value("Two")
    expect(reading(page, 0)).to_have_value("2")
    expect(reading(page, 1)).to_have_value("7")
    expect(job(page, "One")).to_have_count(1)


def test_what_is_typed_while_a_deleted_job_is_brought_back_stays_in_its_own(
    phone: BrowserContext, server: Server
) -> None:
    page = two_jobs(phone, server)
    page.locator("#job-delete").click()
    expect(page.locator("#job-undo")).to_be_visible()
    expect(page.locator("#job-name")).to_have_value("One")
    hold(page)
    page.locator("#job-undo").click()
    held(page)
    reading(page, 1).press_sequentially("7")
    let_go(page)
    expect(page.locator("#job-name")).to_have_value("Two")
    expect(reading(page, 1)).to_have_value("")
    job(page, "One").click()
    expect(reading(page, 0)).to_have_value("1")
    expect(reading(page, 1)).to_have_value("7")


def test_jobs_asked_for_one_upon_the_other_are_opened_in_turn(
    phone: BrowserContext, server: Server
) -> None:
    """The last one asked for stands in the form, whole, and nothing of it in the others."""
    page = two_jobs(phone, server)
    hold(page)
    job(page, "One").click()
    held(page)
    for button in ("#job-copy", "#job-new"):
        page.locator(button).click()
    reading(page, 1).press_sequentially("7")
    let_go(page)
    expect(job(page, "One, copy")).to_have_count(1)
    expect(page.locator("#job-name")).to_have_value("")
    expect(page.locator("#job-list button")).to_have_count(3)
    assert [reading(page, i).input_value() for i in range(2)] == ["", ""]
    for name, texts in (("Two", ["2", "7"]), ("One, copy", ["1", ""])):
        job(page, name).click()
        expect(page.locator("#job-name")).to_have_value(name)
        assert [reading(page, i).input_value() for i in range(2)] == texts


def test_what_is_typed_while_a_file_is_opened_stays_in_its_own(
    phone: BrowserContext, server: Server
) -> None:
    server.held.clear()
    page = two_jobs(phone, server)
    wait_for_python(page)
    hold(page)
    data = json.dumps(make_job((5, 6, 7, 8), name="Made"))
    page.locator("#file-open").set_input_files(
        {"name": "made.json", "mimeType": "application/json", "buffer": data.encode()}
    )
    held(page)
    reading(page, 1).press_sequentially("7")
    let_go(page)
    expect(page.locator("#job-name")).to_have_value("Made")
    expect(reading(page, 1)).to_have_value("6")
    job(page, "Two").click()
    expect(reading(page, 0)).to_have_value("2")
    expect(reading(page, 1)).to_have_value("7")


def test_a_name_typed_while_the_list_is_read_stays(phone: BrowserContext, server: Server) -> None:
    page = two_jobs(phone, server)
    page.locator("#jobs").evaluate("details => { details.open = false }")
    hold(page)
    page.locator("#jobs").evaluate("details => { details.open = true }")
    held(page)
    page.locator("#job-name").fill("Three")
    page.locator("#job-name").blur()
    let_go(page)
    kept(page)
    page.wait_for_timeout(300)  # the list has come: it was first in the queue
    expect(page.locator("#job-name")).to_have_value("Three")
    page.reload()
    expect(page.locator("#job-title")).to_have_text("Three")


def test_what_another_page_writes_while_a_job_is_read_is_taken_over(
    phone: BrowserContext, server: Server
) -> None:
    there = two_jobs(phone, server)
    here = opened(phone, server)
    expect(here.locator("#job-name")).to_have_value("Two")
    job(here, "One").click()
    expect(reading(here, 0)).to_have_value("1")
    hold(here)
    job(here, "Two").click()
    held(here)
    reading(there, 1).fill("7")
    let_go(here)
    expect(here.locator("#job-name")).to_have_value("Two")
    expect(reading(here, 1)).to_have_value("7")


def test_a_recheck_added_to_a_new_job_is_kept_with_nothing_typed_in_it(
    phone: BrowserContext, server: Server
) -> None:
    page = two_jobs(phone, server)
    page.locator("#job-new").click()
    expect(page.locator("#job-name")).to_have_value("")
    page.locator("#add-round").click()
    page.locator("#job-name").fill("Three")
    kept(page)
    page.reload()
    expect(page.locator("#job-title")).to_have_text("Three")
    expect(reading(page, 0, round_=1)).to_be_visible()


def test_it_is_kept_is_said_of_the_disk_and_not_of_the_asking(
    phone: BrowserContext, server: Server
) -> None:
    """The browser answers at once that it won't clear the store; the write is not done yet."""
    page = opened(phone, server)
    hold(page)
    reading(page, 0).fill("1")
    held(page)
    page.wait_for_timeout(500)
    assert page.locator("#kept").get_attribute("data-kept") is None
    let_go(page)
    kept(page)


def test_what_one_write_could_not_keep_is_kept_by_the_next_with_nothing_typed(
    phone: BrowserContext, server: Server
) -> None:
    """The first write fails when the second has been handed over already."""
    page = opened(phone, server)
    page.evaluate(
        """() => {
            const { put } = IDBObjectStore.prototype;
            IDBObjectStore.prototype.put = function (...all) {
                IDBObjectStore.prototype.put = put;
                throw new DOMException('The disk is full', 'QuotaExceededError');
            };
            for (const i of [0, 1]) {
                const field = document.getElementsByName(`rounds.0.bore.sweeps.0.${i}`)[0];
                field.value = String(i + 1);
                field.dispatchEvent(new Event('input', { bubbles: true }));
            }
        }"""
    )
    kept(page)
    page.close()
    again = opened(phone, server)
    expect(reading(again, 1)).to_have_value("2")
    expect(reading(again, 0)).to_have_value("1")
