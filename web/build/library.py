"""Run inside Pyodide by library.mjs: installs the wheel and packs what the page's Python reads.

Compiled modules start much faster than sources, and only the Python that will run them can make
them; so the packing is done here and not by the Python that runs build.py.
"""

import ast
import builtins
import dataclasses
import importlib.util
import json
import marshal
import re
import sys
import zipfile
from importlib._bootstrap_external import _code_to_hash_pyc  # type: ignore[attr-defined]  # private, and so not in the stubs
from pathlib import Path
from types import CodeType

import micropip

STOCK = Path(f"/lib/python{sys.version_info.major}{sys.version_info.minor}.zip")
SITE = Path(f"/lib/python{sys.version_info.major}.{sys.version_info.minor}/site-packages")
COMMAND_LINE = "sweepsheet/__main__.py"  # has no use in a page
# Pyodide reads its own docstrings while it starts.
KEPT_WHOLE = ("pyodide/", "_pyodide/")
OURS = "sweepsheet/"
# The sentences of the pages are in the pages already.
PAGES = re.compile(r"sweepsheet/words/\w+/pages\.py")
FIXED_TIME = (1980, 1, 1, 0, 0, 0)  # two builds of the same sources give the same bytes
# Each dataclass writes its methods as text and has them compiled whenever it is imported, which was
# half of what importing sweepsheet took. What it will ask for is compiled here, once.
COMPILING = "exec(txt, self.globals, ns)"
COMPILED = "exec(METHODS.get(txt, txt), self.globals, ns)"


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
        if path.is_dir() or "__pycache__" in inside:
            continue
        if inside == COMMAND_LINE or PAGES.fullmatch(inside):
            continue
        if path.suffix == ".py":
            sources[inside] = path.read_bytes()
        elif path.name != "py.typed":
            raise ValueError(f"{inside} is not a module, and the page could not read it")
    return sources


def methods_of_dataclasses(sources: dict[str, bytes]) -> dict[str, CodeType]:
    """Import the modules with dataclasses anew; compile what they ask for, by its text."""
    methods = {}

    def compiling(text: str, *scope: dict[str, object]) -> None:
        methods[text] = compile(text, "<string>", "exec", dont_inherit=True)
        builtins.exec(methods[text], *scope)  # noqa: S102 - as dataclasses do

    with_dataclasses = [path for path, source in sources.items() if b"\n@dataclass" in source]
    modules = [module_at(path) for path in sorted(with_dataclasses)]
    for module in modules:
        sys.modules.pop(module, None)
    dataclasses.exec = compiling  # type: ignore[attr-defined]  # in place of the builtin
    for module in modules:
        importlib.import_module(module)
    del dataclasses.exec  # type: ignore[attr-defined]  # the builtin again
    return methods


def with_methods(source: bytes, methods: dict[str, CodeType]) -> bytes:
    """Make a dataclasses module that has these methods at hand; others it compiles as ever."""
    text = source.decode("utf-8")
    if text.count(COMPILING) != 1:
        raise ValueError("Python's dataclasses compile their methods in another way now")
    at_hand = f"import marshal\nMETHODS = marshal.loads({marshal.dumps(methods)!r})\n"
    return (text.replace(COMPILING, COMPILED) + at_hand).encode()


def module_at(path: str) -> str:
    """Name the module whose source is at a path."""
    return path.removesuffix(".py").removesuffix("/__init__").replace("/", ".")


class Lighter(ast.NodeTransformer):
    """Takes from a module of ours the docstrings, which no page reads.

    Classes keep theirs: a dataclass without one goes to the trouble of making one up.
    """

    def visit_body(self, node: ast.Module | ast.FunctionDef) -> ast.AST:
        """Drop the docstring; what is left without a statement gets an empty one."""
        if ast.get_docstring(node, clean=False) is not None:
            node.body = node.body[1:] or [ast.Pass(lineno=1, col_offset=0)]
        return self.generic_visit(node)

    visit_Module = visit_FunctionDef = visit_body  # noqa: N815 - names that ast looks for


def compiled(path: str, source: bytes) -> CodeType:
    """Compile a module as the page wants it."""
    if path.startswith(OURS):
        lighter = Lighter().visit(ast.parse(source, path))
        return compile(lighter, path, "exec", dont_inherit=True, optimize=0)
    level = 0 if path.startswith(KEPT_WHOLE) else 2
    return compile(source, path, "exec", dont_inherit=True, optimize=level)


def write(archive: Path, sources: dict[str, bytes], method: int) -> None:
    """Write compiled modules, by the path of their source."""
    with zipfile.ZipFile(archive, "w", method, compresslevel=9) as library:
        for path, source in sorted(sources.items()):
            code = compiled(path, source)
            # "Unchecked": at start nobody looks for a source to compare with.
            pyc = _code_to_hash_pyc(code, importlib.util.source_hash(source), False)  # noqa: FBT003 - private, positional only
            library.writestr(zipfile.ZipInfo(f"{path}c", FIXED_TIME), pyc, method, 9)


def pack(names_json: str) -> str:
    """Write the compiled modules to /library.zip; return our own modules' names as JSON.

    They stand in it as they are: it is compressed as one, on its way.
    """
    own = own_sources()
    sources = {**standard_sources(json.loads(names_json)), **own}
    methods = methods_of_dataclasses(sources)
    sources["dataclasses.py"] = with_methods(sources["dataclasses.py"], methods)
    write(Path("/library.zip"), sources, zipfile.ZIP_STORED)
    return json.dumps([module_at(path) for path in own])


def pack_qr(wheel: str, drawing: str) -> None:
    """Write segno's encoder and our own drawing to /qr.zip.

    Its writers, for files of many kinds, would bring some forty modules of the standard library
    with them and are not used; an empty module stands in their place.
    """
    names = ("__init__", "consts", "encoder", "utils")
    with zipfile.ZipFile(wheel) as segno:
        sources = {f"segno/{name}.py": segno.read(f"segno/{name}.py") for name in names}
    write(
        Path("/qr.zip"),
        {**sources, "segno/writers.py": b"", "qr_code.py": drawing.encode()},
        zipfile.ZIP_DEFLATED,
    )
