"""Only the newest question counts; a worker that breaks is started again, once."""

from __future__ import annotations

import json
from typing import Any

import pytest
from playwright.sync_api import Page

import build
from tests.web.page import Guard, main_of
from tests.web.server import Server

# Stands in for the worker: says what the question tells it to say.
STAND_IN = b"""
const answer = (id, text) => postMessage({ kind: 'answer', id, text, ms: 1 });
self.onmessage = async ({ data }) => {
    if (data.code || data.library) return;
    if (data.start) return setTimeout(() => postMessage({ kind: 'ready' }), 50);
    const { language, ...question } = JSON.parse(data.text);
    const { breaks = 0, raises = false } = question;
    const kept = await caches.open('stand-in');
    const broken = (await kept.keys()).length;
    if (broken < breaks) {
        await kept.put(`/broken/${broken}`, new Response(''));
        return postMessage({ kind: 'failed', id: data.id, why: 'It broke.', fatal: true });
    }
    if (raises)
        return postMessage({ kind: 'failed', id: data.id, why: 'A fault.', fatal: false });
    const told = question.tell ? { language } : question;
    setTimeout(() => answer(data.id, JSON.stringify(told)), 20);
};
"""


@pytest.fixture
def run(page: Page, server: Server) -> Any:
    """Runs questions against the stand-in; gives the answers in the order of asking."""
    server.bodies["worker.js"] = lambda _: STAND_IN
    page.goto(server.address)
    main = page.locator("script[type=module]").first.evaluate("script => script.src")

    def ask_all(questions: list[dict[str, Any]], *, wait: bool, apart: bool = False) -> Any:
        script = """async ([main, questions, wait, apart]) => {
            const { startMessenger } = await import(main);
            const failures = [];
            const ready = Promise.withResolvers();
            const python = startMessenger({
                onReady: ready.resolve, onFailed: (why) => failures.push(why),
            });
            if (wait) await ready.promise;
            const answers = [];
            for (const question of questions) {
                const answer = python.ask(question).catch((error) => error.message);
                answers.push(apart ? await answer : answer);
            }
            const result = await Promise.all(answers);
            python.stop();
            return { answers: result, failures };
        }"""
        return page.evaluate(script, [main, questions, wait, apart])

    return ask_all


def test_questions_asked_before_python_is_up_are_answered_by_the_newest(run: Any) -> None:
    told = run([{"n": 1}, {"n": 2}, {"n": 3}], wait=False)
    assert told == {"answers": [None, None, {"n": 3}], "failures": []}


def test_a_question_that_was_overtaken_gets_no_answer(run: Any) -> None:
    told = run([{"n": 1}, {"n": 2}, {"n": 3}], wait=True)
    assert told == {"answers": [None, None, {"n": 3}], "failures": []}


def test_questions_one_after_the_other_are_all_answered(run: Any) -> None:
    told = run([{"n": 1}, {"n": 2}], wait=False, apart=True)
    assert told == {"answers": [{"n": 1}, {"n": 2}], "failures": []}


def test_every_question_says_in_which_language_it_is_to_be_answered(run: Any) -> None:
    told = run([{"tell": True}], wait=True)
    assert told == {"answers": [{"language": "en"}], "failures": []}


def test_a_fault_in_one_answer_leaves_the_next_alone(run: Any) -> None:
    told = run([{"raises": True}, {"n": 2}], wait=True, apart=True)
    assert told == {"answers": ["A fault.", {"n": 2}], "failures": []}


def test_a_broken_worker_is_replaced_and_the_question_asked_again(run: Any) -> None:
    told = run([{"breaks": 1}, {"n": 2}], wait=True, apart=True)
    assert told == {"answers": [{"breaks": 1}, {"n": 2}], "failures": []}


def test_a_newer_question_is_kept_when_the_worker_breaks(run: Any) -> None:
    told = run([{"breaks": 1}, {"n": 2}], wait=True)
    assert told == {"answers": [None, {"n": 2}], "failures": []}


def test_a_worker_that_breaks_twice_is_given_up_with_the_reason(run: Any) -> None:
    told = run([{"breaks": 2}, {"n": 2}], wait=True, apart=True)
    assert told == {"answers": ["It broke.", "It broke."], "failures": ["It broke."]}


def test_the_stand_in_speaks_as_the_true_worker_does() -> None:
    """The kinds of message in the worker's own words are those that the stand-in uses."""
    script = (build.WEB / "scripts" / "python" / "worker.js").read_text("utf-8")
    for kind in ("ready", "answer", "failed"):
        assert json.dumps(kind).replace('"', "'") in script
        assert kind.encode() in STAND_IN


# Hangs for ever in a start from a snapshot; a plain start goes well.
HANGING = b"""
self.onmessage = ({ data }) => {
    if (data.start && !data.plain) return postMessage({ kind: 'restoring' });
    if (data.start) return postMessage({ kind: 'ready', restored: false });
    if (data.id) postMessage({ kind: 'answer', id: data.id, text: data.text, ms: 1 });
};
"""


def test_a_snapshot_that_hangs_is_given_up_for_a_plain_start(page: Page, server: Server) -> None:
    server.bodies["worker.js"] = lambda _: HANGING
    page.goto(server.address)
    answered = page.evaluate(
        """async main => {
            const { startMessenger } = await import(main);
            const failures = [];
            const onFailed = (why) => failures.push(why);
            const python = startMessenger({ onFailed, patience: 1 });
            const answer = await python.ask({ n: 1 });
            python.stop();
            return [answer, failures];
        }""",
        main_of(page),
    )
    assert answered == [{"n": 1, "language": "en"}, []]


LATER = """async (main) => {
    const { startMessenger } = await import(main);
    const order = [];
    const ready = Promise.withResolvers();
    const python = startMessenger({ onReady: ready.resolve });
    await ready.promise;
    const asked = (name, answer) => answer.then((value) => order.push([name, value]));
    const all = [
        asked('first', python.ask({ n: 1 })),
        asked('old later', python.askLater({ n: 2 })),
        asked('later', python.askLater({ n: 3 })),
        asked('second', python.ask({ n: 4 })),
    ];
    await Promise.all(all);
    python.stop();
    return order;
}"""


def test_what_has_time_waits_for_every_question(page: Page, server: Server) -> None:
    """It overtakes none, and none of it is lost but what a later one of its kind replaced."""
    server.bodies["worker.js"] = lambda _: STAND_IN
    page.goto(server.address)
    assert page.evaluate(LATER, main_of(page)) == [
        ["old later", None],
        ["first", None],
        ["second", {"n": 4}],
        ["later", {"n": 3}],
    ]


QR = """async (main) => {
    const { startMessenger } = await import(main);
    const python = startMessenger({});
    await python.ask({ form: {} });
    const settled = (promise) => promise.catch((error) => error.message);
    const drawn = [python.drawQr('old'), python.drawQr('new')].map(settled);
    const answer = await python.ask({ form: {} });
    const codes = await Promise.all(drawn);
    python.stop();
    return [codes[0], codes[1]?.state ?? codes[1], answer.state];
}"""


def test_the_newest_qr_code_counts(page: Page, server: Server) -> None:
    page.goto(server.address)
    assert page.evaluate(QR, main_of(page)) == [None, "qr", "waiting"]


def test_a_qr_code_that_cannot_be_drawn_costs_no_answer(
    page: Page, server: Server, guard: Guard
) -> None:
    guard.allow("404")
    server.missing.add("qr.zip")
    page.goto(server.address)
    assert page.evaluate(QR, main_of(page)) == [
        None,
        "The file qr.zip did not arrive (404).",
        "waiting",
    ]
