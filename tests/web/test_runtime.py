"""Where Python cannot start, the page says so plainly and never hangs."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from tests.web.page import EMPTY_FORM, Guard, ask, wait_for_python
from tests.web.server import Server

WASM = "pyodide.asm.wasm"


def expect_sentence(page: Page, words: str) -> None:
    wait_for_python(page, "failed")
    expect(page.locator("#status")).to_contain_text(words)
    expect(page.locator("#progress")).to_be_hidden()


@pytest.mark.parametrize("name", [WASM, "library.wasm"])
def test_a_missing_file_of_python_is_named(
    page: Page, server: Server, guard: Guard, name: str
) -> None:
    guard.allow("404")
    server.missing.add(name)
    page.goto(server.address)
    expect_sentence(page, name)


@pytest.mark.parametrize("name", ["worker.js", "pyodide.js", "pyodide.asm.js"])
def test_a_missing_script_is_told(page: Page, server: Server, guard: Guard, name: str) -> None:
    guard.allow("404")
    server.missing.add(name)
    page.goto(server.address)
    expect_sentence(page, "did not start")


def test_a_host_that_sends_the_wrong_type_for_wasm_does_no_harm(page: Page, server: Server) -> None:
    server.types[WASM] = "application/octet-stream"
    page.goto(server.address)
    wait_for_python(page)
    assert ask(page, EMPTY_FORM)["state"] == "waiting"


def test_wasm_that_cannot_be_compiled_is_told(page: Page, server: Server) -> None:
    server.bodies[WASM] = lambda body: body[: len(body) // 2]
    page.goto(server.address)
    expect_sentence(page, "did not start")


@pytest.mark.parametrize(
    ("thing", "words"), [("WebAssembly", "WebAssembly"), ("Worker", "workers")]
)
def test_a_browser_without_the_means_is_told_at_once(
    page: Page, server: Server, thing: str, words: str
) -> None:
    page.add_init_script(f"delete globalThis.{thing}")
    page.goto(server.address)
    expect_sentence(page, words)


def test_a_start_that_hangs_ends_with_a_message(page: Page, server: Server) -> None:
    page.clock.install()
    server.held.add(WASM)
    page.goto(server.address)
    wait_for_python(page, "starting")
    # What came late on a busy machine is a sign of life: two minutes are counted from there.
    for _ in range(5):
        page.clock.run_for(121_000)
        if page.locator("html[data-python=failed]").count():
            break
        page.wait_for_timeout(1000)
    expect_sentence(page, "nothing has come")


def test_the_download_is_told_byte_by_byte(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    told = page.evaluate(
        """async main => {
            const { startMessenger } = await import(main);
            const steps = [];
            await new Promise((onReady, onFailed) => {
                const onProgress = (loaded, total) => steps.push([loaded, total]);
                startMessenger({ onProgress, onReady, onFailed });
            });
            return steps;
        }""",
        page.locator("script[type=module]").first.evaluate("script => script.src"),
    )
    python = next(server.folder.glob("r-*/python"))
    total = sum((python / name).stat().st_size for name in (WASM, "library.wasm"))
    assert len(told) > 2
    assert [loaded for loaded, _ in told] == sorted(loaded for loaded, _ in told)
    assert told[-1] == [total, total]
