"""The fishes of a place of which a list by kind of water leaves out those with no word on that water (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.life_asked import WATERS
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.telling import place_names
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording import lists
from assistant.dialogue.wording.speak import fish as label
from assistant.reasoning.living import living_in, status_in
from assistant.reasoning.place_prior import expand_places, narrowest
from assistant.text import unique

MOST_OTHERS = 24
"""More fishes than this are not named beside a list."""
ENDS = frozenset({"doubt", "next", "help"})
"""Kinds of blocks that close an answer."""


def with_others_there(
    turn: Turn, answer: Answer, pool: Sequence[str], places: Sequence[str], seen: Sequence[Seen]
) -> Answer:
    """A list by kind of water with the other fishes of the group that live in the place, said to be untold of it."""
    kb = turn.kb
    by_water = bool(seen) and not seen[0].words and seen[0].observation.character == WATERS
    if not by_water:
        return answer
    text = " ".join(b.text for b in answer.blocks)
    others = [t for t in living_in(kb, pool, places)
              if not kb.taxon(t).is_hybrid and not re.search(rf"\b{re.escape(label(kb, t))}\b", text)]
    if not 0 < len(others) <= MOST_OTHERS:
        return answer
    wanted = expand_places(kb, narrowest(kb, places))
    ids = tuple(f"range:{row.id}" for t in others if (row := status_in(kb, t, wanted)) is not None)
    names = say.names_with([label(kb, t) for t in others])
    block = Block("point", lists.there_untold(place_names(kb, places), names), statements=ids)
    at = next((i for i, b in enumerate(answer.blocks) if i and b.kind in ENDS), len(answer.blocks))
    kinds = [t for t in answer.taxa if kb.find("taxon", t) is not None and kb.taxon(t).is_species]
    wider = [t for t in answer.taxa if t not in kinds]
    return answer._replace(
        blocks=(*answer.blocks[:at], block, *answer.blocks[at:]), taxa=unique((*kinds, *others, *wider)))
