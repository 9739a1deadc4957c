"""How likely a taxon is at a place before looking at the fish: range and establishment (layer 3)."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from assistant.model.knowledge import KnowledgeBase

PRESENT = 1.0
DOUBTFUL = 0.4
UNLISTED_KNOWN = 0.12
"""A taxon whose range is listed widely but not here."""
UNLISTED_UNKNOWN = 0.5
"""A taxon of whose range little is listed."""
ABSENT = 0.03
STATUS: dict[str, float] = {
    "native": PRESENT, "introduced": PRESENT, "reintroduced": PRESENT, "stocked": 0.8, "vagrant": 0.2,
    "uncertain": DOUBTFUL, "extirpated": 0.06, "absent": ABSENT,
}
WELL_LISTED = 5
CROSS_COMMON: dict[str, float] = {"common": 0.10, "uncommon": 0.05, "rare": 0.015}


def place_prior(kb: KnowledgeBase, taxa: Sequence[str], places: Sequence[str]) -> npt.NDArray[np.float64]:
    """A weight per taxon: native and introduced alike, absent far less likely but never zero, unknown neutral."""
    wanted = expand_places(kb, places)
    return np.array([taxon_weight(kb, t, wanted) for t in taxa], dtype=np.float64)


def expand_places(kb: KnowledgeBase, places: Sequence[str]) -> frozenset[str]:
    """The places with what they cover; a place below the listed kind adds what it lies within."""
    out: set[str] = set()
    for key in places:
        place = kb.place(key)
        if place is None:
            continue
        out.add(key)
        out.update(place.covers)
        if place.kind not in ("state", "province", "country", "region"):
            out.update(place.within)
    return frozenset(out)


def taxon_weight(kb: KnowledgeBase, taxon: str, places: frozenset[str]) -> float:
    """The prior weight of one taxon at some places (any of them); breadth of range stands for how common it is."""
    found = kb.taxon(taxon)
    if found.is_hybrid:
        parents = [taxon_weight(kb, p, places) for p in found.parents]
        stocked = kb.ranges(taxon)
        here = min(parents) if not (places and stocked) else max(min(parents), _listed(kb, taxon, places))
        return float(here * CROSS_COMMON.get(found.occurrence, 0.03))
    if not places:
        return float(breadth(kb, taxon))
    return _listed(kb, taxon, places) * float(breadth(kb, taxon)) ** 0.5


def breadth(kb: KnowledgeBase, taxon: str) -> float:
    """A mild measure of how widely a taxon occurs: the square root of the number of places listed for it."""
    listed = {r.place for key in kb.lineage(taxon)[:2] for r in kb.ranges(key)
              if r.status in ("native", "introduced", "stocked", "reintroduced")}
    return float(np.sqrt(len(listed) + 6) / 5.0)


def _listed(kb: KnowledgeBase, taxon: str, places: frozenset[str]) -> float:
    rows = [r for key in kb.lineage(taxon) if kb.taxon(key).is_species for r in kb.ranges(key)]
    here = [STATUS.get(r.status, DOUBTFUL) for r in rows
            if r.place in places and not _partial_absence(r.area, r.status)]
    if here:
        return max(here)
    if not any((p := kb.place(x)) is not None and not p.invented for x in places):
        return 1.0
    return UNLISTED_KNOWN if len(rows) >= WELL_LISTED else UNLISTED_UNKNOWN


def _partial_absence(area: str, status: str) -> bool:
    return bool(area) and status in ("absent", "extirpated")
