"""Which fishes an information answer is about; a loose name is taken for its likeliest fish and so told (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Block
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.subjects import groups, named, subjects, unclear
from assistant.dialogue.telling import spread
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import living_in
from assistant.text import key, singular


def asked_about(turn: Turn, carried: bool = True) -> tuple[tuple[str, ...], tuple[Block, ...]]:
    """The ids asked about, and a remark where one loose name ("perch") was taken for one fish."""
    own = subjects(turn, carried=False) or (carried_on(turn) if carried else ())
    loose = unclear(turn)
    if named(turn) or groups(turn.reading) or len(loose) != 1:
        return own, ()
    best = likeliest(turn.kb, loose[0], turn.held.places)
    remark = Block("doubt", say.taken_as(loose[0].words, label(turn.kb, best)), claim=False)
    return (best,), (remark,)


def carried_on(turn: Turn) -> tuple[str, ...]:
    """The fishes held: the kinds alone where kinds are held beside the group that they were asked for by."""
    kinds = tuple(t for t in turn.held.taxa if (x := turn.kb.find("taxon", t)) is not None and x.is_species)
    return kinds or turn.held.taxa


def told_taxa(turn: Turn, asked: tuple[str, ...]) -> tuple[str, ...]:
    """The taxa an answer names: those held, group and all, where the line names none; else what was asked for."""
    if asked and asked == carried_on(turn) and not subjects(turn, carried=False):
        return turn.held.taxa
    return spread(turn.kb, asked)


def likeliest(kb: KnowledgeBase, mention: Mention, places: tuple[str, ...]) -> str:
    """Of the fishes that a loose name stands for: one of the place held, one that bears it in its accepted name."""
    word = singular(key(mention.words).split()[-1]) if key(mention.words) else ""
    here = living_in(kb, mention.ids, places)

    def rank(taxon: str) -> tuple[bool, bool]:
        return taxon not in here, word not in key(label(kb, taxon)).split()

    return min(mention.ids, key=rank)


def kinds_name(kb: KnowledgeBase, key_: str, count: int = 2) -> str:
    """A group or higher taxon as anglers call it, singular for one ("catfish", "catfishes"); the label of a species."""
    group = kb.find("group", key_)
    if group is None and (taxon := kb.find("taxon", key_)) is not None and not taxon.is_species:
        group = next((g for g in kb.all("group") if g.members == (key_,)), None)
    if group is None:
        return label(kb, key_)
    name = str(group.label if count == 1 else group.plural or group.label)
    return say.of_family(name, count) if name.endswith("family") else name
