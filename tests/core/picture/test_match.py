"""Two prints, one turned: numpy's Fourier transform is the outside."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest

from sweepsheet.picture.match import PRINTS, correlation, match_prints, print_of
from sweepsheet.picture.needle import RINGS, Needle

N = 360


def prints(seed: int, share: float = 0.1) -> list[bytes]:
    rng = random.Random(seed)
    return [bytes(255 if rng.random() < share else 0 for _ in range(N)) for _ in range(PRINTS)]


@pytest.mark.parametrize("n", [3, 40, 500])
def test_correlation_is_that_of_the_fourier_transform(n: int) -> None:
    rng = random.Random(n)
    one, other = rng.randbytes(n), rng.randbytes(n)
    a, b = (np.fft.fft(np.frombuffer(each, dtype=np.uint8).astype(float)) for each in (one, other))
    assert correlation(one, other) == pytest.approx(
        np.fft.ifft(a * b.conj()).real.tolist(), abs=0.01
    )


def test_the_largest_sums_have_room() -> None:
    assert correlation(bytes([255]) * 3000, bytes([255]) * 3000) == [255 * 255 * 3000] * 3000


@pytest.mark.parametrize("turned", [0, 1, 17, 39])
def test_by_how_much_a_face_is_turned(turned: int) -> None:
    first = prints(3)
    now = [ring[N - 9 * turned :] + ring[: N - 9 * turned] for ring in first]
    found = match_prints(first, now, 40)
    assert found.turned == turned
    assert found.likeness == pytest.approx(1.0)
    assert found.lead > 0.5


def test_two_faces_are_not_alike() -> None:
    found = match_prints(prints(3), prints(4), 40)
    assert found.likeness < 0.15
    blank = [bytes(N)] * PRINTS
    assert match_prints(blank, blank, 40).likeness == 0.0


def test_even_ticks_alone_lead_nowhere() -> None:
    """Every division looks like the next: there is no telling, and the lead says so."""
    ticks = [bytes(200 if i % 9 < 2 else 0 for i in range(N))] * PRINTS
    found = match_prints(ticks, ticks, 40)
    assert found.likeness == pytest.approx(1.0)
    assert found.lead == pytest.approx(0.0, abs=1e-9)


def test_the_needle_and_its_tail_are_left_out() -> None:
    """A dark needle at a right angle, with a tail: nothing of either is print."""
    rings = []
    for radius in RINGS:
        ring = [200] * N
        for side in (1, -1) if radius < 0.36 else (1,):
            k = round(N / 4) if side > 0 else round(3 * N / 4)
            half = round(0.03 / radius * N / math.tau)
            for i in range(k - half, k + half + 1):
                ring[i % N] = 20
        rings.append(ring)
    found = print_of(rings, Needle(math.pi / 2, 0.001, 0.0, 1.0, 0.5, 1))
    assert len(found) == PRINTS
    assert max(map(max, found)) < 30
