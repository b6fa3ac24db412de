"""The one way in which a published figure is checked: by asserting it and writing it down.

``TABLE.md`` is made of what was written down, so that it can't say what no test asserts.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import pytest

Figures = float | Sequence[float]
HEAD = ("source", "what", "published", "computed", "within")


@dataclass(frozen=True)
class Row:
    """One check, as the table shows it."""

    source: str
    what: str
    published: str
    computed: str
    within: str

    @property
    def line(self) -> str:
        """Its line in the table."""
        cells = (self.source, self.what, self.published, self.computed, self.within)
        return f"| {' | '.join(cells)} |"


ROWS: dict[str, Row] = {}


def check(source: str, what: str, published: Figures, computed: Figures, *, within: float) -> None:
    """Assert that a computed figure (or several) is the published one, and write both down.

    ``within`` is half the last digit that is printed, or what rounding leaves of an exact figure.
    """
    computed = [float(v) for v in computed] if isinstance(computed, Sequence) else float(computed)
    row = Row(source, what, shown(published), shown(computed), f"{within:.2g}")
    assert ROWS.setdefault(row.line, row) == row
    assert computed == pytest.approx(published, rel=0, abs=within), row.line


def shown(figures: Figures) -> str:
    """Figures to six digits; what rounding leaves of nothing is nothing."""
    if isinstance(figures, Sequence):
        return ", ".join(shown(each) for each in figures)
    return f"{0.0 if abs(figures) < 1e-11 else figures:.6g}"


def table() -> str:
    """The table of everything that was checked."""
    lines = [f"| {' | '.join(HEAD)} |", "|---|---|---|---|---|"]
    lines += sorted(row.line for row in ROWS.values())
    return "\n".join(lines) + "\n"
