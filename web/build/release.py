"""Lays out a release: what is shipped, where each file stands, and what is filled in.

All but a few files stand in a folder named after the content of them all, so that no cache on the
way can ever mix the files of two releases.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
from pathlib import Path

AT_ROOT = ("index.html", "sw.js", "manifest.webmanifest", "notices.txt", "icons/")
PYODIDE_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
# Scripts and styles are shipped as page.mjs makes them, and these not at all.
NOT_SHIPPED = re.compile(
    r"build/|pictures/|tsconfig.*\.json$|.*\.d\.m?ts$|.*\.css$|(?!sw\.js).*\.js$"
)
SCRIPT = re.compile(r'<script type="module" src="\{\{release\}\}/([^"]+)"')
STYLE = re.compile(r'<link rel="stylesheet" href="\{\{release\}\}/([^"]+)">')
POLICY = re.compile(r'-Security-Policy" content="([^"]+)"')


class TroubleError(Exception):
    """A step failed; the message says which, for the person at the terminal."""


def scripts_of(web: Path) -> list[str]:
    """Name the script of each page, and the worker's."""
    pages = [path.read_text("utf-8") for path in sorted(web.glob("*.html"))]
    return sorted({name for page in pages for name in SCRIPT.findall(page)} | {"worker.js"})


def collect(web: Path, made: Path, library: Path, modules: Path) -> dict[str, bytes]:
    """Read every file to be shipped, by its path within web/.

    `made` is what page.mjs made; `modules` is where Pyodide is.
    """
    paths = {path.relative_to(web).as_posix(): path for path in web.rglob("*") if path.is_file()}
    files = {name: path.read_bytes() for name, path in paths.items() if not NOT_SHIPPED.match(name)}
    for name in scripts_of(web):
        files[name] = (made / name).read_bytes()
    for name in PYODIDE_FILES:
        files[f"python/{name}"] = (modules / "pyodide" / name).read_bytes()
    files["python/library.zip"] = library.read_bytes()
    # Nothing is ever installed in the page, so the lock file keeps its head only.
    lock = json.loads((modules / "pyodide" / "pyodide-lock.json").read_text("utf-8"))
    files["python/pyodide-lock.json"] = json.dumps(lock | {"packages": {}}).encode()
    sizes = {name: len(data) for name, data in files.items() if name.startswith("python/")}
    files["release.js"] = f"export const SIZES = {json.dumps(sizes, sort_keys=True)};\n".encode()
    first_round = (made / "first-round.html").read_text("utf-8")
    for name in paths:
        if name.endswith(".html"):
            page = inline_style(files[name].decode("utf-8"), made)
            files[name] = page.replace("{{first_round}}", first_round).encode()
    return dict(sorted(files.items()))


def digest(data: bytes) -> str:
    """Give the SHA-256 in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def inline_style(page: str, made: Path) -> str:
    """Put the style sheet into the page, and allow it alone: it is painted at once."""
    found = STYLE.search(page)
    if not found:
        return page
    style = (made / found[1]).read_text("utf-8")
    checksum = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode("ascii")
    page = page.replace(found[0], f"<style>{style}</style>")
    return page.replace("style-src 'self'", f"style-src 'sha256-{checksum}'")


def fill_in(page: bytes, **values: str) -> bytes:
    """Put each value where its name stands in double braces."""
    text = page.decode("utf-8")
    for name, value in values.items():
        text = text.replace(f"{{{{{name}}}}}", value)
    if left := re.search(r"\{\{\w+\}\}", text):
        raise TroubleError(f"Nothing is known to fill in for {left[0]}.")
    return text.encode("utf-8")


def lay_out(files: dict[str, bytes]) -> dict[str, bytes]:
    """Name the release after its content; put each file in its place and fill in the names."""
    sums = "".join(f"{digest(data)}  {name}\n" for name, data in files.items())
    release = f"r-{digest(sums.encode())[:12]}"
    placed = {
        name if name.startswith(AT_ROOT) else f"{release}/{name}": data
        for name, data in files.items()
    }
    placed["index.html"] = fill_in(placed["index.html"], release=release)
    policy = POLICY.search(placed["index.html"].decode("utf-8"))
    if not policy:
        raise TroubleError("index.html has no content security policy.")
    hashes = {name: digest(data) for name, data in placed.items() if name != "sw.js"}
    placed["sw.js"] = fill_in(
        placed["sw.js"],
        release=release,
        policy=policy[1].replace("'", "\\'"),
        files=json.dumps(hashes, sort_keys=True),
    )
    return placed
