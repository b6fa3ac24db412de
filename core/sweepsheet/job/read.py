"""From the job file's JSON to a checked ``Job``: every fault at once, or a job without any.

Every field but ``format``, ``version`` and ``rounds`` may be left out and then has its default;
``null`` means "not known". A key that is not known is a fault: a mistyped limit must not
be passed over in silence. What the job's assembly has none of (``assembly``) is not read.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, cast, get_args

from sweepsheet.job.assembly import BELLHOUSING_LIMITS, Assembly, assembly_in, lacks
from sweepsheet.job.checklist import CODES, in_order
from sweepsheet.job.fields import FieldReader, shown
from sweepsheet.job.model import (
    ABOUT_KEYS,
    Chip,
    Crank,
    Depth,
    Dowel,
    Hole,
    Housing,
    Indicator,
    Job,
    Joint,
    Limits,
    RotatingPart,
    RotatingPartKind,
    Round,
    Since,
    Stock,
)
from sweepsheet.job.photos import read_photos
from sweepsheet.job.sag import FARTHEST, SagTest, sag_test, usual_allowance
from sweepsheet.job.settings import Setting, keys_of
from sweepsheet.job.sweeps import SweepReader
from sweepsheet.job.values import name_of
from sweepsheet.maths.clock import normalise, polar
from sweepsheet.maths.units import SYSTEMS, UnitName

FORMAT = "sweepsheet-job"
VERSION = 1

MOST_ROUNDS = 20
MOST_BOLTS = 24
MOST_TRIES = 12
MOST_COMPANIONS = len(get_args(RotatingPartKind))
LONGEST_NAME = 120

JOB_KEYS = (
    "format", "version", "name", "units", "about", "limits", "indicator", "crank", "housing",
    "depth", "stock", "chip", "checklist", "companions", "rounds", "photos",
)  # fmt: skip


def read_job(data: object) -> Job:
    """The job in ``data`` (parsed JSON). Raises ``InputError`` with every fault there is."""
    reader = FieldReader()
    # The pictures that a file carries are no part of the job.
    top = reader.section(data, "", (*JOB_KEYS, "pictures"))
    if isinstance(data, dict):
        _read_header(reader, top)
    name = reader.choice(top.get("units", "inch"), "units", name_of("units"), tuple(SYSTEMS))
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


def usual_name(index: int) -> str:
    """The name of a round that was given none."""
    return "as found" if index == 0 else f"round {index + 1}"


def _group(top: Mapping[str, Any], key: str) -> object:
    """A group of fields; one that is left out or ``null`` has all its usual values."""
    value = top.get(key)
    return {} if value is None else value


class _JobReader(SweepReader):
    """Reads the parts of a job in one unit system, noting faults in its reader."""

    assembly: Assembly | None = None

    def job(self, top: Mapping[str, Any]) -> Job:
        self.assembly = assembly_in(top)
        name = self.reader.text(top.get("name", ""), "name", name_of("job name"), LONGEST_NAME)
        return Job(
            units=self.units,
            # A name of blanks is none, as where it is typed.
            name=name.strip(),
            about=self.about(_group(top, "about")),
            limits=self.limits(_group(top, "limits")),
            indicator=self.indicator(_group(top, "indicator")),
            crank=self.crank(_group(top, "crank")),
            housing=self.housing(_group(top, "housing")),
            depth=self.depth(_group(top, "depth")),
            stock=self.stock(_group(top, "stock")),
            chip=None if top.get("chip") is None else self.chip(top["chip"]),
            checklist=self.checklist(top.get("checklist")),
            companions=self.companions(top.get("companions")),
            rounds=self.rounds(top.get("rounds")),
            photos=read_photos(self.reader, top),
        )

    # Sections ------------------------------------------------------------------------------

    def about(self, value: object) -> dict[str, str]:
        part = self.reader.section(value, "about", ABOUT_KEYS)
        return {
            key: self.reader.text(part.get(key, ""), f"about.{key}", name_of(f"about.{key}"))
            for key in ABOUT_KEYS
        }

    def limits(self, value: object) -> Limits:
        return Limits(**self.settings(Limits, "limits", self.part(Limits, value, "limits")))

    def indicator(self, value: object) -> Indicator:
        part = self.part(Indicator, value, "indicator")
        found = self.settings(Indicator, "indicator", part)
        if found["sag_allowance"] is None:
            found["sag_allowance"] = usual_allowance(found["holder"], self.units)
        tested, reach = found["sag_reach"], found["reach"]
        if tested is not None and reach is not None and reach > FARTHEST * tested:
            self.reader.fault("indicator.reach", "fault.reach", tested=tested, got=reach)
        return Indicator(sag=self.sag(part.get("sag")), **found)

    def crank(self, value: object) -> Crank:
        return Crank(**self.settings(Crank, "crank", self.part(Crank, value, "crank")))

    def housing(self, value: object) -> Housing:
        part = self.part(Housing, value, "housing")
        found = self.settings(Housing, "housing", part)
        return Housing(
            dowel_holes=self.dowel_holes(part.get("dowel_holes")),
            bolts=self.holes(part.get("bolts", []), "housing.bolts", 0, MOST_BOLTS),
            **found,
        )

    def depth(self, value: object) -> Depth:
        return Depth(**self.settings(Depth, "depth", self.part(Depth, value, "depth")))

    def stock(self, value: object) -> Stock:
        return Stock(**self.settings(Stock, "stock", self.part(Stock, value, "stock")))

    def setting(self, part: Mapping[str, Any], path: str, setting: Setting) -> Any:
        if lacks(self.assembly, path):
            return setting.usual_in(self.units)
        if self.assembly and path in BELLHOUSING_LIMITS and path.rpartition(".")[2] not in part:
            return None
        return super().setting(part, path, setting)

    def part(self, kind: type, value: object, path: str) -> Mapping[str, Any]:
        """A part of the job, which may hold the keys of its dataclass."""
        return self.reader.section(value, path, keys_of(kind))

    def sag(self, value: object) -> SagTest | None:
        """A sag test: one number, or what was read in each of several tries."""
        path, most = "indicator.sag", self.units.largest_reading
        if value is None or value == []:
            return None
        if not isinstance(value, list):
            single = self.reader.number(value, path, name_of(path), 0.0, most)
            return None if single is None else sag_test([single])
        items = self.reader.listing(value, path, name_of(path), 1, MOST_TRIES)
        tries = [
            self.reader.number(item, f"{path}.{i}", name_of(path), 0.0, most)
            for i, item in enumerate(items)
        ]
        known = [each for each in tries if each is not None]
        return sag_test(known) if known else None

    def dowel_holes(self, value: object) -> tuple[Hole, Hole] | None:
        """The two dowel holes; in one place they would hold nothing."""
        if value is None:
            return None
        path = "housing.dowel_holes"
        holes = self.holes(value, path, 2, 2)
        if not holes:
            return None
        first, second = holes
        places = [polar(hole.at_deg, hole.radius) for hole in holes]
        if (places[0] - places[1]).length < 0.1 * max(first.radius, second.radius):
            self.reader.fault(path, "fault.same_hole", name=name_of(path))
        return (first, second)

    def holes(self, value: object, path: str, least: int, most: int) -> tuple[Hole, ...]:
        found = []
        for i, item in enumerate(self.reader.listing(value, path, name_of(path), least, most)):
            at = f"{path}.{i}"
            part = self.reader.section(item, at, ("at_deg", "radius"))
            angle = self.reader.number(
                part.get("at_deg"), f"{at}.at_deg", name_of("hole.at_deg", n=i + 1), -360.0, 360.0
            )
            radius = self.reader.number(
                part.get("radius"), f"{at}.radius", name_of("hole.radius", n=i + 1),
                self.shortest, self.longest,
            )  # fmt: skip
            found.append(Hole(normalise(angle or 0.0), radius or 1.0))
        return tuple(found)

    def chip(self, value: object) -> Chip:
        part = self.reader.section(value, "chip", ("joint", "height", "at_deg", "radius"))
        joint = self.reader.choice(
            part.get("joint", "front"), "chip.joint", name_of("chip.joint"), get_args(Joint)
        )
        most = self.units.largest_reading
        height = self.reader.number(
            part.get("height"), "chip.height", name_of("chip.height"), 0.0, most
        )
        angle = self.reader.number(
            part.get("at_deg"), "chip.at_deg", name_of("chip.at_deg"), -360.0, 360.0
        )
        radius = self.reader.number(
            part.get("radius"), "chip.radius", name_of("chip.radius"), self.shortest,
            self.longest,
        )  # fmt: skip
        return Chip(cast(Joint, joint), height or 0.0, normalise(angle or 0.0), radius or 1.0)

    def checklist(self, value: object) -> tuple[str, ...]:
        given = [] if value is None else value
        items = self.reader.listing(given, "checklist", name_of("checklist"), 0, len(CODES))
        codes = [
            self.reader.choice(item, f"checklist.{i}", name_of("checklist"), CODES)
            for i, item in enumerate(items)
        ]
        return in_order(c for c in codes if not lacks(self.assembly, f"checklist.{c}"))

    def companions(self, value: object) -> tuple[RotatingPart, ...]:
        """Each part once, in the order of their kinds."""
        given = [] if value is None else value
        items = self.reader.listing(given, "companions", name_of("companions"), 0, MOST_COMPANIONS)
        found: dict[str, RotatingPart] = {}
        for i, item in enumerate(items):
            if isinstance(item, Mapping) and lacks(self.assembly, f"companions.{item.get('kind')}"):
                continue
            faults_before = self.reader.count
            part = self.companion(item, f"companions.{i}")
            if part.kind in found and self.reader.count == faults_before:
                self.reader.fault(f"companions.{i}.kind", "fault.part_twice", kind=part.kind)
            found[part.kind] = part
        return tuple(found[kind] for kind in get_args(RotatingPartKind) if kind in found)

    # Rounds --------------------------------------------------------------------------------

    def rounds(self, value: object) -> tuple[Round, ...]:
        items = self.reader.listing(value, "rounds", name_of("rounds"), 1, MOST_ROUNDS)
        found: list[Round] = []
        for i, item in enumerate(items):
            found.append(self.round(item, f"rounds.{i}", found))
        return tuple(found)

    def round(self, value: object, path: str, before: list[Round]) -> Round:
        part = self.reader.section(value, path, ("name", "since", "dowels", "bore", "face"))
        # A name that was left blank is none.
        name = usual_name(len(before)) if part.get("name", "") == "" else part["name"]
        at = f"{path}.since"
        since = cast(
            "Since",
            self.reader.choice(
                part.get("since", "dowels"), at, name_of("round.since"), get_args(Since)
            ),
        )
        dowels = self.dowels(part["dowels"], f"{path}.dowels") if "dowels" in part else None
        if since != "dowels":
            if not before or dowels not in (None, before[-1].dowels):
                self.reader.fault(at, "fault.same_dowels")
            dowels = before[-1].dowels if before else None
        face = None if part.get("face") is None else self.face(part["face"], f"{path}.face")
        if face is None and since == "plate_turned" and before:
            face = before[-1].face  # the housing was not touched
        return Round(
            name=self.reader.text(name, f"{path}.name", name_of("round.name")),
            since=since,
            dowels=dowels or (Dowel(0.0, 0.0), Dowel(0.0, 0.0)),
            bore=self.bore(part.get("bore"), f"{path}.bore"),
            face=face,
        )

    def dowels(self, value: object, path: str) -> tuple[Dowel, Dowel] | None:
        items = self.reader.listing(value, path, name_of("dowels"), 2, 2)
        found = [self.dowel(item, f"{path}.{i}", i) for i, item in enumerate(items)]
        return (found[0], found[1]) if found else None

    def dowel(self, value: object, path: str, index: int) -> Dowel:
        part = self.reader.section(value, path, ("offset", "aim_deg"))
        offset = self.reader.number(
            part.get("offset", 0), f"{path}.offset", name_of("fitted.offset", n=index + 1),
            0.0, self.units.largest_reading,
        )  # fmt: skip
        aim = self.reader.number(
            part.get("aim_deg", 0), f"{path}.aim_deg", name_of("fitted.aim", n=index + 1),
            -360.0, 360.0,
        )  # fmt: skip
        return Dowel(offset or 0.0, normalise(aim or 0.0))
