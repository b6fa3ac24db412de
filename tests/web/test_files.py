"""Jobs out to files and back, on a phone; the checklist; what a person typed stays text."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from playwright.sync_api import expect

from sweepsheet.files.exchange import LONGEST_FILE
from sweepsheet.form.from_job import POSITION_CHOICES, form_of
from sweepsheet.form.to_job import job_of
from sweepsheet.job.read import read_job
from tests.cases.jobs import make_job, then, whole_job, with_dowels, with_face
from tests.web.page import main_of, wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext, Page

    from tests.web.server import Server

pytestmark = pytest.mark.later

READ_FORM = """async (main) => {
    const { readForm } = await import(main);
    return readForm();
}"""
# Counts the addresses of files that are handed to the browser and not taken back.
COUNT_ADDRESSES = """
    globalThis.addresses = new Set();
    const { createObjectURL, revokeObjectURL } = URL;
    URL.createObjectURL = (blob) => {
        const made = createObjectURL.call(URL, blob);
        globalThis.addresses.add(made);
        globalThis.addressesMade = (globalThis.addressesMade ?? 0) + 1;
        return made;
    };
    URL.revokeObjectURL = (made) => {
        globalThis.addresses.delete(made);
        revokeObjectURL.call(URL, made);
    };
"""
# How many were made, and how many are left once there was time to take them back.
ADDRESSES_LEFT = """async () => {
    for (let n = 0; n < 100 && globalThis.addresses.size; n++) {
        await new Promise((next) => setTimeout(next, 100));
    }
    return [globalThis.addressesMade, globalThis.addresses.size];
}"""
HOSTILE = (
    "<img src=x onerror=alert(1)>",
    "\"'><script>alert(1)</script>",
    "=HYPERLINK(1)",
    "javascript:alert(1)",
    "\N{HEBREW LETTER ALEF}\N{RIGHT-TO-LEFT MARK}%n{0}${x}",
)


def open_page(page: Page, server: Server) -> None:
    page.add_init_script(COUNT_ADDRESSES)
    page.goto(server.address)
    wait_for_python(page)
    page.locator("#jobs").evaluate("details => { details.open = true }")


def form(page: Page) -> dict[str, str]:
    """What stands in the form, without what is blank."""
    found: dict[str, str] = page.evaluate(READ_FORM, main_of(page))
    return {name: text for name, text in found.items() if text}


def save(page: Page, button: str, tmp_path: Path) -> Path:
    with page.expect_download() as waiting:
        page.locator(button).click()
    file = tmp_path / waiting.value.suggested_filename
    waiting.value.save_as(file)
    return file


def choose(page: Page, file: Path | dict[str, Any]) -> None:
    page.locator("#file-open").set_input_files(file)  # type: ignore[arg-type]  # a dict of its parts
    expect(page.locator("#file-status")).not_to_have_text("A moment …")
    expect(page.locator("#file-status")).not_to_be_empty()


def as_file(data: object, name: str = "job.json") -> dict[str, Any]:
    body = data if isinstance(data, str) else json.dumps(data)
    return {"name": name, "mimeType": "application/json", "buffer": body.encode()}


def names(page: Page) -> list[str]:
    """The jobs of the list, but for the open one."""
    return [text.split(" · ")[0] for text in page.locator("#job-list button").all_inner_texts()]


def kept(page: Page) -> None:
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")


def odd_job() -> dict[str, Any]:
    """Everything that a job may hold, and each later round swept otherwise."""
    odd = with_face(
        make_job(
            (0, 1, None, 2, -1.5), positions=(0.0, 72.0, 144.0, 216.0, 287.3), contact="outside"
        ),
        radius=3.25, plunger="rearward", end_float="held", opposite=[[0.0, 0.5, 0.0, -0.5]],
    )  # fmt: skip
    odd = with_dowels(odd, (14.0, 37.3), (7.0, 100.0))
    job = then(whole_job(), odd)
    job["rounds"][0]["dowels"] = [{"offset": 7, "aim_deg": 90}, {"offset": 0, "aim_deg": 0}]
    job["companions"][0] |= {"contact": "outside", "plunger": "rearward"}
    job["limits"]["confidence"] = 0.9
    job["about"] = {"vehicle": "tractor", "notes": "two\nlines", "date": "last Tuesday"}
    return job | {"name": "Odd", "checklist": ["faces_clean", "crank_turns"]}


def test_every_job_file_comes_whole_through_the_page(
    page: Page, server: Server, tmp_path: Path
) -> None:
    """In by a file, through the page's own fields, out to a file: the same job."""
    open_page(page, server)
    data = odd_job()
    choose(page, as_file(data))
    expect(page.locator("#job-name")).to_have_value("Odd")
    shown = form(page)
    wanted = {name: text for name, text in form_of(data).items() if text and name != "name"}
    assert {name: shown.get(name) for name in wanted} == wanted
    assert read_job(job_of(shown | {"name": "Odd"}).job) == read_job(data)
    again = json.loads(save(page, "#file-save", tmp_path).read_text())
    assert read_job(again) == read_job(data)
    page.reload()
    wait_for_python(page)
    assert form(page) == shown


def test_metric_values_that_are_usual_in_inches_stay(page: Page, server: Server) -> None:
    """0.5 is the usual step in thou; in mm it was typed."""
    open_page(page, server)
    data = make_job((0, 0.1, 0.2, 0.1), units="metric", indicator={"step": 0.5})
    choose(page, as_file(data))
    shown = form(page)
    assert (shown["units"], shown["indicator.step"]) == ("metric", "0.5")
    assert (shown["limits.bore_offset"], shown["indicator.accuracy"]) == ("0.127", "0.01")


def test_a_job_saved_and_deleted_comes_back_from_its_file(
    page: Page, server: Server, tmp_path: Path
) -> None:
    """Half typed as it is, with a reading that is no number."""
    open_page(page, server)
    page.locator("#job-name").fill("Half a job")
    page.locator('[name="rounds.0.bore.sweeps.0.0"]').fill("4 or 5")
    page.locator('[name="rounds.0.bore.sweeps.0.2"]').fill("-11")
    page.locator('[name="chip.at"]').evaluate("field => { field.closest('details').open = true }")
    page.locator('[name="chip.at"]').fill("1:30")
    page.locator("#about summary").click()
    page.locator("#about-notes").fill("first line\nsecond line")
    page.locator("#about-date").fill("2031-05-17")
    kept(page)
    before = form(page)
    file = save(page, "#file-save", tmp_path)
    assert file.name == "sweepsheet-half-a-job.json"
    expect(page.locator("#file-status")).to_contain_text("not right yet")
    page.locator("#job-delete").click()
    expect(page.locator("#job-name")).to_have_value("")
    choose(page, file)
    expect(page.locator("#job-name")).to_have_value("Half a job")
    assert form(page) == before
    fault = page.locator('[id="fault-rounds.0.bore.sweeps.0.0"]')
    expect(fault).to_contain_text("enter a number")
    assert page.evaluate(ADDRESSES_LEFT) == [1, 0]


def test_all_jobs_go_into_one_file(page: Page, server: Server, tmp_path: Path) -> None:
    open_page(page, server)
    for name in ("One", "Two"):
        page.locator("#job-name").fill(name)
        page.locator('[name="rounds.0.bore.sweeps.0.0"]').fill(str(len(name)))
        kept(page)
        if name == "One":
            page.locator("#job-new").click()
            expect(page.locator("#job-list button")).to_have_count(1)
    file = save(page, "#file-save-all", tmp_path)
    data = json.loads(file.read_text())
    assert sorted(job["name"] for job in data["jobs"]) == ["One", "Two"]
    # What is here already does not come a second time; what has changed since does.
    choose(page, file)
    expect(page.locator("#file-status")).to_contain_text("Already on this phone: 2.")
    expect(page.locator("#job-list button")).to_have_count(1)
    page.locator('[name="rounds.0.bore.sweeps.0.0"]').fill("9")
    kept(page)
    choose(page, file)
    expect(page.locator("#file-status")).to_contain_text("The job is opened as a new one.")
    expect(page.locator("#job-list button")).to_have_count(2)
    expect(page.locator("#job-name")).to_have_value("Two")
    assert sorted(names(page)) == ["One", "Two"]


@pytest.mark.parametrize(
    ("data", "told"),
    [
        ({**make_job((0, 1, 2, 1)), "version": 2}, "made by a newer Sweepsheet"),
        ("hello", "neither a job file"),
        ({**make_job((0, 1, 2, 1)), "extra": 1}, "not a field of a job"),
        (" " * (LONGEST_FILE + 1), "larger than any of ours"),
    ],
)
def test_a_refused_file_changes_nothing(
    page: Page, server: Server, data: object, told: str
) -> None:
    open_page(page, server)
    page.locator("#job-name").fill("Mine")
    page.locator('[name="rounds.0.bore.sweeps.0.0"]').fill("3")
    kept(page)
    before = form(page)
    choose(page, as_file(data))
    expect(page.locator("#file-status")).to_contain_text(told)
    assert form(page) == before
    expect(page.locator("#job-name")).to_have_value("Mine")
    assert names(page) == []


def test_a_file_over_the_bound_is_not_even_read(page: Page, server: Server) -> None:
    page.add_init_script(
        "Blob.prototype.text = () => { globalThis.wasRead = true; return Promise.resolve('') }"
    )
    open_page(page, server)
    choose(page, as_file(" " * (LONGEST_FILE + 1)))
    assert page.evaluate("globalThis.wasRead") is None


def test_readings_go_out_as_csv_and_come_back(page: Page, server: Server, tmp_path: Path) -> None:
    open_page(page, server)
    choose(page, as_file(whole_job()))
    before = {name: text for name, text in form(page).items() if ".sweeps." in name}
    file = save(page, "#file-csv", tmp_path)
    assert file.name == "sweepsheet-job-json-readings.csv"
    expect(page.locator("#file-status")).to_contain_text("A CSV carries nothing else")
    choose(page, file)
    expect(page.locator("#file-status")).to_contain_text("check limits, dial and contact")
    after = {name: text for name, text in form(page).items() if ".sweeps." in name}
    assert after == before
    expect(page.locator("#job-name")).to_have_value(file.name)
    assert names(page) == ["job.json"]


def test_hostile_names_and_notes_stay_text(page: Page, server: Server) -> None:
    """In the fields, in the list and in the title."""
    page.on("dialog", lambda dialog: pytest.fail(f"a script ran: {dialog.message}"))
    open_page(page, server)
    about = ("vehicle", "engine", "gearbox", "notes", "date")
    for text in HOSTILE:
        data = make_job((0, 1, 2, 1), name=text, about=dict.fromkeys(about, text))
        choose(page, as_file(data))
        expect(page.locator("#job-title")).to_have_text(text)
        expect(page.locator("#job-name")).to_have_value(text)
        for key in about:
            assert page.locator(f'[name="about.{key}"]').input_value() == text
    page.locator("#job-new").click()
    expect(page.locator("#job-list button")).to_have_count(len(HOSTILE))
    assert sorted(names(page)) == sorted(HOSTILE)
    assert page.locator("#jobs img, #jobs script").count() == 0


# The checklist -----------------------------------------------------------------------------


def box(page: Page, code: str) -> Any:
    return page.locator(f'[name="checklist.{code}"]')


def test_what_is_ticked_survives_reload_copy_and_undo(page: Page, server: Server) -> None:
    open_page(page, server)
    page.locator("#checks-preparation summary").click()
    box(page, "faces_clean").check()
    box(page, "car_safe").check()
    box(page, "car_safe").uncheck()
    expect(page.locator("#checks-preparation .ticked")).to_have_text("1 of 7")
    kept(page)
    page.reload()
    wait_for_python(page)
    expect(box(page, "faces_clean")).to_be_checked()
    expect(box(page, "car_safe")).not_to_be_checked()
    page.locator("#jobs").evaluate("details => { details.open = true }")
    page.locator("#job-copy").click()
    expect(page.locator("#job-list button")).to_have_count(1)
    expect(box(page, "faces_clean")).to_be_checked()
    page.locator("#job-new").click()
    expect(box(page, "faces_clean")).not_to_be_checked()
    expect(page.locator("#checks-preparation .ticked")).to_have_text("0 of 7")
    page.locator("#job-list button").first.click()
    expect(box(page, "faces_clean")).to_be_checked()
    page.locator("#example").click()
    page.locator("#undo").click()
    expect(box(page, "faces_clean")).to_be_checked()


def test_ticks_and_their_taking_back_reach_the_other_page(
    page: Page, context: BrowserContext, server: Server
) -> None:
    open_page(page, server)
    page.locator('[name="rounds.0.bore.sweeps.0.0"]').fill("0")
    kept(page)
    other = context.new_page()
    open_page(other, server)
    for each in (page, other):
        each.locator("#checks-closing-up").evaluate("details => { details.open = true }")
    box(page, "bolts_torqued").check()
    expect(box(other, "bolts_torqued")).to_be_checked()
    box(other, "bolts_torqued").uncheck()
    expect(box(page, "bolts_torqued")).not_to_be_checked()
    page.reload()
    wait_for_python(page)
    expect(box(page, "bolts_torqued")).not_to_be_checked()


def test_targets_are_large_enough_for_a_thumb(page: Page, server: Server) -> None:
    open_page(page, server)
    for place in page.locator("details.more").all():
        place.evaluate("details => { details.open = true }")
    targets = "#jobs button, #jobs input, .checklist label, #about input, #about textarea"
    for target in page.locator(targets).all():
        if target.is_visible():
            found = target.bounding_box()
            assert found
            assert found["height"] >= 48, target.inner_text()
            assert found["x"] + found["width"] <= 360


def test_the_page_offers_the_positions_that_the_core_knows(page: Page, server: Server) -> None:
    open_page(page, server)
    options = page.locator("#positions-choice option").evaluate_all("all => all.map(o => o.value)")
    assert options == [*POSITION_CHOICES, "bolts", "wheel", "own"]


def test_a_tapered_pilot_is_kept_where_a_job_has_it_and_not_offered(
    page: Page, server: Server
) -> None:
    """No gearbox has one; a file of an older release may name it, and is not changed by that."""
    open_page(page, server)
    tapered = page.locator("#pilot-bearing option[value=tapered_roller]")
    assert tapered.is_disabled()
    assert tapered.get_attribute("hidden") is not None
    older = make_job((0, -5, -11, -5), housing={"pilot_bearing": "tapered_roller"})
    choose(page, as_file(older))
    assert page.locator("#pilot-bearing").input_value() == "tapered_roller"
    assert not tapered.is_disabled()
    kept = page.evaluate(READ_FORM, main_of(page))
    assert kept["housing.pilot_bearing"] == "tapered_roller"
    choose(page, as_file(make_job((0, -5, -11, -5), housing={"pilot_bearing": "needle"})))
    assert page.locator("#pilot-bearing").input_value() == "needle"
    assert tapered.is_disabled()


def test_many_jobs_are_found_put_in_order_and_not_restored_twice(
    page: Page, server: Server, tmp_path: Path
) -> None:
    open_page(page, server)
    names = [f"job {n}" for n in range(12)]
    jobs = [make_job((0, n, 2, 1)) | {"name": name} for n, name in enumerate(names)]
    path = tmp_path / "all.json"
    path.write_text(json.dumps({"format": "sweepsheet-jobs", "version": 1, "jobs": jobs}), "utf-8")
    expect(page.locator("#job-find-part")).to_be_hidden()
    page.locator("#file-open").set_input_files(path)
    rows = page.locator("#job-list button")
    expect(rows).to_have_count(11)  # one of them is open
    page.locator("#job-find").fill("JOB 1")
    expect(rows).to_have_text([re.compile(f"^job {n} ") for n in (1, 10, 11)])
    page.locator("#job-order").select_option("name")
    expect(rows.first).to_have_text(re.compile("^job 1 "))
    page.locator("#job-find").fill("nothing like it")
    expect(rows).to_have_count(0)
    page.locator("#job-find").fill("")
    expect(rows).to_have_count(11)
    page.locator("#file-open").set_input_files(path)
    expect(page.locator("#file-status")).to_have_text("Already on this phone: 12.")
    expect(rows).to_have_count(11)
