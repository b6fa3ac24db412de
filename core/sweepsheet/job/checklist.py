"""What is done by hand before, between and after the sweeps: the codes that can be ticked.

What is looked at before and after stays on record; how dowels were fitted or turned is ticked only
so that nothing is forgotten under the car.

The sentences are in ``words`` under ``checklist.CODE``.
"""

from __future__ import annotations

from collections.abc import Iterable

PREPARATION = (
    "faces_clean", "nothing_proud", "parts_in_place", "bolts_even", "indicator_stiff", "end_float",
    "car_safe",
)  # fmt: skip
CLOSING_UP = (
    "dowels_secured", "bolts_torqued", "swept_again", "dial_out", "pilot_and_clutch", "slid_home",
    "crank_turns", "starter_and_release", "record_given",
)  # fmt: skip
FIT = (
    "dowels_out", "holes_clean", "sides_marked", "dowels_aimed", "housing_on", "fit_torqued",
    "dowels_engage", "bolts_start",
)  # fmt: skip
TRIM = ("bolts_loose", "dowels_turned", "trim_torqued")
GROUPS = {"preparation": PREPARATION, "fit": FIT, "trim": TRIM, "closing_up": CLOSING_UP}
RECORDED = PREPARATION + CLOSING_UP
CODES = PREPARATION + FIT + TRIM + CLOSING_UP


def in_order(codes: Iterable[str]) -> tuple[str, ...]:
    """The codes, each once, in the order of the list.

    >>> in_order(["crank_turns", "faces_clean", "crank_turns"])
    ('faces_clean', 'crank_turns')
    """
    ticked = set(codes)
    return tuple(code for code in CODES if code in ticked)
