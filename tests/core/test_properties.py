"""What must hold for whole jobs, whatever is in them: symmetries, units, order, no breakdown."""

from __future__ import annotations

import cmath
import copy
import json
import math
import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sweepsheet import InputError, solve
from sweepsheet.form.from_job import form_of
from sweepsheet.form.to_job import job_of
from sweepsheet.job.read import read_job
from sweepsheet.job.strict_json import load_json
from tests.cases.jobs import Data
from tests.cases.settings import LONG_KEYS, SMALL_KEYS
from tests.cases.strategies import any_job, good_jobs, spoil, spoiled_jobs, tame_jobs
from tests.core.test_api import answer_or_faults

# What a result says ------------------------------------------------------------------------


@dataclass
class Said:
    """The figures of a result, sorted by what a change of the plane or of the unit does to them.

    Vectors are complex numbers x + iy, so that a turn is a factor. A covariance is its trace and
    the complex number (xx - yy) + 2i xy, which turns twice as far. Options are kept by their size,
    since two that are as good may change places.
    """

    vectors: dict[str, complex] = field(default_factory=dict)
    slopes: dict[str, complex] = field(default_factory=dict)
    spreads: dict[str, complex] = field(default_factory=dict)
    small: dict[str, float] = field(default_factory=dict)
    plain: dict[str, float] = field(default_factory=dict)
    words: dict[str, object] = field(default_factory=dict)

    def vector(self, name: str, xy: list[float] | None) -> None:
        """A vector of small distances."""
        if xy is not None:
            self.vectors[name] = complex(*xy)

    def spread(self, name: str, matrix: list[list[float]]) -> None:
        """A covariance of small distances."""
        (xx, xy), (_, yy) = matrix
        self.spreads[name] = complex(xx - yy, 2.0 * xy)
        self.small[f"{name}, root of the trace"] = math.sqrt(xx + yy)

    def keys(
        self, part: Data, name: str, small: str = "", plain: str = "", words: str = ""
    ) -> None:
        """The values of these keys, named with blanks between them; what is not known is a word."""
        kinds: tuple[tuple[dict[str, Any], str], ...] = (
            (self.small, small), (self.plain, plain), (self.words, words),
        )  # fmt: skip
        for kind, names in kinds:
            for key in names.split():
                (self.words if part[key] is None else kind)[f"{name} {key}"] = part[key]


CHECKED = "repeatability lack_of_fit out_of_round"


def said(result: Data) -> Said:
    """What a result says of the latest and all other rounds, the dowels, shims and what-ifs."""
    all_of = Said()
    for i, each in enumerate(result["rounds"]):
        _say_round(all_of, f"round {i}", each)
    for i, part in enumerate(result["companions"]):
        all_of.keys(part, f"part {i}", f"tir offset offset_pm {CHECKED}", "probability_within")
    for option in result["dowel_options"]:
        _say_option(all_of, option)
    _say_rest(all_of, result)
    # What the figures look like as they were typed is no property of the housing, and how thick
    # dirt can be and what limit is usual do not grow with it.
    size = {"too-thick-for-dirt": "chip-explains", "limit-source": None, "looks-like-inches": None}
    codes = [size.get(f["code"], f["code"]) for f in result["findings"]]
    all_of.words["findings"] = sorted(code for code in codes if code)
    return all_of


def _say_option(all_of: Said, option: Data) -> None:
    name = "left alone" if option["leave"] else f"dowels {option['offset']:.4g}"
    all_of.keys(
        option, name, "expected_offset expected_pilot_offset",
        "probability_within pilot_probability_within", "verdict fits_bolt_holes",
    )  # fmt: skip
    if option["offset"] > 0:
        all_of.slopes[f"{name} aim"] = cmath.exp(1j * math.radians(90.0 - option["aim_deg"]))


def _say_rest(all_of: Said, result: Data) -> None:
    if result["dowels_did"] is not None:
        all_of.keys(result["dowels_did"], "dowels", "offset offset_pm", "", "agrees opposite")
    if result["trim"] is not None:
        all_of.keys(result["trim"], "trim", "expected_offset", "probability_within")
    for i, shim in enumerate(result["shims"]):
        all_of.keys(shim, f"shim {i}", "ideal thickness")
    if result["squaring"] is not None:
        all_of.vector("bore squared", result["squaring"]["bore_after"])
        all_of.keys(result["squaring"], "squaring", "rock chip_that_explains")
        all_of.keys(result["squaring"]["taper"], "taper", "across", "slope")
    if result["joint"] is not None:
        all_of.keys(result["joint"], "joint", "clearance", "probability_within", "verdict")
    if result["chip"] is not None:
        all_of.slopes["chip"] = complex(*result["chip"]["slope"])
        for key in ("bore", "nose", "tail"):
            all_of.vector(f"chip moves {key}", result["chip"][key])


def _say_round(all_of: Said, name: str, each: Data) -> None:
    bore, face, pilot = each["bore"], each["face"], each["pilot"]
    figures = f"tir offset offset_pm {CHECKED}"
    all_of.vector(f"{name} bore", bore["center"])
    all_of.spread(f"{name} bore", bore["covariance"])
    all_of.keys(bore, f"{name} bore", figures, "probability_within direction_pm_deg", "verdict")
    if face is not None:
        all_of.slopes[f"{name} face"] = complex(*face["slope"])
        all_of.keys(
            face, f"{name} face", f"runout runout_pm limit warp total_reading {CHECKED}",
            "probability_within direction_pm_deg", "verdict end_float_free",
        )  # fmt: skip
    if pilot is not None:
        all_of.vector(f"{name} pilot", pilot["center"])
        all_of.spread(f"{name} pilot", pilot["covariance"])
        all_of.keys(
            pilot, f"{name} pilot", "offset offset_pm", "probability_within angle angle_pm",
            "verdict",
        )  # fmt: skip


def near(got: dict[str, Any], wanted: dict[str, Any]) -> None:
    """The same names with the same figures, but for rounding."""
    assert got.keys() == wanted.keys()
    for name, value in wanted.items():
        assert got[name] == pytest.approx(value, rel=1e-6, abs=1e-8), name


def same(
    got: Said,
    wanted: Said,
    *,
    small: float = 1.0,
    vector: Callable[[complex], complex] = lambda v: v,
    spread: Callable[[complex], complex] = lambda s: s,
) -> None:
    """A result says what another said, its small unit so many times as large, its plane changed."""
    near({k: v / small for k, v in got.vectors.items()}, _each(vector, wanted.vectors))
    near(got.slopes, _each(vector, wanted.slopes))
    near({k: v / small**2 for k, v in got.spreads.items()}, _each(spread, wanted.spreads))
    near({k: v / small for k, v in got.small.items()}, wanted.small)
    near(got.plain, wanted.plain)
    assert got.words == wanted.words


def _each(change: Callable[[complex], complex], values: dict[str, complex]) -> dict[str, complex]:
    return {name: change(value) for name, value in values.items()}


# Changes of a job --------------------------------------------------------------------------


def directions_changed(part: Any, change: Callable[[float], float], key: str = "") -> Any:
    """The job with every direction changed but those of companions: they have their own clock."""
    if isinstance(part, dict):
        return {
            k: v if k == "companions" else directions_changed(v, change, k)
            for k, v in part.items()
        }  # fmt: skip
    if isinstance(part, list):
        return [directions_changed(each, change, key) for each in part]
    return change(part) if key in ("positions_deg", "at_deg", "aim_deg") else part


def swept_parts(job: Data) -> Iterator[Data]:
    """Every bore, face and companion of a job."""
    for each in job["rounds"]:
        yield from (each[kind] for kind in ("bore", "face") if kind in each)
    yield from job.get("companions", [])


def scaled(part: Any, small: float, long: float, key: str = "") -> Any:
    """The job with its small distances and its lengths multiplied."""
    if isinstance(part, dict):
        return {k: scaled(v, small, long, k) for k, v in part.items()}
    if isinstance(part, list):
        return [scaled(each, small, long, key) for each in part]
    factor = small if key in SMALL_KEYS else long if key in LONG_KEYS else None
    return part if factor is None or part is None else part * factor


def in_inches(job: Data) -> Data:
    """The job in thou and inches, with those usual values that are rounded in mm written out."""
    if job["units"] == "metric":
        job = {**scaled(job, 1.0 / 0.0254, 1.0 / 25.4), "units": "inch"}
    typed = job.get("indicator", {})
    dial = {"step": 0.5, "accuracy": 0.5, "repeatability": 0.25, "sag_allowance": 1.0}
    return {
        **job,
        "limits": {"bore_offset": 5.0, "face_runout": 5.0, **job.get("limits", {})},
        # Where the allowance is not known it is as is usual for the holder, rounded as well.
        "indicator": dial
        | {key: value for key, value in typed.items() if (key, value) != ("sag_allowance", None)},
        "housing": {"dowel_clearance": 1.0, **job.get("housing", {})},
        "stock": {"dowel_offsets": [7.0, 14.0, 21.0], **job.get("stock", {})},
    }


def typed_in_inches(job: Data) -> bool:
    """Whether a sweep looks like inches typed as thou: then nothing is said of the dowels."""
    return any(f["code"] == "looks-like-inches" for f in solve(job)["findings"])


# The properties ----------------------------------------------------------------------------


@pytest.mark.slow
@settings(max_examples=60)
@given(tame_jobs, st.sampled_from([30.0, 90.0, 180.0, 270.0, 123.4]))
def test_turning_the_engine_turns_the_answer(job: Data, turn: float) -> None:
    """All positions, holes and aims on by one angle: so do all directions, and nothing else.

    The crank stands on end, so that no direction is the lower one.
    """
    job = {**job, "crank": {"axis": "vertical"}}
    turned = directions_changed(job, lambda a: math.fmod(a + turn, 360.0))
    clockwise = cmath.exp(-1j * math.radians(turn))
    same(
        said(solve(turned)), said(solve(job)),
        vector=lambda v: v * clockwise, spread=lambda s: s * clockwise**2,
    )  # fmt: skip


@pytest.mark.slow
@settings(max_examples=60)
@given(tame_jobs)
def test_seen_in_a_mirror(job: Data) -> None:
    """Left for right: x changes its sign, and droop stays where it is, down."""
    mirrored = directions_changed(job, lambda a: -a)
    same(
        said(solve(mirrored)), said(solve(job)),
        vector=lambda v: -v.conjugate(), spread=lambda s: s.conjugate(),
    )  # fmt: skip


@pytest.mark.slow
@settings(max_examples=60)
@given(tame_jobs, st.floats(-9.0, 9.0))
def test_another_zero_of_every_dial_changes_nothing(job: Data, zero: float) -> None:
    """Each sweep with a constant of its own on it."""
    second = copy.deepcopy(job)
    thou = 1.0 if job["units"] == "inch" else 0.0254
    for part in swept_parts(second):
        for j, row in enumerate(part["sweeps"]):
            row[:] = [None if m is None else m + thou * (zero + j) for m in row]
        if "opposite" in part:
            part["opposite"] = [[m - thou * zero for m in row] for row in part["opposite"]]
    same(said(solve(second)), said(solve(job)))


@pytest.mark.slow
@settings(max_examples=40)
@given(tame_jobs)
def test_millimetres_say_what_thou_say(job: Data) -> None:
    """The same job in both systems: one inch is 25.4 mm."""
    inch = in_inches(job)
    assume(not typed_in_inches(inch))
    metric = {**scaled(inch, 0.0254, 25.4), "units": "metric"}
    same(_by_size(metric, 0.0254), _by_size(inch, 1.0), small=0.0254)


@pytest.mark.slow
@settings(max_examples=60)
@given(tame_jobs)
def test_all_twice_as_large_is_twice_as_far(job: Data) -> None:
    """Readings, limits, dial, dowels and lengths doubled: the chances stay as they are."""
    inch = in_inches(job)
    assume(not typed_in_inches(inch))
    same(_by_size(scaled(inch, 2.0, 2.0), 2.0), _by_size(inch, 1.0), small=2.0)


def _by_size(job: Data, small: float) -> Said:
    """What a job says, its options called by their size in the unit of the first one."""
    result = solve(job)
    sizes = [option["offset"] for option in result["dowel_options"]]
    for option, size in zip(result["dowel_options"], sizes, strict=True):
        option["offset"] = size / small
    return said(result)


@pytest.mark.slow
@settings(max_examples=60)
@given(tame_jobs, st.randoms(use_true_random=False))
def test_the_order_of_the_positions_is_no_matter(job: Data, rng: random.Random) -> None:
    """Where every dial comes back to its zero; a drift is spread in the order of the sweep."""
    first, second = copy.deepcopy(job), copy.deepcopy(job)
    for part in [*swept_parts(first), *swept_parts(second)]:
        part["closing"] = [0.0] * len(part["sweeps"])
    for part in swept_parts(second):
        order = list(range(len(part["positions_deg"])))
        rng.shuffle(order)
        part["positions_deg"] = [part["positions_deg"][i] for i in order]
        for name in ("sweeps", "opposite"):
            if name in part:
                part[name] = [[row[i] for i in order] for row in part[name]]
    same(said(solve(second)), said(solve(first)))


@given(st.lists(st.floats(-20.0, 20.0), min_size=8, max_size=8), st.floats(-9.0, 9.0))
def test_a_sweep_split_in_two_keeps_its_centre(row: list[float], zero: float) -> None:
    """Every other position in a sweep of its own, with a zero of its own, the rest left blank."""
    eighths = [45.0 * i for i in range(8)]
    halves = [
        [m if i % 2 == 0 else None for i, m in enumerate(row)],
        [m + zero if i % 2 else None for i, m in enumerate(row)],
    ]
    head = {"format": "sweepsheet-job", "version": 1}
    whole, split = (
        solve({**head, "rounds": [{"bore": {"positions_deg": eighths, "sweeps": rows}}]})
        for rows in ([row], halves)
    )
    centres = [result["rounds"][0]["bore"]["center"] for result in (whole, split)]
    assert centres[1] == pytest.approx(centres[0], abs=1e-9)


@settings(max_examples=40)
@given(good_jobs)
def test_a_job_written_and_read_back_is_the_same_job(job: Data) -> None:
    assert read_job(load_json(json.dumps(job))) == read_job(job)


@settings(max_examples=40)
@given(good_jobs)
def test_a_job_put_into_the_form_and_read_from_it_is_the_same_job(job: Data) -> None:
    assert read_job(job_of(form_of(job)).job) == read_job(job)


@pytest.mark.slow
@settings(max_examples=40)
@given(good_jobs)
def test_a_good_job_is_answered(job: Data) -> None:
    assert answer_or_faults(job) is not None


@settings(max_examples=40)
@given(spoiled_jobs)
def test_a_spoiled_job_is_answered_or_refused(job: Data) -> None:
    answer_or_faults(job)


def finite(part: object) -> bool:
    """Whether every number in a result is finite."""
    if isinstance(part, dict):
        return all(finite(each) for each in part.values())
    if isinstance(part, list):
        return all(finite(each) for each in part)
    return not isinstance(part, float) or math.isfinite(part)


@pytest.mark.slow
@pytest.mark.parametrize("block", range(10))
def test_ten_thousand_jobs_give_finite_figures_or_bad_input(block: int) -> None:
    """A thousand in each block, seeded: half of them good, half spoiled. Nothing else is raised."""
    answered, refused = 0, []
    for seed in range(1000 * block, 1000 * block + 1000):
        rng = random.Random(seed)
        job = any_job(rng)
        if seed % 2:
            job = spoil(rng, job)
        try:
            result = solve(job)
        except InputError:
            refused.append(seed)
        else:
            assert finite(result), seed
            answered += 1
    assert all(seed % 2 for seed in refused), "a good job was refused"
    assert answered >= 500
    assert len(refused) > 300
