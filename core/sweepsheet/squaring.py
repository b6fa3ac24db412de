"""How to bring a face square, and what that does: the face comes first, the bore after."""

from __future__ import annotations

from dataclasses import dataclass

from sweepsheet.bore import Bore
from sweepsheet.chip import chip_that_explains
from sweepsheet.face import Face
from sweepsheet.job import Housing, Job
from sweepsheet.shims import Shims, Taper, shims_for, taper_for
from sweepsheet.vector import Vec2


@dataclass(frozen=True, slots=True)
class Squaring:
    """How to square the face of the latest round, and where that takes the bore.

    ``bore_after`` is ``None`` where the depth of the housing is not known, ``shims`` where there
    are no three bolts. ``chip`` is the height of a chip at the rim of the flange that explains the
    whole tilt, ``None`` where no radius on the flange was measured.
    """

    taper: Taper
    shims: Shims | None
    bore_after: Vec2 | None
    chip: float | None


def square(job: Job, bore: Bore, face: Face) -> Squaring:
    """What to shim or machine, and what to expect of it."""
    housing, per_long = job.housing, job.units.small_per_long
    after = None
    if housing.depth is not None:
        after = bore.center + face.slope.scaled(housing.depth * per_long)
    rim = rim_of(housing)
    chip = None
    if rim is not None:
        chip = chip_that_explains(face.slope, rim * per_long, rim * per_long)
    return Squaring(
        taper=taper_for(face.slope, housing.bolts, per_long),
        shims=shims_for(face.slope, housing.bolts, per_long, job.stock.shim_thicknesses),
        bore_after=after,
        chip=chip,
    )


def rim_of(housing: Housing) -> float | None:
    """The largest radius of the flange at which anything was measured, in the long unit."""
    radii = [bolt.radius for bolt in housing.bolts]
    radii += [hole.radius for hole in housing.dowel_holes or ()]
    return max(radii, default=None)
