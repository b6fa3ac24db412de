"""What the tests of the build and of the page share."""

from __future__ import annotations

from pathlib import Path

import pytest

import build


@pytest.fixture(scope="session")
def library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The packed Python library, made once."""
    build.set_up_python()
    build.set_up_node()
    return build.make_library(tmp_path_factory.mktemp("library") / "work")


@pytest.fixture(scope="session")
def dist(library: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The static folder, built once; not to be changed."""
    out = tmp_path_factory.mktemp("built") / "dist"
    build.assemble(library, out)
    return out
