"""How to bring a face square, and what that does: the face comes first, the bore after.

A rear face leans for one of two reasons. The housing stands tipped at the block, by the block's
face or something between them: then it is shimmed or machined at its front flange, and the whole
housing turns about that joint, so that its bore swings by ``H g`` (H: depth, front flange to rear
face). Or the rear face is not parallel to the front flange: then the rear face is machined, nothing
turns, and the bore stays where it is. A sweep can't tell one from the other. A surface plate can:
with the front flange down on it the rear face of a tipped housing is parallel to the plate. One cut
crooked stands high where it stands rearward at the engine, by as much; where place or amount
differ, both are out. The block's own face can be swept from the crank as well.
"""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.alignment.bore import Bore
from sweepsheet.alignment.face import Face
from sweepsheet.job.model import Housing, Job, TiltFrom
from sweepsheet.maths.vector import Vec2
from sweepsheet.remedy.chip import chip_that_explains
from sweepsheet.remedy.shims import Shims, Taper, shims_for, taper_for


@dataclass(frozen=True, slots=True)
class Squaring:
    """How to square the face of the latest round, and where that takes the bore.

    ``cause`` is which side is out, ``None`` where it is not known. ``if_tipped`` is where the bore
    goes when the front flange is mended (``None`` where the depth is not known), ``if_crooked``
    where it stays when the rear face is. ``shims`` go under the front flange; ``None`` where there
    are no three bolts, or where the rear face is what is crooked. ``chip`` is the height of a chip
    at the rim of the flange that explains the whole tilt, ``None`` where no radius on the flange
    was measured.
    """

    cause: TiltFrom | None
    taper: Taper
    shims: Shims | None
    if_tipped: Vec2 | None
    if_crooked: Vec2
    chip: float | None

    @property
    def bore_after(self) -> Vec2 | None:
        """Where the bore is expected after it; ``None`` where cause or depth are not known."""
        if self.cause == "rear":
            return self.if_crooked
        return self.if_tipped if self.cause == "front" else None


def square(job: Job, bore: Bore, face: Face) -> Squaring:
    """What to shim or machine, and what to expect of it: ``c + H g``, or ``c`` as it is.

    A bore in a crooked face is taken as parallel to the crank. Where it was bored square to that
    face it leans with it, and its centre at the new face is off by the slope times the depth of the
    cut: 3 thou an inch and 25 thou make less than a tenth of a thou.
    """
    housing, per_long = job.housing, job.units.small_per_long
    tipped = None
    if housing.depth is not None:
        tipped = bore.center + face.slope.scaled(housing.depth * per_long)
    rim = rim_of(housing)
    chip = None
    if rim is not None:
        chip = chip_that_explains(face.slope, rim * per_long, rim * per_long)
    shims = shims_for(face.slope, housing.bolts, per_long, job.stock.shim_thicknesses)
    return Squaring(
        cause=housing.tilt_from,
        taper=taper_for(face.slope, housing.bolts, per_long),
        shims=None if housing.tilt_from == "rear" else shims,
        if_tipped=tipped,
        if_crooked=bore.center,
        chip=chip,
    )


def rim_of(housing: Housing) -> float | None:
    """The largest radius of the flange at which anything was measured, in the long unit."""
    radii = [bolt.radius for bolt in housing.bolts]
    radii += [hole.radius for hole in housing.dowel_holes or ()]
    return max(radii, default=None)
