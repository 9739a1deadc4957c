"""Which fishes are called so: all that bear the name typed, those of the place asked about or not (layer 4)."""

from __future__ import annotations

from assistant.dialogue.name_languages import singular_key
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Name
from assistant.model.spelling import distance
from assistant.reasoning.names import in_use
from assistant.text import fold, key, unique

LOCAL_KINDS = ("former", "vernacular", "ambiguous")
LONG_ENOUGH, MOST_SLIPS = 6, 2
"""A word of so many letters may have so many slips and still be taken for a local name."""


def names_like(kb: KnowledgeBase, taxon: str, words: str) -> list[Name]:
    """The name records of a taxon that are written as the words are, plural or joined or not; those
    written so to the letter first."""
    wanted = {key(words), singular_key(words)}
    first = key(words)[:1]
    squeezed = {w.replace(" ", "") for w in wanted}
    near = [n for n in kb.names(taxon) if fold(n.text[:1]) == first]
    found = [n for n in near if key(n.text) in wanted or singular_key(n.text).replace(" ", "") in squeezed]
    return sorted(found, key=lambda n: key(n.text) not in wanted) or _slips_of(kb, taxon, words)


def _slips_of(kb: KnowledgeBase, taxon: str, typed: str) -> list[Name]:
    """The local name that the words are a slip of, where they are nearer to it than to the accepted name."""
    words = singular_key(typed)
    if len(words) < LONG_ENOUGH:
        return []
    own = distance(words, key(kb.taxon(taxon).label), MOST_SLIPS)
    near = [n for n in kb.names(taxon) if n.kind in LOCAL_KINDS and fold(n.text[:1]) == words[:1]]
    slips = {n: d for n in near if (d := distance(words, singular_key(n.text), MOST_SLIPS)) < own}
    return sorted(slips, key=lambda n: (slips[n], n.id))[:1]


def meant(kb: KnowledgeBase, mention: Mention) -> tuple[str, ...]:
    """The species a mention may mean: its own, for a name all that bear it; higher taxa only for lack of any."""
    folded = (key(mention.words), singular_key(mention.words))
    own = kb.find("taxon", mention.ids[0]) if len(mention.ids) == 1 else None
    entries = [e for w in folded for e in kb.spoken(w) if e[0] == "taxon"] if mention.words else []
    if own is not None and own.is_species and (
            key(own.scientific) in folded or ("taxon", own.id, "accepted") in entries):
        return mention.ids
    called = [thing for _, thing, _ in entries]
    spoken = [t for thing in called for t in in_use(kb, thing)]
    if mention.kind == "group" or not all(kb.find("taxon", i) for i in mention.ids):
        bearing = [t for t in species_of(kb, mention.ids) if names_like(kb, t, mention.words)]
        return unique([*(t for t in spoken if kb.taxon(t).is_species), *bearing])
    found = unique([*mention.ids, *spoken] if mention.kind == "taxon" else mention.ids)
    kinds = tuple(t for t in found if kb.taxon(t).is_species)
    return kinds or found


def last_meanings(turn: Turn) -> list[tuple[str, Name]]:
    """The fishes that bear the name explained in the last answer, each with its record; empty after anything else."""
    kb, last = turn.kb, turn.held.last
    if last is None or turn.held.intent != "names" or not last.blocks:
        return []
    records = [kb.record_at(s) for s in last.blocks[0].statements if s.startswith("name:")]
    told = [n for n in records if isinstance(n, Name)]
    if not told:
        return []
    borne = [t for kind, t, _ in kb.spoken(key(told[0].text)) if kind == "taxon" and kb.taxon(t).is_species]
    kin = ((t, n) for t in unique(borne) for n in names_like(kb, t, told[0].text)[:1])
    return list({**dict(kin), **{n.taxon: n for n in told}}.items())
