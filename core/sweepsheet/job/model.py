"""A job as frozen values: what the mechanic knows and measured, checked and with its defaults.

``read_job`` makes one from the job file's JSON; nothing else does. Angles are clock degrees
(``clock``), readings and offsets in the small unit, radii and depths in the long unit.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from sweepsheet.job.assembly import Assembly
from sweepsheet.job.sag import Holder, SagTest, sag_at
from sweepsheet.job.settings import (
    LENGTH,
    LIMIT,
    PLACE,
    SMALL,
    THICKNESS,
    Setting,
    between,
    choice,
    described,
    number,
    settings_of,
    sizes,
    text,
)
from sweepsheet.maths.units import UnitSystem

Contact = Literal["inside", "outside"]
PlusWhen = Literal["plunger_in", "plunger_out"]
Axis = Literal["horizontal", "vertical"]
Plunger = Literal["forward", "rearward"]
EndFloat = Literal["free", "held"]
Target = Literal["bore", "pilot"]
BearingClass = Literal["bronze_bushing", "needle", "ball", "cylindrical_roller", "tapered_roller"]
Joint = Literal["front", "rear"]
TiltFrom = Literal["front", "rear"]
Release = Literal["lever", "hydraulic"]
# What was done since the round before: dowels; or on the same ones it was only loosened and torqued
# again; or the joint cleaned or mended; or only a plate that is swept with it turned half a turn.
Since = Literal["dowels", "reseated", "cleaned", "plate_turned"]
SweptBore = Literal["housing", "plate"]
RotatingPartKind = Literal["pilot_bore", "crank_flange", "flywheel_face"]

ABOUT_KEYS = (
    "shop", "vehicle", "engine", "gearbox", "housing", "technician", "customer", "date", "notes",
)  # fmt: skip


@described
class Limits:
    """The limits to hold. ``None``: no limit is known, so nothing is judged.

    ``face_radius`` is the radius for which the face's runout is allowed (1: per unit of radius);
    ``None`` means the radius that was swept. ``confidence`` is the probability of being inside from
    which the verdict is "within".
    """

    bore_offset: float | None = number(LIMIT, "bore_offset_limit")
    face_runout: float | None = number(LIMIT, "face_runout_limit")
    face_radius: float | None = number(LENGTH)
    pilot_offset: float | None = number(LIMIT)
    confidence: float = number(between(0.5, 0.9999), 0.95, nullable=False)
    source: str = text()


@described
class Indicator:
    """The dial indicator and its bracket, in dial units.

    ``step`` is the smallest difference read off the dial, ``accuracy`` the largest error of
    indication (plus or minus), ``repeatability`` a standard deviation. ``sag`` is the test of the
    total top-to-bottom difference that sag alone makes (``None``: not measured), ``sag_allowance``
    the most that it may be where it was not measured, as typed or as is usual for the ``holder``.
    ``rig`` is what the shop calls dial and bracket. ``sag_date``, ``sag_bar``, ``sag_reach`` tell
    when the sag was tested, on what bar and at which reach; ``reach`` is that of this job.
    ``angle_setting_deg`` is how far (plus or minus) the crank may stand from its mark.
    """

    step: float = number(SMALL, "step", nullable=False)
    accuracy: float = number(SMALL, "accuracy", nullable=False)
    repeatability: float = number(SMALL, "repeatability", nullable=False)
    plus_when: PlusWhen = choice(get_args(PlusWhen))
    # Beyond 60 degrees a lever or plunger reads less than half of what is there.
    contact_angle_deg: float = number(between(-60.0, 60.0), 0.0, nullable=False)
    holder: Holder | None = choice(get_args(Holder), nullable=True)
    sag: SagTest | None
    # Not known in a file: as is usual for the holder.
    sag_allowance: float = number(SMALL)
    angle_setting_deg: float = number(between(0.0, 45.0), 5.0, nullable=False)
    rig: str = text()
    sag_date: str = text()
    sag_bar: str = text()
    sag_reach: float | None = number(LENGTH)
    reach: float | None = number(LENGTH)

    @property
    def sag_range(self) -> tuple[float, float]:
        """From where to where the sag may lie, top to bottom; one figure twice where it is known.

        Not measured: from nothing to the allowance. Measured at another reach: see ``sag_at``.
        """
        if self.sag is None:
            return (0.0, self.sag_allowance)
        if self.sag_reach is None or self.reach is None:
            return (self.sag.mean, self.sag.mean)
        return sag_at(self.sag.mean, self.reach / self.sag_reach)


@described
class Crank:
    """How the crank lies, and its lift: the rise measured by lifting it in its bearings."""

    axis: Axis = choice(get_args(Axis))
    lift: float = number(SMALL, 0.0, nullable=False)


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole in a flange, by clock angle and distance from the crank axis."""

    at_deg: float
    radius: float


@described
class Housing:
    """Dimensions of the housing; ``None`` or empty where not measured, and then not assumed.

    ``depth`` runs from the front flange to the rear face; a plate of ``plate_thickness`` stands
    between that flange and the block. ``pilot_distance`` runs from the rear face
    forward to the pilot bearing, ``tail_distance`` from the rear face back to the gearbox tail.
    ``bore_diameter`` and ``register_diameter`` are those of the bore and of the part of the gearbox
    that sits in it. ``swept_bore`` is whose bore was swept: that of a plate bolted on is off its
    pins by up to ``plate_concentricity``. Clearances are on the diameter. ``tilt_from`` is which
    side makes the rear face lean: the housing stands tipped at its front flange, or its rear face
    is cut crooked.
    ``assembly`` is what is put on what; ``None`` is a manual gearbox's bellhousing on a crank.
    """

    depth: float | None = number(LENGTH)
    plate_thickness: float | None = number(LENGTH)
    pilot_distance: float | None = number(LENGTH)
    tail_distance: float | None = number(LENGTH)
    # No gearbox has a tapered pilot.
    pilot_bearing: BearingClass | None = choice(
        get_args(BearingClass), nullable=True, retired=("tapered_roller",)
    )
    tilt_from: TiltFrom | None = choice(get_args(TiltFrom), nullable=True)
    bore_diameter: float | None = number(LENGTH)
    register_diameter: float | None = number(LENGTH)
    swept_bore: SweptBore = choice(get_args(SweptBore))
    plate_concentricity: float | None = number(SMALL)
    dowel_holes: tuple[Hole, Hole] | None
    hole_accuracy: float | None = number(SMALL)
    bolts: tuple[Hole, ...]
    bolt_clearance: float | None = number(SMALL)
    dowel_clearance: float = number(SMALL, "dowel_clearance", nullable=False)
    assembly: Assembly | None = choice(get_args(Assembly), nullable=True)


@described
class Depth:
    """Lengths along the crank axis: where shaft, clutch and release bearing come to be.

    On the engine all are taken from one place, the crank's flange or the pilot bearing itself:
    ``to_face`` (the housing's rear face), ``to_hub_front``, ``to_hub_rear`` (of the disc's hub, the
    clutch new and bolted up) and ``to_fingers`` (the clutch's fingers or levers) rearward,
    ``to_pilot`` (the bearing's rear end) and ``to_bottom`` (of the hole it sits in) forward.
    ``added`` comes between when it is put together and was not there when that was measured.
    ``disc_wear`` is what the disc loses in thickness, ``fingers_worn`` how far the fingers come
    back by it.

    On the gearbox all are taken from the face that meets the housing, forward: ``to_tip``,
    ``to_splines_front`` and ``to_splines_rear`` (their ends), ``to_bearing`` (the release bearing's
    face, pushed all the way back). ``journal_length`` is what of the tip fits the pilot bearing,
    ``bearing_stroke`` how far the release bearing can go, ``release_travel`` how far it must push.

    ``engine_pm`` and ``gearbox_pm``: how far (plus or minus) one such length may be wrong. What is
    needed (``engagement_min``, ``tip_gap_min``, ``release_gap_min``, ``release_gap_max``) is the
    manufacturer's, or not known.
    """

    to_face: float | None = number(LENGTH)
    to_pilot: float = number(PLACE, 0.0, nullable=False)
    pilot_length: float | None = number(LENGTH)
    to_bottom: float | None = number(PLACE)
    added: float = number(THICKNESS, 0.0, nullable=False)
    to_tip: float | None = number(LENGTH)
    journal_length: float | None = number(LENGTH)
    to_hub_front: float | None = number(PLACE)
    to_hub_rear: float | None = number(PLACE)
    to_splines_front: float | None = number(PLACE)
    to_splines_rear: float | None = number(PLACE)
    disc_wear: float | None = number(LENGTH)
    release: Release | None = choice(get_args(Release), nullable=True)
    to_fingers: float | None = number(PLACE)
    fingers_worn: float | None = number(LENGTH)
    to_bearing: float | None = number(PLACE)
    bearing_stroke: float | None = number(LENGTH)
    release_travel: float | None = number(LENGTH)
    engagement_min: float | None = number(LENGTH)
    tip_gap_min: float | None = number(LENGTH)
    release_gap_min: float | None = number(LENGTH)
    release_gap_max: float | None = number(LENGTH)
    engine_pm: float = number(THICKNESS, "engine_pm", nullable=False)
    gearbox_pm: float = number(THICKNESS, "gearbox_pm", nullable=False)


@described
class Stock:
    """Offset dowels and shims at hand.

    ``aim_setting_deg`` is how far (plus or minus) a dowel may miss its mark, ``aim_for`` what the
    dowels are to bring to the crank axis. No shim thicknesses: nothing is rounded to them.
    """

    dowel_offsets: tuple[float, ...] = sizes("dowel offset", "dowel_offsets")
    aim_setting_deg: float = number(between(0.0, 45.0), 5.0, nullable=False)
    aim_for: Target = choice(get_args(Target))
    shim_thicknesses: tuple[float, ...] = sizes("shim")


@dataclass(frozen=True, slots=True)
class Dowel:
    """A fitted dowel: its offset and the clock angle in which the offset points (the aim)."""

    offset: float
    aim_deg: float


@dataclass(frozen=True, slots=True)
class Sweeps:
    """One or more sweeps over the same positions, in the order in which they were taken.

    ``readings[j][i]`` is sweep j at position i, ``None`` where it could not be reached;
    ``closing[j]`` what the dial had moved by when the crank was back where sweep j began.
    """

    positions_deg: tuple[float, ...]
    readings: tuple[tuple[float | None, ...], ...]
    closing: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class BoreSweeps:
    """Sweeps of the bore (contact inside) or of a spigot (contact outside)."""

    contact: Contact
    sweeps: Sweeps


@dataclass(frozen=True, slots=True)
class FaceSweeps:
    """Sweeps of the rear face at a radius.

    ``end_float`` tells whether the crank was pushed one way at every stop. ``opposite`` holds what
    a second dial showed, half a turn on at the same radius, sweep by sweep as in ``sweeps``.
    """

    radius: float
    plunger: Plunger
    end_float: EndFloat
    opposite: tuple[tuple[float | None, ...], ...] | None
    sweeps: Sweeps


@dataclass(frozen=True, slots=True)
class RotatingPart:
    """A sweep of a part that turns with the crank, by a dial that stands still on the block.

    Positions are places of the part. ``limit`` is a TIR. The plunger of a dial on a face points
    ``forward`` or ``rearward``; one on a bore touches it ``inside`` or ``outside``.
    """

    kind: RotatingPartKind
    contact: Contact
    plunger: Plunger
    limit: float | None
    sweeps: Sweeps

    @property
    def is_face(self) -> bool:
        """Whether a face was swept, rather than a bore or spigot."""
        return self.kind == "flywheel_face"


@dataclass(frozen=True, slots=True)
class Chip:
    """A chip or burr supposed in a joint: under the front flange or on the rear face."""

    joint: Joint
    height: float
    at_deg: float
    radius: float


@dataclass(frozen=True, slots=True)
class Round:
    """One set of sweeps with the dowels that were in the block at the time.

    ``since``: what was done before it. Where that was not done to the dowels, they are those of the
    round before; the first round has none before it. Where only a plate was turned, so is the face,
    if it was not swept again.
    """

    name: str
    since: Since
    dowels: tuple[Dowel, Dowel]
    bore: BoreSweeps
    face: FaceSweeps | None


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo beside a reading: the reading's place in the job file, and what the photo is called.

    ``name``: the first 16 hexadecimal digits of the SHA-256 of its bytes.
    """

    at: str
    name: str


@dataclass(frozen=True, slots=True)
class Job:
    """The whole job.

    ``checklist`` holds the codes that were ticked, ``companions`` each part at most once, both in
    the order of their lists.
    """

    units: UnitSystem
    name: str
    about: dict[str, str]
    limits: Limits
    indicator: Indicator
    crank: Crank
    housing: Housing
    depth: Depth
    stock: Stock
    chip: Chip | None
    checklist: tuple[str, ...]
    companions: tuple[RotatingPart, ...]
    rounds: tuple[Round, ...]
    photos: tuple[Photo, ...] = ()

    @property
    def usual_limit(self) -> bool:
        """Whether the bore's limit is the usual figure, and nobody entered where it comes from."""
        usual = self.limits.bore_offset == self.units.bore_offset_limit
        return usual and self.housing.assembly is None and not self.limits.source.strip()

    def face_swept_in(self, number: int) -> FaceSweeps | None:
        """The face that was swept in a round; ``None`` where it is that of the round before."""
        face = self.rounds[number].face
        return None if number and face is self.rounds[number - 1].face else face


# The parts of a job whose settings are described, by the key of each.
SECTIONS: dict[str, type] = {
    "limits": Limits, "indicator": Indicator, "crank": Crank, "housing": Housing, "depth": Depth,
    "stock": Stock,
}  # fmt: skip
# Every setting by its place in the job: ``housing.depth``.
SETTINGS: dict[str, Setting] = {
    f"{section}.{key}": setting
    for section, part in SECTIONS.items()
    for key, setting in settings_of(part).items()
}
