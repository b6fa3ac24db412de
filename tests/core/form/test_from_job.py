"""The way back from a job file's data to the form, and what the form keeps of a half-typed job."""

from __future__ import annotations

import copy
from typing import Any, get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sweepsheet.form.from_job import POSITION_CHOICES, form_of, number_text, position_text
from sweepsheet.form.parse import number_or_text, position_or_text
from sweepsheet.form.to_job import draft_of, job_of
from sweepsheet.job.checklist import CODES
from sweepsheet.job.model import Since
from sweepsheet.job.read import read_job
from tests.cases.jobs import make_job, since, whole_job, with_dowels, with_face

Data = dict[str, Any]

# Texts of names and notes: anything that may stand in a job file.
TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cf", "Cs")), max_size=12)
SMALL = st.floats(0.0, 12.0) | st.integers(0, 12)
LIMIT = st.floats(0.1, 12.0) | st.none()
LONG = st.floats(0.1, 190.0)
READING = st.floats(-12.0, 12.0) | st.integers(-12, 12)
ANGLE = st.floats(-360.0, 360.0) | st.sampled_from((0, 45, -90, 37.5, 1e-9, 360))


@st.composite
def positions(draw: st.DrawFn) -> list[float]:
    """Positions that can be fitted, on the hour or anywhere."""
    count = draw(st.integers(3, 6))
    step = 360.0 / count
    shift = st.just(0.0) | st.floats(0.0, step / 9.0)
    return [step * i + draw(shift) for i in range(count)]


@st.composite
def swept(draw: st.DrawFn, /, **keys: st.SearchStrategy[Any]) -> Data:
    """Sweeps with some of these keys."""
    at = draw(positions() | st.just([0, 90, 180, 270]))
    row = st.lists(READING, min_size=len(at), max_size=len(at))
    part: Data = {"positions_deg": at, "sweeps": draw(st.lists(row, min_size=1, max_size=3))}
    if len(at) == 4 and draw(st.booleans()):
        del part["positions_deg"]
        part["sweeps"] = [[1, 2, 3, 4.5]]
    optional = {"closing": st.lists(READING | st.none(), max_size=len(part["sweeps"])), **keys}
    return part | draw(st.fixed_dictionaries({}, optional=optional))


@st.composite
def faces(draw: st.DrawFn) -> Data:
    ways = {
        "plunger": st.sampled_from(("forward", "rearward")),
        "end_float": st.sampled_from(("free", "held")),
    }
    part = draw(swept(**ways)) | {"radius": draw(LONG)}
    if draw(st.booleans()):
        part["opposite"] = copy.deepcopy(part["sweeps"])
    return part


CONTACT = st.sampled_from(("inside", "outside"))
DOWEL = st.fixed_dictionaries({"offset": SMALL, "aim_deg": ANGLE})
PARTS = ("pilot_bore", "crank_flange", "flywheel_face")


def some(**keys: st.SearchStrategy[Any]) -> st.SearchStrategy[Data]:
    """A group of fields, each of which may be left out."""
    return st.fixed_dictionaries({}, optional=keys)


@st.composite
def jobs(draw: st.DrawFn) -> Data:
    """Valid job files of all kinds."""
    round_ = st.fixed_dictionaries(
        {"bore": swept(contact=CONTACT)},
        optional={
            "face": faces(),
            "name": TEXTS,
            "dowels": st.lists(DOWEL, min_size=2, max_size=2),
        },
    )
    hole = st.fixed_dictionaries({"at_deg": ANGLE, "radius": LONG | st.just(8)})
    kinds = draw(st.lists(st.sampled_from(PARTS), unique=True))
    part = swept(contact=CONTACT, plunger=st.sampled_from(("forward", "rearward")), limit=LIMIT)
    sections = draw(
        some(
            name=TEXTS,
            units=st.sampled_from(("inch", "metric")),
            about=some(vehicle=TEXTS, notes=TEXTS, date=TEXTS),
            limits=some(
                bore_offset=LIMIT,
                face_runout=LIMIT,
                face_radius=LONG | st.none(),
                confidence=st.floats(0.5, 0.9999),
                source=TEXTS,
            ),
            indicator=some(step=SMALL, sag=SMALL | st.none(), plus_when=st.just("plunger_out")),
            crank=some(axis=st.just("vertical"), lift=SMALL),
            housing=some(
                depth=LONG | st.none(),
                pilot_bearing=st.sampled_from((None, "needle", "ball", "tapered_roller")),
                bolts=st.lists(hole, max_size=5),
                bolt_clearance=LIMIT,
            ),
            stock=some(
                dowel_offsets=st.lists(SMALL, max_size=4),
                shim_thicknesses=st.lists(SMALL, max_size=4),
                aim_for=st.just("pilot"),
            ),
            chip=st.none()
            | st.fixed_dictionaries({"height": SMALL, "at_deg": ANGLE, "radius": LONG}),
            checklist=st.lists(st.sampled_from(CODES), max_size=5),
        )
    )
    return {
        "format": "sweepsheet-job",
        "version": 1,
        **sections,
        "companions": [{"kind": kind, **draw(part)} for kind in kinds],
        "rounds": draw(st.lists(round_, min_size=1, max_size=3)),
    }


@pytest.mark.parametrize(("given_name", "read"), [(" ", ""), (" Blue coupe ", "Blue coupe")])
def test_blanks_round_a_name_are_none_of_it(given_name: str, read: str) -> None:
    """In a job that is read, in the form, and in what the form is kept as."""
    data = make_job([0.0, -5.0, -10.0, -5.0], name=given_name)
    assert read_job(data).name == read
    form = form_of(data)
    assert form.get("name", "") == read
    assert read_job(job_of(form).job) == read_job(data)
    assert form_of(draft_of(form)).get("name", "") == read


@pytest.mark.slow
@given(jobs(), st.lists(st.sampled_from(get_args(Since))))
def test_a_job_file_comes_back_exactly(given_data: Data, done: list[str]) -> None:
    """To the same job; and the texts, once written, are written the same again."""
    data = since(given_data, *done)
    job = read_job(data)
    form = form_of(data)
    typed = job_of(form)
    assert read_job(typed.job) == job
    assert not typed.unfinished
    assert read_job(draft_of(form)) == job
    again = form_of(draft_of(form))
    assert {name: text for name, text in form.items() if again.get(name, "") != text} == {}


@pytest.mark.parametrize("data", [whole_job(), make_job((0, 1, 2, 1))])
def test_a_whole_job_comes_back(data: Data) -> None:
    assert read_job(job_of(form_of(data)).job) == read_job(data)


@given(st.floats(-500.0, 500.0))
def test_a_number_is_written_exactly(value: float) -> None:
    assert number_or_text(number_text(value)) == value


@given(st.floats(0.0, 360.0, exclude_max=True) | st.integers(0, 719).map(lambda n: n / 2))
def test_a_position_is_written_exactly(value: float) -> None:
    assert position_or_text(position_text(value)) == value


@pytest.mark.parametrize(
    ("degrees", "text"),
    [
        (0, "12"), (360, "12"), (45, "1:30"), (-90, "9"), (0.5, "12:01"), (37.25, "37.25°"),
        (1e-7, "1e-07°"), ("noon", "noon"), (None, ""), (400, "400°"), (True, "true"),
    ],
)  # fmt: skip
def test_position_text(degrees: object, text: str) -> None:
    assert position_text(degrees) == text


@pytest.mark.parametrize("choice", POSITION_CHOICES)
def test_the_form_s_own_lists_are_known(choice: str) -> None:
    """Clockwise, and from 12 the other way round; any other list is one's own."""
    first, *rest = choice.split(" ")
    for turn, order in (("clockwise", rest), ("anticlockwise", rest[::-1])):
        at = [position_or_text(text) for text in (first, *order)]
        form = form_of(make_job([0.0] * len(at), positions=at))  # type: ignore[arg-type]  # texts and numbers alike
        assert (form["positions_choice"], form["turn"]) == (choice, turn)
    own = form_of(make_job((0, 1, 2), positions=(0.0, 100.0, 200.0)))
    assert (own["positions_choice"], own["positions"]) == ("own", "12 3:20 6:40")


def test_what_one_sweep_has_otherwise_stands_in_its_own_fields() -> None:
    """The first sweep gives what holds for all."""
    job = with_face(make_job((0, 1, 2, 1)), radius=3.0)
    later = with_face(
        make_job((0, 1, 2), positions=(0.0, 120.0, 240.0), contact="outside"),
        radius=3.5, end_float="free", plunger="rearward",
    )  # fmt: skip
    form = form_of({**job, "rounds": [*job["rounds"], *later["rounds"]]})
    own = {name: text for name, text in form.items() if name.startswith("rounds.1.")}
    assert own["rounds.1.bore.positions"] == "12 4 8"
    assert own["rounds.1.bore.contact"] == "outside"
    assert (own["rounds.1.face.radius"], own["rounds.1.face.plunger"]) == ("3.5", "rearward")
    assert own["rounds.1.face.end_float"] == "free"
    assert "rounds.1.face.positions" not in own
    assert not [name for name in form if name.startswith("rounds.0.bore.contact")]
    assert (form["bore.contact"], form["face.radius"]) == ("inside", "3")


def test_own_fields_count_only_where_something_stands_in_them() -> None:
    form = form_of(make_job((0, 1, 2, 1), contact="outside"))
    blank = {f"rounds.0.bore.{key}": " " for key in ("contact", "positions")}
    assert job_of(form | blank).job == job_of(form).job


def test_a_fault_in_own_positions_stands_at_their_field() -> None:
    form = form_of(make_job((0, 1, 2, 1))) | {"rounds.0.bore.positions": "12 3 6 noon"}
    typed = job_of(form)
    assert typed.form_name("rounds.0.bore.positions_deg.3") == "rounds.0.bore.positions"


def test_offset_dowels_that_were_in_as_found_are_kept() -> None:
    data = with_dowels(make_job((0, 1, 2, 1)), (14.0, 90.0), (7.0, 45.0))
    assert read_job(job_of(form_of(data)).job) == read_job(data)
    assert "dowels" not in job_of(form_of(make_job((0, 1, 2, 1)))).job["rounds"][0]


# Half-typed jobs ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    "typed",
    [
        {"rounds.0.bore.sweeps.0.1": "4 or 5"},
        {"rounds.0.bore.sweeps.0.1": "-3"},
        {"rounds.0.bore.closing.0": "1"},
        {"rounds.1.dowels.0.offset": "14"},
        {"rounds.1.dowels.0.aim": "half past"},
        {"rounds.0.face.sweeps.0.2": "1"},
        {"face.radius": "3"},
        {"face.end_float": "second_held"},
        {"companions.pilot_bore.limit": "3"},
        {"companions.flywheel_face.sweeps.0.0": "x"},
        {"chip.at": "1:30"},
        {"chip.joint": "rear"},
        {"bolts.at": "12 3 noon"},
        {"bolts.radius": "8 8.1"},
        {"dowel_holes.at": "9"},
        {"bolts.at": " ".join(["12"] * 60)},
        {"positions": "12 3 3 noon", "rounds.0.bore.sweeps.0.3": "7"},
        {"limits.bore_offset": "five"},
        {"limits.bore_offset": ""},
        {"stock.dowel_offsets": "7 x 21"},
        {"housing.depth": "deep"},
        {"name": "Blue tractor", "about.notes": "two\nlines"},
        {"checklist.crank_turns": "yes"},
        {"rounds.1.bore.positions": "12 4", "rounds.1.bore.sweeps.0.1": "2"},
    ],
)
def test_nothing_that_was_begun_is_lost(typed: dict[str, str]) -> None:
    again = form_of(draft_of(typed))
    assert {name: again.get(name, "") for name in typed} == typed


def test_a_limit_that_can_t_be_read_still_says_that_it_was_a_tir() -> None:
    """Mended as an offset it would allow twice too much."""
    again = form_of(draft_of({"limits.bore_offset": "ten", "limit_as": "tir"}))
    assert (again["limits.bore_offset"], again["limit_as"]) == ("ten TIR", "offset")
    again = form_of(draft_of({"limits.bore_offset": "10", "limit_as": "tir"}))
    assert again["limits.bore_offset"] == "5"


def test_a_value_that_is_none_does_not_let_those_after_it_move_up() -> None:
    data = make_job((0, 1, 2, 1), positions=(0.0, None, 180.0, 270.0))  # type: ignore[arg-type]  # wrong on purpose
    assert form_of(data)["positions"] == "12 ? 6 9"
    data = make_job((0, 1, 2, 1), positions=("12 3", 90.0, 180.0, 270.0))  # type: ignore[arg-type]  # wrong on purpose
    assert form_of(data)["positions"] == "12_3 3 6 9"
