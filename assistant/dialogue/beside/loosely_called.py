"""Words for several fishes set beside a fish: which of them are taken, and what is said of that (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.called_so import last_meanings
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.subjects import groups, named, species_of, unclear
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.text import key, singular, unique

SET = 3
"""A word for so many fishes or more, none of them called so in full, is loose."""
PAIR = 2
"""A group of two kinds is set beside the fish named as a whole ("crappie or bluegill")."""
MOST_KIN = 4
"""So many kinds that go by one name are all set beside the fish named."""
AGAINST = frozenset({"vs", "versus", "contrast"})
"""Cues of a line that sets names against each other."""
HYBRID_WORD = frozenset({"hybrid", "hybrid-word"})
OTHERS = 4
"""Fishes named that a word might have meant instead."""


def too_loose(turn: Turn, mention: Mention) -> bool:
    """True for a name of many fishes of which none is called so in full ("goggle-eye")."""
    pool = tuple(t for t in mention.ids if t not in named(turn))
    return len(pool) >= SET and called(turn.kb, mention.words, pool) == pool and not kin_called(turn, mention)


def kin_called(turn: Turn, mention: Mention) -> list[str]:
    """All that a loose name means besides the one fish it is set against, where they are few and of its family
    ("stumpknocker v warmouth"); empty for any other.
    """
    kb, own = turn.kb, named(turn)
    pool = tuple(t for t in mention.ids if t not in own and kb.find("taxon", t) is not None and kb.taxon(t).is_species)
    if not turn.cues & AGAINST or len(own) != 1 or mention not in unclear(turn) or not 1 < len(pool) <= MOST_KIN:
        return []
    kin = {kb.lineage(t)[-1] for t in (*own, *pool) if not kb.taxon(t).is_hybrid}
    return list(pool) if len(kin) == 1 and called(kb, mention.words, pool) == pool else []


def just_explained(turn: Turn, other: Sequence[str]) -> tuple[str, ...]:
    """The fishes of a loose name just explained, to be set beside the one named now ("what is a stumpknocker", then
    "how do i tell that from a warmouth"): all of them where they are few, else those that look like it."""
    kb = turn.kb
    pool = tuple(t for t, _ in last_meanings(turn) if t not in other and not kb.taxon(t).is_hybrid)
    near = {x.other for t in other for x in kb.look_alikes(t)}
    near |= {t for t in pool for x in kb.look_alikes(t) if x.other in other}
    fit = pool if len(pool) <= MOST_KIN else tuple(t for t in pool if t in near)
    return tuple(sorted(fit, key=lambda t: (-len(kb.ranges(t)), t))[:MOST_KIN]) if len(pool) > 1 else ()


_ITEM = re.compile(r"\s*(?:,|;|/|&|\band\b|\bor\b|\bvs\b)\s*")


def clipped_in_list(turn: Turn, own: list[str]) -> list[str]:
    """The fishes of a list that are told by a part of their names alone, beside kin named in full ("channel, blue,
    flathead: one mark each", "largemouth, smallmouth, spot")."""
    kb, text = turn.kb, turn.reading.text
    kinds = [t for t in own if (x := kb.find("taxon", t)) is not None and x.is_species and not x.is_hybrid]
    taken = [(m.start, m.end) for m in turn.reading.of("taxon", "hybrid", "group", "place", "water")]
    head = re.split(r"[:.?!]", text, maxsplit=1)[0]
    if len(kinds) < 2 or "," not in head:
        return []
    last = {key(kb.taxon(t).label).split()[-1] for t in kinds}
    kin = {t for k in kinds for t in kb.members(kb.lineage(k)[-1])} - set(kinds)
    out, at = [], 0
    for item in _ITEM.split(head):
        at = text.index(item, at)
        words = key(item)
        if item and not any(a < at + len(item) and at < b for a, b in taken):
            found = unique(e[1] for w in (words, *(f"{words} {x}" for x in sorted(last))) for e in kb.spoken(w)
                           if e[0] == "taxon" and e[1] in kin)
            out += [t for t in sorted(found, key=lambda t: (-len(kb.ranges(t)), t))[:1] if t not in out]
    return out


def run_together(turn: Turn, own: list[str]) -> list[str]:
    """Fishes whose names stand before another's without a comma ("pike muskie or tiger muskie"), which read together
    are a name of the second; only in a list or where fishes are set against each other. The genus of a scientific name
    is no name of its own."""
    kb, out = turn.kb, []
    kinds = turn.reading.of("taxon", "hybrid", "group")
    if len(kinds) < 2:
        return []
    for m in kinds:
        first, _, rest = key(m.words).partition(" ")
        same = {e[1] for e in kb.spoken(rest) if e[0] == "taxon"} if rest else set()
        before = [e[1] for e in kb.spoken(first) if e[0] in ("taxon", "group")]
        if any(key(x.scientific) == first for i in before if (x := kb.find("taxon", i)) is not None):
            continue
        if len(m.ids) == 1 and m.ids[0] in same and len(same) <= PAIR and before:
            others = called(kb, first, tuple(t for t in species_of(kb, tuple(before)) if t not in own))
            near = {x.other for x in kb.look_alikes(m.ids[0])}
            kin = [t for t in others if t in near or any(x.other == m.ids[0] for x in kb.look_alikes(t))]
            out += sorted(kin, key=lambda t: (kb.taxon(t).is_hybrid, -len(kb.ranges(t)), t))[:1]
    return out


def hybrid_of(turn: Turn, mention: Mention | None, own: list[str]) -> list[str]:
    """The cross that a bare "hybrid" means beside the fish named ("hybrid or straight striper"): one of those that go
    by the word, else the one most is told of; empty for any other word, and where no parent of a cross is named.

    Without a mention the word is one that was not read as a name (a slip).
    """
    kb = turn.kb
    if not own or not HYBRID_WORD & turn.cues or any(kb.taxon(t).is_hybrid for t in own if kb.find("taxon", t)):
        return []
    if mention is None and (len(own) > 1 or not turn.cues & AGAINST):
        return []
    if mention is not None and not any(e[0] == "term" and e[1] == "hybrid" for w in (key(mention.words),
                                       singular(key(mention.words))) for e in kb.spoken(w)):
        return []
    crosses = unique(c for t in own for c in kb.crosses_of(t))
    by_word = mention.ids if mention is not None else ()
    return sorted(crosses, key=lambda c: (c not in by_word, not set(kb.taxon(c).parents) <= set(own),
                                          -len(kb.statements(c)), c))[:1]


def not_named(turn: Turn) -> tuple[Mention, ...]:
    """The kinds that a fish is said not to be ("that a crappie is not a bass")."""
    told = turn.reading.of("likeness") if "not-name" in turn.cues else ()
    return told if len(turn.reading.of("group", "taxon", "hybrid")) == len(told) == 1 else ()


def called(kb: KnowledgeBase, words: str, pool: tuple[str, ...]) -> tuple[str, ...]:
    """Of the members of a group, those whose English name holds the word typed ("pike": northern pike); else all."""
    wanted = {singular(w) for w in key(words).split()}
    named_so = tuple(t for t in pool if wanted <= {singular(w) for w in key(kb.taxon(t).label).split()})
    return named_so or pool


def listed(kb: KnowledgeBase, own: list[str], pool: tuple[str, ...], words: int) -> list[str]:
    """Of a group word, the members that look like the fish it is set beside, else its best known ones."""
    near = {x.other for t in own for x in kb.look_alikes(t)} | {
        m for m in pool for x in kb.look_alikes(m) if x.other in own
    }
    if len(own) == 1 and words == 1 and len(pool) == PAIR:
        return list(pool)
    fit = [m for m in pool if m in near]
    return (fit or sorted(pool, key=lambda t: (-len(kb.ranges(t)), t)))[: 1 if own or words > 1 else 2]


def taken_for(turn: Turn, taxa: tuple[str, ...]) -> list[Block]:
    """Which fishes a word for several was taken for, and which others it may have meant."""
    kb, out = turn.kb, []
    for mention in (*groups(turn.reading), *unclear(turn)):
        pool = [t for t in species_of(kb, mention.ids) if not kb.taxon(t).is_hybrid]
        chosen = [t for t in pool if t in taxa]
        others = [t for t in called(kb, mention.words, tuple(pool)) if t not in taxa]
        others.sort(key=lambda t: (-len(kb.ranges(t)), t))
        if chosen and others:
            text = say.taken_for(mention.words, speak.fishes(kb, chosen), speak.fishes(kb, others[:OTHERS], "or"))
            out.append(Block("help", text, claim=False))
        elif len(chosen) > 1 and kin_called(turn, mention):
            too = [t for t in named(turn) if t in mention.ids]
            text = say.goes_by(mention.words, speak.fishes(kb, [t for t in chosen if t not in too]),
                               speak.fishes(kb, too) if too else "")
            out.append(Block("help", text, claim=False))
    return out


def meant_at_last(turn: Turn) -> tuple[str, ...]:
    """The fishes that a line says at its end it means by looser names before ("... yellow and white bass i mean")."""
    text = turn.reading.text.lower()
    found = _I_MEAN.search(text)
    told = [m for m in turn.reading.of("taxon", "hybrid") if len(m.ids) == 1]
    start = max((text.rfind(stop, 0, found.start()) for stop in (".", ";", ",")), default=-1) if found else -1
    last = tuple(dict.fromkeys(m.ids[0] for m in told if found and start < m.start < found.start()))
    return last if len(last) > 1 and len(turn.reading.of("taxon", "hybrid", "group")) > len(last) else ()


_I_MEAN = re.compile(r"\bi mean\W*$")


def kin_of_held(turn: Turn, own: Sequence[str]) -> list[str]:
    """The fishes named; one whose name is also that of a kin of the fish spoken of is that kin ("how is it different
    than a northern", of a pickerel)."""
    kb = turn.kb
    held = [t for t in turn.held.taxa[:1] if (x := kb.find("taxon", t)) is not None and x.is_species]
    mention = next((m for m in turn.reading.of("taxon", "likeness") if m.ids == tuple(own)), None)
    if len(own) != 1 or not held or mention is None or kb.lineage(own[0])[-1] == kb.lineage(held[0])[-1]:
        return list(own)
    called = {e[1] for e in kb.spoken(key(mention.words)) if e[0] == "taxon"} - set(held)
    kin = [t for t in called if kb.taxon(t).is_species and kb.lineage(t)[-1] == kb.lineage(held[0])[-1]]
    return kin if len(kin) == 1 else list(own)
