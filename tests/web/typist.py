"""Types half a job in a browser of its own, and waits to be killed: `python -m tests.web.typist`.

Arguments: the page's address, the folder of the browser's profile, and `type` or `read`. A killed
browser can't be driven any more, so this is a program of its own, which the test kills with it.
"""

from __future__ import annotations

import json
import sys

from playwright.sync_api import expect, sync_playwright

from tests.web import browser as browsers

TYPED = ["0", "-5.5", "-11"]


def main(address: str, profile: str, what: str) -> None:
    """Type and wait, or read back what is in the fields."""
    with sync_playwright() as playwright:
        context = playwright.chromium.launch_persistent_context(
            profile,
            executable_path=browsers.find(playwright.chromium),
            args=browsers.flags(),
        )
        page = context.new_page()
        page.goto(address)
        fields = [page.locator(f'[name="rounds.0.bore.sweeps.0.{i}"]') for i in range(4)]
        if what == "type":
            for field, text in zip(fields, TYPED, strict=False):
                page.locator("#kept").evaluate("place => { place.dataset.kept = 'not yet' }")
                field.fill(text)
                expect(page.locator("#kept")).to_have_attribute("data-kept", "yes")
            print("typed", flush=True)
            page.wait_for_timeout(60_000)
        else:
            page.wait_for_timeout(1500)
            print(json.dumps([field.input_value() for field in fields]), flush=True)
            context.close()


if __name__ == "__main__":
    main(*sys.argv[1:])
