"""Codes of states and provinces against ISO 3166-2 as shipped by the pycountry library (26.2.16 when written)."""

from __future__ import annotations

import pycountry

from assistant.model.knowledge import KnowledgeBase


def test_every_subdivision_code_is_an_iso_code_with_the_same_name(kb: KnowledgeBase) -> None:
    """A place with an ISO 3166-2 code carries a code that exists, and its name is the one of the standard."""
    checked = 0
    for place in kb.all("place"):
        if place.invented or place.kind not in ("state", "province", "territory") or not place.code:
            continue
        found = pycountry.subdivisions.get(code=place.code)
        assert found is not None, place.code
        names = (place.label.casefold(), *(n.casefold() for n in place.nicknames))
        assert found.name.split(",")[0].casefold().startswith(names), (
            place.code, found.name, place.label)
        checked += 1
    assert checked >= 60
