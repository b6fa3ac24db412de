"""A film as bytes: the few elements of a WebM file that a browser needs to play it.

Matroska (RFC 9559) in EBML (RFC 8794), without a list of places to go to; of no told length, as a
browser records one, or of a told one, as from a camera.
"""

from __future__ import annotations

import struct
from collections.abc import Sequence
from dataclasses import dataclass

_UNKNOWN = b"\x01" + b"\xff" * 7  # the size of what goes on to the end
# Identifiers of elements.
_EBML, _DOC_TYPE, _DOC_VERSION, _DOC_READ = b"\x1aE\xdf\xa3", b"\x42\x82", b"\x42\x87", b"\x42\x85"
_SEGMENT, _INFO, _SCALE = b"\x18\x53\x80\x67", b"\x15\x49\xa9\x66", b"\x2a\xd7\xb1"
_MUXER, _WRITER, _LENGTH = b"\x4d\x80", b"\x57\x41", b"\x44\x89"
_TRACKS, _TRACK, _NUMBER, _UID, _KIND = b"\x16\x54\xae\x6b", b"\xae", b"\xd7", b"\x73\xc5", b"\x83"
_CODEC, _VIDEO, _WIDTH, _HEIGHT = b"\x86", b"\xe0", b"\xb0", b"\xba"
_CLUSTER, _TIME, _BLOCK = b"\x1f\x43\xb6\x75", b"\xe7", b"\xa3"
_KEY = 0x80


@dataclass(frozen=True)
class Frame:
    """An encoded frame: when it is shown, and whether it needs no other one."""

    at_ms: int
    is_key: bool
    data: bytes


def webm(frames: Sequence[Frame], width: int, height: int, length_ms: float | None = None) -> bytes:
    """A film of frames of VP8; the first one is a key frame, and each of these begins a cluster."""
    head = _element(
        _EBML, _element(_DOC_TYPE, b"webm"), _number(_DOC_VERSION, 4), _number(_DOC_READ, 2)
    )
    name = b"tests"
    told = [] if length_ms is None else [_element(_LENGTH, struct.pack(">d", length_ms))]
    info = _element(
        _INFO, _number(_SCALE, 1_000_000), *told, _element(_MUXER, name), _element(_WRITER, name)
    )
    video = _element(_VIDEO, _number(_WIDTH, width), _number(_HEIGHT, height))
    track = _element(
        _TRACK, _number(_NUMBER, 1), _number(_UID, 1), _number(_KIND, 1),
        _element(_CODEC, b"V_VP8"), video,
    )  # fmt: skip
    return b"".join([head, _SEGMENT, _UNKNOWN, info, _element(_TRACKS, track), *_clusters(frames)])


def _clusters(frames: Sequence[Frame]) -> list[bytes]:
    starts = [i for i, frame in enumerate(frames) if frame.is_key]
    assert starts[0] == 0
    found = []
    for first, after in zip(starts, [*starts[1:], len(frames)], strict=True):
        begun = frames[first].at_ms
        blocks = [
            _element(_BLOCK, b"\x81", (frame.at_ms - begun).to_bytes(2, "big"),
                     bytes([_KEY * frame.is_key]), frame.data)
            for frame in frames[first:after]
        ]  # fmt: skip
        found.append(_element(_CLUSTER, _number(_TIME, begun), *blocks))
    return found


def _element(name: bytes, *parts: bytes) -> bytes:
    data = b"".join(parts)
    return name + (len(data) | 1 << 56).to_bytes(8, "big") + data


def _number(name: bytes, value: int) -> bytes:
    return _element(name, value.to_bytes(8, "big"))
