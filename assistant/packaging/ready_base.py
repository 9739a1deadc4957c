"""A step of the wheel build: compile the shipped base, so that the first answer after installation need not wait.

Hatchling loads this file by its path. The compiled form goes into the wheel beside the Turtle files; where it does
not fit the installed code or files it is not used, and one is made in the user's cache folder instead.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class ReadyBase(BuildHookInterface):  # type: ignore[type-arg]
    """Adds the compiled form of ``ontology/`` to a wheel; an editable installation gets none."""

    PLUGIN_NAME = "custom"

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # Any: hatchling's own type
        """Compile the base into a temporary file and name it as part of the wheel."""
        if version == "editable":
            return
        root = Path(self.root)
        sys.path.insert(0, str(root))
        try:
            from assistant.compiling import compile_folder
            from assistant.loading import READY_MADE, quiet

            self._folder = tempfile.TemporaryDirectory(prefix="tellfin-")
            path = Path(self._folder.name) / READY_MADE
            compile_folder(root / "ontology", quiet).write(path)
        finally:
            sys.path.remove(str(root))
        path.chmod(0o644)
        build_data["force_include"][str(path)] = f"assistant/_data/{READY_MADE}"

    def finalize(self, version: str, build_data: dict[str, Any], artifact_path: str) -> None:
        """Remove the temporary file."""
        if version != "editable":
            self._folder.cleanup()
