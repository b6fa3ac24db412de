"""The rules of the house that a script can hold: JavaScript, exceptions to rules, examples."""

from __future__ import annotations

import ast
import re
from pathlib import Path

from tests.core.source import computing, modules
from tests.mutate import MODULES

ROOT = Path(__file__).parents[2]
SCRIPTS = sorted([*(ROOT / "web" / "scripts").rglob("*.js"), ROOT / "web" / "sw.js"])

# JavaScript does no domain arithmetic: no geometry, no halving of a TIR, no units, and no number
# made of what was typed.
ARITHMETIC = re.compile(
    r"Math\.(a?sinh?|a?cosh?|a?tanh?2?|atan2|hypot|sqrt|cbrt|pow|PI|exp|log\w*)\b"
    r"|parseFloat|parseInt|\bNumber\(|[*/]=? ?2\b|\*\*|25\.4|0\.0254|\b180\b|\b360\b"
)
# What stands for something else, by file: a part of the line, and why.
ALLOWED: dict[str, dict[str, str]] = {
    "form.js": {
        "Number(found[0])": "the number of a row, from a field's name",
        "Number(typed)": "how many rows of marks there are to be",
    },
    "readings.js": {
        "Number(mark) - 1": "the number of a row, from what it is called",
        "Number(i)": "the number of a column, from a field's name",
        "this.#typed[Number(j)]": "the number of a row, from a field's name",
    },
    "snapshot.js": {"Number(kept.headers.get(SIZE))": "bytes of memory, as the copy says"},
    "store.js": {"changed: Number(": "when a job was changed, for the list"},
    "decimal-step.js": {
        "units * 10n **": "two typed decimals written with as many digits as each other"
    },
    "crank.js": {
        "Number(this.slider": "where the slider of the drawing stands, in steps of the picture",
        "(box.left + box.right) / 2": "the middle of the drawing on the screen, in pixels",
        "(box.top + box.bottom) / 2": "the middle of the drawing on the screen, in pixels",
        "Math.atan2(y, x)": "where a finger is on the screen",
        "turned": "by how much a finger went round on the screen",
    },
    "film-frames.js": {"(video.videoWidth - side) / 2": "the middle of a picture, in pixels"},
    "grey.js": {"(picture.width - side) / 2": "the middle of a picture, in pixels"},
    "lens.js": {
        "part.clientWidth / 2": "the middle of the lens, in pixels",
        "part.offsetWidth / 2": "half the lens on the screen, in pixels",
        "left < wide / 2": "which half of the screen the mark is in, in pixels",
    },
    "place-mark.js": {"picture.naturalWidth / 2": "the middle of the picture, in pixels"},
}


def arithmetic_in(text: str, allowed: dict[str, str]) -> tuple[list[str], set[str]]:
    """The lines that look like arithmetic and are not allowed, and the exceptions that were met."""
    found, met = [], set()
    for line in text.splitlines():
        code = re.sub(r"/\*.*?\*/|^\s*(//|/?\*).*|\s//.*$", "", line)
        if ARITHMETIC.search(code):
            excuses = {part for part in allowed if part in code}
            met |= excuses
            if not excuses:
                found.append(line.strip())
    return found, met


def test_javascript_does_no_domain_arithmetic() -> None:
    found: list[str] = []
    needed: dict[str, set[str]] = {}
    for script in SCRIPTS:
        lines, met = arithmetic_in(script.read_text("utf-8"), ALLOWED.get(script.name, {}))
        found += [f"{script.name}: {line}" for line in lines]
        needed |= {script.name: met} if met else {}
    assert found == []
    assert {name: set(excuses) for name, excuses in ALLOWED.items()} == needed


def test_arithmetic_is_seen() -> None:
    for line in ("x = tir / 2;", "Math.hypot(a, b)", "parseFloat(input.value)", "mm = inch * 25.4"):
        assert arithmetic_in(line, {})[0] == [line]
    assert arithmetic_in("// half of it: / 2\n * TIR / 2", {}) == ([], set())


# Exceptions to rules ----------------------------------------------------------------------------

OWN = [
    path
    for folder in ("core", "tests", "web")
    for path in sorted((ROOT / folder).rglob("*.py"))
    if "__pycache__" not in path.parts
]
EXCEPTION = re.compile(r"#\s*(noqa|type:\s*ignore|pragma:\s*no (?:cover|mutate))")
REASON = re.compile(
    r"#\s*(?:noqa: [A-Z0-9, ]+|type: ignore\[[\w, -]+\]\s*#|pragma: no (?:cover|mutate))"
    r"\s*[-(:]?\s*[\w',]+ \w+"
)


def bare_exceptions(text: str) -> list[str]:
    """The lines that set a rule aside without a code and a reason."""
    return [
        line.strip()
        for line in text.splitlines()
        if EXCEPTION.search(line) and not REASON.search(line)
    ]


def test_every_exception_has_a_reason() -> None:
    """But in this file, which holds bad examples."""
    others = [path for path in (*OWN, ROOT / "build.py") if path != Path(__file__)]
    bare = {path.name: bare_exceptions(path.read_text("utf-8")) for path in others}
    assert {name: lines for name, lines in bare.items() if lines} == {}


def test_every_rule_left_out_in_the_settings_has_a_reason() -> None:
    """Every ignored rule of the linter and every ignored import stands beside a comment."""
    text = (ROOT / "pyproject.toml").read_text("utf-8")
    lines = [line for line in text.splitlines() if re.match(RULE_LEFT_OUT, line)]
    assert len(lines) > 10
    assert [line for line in lines if not re.search(r"# \w+", line)] == []


def test_a_bare_exception_is_seen() -> None:
    for line in ("x = 1  # noqa", "x = 1  # noqa: S311", "y()  # type: ignore[arg-type]"):
        assert bare_exceptions(line) == [line]
    assert bare_exceptions("x()  # type: ignore[arg-type]  # wrong on purpose") == []
    assert bare_exceptions("x()  # noqa: S311 - seeded on purpose") == []


RULE_LEFT_OUT = r'    "[A-Z]+\d+",( *#|$)|ignore_missing'


# Examples ---------------------------------------------------------------------------------------

WORLDS = {"practice.housing", "practice.lengths"}
COMPUTING = sorted(computing() - WORLDS - {"findings.advice"} | {"solution"})
WHOLE_JOB = (
    "takes a whole job; worked through in tests/core/test_by_hand.py and api.solve's example"
)
MANY_PARTS = "takes what other modules made; worked through in tests/core/test_by_hand.py"
PHOTO = "takes a photo; drawn ones are read in tests/core/picture/"
OWN_TESTS = "takes what other modules made; worked through in its own tests"
NO_EXAMPLE = {
    "alignment.bore.measure_bore": MANY_PARTS,
    "alignment.bore.needle_swing": MANY_PARTS,
    "remedy.settling.face_settling": MANY_PARTS,
    "remedy.settling.too_coarse": MANY_PARTS,
    "alignment.rotating_part.measure_rotating_part": MANY_PARTS,
    "sweep.corrections.corrected_bore": MANY_PARTS,
    "sweep.corrections.corrected_rotating_part": MANY_PARTS,
    "sweep.corrections.corrected_face": MANY_PARTS,
    "sweep.corrections.vertical_shift": MANY_PARTS,
    "remedy.observed_move.observed_move_of": MANY_PARTS,
    "remedy.dowels.Option.target_judged": "a choice between two fields",
    "remedy.dowels.Option.target_offset": "a choice between two fields",
    "remedy.dowels.OptionEvaluator.left_alone": WHOLE_JOB,
    "remedy.dowels.OptionEvaluator.option": WHOLE_JOB,
    "remedy.dowels.OptionEvaluator.refitted": WHOLE_JOB,
    "remedy.dowels.choose": WHOLE_JOB,
    "remedy.dowels.options_for": WHOLE_JOB,
    "alignment.face.measure_face": MANY_PARTS,
    "remedy.history.history_of": WHOLE_JOB,
    "remedy.history.refit_covariance": WHOLE_JOB,
    "memory.usual.case_of": WHOLE_JOB,
    "remedy.seating.seating_of": WHOLE_JOB,
    "remedy.seating.seats_of": "in the example of chains_of",
    "alignment.plate.plate_of": WHOLE_JOB,
    "alignment.plate.without_plate": WHOLE_JOB,
    "alignment.rounds.measure_rounds": WHOLE_JOB,
    "remedy.seating.mean_covariance": "a mean",
    "sweep.uncertainty.uncertainty_of": MANY_PARTS,
    "remedy.unequal_pairs.pairs_for": WHOLE_JOB,
    "alignment.pilot.pilot_line": MANY_PARTS,
    "alignment.pilot.pilot_shift": MANY_PARTS,
    "alignment.rounds.measure_round": WHOLE_JOB,
    "alignment.depth.gaps_of": WHOLE_JOB,
    "alignment.places.Places.ends_of": "in the example of places_of",
    "remedy.spacer.depth_fit": WHOLE_JOB,
    "alignment.seat.clearance_of": WHOLE_JOB,
    "alignment.seat.seat_of": WHOLE_JOB,
    "solution.work_out": WHOLE_JOB,
    "remedy.squaring.rim_of": WHOLE_JOB,
    "remedy.squaring.square": WHOLE_JOB,
    "findings.order.order_for": OWN_TESTS,
    "findings.order.bore_seen_again": OWN_TESTS,
    "remedy.machining.bore_move": OWN_TESTS,
    "remedy.machining.face_cut": OWN_TESTS,
    "sweep.analysis.must_be_repeated": MANY_PARTS,
    "sweep.analysis.tiny_reading": MANY_PARTS,
    "sweep.analysis.examine": MANY_PARTS,
    "remedy.response.response_of": MANY_PARTS,
    "picture.needle.find_needle": PHOTO,
}


def public_functions(tree: ast.Module) -> dict[str, ast.FunctionDef]:
    """Functions and methods by name, but properties, what is private and what is in it."""
    found = {}
    for node in tree.body:
        if isinstance(node, ast.FunctionDef):
            found[node.name] = node
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            methods = (each for each in node.body if isinstance(each, ast.FunctionDef))
            found |= {
                f"{node.name}.{each.name}": each
                for each in methods
                if "property" not in [ast.unparse(d) for d in each.decorator_list]
            }
    return {k: v for k, v in found.items() if not k.rpartition(".")[2].startswith("_")}


def without_example() -> set[str]:
    return {
        f"{module}.{name}"
        for module in COMPUTING
        for name, node in public_functions(modules()[module]).items()
        if ">>> " not in (ast.get_docstring(node) or "")
    }


def test_every_public_function_that_computes_has_an_example_that_is_run() -> None:
    """Or a reason why not; and no reason is kept that nothing needs."""
    assert without_example() == set(NO_EXAMPLE)


# Without: properties alone; words in an order, obeyed in test_states.py; a world of its own.
NOT_MUTATED = {
    "maths.eccentricity", "findings.advice", "practice.housing", "practice.acts",
    "practice.lengths",
}  # fmt: skip


def test_every_module_that_computes_is_mutated() -> None:
    assert set(MODULES) == computing() - NOT_MUTATED | {"solution"}


# Documents --------------------------------------------------------------------------------------

DOCUMENTS = [
    ROOT / "README.md",
    ROOT / "DEVELOPERS.md",
    *(path for top in ("core", "web", "tests") for path in sorted((ROOT / top).glob("*.md"))),
]
# Files of others, and one that was given up.
ELSEWHERE = {"dataclasses.py", "early.js"}


def lost_in(text: str, folder: Path) -> list[str]:
    """Links of a document that lead nowhere, and files that it names and nobody has."""
    links = re.findall(r"\]\(([\w./-]+)\)", text)
    lost = [link for link in links if not (folder / link).exists()]
    names = set(re.findall(r"`(?:[\w./-]+/)?([\w-]+\.(?:py|js|mjs|html|css|md))`", text))
    there = {path.name for top in ("core", "web", "tests") for path in (ROOT / top).rglob("*.*")}
    there |= {path.name for path in ROOT.iterdir()}
    return lost + sorted(names - there - ELSEWHERE)


def test_documents_name_what_is_there() -> None:
    assert len(DOCUMENTS) > 9
    lost = {path.name: lost_in(path.read_text("utf-8"), path.parent) for path in DOCUMENTS}
    assert {name: files for name, files in lost.items() if files} == {}
    assert lost_in("[x](no/such.md) `gone/away.py`", ROOT) == ["no/such.md", "away.py"]


def test_the_guide_for_developers_is_read_at_one_go() -> None:
    assert len((ROOT / "DEVELOPERS.md").read_text("utf-8").splitlines()) <= 120
