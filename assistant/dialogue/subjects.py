"""Which fishes a line is about: those it names, else those the conversation holds (layer 4)."""

from __future__ import annotations

import re
from itertools import pairwise

from assistant.dialogue.reader.reading import Mention, Reading
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase

MOST = 8
"""No more than this many fishes are carried into an answer that takes them one by one."""


def named(turn: Turn) -> tuple[str, ...]:
    """Ids of the taxa (species, crosses, genera, families) that the line itself names, each once, in order."""
    return turn.reading.taxa()


def groups(reading: Reading) -> tuple[Mention, ...]:
    """The group words of the line ("sunfishes", "bass"); their ids are taxa above the species or ids of groups."""
    return reading.of("group")


_JOINING = re.compile(r"[\s,]*(?:(?:and|n|or|nor|plus|also|with)\b|,|&|\+)\s*"
                      r"(?:(?:the|any|all|what|which|of|your|also)\s+)*", re.IGNORECASE)


def side_by_side(reading: Reading) -> tuple[Mention, ...]:
    """The kinds of fishes that a line names with no more than "and", "or" or a comma between, a group among them."""
    told = sorted(reading.of("group", "taxon", "hybrid"), key=lambda m: m.start)
    pairs = [(a, b) for a, b in pairwise(told) if _JOINING.fullmatch(reading.text[a.end:b.start])]
    found = tuple(dict.fromkeys(m for pair in pairs for m in pair if m.ids))
    return found if any(m.kind == "group" for m in found) else ()


def unclear(turn: Turn) -> tuple[Mention, ...]:
    """The names of the line that stand for several fishes."""
    return tuple(m for m in turn.reading.of("taxon", "hybrid") if len(m.ids) > 1)


def subjects(turn: Turn, carried: bool = True) -> tuple[str, ...]:
    """The fishes the turn is about: named ones, else the groups named, else (``carried``) held ones.

    Ids may be of species, crosses, genera, families or groups (which are not in ``kb.taxon``: see ``kb.members``).
    """
    own = named(turn)
    if own:
        return (*own, *_beside(turn, own))
    wider = tuple(dict.fromkeys(m.ids[0] for m in groups(turn.reading) if m.ids))
    if wider:
        return wider
    several = tuple(dict.fromkeys(i for m in unclear(turn) for i in m.ids))
    if several:
        return several
    return turn.held.taxa if carried else ()


def _beside(turn: Turn, own: tuple[str, ...]) -> tuple[str, ...]:
    """The groups named beside fishes of which none belongs to them ("do pike spawn before walleyes")."""
    kb = turn.kb
    if not turn.cues & {"versus", "names-next", "compare-with", "comparing"}:
        return ()
    wider = dict.fromkeys(m.ids[0] for m in groups(turn.reading) if m.ids)
    return tuple(g for g in wider if g not in own and not set(own) & set(species_of(kb, (g,))))


def species_of(kb: KnowledgeBase, ids: tuple[str, ...]) -> tuple[str, ...]:
    """The species and crosses behind some ids, groups and higher taxa spread out."""
    out: dict[str, None] = {}
    for key in ids:
        found = kb.find("taxon", key)
        if found is not None and found.is_species:
            out.setdefault(key)
        else:
            for member in kb.members(key):
                out.setdefault(member)
    return tuple(out)


def of_held_kind(kb: KnowledgeBase, reading: Reading, held: tuple[str, ...]) -> bool:
    """True where the line names kinds of the very group that the talk is of ("bass", then "might be a smallmouth")."""
    own = reading.taxa()
    first = kb.find("taxon", held[0]) if held else None
    return bool(own) and first is not None and not first.is_species and set(own) <= set(species_of(kb, held[:1]))


def chief(kb: KnowledgeBase, held: tuple[str, ...], new: tuple[str, ...]) -> tuple[str, ...]:
    """The first species of those spoken of before where a group leads them and no fish named now is one of it."""
    first = kb.find("taxon", held[0]) if held else None
    inside = species_of(kb, held[:1])
    if first is None or first.is_species or set(new) & {*inside, *held}:
        return ()
    return tuple(t for t in held if t in inside)[:1]
