"""Which fishes a lesson is about: names, groups and places turned into species (layer 3)."""

from __future__ import annotations

import difflib
from collections.abc import Sequence

from assistant.errors import UsageError
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import living_in
from assistant.text import key, singular

_ORDER = ("accepted", "scientific", "vernacular", "label", "plural", "code", "nicknames", "words", "synonym")


def species_below(kb: KnowledgeBase, wanted: str) -> tuple[str, ...]:
    """The species (subspecies where held) of a taxon, or of a group; crosses only when named themselves."""
    found = kb.find("taxon", wanted)
    if found is None:
        group = kb.find("group", wanted)
        members = group.members if group is not None else ()
        return tuple(sorted({s for m in members for s in species_below(kb, m)}))
    if found.is_hybrid:
        return (wanted,)
    species = set(kb.species)
    out: set[str] = set()
    stack = [wanted]
    while stack:
        current = stack.pop()
        if current in species and not kb.taxon(current).is_hybrid:
            out.add(current)
        stack += kb.children.get(current, ())
    return tuple(sorted(out))


def find_taxon(kb: KnowledgeBase, name: str) -> str:
    """The id of the taxon or group with this name. Raises UsageError for an unknown or ambiguous one."""
    if kb.find("taxon", name) is not None or kb.find("group", name) is not None:
        return name
    hits = _hits(kb, name, ("taxon", "group"))
    if len(hits) == 1:
        return hits[0]
    if hits:
        labels = ", ".join(sorted(_label(kb, h) for h in hits)[:6])
        raise UsageError(f"'{name}' may be several fishes: {labels}", "name one of them")
    near = _near(kb, key(name))
    hint = f"did you mean {' or '.join(near)}?" if near else "use an English or a scientific name that the base holds"
    raise UsageError(f"the base has no fish called '{name}'", hint)


def _near(kb: KnowledgeBase, name: str) -> list[str]:
    """Up to three names like this one, or else the shortest that have a word like it."""
    names = _names(kb)
    whole = difflib.get_close_matches(name, names, n=3, cutoff=0.7)
    if whole:
        return whole
    words = difflib.get_close_matches(name, {w for n in names for w in n.split()}, n=1, cutoff=0.75)
    return sorted((n for n in set(names) if set(words) & set(n.split())), key=lambda n: (len(n), n))[:3]


def find_place(kb: KnowledgeBase, name: str) -> str:
    """The id of the place with this name or code. Raises UsageError for an unknown one."""
    if kb.place(name.lower()) is not None:
        return name.lower()
    hits = _hits(kb, name, ("place",))
    if len(hits) == 1:
        return hits[0]
    raise UsageError(f"the base has no place called '{name}'", "use a state, a province or its code, such as US-OH")


def _hits(kb: KnowledgeBase, name: str, kinds: Sequence[str]) -> tuple[str, ...]:
    folded = key(name)
    words = folded.split()
    tries = [folded, *([" ".join([*words[:-1], singular(words[-1])])] if words else [])]
    for phrase in tries:
        found = [(how, thing) for kind, thing, how in kb.spoken(phrase) if kind in kinds]
        for way in _ORDER:
            best = tuple(dict.fromkeys(thing for how, thing in found if how == way))
            if best:
                return _narrow(kb, best)
        if found:
            return tuple(dict.fromkeys(thing for _, thing in found))
    return ()


def _narrow(kb: KnowledgeBase, hits: tuple[str, ...]) -> tuple[str, ...]:
    """One hit where all stand for the same species, or where the narrowest lies within every other one."""
    if len(hits) < 2 or any(kb.place(h) is not None for h in hits):
        return hits
    spread = sorted((len(found), hit, found) for hit in hits if (found := frozenset(species_below(kb, hit))))
    if spread and all(spread[0][2] <= wider for _, _, wider in spread):
        return (spread[0][1],)
    return hits


def _label(kb: KnowledgeBase, found: str) -> str:
    record = kb.find("taxon", found) or kb.find("group", found)
    return str(record.label) if record is not None else found


def _names(kb: KnowledgeBase) -> list[str]:
    return [key(t.label) for t in kb.all("taxon") if not t.deprecated] + [key(g.plural or g.label)
                                                                          for g in kb.all("group")]


def select(kb: KnowledgeBase, names: Sequence[str], group: str = "", place: str = "") -> tuple[str, ...]:
    """The species meant by names, a group and a place together; each once, named ones first and in their order.

    A place alone means every species met there; with names or a group it keeps those met there. Raises UsageError.
    """
    chosen: dict[str, None] = {}
    for name in [*names, *([group] if group else [])]:
        for taxon in species_below(kb, find_taxon(kb, name)):
            chosen.setdefault(taxon)
    if not place:
        return tuple(chosen)
    where = find_place(kb, place)
    everything = tuple(t for t in kb.species if not kb.taxon(t).is_hybrid)
    wanted = tuple(chosen) if chosen else everything
    found = living_in(kb, wanted, (where,))
    if not found:
        raise UsageError("the base knows none of these fishes from that place",
                         "leave the place out, or name other fishes")
    return found
