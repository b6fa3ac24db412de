"""Each true state is told what it must be told, and never what would make it worse."""

from __future__ import annotations

import pytest

from sweepsheet import sheet, solve
from sweepsheet.words.en.core import TABLE
from tests.cases.jobs import Data
from tests.core.shop import Mechanic
from tests.core.states import STATES, State

# Parts of other sentences.
FRAGMENTS = {"do.unlike", "do.unlike-stock"}


def said(mechanic: Mechanic) -> set[str]:
    """Findings and steps."""
    result = solve(mechanic.job)
    steps = {f"do.{step['code']}" for step in result["advice"]}
    return steps | {finding["code"] for finding in result["findings"]}


def job_in(name: str) -> Data:
    """What the mechanic in the state of this name has typed."""
    (state,) = (state for state in STATES if state.name == name)
    return state.mechanic().job


def named(state: State) -> str:
    return state.name


@pytest.mark.parametrize("state", STATES, ids=named)
def test_what_is_said_of_a_true_state(state: State) -> None:
    found = said(state.mechanic())
    assert set(state.says.split()) - found == set(), sorted(found)
    assert found & set(state.never.split()) == set()


@pytest.mark.parametrize("state", [s for s in STATES if s.ends], ids=named)
def test_who_obeys_is_not_worse_off(state: State) -> None:
    """He ends as told, knows it truly, cut nothing in vain, and is no further off than before."""
    mechanic = state.mechanic()
    before = mechanic.shop.offset
    end = mechanic.work()
    assert end.kind == state.ends, end.told
    assert not end.fooled
    assert end.needless == []
    assert end.offset <= max(before, end.limit)


def test_every_finding_and_every_step_has_its_state() -> None:
    told = {code for state in STATES for code in state.says.split()}
    keys = {key for key in TABLE if key.startswith("do.")} - FRAGMENTS
    keys = {"do.fix-stop" if key.startswith("do.fix.") else key for key in keys}
    # How the dowels that are in are turned is said in the words of the trim.
    keys |= {"do.trim"} | {
        key.removeprefix("finding.") for key in TABLE if key.startswith("finding.")
    }
    assert keys - told == set()
    assert told - keys == set()


def test_there_are_sixty_of_them_at_least_and_no_two_alike() -> None:
    assert len({state.name for state in STATES}) == len(STATES) >= 60


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("bore 1 off", "Within the limit"),
        ("tipped, swept twice", "Bore within, face outside"),
        ("dial slips in its bracket", "Don't trust it: sweep again"),
        ("a wrong sign among eight", "Don't trust it: sweep again"),
        ("bore 8 low", "Outside the limit"),
        ("shaft bottoms in the crank, a spacer cures it", "Bore within, depth does not fit"),
    ],
)
def test_the_large_word_over_the_answer(name: str, word: str) -> None:
    """Nothing reads as well at first sight while the face is out, or while nothing is known."""
    (line,) = (each for each in sheet(job_in(name)).splitlines() if each.startswith(f"{word}. "))
    assert " thou off, " in line


@pytest.mark.parametrize(
    "name",
    [
        "bracket moved between two sweeps", "a wrong sign among four", "a wrong sign among eight",
        "end play let into the face", "tipped, swept twice", "face near its limit",
    ],
)  # fmt: skip
def test_no_choice_is_marked_while_something_comes_first(name: str) -> None:
    """... nor the dowels drawn, nor how to turn those that are in."""
    job = job_in(name)
    assert solve(job)["dowel_choice"] is None
    assert "\n> " not in sheet(job)
