"""Which characters a line asks about: named ones, those of a state or of a body part ("fins?") (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.aspects import without_fish
from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import DROPPED
from assistant.text import key, singular, unique

FIN = "fin"
GENERAL = frozenset({"fish", "whole", "side", "fin", "base"})
"""Words of part names that name no part by themselves ("fin" asks for all fins)."""
SPELT = {"color": "colour"}


def characters_asked(kb: KnowledgeBase, reading: Reading) -> tuple[str, ...]:
    """Ids of the characters that the line asks about, those named outright first; empty when it names none.

    Where a mark is read, another word that may mean many characters ("scales on its cheek") adds nothing to it.
    """
    seen = {s.words for s in reading.seen}
    exact = {m: ids for m in reading.of("character") if (ids := _called_so(kb, m.words, m.ids))
             and not (len(m.ids) > len(ids) and all(_of_presence(kb, i) for i in ids))}
    out = [i for m in reading.of("character") for i in exact.get(m, m.ids) if not (m.ambiguous and seen - {m.words})]
    out += [i.partition(".")[0] for m in reading.of("state") for i in m.ids]
    out += [s.observation.character for s in reading.seen]
    known = [c for c in unique(out) if kb.find("character", c) is not None]
    known = known or list(spoken_characters(kb, reading))
    known = known if reading.seen or exact else [*known, *_of_kind(kb, reading, known)]
    parts = named_parts(kb, reading)
    loose = not exact and (len(known) <= 1 or all(m.ambiguous for m in reading.of("character", "state")))
    if loose and parts and not reading.seen:
        known += [c.id for c in kb.characters if c.part in parts and c.id not in known]
    return tuple(known)


def _of_presence(kb: KnowledgeBase, character: str) -> bool:
    """True for a character that only tells whether a part is there; by its name more is asked ("side fins?")."""
    states = [s.id for s in kb.states(character)]
    return bool(states) and all(s.endswith((".present", ".absent")) for s in states)


def called(kb: KnowledgeBase, reading: Reading) -> tuple[str, ...]:
    """The characters whose label or id stands in the line ("eye-colour", "dorsal spine counts"), the longest names."""
    line = f" {' '.join(name_words(reading.text))} "
    found = {c.id: name for c in kb.characters for name in (name_words(c.id), name_words(c.label))
             if len(name) > 1 and f" {' '.join(name)} " in line}
    return tuple(c for c, name in found.items() if not any(set(name) < set(other) for other in found.values()))


def name_words(text: str) -> list[str]:
    """The words of a name or a line, in the singular and spelt one way."""
    return [SPELT.get(w, w) for w in map(singular, key(text.replace("-", " ")).split())]


def _called_so(kb: KnowledgeBase, words: str, ids: Sequence[str]) -> tuple[str, ...]:
    """Those of some characters whose very name was typed ("anal spines" is no grading of them)."""
    return tuple(i for i in ids if (c := kb.find("character", i)) is not None and key(c.label) == key(words))


def spoken_characters(kb: KnowledgeBase, reading: Reading) -> tuple[str, ...]:
    """Characters whose words or labels stand in the line, longest phrase first."""
    words = [singular(w) for w in without_fish(reading)][:40]
    out: list[str] = []
    for size in (3, 2, 1):
        for i in range(len(words) - size + 1):
            out += [thing for kind, thing, _ in kb.spoken(" ".join(words[i : i + size])) if kind == "character"]
        if out:
            break
    return unique(c for c in out if of_fishes(kb, c))


def of_fishes(kb: KnowledgeBase, character: str) -> bool:
    """True for a character of fishes, not of crosses or of what is only noted."""
    found = kb.find("character", character)
    return found is not None and found.use not in ("hybrid", "note")


def _of_kind(kb: KnowledgeBase, reading: Reading, known: Sequence[str]) -> list[str]:
    """The characters whose labels end in the word that one was named by ("teeth": the throat teeth, too)."""
    words = {singular(w) for w in without_fish(reading)}
    last = {key(kb.character(c).label).split()[-1] for c in known} & words - GENERAL
    return [c.id for c in kb.characters if c.id not in known and key(c.label).split()[-1] in last]


def near_words(kb: KnowledgeBase, reading: Reading) -> tuple[str, ...]:
    """Ids of the characters whose names hold the words that a mark was read from ("rows of scales on the cheek")."""
    found: list[str] = []
    for seen in reading.seen:
        words = {singular(w) for w in key(seen.words).split()} - DROPPED
        found += [c.id for c in kb.characters if words and words <= {singular(w) for w in key(c.label).split()}]
    return unique(found)


def part_word(kb: KnowledgeBase, reading: Reading, character: str) -> str:
    """The part asked about as it was typed ("tail"), else the part of a character; a fin with its noun."""
    part = kb.character(character).part.replace("-", " ")
    tokens = {singular(w) for w in key(part).split()} - {"base"}
    typed = next((w for w in reading.words if singular(w) in tokens), part)
    return part if singular(part.rpartition(" ")[2]) == FIN and singular(typed) != FIN else typed


def named_parts(kb: KnowledgeBase, reading: Reading) -> frozenset[str]:
    """The parts of a fish whose words stand in the line ("mouth", "ear flap"); all fins where only fins are named.

    A word within the name of a character of another part names none ("side spine" is not the side).
    """
    words = {singular(w) for w in without_fish(reading)}
    out = set()
    for part in kb.derived("body-parts", _all_parts):
        tokens = {singular(w) for w in key(part).split()}
        if tokens <= words or (tokens - GENERAL and tokens - GENERAL <= words and "fin" not in words):
            out.add(part)
    named_so = [(m.ids, {singular(w) for w in key(m.words).split()}) for m in reading.of("character") if " " in m.words]
    out -= {p for p in out for ids, of in named_so
            if {singular(w) for w in key(p).split()} <= of and p not in {kb.character(i).part for i in ids}}
    wide = {p for p in out if {singular(w) for w in key(p).split()} == {FIN}}
    out -= wide if wide != out else set()
    if FIN in words and wide == out:
        out = {p for p in kb.derived("body-parts", _all_parts) if FIN in p.split("-") or p == "fins"}
    every = kb.derived("body-parts", _all_parts)
    return frozenset(out | {p for p in every if any("-" in whole and p.endswith(f"-{whole}") for whole in out)})


def _all_parts(kb: KnowledgeBase) -> tuple[str, ...]:
    return tuple(sorted({c.part for c in kb.characters if c.part}))
