"""Random shops, and a mechanic in each who does what he is told, step by step.

A shop is a true state of engine, dial and hand, made from a seed. Its bore is a cylinder and its
rear face a plane in space (``test_honest_loop``); the dial's ray is met with either, and nothing of
the core's own formulas is used. The mechanic types what his dial shows, asks ``solve``, and obeys
the steps of its ``advice``.

``python -m tests.core.shop [SEED ...]`` tells what became of a thousand shops, or of some.
"""

from __future__ import annotations

import math
import random
import sys
from collections import Counter
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from sweepsheet import solve
from tests.cases.jobs import SEVEN_BOLTS, Data
from tests.core.test_honest_loop import FACE_RADIUS, face_height, wall_distance

Array = NDArray[np.float64]

DEPTH = 6.5  # in, front flange to rear face
RIM = 7.0  # in, where a chip lies
PLAY = 1.0  # thou, clearance of the dowels
MOST_PASSES = 40
MOST_ROUNDS = 19
# As the crank of most engines comes to them: counterclockwise from behind.
QUARTERS = (0.0, 270.0, 180.0, 90.0)
EIGHTHS = tuple(-45.0 * i % 360.0 for i in range(8))
SAG_OF = {"bracket": 1.0, "short_arm": 3.0, "jointed_arm": 5.0}


def plane(offset: float, toward: float) -> Array:
    """A vector by its length and clock angle in radians."""
    return offset * np.array([math.sin(toward), math.cos(toward)])


@dataclass
class Shop:
    """The true state. Lengths in thou, but for ``H`` and radii in inches; slopes are ratios.

    ``tilt`` is why the face leans: ``none``, ``chip`` (goes when the joint is cleaned), ``block``
    (the housing stands tipped) or ``crooked`` (its rear face alone).
    """

    rng: random.Random
    center: Array
    slope: Array
    tilt: str
    end_play: float
    holder: str
    holder_told: bool
    sag: float
    loose: str
    wrong_sense: bool
    mirrored: bool
    slips: float
    notes_return: bool
    gain: float
    lag: float
    wrong_aim: str
    holds_crank: bool
    sweeps_face: bool
    positions: tuple[float, ...]
    limit: float
    face_limit: float
    drawer: list[float]
    clearance: float | None
    knows_flange: bool
    scatter: float = 0.25
    accuracy: float = 0.5
    step: float = 0.5
    phase: float = 0.0
    play: float = PLAY
    plate: Array = field(default_factory=lambda: np.zeros(2))
    moved: Array = field(default_factory=lambda: np.zeros(2))
    seat: Array = field(default_factory=lambda: np.zeros(2))

    @property
    def bore(self) -> Array:
        """Where the bore is now."""
        return np.asarray(self.center + self.moved + self.seat)

    @property
    def offset(self) -> float:
        """How far it is off now."""
        return float(np.hypot(*self.bore))

    @property
    def runout(self) -> float:
        """The runout of the face at the radius that is swept."""
        return 2000.0 * FACE_RADIUS * float(np.hypot(*self.slope))

    def rest(self) -> None:
        """Let the housing come to rest anywhere within the play of its dowels."""
        self.seat = np.array([self.rng.uniform(-0.5, 0.5) * self.play for _ in range(2)])

    def clean(self) -> None:
        """Loosen the housing and clean the joint: a chip in it mostly goes."""
        if self.tilt == "chip" and self.rng.random() < 0.95:
            self.center = self.center + 1000.0 * DEPTH * self.slope
            self.slope, self.tilt = np.zeros(2), "none"
        self.rest()

    def square(self, slope: Array, *, front: bool) -> None:
        """Take a slope off: at the front flange the housing turns, at the rear face it stays."""
        self.slope = self.slope - slope
        if front:
            self.center = self.center + 1000.0 * DEPTH * slope
        self.rest()

    def fit(self, offset: float, aim_deg: float) -> None:
        """Fit a pair that is really aimed so."""
        self.moved = plane(self.gain * offset, math.radians(aim_deg) + self.lag)
        self.rest()

    def sweep(self, part: str) -> tuple[list[float], float]:
        """What the dial shows at each position, in its own sense, and back at the start."""
        rng, stops = self.rng, [*self.positions, self.positions[0]]
        jump = rng.randrange(1, len(stops)) if self.loose == "jump" else len(stops)
        slipped = rng.choice((-1, 1)) * rng.uniform(2.0, 8.0)
        shown = []
        for i, stop in enumerate(stops):
            at = math.radians(stop + rng.uniform(-4.0, 4.0))
            if part == "face":
                floats = 0.1 if self.holds_crank else self.end_play
                pushed = 1000.0 * face_height(self.slope, at) / 1000.0 + rng.uniform(0.0, floats)
            else:
                pushed = -wall_distance(self.bore + self.plate, self.slope, at)
                pushed += self.sag * (1.0 - math.cos(at)) / 2.0
            scatter = self.scatter + (1.5 if self.loose == "flex" else 0.0)
            value = pushed + rng.gauss(0.0, scatter) + (slipped if i >= jump else 0.0)
            value += 0.8 * self.accuracy * math.sin(self.phase + pushed / 7.0)
            shown.append(value)
        zero = shown[0]
        read = [round((value - zero) / self.step) * self.step for value in shown]
        if rng.random() < self.slips:
            i = rng.randrange(1, len(stops) - 1)
            read[i] = -read[i] if rng.random() < 0.6 else read[i] + 10.0
        if self.wrong_sense:
            read = [-value for value in read]
        return read[:-1], read[-1]


def shop_of(seed: int) -> Shop:
    """The shop of a seed. Each kind of trouble is there about once in ten times."""
    rng = random.Random(seed)
    tilt = rng.choices(("none", "chip", "block", "crooked"), (70, 10, 10, 10))[0]
    steep = {
        "none": rng.uniform(0.0, 0.0006), "chip": rng.uniform(5.0, 20.0) / (2000.0 * RIM),
        "block": rng.uniform(0.0006, 0.003), "crooked": rng.uniform(0.0006, 0.003),
    }[tilt]  # fmt: skip
    slope = plane(steep, rng.uniform(0.0, 2.0 * math.pi))
    center = plane(25.0 * rng.random() ** 1.3, rng.uniform(0.0, 2.0 * math.pi))
    if tilt == "chip":
        center = center - 1000.0 * DEPTH * slope
    holder = rng.choices(tuple(SAG_OF), (35, 30, 35))[0]
    shop = Shop(
        rng=rng,
        center=center,
        slope=slope,
        tilt=tilt,
        end_play=rng.uniform(2.0, 8.0),
        holder=holder,
        holder_told=rng.random() < 0.6,
        sag=rng.uniform(0.0, SAG_OF[holder]),
        loose=rng.choices(("", "jump", "flex"), (86, 9, 5))[0],
        wrong_sense=rng.random() < 0.1,
        mirrored=rng.random() < 0.05,
        slips=0.05,
        notes_return=rng.random() < 0.6,
        gain=rng.gauss(1.0, 0.05),
        lag=math.radians(rng.gauss(0.0, 3.0)),
        wrong_aim=rng.choices(("", "opposite", "mirrored", "aside"), (88, 4, 4, 4))[0],
        holds_crank=rng.random() < 0.4,
        sweeps_face=rng.random() < 0.6,
        positions=rng.choice((QUARTERS, QUARTERS, QUARTERS, EIGHTHS)),
        limit=rng.choice((5.0, 5.0, 5.0, 3.0, 2.0)),
        face_limit=5.0,
        drawer=rng.choice(([7.0, 14.0, 21.0], [7.0, 14.0, 21.0], [7.0], [], [5.0, 10.0, 15.0])),
        clearance=rng.choice((None, None, 20.0, 60.0)),
        knows_flange=rng.random() < 0.5,
        phase=rng.uniform(0.0, 2.0 * math.pi),
    )  # fmt: skip
    shop.rest()
    return shop


@dataclass
class End:
    """What became of a shop: how it ended, the truth then, and every step that was told."""

    seed: int
    kind: str
    offset: float
    limit: float
    runout: float
    face_told: bool
    needless: list[str]
    told: list[str]
    shop: Shop

    @property
    def fooled(self) -> bool:
        """Whether he believes himself within and is not: in the bore, or in a face told within."""
        bore, face = self.offset > self.limit, self.face_told and self.runout > 5.0
        return self.kind == "within" and (bore or face)


class Mechanic:
    """Obeys. His job file holds what he typed; the shop what is true."""

    def __init__(self, seed: int, shop: Shop | None = None) -> None:
        """Walk in and take the first sweep."""
        self.seed = seed
        self.shop = shop or shop_of(seed)
        self.told: list[str] = []
        self.needless: list[str] = []
        self.dowels = [{"offset": 0.0, "aim_deg": 0.0}] * 2
        self.aim_truly = 0.0
        shop = self.shop
        housing: Data = {"bolt_clearance": shop.clearance}
        if shop.knows_flange:
            housing |= {"depth": DEPTH, "bolts": SEVEN_BOLTS}
        self.job: Data = {
            "format": "sweepsheet-job",
            "version": 1,
            "limits": {"bore_offset": shop.limit, "face_runout": 5.0, "source": "manual"},
            "indicator": {"holder": shop.holder if shop.holder_told else None},
            "housing": housing,
            "stock": {"dowel_offsets": list(shop.drawer)},
            "rounds": [],
        }
        self.sweep_anew(face=shop.sweeps_face)

    # What he does with the dial ------------------------------------------------------------

    def swept(self, part: str, sweeps: int = 1) -> Data:
        """A sweep, as he writes it down."""
        rows, closing = [], []
        for _ in range(sweeps):
            row, back = self.shop.sweep(part)
            rows.append(row)
            closing.append(back if self.shop.notes_return else None)
            self.backs = [*getattr(self, "backs", []), back]
        found: Data = {
            "positions_deg": [self.typed(a) for a in self.shop.positions],
            "sweeps": rows,
            "closing": closing,
        }
        if part == "face":
            found |= {
                "radius": FACE_RADIUS,
                "end_float": "held" if self.shop.holds_crank else "free",
            }
        return found

    def typed(self, position: float) -> float:
        """A position as he names it; from the front 3 and 9 change places."""
        return -position % 360.0 if self.shop.mirrored else position

    def sweep_anew(self, *, face: bool, since: str = "dowels") -> None:
        """A new round."""
        each: Data = {"bore": self.swept("bore"), "dowels": self.dowels, "since": since}
        if face:
            each["face"] = self.swept("face")
        self.job["rounds"].append(each)

    @property
    def latest(self) -> Data:
        """The latest round of the job file."""
        each: Data = self.job["rounds"][-1]
        return each

    def again(self, part: str) -> None:
        """The same sweeps anew, in place of those that can't be believed."""
        self.latest[part] = self.swept(part, len(self.latest[part]["sweeps"]))

    def better(self, part: str, measure: str) -> None:
        """Measure better, as he is told."""
        if measure == "plate":
            self.turn_plate()
        elif measure == "sag":
            tries = [max(0.0, self.shop.sag + self.shop.rng.gauss(0.0, 0.35)) for _ in range(3)]
            dial = self.job["indicator"]
            dial["sag"] = [round(t * 2.0) / 2.0 for t in tries]
            if "reach" in dial:
                dial["sag_reach"] = dial["reach"]
        elif measure == "sweep":
            more = self.swept(part)
            self.latest[part]["sweeps"] += more["sweeps"]
            self.latest[part]["closing"] += more["closing"]
        elif measure == "positions":
            self.shop.positions = EIGHTHS
            self.again(part)
        else:
            self.shop.step, self.shop.accuracy, self.shop.scatter = 0.1, 0.2, 0.1
            self.job["indicator"] |= {"step": 0.1, "accuracy": 0.2, "repeatability": 0.1}
            for each in ("bore", "face"):
                if each in self.latest:
                    self.again(each)

    # What he does with the housing -----------------------------------------------------------

    def fit(self, offset: float, aim_deg: float) -> None:
        """Fit a pair as told; the hand may aim it otherwise, once, and types what was planned."""
        wrong = {"": 0.0, "opposite": 180.0, "mirrored": -2.0 * aim_deg, "aside": 30.0}
        self.aim_truly = aim_deg + wrong[self.shop.wrong_aim]
        self.shop.wrong_aim = ""
        self.dowels = [{"offset": offset, "aim_deg": aim_deg % 360.0}] * 2
        self.shop.fit(offset, self.aim_truly)

    def turn_plate(self) -> None:
        """Only the plate goes half a turn round on its pins; then the bore once more."""
        self.shop.plate = -self.shop.plate
        self.sweep_anew(face=False, since="plate_turned")

    def find_out(self) -> None:
        """Look which is wrong: the dial's sense, the side, the aim; and put it right."""
        if self.shop.wrong_sense:
            self.mend_sense()
        self.mend_side()
        fitted = [{"offset": self.dowels[0]["offset"], "aim_deg": self.aim_truly % 360.0}] * 2
        if fitted != self.dowels:
            for each in self.job["rounds"]:
                if each["dowels"] == self.dowels:
                    each["dowels"] = fitted
            self.dowels = fitted
        else:
            self.again("bore")

    def mend_sense(self) -> bool:
        """Push the plunger: whether the form had the wrong sense, which it now has no more."""
        wrong, self.shop.wrong_sense = self.shop.wrong_sense, False
        if wrong:
            for each in self.job["rounds"]:
                for part in ("bore", "face"):
                    if part in each:
                        rows = each[part]["sweeps"]
                        each[part]["sweeps"] = [[-m for m in row] for row in rows]
                        back = each[part]["closing"]
                        each[part]["closing"] = [None if c is None else -c for c in back]
        return wrong

    def mend_side(self) -> bool:
        """Look from behind: whether 3 and 9 had changed places, which they now have no more."""
        wrong, self.shop.mirrored = self.shop.mirrored, False
        if wrong:
            for each in self.job["rounds"]:
                for part in ("bore", "face"):
                    if part in each:
                        typed = each[part]["positions_deg"]
                        each[part]["positions_deg"] = [-a % 360.0 for a in typed]
        return wrong

    def cut(self, code: str, result: Data) -> None:
        """Square the face by what was measured; remember whether there was any need."""
        shop, before = self.shop, self.shop.runout
        shop.square(np.array(result["rounds"][-1]["face"]["slope"]), front=code == "square-front")
        right = "square-rear" if shop.tilt == "crooked" else "square-front"
        if before <= 5.0 or shop.tilt == "chip" or shop.runout > before or code != right:
            self.needless.append(f"{code} at {before:.1f}, then {shop.runout:.1f}: {shop.tilt}")

    # The job ------------------------------------------------------------------------------

    def work(self) -> End:
        """Ask and obey until it is done, or stopped."""
        kind = "gave up"
        for _ in range(MOST_PASSES):
            result = solve(self.job)
            codes = [step["code"] for step in result["advice"]]
            self.told.append(" ".join(codes))
            kind = self.obey(result)
            if kind or len(self.job["rounds"]) >= MOST_ROUNDS:
                break
        face = result["rounds"][-1]["face"]
        return End(
            self.seed, kind or "gave up", self.shop.offset, self.shop.limit, self.shop.runout,
            face is not None and face["verdict"] == "within", self.needless, self.told, self.shop,
        )  # fmt: skip

    def obey(self, result: Data) -> str:
        """Do the steps up to one that makes new readings; how it ended, or nothing."""
        for step in result["advice"]:
            done = self.do(step, result)
            if done:
                return "" if done == "again" else done
        return "stopped"

    def do(self, step: Data, result: Data) -> str:
        """One step: ``again`` where there is something new to be asked, an end, or nothing."""
        code = step["code"]
        handler = getattr(self, "do_" + code.replace("-", "_"), None)
        if handler is None:
            raise AssertionError(f"nobody knows how to do {code}")
        told: str = handler(step, result) or ""
        return told

    def do_fix_stop(self, step: Data, _: Data) -> str:
        """Clear up what can't be right."""
        if step["finding"] in ("moved-wrong-way", "moved-mirrored"):
            self.find_out()
            return "again"
        if step["finding"] == "plate-unknown":
            self.turn_plate()
            return "again"
        if step["finding"] == "closing-error" and self.shop.rng.random() < 0.9:
            self.shop.loose = ""
        self.again("face" if ".face" in step["field"] else "bore")
        return "again"

    def do_note_return(self, step: Data, _: Data) -> str:
        """He notes the return from now on; this sweep is taken anew, with it."""
        self.shop.notes_return = True
        self.again("face" if ".face" in step["field"] else "bore")
        return "again"

    def do_sweep_face(self, _: Data, __: Data) -> str:
        """Sweep the face, the crank pushed to its stop."""
        self.shop.holds_crank = True
        self.latest["face"] = self.swept("face")
        return "again"

    do_resweep_face = do_sweep_face

    def do_settle_face(self, step: Data, _: Data) -> str:
        """Measure the face better."""
        self.better("face", step["measure"])
        return "again"

    do_sweep_face_twice = do_settle_face

    def do_settle_bore(self, step: Data, _: Data) -> str:
        """Measure the bore better."""
        self.better("bore", step["measure"])
        return "again"

    def do_clean_joint(self, _: Data, __: Data) -> str:
        """Loosen, clean, torque, sweep both as a new round."""
        self.shop.clean()
        self.sweep_anew(face=True)
        return "again"

    def do_reseat(self, _: Data, __: Data) -> str:
        """The same before the first dowels; the face where it was swept."""
        self.shop.clean()
        self.sweep_anew(face="face" in self.latest)
        return "again"

    def do_mend_seat(self, _: Data, __: Data) -> str:
        """What is loose is found and put right; then once more."""
        self.shop.play = PLAY
        self.shop.clean()
        self.sweep_anew(face="face" in self.latest, since="cleaned")
        return "again"

    def do_find_tilt_cause(self, _: Data, __: Data) -> str:
        """The housing is off: what lay in the joint is seen. Else a surface plate tells."""
        if self.shop.tilt == "chip":
            while self.shop.tilt == "chip":
                self.shop.clean()
            self.sweep_anew(face=True)
            return "again"
        self.job["housing"]["tilt_from"] = "rear" if self.shop.tilt == "crooked" else "front"
        return "again"

    def do_check_sense(self, _: Data, __: Data) -> str:
        """Push the plunger by hand, and look where 3 is."""
        wrong = [self.mend_sense(), self.mend_side()]
        return "again" if any(wrong) else ""

    def do_square_front(self, step: Data, result: Data) -> str:
        """Shim or machine."""
        self.cut(step["code"], result)
        return ""

    do_square_rear = do_square_front

    def do_start_anew(self, _: Data, __: Data) -> str:
        """A new job for what is now another housing."""
        self.job["rounds"] = []
        self.job["housing"].pop("tilt_from", None)
        self.sweep_anew(face=True)
        return "again"

    def do_tighten_and_sweep(self, _: Data, __: Data) -> str:
        """Final torque: it settles a little; then once more."""
        self.shop.seat = self.shop.seat + np.array([self.shop.rng.gauss(0.0, 0.2) for _ in "xy"])
        self.sweep_anew(face="face" in self.latest)
        return "again"

    def do_fit_dowels(self, step: Data, _: Data) -> str:
        """Fit a pair."""
        self.fit(step["offset"], step["aim_deg"])
        return ""

    def do_trim(self, step: Data, _: Data) -> str:
        """Turn the pair that is in, by so much from where it was typed to be."""
        self.fit(self.dowels[0]["offset"], self.aim_truly + step["turn_deg"])
        return ""

    def do_standard_dowels(self, _: Data, __: Data) -> str:
        """Stock dowels again."""
        self.fit(0.0, 0.0)
        return ""

    def do_recheck(self, _: Data, __: Data) -> str:
        """A new round."""
        self.sweep_anew(face="face" in self.latest)
        return "again"

    def do_sweep_eight(self, _: Data, __: Data) -> str:
        """The bore again, at eight positions."""
        self.shop.positions = EIGHTHS
        self.again("bore")
        return "again"

    def do_face_not_flat(self, _: Data, __: Data) -> str:
        """Stone it, and sweep it again."""
        self.again("face")
        return "again"

    def do_aim_for_pilot(self, _: Data, __: Data) -> str:
        """Choose it."""
        self.job["stock"]["aim_for"] = "pilot"
        return "again"

    def do_check_fit(self, _: Data, __: Data) -> str:
        """Take it off, look at aim and seat, put it on again."""
        self.find_out()
        self.shop.rest()
        return ""

    def do_open_holes(self, step: Data, _: Data) -> str:
        """Open the bolt holes."""
        self.job["housing"]["bolt_clearance"] = step["clearance"] + 1.0
        return "again"

    def do_get_size(self, step: Data, _: Data) -> str:
        """Buy a pair of about that size, in half thous."""
        size = max(0.5, round(step["offset"] * 2.0) / 2.0)
        stock = self.job["stock"]["dowel_offsets"]
        if size in stock or len(stock) >= 8:
            return "stopped"
        stock.append(size)
        return "again"

    do_get_pair = do_get_size

    def nothing(self, _: Data, __: Data) -> str:
        """Words that go with the next step."""
        return ""

    do_mend_part = do_move = do_leave = do_or_fit = do_cannot_settle = do_face_at_limit = nothing

    def stopped(self, _: Data, __: Data) -> str:
        """An honest stop."""
        return "stopped"

    def do_steady_the_dial(self, step: Data, _: Data) -> str:
        """Look at bracket and base; what is loose is found nine times in ten."""
        if self.shop.rng.random() < 0.9:
            self.shop.loose = ""
        self.again(step["part"])
        return "again"

    do_pilot_stays_out = do_dowels_do_not_hold = do_beyond_dowels = do_nothing_fits = (
        do_treat_as_out
    ) = do_no_limit = stopped

    def do_done(self, _: Data, __: Data) -> str:
        """He believes it."""
        return "within"


def causes(shop: Any) -> str:
    """The troubles of a shop, as it began."""
    named = {
        shop.tilt: shop.tilt != "none", f"loose {shop.loose}": bool(shop.loose),
        "wrong sense": shop.wrong_sense, "mirrored": shop.mirrored,
        f"aim {shop.wrong_aim}": bool(shop.wrong_aim), "end play": not shop.holds_crank,
        f"{shop.holder}{'' if shop.holder_told else ' untold'}, sag {shop.sag:.1f}": True,
        f"limit {shop.limit:g}": True, f"{len(shop.positions)} positions": True,
    }  # fmt: skip
    return ", ".join(name for name, there in named.items() if there)


def main(seeds: list[int]) -> None:
    """Tell what became of them."""
    ends = [Mechanic(seed).work() for seed in seeds]
    print(Counter(end.kind for end in ends), "fooled:", sum(end.fooled for end in ends))
    print("passes:", Counter(len(end.told) for end in ends).most_common(6))
    for end in ends:
        bad = end.fooled or end.needless or end.kind == "gave up"
        if bad or len(seeds) < 20:
            print(
                f"\n{end.seed} {end.kind}: {end.offset:.1f} of {end.limit:g}, face {end.runout:.1f}"
            )
            print("  was:", causes(shop_of(end.seed)))
            print("  needless:", end.needless)
            for told in end.told:
                print("  ", told)


if __name__ == "__main__":
    main([int(word) for word in sys.argv[1:]] or list(range(1000)))
