"""What an answer is about besides the fishes it names: the genus or family of a group, the parents of a cross.

Layer 4.
"""

from __future__ import annotations

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Reading
from assistant.dialogue.subjects import MOST, groups, species_of
from assistant.model.knowledge import KnowledgeBase
from assistant.text import unique

TAXON = "taxon:"


def wider(kb: KnowledgeBase, reading: Reading, answer: Answer, held: Held) -> tuple[str, ...]:
    """Ids of taxa that the line or the answer speaks of by way of a group, a loose name or a cross.

    Those of the turn before stand while a line names no fish and its answer is about the same ones.
    """
    spoken_of = [t for t in held.wider if kb.find("taxon", t) is not None]
    genera = {m for t in spoken_of if kb.taxon(t).rank == "genus" for m in kb.members(t)}
    before_them = {*held.taxa, *(genera if answer.intent == held.intent else ())}
    same = bool(answer.taxa) and set(answer.taxa) <= before_them and not reading.of("taxon", "hybrid", "group")
    before = [t for t in spoken_of if same and t not in answer.taxa]
    of_groups = [t for m in groups(reading) for i in m.ids[:1] for t in _of_group(kb, i)]
    several = [m.ids for m in reading.of("taxon", "hybrid") if len(m.ids) > 1]
    loose = [t for ids in several if (t := common_taxon(kb, *ids)) is not None and kb.taxon(t).rank == "genus"]
    cited = [s.removeprefix(TAXON) for b in answer.blocks for s in b.statements if s.startswith(TAXON)]
    found = [kb.taxon(t) for t in unique([*answer.taxa, *cited]) if kb.find("taxon", t) is not None]
    higher = [t.id for t in found if not t.is_species]
    crosses = [t for t in found if t.is_hybrid]
    open_still = [t for ids in several for t in ids[:MOST]]
    parents = [p for t in crosses for p in t.parents]
    typed = reading.taxa() if answer.intent in PLAYED else ()
    few = [m for t in answer.taxa if (x := kb.find("taxon", t)) is not None and x.rank == "genus"
           for m in kb.members(t) if len(kb.members(t)) <= MOST]
    whole = [kb.lineage(t.id)[1] for t in found if t.rank == SUBSPECIES and len(kb.lineage(t.id)) > 1]
    named = [t for t in cited if kb.find("taxon", t) is not None] if answer.intent == "names" else []
    return unique([*named[:MOST], *of_groups, *loose, *open_still, *higher, *whole, *(t.id for t in crosses), *parents,
                   *typed, *few, *_whole_genera(kb, answer), *_formula(kb, answer), *before])


SUBSPECIES = "subspecies"


PLAYED = ("quiz", "key", "rules")
"""Intents in which a fish named by the asker (as an answer, or as kept) need not be one that the answer names."""


def _whole_genera(kb: KnowledgeBase, answer: Answer) -> tuple[str, ...]:
    """The genera of several kinds that an answer names all the kinds of."""
    told = {t for t in answer.taxa if (x := kb.find("taxon", t)) is not None and x.is_species and not x.is_hybrid}
    genera = unique(kb.lineage(t)[1] for t in answer.taxa if t in told and len(kb.lineage(t)) > 1)
    alone = len(genera) == 1 and len(told) > 1 and answer.intent in NAMING
    return tuple(g for g in genera if alone or (len(kb.members(g)) > 1 and set(kb.members(g)) <= told))


NAMING = ("identify", "next-question", "why", "undo")
"""Intents of naming a fish, in which several kinds of one genus mean that the genus is what is settled."""


def _formula(kb: KnowledgeBase, answer: Answer) -> tuple[str, ...]:
    """The hybrid formula of two fishes whose cross was asked about and is not held."""
    kinds = [t for i in answer.taxa if (t := kb.find("taxon", i)) is not None and t.is_species]
    if answer.intent != "hybrids" or len(kinds) != 2 or any(t.is_hybrid for t in kinds):
        return ()
    return (" x ".join(sorted(t.scientific for t in kinds)),)


def _of_group(kb: KnowledgeBase, group: str) -> tuple[str, ...]:
    """The lowest taxon that holds a group, its family, and its fishes where they are few."""
    common = common_taxon(kb, group)
    few = [t for t in species_of(kb, (group,)) if not kb.taxon(t).is_hybrid]
    return unique([*((common, kb.lineage(common)[-1]) if common else ()), *(few if len(few) <= MOST else ())])


def common_taxon(kb: KnowledgeBase, *ids: str) -> str | None:
    """The lowest genus or family that holds all fishes of some groups or taxa; None where there is none."""
    lines = [kb.lineage(t)[1:] for t in species_of(kb, ids) if not kb.taxon(t).is_hybrid]
    if not lines:
        return None
    shared = set(lines[0]).intersection(*lines)
    return next((t for t in lines[0] if t in shared and not kb.taxon(t).is_species), None)
