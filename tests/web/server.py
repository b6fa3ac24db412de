"""A small server for the tests: a folder below a sub-folder's address, which can be taken away."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from pathlib import Path
from typing import Self
from urllib.parse import urlsplit

from web.build.serve import FolderServer, Handler

Alter = Callable[[bytes], bytes]


def spoil(body: bytes) -> bytes:
    """Change one byte."""
    return bytes([body[0] ^ 1]) + body[1:]


class Server:
    """Serves `folder` at `address`; what it sends can be altered, and it can be stopped.

    Attributes:
        folder: what is served; may be exchanged while running.
        bodies: by the end of a path, what to make of the file's bytes.
        types: by the end of a path, the Content-Type to send instead.
        missing: ends of paths that are answered with 404.
        moved: ends of paths that are sent on to the same address without ".html".
        held: ends of paths whose answer waits until the server stops.
        breaks: by the end of a path, how many bytes are sent of each answer before it breaks off;
            those after the last are whole.
        ranges: whether a part of a file can be asked for.
        parts: the ranges that were asked for, with their paths, in order.
        cut: ends of paths whose answer stands still in the middle, and breaks off when it stops.
        asked: the paths that were asked for, in order.
        cache_control: how long browsers may keep what they get.
    """

    def __init__(self, folder: Path, prefix: str = "/") -> None:
        """Start serving on a free port."""
        self.folder = folder
        self.prefix = prefix
        self.bodies: dict[str, Alter] = {}
        self.types: dict[str, str] = {}
        self.missing: set[str] = set()
        self.moved: set[str] = set()
        self.held: set[str] = set()
        self.breaks: dict[str, list[int]] = {}
        self.ranges = True
        self.parts: list[tuple[str, str]] = []
        self.cut: set[str] = set()
        self.asked: list[str] = []
        self.cache_control = "no-cache"
        self._released = threading.Event()
        self._port = 0
        self.start()

    @property
    def address(self) -> str:
        """The page's address."""
        return f"http://127.0.0.1:{self._port}{self.prefix}"

    def start(self) -> None:
        """Serve; at the same port as before, if it was stopped."""
        server = self

        class TestHandler(Handler):
            def do_GET(self) -> None:  # noqa: N802 - the base class's own name
                self.cache_control = server.cache_control
                server.handle(self)

        self._released.clear()
        self._http = FolderServer(("127.0.0.1", self._port), TestHandler)
        self._http.daemon_threads = True
        self._port = self._http.server_address[1]
        self._thread = threading.Thread(target=self._http.serve_forever, args=(0.05,))
        self._thread.start()

    def stop(self) -> None:
        """Take the server away, as when the phone has no signal; if it is still there."""
        if not self._thread.is_alive():
            return
        self._released.set()
        self._http.shutdown()
        self._thread.join()
        self._http.server_close()

    def release(self) -> None:
        """Let go what is held."""
        self.held.clear()
        self._released.set()

    def handle(self, request: Handler) -> None:
        """Answer one request."""
        path = urlsplit(request.path).path
        self.asked.append(path)
        inside = path.removeprefix(self.prefix)
        if path.endswith("/"):
            inside += "index.html"
        if any(path.endswith(end) for end in self.moved):
            request.send_response(308)
            request.send_header("Location", path.removesuffix(".html"))
            request.end_headers()
            return
        if any(f"{path}.html".endswith(end) for end in self.moved):
            inside += ".html"
        file = self.folder / inside
        if any(path.endswith(end) for end in self.held):
            self._released.wait()
        is_missing = any(path.endswith(end) for end in self.missing)
        if not path.startswith(self.prefix) or is_missing or not file.is_file():
            request.send_error(404)
            return
        body = file.read_bytes()
        for end, alter in self.bodies.items():
            if path.endswith(end):
                body = alter(body)
        types = [given for end, given in self.types.items() if path.endswith(end)]
        self._send(request, path, body, types[0] if types else request.guess_type(inside))

    def _send(self, request: Handler, path: str, body: bytes, kind: str) -> None:
        """Send a file, or the part of it that is asked for; or as much of it as is to come."""
        asked = request.headers.get("Range", "")
        if asked:
            self.parts.append((path, asked))
        if asked and self.ranges:
            begin, whole = int(asked.removeprefix("bytes=").rstrip("-")), len(body)
            body = body[begin:]
            request.send_response(206 if body else 416)
            last = f"{begin}-{whole - 1}" if body else "*"
            request.send_header("Content-Range", f"bytes {last}/{whole}")
        else:
            request.send_response(200)
        request.send_header("Content-Type", kind)
        request.send_header("Content-Length", str(len(body)))
        request.end_headers()
        if any(path.endswith(end) for end in self.cut):
            request.wfile.write(body[: len(body) // 2])
            request.wfile.flush()
            self._released.wait()
            request.close_connection = True
            return
        for end, sent in self.breaks.items():
            if path.endswith(end) and sent:
                body = body[: sent.pop(0)]
                request.wfile.write(body)
                request.wfile.flush()
                time.sleep(0.5)  # a browser drops what it has not read when the end comes
                request.close_connection = True
                return
        request.wfile.write(body)

    def __enter__(self) -> Self:
        """Serve until the block ends."""
        return self

    def __exit__(self, *_: object) -> None:
        """Stop."""
        self.stop()
