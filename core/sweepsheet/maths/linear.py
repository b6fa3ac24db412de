"""Small systems of linear equations, by elimination with pivoting."""

from __future__ import annotations

import math
from collections.abc import Sequence

# A pivot smaller than this beside the largest entry of its matrix makes it singular.
_SINGULAR = 1e-11


def solve_linear(
    matrix: Sequence[Sequence[float]], right: Sequence[float]
) -> tuple[float, ...] | None:
    """The solution x of ``matrix x = right``; ``None`` where the matrix is singular.

    ``matrix`` is n x n, by rows; ``right`` has n entries.

    >>> solve_linear([[2.0, 0.0], [0.0, 4.0]], [2.0, 2.0])
    (1.0, 0.5)
    >>> solve_linear([[1.0, 1.0], [2.0, 2.0]], [1.0, 2.0]) is None
    True
    """
    n = len(right)
    rows = [[*row, value] for row, value in zip(matrix, right, strict=True)]
    largest = max(abs(entry) for row in matrix for entry in row)
    for i in range(n):
        pivot = max(range(i, n), key=lambda r: abs(rows[r][i]))
        if abs(rows[pivot][i]) <= _SINGULAR * largest:
            return None
        rows[i], rows[pivot] = rows[pivot], rows[i]
        for r in range(i + 1, n):
            factor = rows[r][i] / rows[i][i]
            rows[r] = [a - factor * b for a, b in zip(rows[r], rows[i], strict=True)]
    solution = [0.0] * n
    for i in reversed(range(n)):
        known = math.fsum(rows[i][c] * solution[c] for c in range(i + 1, n))
        solution[i] = (rows[i][n] - known) / rows[i][i]
    return tuple(solution)


def least_squares(
    rows: Sequence[Sequence[float]], right: Sequence[float]
) -> tuple[float, ...] | None:
    """The x with the least ``|rows x - right|``, by the normal equations; ``None`` if singular.

    >>> least_squares([[1.0, 0.0], [1.0, 1.0], [1.0, 2.0]], [1.0, 3.0, 5.0])
    (1.0, 2.0)
    """
    n = len(rows[0])
    moments = [math.fsum(row[i] * y for row, y in zip(rows, right, strict=True)) for i in range(n)]
    return solve_linear(normal_matrix(rows), moments)


def normal_matrix(rows: Sequence[Sequence[float]]) -> tuple[tuple[float, ...], ...]:
    """The matrix ``A' A`` of the normal equations, of the rows of A.

    Its inverse is the covariance of the solution where each right side has the variance 1.

    >>> normal_matrix([[1.0, 0.0], [1.0, 1.0], [1.0, 2.0]])
    ((3.0, 3.0), (3.0, 5.0))
    """
    n = len(rows[0])
    return tuple(
        tuple(math.fsum(row[i] * row[j] for row in rows) for j in range(n)) for i in range(n)
    )
