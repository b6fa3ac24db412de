"""A plain Firefox, by WebDriver BiDi (W3C), which it speaks without a driver beside it."""

from __future__ import annotations

import base64
import json
import subprocess
import time
from typing import TYPE_CHECKING, Any, Self

from selenium.webdriver.common.bidi.common import command_builder
from selenium.webdriver.remote.websocket_connection import WebSocketConnection

from tests.web.drivers.base import PATIENCE, PHONE, Driver

if TYPE_CHECKING:
    from pathlib import Path


class Firefox(Driver):
    """A Firefox of its own, without a window, on a profile of its own."""

    def __init__(self, program: str, profile: Path) -> None:
        """Start it on a profile's folder, and wait until it listens."""
        # WebAssembly is compiled once, and not again for speed that no test asks for.
        quick = 'user_pref("javascript.options.wasm_optimizingjit", false);'
        (profile / "user.js").write_text(quick, "utf-8")
        command = [program, "--headless", "--no-remote", "--profile", str(profile)]
        command += ["--remote-debugging-port", "0", "about:blank"]
        quiet = subprocess.DEVNULL
        self._process = subprocess.Popen(command, stdout=quiet, stderr=quiet)
        try:
            address = self._address(profile / "WebDriverBiDiServer.json")
            # Selenium's socket alone: it wants geckodriver, which Debian lacks, for all the rest.
            self._socket = WebSocketConnection(address, PATIENCE, 0.01)
            self._ask("session.new", capabilities={})
            (tab,) = self._ask("browsingContext.getTree")["contexts"]
            self._tab = tab["context"]
            width, height = PHONE
            viewport = {"width": width, "height": height}
            self._ask("browsingContext.setViewport", context=self._tab, viewport=viewport)
        except BaseException:
            self._end()
            raise

    def _address(self, told: Path) -> str:
        """Wait for the file in which Firefox tells where it listens."""
        end = time.monotonic() + PATIENCE
        while not told.exists() or not (text := told.read_text("utf-8")):
            assert self._process.poll() is None, "Firefox has ended."
            assert time.monotonic() < end, "Firefox does not listen."
            time.sleep(0.05)
        return "ws://{ws_host}:{ws_port}/session".format_map(json.loads(text))

    def _ask(self, method: str, **parameters: Any) -> Any:
        return self._socket.execute(command_builder(method, parameters))

    def _end(self) -> None:
        self._process.kill()  # at once: its profile is thrown away
        self._process.wait()

    def __enter__(self) -> Self:
        """Use it for a block."""
        return self

    def __exit__(self, *_: object) -> None:
        """Let it go."""
        self._end()
        self._socket.response_wait_timeout = 1  # its thread may not see that Firefox is gone
        self._socket.close()

    def open(self, address: str) -> None:
        """Open a page."""
        self._ask("browsingContext.navigate", context=self._tab, url=address, wait="complete")

    def reload(self) -> None:
        """Load the page again."""
        self._ask("browsingContext.reload", context=self._tab, wait="complete")

    def run(self, expression: str) -> Any:
        """Give the value of an expression."""
        answer = self._ask(
            "script.evaluate",
            expression=f"(async () => JSON.stringify((await ({expression})) ?? null))()",
            awaitPromise=True,
            target={"context": self._tab},
        )
        assert answer["type"] == "success", answer["exceptionDetails"]["text"]
        return json.loads(answer["result"]["value"])

    def keys(self, text: str) -> None:
        """Press keys."""
        strokes = [{"type": way, "value": key} for key in text for way in ("keyDown", "keyUp")]
        keyboard = {"type": "key", "id": "keyboard", "actions": strokes}
        self._ask("input.performActions", context=self._tab, actions=[keyboard])

    def take_picture(self, path: Path) -> None:
        """Keep what the window shows."""
        shot = self._ask("browsingContext.captureScreenshot", context=self._tab)
        path.write_bytes(base64.b64decode(shot["data"]))
