"""What a curator keeps at hand between edits of one folder: which subject stands where, the shapes, the vocabulary
(layer 4)."""

from __future__ import annotations

from pathlib import Path

from assistant.curation.validate import Validator
from assistant.graph.catalogue import Catalogue
from assistant.graph.lines import Index


class Desk:
    """A folder of Turtle files, read again only where it has changed."""

    def __init__(self, folder: Path, shapes: Path, kept: Path | None = None) -> None:
        """``kept`` is a file in which the catalogue of the folder is kept from one process to the next."""
        self.folder = folder
        self.validator = Validator(shapes)
        self._catalogue = Catalogue(folder, kept)

    def index(self) -> Index:
        """The base as it stands; nothing of an earlier index is shared that an edit could change."""
        self._catalogue.refresh()
        return Index(self.folder, catalogue=self._catalogue)
