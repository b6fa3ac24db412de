"""Links: whole, short, and never more than a sentence where they are broken or hostile."""

from __future__ import annotations

import base64
import copy
import json
import random
import re
import string
import zlib
from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sweepsheet.job.checklist import CODES, RECORDED
from sweepsheet.job.model import ABOUT_KEYS, Since
from sweepsheet.job.read import read_job
from sweepsheet.link.codec import (
    LETTERS,
    LONGEST_LINK,
    LONGEST_UNPACKED,
    PAIRS,
    SHORT,
    WORDS,
    fragment_of,
    minimal,
    read_link,
)
from sweepsheet.link.figures import JOB_FIGURES, ROUND_FIGURES
from sweepsheet.link.share import open_link
from sweepsheet.page import handle_request
from sweepsheet.words.en.core import ENGLISH
from sweepsheet.words.faults import InputError
from tests.cases.jobs import EIGHTHS, QUARTERS, make_job, since, then, whole_job
from tests.cases.links import link_of, ordinary_job, packed, unpacked

Data = dict[str, Any]


def test_a_link_is_letters_digits_hyphen_and_underscore() -> None:
    """Which RFC 3986 allows in a fragment, and no messenger takes for the end of an address."""
    assert re.fullmatch(r"3[A-Za-z0-9_-]+", link_of(whole_job()))


@pytest.mark.parametrize(("positions", "most"), [(QUARTERS, 450), (EIGHTHS, 500)])
def test_an_ordinary_job_makes_a_short_link(positions: tuple[float, ...], most: int) -> None:
    assert len(link_of(ordinary_job(positions))) <= most


def test_a_link_can_be_read_with_plain_tools() -> None:
    """As core/link.md describes it: base64url, zlib, JSON, and the table of keys."""
    job, figures = json.loads(unpacked(link_of(ordinary_job(QUARTERS))))
    letter = dict(zip(WORDS, LETTERS, strict=False))
    assert job[letter["about"]][letter["customer"]] == "A. Winter"
    assert dict(zip(JOB_FIGURES, figures[0].split("|"), strict=False))["limit_tir"] == "10.0"
    first = dict(zip(ROUND_FIGURES, figures[1].split("|"), strict=False))
    assert first["verdict"] == "outside"
    assert len(figures) == 3


def test_words_have_each_a_letter_of_its_own() -> None:
    assert len(set(WORDS)) == len(WORDS) == len(set(SHORT.values())) == len(SHORT)
    assert len(set(LETTERS)) == len(LETTERS)
    # A pair is no letter and no key that is written in full.
    assert set(PAIRS).isdisjoint({*LETTERS, *WORDS})
    assert set(ABOUT_KEYS) | set(RECORDED) <= set(WORDS)
    # Safe in JSON and of one byte.
    assert set(LETTERS).isdisjoint('"\\')
    assert LETTERS.isascii()


def test_the_letters_never_change() -> None:
    """Links that are out there rest on them: the first, some between, and the last."""
    expected = {
        "about": "a",
        "limits": "b",
        "source": "c",
        "rounds": "d",
        "units": "n",
        "kind": "0",
    }
    expected |= {"bore": "!", "face": "#", "opposite": "%", "checklist": "&"}
    expected |= {"faces_clean": "(", "record_given": ">"}
    assert {key: SHORT[key] for key in expected} == expected


def test_what_changes_nothing_is_left_out() -> None:
    data = minimal(ordinary_job(EIGHTHS))
    assert data.keys() == {"about", "limits", "indicator", "rounds"}
    assert data["limits"] == {"source": "maker's manual, p. 12-4"}
    assert data["indicator"] == {"sag": 1.5}
    assert data["rounds"][0].keys() == {"bore", "face"}
    assert all(type(m) is int for m in data["rounds"][0]["bore"]["positions_deg"])


def test_a_round_keeps_its_name_wherever_it_stands() -> None:
    """The usual name depends on the place."""
    job = then(ordinary_job(QUARTERS), ordinary_job(QUARTERS))
    job["rounds"][3]["name"] = "as found"
    job["rounds"][1]["name"] = "round 2"
    linked = read_link(link_of(job))
    assert [each.name for each in read_job(linked.data).rounds] == [
        "as found", "round 2", "round 3", "as found",
    ]  # fmt: skip


# Any job ------------------------------------------------------------------------------------

NUMBERS = st.floats(-400, 400) | st.integers(-400, 400)
SIZES = st.floats(0.01, 300) | st.integers(1, 300)
TEXTS = st.text(
    st.characters(exclude_categories=["Cc", "Cs", "Cf"]) | st.sampled_from("\n\t<>&\"'"),
    max_size=30,
)


def optional(**keys: st.SearchStrategy[Any]) -> st.SearchStrategy[Data]:
    return st.fixed_dictionaries({}, optional=keys)


@st.composite
def sweeps(draw: st.DrawFn) -> Data:
    positions = draw(st.sampled_from([QUARTERS, EIGHTHS, (0.0, 100.5, 200.25)]))
    count = draw(st.integers(1, 3))
    rows = [[draw(NUMBERS) for _ in positions] for _ in range(count)]
    found: Data = {"positions_deg": list(positions), "sweeps": rows}
    if draw(st.booleans()):
        found["closing"] = [draw(NUMBERS | st.none()) for _ in range(count)]
    return found


@st.composite
def rounds(draw: st.DrawFn) -> Data:
    found: Data = {
        "bore": draw(sweeps()) | draw(optional(contact=st.sampled_from(["inside", "outside"])))
    }
    if draw(st.booleans()):
        keys = optional(end_float=st.sampled_from(["free", "held"]), plunger=st.just("rearward"))
        found["face"] = draw(sweeps()) | {"radius": draw(st.floats(0.1, 100))} | draw(keys)
    if draw(st.booleans()):
        found["name"] = draw(TEXTS)
    dowel = st.fixed_dictionaries({"offset": SIZES, "aim_deg": st.floats(-360, 360)})
    if draw(st.booleans()):
        found["dowels"] = [draw(dowel), draw(dowel)]
    return found


JOBS = st.fixed_dictionaries(
    {
        "format": st.just("sweepsheet-job"),
        "version": st.just(1),
        "rounds": st.lists(rounds(), min_size=1, max_size=3),
    },
    optional={
        "units": st.just("inch"),
        "name": TEXTS,
        "checklist": st.none() | st.lists(st.sampled_from(CODES), max_size=len(CODES)),
        "about": st.dictionaries(st.sampled_from(ABOUT_KEYS), TEXTS),
        "limits": optional(
            bore_offset=SIZES.map(lambda x: x + 0.1) | st.none(), face_runout=st.just(5.0),
            pilot_offset=st.none() | st.just(3), source=TEXTS, confidence=st.floats(0.5, 0.99),
        ),
        "indicator": optional(step=SIZES, sag=SIZES | st.none(), plus_when=st.just("plunger_out")),
        "crank": optional(axis=st.sampled_from(["horizontal", "vertical"]), lift=st.just(0.0)),
        "housing": optional(
            depth=st.just(6.5), pilot_distance=st.none() | st.just(7),
            bolts=st.just([{"at_deg": -30.0, "radius": 7.0}]),
            dowel_holes=st.just([{"at_deg": 270, "radius": 7}, {"at_deg": 90.0, "radius": 7.5}]),
        ),
        "stock": optional(dowel_offsets=st.lists(SIZES, max_size=8), aim_for=st.just("pilot")),
        "chip": st.none() | st.just({"height": 3, "at_deg": 45, "radius": 7.5}),
        "companions": st.just([]) | st.just([{"kind": "pilot_bore", "sweeps": [[0, 1, 2, 1]]}]),
    },
)  # fmt: skip


@pytest.mark.slow
@settings(max_examples=150)
@given(JOBS, st.lists(st.sampled_from(get_args(Since))))
def test_a_job_comes_out_of_its_link_as_it_went_in(plain: Data, done: list[str]) -> None:
    data = since(plain, *done)
    job = read_job(data)
    fragment = fragment_of(data, ("thou", "1.0"))
    linked = read_link(fragment)
    assert read_job(linked.data) == job
    assert linked.figures == ("thou", "1.0")
    assert len(fragment) <= LONGEST_LINK


def test_every_part_of_a_job_comes_out_of_its_link() -> None:
    data = whole_job()
    assert read_job(read_link(link_of(data)).data) == read_job(data)
    assert open_link(link_of(data), ENGLISH)["agrees"]


def test_the_data_are_left_as_they_were() -> None:
    data = whole_job()
    before = json.dumps(data)
    link_of(data)
    assert json.dumps(data) == before


# Refused ------------------------------------------------------------------------------------


def refusal(fragment: str) -> str:
    with pytest.raises(InputError) as caught:
        read_link(fragment)
    return caught.value.faults[0].message.key


@pytest.mark.parametrize(
    ("fragment", "key"),
    [
        ("", "link.none"),
        ("4abc", "link.newer"),
        ("9", "link.newer"),
        ("answer", "link.foreign"),
        ("0abc", "link.foreign"),
        ("javascript:alert(1)", "link.foreign"),
        ("1", "link.cut"),
        ("1abc", "link.cut"),
        ("3", "link.cut"),
        ("2abc", "link.cut"),
        ("3" + "a" * LONGEST_LINK, "link.longer"),
        ("2<b>", "link.cut"),
        (packed("[{}"), "link.cut"),
        (packed(b"\xff\xfe"), "link.cut"),
        (packed("[" * 200 + "]" * 200), "link.cut"),
        (packed('[{"a": NaN}, []]'), "link.cut"),
        (packed('[{"a": 1, "a": 2}, []]'), "link.cut"),
        (packed('[{"a": 1, "about": 2}, ["", ""]]'), "link.cut"),
        (packed("[" + "1" * 5000 + "]"), "link.cut"),
        (packed("{}"), "link.foreign"),
        (packed("[{}, [], []]"), "link.foreign"),
        (packed("[[], []]"), "link.foreign"),
        (packed("[{}, []]"), "link.figures"),
        (packed('[{}, ["thou"]]'), "link.figures"),
        (packed('[{}, ["thou", 5]]'), "link.figures"),
        (packed('[{}, ["thou", "<b>5</b>"]]'), "link.figures"),
        (packed('[{}, ["thou", "<b>5"]]'), "link.figures"),
        (packed('[{}, ["thou", "5<1"]]'), "link.figures"),
        (packed('[{}, ["thou", ">999%"]]'), "link.figures"),
        (packed('[{}, ["thou", "\u202e5.0"]]'), "link.figures"),
        (packed(json.dumps([{}, ["thou", "5" * 201]])), "link.figures"),
        (packed(json.dumps([{}, ["thou"] * 22])), "link.figures"),
        (packed(" " * (LONGEST_UNPACKED + 1) + "[]"), "link.cut"),
    ],
)
def test_read_link_failure(fragment: str, key: str) -> None:
    assert refusal(fragment) == key


def test_a_link_that_is_cut_anywhere_is_refused() -> None:
    whole = link_of(ordinary_job(QUARTERS))
    assert {refusal(whole[:n]) for n in range(1, len(whole))} == {"link.cut"}
    assert refusal(whole + "a") == "link.cut"


def test_a_bomb_is_not_unpacked() -> None:
    """Five megabytes of blanks in a link of a usual length."""
    bomb = packed(b" " * 5_000_000)
    assert len(bomb) <= LONGEST_LINK
    assert refusal(bomb) == "link.cut"


def test_a_job_too_long_for_a_link_is_told() -> None:
    generator = random.Random(1)
    positions = [5.0 * i for i in range(72)]
    swept = [
        make_job(
            *([generator.uniform(-99, 99) for _ in positions] for _ in range(10)),
            positions=positions,
        )
        for _ in range(4)
    ]
    with pytest.raises(InputError, match="too long for a link"):
        fragment_of(then(*swept), ("thou", "1"))


def test_a_job_that_is_wrong_is_refused_in_words() -> None:
    opened = open_link(packed('[{"d": [{"<img src=x>": 1}]}, ["thou", "5"]]'), ENGLISH)
    assert opened["state"] == "refused"
    assert opened["text"].startswith("The job in this link can't be read: ")
    newer = open_link(packed('[{"version": 2, "d": []}, ["thou", "5"]]'), ENGLISH)
    assert "newer release" in newer["text"]


def test_figures_that_do_not_belong_to_the_readings_are_seen() -> None:
    job, figures = json.loads(unpacked(link_of(ordinary_job(QUARTERS))))
    figures[2] = figures[2].replace("outside", "within").replace("1.", "0.")
    opened = open_link(packed(json.dumps([job, figures])), ENGLISH)
    assert opened["state"] == "link"
    assert opened["agrees"] is False
    assert opened["claimed"] == figures
    assert opened["figures"] != figures


def test_readings_that_were_changed_are_seen() -> None:
    job, figures = json.loads(unpacked(link_of(ordinary_job(QUARTERS))))
    job[SHORT["rounds"]][1][SHORT["bore"]][SHORT["sweeps"]][0][1] = 9
    assert open_link(packed(json.dumps([job, figures])), ENGLISH)["agrees"] is False


def test_a_figure_line_short_is_refused() -> None:
    job, figures = json.loads(unpacked(link_of(ordinary_job(QUARTERS))))
    assert open_link(packed(json.dumps([job, figures[:2]])), ENGLISH)["state"] == "refused"


# Hostile ------------------------------------------------------------------------------------

FUZZED = 20_000
WICKED: tuple[Any, ...] = (
    None, True, "", "<img src=x onerror=alert(1)>", "</script><script>alert(1)</script>",
    "javascript:alert(1)", "\u202e5.0\u202c", "\x00\x07", "\ud800", "__proto__", "constructor",
    10**400, -(10**400), 1e308, -1e308, 5e-324, 1e-9, 0, -0.0, 3, [], {}, [[]], [None] * 40,
    {"__proto__": {"x": 1}}, "A" * 3000, [[[[[[[[[[[[[[1]]]]]]]]]]]]]], "5|5|5", "٣", [0, 0, 0, 0],
)  # fmt: skip
RAW = ("NaN", "Infinity", "-Infinity", "1e999", "1" * 5000, "[" * 50, "}", '"', "\\u0000", "null")


def places(value: Any) -> list[tuple[Any, Any]]:
    """Every container with every key of it, all the way down."""
    found = []
    keys = (
        value.keys()
        if isinstance(value, dict)
        else range(len(value))
        if isinstance(value, list)
        else ()
    )
    for key in keys:
        found.append((value, key))
        found.extend(places(value[key]))
    return found


def mutated_data(generator: random.Random, text: str) -> str:
    """A link in which the data are wicked and the packing is right."""
    value = json.loads(text)
    for _ in range(generator.choice((1, 1, 2, 4))):
        holder, key = generator.choice(places(value))
        observed = generator.randrange(5)
        if observed == 0 and isinstance(holder, dict):
            holder[generator.choice(("__proto__", "a", "about", "zz", "<b>", "\x1b"))] = holder.pop(
                key
            )
        elif observed == 1:
            del holder[key]
        elif observed == 2 and isinstance(holder, list):
            holder[:] = holder * generator.choice((2, 9))
        else:
            holder[key] = copy.deepcopy(generator.choice(WICKED))
        if not places(value):
            break
    return packed(json.dumps(value))


def mutated_text(generator: random.Random, text: str) -> str:
    """A link in which the JSON is wicked and the packing is right."""
    at = generator.randrange(len(text))
    cut = generator.randrange(4)
    piece = generator.choice((*RAW, text[at : at + 30], chr(generator.randrange(0x3000))))
    return packed(text[:at] + piece + text[at + cut :])


def mutated_bytes(generator: random.Random, text: str) -> str:
    """A link in which the compressed bytes are wicked."""
    raw = bytearray(zlib.compress(text.encode()))
    for _ in range(generator.randrange(1, 4)):
        raw[generator.randrange(len(raw))] = generator.randrange(256)
    return "3" + base64.urlsafe_b64encode(bytes(raw)).decode().rstrip("=")


def mutated_characters(generator: random.Random, fragment: str) -> str:
    """A link with characters changed, cut, doubled, or with something after it."""
    at = generator.randrange(len(fragment))
    alphabet = string.printable + "é\u202e\ud800\U0001f600"
    return generator.choice(
        (
            fragment[:at],
            fragment[:at] + generator.choice(alphabet) + fragment[at + 1 :],
            fragment[:at] + fragment[at + 1 :],
            fragment[at:],
            fragment + generator.choice(alphabet),
            generator.choice("023456789aZ") + fragment[1:],
        )
    )


def bomb(generator: random.Random) -> str:
    """A little that unpacks to a lot: blanks, brackets, lists, a long text."""
    piece, count = generator.choice(
        ((" ", 3_000_000), ("[", 100_000), ("[1,", 30_000), ('"x', 60_000), ('{"a":', 20_000))
    )
    return packed('[{"d":[' + piece * count)


@pytest.mark.slow
def test_whatever_is_in_a_link_the_answer_is_a_link_or_a_refusal() -> None:
    """Twenty thousand mutated links, the same in each run."""
    generator = random.Random(20261125)
    fragments = [link_of(job) for job in (ordinary_job(QUARTERS), make_job([0, -5, -11, -5]))]
    texts = [unpacked(fragment) for fragment in fragments]
    whole = link_of(whole_job())
    states: dict[str, int] = {"link": 0, "refused": 0}
    for n in range(FUZZED):
        which = generator.random()
        i = n % 2
        if which < 0.35:
            fragment = mutated_data(generator, texts[i])
        elif which < 0.55:
            fragment = mutated_text(generator, texts[i])
        elif which < 0.75:
            fragment = mutated_bytes(generator, texts[i])
        elif which < 0.99:
            fragment = mutated_characters(generator, whole if n % 50 == 0 else fragments[i])
        else:
            fragment = bomb(generator)
        text = handle_request(json.dumps({"link": fragment}))
        assert "<img" not in json.loads(text).get("before", ""), fragment
        states[json.loads(text)["state"]] += 1
    assert sum(states.values()) == FUZZED
    # Both ends were reached: wicked data that are a job all the same, and those that are not.
    assert states["link"] > 500
    assert states["refused"] > 5000
