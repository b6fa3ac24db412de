"""Whole job files by chance, good and bad, for every test that wants to see all kinds.

One generator serves both: ``random.Random`` for many jobs quickly, and Hypothesis, whose own
``Random`` lets it shrink what it finds (``good_jobs``, ``spoiled_jobs``).
"""

from __future__ import annotations

import copy
import math
import random
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Literal

from hypothesis import strategies as st

from sweepsheet.job.checklist import CODES
from sweepsheet.job.model import SECTIONS
from sweepsheet.job.sag import FARTHEST
from sweepsheet.job.settings import LENGTH, LIMIT, SMALL, Setting, settings_of
from sweepsheet.maths.units import SYSTEMS
from tests.cases.jobs import Data, Reading

KINDS = ("pilot_bore", "crank_flange", "flywheel_face")
SPREADS = (
    (0.0, 90.0, 180.0, 270.0), (0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0),
    (0.0, 120.0, 240.0), (0.0, 60.0, 185.0), (0.0, 2.5, 181.0), tuple(10.0 * i for i in range(36)),
)  # fmt: skip


@dataclass(frozen=True)
class _Maker:
    """Makes the parts of a job whose every value is allowed, now and then at an end of its range.

    ``most`` is the largest small distance and ``longest`` the largest length that a job may hold.
    Tame jobs keep to what a workshop meets: there rounding stays far below what is compared.
    """

    rng: random.Random
    units: Literal["inch", "metric"]
    tame: bool

    @property
    def most(self) -> float:
        return 500.0 if self.units == "inch" else 12.7

    @property
    def thou(self) -> float:
        """A thou in the small unit."""
        return 1.0 if self.units == "inch" else 0.0254

    @property
    def longest(self) -> float:
        return 5000.0 / 25.4 if self.units == "inch" else 5000.0

    def one(self, choices: Sequence[Any]) -> Any:
        return choices[self.rng.randrange(len(choices))]

    def chance(self, share: float) -> bool:
        return self.rng.random() < share

    def between(self, low: float, high: float) -> float:
        return self.rng.uniform(low, high)

    def small(self) -> float:
        """A small distance: mostly some thou, now and then nothing, next to nothing, the most."""
        if self.tame:
            return self.between(0.2, 8.0) * self.thou
        if self.chance(0.2):
            return float(self.one((0.0, 5e-324, 1e-9, self.most)))
        return self.between(0.0, 8.0) * self.thou

    def long(self) -> float:
        """A length: mostly one of a housing, now and then the shortest or longest allowed."""
        if not self.tame and self.chance(0.1):
            return float(self.one((self.longest, self.longest / 1e5)))
        return self.between(0.01, 0.1) * self.longest

    def limit(self) -> float:
        return max(10.0 ** (-1 if self.units == "inch" else -3), self.small())

    def angle(self) -> float:
        if self.chance(0.3):
            return float(self.one((-360.0, -90.0, 0.0, 90.0, 180.0, 360.0)))
        return self.between(-360.0, 360.0)

    def some(self, part: Data, share: float = 0.75) -> Data:
        """Some of the keys; the others are left out."""
        return {key: value for key, value in part.items() if self.chance(share)}

    # Sections ------------------------------------------------------------------------------

    def section(self, name: str) -> Data:
        """Some of the settings of a section."""
        settings = settings_of(SECTIONS[name])
        part = self.some({key: self.setting(each) for key, each in settings.items()})
        if part.get("reach") and part.get("sag_reach"):
            part["reach"] = min(part["reach"], FARTHEST * part["sag_reach"])
        return part

    def setting(self, setting: Setting) -> Any:
        """An allowed value of a setting; not known now and then, where that may be."""
        if setting.nullable and self.chance(0.3):
            return None
        if setting.kind == "choice":
            return self.one(setting.choices)
        if setting.kind == "text":
            return "the maker's manual"
        if setting.kind == "sizes":
            return [self.small() for _ in range(self.rng.randint(0, 4))]
        made = {LENGTH: self.long, LIMIT: self.limit, SMALL: self.small}.get(setting.span)
        low, high = (bound(SYSTEMS[self.units]) for bound in (setting.span.low, setting.span.high))
        return self.one((low, high, self.between(low, high))) if made is None else made()

    def positions(self) -> list[float]:
        """Positions that can be fitted."""
        if self.chance(0.6):
            return list(self.one(SPREADS[:4] if self.tame else SPREADS))
        step = 360.0 / self.rng.randint(3, 12)
        return [
            (step * i + self.between(0.0, step / 9.0)) % 360.0 for i in range(round(360 / step))
        ]

    def row(self, positions: Sequence[float]) -> list[Reading]:
        """A sweep: an offset, roughness and a zero; now and then wild."""
        if not self.tame and self.chance(0.1):
            return [self.between(-self.most, self.most) for _ in positions]
        size = self.one((1.0 if self.tame else 0.0, 3.0, 20.0)) * self.thou
        x, y, zero = (self.between(-size, size) for _ in range(3))
        rough = self.one((0.1 if self.tame else 0.0, 0.3, 3.0)) * self.thou
        return [
            zero + x * math.sin(math.radians(a)) + y * math.cos(math.radians(a))
            + self.between(-rough, rough)
            for a in positions
        ]  # fmt: skip

    def sweeps(self) -> Data:
        positions = self.positions()
        count = self.one((1, 1, 2, 3))
        rows = [self.row(positions) for _ in range(count)]
        if len(positions) >= 8 and self.chance(0.3):
            for row in rows:
                row[self.rng.randrange(len(positions))] = None
        closing = [self.one((0.0, None, self.between(-1.0, 1.0) * self.thou)) for _ in rows]
        part: Data = {"sweeps": rows, "positions_deg": positions}
        return part | self.some({"closing": closing[: self.rng.randint(0, count)]})

    def bore(self) -> Data:
        return self.sweeps() | self.some({"contact": self.one(("inside", "outside"))})

    def face(self) -> Data:
        part = self.sweeps() | {"radius": self.long()}
        part |= self.some({
            "plunger": self.one(("forward", "rearward")), "end_float": self.one(("free", "held")),
        })  # fmt: skip
        if self.chance(0.3):
            part["opposite"] = [self.row(part["positions_deg"]) for _ in part["sweeps"]]
        return part

    def dowels(self) -> list[Data]:
        first = {"offset": self.one((0.0, self.small())), "aim_deg": self.angle()}
        other = {"offset": self.small(), "aim_deg": self.angle()}
        return [first, dict(first) if self.chance(0.7) else other]

    def round(self) -> Data:
        part: Data = {"bore": self.bore()}
        if self.chance(0.6):
            part["face"] = self.face()
        if self.chance(0.6):
            part["dowels"] = self.dowels()
        return part | self.some({"name": self.one(("", "as found", "<b>after</b>"))}, 0.3)

    def hole(self) -> Data:
        return {"at_deg": self.angle(), "radius": self.long()}

    def housing(self) -> Data:
        at, radius = self.angle(), self.long()
        holes = [{"at_deg": at, "radius": radius}, {"at_deg": -at / 2.0 + 75.0, "radius": radius}]
        apart = abs((holes[0]["at_deg"] - holes[1]["at_deg"] + 180.0) % 360.0 - 180.0)
        return self.section("housing") | self.some({
            "dowel_holes": holes if apart > 10.0 else None,
            "bolts": [self.hole() for _ in range(self.one((0, 2, 3, 7)))],
        })  # fmt: skip

    def companion(self, kind: str) -> Data:
        return self.sweeps() | {"kind": kind} | self.some({
            "limit": self.one((None, self.limit())), "contact": self.one(("inside", "outside")),
            "plunger": self.one(("forward", "rearward")),
        })  # fmt: skip

    def job(self) -> Data:
        chip = {"joint": self.one(("front", "rear")), "height": self.small(), **self.hole()}
        parts = self.some({
            "about": {"vehicle": "tractor", "notes": "two\nlines"},
            "limits": self.section("limits"),
            "indicator": self.section("indicator")
            | self.some({"sag": self.one((None, self.small()))}),
            "crank": self.section("crank"), "housing": self.housing(),
            "stock": self.section("stock"), "chip": self.one((None, chip)),
            "companions": [self.companion(kind) for kind in KINDS if self.chance(0.4)],
        })  # fmt: skip
        rounds = [self.round() for _ in range(self.one((1, 1, 2, 3)))]
        ticked = [code for code in CODES if self.chance(0.3)]
        parts |= self.some({"name": self.one(("", "Blue tractor")), "checklist": ticked})
        head = {"format": "sweepsheet-job", "version": 1, "units": self.units}
        return {**head, **parts, "rounds": rounds}


def any_job(rng: random.Random, *, tame: bool = False) -> Data:
    """A job file with any of the sections, every value of which is in its range.

    It may still be refused: where blocked positions leave too little of a sweep.
    """
    return _Maker(rng, "inch" if rng.random() < 0.5 else "metric", tame).job()


WRONG: tuple[Any, ...] = (
    None, True, -1, 0, 1e300, -1e300, float("nan"), float("inf"), "", "7", "inside", "\x00", [], {},
    [0.0], [None] * 4, {"offset": 1}, 10**400, 2, -0.0, "metric",
)  # fmt: skip


def spoil(rng: random.Random, job: Data) -> Data:
    """The job with one to three of its places changed, taken out, doubled or misspelt."""
    spoiled = copy.deepcopy(job)
    for _ in range(rng.randint(1, 3)):
        part: Any = spoiled
        while True:
            if not isinstance(part, dict | list) or not part:
                break
            keys = list(part) if isinstance(part, dict) else list(range(len(part)))
            key = keys[rng.randrange(len(keys))]
            inner = part[key]
            if isinstance(inner, dict | list) and inner and rng.random() < 0.85:
                part = inner
                continue
            _change(rng, part, key)
            break
    return spoiled


def _change(rng: random.Random, part: Any, key: Any) -> None:
    """Spoil one place."""
    kind = rng.randrange(4)
    if kind == 0:
        del part[key]
    elif kind == 1 and isinstance(part, dict):
        part[f"{key}s"] = part[key]
    elif kind == 1:
        part.append(part[key])
    else:
        part[key] = copy.deepcopy(WRONG[rng.randrange(len(WRONG))])


_randoms = st.randoms(use_true_random=False)
# Of a seed: shrunk to nothing, a job has a bore in the very middle, and no direction to compare.
tame_jobs: st.SearchStrategy[Data] = st.integers(0, 10**9).map(
    lambda seed: any_job(random.Random(seed), tame=True)
)
good_jobs: st.SearchStrategy[Data] = _randoms.map(any_job)
spoiled_jobs: st.SearchStrategy[Data] = _randoms.map(lambda rng: spoil(rng, any_job(rng)))
