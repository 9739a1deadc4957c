"""Where the shipped base and shapes lie: inside the installed package, or beside it in a checkout (layer 1)."""

from __future__ import annotations

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


def shipped_shapes() -> Path:
    """The folder of the shipped SHACL shapes."""
    return _shipped("shapes")
