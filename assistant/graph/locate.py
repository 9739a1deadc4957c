"""Where things lie: the shipped base and shapes, in the installed package or beside it; the user's cache (layer 1)."""

from __future__ import annotations

import os
from pathlib import Path

from assistant.errors import ToolError

_PACKAGE = Path(__file__).resolve().parent.parent


def _shipped(name: str) -> Path:
    for place in (_PACKAGE / "_data" / name, _PACKAGE.parent / name):
        if place.is_dir():
            return place
    raise ToolError(f"the shipped folder '{name}' is missing", "reinstall tellfin", str(_PACKAGE))


def shipped_ontology() -> Path:
    """The folder of the shipped base; never depends on the working directory."""
    return _shipped("ontology")


def cache_folder() -> Path | None:
    """The user's cache folder, TELLFIN_CACHE where it is set; None where there is none."""
    if named := os.environ.get("TELLFIN_CACHE"):
        return Path(named)
    try:
        import platformdirs

        return platformdirs.user_cache_path("tellfin", appauthor=False)
    except (OSError, RuntimeError):
        return None


def shipped_shapes() -> Path:
    """The folder of the shipped SHACL shapes."""
    return _shipped("shapes")
