"""Serves the built folder, to look at it on this machine or on a phone near by."""

from __future__ import annotations

import http.server
import socket
import sys
from functools import partial
from pathlib import Path

THIS_MACHINE = ("127.0.0.1", "localhost")
HELP = """
On this machine:  http://localhost:{port}/
On a phone:       {phone}
A browser installs the page, and keeps it for use without a signal, only from https or from
localhost. At a plain http address a phone can use the page, but not keep it.
Ctrl-C stops."""


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves a folder with the types that browsers insist on."""

    extensions_map = http.server.SimpleHTTPRequestHandler.extensions_map | {
        ".js": "text/javascript",
        ".wasm": "application/wasm",
        ".webmanifest": "application/manifest+json",
        ".zip": "application/zip",
    }
    cache_control = "no-cache"  # while developing, files change

    def end_headers(self) -> None:
        """Tell the browser how long it may keep what it gets."""
        self.send_header("Cache-Control", self.cache_control)
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the base's own name
        """Keep the terminal for what matters."""


class FolderServer(http.server.ThreadingHTTPServer):
    """A server that makes no fuss about browsers that hang up in the middle, as they do."""

    def handle_error(self, request: object, client_address: object) -> None:
        """Show every other error."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]  # the base class says less than it takes


def address_on_network() -> str | None:
    """Find the address at which others on the same network reach this machine; sends nothing."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # an address reserved for documents
        except OSError:
            return None
        return str(probe.getsockname()[0])


def serve_folder(folder: Path, host: str, port: int) -> None:
    """Serve until Ctrl-C; raises ``OSError`` where the port can't be had."""
    handler = partial(Handler, directory=str(folder))
    with FolderServer((host, port), handler) as server:
        port = server.server_address[1]
        phone = f"http://{address_on_network() or host}:{port}/ (on the same network)"
        if host in THIS_MACHINE:
            phone = "stop this, and serve with --host 0.0.0.0"
        print(HELP.format(port=port, phone=phone), flush=True)
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            print()
