"""What is put on what: which part carries the dial, which is swept, and what there is none of.

The arithmetic is the same for a bore of any housing and any shaft. A manual gearbox's bellhousing
on a crank is the main one, and is meant where nothing is said. What another assembly has none of is
not read: it may have been typed before the assembly was chosen, and is there again when the choice
is taken back. The words of each are in ``words.assemblies``.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

Assembly = Literal["converter", "transfer_case", "pump", "other"]

# The figures that are usual for a bellhousing; of no other assembly is a usual limit known.
BELLHOUSING_LIMITS = ("limits.bore_offset", "limits.face_runout")

_NO_PILOT = (
    "depth", "housing.pilot_distance", "housing.pilot_bearing", "limits.pilot_offset",
    "stock.aim_for", "companions.pilot_bore",
)  # fmt: skip
# What there is none of: settings, whole sections, parts that turn, things to tick, by their places.
LACKS: dict[Assembly, tuple[str, ...]] = {
    # The hub of a converter sits in the crank, and carries no shaft's tip.
    "converter": ("depth", "housing.pilot_bearing"),
    "transfer_case": (*_NO_PILOT, "checklist.starter_and_release"),
    "pump": _NO_PILOT,
    "other": (*_NO_PILOT, "checklist.starter_and_release"),
}


def assembly_in(data: object) -> Assembly | None:
    """The assembly that a job file's data name; ``None``, the manual gearbox, where they name none.

    >>> assembly_in({"housing": {"assembly": "pump"}}), assembly_in({"housing": []})
    ('pump', None)
    """
    housing = data.get("housing") if isinstance(data, Mapping) else None
    return known(housing.get("assembly")) if isinstance(housing, Mapping) else None


def known(name: object) -> Assembly | None:
    """The assembly of that name; ``None`` for any other value.

    >>> known("converter"), known(""), known([])
    ('converter', None, None)
    """
    return next((each for each in LACKS if each == name), None)


def lacks(assembly: Assembly | None, place: str) -> bool:
    """Whether an assembly has none of what stands at a place of the job.

    >>> lacks("converter", "depth.to_tip"), lacks("converter", "housing.depth")
    (True, False)
    """
    if assembly is None:
        return False
    return place in LACKS[assembly] or place.partition(".")[0] in LACKS[assembly]
