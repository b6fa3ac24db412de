"""No word of a drawing lies over another, or runs out of the sheet, in any language."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import pytest

from sweepsheet.form.from_job import form_of
from sweepsheet.page import handle_request
from sweepsheet.words.languages import FOLDERS
from tests.cases import forms
from tests.cases.orders import bore_order, face_order

if TYPE_CHECKING:
    from playwright.sync_api import Browser

ORDERS = [form_of(job) for job in (bore_order(), face_order("front"), face_order("rear"))]
VIEWS = ("drawing", "side_view", "flange_view", "depth_view", "dowel_view", "wave")
# Texts that overlap by more than their line spacing, and those that leave the drawing.
TROUBLE = """() => {
    const sheet = document.querySelector('svg').getBoundingClientRect();
    const texts = [...document.querySelectorAll('text')];
    const found = [];
    texts.forEach((text, i) => {
        const a = text.getBoundingClientRect();
        if (a.left < sheet.left || a.right > sheet.right) found.push(text.textContent);
        for (const other of texts.slice(i + 1)) {
            const b = other.getBoundingClientRect();
            const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
            const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
            if (across > 1 && down > 3) found.push(`${text.textContent} / ${other.textContent}`);
        }
    });
    return found;
}"""


@pytest.mark.parametrize("language", FOLDERS)
def test_the_words_of_a_drawing_have_room(chromium: Browser, language: str) -> None:
    page = chromium.new_page(viewport={"width": 360, "height": 740})
    looked_at = set()
    for form in (*forms.ALL.values(), *ORDERS):
        answer = json.loads(handle_request(json.dumps({"form": form, "language": language})))
        order = (answer.get("order") or {}).get("sheet") or {"views": [], "profile": ""}
        views = {view: answer.get(view) for view in VIEWS}
        views |= {f"order {n}": svg for n, svg in enumerate([*order["views"], order["profile"]])}
        for view, svg in views.items():
            if svg:
                page.set_content(f'<body style="margin: 0; font-family: system-ui">{svg}</body>')
                assert page.evaluate(TROUBLE) == [], (form, view)
                looked_at.add(view)
    page.close()
    assert looked_at == {*VIEWS, "order 0", "order 1", "order 2"}
