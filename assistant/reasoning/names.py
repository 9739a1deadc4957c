"""Which fishes a name stands for, by what kind of name it is and by the place (layer 3).

An accepted name wins over loose uses of the same word; a regional name is settled by the place when one is known;
what stays open keeps all its readings, for the asker to choose.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import LIVING
from assistant.reasoning.place_prior import covered
from assistant.text import key, unique

Entry = tuple[str, str, str]
MOSTLY = 0.6
"""Share of the fishes called so above which a word means its group wherever one is."""


NOWHERE: Mapping[str, int] = MappingProxyType({})
UNDERSTOOD = ("misspelling", "plural-name")
"""Kinds of names that are read and not spoken."""


class Meaning(NamedTuple):
    """``kind`` taxon, hybrid or group; the ids it may stand for, likeliest first; ``ambiguous`` when one must ask."""

    kind: str
    ids: tuple[str, ...]
    ambiguous: bool = False


def meaning_of(
    kb: KnowledgeBase, entries: Sequence[Entry], phrase: str, places: Sequence[str], loose: bool = False
) -> Meaning:
    """What a phrase stands for. ``loose`` marks an accepted name that is widely used of other fishes, too."""
    taxa = list(dict.fromkeys(pair for e in entries if e[0] == "taxon" for pair in _today(kb, e[1], e[2])))
    higher = unique(t for t, _ in taxa if not kb.taxon(t).is_species)
    species = [(t, how) for t, how in taxa if kb.taxon(t).is_species]
    groups = unique(e[1] for e in entries if e[0] == "group")
    proper = [g for g in groups if (found := kb.find("group", g)) and phrase in (key(found.label), key(found.plural))]
    several = [g for g in proper if (x := kb.find("group", g)) and phrase == key(x.plural) != key(x.label)]
    if proper and (" " in phrase or several) and not any(how == "accepted" for _, how in species):
        return _group(kb, tuple(several or proper[:1]), species)
    named = any(how in ("accepted", "vernacular", *UNDERSTOOD) for _, how in species)
    if higher and not named:
        only = kb.members(higher[0])
        return Meaning("taxon", only) if len(only) == 1 else Meaning("group", higher[:1])
    accepted = unique(t for t, how in species if how == "accepted")
    if not accepted and any(how in ("scientific", "synonym") for _, how in species):
        return _of(kb, unique(t for t, _ in species))
    if len(accepted) == 1 and not loose:
        return _of(kb, accepted)
    own = unique(t for t, how in species if how == "vernacular")
    if groups and not (len(own) == 1 and " " in phrase) and _covers(kb, groups, species) > MOSTLY:
        return _group(kb, groups, species)
    if places:
        here = _settled(kb, species, phrase, places)
        wanted = spread(kb, places)
        proper_here = [t for t in (*accepted, *own) if key(kb.taxon(t).label).startswith(phrase)
                       and lives_in(kb, t, wanted) is True]
        here = unique((*proper_here, *here)) if proper_here and " " in phrase else here
        called = {t: len(wanted & spread(kb, _regions(kb, t, phrase))) for t in here}
        own_here = any(called.values()) or not proper
        if here and own_here and (not groups or len(here) < len(unique(t for t, _ in species))):
            return _of(kb, here, phrase, called)
    usual = accepted or _usual(kb, species, phrase)
    if groups and not (len(usual) == 1 and not loose) and _covers(kb, groups, species) > 0.5:
        return _group(kb, groups, species)
    if len(usual) == 1 and not loose:
        return _of(kb, usual)
    return _of(kb, unique((*usual, *(t for t, _ in species))), phrase)


def _today(kb: KnowledgeBase, taxon: str, how: str) -> tuple[tuple[str, str], ...]:
    """The fish a name leads to; those that a retired one became, none of them by right where they are several."""
    became = kb.taxon(taxon).replaced_by if kb.taxon(taxon).deprecated else ()
    if not became:
        return ((taxon, how),)
    way = "ambiguous" if len(became) > 1 else how
    return tuple(pair for t in became for pair in _today(kb, t, way))


def in_use(kb: KnowledgeBase, taxon: str) -> tuple[str, ...]:
    """A taxon itself, or those that a retired one became."""
    return unique(t for t, _ in _today(kb, taxon, ""))


def _covers(kb: KnowledgeBase, groups: Sequence[str], species: Sequence[tuple[str, str]]) -> float:
    """The share of the fishes called so that belong to one of the groups."""
    called = {t for t, _ in species if not kb.taxon(t).is_hybrid}
    members = {m for g in groups for m in kb.members(g)}
    return len(called & members) / len(called) if called else 1.0


def _of(kb: KnowledgeBase, ids: Sequence[str], phrase: str = "", called: Mapping[str, int] = NOWHERE) -> Meaning:
    wide = _widest_first(kb, ids, phrase, called)
    kind = "hybrid" if wide and all(kb.taxon(i).is_hybrid for i in wide) else "taxon"
    return Meaning(kind, wide, len(wide) > 1)


def _widest_first(kb: KnowledgeBase, ids: Sequence[str], phrase: str, called: Mapping[str, int]) -> tuple[str, ...]:
    """The ids: fishes whose own English name ends in the phrase, then those that are called so in more of the places
    spoken of (``called``), then those of more places; crosses last."""
    spread = {i: len({r.place for r in kb.ranges(i) if r.status in LIVING}) for i in ids}
    return tuple(
        sorted(
            ids,
            key=lambda i: (
                kb.taxon(i).is_hybrid,
                not (phrase and key(kb.taxon(i).label).endswith(phrase)),
                -called.get(i, 0),
                -spread[i],
                i,
            ),
        )
    )


def _group(kb: KnowledgeBase, groups: tuple[str, ...], species: Sequence[tuple[str, str]]) -> Meaning:
    best = min(groups, key=lambda g: (len(kb.members(g)), g))
    found = kb.find("group", best)
    members = set(kb.members(best))
    other = any(t not in members and not kb.taxon(t).is_hybrid for t, _ in species)
    if len(members) == 1 and not other:
        return Meaning("taxon", tuple(members))
    if found is not None and len(found.members) == 1:
        return Meaning("group", found.members, other)
    return Meaning("group", (best,), other)


def _usual(kb: KnowledgeBase, species: Sequence[tuple[str, str]], phrase: str) -> tuple[str, ...]:
    """Fishes for which the phrase is a plain vernacular name, those called so everywhere first."""
    plain = unique(t for t, how in species if how in ("vernacular", *UNDERSTOOD, "short"))
    everywhere = tuple(t for t in plain if not _regions(kb, t, phrase))
    return everywhere or plain


def _settled(
    kb: KnowledgeBase, species: Sequence[tuple[str, str]], phrase: str, places: Sequence[str]
) -> tuple[str, ...]:
    """The fishes that the phrase means at the places: by the regions of the name, then by where the fishes live."""
    wanted = spread(kb, places)
    ids = unique(t for t, _ in species)
    wide = any((x := kb.place(p)) is not None and x.kind == "country" for p in places)
    spoken_at = frozenset(places) if wide else wanted
    regional = tuple(t for t in ids if spoken_at & spread(kb, _regions(kb, t, phrase)))
    regional = regional or unique(
        t for t, how in species if how != "ambiguous" and wanted & _covering(kb, _regions(kb, t, phrase)))
    living = tuple(t for t in regional or ids if lives_in(kb, t, wanted) is not False) or regional or ids
    plain = tuple(t for t in living if any(x == t and how != "ambiguous" for x, how in species))
    everywhere = tuple(t for t in living if not _regions(kb, t, phrase))
    if regional:
        return plain or living
    return plain or everywhere or living


def _covering(kb: KnowledgeBase, places: Sequence[str]) -> frozenset[str]:
    """The places that lie anywhere within some wide ones: the states of the countries of a continent."""
    found = [p for x in places if (p := kb.place(x)) is not None]
    return frozenset(x for p in found for x in covered(kb, p))


def _regions(kb: KnowledgeBase, taxon: str, phrase: str) -> tuple[str, ...]:
    regions: list[str] = []
    for name in kb.names(taxon):
        if key(name.text) == phrase:
            if not name.regions and not name.region_text:
                return ()
            regions.extend(name.regions)
    return unique(regions)


def spread(kb: KnowledgeBase, places: Sequence[str]) -> frozenset[str]:
    """Places with the places they cover, and a water's own areas."""
    out: set[str] = set()
    for place_id in places:
        place = kb.place(place_id)
        if place is None:
            continue
        out.add(place_id)
        out.update(place.covers)
        if place.kind in ("lake", "drainage", "district") and not place.covers:
            out.update(place.within)
    return frozenset(out)


def lives_in(kb: KnowledgeBase, taxon: str, places: frozenset[str]) -> bool | None:
    """True when listed as present at one of the places, False when as absent or not at all, None when unknown."""
    found = kb.taxon(taxon)
    rows = [
        r
        for t in (found.parents or (taxon,))
        for key_ in kb.lineage(t)
        if kb.taxon(key_).is_species
        for r in kb.ranges(key_)
    ]
    if not rows:
        return None
    here = [r.status for r in rows if r.place in places]
    if any(s in LIVING for s in here):
        return True
    return False if here or len(rows) >= 5 else None
