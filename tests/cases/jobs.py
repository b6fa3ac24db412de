"""Job files for the tests: plain data, and one place to change a part of it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from sweepsheet import solve

Data = dict[str, Any]
Reading = float | None

QUARTERS = (0.0, 90.0, 180.0, 270.0)
EIGHTHS = (0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0)

# An indicator without any doubt: what is computed is then the readings and nothing else.
PERFECT: Data = {
    "step": 0, "accuracy": 0, "repeatability": 0, "sag": 0, "sag_allowance": 0,
    "angle_setting_deg": 0,
}  # fmt: skip
# The usual indicator, in a bracket that was found not to sag.
STIFF: Data = {"sag": 0}


def bore_round(
    *sweeps: Sequence[Reading],
    positions: Sequence[float] = QUARTERS,
    contact: str = "inside",
    closing: Sequence[Reading] | None = None,
) -> Data:
    """One round of a job; every sweep closes on its zero where nothing else is said."""
    return {
        "bore": {
            "contact": contact,
            "positions_deg": list(positions),
            "sweeps": [list(sweep) for sweep in sweeps],
            "closing": [0.0] * len(sweeps) if closing is None else list(closing),
        }
    }


def make_job(
    *sweeps: Sequence[Reading],
    positions: Sequence[float] = QUARTERS,
    contact: str = "inside",
    closing: Sequence[Reading] | None = None,
    **sections: object,
) -> Data:
    """A job of one round; ``sections`` are the other parts of the job file.

    The bracket was found stiff where nothing else is said of the indicator: sag moves a bore.
    """
    sections = {"indicator": STIFF, **sections}
    round_ = bore_round(*sweeps, positions=positions, contact=contact, closing=closing)
    return {"format": "sweepsheet-job", "version": 1, **sections, "rounds": [round_]}


def face_readings(
    x: float, y: float, positions: Sequence[float] = QUARTERS, radius: float = 3.0
) -> list[float]:
    """What a dial pointing forward shows on a face of slope (x, y), in thou per inch."""
    at = [math.radians(a) for a in positions]
    return [radius * (x * math.sin(a) + y * math.cos(a)) for a in at]


def with_face(
    job: Data, *sweeps: Sequence[Reading], positions: Sequence[float] = QUARTERS, **keys: object
) -> Data:
    """The job with this face swept in its latest round, the crank held to one side.

    Without sweeps, a face that is square.
    """
    rows = [list(sweep) for sweep in sweeps] or [[0.0] * len(positions)]
    job["rounds"][-1]["face"] = {
        "radius": 3.0, "end_float": "held", "positions_deg": list(positions), "sweeps": rows,
        "closing": [0.0] * len(rows), **keys,
    }  # fmt: skip
    return job


def with_dowels(job: Data, *dowels: tuple[float, float]) -> Data:
    """The job with these dowels fitted in its latest round: offset and aim, one for both or two."""
    both = dowels * 2 if len(dowels) == 1 else dowels
    job["rounds"][-1]["dowels"] = [{"offset": o, "aim_deg": a} for o, a in both]
    return job


def then(job: Data, *later: Data) -> Data:
    """The job with the rounds of other jobs after its own."""
    return {**job, "rounds": [*job["rounds"], *(r for each in later for r in each["rounds"])]}


def since(job: Data, *done: str) -> Data:
    """The job with this done before each round after the first; the dowels follow from it."""
    first, *later = job["rounds"]
    rounds = [first]
    for each, how in zip(later, done, strict=False):
        kept = {key: value for key, value in each.items() if key != "dowels" or how == "dowels"}
        rounds.append({**kept, "since": how})
    return {**job, "rounds": [*rounds, *later[len(done) :]]}


SEVEN_BOLTS = [{"at_deg": 15.0 + 51.0 * i, "radius": 8.0 + 0.1 * i} for i in range(7)]
TWO_HOLES = [{"at_deg": 270.0, "radius": 7.0}, {"at_deg": 90.0, "radius": 7.0}]


def whole_job() -> Data:
    """Every part of a job measured: as found, on dowels of 14, and turned by 10 degrees.

    As found the bore lies 12 off toward 4 o'clock and the face leans by a third of a thou per inch;
    the dowels do nine tenths of what is written on them, a few degrees off their aim.
    """
    job = with_face(
        make_job(
            readings_of(10.4, -6.0, EIGHTHS),
            [m + 0.25 for m in readings_of(10.2, -6.2, EIGHTHS)],
            positions=EIGHTHS,
            limits={
                "bore_offset": 5.0, "face_runout": 1.0, "face_radius": 1.0, "pilot_offset": 8.0,
                "source": "the maker's manual",
            },
            indicator={"sag": 1.0},
            housing={
                "depth": 6.5, "pilot_distance": 7.0, "tail_distance": 20.0,
                "pilot_bearing": "ball", "bore_diameter": 4.685, "register_diameter": 4.6835,
                "dowel_holes": TWO_HOLES, "bolts": SEVEN_BOLTS, "bolt_clearance": 60.0,
                "dowel_clearance": 1.0,
            },
            stock={"shim_thicknesses": [1.0, 2.0, 5.0]},
            chip={"joint": "front", "height": 4.0, "at_deg": 120.0, "radius": 8.0},
            companions=[
                {
                    "kind": "pilot_bore", "limit": 5.0, "positions_deg": list(QUARTERS),
                    "sweeps": [readings_of(0.5, 0.5)], "closing": [0.0],
                },
                {"kind": "flywheel_face", "sweeps": [[0.0, 1.0, 2.0, 1.0]]},
            ],
        ),
        face_readings(0.2, 0.25, EIGHTHS, 3.0),
        positions=EIGHTHS,
    )  # fmt: skip
    rounds = []
    for name, aim, (x, y) in (("dowels", 290.0, (-1.9, -2.6)), ("trim", 300.0, (-0.9, -0.9))):
        each = with_face(
            make_job(readings_of(x, y, EIGHTHS), positions=EIGHTHS),
            face_readings(0.2, 0.2, EIGHTHS, 3.0),
            positions=EIGHTHS,
        )
        each = with_dowels(each, (14.0, aim))
        each["rounds"][0]["name"] = name
        rounds.append(each)
    return then(job, *rounds)


def bore_of(job: Data) -> Data:
    """What the latest round of a job says about the bore."""
    bore: Data = solve(job)["rounds"][-1]["bore"]
    return bore


def codes_of(job: Data) -> list[str]:
    """The codes of the findings, in their order."""
    return [finding["code"] for finding in solve(job)["findings"]]


def finding_of(job: Data, code: str) -> Data:
    """The one finding with this code."""
    (found,) = [finding for finding in solve(job)["findings"] if finding["code"] == code]
    return dict(found)


def readings_of(
    x: float, y: float, positions: Sequence[float] = QUARTERS, zero: float = 0.0
) -> list[float]:
    """What a dial inside a bore centred at (x, y) shows, to the first order in the offset."""
    return [zero - x * math.sin(math.radians(a)) - y * math.cos(math.radians(a)) for a in positions]


def apart(first_deg: float, second_deg: float) -> float:
    """How far two directions are apart, 0 to 180 degrees."""
    return abs((first_deg - second_deg + 180.0) % 360.0 - 180.0)
