"""Why fishes named for a lesson are left out of it: the place that it is for does not hold them (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.wording import classroom as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import living_in, status_in
from assistant.reasoning.place_prior import expand_places
from assistant.reasoning.selection import find_place, find_taxon, species_below


def not_there(kb: KnowledgeBase, names: Sequence[str], place: str) -> tuple[str, ...]:
    """What is listed of each fish named none of whose kinds lives in a place. Raises UsageError for unknown names."""
    where = find_place(kb, place)
    held, wanted = kb.place(where), expand_places(kb, (where,))
    label = held.label if held is not None else place
    found = dict.fromkeys(find_taxon(kb, name) for name in names)
    out = []
    for taxon in found:
        kinds = species_below(kb, taxon)
        if kinds and not living_in(kb, kinds, (where,)):
            row = status_in(kb, kinds[0], wanted)
            told = (row.status, row.basis) if row is not None else ("", "")
            name = speak.fish(kb, taxon)
            out.append(say.not_there(name, label, *told) if len(kinds) == 1 else say.none_there(name, label))
    return tuple(out)
