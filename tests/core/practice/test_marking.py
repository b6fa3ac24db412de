"""Whether a pupil stopped rightly: his own readings must say so, and it must be so."""

from __future__ import annotations

import pytest

from sweepsheet.maths.vector import ZERO
from sweepsheet.practice.acts import tipped
from sweepsheet.practice.housing import DEPTH, TIPPED, true_housing_of
from sweepsheet.practice.marking import mark
from sweepsheet.words.en.core import ENGLISH
from tests.core.practice.test_acts import THOU, Bench, Form

STOPPED = -1


def squared(seed: int) -> Bench:
    """A face that was swept, cleaned and squared as the result says."""
    bench = Bench(seed, TIPPED)
    bench.sweep("bore", "face")
    bench.do("cleaned")
    seen = bench.sweep("bore", "face")
    assert seen.squaring is not None
    assert seen.latest.face is not None
    at = f"{seen.squaring.taper.deepest_deg:.1f}°"
    bench.do("squared", square_runout=f"{seen.latest.face.runout:.2f}", square_at=at)
    return bench


def upright_offset(seed: int) -> float:
    """How far off it is, in thou, once the whole tilt is taken out."""
    hidden = true_housing_of(seed, TIPPED)
    return tipped(hidden.center, hidden.slope, ZERO, DEPTH).length / THOU


def test_a_face_that_was_squared_must_be_swept_again() -> None:
    """The bore is within by itself, once the face is square."""
    bench = squared(next(seed for seed in range(1, 1000) if upright_offset(seed) < 2.0))
    assert mark(bench.form, ENGLISH)[STOPPED] == "no, not swept at the end"
    bench.sweep("bore")
    assert mark(bench.form, ENGLISH)[STOPPED] == "no, not shown to be within"
    bench.sweep("face")
    row = mark(bench.form, ENGLISH)
    assert row[STOPPED] == "yes"
    assert "runout" in row[3]


def at_the_limit(sag: str) -> Form:
    """Readings of a bore that is 5 thou low to the hair."""
    form = {"exercise.seed": "7", "exercise.level": "2", "exercise.positions": "12"}
    shown = (0, -0.5, -2.5, -5, -7.5, -9.5, -10, -9.5, -7.5, -5, -2.5, -0.5)
    form |= {f"rounds.0.bore.sweeps.0.{i}": f"{value}" for i, value in enumerate(shown)}
    return form | {"indicator.sag": sag, "rounds.0.bore.closing.0": "0"}


@pytest.mark.parametrize(
    ("sag", "said"), [("", "no, not shown to be within"), ("0", "yes, too close to call")]
)
def test_what_no_measuring_settles_is_left_rightly(sag: str, said: str) -> None:
    """Where the sag was not measured, that could settle it."""
    assert mark(at_the_limit(sag), ENGLISH)[STOPPED] == said
