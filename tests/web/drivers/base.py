"""What the tests ask of a browser, whichever engine it is."""

from __future__ import annotations

import json
import time
from abc import ABC, abstractmethod
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from pathlib import Path

PATIENCE = 180.0  # seconds; generous, for busy machines and the slowest of the engines
PHONE = (360, 740)  # width and height of the window; WebKitGTK does not get narrower than about 450


class Driver(ABC):
    """One browser with one page, and nothing kept from before.

    A new engine implements the five abstract methods; the others rest on them.
    """

    @abstractmethod
    def open(self, address: str) -> None:
        """Open a page."""

    @abstractmethod
    def reload(self) -> None:
        """Load the page again, as a person does."""

    @abstractmethod
    def run(self, expression: str) -> Any:
        """Give the value of a JavaScript expression; a promise is awaited. Plain data only."""

    @abstractmethod
    def keys(self, text: str) -> None:
        """Press keys, one for each character, where the cursor is."""

    @abstractmethod
    def take_picture(self, path: Path) -> None:
        """Keep what the window shows as a PNG."""

    def type(self, name: str, text: str) -> None:
        """Type into the field of this name, over what stands there."""
        field = json.dumps(f'[name="{name}"]')
        self.run(f"document.querySelector({field}).select()")
        self.keys(text)

    def press(self, selector: str) -> None:
        """Press a button."""
        self.run(f"document.querySelector({json.dumps(selector)}).click()")

    def value(self, name: str) -> str:
        """Give what stands in the field of this name."""
        field = json.dumps(f'[name="{name}"]')
        return str(self.run(f"document.querySelector({field}).value"))

    def text(self, selector: str) -> str:
        """Give the text that an element shows, "" where it is hidden."""
        return str(self.run(f"document.querySelector({json.dumps(selector)}).innerText"))

    def wait_for(self, expression: str, wanted: Any, patience: float = PATIENCE) -> None:
        """Wait until an expression has this value."""
        end = time.monotonic() + patience
        while (seen := self.run(expression)) != wanted:
            assert time.monotonic() < end, f"{expression} is {seen!r}, not {wanted!r}"
            time.sleep(0.05)

    def wait_for_text(self, selector: str, wanted: str) -> None:
        """Wait until an element shows this text."""
        self.wait_for(f"document.querySelector({json.dumps(selector)}).innerText", wanted)

    def wait_for_python(self) -> None:
        """Wait until the page can answer."""
        self.wait_for("document.documentElement.dataset.python", "ready")

    def wait_for_offline(self) -> None:
        """Wait until the page is kept for use without a signal."""
        self.wait_for("document.documentElement.dataset.offline", "ready")
