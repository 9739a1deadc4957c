"""How likely a taxon is at a place before looking at the fish: range and establishment (layer 3).

Native and introduced count alike, in a part of the place half as much, absent far less but never zero, unknown in
between. Breadth of range stands for how common a taxon is; a cross is as likely as the rarer parent, times how common
it is said to be. ``standing`` does the sums for all taxa at once.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Place, Range, Taxon
from assistant.text import unique

PRESENT = 1.0
DOUBTFUL = 0.4
UNLISTED_KNOWN = 0.12
"""A taxon whose range is listed widely but not here."""
UNLISTED_UNKNOWN = 0.5
"""A taxon of whose range little is listed."""
FAR = 0.015
"""A taxon whose range is listed, but for no place of the region (common practice, no source)."""
ABSENT = 0.03
STATUS: dict[str, float] = {
    "native": PRESENT, "introduced": PRESENT, "reintroduced": PRESENT, "stocked": 0.8, "vagrant": 0.2,
    "uncertain": DOUBTFUL, "extirpated": 0.06, "absent": ABSENT,
}
REGIONS = ("region", "landscape")
"""Regions of whole states, and landscapes that take in parts of states."""
LISTED = ("state", "province", "territory", "district")
"""The kinds of places for which ranges are listed."""
WATERS = ("lake", "drainage")
"""The kinds of places that lie across states, of which ranges may be told of the waters themselves."""
PART = 0.5
"""What presence in a part of a place counts for the whole of it (common practice, no source)."""
WELL_LISTED = 5
CROSS_COMMON: dict[str, float] = {"common": 0.15, "uncommon": 0.06, "rare": 0.015}
CROSS_UNKNOWN = 0.03
CROSS_STOCKED = 0.5
"""Weight of a common cross that people raise and stock, so that it swims without its parents."""


def cross_weight(taxon: Taxon) -> float:
    """How common a cross is where its parents live, by what the base holds of its occurrence and origin."""
    if taxon.occurrence == "common" and taxon.origin == "stocked":
        return CROSS_STOCKED
    return CROSS_COMMON.get(taxon.occurrence, CROSS_UNKNOWN)


def expand_places(kb: KnowledgeBase, places: Sequence[str]) -> frozenset[str]:
    """The places with what they cover; a place below the listed kind adds what it lies within."""
    out: set[str] = set()
    for key in places:
        place = kb.place(key)
        if place is None:
            continue
        out.add(key)
        out.update(covered(kb, place))
        if place.kind not in ("state", "province", "country", *REGIONS):
            out.update(place.within)
    return frozenset(out)


def narrowest(kb: KnowledgeBase, places: Sequence[str]) -> tuple[str, ...]:
    """The places without those that take in another one told beside them ("the Colorado River, Utah")."""
    return tuple(x for x in places if (p := kb.place(x)) is None or not set(covered(kb, p)) & set(places))


def waters_of(kb: KnowledgeBase, places: Iterable[str]) -> frozenset[str]:
    """The lakes and drainages among some places, without those that another one of them lies within."""
    found = [p for x in places if (p := kb.place(x)) is not None and p.kind in WATERS]
    return frozenset(p.id for p in found) - {w for p in found for w in p.within}


def covered(kb: KnowledgeBase, place: Place) -> tuple[str, ...]:
    """The places that a place covers, and what these cover: the states of the countries of a continent."""
    inside = [p for key in place.covers if (p := kb.place(key)) is not None]
    return unique([*place.covers, *(key for p in inside for key in p.covers)])


def around(kb: KnowledgeBase, places: Iterable[str]) -> frozenset[str]:
    """The states and provinces of the regions that the places lie in; of the country where they lie in no region."""
    found = [p for x in places if (p := kb.place(x)) is not None and p.kind in LISTED]
    wider = [w for p in found for x in p.within if (w := kb.place(x)) is not None]
    regions = [w for w in wider if w.kind in REGIONS] or wider
    return frozenset(c for w in regions for c in (w.id, *w.covers))


def is_real(kb: KnowledgeBase, places: Iterable[str]) -> bool:
    """True when one of the places is not an invented one, so that ranges may be held against it."""
    return any((p := kb.place(x)) is not None and not p.invented for x in places)


def breadth(kb: KnowledgeBase, taxon: str) -> float:
    """A mild measure of how widely a taxon occurs: the square root of the number of places listed for it."""
    listed = {r.place for key in kb.lineage(taxon)[:2] for r in kb.ranges(key)
              if r.status in ("native", "introduced", "stocked", "reintroduced")}
    return math.sqrt(len(listed) + 6) / 5.0


def listed_ranges(kb: KnowledgeBase, taxon: str) -> list[tuple[str, float]]:
    """The places listed for a taxon with the weight of what is said of them; absence from a part is left out."""
    return [(r.place, STATUS.get(r.status, DOUBTFUL) * (PART if r.area else 1.0)) for r in _rows(kb, taxon)
            if not (r.area and r.status in ("absent", "extirpated"))]


def unlisted(kb: KnowledgeBase, taxon: str) -> float:
    """The weight of a taxon at a place that is not listed for it."""
    return UNLISTED_KNOWN if len(_rows(kb, taxon)) >= WELL_LISTED else UNLISTED_UNKNOWN


def _rows(kb: KnowledgeBase, taxon: str) -> list[Range]:
    return [r for key in kb.lineage(taxon) if kb.taxon(key).is_species for r in kb.ranges(key)]
