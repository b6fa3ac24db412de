"""Later starts take a copy of Python's memory; one that does not do is never more than slow."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest
from playwright.sync_api import BrowserContext, Page

from sweepsheet.page import handle_request
from tests.cases import forms
from tests.web.page import (
    KEEPS_NOTHING,
    ask,
    main_of,
    open_and_keep,
    open_lines,
    wait_for_offline,
    wait_for_python,
    wait_for_snapshot,
)
from tests.web.server import Server

if TYPE_CHECKING:
    from collections.abc import Iterator

pytestmark = pytest.mark.later

# Starts a worker of its own and tells what it says until it is ready, and its answer.
LISTEN = """async ([main, given, text]) => {
    const at = (name) => new URL(name, main);
    const worker = new Worker(at('worker.js'), { type: 'module' });
    const code = await WebAssembly.compileStreaming(fetch(at('python/pyodide.asm.wasm')));
    const library = await (await fetch(at('python/library.wasm'))).arrayBuffer();
    const said = [];
    try {
        return await new Promise((resolve, reject) => {
            worker.onerror = reject;
            worker.onmessage = ({ data }) => {
                if (data.kind !== 'alive') said.push(data.kind);
                if (data.kind === 'ready') worker.postMessage({ id: 1, text });
                if (data.kind === 'failed') reject(new Error(data.why));
                if (data.kind === 'answer') resolve([said, JSON.parse(data.text)]);
            };
            worker.postMessage({ start: true, plain: false, ...given });
            worker.postMessage({ code });
            worker.postMessage({ library });
        });
    } finally {
        worker.terminate();
    }
}"""
# What may become of a snapshot: its pages, as kept, and the headers that tell of them.
CHANGE = """async (change) => {
    const cache = await caches.open((await caches.keys())[0]);
    const place = (await cache.keys()).find(({ url }) => url.endsWith('/python/snapshot'));
    const kept = await cache.match(place);
    const headers = Object.fromEntries(kept.headers);
    let body = await kept.blob();
    const checksum = async () => {
        const hash = await crypto.subtle.digest('SHA-256', await body.arrayBuffer());
        headers['pages-sha-256'] = new Uint8Array(hash).join(' ');
    };
    switch (change) {
        case 'truncated':
            body = body.slice(0, body.size / 2);
            break;
        case 'one byte':
            body = new Blob([body.slice(0, 9999), new Uint8Array([1, 2, 3]), body.slice(10002)]);
            break;
        case 'no snapshot':
            body = new Blob([new Uint8Array(1 << 20)]);
            await checksum();
            break;
        case 'memory overwritten':
            body = new Blob([body.slice(0, 1 << 20), new Uint8Array(body.size - (1 << 20))]);
            await checksum();
            break;
        case 'another answer':
            headers['answer-sha-256'] = '1 2 3';
            break;
        case 'another browser':
            headers['made-by'] = 'Another browser 1.0';
            break;
        case 'missing':
            return cache.delete(place);
    }
    await cache.put(place, new Response(body, { headers }));
}"""
# The snapshot into a cache of the test's own, and back.
PUT_BY = """async () => {
    const aside = await caches.open('put by');
    const cache = await caches.open((await caches.keys())[0]);
    const place = (await cache.keys()).find(({ url }) => url.endsWith('/python/snapshot'));
    await aside.put(place, await cache.match(place));
}"""
BRING_BACK = """async () => {
    const aside = await caches.open('put by');
    const cache = await caches.open((await caches.keys())[0]);
    for (const place of await aside.keys()) await cache.put(place, await aside.match(place));
    await caches.delete('put by');
}"""
IS_KEPT = """async () => {
    const cache = await caches.open((await caches.keys())[0]);
    return (await cache.keys()).some(({ url }) => url.endsWith('/python/snapshot'));
}"""


def listen(page: Page, form: forms.Form, **given: bool) -> tuple[list[str], Any]:
    text = json.dumps({"form": form})
    said, answered = page.evaluate(LISTEN, [main_of(page), given, text])
    return said, answered


def in_this_python(form: forms.Form) -> Any:
    return json.loads(handle_request(json.dumps({"form": form})))


@pytest.fixture
def kept(page: Page, server: Server) -> Iterator[Page]:
    """A page that has been opened before: its snapshot may be spoiled, and is sound again after."""
    open_and_keep(page, server.address)
    wait_for_snapshot(page)
    page.evaluate(PUT_BY)
    yield page
    page.evaluate(BRING_BACK)


def test_a_start_from_the_snapshot_answers_as_the_core_does(kept: Page) -> None:
    said, answered = listen(kept, forms.THREE_ROUNDS)
    assert said == ["restoring", "ready", "answer"]
    assert answered == in_this_python(forms.THREE_ROUNDS)
    kept.reload()
    wait_for_python(kept)
    assert [ask(kept, {"form": form}) for form in forms.ALL.values()] == [
        in_this_python(form) for form in forms.ALL.values()
    ]


def test_every_path_of_the_page_works_on_the_pruned_library(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    for name, form in forms.ALL.items():
        assert ask(page, {"form": form}) == in_this_python(form), name


@pytest.mark.kept
def test_the_snapshot_works_without_a_signal(
    kept: Page, context: BrowserContext, server: Server
) -> None:
    context.set_offline(True)
    server.stop()
    kept.reload()
    wait_for_python(kept)
    said, answered = listen(kept, forms.WHOLE)
    assert said == ["restoring", "ready", "answer"]
    assert answered == in_this_python(forms.WHOLE)


@pytest.mark.parametrize(
    "change",
    ["truncated", "one byte", "no snapshot", "memory overwritten", "another answer"],
)
def test_a_snapshot_that_does_not_do_is_dropped_for_a_plain_start(kept: Page, change: str) -> None:
    kept.evaluate(CHANGE, change)
    said, answered = listen(kept, forms.BORE)
    assert said == ["restoring", "ready", "answer"]
    assert answered == in_this_python(forms.BORE)
    assert not kept.evaluate(IS_KEPT)
    assert listen(kept, forms.BORE) == (["ready", "answer"], answered)


@pytest.mark.parametrize("change", ["missing", "another browser"])
def test_no_snapshot_of_this_browser_means_a_plain_start(kept: Page, change: str) -> None:
    kept.evaluate(CHANGE, change)
    said, answered = listen(kept, forms.BORE)
    assert said == ["ready", "answer"]
    assert answered == in_this_python(forms.BORE)


def test_a_start_that_must_be_plain_forgets_the_snapshot(kept: Page) -> None:
    said, _ = listen(kept, forms.BORE, plain=True)
    assert said == ["ready", "answer"]
    assert not kept.evaluate(IS_KEPT)


def test_a_lost_snapshot_is_made_again(kept: Page) -> None:
    kept.evaluate(CHANGE, "missing")
    kept.reload()
    wait_for_python(kept)
    wait_for_offline(kept)
    assert wait_for_snapshot(kept) > 1e6


@pytest.mark.kept
def test_a_full_storage_means_a_plain_start(
    page: Page, context: BrowserContext, server: Server
) -> None:
    page.goto(server.address)
    wait_for_python(page)
    wait_for_offline(page)
    quota = {"origin": server.address, "quotaSize": 1 << 20}
    context.new_cdp_session(page).send("Storage.overrideQuotaForOrigin", quota)
    with page.expect_console_message(lambda message: "No snapshot was made" in message.text):
        pass
    assert not page.evaluate(IS_KEPT)
    page.reload()
    wait_for_python(page)
    assert listen(page, forms.BORE)[0] == ["ready", "answer"]


@pytest.mark.kept
def test_what_was_typed_is_not_in_the_snapshot(page: Page, server: Server) -> None:
    page.goto(server.address)
    wait_for_python(page)
    wait_for_offline(page)
    open_lines(page)
    page.fill("#limit-source", "Invented manual, page 4711")
    wait_for_snapshot(page)
    found = page.evaluate(
        """async () => {
            const cache = await caches.open((await caches.keys())[0]);
            const all = await cache.keys();
            const kept = await cache.match(all.find(({ url }) => url.endsWith('/snapshot')));
            const decoder = new TextDecoder('latin1');
            const text = decoder.decode(await kept.arrayBuffer());
            return ['Invented manual', 'sweepsheet'].map((words) => text.includes(words));
        }"""
    )
    assert found == [False, True]


@pytest.mark.new
def test_nothing_is_fetched_twice_for_the_first_answer(page: Page, server: Server) -> None:
    # Without the service worker, which then asks for every file in order to keep it.
    page.add_init_script(KEEPS_NOTHING)
    page.goto(server.address)
    wait_for_python(page)
    wait_for_offline(page, "unsupported")
    assert sorted(server.asked) == sorted(set(server.asked))
