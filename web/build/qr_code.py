"""Draws a text as a QR code. Runs in the page's Python, from python/qr.zip, when first asked.

The symbol comes from the library segno; what is left to do is to draw it.
"""

from __future__ import annotations

import json

import segno

# Modules of blank paper on every side, ISO/IEC 18004, section "quiet zone".
QUIET = 4


def draw(text: str) -> str:
    """The QR code of a text, as JSON: its SVG, or that the text is too long for any.

    Black on white always, or cameras would not read it at night. The weakest error correction gives
    the largest squares; where a stronger one fits in the same size, it is taken.
    """
    try:
        code = segno.make_qr(text, error="l")
    except segno.DataOverflowError:
        return json.dumps({"state": "too_long"})
    size = len(code.matrix) + 2 * QUIET
    path = "".join(
        f"M{start + QUIET} {y + QUIET}h{end - start}v1h{start - end}z"
        for y, row in enumerate(code.matrix)
        for start, end in dark_runs(row)
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="qr" viewBox="0 0 {size} {size}"'
        f' shape-rendering="crispEdges"><path fill="#fff" d="M0 0h{size}v{size}h-{size}z"/>'
        f'<path fill="#000" d="{path}"/></svg>'
    )
    return json.dumps({"state": "qr", "svg": svg})


def dark_runs(row: bytearray) -> list[tuple[int, int]]:
    """Where the dark stretches of a row begin and end."""
    edges = [
        x for x, (a, b) in enumerate(zip([0, *row], [*row, 0], strict=True)) if bool(a) != bool(b)
    ]
    return list(zip(edges[::2], edges[1::2], strict=True))
