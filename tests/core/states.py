"""True states of engine, dial and hand, and what must and must not be said in each.

A state is a shop (``shop``: a bore that is a cylinder and a rear face that is a plane in space, a
dial with its holder), what the mechanic did and typed before he asks, the codes of findings and
steps (``do.CODE``) that must be among what is said, those that must not, and how it ends where he
goes on to do what he is told. What must be said of a state is common practice, no source.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from tests.cases.gearbox import DEEP, Engine, Fit, Gearbox, Span
from tests.cases.jobs import QUARTERS as CLOCKWISE
from tests.cases.jobs import TWO_HOLES, Data, readings_of
from tests.core.shop import EIGHTHS, QUARTERS, RIM, Mechanic, Shop, plane

Act = Callable[[Mechanic], None]


def quiet(**truth: Any) -> Shop:
    """A shop in which nothing is wrong, but for what is told: a careful hand with a usual dial."""
    usual: dict[str, Any] = {
        "rng": random.Random(7), "center": np.zeros(2), "slope": np.zeros(2), "tilt": "none",
        "end_play": 6.0, "holder": "bracket", "holder_told": True, "sag": 0.3, "loose": "",
        "wrong_sense": False, "mirrored": False, "slips": 0.0, "notes_return": True, "gain": 1.0,
        "lag": 0.0, "wrong_aim": "", "holds_crank": True, "sweeps_face": True,
        "positions": QUARTERS, "limit": 5.0, "face_limit": 5.0, "drawer": [7.0, 14.0, 21.0],
        "clearance": 60.0, "knows_flange": True, "scatter": 0.1, "accuracy": 0.2,
    }  # fmt: skip
    return Shop(**usual | truth)


def off(offset: float, clock: float, **more: Any) -> dict[str, Any]:
    """A bore so far off, toward this hour."""
    return {"center": plane(offset, math.radians(30.0 * clock)), **more}


def leaning(height: float, clock: float, tilt: str, **more: Any) -> dict[str, Any]:
    """A face that leans by so much at the rim of the joint, toward this hour."""
    return {"slope": plane(height / (2000.0 * RIM), math.radians(30 * clock)), "tilt": tilt, **more}


LOW: dict[str, Any] = off(8.0, 6)
NEAR: dict[str, Any] = off(1.0, 4)


# What he did before he asks ----------------------------------------------------------------------


def typed(section: str, **values: object) -> Act:
    """He typed this, too."""

    def act(mechanic: Mechanic) -> None:
        mechanic.job.setdefault(section, {}).update(values)

    return act


def shown(part: str, *numbers: float | None, at: int = 0, sweep: int = 0) -> Act:
    """So much is added to what the dial showed from a position on; ``None``: not reached."""

    def act(mechanic: Mechanic) -> None:
        row = mechanic.latest[part]["sweeps"][sweep]
        for i, number in enumerate(numbers, at):
            row[i] = None if number is None else row[i] + number

    return act


def turned_sign(i: int) -> Act:
    """One reading is typed with the other sign."""

    def act(mechanic: Mechanic) -> None:
        row = mechanic.latest["bore"]["sweeps"][0]
        row[i] = -row[i]

    return act


def in_inches(mechanic: Mechanic) -> None:
    """He types inches where thou are wanted."""
    bore = mechanic.latest["bore"]
    bore["sweeps"] = [[m / 1000.0 for m in row] for row in bore["sweeps"]]


def returned(off_by: float) -> Act:
    """The dial came back so far off its zero."""

    def act(mechanic: Mechanic) -> None:
        mechanic.latest["bore"]["closing"] = [off_by]

    return act


def fitted(offset: float, clock: float, truly: float | None = None, times: int = 1) -> Act:
    """A pair aimed at an hour (truly at another), and the recheck."""

    def act(mechanic: Mechanic) -> None:
        for _ in range(times):
            mechanic.fit(offset, 30.0 * clock)
            if truly is not None:
                mechanic.aim_truly = 30.0 * truly
                mechanic.shop.fit(offset, 30.0 * truly)
            mechanic.sweep_anew(face="face" in mechanic.latest)

    return act


def unlike(first: tuple[float, float], second: tuple[float, float]) -> Act:
    """Two dowels that differ, and the recheck."""

    def act(mechanic: Mechanic) -> None:
        mechanic.dowels = [{"offset": o, "aim_deg": 30.0 * c} for o, c in (first, second)]
        mechanic.sweep_anew(face=False)

    return act


def once_more(part: str) -> Act:
    """The same sweep a second time."""
    return lambda mechanic: mechanic.better(part, "sweep")


def again(mechanic: Mechanic) -> None:
    """Tightened, and swept once more."""
    mechanic.sweep_anew(face="face" in mechanic.latest)


def cleaned(mechanic: Mechanic) -> None:
    """The joint opened, cleaned, torqued, and swept."""
    mechanic.do_clean_joint({}, {})


def reseated(times: int = 1) -> Act:
    """Only loosened and torqued again, and swept, so many times."""

    def act(mechanic: Mechanic) -> None:
        for _ in range(times):
            mechanic.shop.rest()
            mechanic.sweep_anew(face=False, since="reseated")

    return act


def chip_in(mechanic: Mechanic) -> None:
    """A chip of 9 gets into the joint."""
    mechanic.shop.slope = plane(9.0 / (2000.0 * RIM), 1.0)


def finest(mechanic: Mechanic) -> None:
    """All that practical measuring can do."""
    for measure in ("sag", "positions", "dial", "sweep", "sweep"):
        mechanic.better("bore", measure)


def finest_face(mechanic: Mechanic) -> None:
    """The same of the face."""
    for measure in ("positions", "dial", "sweep", "sweep"):
        mechanic.better("face", measure)


def part_that_turns(kind: str, offset: float, limit: float) -> Act:
    """A part that turns with the crank, off by so much."""
    part: Data = {
        "kind": kind, "limit": limit, "positions_deg": list(CLOCKWISE),
        "sweeps": [readings_of(0.0, offset)], "closing": [0.0],
    }  # fmt: skip
    return lambda mechanic: mechanic.job.update(companions=[part])


def lengths(fit: Fit, **more: object) -> Act:
    """He measured depths of this fit, each as it is but for what his tools err, and typed more."""
    return typed("depth", **fit.measured(random.Random(3)) | more)


PLATE = typed("housing", swept_bore="plate")
BOTTOMS = lengths(DEEP)
SEEN_AGAIN = (cleaned,)
SEEN_TWICE = (cleaned, once_more("face"))
TO_PILOT = typed("housing", pilot_distance=7.0)


@dataclass(frozen=True)
class State:
    """What is true, what was done, what is to be said of it; ``ends``: where he who obeys ends."""

    name: str
    says: str
    never: str
    shop: dict[str, Any]
    acts: tuple[Act, ...] = ()
    ends: str = ""
    seed: int = field(default=7)

    def mechanic(self) -> Mechanic:
        """The mechanic in it, at the moment when he asks."""
        mechanic = Mechanic(self.seed, quiet(**{**self.shop, "rng": random.Random(self.seed)}))
        for act in self.acts:
            act(mechanic)
        return mechanic


STATES = (
    # The readings ---------------------------------------------------------------------------------
    State("bore 8 low", "do.move do.reseat do.fit-dowels do.recheck",
          "do.leave do.beyond-dowels do.clean-joint face-first undecided", LOW, ends="within"),
    State("bore 1 off", "do.leave do.tighten-and-sweep", "do.fit-dowels do.done do.move", NEAR,
          ends="within"),
    State("bore 1 off, swept twice", "do.done", "do.fit-dowels do.leave", NEAR, (again,), "within"),
    State("dial slips in its bracket", "closing-error do.fix-stop",
          "do.fit-dowels do.leave do.move face-undecided undecided",
          {**LOW, "loose": "jump"}, ends="within"),
    State("dial slips, return not noted", "closing-missing do.note-return", "do.done do.fix-stop",
          {**NEAR, "loose": "jump", "notes_return": False}, ends="within"),
    State("dial half a step off on return", "closing-spread", "closing-error do.fix-stop",
          LOW, (returned(0.5),), "within"),
    State("a wrong sign among eight", "foreign-reading do.fix-stop",
          "do.fit-dowels do.leave undecided too-coarse direction-unknown",
          {**LOW, "positions": EIGHTHS}, (turned_sign(3),), "within"),
    State("a wrong sign among four", "pair-sums do.sweep-eight",
          "do.done out-of-round do.cannot-settle do.treat-as-out do.fit-dowels",
          LOW, (turned_sign(1),), "within"),
    State("readings typed in inches", "looks-like-inches do.fix-stop", "do.leave do.done", LOW,
          (in_inches,), "within"),
    State("bore out of round by 4", "out-of-round", "foreign-reading do.fix-stop",
          {**NEAR, "positions": EIGHTHS}, (shown("bore", 2, 0, -2, 0, 2, 0, -2, 0),)),
    State("three positions", "no-check", "do.fix-stop foreign-reading",
          {**NEAR, "positions": (0.0, 240.0, 120.0)}),
    State("starter in the way, one of eight", "not-reached", "no-check do.fix-stop",
          {**NEAR, "positions": EIGHTHS}, (shown("bore", None, at=1),)),
    State("bracket moved between two sweeps", "sweeps-disagree do.steady-the-dial",
          "do.fix-stop do.fit-dowels do.move", LOW,
          (once_more("bore"), shown("bore", 4.0, at=2, sweep=1)), "within"),
    State("slipped before the dowels went in", "earlier-unreliable", "do.fix-stop moved-wrong-way",
          LOW, (returned(6.0), fitted(7.0, 12)), "within"),
    # Holder, limit, dial -------------------------------------------------------------------------
    State("4 high by an arm that sags 4", "undecided do.settle-bore droop-unmeasured",
          "do.fit-dowels do.move", off(4.0, 12, holder="jointed_arm", sag=4.0), ends="within"),
    State("4 high by an arm whose sag was tested", "do.leave", "do.move droop-unmeasured",
          off(4.0, 12, holder="jointed_arm", sag=4.0), (lambda m: m.better("bore", "sag"),),
          "within"),
    State("an arm whose sag was tested at three quarters of its reach", "sag-other-reach",
          "droop-unmeasured do.fit-dowels do.move",
          off(4.0, 12, holder="jointed_arm", sag=2.5),
          (typed("indicator", sag=1.0, sag_reach=6.0, reach=8.0),), "within"),
    State("engine on its nose", "do.leave", "droop-unmeasured", {**NEAR, "sag": 0.0},
          (typed("crank", axis="vertical"),)),
    State("5.1 of 5 by a usual dial", "undecided do.settle-bore do.or-fit", "do.done do.leave",
          off(5.1, 6)),
    State("at the limit, measured as well as can be", "do.cannot-settle do.fit-dowels",
          "do.settle-bore do.leave", off(5.05, 9), (finest,), "within"),
    State("at the limit, nothing in the drawer", "do.cannot-settle do.treat-as-out",
          "do.settle-bore do.leave", off(5.05, 9, drawer=[]), (finest,), "stopped"),
    State("a limit finer than the dial", "too-coarse do.settle-bore",
          "do.done do.leave between-sizes do.get-size",
          off(0.2, 3, limit=0.6)),
    State("no limit known", "no-limit do.no-limit do.nothing-fits", "do.leave do.done limit-source",
          NEAR, (typed("limits", bore_offset=None),)),
    State("limit of common practice, not typed", "limit-source", "no-limit", NEAR,
          (lambda m: m.job.pop("limits") and None,)),
    State("the maker's limit", "do.leave", "limit-source no-limit", NEAR),
    State("bore as good as true", "direction-unknown do.leave", "do.move do.fit-dowels",
          off(0.1, 3), ends="within"),
    # Dowels --------------------------------------------------------------------------------------
    State("between two sizes", "between-sizes do.get-size", "do.beyond-dowels beyond-stock",
          off(10.5, 5, limit=2.0), ends="within"),
    State("60 off", "beyond-stock do.beyond-dowels", "do.get-size do.fit-dowels", off(60.0, 2),
          ends="stopped"),
    State("nothing in the drawer", "no-stock do.get-pair", "do.beyond-dowels do.fit-dowels",
          {**LOW, "drawer": []}, ends="within"),
    State("no limit, and a pair that would help", "do.no-limit do.fit-dowels", "do.nothing-fits",
          LOW, (typed("limits", bore_offset=None),)),
    State("bolt holes too tight for a size that would do", "bolt-holes do.open-holes",
          "do.beyond-dowels beyond-stock", {**LOW, "clearance": 6.0}, ends="within"),
    State("between two sizes, holes measured", "unlike-reach do.fit-unlike", "do.beyond-dowels",
          off(10.5, 5, limit=2.5), (typed("housing", dowel_holes=TWO_HOLES),)),
    State("holes not measured", "holes-wanted", "unlike-reach", LOW),
    State("unlike dowels in holes not measured", "dowels-differ do.back-to-stock", "do.trim",
          LOW, (unlike((7.0, 12.0), (14.0, 2.0)),)),
    State("a pair that hardly does", "stock-doubtful do.fit-dowels", "do.beyond-dowels",
          off(11.8, 5, drawer=[7.0])),
    State("dowels aimed the other way", "moved-wrong-way do.fix-stop", "do.trim do.fit-dowels",
          off(8.0, 4), (fitted(7.0, 10, truly=4),), "within"),
    State("left taken for right when aiming", "moved-mirrored do.fix-stop", "do.trim",
          off(9.0, 5), (fitted(7.0, 11, truly=1),), "within"),
    State("dowels aimed an hour aside", "moved-otherwise do.trim", "do.fix-stop moved-wrong-way",
          off(13.0, 5), (fitted(14.0, 11, truly=12.2),), "within"),
    State("dowels do half of what is on them", "moved-otherwise do.check-fit do.recheck",
          "do.get-size between-sizes do.beyond-dowels beyond-stock do.fix-stop do.leave",
          off(14.0, 6, gain=0.5), (fitted(14.0, 12),)),
    State("a turn that gains less than the noise", "trim-noise", "do.leave trim-other-size",
          off(13.0, 6, drawer=[7.0]), (fitted(7.0, 12.3),)),
    State("another size does better than a turn", "trim-other-size do.fit-dowels",
          "do.trim trim-noise",
          off(14.0, 6), (fitted(7.0, 12),), "within"),
    State("within after dowels that went aside", "do.leave", "moved-otherwise do.trim",
          off(7.0, 6), (fitted(7.0, 12, truly=12.9),), "within"),
    State("the housing never rests alike", "do.dowels-do-not-hold", "do.trim do.fit-dowels",
          off(30.0, 6, drawer=[7.0]), (fitted(7.0, 12, times=6),), "stopped"),
    State("seats well, seated three times again", "do.move do.fit-dowels",
          "seat-scatters do.mend-seat do.dowels-do-not-hold", LOW, (reseated(3),), "within"),
    State("seats well, seated once again on dowels", "do.leave",
          "seat-scatters do.mend-seat do.move", LOW, (fitted(7.0, 12), reseated()), "within"),
    State("dowels so loose that no size holds", "seat-scatters do.mend-seat",
          "do.fit-dowels do.trim do.leave do.done do.dowels-do-not-hold", off(14.0, 6, play=14.0),
          (reseated(3),), "within"),
    State("seats 3 off its place, far inside a wide limit", "seat-scatters do.fit-dowels",
          "do.mend-seat", off(30.0, 6, limit=15.0, play=6.0, drawer=[28.0]), (reseated(5),),
          "within"),
    State("swept in a plate 4 off, nothing known of it", "plate-unknown do.fix-stop",
          "do.fit-dowels do.leave do.done do.move", {**NEAR, "plate": plane(4.0, 1.0)}, (PLATE,),
          "within"),
    State("swept in a plate 4 off, bore 8 low", "plate-unknown do.fix-stop",
          "do.fit-dowels do.leave do.done do.move", {**LOW, "plate": plane(4.0, 1.0)}, (PLATE,),
          "within"),
    State("swept in a plate that may be 4 off, close", "undecided do.settle-bore",
          "plate-unknown do.leave do.done do.move", off(3.0, 6, plate=plane(3.0, 2.0)),
          (PLATE, typed("housing", plate_concentricity=4.0)), "within"),
    State("swept in a plate that is true within 0.2", "do.leave", "plate-unknown do.move",
          {**NEAR, "plate": plane(0.2, 1.0)}, (PLATE, typed("housing", plate_concentricity=0.2)),
          "within"),
    State("plate turned, bore 8 low", "do.move do.fit-dowels do.reseat",
          "plate-unknown do.leave do.sweep-face", {**LOW, "plate": plane(4.0, 1.0)},
          (PLATE, Mechanic.turn_plate), "within"),
    State("dial's sense typed wrongly", "moved-wrong-way do.fix-stop", "do.trim",
          {**off(10.0, 6), "wrong_sense": True}, (fitted(7.0, 6),), "within"),
    State("clock read from the front", "moved-mirrored do.fix-stop", "do.trim",
          {**off(10.0, 4.5), "mirrored": True}, (fitted(7.0, 1.5),), "within"),
    State("dowels where none were needed", "do.standard-dowels do.recheck", "do.beyond-dowels",
          off(2.0, 12, drawer=[7.0]), (fitted(7.0, 12),), "within"),
    # The face ------------------------------------------------------------------------------------
    State("face never swept", "face-not-swept do.sweep-face", "do.square-front do.square-rear",
          {**LOW, "sweeps_face": False}, ends="within"),
    State("end play let into the face", "face-not-trusted do.resweep-face",
          "face-first face-warp do.clean-joint do.square-front do.square-rear do.fit-dowels",
          {**LOW, "holds_crank": False, "end_play": 20.0}, ends="within"),
    State("a chip of 7.5 in the joint, a close limit", "face-first do.clean-joint chip-explains",
          "do.square-front do.square-rear do.fit-dowels too-thick-for-dirt",
          leaning(7.5, 3, "chip") | NEAR, (typed("limits", face_runout=1.5),), "within"),
    State("tipped by 15 at the joint, seen once", "face-first do.clean-joint too-thick-for-dirt",
          "do.square-front do.square-rear chip-explains", leaning(36.0, 3, "block") | NEAR),
    State("tipped, and so again on a clean joint", "do.sweep-face-twice",
          "do.square-front do.square-rear do.clean-joint", leaning(36.0, 3, "block") | NEAR,
          SEEN_AGAIN),
    State("tipped, swept twice", "do.find-tilt-cause face-may-swing-bore",
          "do.square-front do.square-rear face-swings-bore", leaning(36.0, 3, "block") | NEAR,
          SEEN_TWICE),
    State("tipped at the block, known",
          "do.check-sense do.square-front do.start-anew face-swings-bore",
          "do.square-rear do.find-tilt-cause face-may-swing-bore",
          leaning(36.0, 3, "block") | NEAR, (*SEEN_TWICE, typed("housing", tilt_from="front"))),
    State("rear face cut crooked, known", "do.square-rear do.start-anew",
          "do.square-front face-swings-bore shims-short", leaning(36.0, 3, "crooked") | NEAR,
          (*SEEN_TWICE, typed("housing", tilt_from="rear"))),
    State("two face sweeps that differ", "do.steady-the-dial",
          "do.square-front do.square-rear do.find-tilt-cause", leaning(36.0, 3, "block") | NEAR,
          (*SEEN_TWICE, shown("face", 4.0, at=2, sweep=1))),
    State("flange not measured", "depth-wanted bolts-wanted", "shims-short",
          leaning(36.0, 3, "block", knows_flange=False) | NEAR, SEEN_TWICE),
    State("more shim than three of the thickest", "shims-short", "do.square-front",
          leaning(80.0, 3, "block") | NEAR,
          (*SEEN_TWICE, typed("stock", shim_thicknesses=[1.0, 2.0, 5.0]))),
    State("face near its limit", "face-undecided do.settle-face",
          "face-first do.clean-joint do.fit-dowels", leaning(11.2, 3, "block") | LOW),
    State("face at its limit, measured as well as can be", "do.face-at-limit",
          "do.settle-face do.clean-joint do.square-front", leaning(11.7, 3, "block") | LOW,
          (finest_face,)),
    State("no limit for the face", "no-face-limit", "do.clean-joint face-first",
          leaning(36.0, 3, "block") | NEAR, (typed("limits", face_runout=None),)),
    State("face warped", "face-warp face-tir-over do.face-not-flat",
          "do.clean-joint do.square-rear do.face-at-limit do.done",
          {**NEAR, "positions": EIGHTHS}, (shown("face", 4, 0, -4, 0, 4, 0, -4, 0),)),
    State("a chip got in with the dowels", "face-changed", "do.square-front do.fix-stop", LOW,
          (chip_in, fitted(7.0, 12))),
    # Pilot line, gearbox, parts that turn --------------------------------------------------------
    State("distance to the pilot not known", "pilot-distance-wanted", "pilot-outside", NEAR),
    State("bore within, pilot line out", "pilot-outside do.aim-for-pilot", "do.leave do.done",
          off(3.5, 9), (TO_PILOT, typed("limits", pilot_offset=1.0))),
    State("bore within, pilot line out, aimed for it", "pilot-outside do.pilot-stays-out",
          "do.leave do.done", off(3.5, 9, drawer=[7.0, 14.0]),
          (TO_PILOT, typed("limits", pilot_offset=1.0), typed("stock", aim_for="pilot")),
          "stopped"),
    State("pilot line at its limit", "pilot-undecided", "pilot-outside", NEAR,
          (TO_PILOT, typed("limits", pilot_offset=1.0))),
    State("aimed for a pilot that is not known", "aim-for-bore", "pilot-outside", LOW,
          (typed("stock", aim_for="pilot"),)),
    State("angle near what a needle bearing stands", "angle-near", "angle-beyond",
          leaning(7.0, 3, "none") | NEAR, (TO_PILOT, typed("housing", pilot_bearing="needle"))),
    State("angle beyond what a needle bearing stands", "angle-beyond", "angle-near",
          leaning(40.0, 3, "block") | NEAR, (TO_PILOT, typed("housing", pilot_bearing="needle"))),
    State("gearbox larger than the bore", "interference do.fix-stop", "do.fit-dowels do.leave", LOW,
          (typed("housing", bore_diameter=4.685, register_diameter=4.6855),)),
    State("gearbox loose in a bore that is within", "seat-loose", "do.move do.fit-dowels",
          off(3.5, 3), (typed("housing", bore_diameter=4.690, register_diameter=4.680),)),
    State("pilot bore runs out", "companion-outside do.mend-part", "do.done do.fit-dowels", NEAR,
          (part_that_turns("pilot_bore", 5.0, 3.0),)),
    State("pilot bore at its limit", "companion-undecided", "companion-outside", NEAR,
          (part_that_turns("pilot_bore", 1.5, 3.0),)),
    State("shaft and clutch fit", "do.leave",
          "do.mend-depth do.measure-depth depth-outside depth-undecided spacer", NEAR,
          (lengths(Fit(), engagement_min=0.4, tip_gap_min=0.1),), "within"),
    State("shaft bottoms in the crank, a spacer cures it",
          "depth-outside spacer do.mend-depth do.leave", "do.done no-spacer less-between",
          NEAR, (BOTTOMS,)),
    State("shaft bottoms, bore out too", "depth-outside do.mend-depth do.fit-dowels", "do.done",
          LOW, (BOTTOMS,)),
    State("shaft too short for its bearing", "depth-outside no-spacer do.mend-depth", "spacer",
          NEAR, (lengths(Fit(gearbox=Gearbox(Span(-6.2, 0.0), Span(-6.2, -5.4)))),)),
    State("a spacer too thick", "depth-outside less-between", "spacer no-spacer", NEAR,
          (lengths(Fit(Engine(between=0.3)), release_gap_max=0.2),)),
    State("engagement at its limit", "depth-undecided do.measure-depth", "depth-outside do.done",
          NEAR, (again, lengths(Fit(), engagement_min=0.5))),
    State("bearing on the fingers, pilot not measured", "depth-outside spacer-unknown",
          "spacer no-spacer", NEAR,
          (lengths(Fit(gearbox=Gearbox(release_bearing=-4.0)), to_bottom=None),)),
    State("hydraulic release bearing too far back", "depth-outside release-shim",
          "spacer no-spacer", NEAR,
          (lengths(Fit(gearbox=Gearbox(release_bearing=-3.3, stroke=2.0)), release="hydraulic",
                   release_gap_max=0.2),)),
    State("flywheel face, end play in it", "companion-end-play", "do.clean-joint", NEAR,
          (part_that_turns("flywheel_face", 1.0, 8.0),)),
)  # fmt: skip
