"""From the job file's JSON to a checked ``Job``: every fault at once, or a job without any.

Every field but ``format``, ``version`` and ``rounds`` may be left out and then has its default;
``null`` means "not known". A key that is not known is a fault: a mistyped limit must not
be passed over in silence.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, cast

from sweepsheet.clock import normalise
from sweepsheet.fields import FieldReader, shown
from sweepsheet.job import (
    ABOUT_KEYS,
    Axis,
    BoreSweeps,
    Contact,
    Crank,
    Dowel,
    FaceSweeps,
    Hole,
    Housing,
    Indicator,
    Job,
    Limits,
    Plunger,
    PlusWhen,
    Round,
    Stock,
    Sweeps,
)
from sweepsheet.positions import position_faults
from sweepsheet.units import SYSTEMS, UnitName, UnitSystem
from sweepsheet.wording import At, Message, Quantity

FORMAT = "sweepsheet-job"
VERSION = 1

MOST_ROUNDS = 20
MOST_SWEEPS = 10
MOST_POSITIONS = 36
MOST_BOLTS = 24
MOST_DOWEL_SIZES = 24
LONGEST_MM = 5000.0

JOB_KEYS = (
    "format", "version", "units", "about", "limits", "indicator", "crank", "housing", "stock",
    "rounds",
)  # fmt: skip


def read_job(data: object) -> Job:
    """The job in ``data`` (parsed JSON). Raises ``InputError`` with every fault there is."""
    reader = FieldReader()
    top = reader.section(data, "", JOB_KEYS)
    if isinstance(data, dict):
        _read_header(reader, top)
    name = reader.choice(top.get("units", "inch"), "units", _name("units"), tuple(SYSTEMS))
    job = _JobReader(reader, SYSTEMS[cast(UnitName, name)]).job(top)
    reader.raise_faults()
    return job


def _read_header(reader: FieldReader, top: Mapping[str, Any]) -> None:
    if top.get("format") != FORMAT:
        reader.fault("format", "fault.format", wanted=FORMAT, got=shown(top.get("format")))
    version = top.get("version")
    if isinstance(version, bool) or version != VERSION:
        newer = isinstance(version, int) and version > VERSION
        key = "fault.version_newer" if newer else "fault.version"
        reader.fault("version", key, wanted=VERSION, got=shown(version))


def _name(key: str, **values: Quantity) -> Message:
    return Message(f"name.{key}", values)


class _JobReader:
    """Reads the parts of a job in one unit system, noting faults in its reader."""

    def __init__(self, reader: FieldReader, units: UnitSystem) -> None:
        self.reader = reader
        self.units = units
        self.longest = LONGEST_MM / (units.mm * units.small_per_long)

    def job(self, top: Mapping[str, Any]) -> Job:
        return Job(
            units=self.units,
            about=self.about(top.get("about", {})),
            limits=self.limits(top.get("limits", {})),
            indicator=self.indicator(top.get("indicator", {})),
            crank=self.crank(top.get("crank", {})),
            housing=self.housing(top.get("housing", {})),
            stock=self.stock(top.get("stock", {})),
            rounds=self.rounds(top.get("rounds")),
        )

    # Single values -------------------------------------------------------------------------

    def number(
        self, part: Mapping[str, Any], path: str, default: float, low: float, high: float
    ) -> float:
        """A number that must be known."""
        value = part.get(path.rpartition(".")[2], default)
        number = self.reader.number(value, path, _name(path), low, high)
        return default if number is None else number

    def known(
        self, part: Mapping[str, Any], path: str, default: float | None, low: float, high: float
    ) -> float | None:
        """A number that may be ``null``, not known."""
        value = part.get(path.rpartition(".")[2], default)
        return None if value is None else self.reader.number(value, path, _name(path), low, high)

    def small(self, part: Mapping[str, Any], path: str, default: float) -> float:
        """A small distance that is not negative."""
        return self.number(part, path, default, 0.0, self.units.largest_reading)

    # Sections ------------------------------------------------------------------------------

    def about(self, value: object) -> dict[str, str]:
        part = self.reader.section(value, "about", ABOUT_KEYS)
        return {
            key: self.reader.text(part.get(key, ""), f"about.{key}", _name(f"about.{key}"))
            for key in ABOUT_KEYS
        }

    def limits(self, value: object) -> Limits:
        keys = ("bore_offset", "face_runout", "pilot_offset", "confidence", "source")
        part = self.reader.section(value, "limits", keys)
        units, most = self.units, self.units.largest_reading
        # A limit smaller than what a result shows can never be seen to be held.
        least = 10.0**-units.decimals
        return Limits(
            bore_offset=self.known(
                part, "limits.bore_offset", units.bore_offset_limit, least, most
            ),
            face_runout=self.known(
                part, "limits.face_runout", units.face_runout_limit, least, most
            ),
            pilot_offset=self.known(part, "limits.pilot_offset", None, least, most),
            confidence=self.number(part, "limits.confidence", 0.95, 0.5, 0.9999),
            source=self.reader.text(
                part.get("source", ""), "limits.source", _name("limits.source")
            ),
        )

    def indicator(self, value: object) -> Indicator:
        keys = (
            "step", "accuracy", "repeatability", "plus_when", "contact_angle_deg", "sag",
            "sag_allowance", "angle_setting_deg",
        )  # fmt: skip
        part = self.reader.section(value, "indicator", keys)
        plus_when = self.reader.choice(
            part.get("plus_when", "plunger_in"),
            "indicator.plus_when",
            _name("indicator.plus_when"),
            ("plunger_in", "plunger_out"),
        )
        most = self.units.largest_reading
        return Indicator(
            step=self.small(part, "indicator.step", self.units.step),
            accuracy=self.small(part, "indicator.accuracy", self.units.accuracy),
            repeatability=self.small(part, "indicator.repeatability", self.units.repeatability),
            plus_when=cast(PlusWhen, plus_when),
            # Beyond 60 degrees a lever or plunger reads less than half of what is there.
            contact_angle_deg=self.number(part, "indicator.contact_angle_deg", 0.0, -60.0, 60.0),
            sag=self.known(part, "indicator.sag", None, 0.0, most),
            sag_allowance=self.small(part, "indicator.sag_allowance", self.units.sag_allowance),
            angle_setting_deg=self.number(part, "indicator.angle_setting_deg", 5.0, 0.0, 45.0),
        )

    def crank(self, value: object) -> Crank:
        part = self.reader.section(value, "crank", ("axis", "lift"))
        axis = self.reader.choice(
            part.get("axis", "horizontal"),
            "crank.axis",
            _name("crank.axis"),
            ("horizontal", "vertical"),
        )
        return Crank(axis=cast(Axis, axis), lift=self.small(part, "crank.lift", 0.0))

    def housing(self, value: object) -> Housing:
        keys = (
            "depth", "pilot_distance", "dowel_holes", "bolts", "bolt_clearance",
            "dowel_clearance",
        )  # fmt: skip
        part = self.reader.section(value, "housing", keys)
        least, longest, most = self.longest / 1e5, self.longest, self.units.largest_reading
        path = "housing.dowel_holes"
        holes: tuple[Hole, ...] = ()
        if part.get("dowel_holes") is not None:
            holes = self.holes(part["dowel_holes"], path, 2, 2)
        return Housing(
            depth=self.known(part, "housing.depth", None, least, longest),
            pilot_distance=self.known(part, "housing.pilot_distance", None, least, longest),
            dowel_holes=(holes[0], holes[1]) if holes else None,
            bolts=self.holes(part.get("bolts", []), "housing.bolts", 0, MOST_BOLTS),
            bolt_clearance=self.known(part, "housing.bolt_clearance", None, 0.0, most),
            dowel_clearance=self.small(part, "housing.dowel_clearance", self.units.dowel_clearance),
        )

    def holes(self, value: object, path: str, least: int, most: int) -> tuple[Hole, ...]:
        found = []
        for i, item in enumerate(self.reader.listing(value, path, _name(path), least, most)):
            at = f"{path}.{i}"
            part = self.reader.section(item, at, ("at_deg", "radius"))
            angle = self.reader.number(
                part.get("at_deg"), f"{at}.at_deg", _name("hole.at_deg", n=i + 1), -360.0, 360.0
            )
            radius = self.reader.number(
                part.get("radius"), f"{at}.radius", _name("hole.radius", n=i + 1),
                self.longest / 1e5, self.longest,
            )  # fmt: skip
            found.append(Hole(normalise(angle or 0.0), radius or 1.0))
        return tuple(found)

    def stock(self, value: object) -> Stock:
        part = self.reader.section(value, "stock", ("dowel_offsets", "aim_setting_deg"))
        path = "stock.dowel_offsets"
        default = list(self.units.dowel_offsets)
        items = self.reader.listing(
            part.get("dowel_offsets", default), path, _name(path), 0, MOST_DOWEL_SIZES
        )
        most = self.units.largest_reading
        offsets = [
            self.reader.number(item, f"{path}.{i}", _name("dowel offset", n=i + 1), 0.0, most)
            for i, item in enumerate(items)
        ]
        return Stock(
            # A dowel of no offset is the standard dowel, which is not an option of its own.
            dowel_offsets=tuple(sorted({o for o in offsets if o})),
            aim_setting_deg=self.number(part, "stock.aim_setting_deg", 5.0, 0.0, 45.0),
        )

    # Rounds --------------------------------------------------------------------------------

    def rounds(self, value: object) -> tuple[Round, ...]:
        items = self.reader.listing(value, "rounds", _name("rounds"), 1, MOST_ROUNDS)
        return tuple(self.round(item, f"rounds.{i}", i) for i, item in enumerate(items))

    def round(self, value: object, path: str, index: int) -> Round:
        part = self.reader.section(value, path, ("name", "dowels", "bore", "face"))
        default = "as found" if index == 0 else f"round {index + 1}"
        standard = [{"offset": 0, "aim_deg": 0}, {"offset": 0, "aim_deg": 0}]
        at = f"{path}.dowels"
        dowels = self.reader.listing(part.get("dowels", standard), at, _name("dowels"), 2, 2)
        fitted = [self.dowel(item, f"{at}.{i}", i) for i, item in enumerate(dowels)]
        return Round(
            name=self.reader.text(part.get("name", default), f"{path}.name", _name("round.name")),
            dowels=(fitted[0], fitted[1]) if fitted else (Dowel(0.0, 0.0), Dowel(0.0, 0.0)),
            bore=self.bore(part.get("bore"), f"{path}.bore"),
            face=None if part.get("face") is None else self.face(part["face"], f"{path}.face"),
        )

    def dowel(self, value: object, path: str, index: int) -> Dowel:
        part = self.reader.section(value, path, ("offset", "aim_deg"))
        offset = self.reader.number(
            part.get("offset", 0), f"{path}.offset", _name("fitted.offset", n=index + 1),
            0.0, self.units.largest_reading,
        )  # fmt: skip
        aim = self.reader.number(
            part.get("aim_deg", 0), f"{path}.aim_deg", _name("fitted.aim", n=index + 1),
            -360.0, 360.0,
        )  # fmt: skip
        return Dowel(offset or 0.0, normalise(aim or 0.0))

    def bore(self, value: object, path: str) -> BoreSweeps:
        part = self.reader.section(value, path, ("contact", "positions_deg", "sweeps", "closing"))
        contact = self.reader.choice(
            part.get("contact", "inside"), f"{path}.contact", _name("contact"),
            ("inside", "outside"),
        )  # fmt: skip
        return BoreSweeps(cast(Contact, contact), self.sweeps(part, path))

    def face(self, value: object, path: str) -> FaceSweeps:
        part = self.reader.section(
            value, path, ("radius", "plunger", "positions_deg", "sweeps", "closing")
        )
        radius = self.reader.number(
            part.get("radius"), f"{path}.radius", _name("face.radius"),
            self.longest / 1e5, self.longest,
        )  # fmt: skip
        plunger = self.reader.choice(
            part.get("plunger", "forward"), f"{path}.plunger", _name("face.plunger"),
            ("forward", "rearward"),
        )  # fmt: skip
        return FaceSweeps(radius or 1.0, cast(Plunger, plunger), self.sweeps(part, path))

    def sweeps(self, part: Mapping[str, Any], path: str) -> Sweeps:
        faults_before = self.reader.count
        at = f"{path}.positions_deg"
        default = [0, 90, 180, 270]
        items = self.reader.listing(
            part.get("positions_deg", default), at, _name("positions"), 3, MOST_POSITIONS
        )
        angles = [
            self.reader.number(item, f"{at}.{i}", _name("position", n=i + 1), -360.0, 360.0)
            for i, item in enumerate(items)
        ]
        # Readings are checked even where a position is not known, so that no fault is hidden.
        positions = tuple(normalise(a or 0.0) for a in angles)
        at = f"{path}.sweeps"
        rows = self.reader.listing(part.get("sweeps"), at, _name("sweeps"), 1, MOST_SWEEPS)
        readings = tuple(
            self.sweep(row, f"{at}.{j}", j, len(rows), positions) for j, row in enumerate(rows)
        )
        # What a missing or mistyped reading does to the geometry is not a second fault.
        if self.reader.count == faults_before:
            for found in position_faults(positions, readings):
                self.reader.fault(f"{path}.{found.where}", found.key, **found.values)
        return Sweeps(positions, readings, self.closing(part, path, len(rows)))

    def sweep(
        self, row: object, path: str, j: int, of: int, positions: tuple[float, ...]
    ) -> tuple[float | None, ...]:
        name = _name("sweep", n=j + 1)
        items = self.reader.listing(row, path, name, 1, MOST_POSITIONS)
        if positions and items and len(items) != len(positions):
            self.reader.fault(
                path, "fault.readings", name=name, wanted=len(positions), got=len(items)
            )
            return ()
        most = self.units.largest_reading
        found: list[float | None] = []
        for i, item in enumerate(items):
            at = At(positions[i]) if i < len(positions) else str(i + 1)
            label = _name("reading" if of == 1 else "reading of sweep", at=at, n=j + 1)
            known = item is not None
            found.append(
                self.reader.number(item, f"{path}.{i}", label, -most, most) if known else None
            )
        return tuple(found)

    def closing(self, part: Mapping[str, Any], path: str, of: int) -> tuple[float | None, ...]:
        at = f"{path}.closing"
        none: list[float | None] = [None] * of
        value = part.get("closing")
        if value is None:
            return tuple(none)
        items = self.reader.listing(value, at, _name("closing"), 0, MOST_SWEEPS)
        if len(items) > of > 0:
            self.reader.fault(
                at, "fault.readings", name=_name("closing"), wanted=of, got=len(items)
            )
            return tuple(none)
        most = self.units.largest_reading
        for j, item in enumerate(items):
            if item is not None:
                label = _name("closing of sweep", n=j + 1)
                none[j] = self.reader.number(item, f"{at}.{j}", label, -most, most)
        return tuple(none)
