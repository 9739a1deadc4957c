"""How a statement is known and the source it names: which of them go together (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.curation.view import View

CLASS_OF = {"tf:read": "bibo:Document", "tf:common-practice": "tf:Practice", "tf:memory": "tf:Recollection"}
"""The class of source that a basis needs one of."""
WANTED = {"tf:read": "a work that was read", "tf:common-practice": "a source of common practice",
          "tf:memory": "the source memory (a work that was not opened is never cited)"}
MENDED = {"tf:read": "name the work, or take the basis of the source",
          "tf:common-practice": "set source=common-practice, or basis=read",
          "tf:memory": "set source=memory, or basis=read; where part was read, a note tells what is from memory"}


def unfit_source(basis: str, sources: Sequence[str], note: str, view: View) -> tuple[str, str, str] | None:
    """What is found, expected and to be done where a basis does not go with the sources; None where it does.

    Memory beside a work that was opened needs the note that tells one from the other.
    """
    known = [node for node in map(view.node, sources) if node is not None]
    if basis not in CLASS_OF or not known or (basis == "tf:memory" and note):
        return None
    if any(CLASS_OF[basis] in node.types() for node in known):
        return None
    named = ", ".join(node.id for node in known)
    return f"basis {basis.removeprefix('tf:')} from {named}", WANTED[basis], MENDED[basis]


def basis_of(sources: Sequence[str], view: View) -> str:
    """How something is known that rests on these sources: read where one of them is a work."""
    classes = {t for node in map(view.node, sources) if node is not None for t in node.types()}
    return next((basis for basis, needed in CLASS_OF.items() if needed in classes), "tf:read")
