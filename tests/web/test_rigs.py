"""The rigs of the shop: kept by name, taken by a new job, and never changed under an old one."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest
from playwright.sync_api import expect

from tests.web import axe
from tests.web.page import wait_for_python

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext, Locator, Page

    from tests.web.server import Server

pytestmark = pytest.mark.later

# Lets a test hold every look into the store of rigs.
HOLD_RIGS = """
    globalThis.rigsFree = Promise.resolve();
    const { open } = IDBFactory.prototype;
    IDBFactory.prototype.open = function (name, ...rest) {
        const asked = open.call(this, name, ...rest);
        if (!name.startsWith('sweepsheet rigs')) return asked;
        const { addEventListener } = asked;
        asked.addEventListener = function (kind, act, ...more) {
            const late = async (event) => { await globalThis.rigsFree; act.call(this, event); };
            addEventListener.call(this, kind, kind === 'success' ? late : act, ...more);
        };
        return asked;
    };
    globalThis.rigsFree = new Promise((go) => { globalThis.freeRigs = go; });
"""


def field(page: Page, name: str) -> Locator:
    return page.locator(f'[name="{name}"]')


def reading(page: Page, index: int, sweep: int = 0) -> Locator:
    return field(page, f"rounds.0.bore.sweeps.{sweep}.{index}")


def dial(page: Page, key: str) -> Locator:
    return field(page, f"indicator.{key}")


def open_page(page: Page, address: str) -> None:
    page.goto(address)
    wait_for_python(page)
    unfold(page)


def unfold(page: Page) -> None:
    for part in ("rig", "dial", "jobs", "set-up"):
        page.locator(f"#{part}").evaluate("details => { details.open = true }")


def keep(page: Page, name: str, **fields: str) -> None:
    """Save a rig of this name, with these fields."""
    for key, text in fields.items():
        dial(page, key).fill(text)
    dial(page, "rig").fill(name)
    page.locator("#rig-save").click()
    expect(page.locator("#rig-told")).to_contain_text(name)
    expect(page.locator("#rig-choice option:checked")).to_have_text(name)


def type_sweep(page: Page, readings: list[str], sweep: int = 0) -> None:
    for i, text in enumerate(readings):
        reading(page, i, sweep).fill(text)


def kept(page: Page) -> None:
    expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")


def new_job(page: Page) -> None:
    page.locator("#job-new").click()
    expect(reading(page, 1)).to_have_value("")


def test_a_new_job_takes_the_last_rig_and_says_so(page: Page, server: Server) -> None:
    open_page(page, server.address)
    first = page.locator("#set-up-line").inner_text()
    keep(page, "Long arm", sag="2", sag_date="May 2", sag_reach="8", repeatability="0.4")
    expect(page.locator("#set-up-line")).to_have_text(f"Long arm · {first}")
    type_sweep(page, ["0", "-5", "-10", "-5"])
    kept(page)
    new_job(page)
    expect(page.locator("#set-up-line")).to_have_text(f"Long arm · {first}")
    for key, text in (("sag", "2"), ("sag_date", "May 2"), ("repeatability", "0.4")):
        expect(dial(page, key)).to_have_value(text)
    expect(page.locator("#rig-choice option:checked")).to_have_text("Long arm")
    # Nothing was done in it: it is no job yet.
    page.reload()
    wait_for_python(page)
    expect(reading(page, 1)).to_have_value("-5")


def test_another_rig_is_chosen_and_taken_back(page: Page, server: Server) -> None:
    open_page(page, server.address)
    keep(page, "Long arm", sag="2", step="0.5")
    dial(page, "rig").fill("Fine dial")
    dial(page, "sag").fill("0.3")
    dial(page, "step").fill("0.1")
    expect(page.locator("#rig-differs")).to_be_visible()
    page.locator("#rig-save-new").click()
    expect(page.locator("#rig-choice option")).to_have_text(
        ["none of the kept ones", "Fine dial", "Long arm"]
    )
    type_sweep(page, ["0", "-5", "-10", "-5"])
    page.select_option("#rig-choice", label="Long arm")
    expect(dial(page, "sag")).to_have_value("2")
    expect(dial(page, "step")).to_have_value("0.5")
    expect(reading(page, 2)).to_have_value("-10")
    expect(page.locator("#rig-differs")).to_be_hidden()
    page.locator("#undo").click()
    expect(dial(page, "step")).to_have_value("0.1")
    expect(page.locator("#rig-choice option:checked")).to_have_text("Fine dial")
    page.select_option("#rig-choice", label="none of the kept ones")
    expect(dial(page, "step")).to_have_value("0.1")
    expect(dial(page, "rig")).to_have_value("")


def test_a_rig_that_changes_or_goes_leaves_old_jobs_as_they_are(page: Page, server: Server) -> None:
    open_page(page, server.address)
    keep(page, "Long arm", sag="2")
    type_sweep(page, ["0", "-5", "-10", "-5"])
    page.locator("#job-name").fill("Old job")
    kept(page)
    new_job(page)
    reading(page, 0).fill("1")
    keep(page, "Longer arm", sag="4")  # the same rig by another name, measured anew
    expect(page.locator("#rig-choice option")).to_have_text(["none of the kept ones", "Longer arm"])
    page.locator("#rig-delete").click()
    expect(page.locator("#rig-choice option")).to_have_text(["none of the kept ones"])
    expect(dial(page, "sag")).to_have_value("4")
    page.locator("#job-list button").filter(has_text="Old job").click()
    expect(reading(page, 2)).to_have_value("-10")
    expect(dial(page, "sag")).to_have_value("2")
    expect(dial(page, "rig")).to_have_value("Long arm")
    page.locator("#rig-undo").click()
    expect(page.locator("#rig-choice option")).to_have_text(["none of the kept ones", "Longer arm"])


def test_a_rig_is_renamed_and_keeps_its_figures(page: Page, server: Server) -> None:
    open_page(page, server.address)
    keep(page, "Long arm", sag="2")
    dial(page, "sag").fill("3")
    dial(page, "rig").fill("Blue base")
    page.locator("#rig-rename").click()
    expect(page.locator("#rig-choice option:checked")).to_have_text("Blue base")
    new_job(page)
    expect(dial(page, "sag")).to_have_value("2")
    dial(page, "rig").fill(" ")
    page.locator("#rig-rename").click()
    expect(page.locator("#rig-told")).to_have_text("Give the rig a name first.")


def test_a_rig_in_another_unit_does_not_take_over_readings(page: Page, server: Server) -> None:
    """They would mean another thing; a new job takes it, with its unit."""
    open_page(page, server.address)
    page.get_by_label("mm", exact=False).first.check()
    keep(page, "Metric dial", sag="0.05", step="0.01")
    new_job(page)
    expect(page.locator('[name="units"]:checked')).to_have_value("metric")
    page.locator('[name="units"][value="inch"]').check()
    type_sweep(page, ["0", "-5", "-10", "-5"])
    page.select_option("#rig-choice", label="none of the kept ones")
    page.select_option("#rig-choice", label="Metric dial")
    expect(page.locator("#rig-told")).to_contain_text("reads in another unit")
    expect(page.locator('[name="units"]:checked')).to_have_value("inch")
    expect(page.locator("#rig-choice option:checked")).to_have_text("none of the kept ones")
    # An answer that comes later does not wipe what was said.
    before = page.locator("#headline").inner_text()
    reading(page, 2).fill("-30")
    expect(page.locator("#headline")).not_to_have_text(before)
    expect(page.locator("#rig-told")).to_contain_text("reads in another unit")


def test_two_pages_do_not_eat_each_others_rigs(
    page: Page, context: BrowserContext, server: Server
) -> None:
    open_page(page, server.address)
    other = context.new_page()
    open_page(other, server.address)
    keep(page, "Long arm", sag="2")
    other.locator("#job-new").click()
    expect(other.locator("#set-up-line")).to_contain_text("Long arm")
    dial(other, "sag").fill("0.5")
    dial(other, "rig").fill("Bracket")
    other.locator("#rig-save-new").click()
    expect(other.locator("#rig-told")).to_contain_text("Bracket")
    for each in (page, other):
        expect(each.locator("#rig-choice option")).to_have_text(
            ["none of the kept ones", "Bracket", "Long arm"]
        )
    page.select_option("#rig-choice", label="Bracket")
    expect(dial(page, "sag")).to_have_value("0.5")


def test_what_is_typed_before_the_last_rig_is_known_stays(
    page: Page, context: BrowserContext, server: Server
) -> None:
    open_page(page, server.address)
    keep(page, "Long arm", sag="2", step="0.2", repeatability="0.4")
    page.close()
    late = context.new_page()
    late.add_init_script(HOLD_RIGS)
    late.goto(server.address)
    wait_for_python(late)
    unfold(late)
    type_sweep(late, ["0", "-5", "-10", "-5"])
    dial(late, "step").fill("0.1")
    late.evaluate("globalThis.freeRigs()")
    expect(dial(late, "sag")).to_have_value("2")
    assert dial(late, "repeatability").input_value() == "0.4"
    assert dial(late, "step").input_value() == "0.1"
    assert reading(late, 2).input_value() == "-10"
    kept(late)
    late.reload()
    wait_for_python(late)
    expect(reading(late, 2)).to_have_value("-10")
    expect(dial(late, "step")).to_have_value("0.1")


def learned_from(page: Page, rounds: int) -> None:
    expect(page.locator("#rig-learned")).to_contain_text(f"Learned from repeated sweeps ({rounds})")


def test_repeated_sweeps_teach_the_rig_its_scatter_once_a_job(page: Page, server: Server) -> None:
    open_page(page, server.address)
    keep(page, "Long arm", sag="2")
    expect(page.locator("#rig-learned")).to_contain_text("Nothing learned")
    type_sweep(page, ["0", "-5", "-10", "-5"])
    page.locator(".more-bore").click()
    type_sweep(page, ["0", "-6", "-10", "-5"], sweep=1)
    learned_from(page, 1)
    expect(page.locator("#rig-learned")).to_contain_text("3 degrees of freedom")
    # The same job once more edited, and a copy of it: they are the same sweeps.
    reading(page, 1, 1).fill("-5.5")
    expect(page.locator("#rig-learned")).to_contain_text("scatters by 0.18 thou")
    learned_from(page, 1)
    page.locator("#job-copy").click()
    expect(page.locator("#job-name")).to_have_value("Unnamed job, copy")
    learned_from(page, 1)
    new_job(page)
    type_sweep(page, ["0", "-4", "-8", "-4"])
    page.locator(".more-bore").click()
    type_sweep(page, ["0.5", "-4", "-8.5", "-4"], sweep=1)
    learned_from(page, 2)
    page.locator("#rig-use").click()
    offer = dial(page, "repeatability").input_value()
    assert page.locator("#rig-use").inner_text() == f"Use a scatter of {offer}"
    # Another rig has learned nothing; what a deleted job told is forgotten at the next start.
    page.locator("#job-delete").click()
    expect(page.locator("#job-undo")).to_be_visible()
    page.reload()
    wait_for_python(page)
    unfold(page)
    learned_from(page, 1)


def test_five_sweeps_are_a_check_of_the_rig(page: Page, server: Server) -> None:
    open_page(page, server.address)
    lines = page.locator("#rig-check li")
    expect(lines).to_have_text(["Needs three sweeps or more of one bore, in this job."])
    type_sweep(page, ["0", "-5", "-10", "-5"])
    expect(lines).to_contain_text(["five times, 3 at least"])
    for j, row in enumerate((["0.5", "-5", "-10", "-5"], ["0", "-5", "-10.5", "-5"]), 1):
        page.locator(".more-bore").click()
        type_sweep(page, row, sweep=j)
    expect(lines).to_contain_text(["3 sweeps: one reading scatters", "Drift", "takes", "Usable"])


# On its way to another phone ----------------------------------------------------------------------


HOSTILE = json.dumps(
    {
        "format": "sweepsheet-rig", "version": 1, "name": "A",
        "indicator": {"step": "<img src=x onerror=alert(1)>"},
    }
)  # fmt: skip


def upload(page: Page, text: str) -> None:
    page.locator("#rig-open").set_input_files(
        files={"name": "rig.json", "mimeType": "application/json", "buffer": text.encode()}
    )


def saved(page: Page) -> str:
    with page.expect_download() as caught:
        page.locator("#rig-file").click()
    assert caught.value.suggested_filename == "sweepsheet-long-arm-rig.json"
    text: str = caught.value.path().read_text("utf-8")
    return text


def link_of(page: Page) -> str:
    page.locator("#rig-link").click()
    expect(page.locator("#rig-address")).to_be_visible()
    return page.locator("#rig-address").input_value()


def test_a_rig_goes_out_as_a_file_and_comes_in_when_it_is_wanted(
    page: Page, server: Server
) -> None:
    open_page(page, server.address)
    keep(page, "Long arm", sag="2 2.5", sag_date="May 2", step="0.2")
    text = saved(page)
    page.locator("#rig-delete").click()
    expect(page.locator("#rig-choice option")).to_have_count(1)
    dial(page, "sag").fill("7")
    upload(page, text)
    expect(page.locator("#rig-offer-text")).to_contain_text("Long arm comes from outside")
    expect(page.locator("#rig-offer-lines")).to_contain_text("Sag test done: May 2")
    expect(page.locator("#rig-choice option")).to_have_count(1)
    page.locator("#rig-take").click()
    expect(page.locator("#rig-choice option")).to_have_count(2)
    expect(page.locator("#rig-offer")).to_be_hidden()
    assert dial(page, "sag").input_value() == "7"
    page.select_option("#rig-choice", label="Long arm")
    expect(dial(page, "sag")).to_have_value("2 2.5")


def test_a_link_offers_a_rig_and_takes_nothing_silently(
    page: Page, context: BrowserContext, server: Server
) -> None:
    open_page(page, server.address)
    keep(page, "Long arm", sag="2", step="0.2")
    address = link_of(page)
    assert address.startswith(f"{server.address}#rig-")
    page.locator("#rig-delete").click()
    expect(page.locator("#rig-choice option")).to_have_count(1)
    new_job(page)
    expect(dial(page, "sag")).to_have_value("")
    type_sweep(page, ["0", "-5", "-10", "-5"])
    kept(page)
    other = context.new_page()
    other.goto(address)
    wait_for_python(other)
    expect(other.locator("#rig-offer-text")).to_be_in_viewport()
    expect(other.locator("#rig-choice option")).to_have_count(1)
    expect(dial(other, "sag")).to_have_value("")
    other.locator("#rig-take").click()
    expect(other.locator("#rig-choice option")).to_have_count(2)
    expect(reading(other, 2)).to_have_value("-10")
    assert dial(other, "sag").input_value() == ""
    assert "#" not in other.url


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{", "This is no rig of Sweepsheet."),
        ('{"format": "x"}', "This is no rig of Sweepsheet."),
        (HOSTILE, "indicator.step: "),
    ],
)
def test_a_hostile_file_is_refused_in_words(
    page: Page, server: Server, text: str, said: str
) -> None:
    open_page(page, server.address)
    reading(page, 1).fill("-5")
    upload(page, text)
    expect(page.locator("#rig-told")).to_contain_text(said)
    expect(page.locator("#rig-offer")).to_be_hidden()
    expect(page.locator("#rig-told img")).to_have_count(0)
    expect(reading(page, 1)).to_have_value("-5")


def test_a_hostile_link_is_refused_in_words(page: Page, server: Server) -> None:
    open_page(page, f"{server.address}#rig-abc")
    expect(page.locator("#rig-told")).to_have_text(
        "This link to a rig is not whole. Ask for it again."
    )
    expect(page.locator("#rig-offer")).to_be_hidden()


def test_a_rig_that_is_not_right_is_not_handed_on(page: Page, server: Server) -> None:
    open_page(page, server.address)
    dial(page, "step").fill("1o")
    page.locator("#rig-file").click()
    expect(page.locator("#rig-told")).to_contain_text("a rig needs a name")


def test_in_spanish_offline_and_for_everybody(
    page: Page, context: BrowserContext, server: Server
) -> None:
    """Kept and chosen without a signal; no words of the other language; nothing for axe to tell."""
    open_page(page, f"{server.address}index.es.html?language=es")
    context.set_offline(True)
    try:
        keep(page, "Brazo largo", sag="2")
        type_sweep(page, ["0", "-5", "-10", "-5"])
        new_job(page)
        expect(dial(page, "sag")).to_have_value("2")
        for j, row in enumerate((["0", "-5", "-10", "-5"], ["0", "-5", "-10", "-6"])):
            if j:
                page.locator(".more-bore").click()
            type_sweep(page, row, sweep=j)
        expect(page.locator("#rig-learned")).to_contain_text("Aprendido de barridos repetidos (1)")
        expect(page.locator("#rig-check")).to_contain_text("Para revisar el equipo")
        page.locator("#rig-link").click()
        expect(page.locator("#rig-address")).to_be_visible()
        axe.check(page, "the rig, all parts open")
    finally:
        context.set_offline(False)


def test_the_first_screen_does_not_grow(page: Page, server: Server) -> None:
    """The set-up stays a line, whatever the rig is called."""
    page.goto(server.address)
    wait_for_python(page)
    before = reading(page, 0).bounding_box()
    unfold(page)
    keep(page, "Long arm")
    page.reload()
    wait_for_python(page)
    expect(page.locator("#set-up-line")).to_contain_text("Long arm")
    after = reading(page, 0).bounding_box()
    assert before
    assert after
    line = page.locator("#set-up-line").evaluate("e => parseFloat(getComputedStyle(e).lineHeight)")
    assert after["y"] - before["y"] <= line + 1
