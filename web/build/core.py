"""The core, as the build asks it: for sentences, settings, limits, and the text of its modules."""

from __future__ import annotations

import importlib
import sys
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).resolve().parents[2] / "core"


def core(module: str) -> Any:
    """A module of the core, by its name below the package."""
    if str(FOLDER) not in sys.path:
        sys.path.insert(0, str(FOLDER))
    return importlib.import_module(f"sweepsheet.{module}")
