"""The sheet on paper: one page, every reading, black on white, and never an old one."""

from __future__ import annotations

import io
import unicodedata
from typing import TYPE_CHECKING, Any

import pytest
from pypdf import PdfReader

from sweepsheet.form.from_job import form_of
from sweepsheet.job.checklist import RECORDED
from sweepsheet.words.en.core import ENGLISH
from tests.cases import forms
from tests.cases.forms import sweep
from tests.cases.jobs import EIGHTHS, whole_job
from tests.cases.links import link_of, ordinary_job
from tests.cases.orders import bore_order, face_order
from tests.web.page import decoded, main_of, make_share, new_profile, until

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

    from tests.web.server import Server

FILL = """async ([main, fields]) => {
    const { fillForm } = await import(main);
    const { name: jobName = '', ...others } = fields;
    fillForm(others);
    const job = document.getElementById('job-name');
    job.value = jobName;
    job.dispatchEvent(new Event('input', { bubbles: true }));
    const form = document.getElementById('form');
    for (const [name, value] of Object.entries(others)) {
        if (form.elements.namedItem(name)) continue;
        const field = document.createElement('input');
        form.append(Object.assign(field, { type: 'hidden', name, value }));
    }
    form.dispatchEvent(new Event('input', { bubbles: true }));
}"""
BORE = ["0", "-5.5", "-11.5", "-14", "-12", "-6.5", "-1", "2"]
FACE = ["0", "0.5", "-0.5", "-1.5", "-2.5", "-3", "-2", "-1"]
AFTER = ["0.25", "-1", "-1.75", "-2", "-2.25", "-0.75", "0", "0.5"]
UNTICKED = ("bolts_torqued", "swept_again", "crank_turns")
ORDINARY = (
    {
        "positions_choice": "12 1:30 3 4:30 6 7:30 9 10:30",
        "turn": "clockwise",
        "name": "Blue coupe, 5-speed",
        "about.vehicle": "1968 coupe, blue",
        "about.engine": "V8, no. 4471",
        "about.gearbox": "5-speed",
        "about.housing": "cast, six bolts",
        "about.shop": "Winter Driveline",
        "about.technician": "M. Keller",
        "about.customer": "A. Winter",
        "about.date": "2026-11-25",
        "about.notes": "One burr stoned off the joint.",
        "limits.source": "the maker's manual, p. 12-4",
        "limits.pilot_offset": "6",
        "housing.pilot_distance": "7",
        "face.radius": "3",
        "face.end_float": "held",
        "indicator.sag": "1.5",
        "rounds.1.dowels.0.offset": "7",
        "rounds.1.dowels.0.aim": "10:40",
    }
    | {f"checklist.{code}": "yes" for code in RECORDED if code not in UNTICKED}
    | {f"rounds.{n}.{part}.closing.0": "0" for n in (0, 1) for part in ("bore", "face")}
    | sweep("rounds.0.bore.sweeps.0", *BORE)
    | sweep("rounds.0.face.sweeps.0", *FACE)
    | sweep("rounds.1.bore.sweeps.0", *AFTER)
    | sweep("rounds.1.face.sweeps.0", *FACE)
)


def say(code: str) -> str:
    """The sentence of a point of the checklist."""
    return ENGLISH.say(f"checklist.{code}")


def open_with(page: Page, server: Server, form: dict[str, str]) -> None:
    page.goto(server.address)
    fill(page, form)


def fill(page: Page, form: dict[str, str]) -> None:
    """Type all of it, once the page has brought back what was kept, which is nothing."""
    until(page, "data-share", "none")
    page.evaluate(FILL, [main_of(page), form])
    make_share(page)


def printed(page: Page, size: str) -> PdfReader:
    """The page as it comes from a printer; backgrounds left out, as browsers do."""
    return PdfReader(io.BytesIO(page.pdf(format=size)))


def text_of(pdf: PdfReader) -> str:
    """All text, blanks as one, and ligatures as the letters they are made of."""
    text = " ".join(page.extract_text() for page in pdf.pages)
    return " ".join(unicodedata.normalize("NFKC", text).split())


@pytest.fixture
def desk(chromium: Browser) -> Any:
    """A page on a desk, since a phone's page can't be printed to a file."""
    context = new_profile(chromium)
    yield context.new_page()
    context.close()


@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_an_ordinary_job_is_one_sheet_with_all_of_it(desk: Page, server: Server, size: str) -> None:
    open_with(desk, server, ORDINARY)
    pdf = printed(desk, size)
    text = text_of(pdf)
    assert len(pdf.pages) == 1
    assert "Winter Driveline" in text
    assert "Within the limit" in text
    assert "2.0 thou off, toward 5 o'clock (TIR 4.0 thou)" in text
    for name, typed in ORDINARY.items():
        if name.startswith(("name", "about.")):
            assert typed in text
    assert "the maker's manual, p. 12-4" in text
    assert "7 thou, aimed at 10:40" in text
    for reading in (*BORE, *FACE, *AFTER):
        shown = reading if reading.startswith("-") or reading == "0" else f"+{reading}"
        assert shown.replace("-", "−") in text.split(), reading
    assert "Signature" in text
    not_ticked, ticked = text.partition("NOT checked")[2].split("Checked")
    for code in RECORDED:
        assert say(code) in (not_ticked if code in UNTICKED else ticked)
    # The form is not there.
    assert "Smallest step read off the dial" not in text
    assert "Show it to the customer" not in text


def test_the_qr_code_on_paper_is_the_link(desk: Page, server: Server) -> None:
    open_with(desk, server, ORDINARY)
    desk.emulate_media(media="print")
    assert decoded(desk.locator(".paper .code")) == desk.locator("#share-link").input_value()


def test_more_rounds_flow_on_without_a_table_cut_in_two(desk: Page, server: Server) -> None:
    many = dict(ORDINARY)
    for n in range(2, 9):
        many |= {f"rounds.{n}.dowels.0.offset": "7", f"rounds.{n}.dowels.0.aim": "10:30"}
        many |= sweep(f"rounds.{n}.bore.sweeps.0", *AFTER)
    open_with(desk, server, many)
    pdf = printed(desk, "A4")
    assert len(pdf.pages) > 1
    # A table and its title are on one page: as many "Swept" heads as titles, page by page.
    for page in pdf.pages:
        text = page.extract_text()
        assert text.count("showed, touching inside") == text.count("Swept 12:00")
    assert text_of(pdf).count("showed, touching inside") == 9


# What reaches over the edge of the sheet, of its column or of its own box, in words.
TOO_WIDE = """() => {
    const sheet = [...document.querySelectorAll('.paper')].find((each) => each.offsetWidth);
    const { left, right } = sheet.getBoundingClientRect();
    return [...sheet.querySelectorAll('*:not(svg *)')].filter((each) => {
        const box = each.getBoundingClientRect();
        const column = each.closest('.paper-section') ?? sheet;
        const inside = [...column.getClientRects()].some(
            (room) => box.left >= room.left - 1 && box.right <= room.right + 1,
        );
        const cut = each.clientWidth > 0 && each.scrollWidth > each.clientWidth + 1;
        return box.left < left - 1 || box.right > right + 1 || !inside || cut;
    }).map((each) => `${each.tagName} ${each.textContent.slice(0, 40)}`);
}"""
MARGINS = 18  # mm, left and right together
LONG_WORDS: dict[str, str] = {
    "name": "Kurbelgehaeuseentlueftungsventil" * 3,
    "about.notes": "W" * 300,
    "limits.source": "handbook-" * 30,
}
TWELVE: dict[str, str] = {
    "positions_choice": "12 1 2 3 4 5 6 7 8 9 10 11",
    "turn": "clockwise",
    "face.radius": "3",
    "face.end_float": "second",
} | {
    name: text
    for part in ("bore.sweeps.0", "face.sweeps.0", "face.opposite.0")
    for name, text in sweep(f"rounds.0.{part}", *("-12.75" for _ in range(12))).items()
}
WIDEST = {
    "face out, three rounds": forms.THREE_ROUNDS,
    "unlike dowels, companions": forms.WHOLE,
    "all measured": form_of(whole_job()),
    "face squared": forms.THREE_ROUNDS | {"housing.tilt_from": "front"},
    "second dial": forms.SECOND_DIAL,
    "twelve positions": TWELVE,
    "long words": forms.WHOLE | LONG_WORDS,
    "lengths along the crank": forms.DEPTH,
}


@pytest.mark.parametrize("language", ["en-US", "es-ES"])
def test_nothing_is_cut_at_the_edge_of_the_sheet(
    chromium: Browser, server: Server, language: str
) -> None:
    """At the width of A4 and of Letter, less the margins."""
    context = new_profile(chromium, locale=language)
    page = context.new_page()
    page.goto(server.address)
    for name, form in WIDEST.items():
        page.emulate_media(media="screen")
        page.locator("#job-new").dispatch_event("click")
        fill(page, form)
        page.emulate_media(media="print")
        for width in (210, 216):
            pixels = int((width - MARGINS) * 96 / 25.4)
            page.set_viewport_size({"width": pixels, "height": 1000})
            assert page.evaluate(TOO_WIDE) == [], (name, width)
    # The measure can fail.
    page.evaluate(
        "() => document.querySelectorAll('.paper-title').forEach((e) => (e.style.width = '30cm'))"
    )
    assert page.evaluate(TOO_WIDE) != []
    context.close()


def test_before_there_is_an_answer_no_sheet_is_printed(desk: Page, server: Server) -> None:
    desk.goto(server.address)
    until(desk, "data-share", "none")
    assert "No result yet" in text_of(printed(desk, "A4"))


def test_a_sheet_that_is_no_longer_true_is_not_printed(desk: Page, server: Server) -> None:
    open_with(desk, server, ORDINARY)
    # Held in the state between a change and the new sheet.
    desk.locator('[name="rounds.0.bore.sweeps.0.1"]').fill("-5")
    until(desk, "data-share", "stale")
    text = text_of(printed(desk, "A4"))
    assert "The sheet was not ready" in text
    assert "Within the limit" not in text


def test_the_customer_s_view_is_printed_too(desk: Page, server: Server) -> None:
    desk.goto(f"{server.address}view.html#{link_of(ordinary_job(EIGHTHS))}")
    until(desk, "data-view", "agrees")
    pdf = printed(desk, "A4")
    text = text_of(pdf)
    assert "it matches" in text
    # What is folded on the screen is not on paper.
    assert "Chance within the limit" in text
    assert "Show the move" not in text
    assert "A. Winter" in text
    assert "−11.5" in text
    assert "Open as a job" not in text
    assert len(pdf.pages) <= 3


# The work order for the machine shop ---------------------------------------------------------

ABOUT = {name: text for name, text in ORDINARY.items() if name.startswith(("name", "about."))}
WORK = {
    "bore": (
        form_of(bore_order(hole_accuracy=2.0)),
        "Bore to a new center",
        "Mandrinar a un centro nuevo",
    ),
    "front": (form_of(face_order("front")), "off the front flange", "la brida delantera"),
    "rear": (form_of(face_order("rear")), "off the rear face", "la cara trasera"),
}
# Holds what a press of the button leaves, which a print to a file would end at once.
HOLD = """() => {
    globalThis.print = () => undefined;
    addEventListener('afterprint', (event) => event.stopImmediatePropagation(), true);
}"""


def print_order(page: Page) -> None:
    """Press the order's own button."""
    page.evaluate(HOLD)
    page.locator("#order summary").first.click()
    page.locator("#order-print").click()
    until(page, "data-print", "order")


@pytest.mark.parametrize("size", ["A4", "Letter"])
@pytest.mark.parametrize("language", ["en-US", "es-ES"])
@pytest.mark.parametrize("name", WORK)
def test_a_work_order_is_one_page_of_its_own(
    chromium: Browser, server: Server, name: str, language: str, size: str
) -> None:
    form, english, spanish = WORK[name]
    with new_profile(chromium, locale=language) as context:
        page = context.new_page()
        open_with(page, server, form | ABOUT)
        page.locator("#order:not([hidden])").wait_for()
        print_order(page)
        pdf = printed(page, size)
        assert len(pdf.pages) == 1
        text = text_of(pdf)
        assert (english if language == "en-US" else spanish) in text
        for typed in ("Blue coupe, 5-speed", "Winter Driveline", "M. Keller", "cast, six bolts"):
            assert typed in text
        # Neither who pays nor the sheet is there.
        assert ABOUT["about.customer"] not in text
        assert ABOUT["about.notes"] not in text
        assert ENGLISH.say("paper.signature") not in text


def test_nothing_of_a_work_order_is_cut_at_the_edge(chromium: Browser, server: Server) -> None:
    with new_profile(chromium, locale="es-ES") as context:
        page = context.new_page()
        page.goto(server.address)
        for form, _, _ in WORK.values():
            page.emulate_media(media="screen")
            page.locator("#job-new").dispatch_event("click")
            fill(page, form | ABOUT)
            page.evaluate("() => document.getElementById('order').removeAttribute('open')")
            print_order(page)
            page.emulate_media(media="print")
            for width in (210, 216):
                pixels = int((width - MARGINS) * 96 / 25.4)
                page.set_viewport_size({"width": pixels, "height": 1000})
                assert page.evaluate(TOO_WIDE) == []


def test_a_work_order_is_behind_the_sheet_only_when_it_was_asked_for(
    desk: Page, server: Server
) -> None:
    open_with(desk, server, WORK["bore"][0] | ABOUT)
    title = ENGLISH.say("order.title")
    assert title not in text_of(printed(desk, "A4"))
    desk.locator("#order summary").first.click()
    desk.locator("#order-with-sheet").check()
    pdf = printed(desk, "A4")
    text = text_of(pdf)
    assert ENGLISH.say("paper.signature") in text
    assert title in text_of_page(pdf, -1)
    assert title not in text_of_page(pdf, 0)


def text_of_page(pdf: PdfReader, n: int) -> str:
    """The text of one page, blanks as one."""
    return " ".join(unicodedata.normalize("NFKC", pdf.pages[n].extract_text()).split())


def test_after_an_order_the_sheet_is_printed_again(desk: Page, server: Server) -> None:
    open_with(desk, server, WORK["bore"][0] | ABOUT)
    desk.evaluate("() => { globalThis.print = () => undefined }")
    desk.locator("#order summary").first.click()
    desk.locator("#order-print").click()
    until(desk, "data-print", "order")
    first, second = printed(desk, "A4"), printed(desk, "A4")
    assert ENGLISH.say("order.title") in text_of(first)
    assert ENGLISH.say("paper.signature") not in text_of(first)
    assert ENGLISH.say("paper.signature") in text_of(second)
    assert ENGLISH.say("order.title") not in text_of(second)


def test_an_order_that_is_no_longer_true_is_not_printed(desk: Page, server: Server) -> None:
    open_with(desk, server, WORK["bore"][0] | ABOUT)
    desk.locator("#order summary").first.click()
    desk.locator("#order-with-sheet").check()
    desk.locator('[name="rounds.0.bore.sweeps.0.1"]').fill("-5")
    until(desk, "data-share", "stale")
    assert ENGLISH.say("order.work.bore") not in text_of(printed(desk, "A4"))


def test_what_is_missing_for_an_order_is_said_and_nothing_is_printed(
    desk: Page, server: Server
) -> None:
    open_with(desk, server, form_of(bore_order(dowel_holes=None)) | ABOUT)
    desk.locator("#order summary").first.click()
    assert ENGLISH.say("order.lack.holes") in desk.locator("#order-lacks").inner_text()
    assert desk.locator("#order-print").is_hidden()
    desk.locator("#order-with-sheet").evaluate("tick => tick.click()")
    assert ENGLISH.say("order.title") not in text_of(printed(desk, "A4"))
    # Within the limit there is no line of it at all.
    desk.evaluate("() => document.getElementById('job-new').click()")
    fill(desk, ORDINARY)
    assert desk.locator("#order").is_hidden()


def test_a_work_order_is_not_in_the_customer_s_view(desk: Page, server: Server) -> None:
    desk.goto(f"{server.address}view.html#{link_of(bore_order())}")
    until(desk, "data-view", "agrees")
    assert ENGLISH.say("order.title") not in desk.locator("body").inner_text()
