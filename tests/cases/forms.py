"""Filled-in forms, all invented, that between them take every path of the page."""

from __future__ import annotations

from tests.cases.gearbox import DEEP

Form = dict[str, str]


def sweep(at: str, *readings: str) -> Form:
    """Readings of one sweep, as `rounds.0.bore.sweeps.0`."""
    return {f"{at}.{i}": text for i, text in enumerate(readings)}


BORE: Form = {"positions": "12 3 6 9", "stock.dowel_offsets": "7 14 21"} | sweep(
    "rounds.0.bore.sweeps.0", "0", "-5.5", "-11", "-5.5"
)
HOUSING: Form = {
    "bolts.at": "12 1:45 3:30 5 7 8:30 10:15",
    "bolts.radius": "7.5",
    "stock.shim_thicknesses": "1 2 5 10",
    "dowel_holes.at": "9 3",
    "dowel_holes.radius": "7",
    "housing.bolt_clearance": "15",
    "housing.depth": "6.5",
    "face.radius": "3",
    "face.end_float": "held",
}
# As found; after a first pair of dowels; after they were turned. The face is out of square and
# is shimmed, so that shims, dowels and what they did in the past are all searched through.
THREE_ROUNDS: Form = (
    BORE
    | HOUSING
    | sweep("rounds.0.bore.sweeps.0", "0", "-6", "-20", "-14")
    | sweep("rounds.0.face.sweeps.0", "0", "5", "10", "5")
    | {"rounds.1.dowels.0.offset": "7", "rounds.1.dowels.0.aim": "12"}
    | sweep("rounds.1.bore.sweeps.0", "0", "-9", "-13", "-4")
    | sweep("rounds.1.face.sweeps.0", "0", "4.5", "10", "5.5")
    | {"rounds.2.dowels.0.offset": "7", "rounds.2.dowels.0.aim": "10:30"}
    | sweep("rounds.2.bore.sweeps.0", "0", "-7", "-9.5", "-2")
    | sweep("rounds.2.face.sweeps.0", "0", "5", "9.5", "4.5")
)
WHOLE: Form = (
    BORE
    | HOUSING
    | {
        "housing.pilot_distance": "7", "limits.pilot_offset": "5", "housing.tail_distance": "20",
        "housing.pilot_bearing": "tapered_roller", "housing.bore_diameter": "4.852",
        "housing.register_diameter": "4.850", "limits.face_radius": "7.5",
        "chip.height": "3", "chip.at": "1:30", "chip.radius": "7.5",
        "companions.pilot_bore.limit": "3", "companions.crank_flange.contact": "outside",
        "indicator.sag": "1.5", "crank.lift": "1", "indicator.contact_angle_deg": "20",
        "rounds.0.bore.closing.0": "0.5",
    }
    | sweep("rounds.0.bore.sweeps.1", "0", "-5", "-11.5", "-6")
    | sweep("rounds.0.face.sweeps.0", "0", "0.5", "1", "0.5")
    | sweep("companions.pilot_bore.sweeps.0", "0", "1", "2.5", "1")
    | sweep("companions.crank_flange.sweeps.0", "0", "0.5", "0", "-0.5")
    | sweep("companions.flywheel_face.sweeps.0", "0", "2", "4", "2")
)  # fmt: skip
SECOND_DIAL: Form = (
    BORE
    | {"face.radius": "3", "face.end_float": "second"}
    | sweep("rounds.0.face.sweeps.0", "1", "3", "-4", "3")
    | sweep("rounds.0.face.opposite.0", "-1", "3", "-2", "3")
)
METRIC: Form = {
    "units": "metric", "positions": "12 1:30 3 4:30 6 7:30 9 10:30", "limit_as": "tir",
    "limits.bore_offset": "0.2", "indicator.step": "0.01", "indicator.accuracy": "0.01",
    "indicator.repeatability": "0.005", "stock.dowel_offsets": "0.178 0.356 0.533",
    "stock.aim_for": "pilot", "housing.pilot_distance": "180",
} | sweep(
    "rounds.0.bore.sweeps.0", "0", "0.05", "-0.03", "-0.18", "-0.32", "-0.37", "-0.29", "-0.15"
)  # fmt: skip
WRONG_READING: Form = BORE | sweep("rounds.0.bore.sweeps.0", "0", "-55", "-11", "5.5")
FAULTS: Form = BORE | {
    "rounds.0.bore.sweeps.0.1": "x", "bolts.at": "25", "bolts.radius": "7.5", "units": "furlong",
    "limits.bore_offset": "9999", "chip.height": "3", "chip.at": "nowhere",
}  # fmt: skip
UNFINISHED: Form = BORE | {"rounds.0.bore.sweeps.1.0": "0", "rounds.0.bore.sweeps.1.1": "-"}
DEPTH = BORE | {f"depth.{key}": f"{value:g}" for key, value in DEEP.measured().items()}
ALL = {
    "empty": {}, "bore": BORE, "three rounds": THREE_ROUNDS, "whole": WHOLE,
    "second dial": SECOND_DIAL, "metric": METRIC, "wrong reading": WRONG_READING,
    "faults": FAULTS, "unfinished": UNFINISHED, "depth": DEPTH,
}  # fmt: skip
