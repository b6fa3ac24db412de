"""The browser engines that the page is tried in besides Chromium: `python tests/web/engines.py`.

As root on Debian this installs those that are missing. Where an engine can't be had its tests are
skipped, and the test command says so at its end. Chromium must be there: see `browser.py`.
"""

from __future__ import annotations

import shutil
import sys
from dataclasses import dataclass
from pathlib import Path

if not __package__:  # run as a script
    sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.web.browser import apt, is_root

# Debian keeps WebKitGTK's small browser beside the library, off the PATH.
MINI_BROWSERS = ("webkit*gtk-*/MiniBrowser", "*/webkit*gtk-*/MiniBrowser")


@dataclass(frozen=True)
class Engine:
    """One engine.

    Attributes:
        name: what the tests call it.
        spoken: its name in a sentence.
        programs: what it takes to run it, by name; a missing one is None.
        packages: what brings them on Debian.
    """

    name: str
    spoken: str
    programs: dict[str, str | None]
    packages: tuple[str, ...]

    def program(self, name: str) -> str:
        """Give the path of a program that is there."""
        path = self.programs[name]
        assert path, self.absence
        return path

    @property
    def absence(self) -> str | None:
        """Tell in a sentence what is missing, or None where nothing is."""
        missing = [name for name, path in self.programs.items() if not path]
        if not missing:
            return None
        bring = f"On Debian: apt-get install {' '.join(self.packages)}"
        return f"{self.spoken} is not here (no {', no '.join(missing)}). {bring}"


def mini_browser() -> str | None:
    """Find WebKitGTK's small browser."""
    roots = [Path("/usr/lib"), Path("/usr/lib64"), Path("/usr/libexec")]
    found = (str(path) for root in roots for each in MINI_BROWSERS for path in root.glob(each))
    return next(found, None)


def firefox() -> Engine:
    """Look for a plain Firefox, which speaks WebDriver BiDi by itself."""
    program = shutil.which("firefox-esr") or shutil.which("firefox")
    return Engine("firefox", "Firefox", {"firefox": program}, ("firefox-esr",))


def webkit() -> Engine:
    """Look for WebKitGTK: its driver, a browser to drive, and a display for that."""
    programs = {"WebKitWebDriver": shutil.which("WebKitWebDriver"), "MiniBrowser": mini_browser()}
    programs["Xvfb"] = shutil.which("Xvfb")
    packages = ("webkit2gtk-driver", "libwebkit2gtk-4.1-0", "xvfb")
    return Engine("webkit", "WebKitGTK", programs, packages)


def others() -> list[Engine]:
    """Look for all but Chromium."""
    return [firefox(), webkit()]


def main() -> int:
    """Bring what is missing, if that is possible here; the tests can do without."""
    missing = [engine for engine in others() if engine.absence]
    if missing and is_root() and shutil.which("apt-get"):
        apt("update")
        for engine in missing:
            print(f"Installing {engine.spoken} (apt)", flush=True)
            if not apt("install", "--yes", "--no-install-recommends", *engine.packages):
                print("apt-get could not", flush=True)
    for engine in others():
        print(engine.absence or f"{engine.spoken}: {next(iter(engine.programs.values()))}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
