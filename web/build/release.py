"""Lays out a release: what is shipped, where each file stands, and what is filled in.

All but a few files stand in a folder named after the content of them all, so that no cache on the
way can ever mix the files of two releases.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Iterable
from functools import partial
from pathlib import Path

from web.build.assemblies import written
from web.build.folding import fold
from web.build.how import fill_how
from web.build.languages import Words, data_block, languages, said_in, translate
from web.build.template import fill, nothing_left
from web.build.trouble import TroubleError

# Each page with its script; page.mjs makes one file of that and all that it brings. The page is
# written in each language, under a name of its own.
PAGES = {
    "index.html": "main.js",
    "view.html": "view.js",
    "practice.html": "practice.js",
    "how.html": "",
}
# What a page's script brings when it is first wanted, with its style sheet.
LATER = {
    "main.js": ("guide.js", "photos.js"),
    "view.js": ("verify-link.js", "match-photos.js"),
}
LATER_STYLES = ("guide.css", "photos.css")
# What these say comes from Python with their first answer, and stands in no page.
LATER_SILENT = ("film.js",)
LATER_SCRIPTS = {name for names in LATER.values() for name in names}
BOOT = "boot.js"
SPEAKING = {*filter(None, PAGES.values()), *LATER_SCRIPTS, BOOT}
SCRIPTS = sorted({*SPEAKING, *LATER_SILENT, "worker.js"})
# These stand within the pages, and are no files of their own.
WITHIN = (BOOT, "view.js")
# The service worker: page.mjs puts together what it is made of.
KEEPER = "sw.js"
MANIFEST = "manifest.webmanifest"
AT_ROOT = re.compile(r"[^/]+\.html$|sw\.js$|[^/]+\.webmanifest$|notices\.txt$|icons/")
PYODIDE_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
# How Pyodide names its second script to itself.
NAMED = b"pyodide.asm.mjs"
# Pages are shipped as they are filled in, scripts and style sheets as page.mjs makes them.
NOT_SHIPPED = re.compile(
    r"(build|pages|pictures|scripts|styles)/|tsconfig.*\.json$|.*\.(md|d\.m?ts)$"
)
POLICY = re.compile(r'-Security-Policy" content="([^"]+)"')


def collect(web: Path, made: Path, library: Path) -> dict[str, bytes]:
    """Read every file to be shipped, by its path within web/.

    `made` is what page.mjs made; beside the library stands Pyodide, in `runtime/`.
    """
    paths = {path.relative_to(web).as_posix(): path for path in web.rglob("*") if path.is_file()}
    files = {name: path.read_bytes() for name, path in paths.items() if not NOT_SHIPPED.match(name)}
    scripts = {name: (made / name).read_text("utf-8") for name in SPEAKING}
    files |= pages(web, scripts, made)
    for words in languages():
        files[f"assemblies.{words.code}.json"] = written(words, scripts.values())
    files |= python_files(library)
    for name in (*SCRIPTS, *LATER_STYLES, KEEPER):
        if name not in WITHIN:
            files[name] = (made / name).read_bytes()
    return dict(sorted(files.items()))


def js(name: str) -> str:
    """Give a script the ending that every host knows; `.mjs` many send as a mere file."""
    return name.replace(".mjs", ".js")


def python_files(library: Path) -> dict[str, bytes]:
    """Read what Python in the page is made of; the two libraries stand side by side."""
    runtime = library.with_name("runtime")
    files = {js(name): (runtime / name).read_bytes() for name in PYODIDE_FILES}
    starter = files["pyodide.js"]
    if starter.count(NAMED) != 1:
        raise TroubleError("Pyodide no longer names its second script as it did.")
    files["pyodide.js"] = starter.replace(NAMED, js(NAMED.decode()).encode())
    files |= {name: library.with_name(name).read_bytes() for name in ("library.wasm", "qr.zip")}
    # Nothing is ever installed in the page, so the lock file keeps its head only.
    lock = json.loads((runtime / "pyodide-lock.json").read_text("utf-8"))
    files["pyodide-lock.json"] = json.dumps(lock | {"packages": {}}).encode()
    return {f"python/{name}": data for name, data in files.items()}


def told_to_scripts(library: Path, address: str) -> str:
    """Write release.js: the sizes that are downloaded, and where the page will stand."""
    sizes = {name: len(data) for name, data in python_files(library).items()}
    told = {"SIZES": sizes, "ADDRESS": address}
    lines = (f"export const {name} = {json.dumps(x, sort_keys=True)};" for name, x in told.items())
    return "\n".join(lines)


def digest(data: bytes) -> str:
    """Give the SHA-256 in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def write_forms(web: Path, out: Path) -> None:
    """Write the main page in each language with all sentences, for page.mjs to draw in."""
    everyone = languages()
    for words in everyone:
        text = translated(web, "index.html", words, everyone)
        whole = fill(text, {"words": partial(data_block, words, words.sentences)})
        (out / words.name_of("index.html")).write_text(whole, "utf-8")


def translated(web: Path, name: str, words: Words, everyone: list[Words]) -> str:
    """Read a page's template, and write it in one language."""
    template = (web / "pages" / name).read_text("utf-8")
    return translate(name, template, words, everyone, web)


def pages(web: Path, scripts: dict[str, str], made: Path) -> dict[str, bytes]:
    """Write every page in every language."""
    everyone = languages()
    sheets = (path for path in sorted(made.glob("*.css")) if path.name not in LATER_STYLES)
    styles = {path.name: path.read_text("utf-8") for path in sheets}
    within = {name: scripts[name].strip() for name in WITHIN}
    done = {}
    for words in everyone:
        for name, script in PAGES.items():
            text = translated(web, name, words, everyone)
            if name == "how.html":
                text = explained(text, words)
            names = (script, *LATER.get(script, ()), BOOT) if script else ()
            said = said_in((scripts[each] for each in names), words)
            first_round = made / words.name_of("first-round.html")
            verbs = {
                "words": partial(data_block, words, said),
                "first_round": partial(first_round.read_text, "utf-8"),
            }
            text = fill(text, verbs)
            if name == "index.html":
                text = fold(text)
            done[words.name_of(name)] = put_within(text, styles, within).encode("utf-8")
        manifest = (web / MANIFEST).read_text("utf-8")
        done[words.name_of(MANIFEST)] = translate(MANIFEST, manifest, words, everyone).encode()
    return done


def explained(page: str, words: Words) -> str:
    """Put the core's docstrings into the page that tells how it is worked out."""
    said = words.sentences
    try:
        return fill_how(page, contents=said["how.contents"], own_words=said["how.own_words"])
    except LookupError as error:
        raise TroubleError(str(error)) from error


def put_within(page: str, styles: dict[str, str], scripts: dict[str, str]) -> str:
    """Put a page's style sheets and first scripts into it, so that it waits for no other file.

    The policy allows these, by their hashes, and no others; it is the same on every page.
    """
    page = fill(page, {"style": partial(style, styles), "script": lambda name: scripts[name]})
    for kind, texts in (("style", styles), ("script", scripts)):
        allowed = f"{kind}-src 'self'"
        page = page.replace(allowed, " ".join([allowed, *hashes_of(texts.values())]))
    return page


def style(styles: dict[str, str], name: str, media: str = "") -> str:
    """A style sheet within a page, for one medium or for all."""
    which = f' media="{media}"' if media else ""
    return f"<style{which}>{styles[name]}</style>"


def hashes_of(texts: Iterable[str]) -> list[str]:
    """Give what a content security policy calls these texts."""
    sums = (hashlib.sha256(text.encode()).digest() for text in texts)
    return sorted(f"'sha256-{base64.b64encode(each).decode('ascii')}'" for each in sums)


def fill_in(page: bytes, **values: str) -> bytes:
    """Put the last values in: after them, nothing is left."""
    verbs = {name: lambda value=value: value for name, value in values.items()}
    return nothing_left(fill(page.decode("utf-8"), verbs)).encode("utf-8")


def policy_of(name: str, page: bytes) -> str:
    """Find the content security policy of a page."""
    policy = POLICY.search(page.decode("utf-8"))
    if not policy:
        raise TroubleError(f"{name} has no content security policy.")
    return policy[1]


def lay_out(files: dict[str, bytes]) -> dict[str, bytes]:
    """Name the release after its content; put each file in its place and fill in the names."""
    sums = "".join(f"{digest(data)}  {name}\n" for name, data in files.items())
    release = f"r-{digest(sums.encode())[:12]}"
    placed = {
        name if AT_ROOT.match(name) else f"{release}/{name}": data for name, data in files.items()
    }
    written = [name for name in placed if name.endswith(".html")]
    for name in written:
        placed[name] = fill_in(placed[name], release=release)
    policies = {policy_of(name, placed[name]) for name in written}
    if len(policies) > 1:
        raise TroubleError("The pages differ in their content security policies.")
    hashes = {name: digest(data) for name, data in placed.items() if name != KEEPER}
    placed[KEEPER] = fill_in(
        placed[KEEPER],
        release=release,
        policy=policies.pop(),
        files=json.dumps(hashes, sort_keys=True),
    )
    return placed
