"""WebKitGTK, by WebDriver (W3C) and the driver that comes with it."""

from __future__ import annotations

import json
import os
import subprocess
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

from selenium.webdriver import ActionChains, WebKitGTK, WebKitGTKOptions
from selenium.webdriver.webkitgtk.service import Service

from tests.web.drivers.base import PHONE, Driver

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from tests.web.engines import Engine


class WebKit(Driver):
    """WebKitGTK's small browser."""

    def __init__(self, driver: WebKitGTK) -> None:
        """Take over a running one."""
        self._driver = driver

    def open(self, address: str) -> None:
        """Open a page."""
        self._driver.get(address)

    def reload(self) -> None:
        """Load the page again."""
        self._driver.refresh()

    def run(self, expression: str) -> Any:
        """Give the value of an expression."""
        script = f"return (async () => JSON.stringify((await ({expression})) ?? null))()"
        return json.loads(self._driver.execute_script(script))

    def keys(self, text: str) -> None:
        """Press keys."""
        ActionChains(self._driver).send_keys(text).perform()

    def take_picture(self, path: Path) -> None:
        """Keep what the window shows."""
        assert self._driver.save_screenshot(str(path))


@contextmanager
def display(xvfb: str) -> Iterator[str]:
    """Run a display that nobody sees; gives its name."""
    command = [xvfb, "-displayfd", "1", "-screen", "0", "800x1000x24"]
    quiet = subprocess.DEVNULL
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=quiet, text=True) as process:
        try:
            assert process.stdout
            number = process.stdout.readline().strip()
            assert number, "Xvfb has ended."
            yield f":{number}"
        finally:
            process.terminate()
            try:
                process.wait(10)
            except subprocess.TimeoutExpired:
                process.kill()


@contextmanager
def webkit(engine: Engine) -> Iterator[WebKit]:
    """Run WebKitGTK for a block. What it keeps is gone at the end of it."""
    options = WebKitGTKOptions()
    options.binary_location = engine.program("MiniBrowser")
    options.add_argument("--automation")
    options.set_capability("browserName", "MiniBrowser")
    with display(engine.program("Xvfb")) as screen:
        # WebAssembly is compiled once, and not again for speed that no test asks for.
        environment = os.environ | {"DISPLAY": screen, "JSC_useOMGJIT": "0"}
        service = Service(engine.program("WebKitWebDriver"), env=environment)
        driver = WebKitGTK(options=options, service=service)
        try:
            driver.set_window_size(*PHONE)
            yield WebKit(driver)
        finally:
            driver.quit()
