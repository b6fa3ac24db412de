"""A pupil's results on their way to the teacher: what was typed, and nothing else."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.link.codec import LONGEST_LINK, packed
from sweepsheet.link.results import (
    BEGINNING,
    LONGEST_NAME,
    MOST_PUPILS,
    read_results,
    results_link,
)
from sweepsheet.page import handle_request
from sweepsheet.practice.course import MOST_EXERCISES, exercises_of, in_set
from sweepsheet.practice.housing import HIGHEST_SEED, true_housing_of
from sweepsheet.words.faults import InputError

Form = dict[str, str]
TYPED = st.text("0123456789+-,.: °", min_size=1, max_size=20).map(str.strip).filter(bool)
SETS = st.lists(
    st.tuples(st.integers(1, 6), st.integers(1, HIGHEST_SEED)), min_size=1, max_size=MOST_EXERCISES
).map(lambda found: ".".join(f"{level}-{seed}" for level, seed in found))


def ask(name: str, what: Any, language: str = "en") -> dict[str, Any]:
    found: dict[str, Any] = json.loads(
        handle_request(json.dumps({name: what, "language": language}))
    )
    return found


@st.composite
def works(draw: st.DrawFn) -> Form:
    """The form of an exercise, as far as anybody got."""
    rounds = draw(st.integers(1, 3))
    form = {"exercise.rounds": str(rounds)} if rounds > 1 else {}
    form |= draw(st.sampled_from([{}, {"units": "metric"}, {"exercise.positions": "8"}]))
    for n in range(rounds):
        if n:
            fields = {"squared": ("square.runout", "square.at"), "plate_turned": ()}
            act = draw(st.sampled_from(sorted(fields)))
            form[f"rounds.{n}.act"] = act
            form |= {f"rounds.{n}.{name}": draw(TYPED) for name in fields[act]}
        for part in draw(st.sampled_from([(), ("bore",), ("bore", "face")])):
            at = f"rounds.{n}.{part}"
            form |= {f"{at}.sweeps.0.{i}": draw(TYPED) for i in range(draw(st.integers(1, 12)))}
            form[f"{at}.closing.0"] = draw(TYPED)
    return form


@given(SETS, st.text("Añ <>&'\"", max_size=20), st.data())
def test_what_was_typed_comes_back(exercises: str, name: str, data: st.DataObject) -> None:
    work = [data.draw(works()) for _ in exercises_of(exercises)]
    results = read_results(results_link(exercises, name, work))
    assert (results.set, results.name) == (exercises, name.strip())
    for n, (sent, got) in enumerate(zip(work, results.work, strict=True), 1):
        assert got == sent | {"exercise.set": exercises, "exercise.at": str(n)}


def swept(exercises: str, units: str = "inch") -> list[Form]:
    """Every exercise swept once as its dial shows it."""
    work = []
    for n in range(len(exercises_of(exercises))):
        form = {"exercise.set": exercises, "exercise.at": str(n + 1), "units": units}
        practice = ask("practice", form)["practice"]
        entries = [practice["turn"][stop] for stop in practice["stops"]]
        work.append(form | {entry["field"]: entry["typed"] for entry in entries})
    return work


def test_a_full_set_is_far_from_the_longest_link() -> None:
    """Ten exercises, eight readings of bore and face in four rounds each."""
    rounds = {
        f"rounds.{n}.{part}.sweeps.0.{i}": f"{(7 * n + 3 * i) % 23 - 11.5:+g}"
        for n in range(4)
        for part in ("bore", "face")
        for i in range(8)
    }
    acts = {f"rounds.{n}.act": "dowels" for n in range(1, 4)}
    form = {"exercise.rounds": "4", "exercise.positions": "8", **rounds, **acts}
    work = [form | {"rounds.1.dowels.0.offset": f"{n}"} for n in range(10)]
    exercises = ".".join(["6-999999"] * 10)
    assert len(results_link(exercises, "Ana", work)) < LONGEST_LINK / 2


def test_too_much_is_refused_in_words() -> None:
    form = {
        f"rounds.{n}.bore.sweeps.{j}.{i}": f"{(n * 7919 + j * 104729 + i * 12997) % 999983}.{n}{j}"
        for n in range(20)
        for j in range(9)
        for i in range(12)
    }
    asked = {"set": "1-1", "name": "", "work": [form]}
    sent = ask("send_results", asked)
    assert sent["fragment"] == ""
    assert "characters" in sent["trouble"]
    # Little in the link, and too much once it is unpacked.
    same = dict.fromkeys(form, "11111111")
    many = {"set": ".".join(["1-1"] * 10), "name": "", "work": [same] * 10}
    assert ask("send_results", many)["fragment"] == ""
    assert ask("send_results", many)["trouble"]


def test_what_no_page_makes_is_left_out() -> None:
    """A thirteenth position, a count of rounds that is none, a text that goes on for ever."""
    form = {"rounds.0.bore.sweeps.0.12": "1", "rounds.0.bore.sweeps.0.0": "7" * 99, "x": "1"}
    (got,) = read_results(results_link("1-1", "", [form | {"exercise.rounds": "many"}])).work
    assert got["rounds.0.bore.sweeps.0.0"] == "7" * 20
    assert got["rounds.0.bore.closing.0"] == ""
    assert "rounds.0.bore.sweeps.0.12" not in got
    assert "x" not in got


# The teacher's table ---------------------------------------------------------------------------


def test_the_table_is_worked_out_from_what_was_typed() -> None:
    """A pupil who swept, one who did nothing, and one who came to the end."""
    exercises = "1-417.2-417"
    work = swept(exercises)
    done = work[0] | {
        "exercise.rounds": "2", "rounds.1.act": "dowels",
        "rounds.1.dowels.0.offset": "0", "rounds.1.dowels.0.aim": "12",
    }  # fmt: skip
    links = [
        "https://example.org/practice.html#results=" + results_link(exercises, "Ana <b>", work),
        results_link(exercises, "", []),
        results_link("1-417", "Eva", [done]),
    ]
    shown = ask("open_results", "\n\n".join(links))
    assert shown["troubles"] == []
    assert shown["head"][0] == "Pupil"
    names = [row[0] for row in shown["rows"]]
    assert names == ["Ana <b>", "Ana <b>", "Pupil 2", "Pupil 2", "Eva"]
    titles = [row[1] for row in shown["rows"]]
    assert titles[:2] == ["417, level 1", "417, level 2"]
    first = shown["rows"][0]
    assert first[2].split(" thou")[0] == pytest.approx(first[3].split(" thou")[0]) or (
        abs(float(first[2].split(" ")[0]) - float(first[3].split(" ")[0])) < 0.5
    )
    assert first[5:] == ["no", "no, not shown to be within"]
    assert shown["rows"][2][2] == "not swept"
    assert shown["rows"][4][6] == "no, not swept at the end"
    other = ask("open_results", "\n\n".join(links), "es")
    assert other["rows"][2][:3] == ["Alumno 2", "417, nivel 1", "sin barrido"]


def test_who_stops_within_has_stopped_rightly_and_a_forged_reading_has_not() -> None:
    """Readings that say all is well, of a bore that is 6 to 12 thou off."""
    forged = swept("1-417")[0]
    forged |= {name: "0" for name in forged if name.startswith("rounds.")}
    (row,) = ask("open_results", results_link("1-417", "", [forged]))["rows"]
    assert row[5:] == ["no", "no, it is really outside"]
    good = next(s for s in range(1, 300) if true_housing_of(s, 2).center.length < 2.0 * 0.0254)
    (row,) = ask("open_results", results_link(f"2-{good}", "", swept(f"2-{good}")))["rows"]
    assert row[5:] == ["yes", "yes"]


# What comes from outside -----------------------------------------------------------------------


@pytest.mark.parametrize(
    "text",
    ["", "2", "8-1", "0-1", "1-0", "1-01", "1-1000000", "1-1.", ".1-1", "1-1,1-2", "1-1 ", "１-1",
     "1--1", ".".join(["1-1"] * 11), "<img src=x>", "1-1\n"],
)  # fmt: skip
def test_what_is_no_set_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        exercises_of(text)
    if text:
        (fault,) = ask("practice", {"exercise.set": text})["practice"]["faults"]
        assert fault["field"] == "exercise.set"
        assert fault["text"].startswith("This is no set")


@pytest.mark.parametrize("at", ["0", "3", "-1", "x", "", "1.0"])
def test_a_place_that_the_set_has_not_is_a_fault(at: str) -> None:
    form = {"exercise.set": "2-417.6-12", "exercise.at": at}
    (fault,) = ask("practice", form)["practice"]["faults"]
    assert fault["field"] == "exercise.at"


def test_the_set_says_which_exercise_it_is_whatever_stands_beside_it() -> None:
    form = {"exercise.set": "2-417.6-12", "exercise.at": "2", "exercise.seed": "5"}
    practice = ask("practice", form)["practice"]
    assert practice["title"] == "Exercise 12, level 6"
    assert (practice["place"], practice["places"]) == ("Exercise 2 of 2", ["1", "2"])
    assert in_set({"units": "inch"}) == {"units": "inch"}


def forged(*parts: object) -> str:
    return BEGINNING + packed(json.dumps(parts))


HOSTILE = [
    "", "P1", "P2abc", "x", "P1!", BEGINNING + "A" * LONGEST_LINK, "#results=P1",
    results_link("1-1", "Ana", [{"units": "metric"}])[:-3],
    forged(), forged("1-1", "n", {}), forged("1-1", "n", []), forged("1-1", 3, [{}]),
    forged("1-1", "n" * (LONGEST_NAME + 1), [{}]), forged("1-1", "a\x00b", [{}]),
    forged("9-1", "n", [{}]), forged("1-1", "n", [3]), forged("1-1", "n", [{"a1": 3}]),
    forged("1-1", "n", [{"x": "1"}]), forged("1-1", "n", [{"b0.0": "1" * 21}]),
    forged("1-1", "n", [{"b0.0": "|" * 13}]), forged("1-1", "n", [{"a1": "dowels"}]),
    forged("1-1", "n", [{"a1": "blow|up"}]), forged("1-1", "n", [{"u": "inch|mm"}]),
    forged("1-1", "n", [{"u": "furlong"}]), forged("1-1", "n", [{"r": "99"}]),
    forged("1-1", "n", [{"r": "2", "a1": "squared|1|12"}]),
    forged("1-1", "n", [{"exercise.level": "3"}]),
    BEGINNING + packed("[" * 4000), BEGINNING + packed("[1"),
]  # fmt: skip


@pytest.mark.parametrize("link", [each for each in HOSTILE if each])
def test_a_forged_or_cut_link_is_refused_in_words(link: str) -> None:
    shown = ask("open_results", link)
    assert shown["rows"] == []
    (trouble,) = shown["troubles"]
    assert trouble.startswith("Line 1: ")
    assert len(trouble) < 200


@given(st.text(max_size=60))
def test_anything_pasted_is_answered(text: str) -> None:
    assert ask("open_results", text)["rows"] == []


def test_one_bad_line_does_not_hide_the_others() -> None:
    good = results_link("1-1", "Ana", [])
    shown = ask("open_results", f"nothing\n{good}\n")
    assert len(shown["rows"]) == 1
    assert shown["troubles"] == ["Line 1: This is no link of results."]
    assert ask("open_results", "")["troubles"] == []
    many = ask("open_results", "x\n" * (MOST_PUPILS + 1))["troubles"]
    assert len(many) == MOST_PUPILS + 1
    assert many[-1] == f"Only the first {MOST_PUPILS} links were opened."


@pytest.mark.parametrize(
    "what",
    [1, {}, {"set": "1-1", "name": "", "work": 1}, {"set": 1, "name": "", "work": []},
     {"set": "1-1", "name": 1, "work": []}],
)  # fmt: skip
def test_what_is_no_work_is_refused(what: object) -> None:
    with pytest.raises(ValueError, match="filled-in form"):
        ask("send_results", what)


def test_work_of_no_set_is_refused_in_words() -> None:
    sent = ask("send_results", {"set": "no", "name": "", "work": []})
    assert sent["trouble"].startswith("This is no set")
