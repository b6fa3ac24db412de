"""Run inside Pyodide by library.mjs: installs the wheel and packs what the page's Python reads.

Compiled modules start much faster than sources, and only the Python that will run them can make
them; so the packing is done here and not by the Python that runs build.py.
"""

import importlib.util
import json
import sys
import zipfile
from importlib._bootstrap_external import _code_to_hash_pyc  # type: ignore[attr-defined]  # private, and so not in the stubs
from pathlib import Path

import micropip

STOCK = Path(f"/lib/python{sys.version_info.major}{sys.version_info.minor}.zip")
SITE = Path(f"/lib/python{sys.version_info.major}.{sys.version_info.minor}/site-packages")
COMMAND_LINE = "sweepsheet/__main__.py"  # has no use in a page
# These keep their docstrings and assertions: Pyodide reads its own docstrings while it starts, and
# a dataclass without one goes to the trouble of making one up.
KEPT_WHOLE = ("sweepsheet/", "pyodide/", "_pyodide/")
FIXED_TIME = (1980, 1, 1, 0, 0, 0)  # two builds of the same sources give the same bytes


async def install(wheel: str) -> None:
    """Install the project's wheel as a user of Pyodide would."""
    await micropip.install(f"emfs:{wheel}", deps=False)
    if "sweepsheet" not in micropip.list():
        raise RuntimeError("micropip did not install the wheel")


def standard_sources(names: list[str]) -> dict[str, bytes]:
    """Read the listed modules of the stock library, by path."""
    with zipfile.ZipFile(STOCK) as stock:
        there = set(stock.namelist())
        sources = {}
        for name in names:
            stem = name.replace(".", "/")
            paths = [path for path in (f"{stem}/__init__.py", f"{stem}.py") if path in there]
            if not paths:
                raise LookupError(f"the stock library has no module {name}")
            sources[paths[0]] = stock.read(paths[0])
        return sources


def own_sources() -> dict[str, bytes]:
    """Read the installed sweepsheet package, by path."""
    sources = {}
    for path in sorted((SITE / "sweepsheet").rglob("*")):
        inside = path.relative_to(SITE).as_posix()
        if path.is_dir() or "__pycache__" in inside or inside == COMMAND_LINE:
            continue
        if path.suffix == ".py":
            sources[inside] = path.read_bytes()
        elif path.name != "py.typed":
            raise ValueError(f"{inside} is not a module, and the page could not read it")
    return sources


def write(archive: Path, sources: dict[str, bytes]) -> None:
    """Write compiled modules, by the path of their source."""
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as library:
        for path, source in sorted(sources.items()):
            level = 0 if path.startswith(KEPT_WHOLE) else 2
            code = compile(source, path, "exec", dont_inherit=True, optimize=level)
            # "Unchecked": at start nobody looks for a source to compare with.
            pyc = _code_to_hash_pyc(code, importlib.util.source_hash(source), False)  # noqa: FBT003 - private, positional only
            library.writestr(zipfile.ZipInfo(f"{path}c", FIXED_TIME), pyc, zipfile.ZIP_DEFLATED, 9)


def pack(names_json: str) -> str:
    """Write the compiled modules to /library.zip; return our own modules' names as JSON."""
    own = own_sources()
    write(Path("/library.zip"), {**standard_sources(json.loads(names_json)), **own})
    modules = [path.removesuffix(".py").removesuffix("/__init__") for path in own]
    return json.dumps([module.replace("/", ".") for module in modules])


def pack_qr(wheel: str, drawing: str) -> None:
    """Write segno's encoder and our own drawing to /qr.zip.

    Its writers, for files of many kinds, would bring some forty modules of the standard library
    with them and are not used; an empty module stands in their place.
    """
    names = ("__init__", "consts", "encoder", "utils")
    with zipfile.ZipFile(wheel) as segno:
        sources = {f"segno/{name}.py": segno.read(f"segno/{name}.py") for name in names}
    write(Path("/qr.zip"), {**sources, "segno/writers.py": b"", "qr_code.py": drawing.encode()})
