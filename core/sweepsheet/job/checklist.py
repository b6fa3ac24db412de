"""What is looked at before the sweep and after it: the codes that can be ticked, in their order.

The sentences are in ``words`` under ``checklist.CODE``.
"""

from __future__ import annotations

from collections.abc import Iterable

PREPARATION = (
    "faces_clean", "nothing_proud", "parts_in_place", "bolts_even", "indicator_stiff", "end_float",
    "car_safe",
)  # fmt: skip
CLOSING_UP = (
    "dowels_secured", "bolts_torqued", "swept_again", "pilot_and_clutch", "slid_home",
    "crank_turns", "record_given",
)  # fmt: skip
GROUPS = {"preparation": PREPARATION, "closing_up": CLOSING_UP}
CODES = PREPARATION + CLOSING_UP


def in_order(codes: Iterable[str]) -> tuple[str, ...]:
    """The codes, each once, in the order of the list.

    >>> in_order(["crank_turns", "faces_clean", "crank_turns"])
    ('faces_clean', 'crank_turns')
    """
    ticked = set(codes)
    return tuple(code for code in CODES if code in ticked)
