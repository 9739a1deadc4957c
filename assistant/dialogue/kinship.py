"""Whether a fish is of the kinds that a word stands for, and which family and genus it belongs to (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.reader.reading import Mention, Reading
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import info, speak
from assistant.dialogue.wording import names as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.text import join, key, singular, unique

MOST_GENERA, MOST_NAMED, MOST_KIN = 4, 6, 3
FAMILY = "family"


def overlapping(kb: KnowledgeBase, reading: Reading) -> bool:
    """True where a line holds two different names of which one may stand for the other ("sunny", "pumpkinseed").

    A loose word that stands in the accepted name of one of its kinds alone ("pike") is taken for that kind.
    """
    told = {_single(m.words): kinds_meant(kb, m) for m in reading.of("taxon", "hybrid", "group") if m.exact and m.words}
    if len(told) != 2:
        return False
    one, two = told.values()
    return bool(one & two)


def clipped(kb: KnowledgeBase, reading: Reading) -> bool:
    """True for the first word of a fish's name set beside the last one ("is a northern the same as a pike")."""
    firsts = {_single(m.words) for m in reading.of("taxon")}
    lasts = {_single(m.words) for m in reading.of("group")}
    labels = {key(label(kb, t)) for t in reading.taxa()}
    return any(f"{a} {b}" in labels for a in firsts for b in lasts)


def _single(words: str) -> str:
    *first, last = key(words).split() or [""]
    return " ".join([*first, singular(last)])


def kinds_meant(kb: KnowledgeBase, mention: Mention) -> frozenset[str]:
    """The species a word stands for: its own, those of the group that it names, or the one kind called so in full."""
    ids = species_of(kb, mention.ids)
    word = _single(mention.words)
    bearing = [t for t in ids if word.split()[-1:] and word.split()[-1] in key(label(kb, t)).split()]
    if len(ids) > 1 and len(bearing) == 1:
        return frozenset(bearing)
    if mention.kind != "group" and len(ids) > 1:
        return frozenset(bearing)
    return frozenset(ids)


# --- family and genus -------------------------------------------------------------------------------------------


def kin(turn: Turn, asked: Sequence[str]) -> list[Block]:
    """Family and genus of what is asked about; the genus first where that is asked for."""
    kb, words = turn.kb, set(turn.reading.words)
    out: list[Block] = []
    for one in asked[:MOST_KIN]:
        some = species_of(kb, (one,))
        families, genera = above(kb, some, FAMILY), above(kb, some, "genus")
        if not families:
            continue
        ids = tuple(f"taxon:{t}" for t in (*families[:3], *genera[:3]))
        name = kinds_name(kb, one)
        family = join([family_words(kb, f) for f in families[:3]])
        latin = join([kb.taxon(g).scientific for g in genera]) if len(genera) <= MOST_GENERA else ""
        first = latin and words & {"genus", "genera"}
        many = len(some) > 1
        text = say.genus_first(name, latin, family, many) if first else say.belongs(name, family, latin, many)
        out.append(Block("point", text, statements=ids))
    if out and words & {"order", "orders"}:
        out.insert(0, Block("point", say.NO_ORDER, claim=False))
    return out


def above(kb: KnowledgeBase, taxa: Sequence[str], rank: str) -> tuple[str, ...]:
    """The taxa of a rank above some species and crosses, each once."""
    kinds = [p for t in taxa for p in (kb.taxon(t).parents or (t,))]
    return unique(x for t in kinds for x in kb.lineage(t) if kb.taxon(x).rank == rank)


def family_words(kb: KnowledgeBase, family: str) -> str:
    """A family with its scientific name in brackets."""
    return say.named_with(kb.taxon(family).label, kb.taxon(family).scientific)


def together(turn: Turn, asked: Sequence[str]) -> list[Block]:
    """Whether two groups or fishes belong to one family ("are bass sunfish")."""
    kb = turn.kb
    taxa = [species_of(kb, (a,)) for a in asked[:2]]
    if not all(taxa):
        return []
    families = [above(kb, some, FAMILY) for some in taxa]
    a, b = (label(kb, x) for x in asked[:2])
    ids = tuple(f"taxon:{f}" for f in unique(f for fs in families for f in fs)[:4])
    if families[0] == families[1] and len(families[0]) == 1:
        text = info.both_in_family(info.names_with([a, b]), family_words(kb, families[0][0]))
        return [Block("point", text, statements=ids)]
    if set(families[0]) & set(families[1]) or not families[0] or not families[1]:
        return []
    first, second = (join([kb.taxon(f).label for f in fs[:2]]) for fs in families)
    return [Block("point", info.apart_in_family(a, b, first, second), statements=ids)]


# --- is one of them the other -----------------------------------------------------------------------------------


def is_a(kb: KnowledgeBase, own: str, loose: Mention, many: Sequence[str]) -> Block | None:
    """Whether a fish is of the kinds that a loose word names: by its group, else by the family named so."""
    families = above(kb, (own,), FAMILY)
    if not families:
        return None
    word, family = _single(loose.words), family_words(kb, families[0])
    ids = (f"taxon:{own}", f"taxon:{families[0]}")
    fish = label(kb, own)
    if loose.kind == "group" and len(loose.ids) == 1:
        kinds = kinds_name(kb, loose.ids[0])
        if own in kb.members(loose.ids[0]):
            return Block("point", say.is_one(fish, kinds, family), statements=ids)
        used = own in many or word in key(fish).split()
        return Block("point", say.is_none(fish, family, kinds, loose.words, used), statements=ids)
    real = [t.id for t in kb.all("taxon") if t.rank == FAMILY and word in _family_names(t.label)]
    if not real:
        return None
    if families[0] in real:
        return Block("point", say.in_family(fish, family), statements=ids)
    return Block("point", say.is_none(fish, family, kb.taxon(real[0]).label, loose.words, own in many), statements=ids)


def _family_names(text: str) -> frozenset[str]:
    """The words by which a family is called ("trout and salmon family": trout, salmon)."""
    return frozenset(_single(part) for part in text.removesuffix(f" {FAMILY}").split(" and "))


def accepted_of(kb: KnowledgeBase, mention: Mention, ids: Sequence[str]) -> tuple[str, ...]:
    """Of the fishes that bear a name, the one whose accepted name it is; all of them where it is none's."""
    own = tuple(t for t in ids if key(label(kb, t)) == _single(mention.words))
    if not own and len(kinds := kinds_meant(kb, mention)) == 1:
        own = tuple(kinds)
    return own or tuple(ids)


def both_loose(
    kb: KnowledgeBase, first: Mention, one: Sequence[str], second: Mention, two: Sequence[str]
) -> Block | None:
    """What two loose names share."""
    shared = sorted({*one} & {*two}, key=lambda t: (-len(kb.ranges(t)), t))
    if not shared:
        return None
    rest = [[t for t in some if t not in shared] for some in (one, two)]
    told = [speak.fishes(kb, some[:MOST_NAMED]) if 0 < len(some) <= MOST_NAMED else "" for some in rest]
    text = say.both_loose(first.words, second.words, speak.fishes(kb, shared[:MOST_NAMED]), told[0], told[1])
    return Block("point", text, statements=tuple(f"taxon:{t}" for t in shared[:MOST_NAMED]))
