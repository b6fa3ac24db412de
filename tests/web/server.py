"""A small server for the tests: a folder below a sub-folder's address, which can be taken away."""

from __future__ import annotations

import threading
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
        request.send_response(200)
        request.send_header("Content-Type", types[0] if types else request.guess_type(inside))
        request.send_header("Content-Length", str(len(body)))
        request.end_headers()
        if any(path.endswith(end) for end in self.cut):
            request.wfile.write(body[: len(body) // 2])
            request.wfile.flush()
            self._released.wait()
            request.close_connection = True
            return
        request.wfile.write(body)

    def __enter__(self) -> Self:
        """Serve until the block ends."""
        return self

    def __exit__(self, *_: object) -> None:
        """Stop."""
        self.stop()
