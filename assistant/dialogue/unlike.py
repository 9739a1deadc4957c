"""Whether a mark that was told speaks plainly against a fish, whatever it is called (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.reader.reading import Seen
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ADULT
from assistant.reasoning.evidence import below
from assistant.reasoning.observer import taxon_distribution

NONE = 0.05
"""Share of the fish of a kind up to which a mark is none of theirs."""


def unlike(kb: KnowledgeBase, taxa: Sequence[str], seen: Seen) -> bool:
    """True for a mark that no fish of these shows, as far as the base tells of every one.

    A mark told in broad words ("stripes") is not the one that only breeding fish wear.
    """
    mark = seen.observation
    known = [t for t in taxa if kb.find("taxon", t) is not None]
    if seen.retract or not mark.seen or not mark.states or not known:
        return False
    shown = {leaf for s in mark.states for leaf in below(kb, s)}
    if any({leaf for s in told.states for leaf in below(kb, s)} & shown
           for t in known for told in kb.statements_on(t, mark.character) if not (told.breeding and len(shown) > 1)):
        return False
    found = [taxon_distribution(kb, t, mark.character, ADULT) for t in known]
    return all(d is not None and d.share(shown) <= NONE for d in found)
