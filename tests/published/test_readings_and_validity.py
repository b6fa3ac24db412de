"""Published rules for readings: the sums of opposite pairs, and the freedom of the zero.

Source of the figures: Piotrowski, Shaft Alignment Handbook, 3rd ed., figure 8.10, in mils, listed
there as top, east, bottom, west. Each set is printed with the dial zeroed at the top and again
zeroed at the side.
"""

from __future__ import annotations

import pytest

from tests.cases.jobs import PERFECT, bore_of, make_job
from tests.published.record import check

SOURCE = "Piotrowski, Shaft Alignment Handbook, 3rd ed., fig. 8.10"
Four = tuple[float, float, float, float]

SETS: list[tuple[Four, Four, float]] = [
    ((0, -50, -40, 10), (50, 0, 10, 60), -40.0),
    ((0, 30, 20, -10), (-30, 0, -10, -40), 20.0),
]


@pytest.mark.parametrize(("at_top", "at_east", "total"), SETS)
def test_top_and_bottom_add_up_to_the_sides(at_top: Four, at_east: Four, total: float) -> None:
    """The published readings obey the rule, and so the pairs show no difference."""
    top, east, bottom, west = at_top
    assert top + bottom == east + west == total
    for zeroed, readings in (("top", at_top), ("east", at_east)):
        bore = bore_of(make_job(readings, indicator=PERFECT))
        what = f"(top + bottom) - (east + west), sums {total:g}, zeroed {zeroed}, mil"
        check(SOURCE, what, 0.0, bore["pair_difference"], within=1e-12)
        assert bore["residuals"][0] == pytest.approx([0.0] * 4, abs=1e-12)


@pytest.mark.parametrize(("at_top", "at_east", "total"), SETS)
def test_top_and_bottom_add_up_to_the_sides_failure(
    at_top: Four, at_east: Four, total: float
) -> None:
    """One reading written down 10 mils wrong breaks the rule by those 10, whichever zero."""
    del total
    for top, east, bottom, west in (at_top, at_east):
        bore = bore_of(make_job((top, east, bottom + 10, west)))
        assert bore["pair_difference"] == pytest.approx(10.0, abs=1e-12)


@pytest.mark.parametrize(("at_top", "at_east", "total"), SETS)
def test_the_fit_does_not_change_with_the_zero(at_top: Four, at_east: Four, total: float) -> None:
    first, second = bore_of(make_job(at_top)), bore_of(make_job(at_east))
    what = f"centre zeroed at the top ({total:g}) and at the east, mil"
    check(SOURCE, what, first["center"], second["center"], within=1e-12)
    assert second["tir"] == pytest.approx(first["tir"], abs=1e-12)
    assert second["covariance"][0] == pytest.approx(first["covariance"][0], abs=1e-12)
    assert second["covariance"][1] == pytest.approx(first["covariance"][1], abs=1e-12)
    assert second["probability_within"] == pytest.approx(first["probability_within"], abs=1e-12)


@pytest.mark.parametrize(
    ("readings", "center"), [(SETS[0][0], (30.0, -20.0)), (SETS[1][0], (-20.0, 10.0))]
)
def test_centre_is_half_of_each_opposed_difference(
    readings: Four, center: tuple[float, float]
) -> None:
    """Half of (west - east) across and half of (bottom - top) up, for a dial inside a bore."""
    assert bore_of(make_job(readings))["center"] == pytest.approx(center, abs=1e-12)
