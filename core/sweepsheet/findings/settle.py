"""What would settle a close call, in words."""

from __future__ import annotations

from sweepsheet.maths.units import UnitSystem
from sweepsheet.remedy.settling import FINE_STEP, Settling
from sweepsheet.words.messages import BareDistance, Distance, Message


def settle_message(settling: Settling, units: UnitSystem) -> Message:
    """What would settle it, and how much would be gained."""
    best = settling.best
    if best is None or not settling.can_settle:
        return Message("settle.none")
    step = Distance(FINE_STEP * units.small_per_inch / 1000.0, units)
    how = Message(f"settle.{best.code}", {"step": step} if best.code == "dial" else {})
    now, then = BareDistance(settling.pm_now, units), BareDistance(best.pm_after, units)
    key = "settle.could" if best.settles else "settle.helps"
    return Message(key, {"measure": how, "now": now, "then": then})
