"""Which cautions and angling practices speak of a fish, and which the words of a line ask for (layer 3).

Records carry the phrases by which people ask for them. A phrase is met when all of its stems stand among the stems of
the line, so that "hook out of its throat" meets "hook throat"; in another order it is met by one stem less. A phrase
that says whom something is done to ("hooked my") is met in its own order alone: "swallowed my hook" is another matter.
Nothing here knows what is advised.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Caution, Practice
from assistant.model.stems import stem
from assistant.text import word_set

Record = Caution | Practice
ABOUT_FISH, ABOUT_KIN, GENERAL, SOME_KIN, OTHERS = 4, 3, 2, 1, 0
"""How a record fits the fishes asked about: names the fish, its group, any fish, some of those asked about, others."""
HALF = 0.5
EXTRA = 0.3
"""What each further phrase met adds to the stems of the longest one."""
OUT_OF_ORDER = 1
"""What a phrase is met by less where its words stand in another order."""
SHORTEST_DOING = 5
"""Letters of the shortest word that may have lost the g of its -ing."""
PERSONS = frozenset(stem(w) for w in word_set("me my myself you your yourself him himself her herself his"))
"""Stems of words for whom something is done to; a phrase with one of them is met in its order alone."""


@dataclass(frozen=True, slots=True)
class Found:
    """A record, how well its phrases are met (0 when none is), and how it fits the fishes (see ``ABOUT_FISH``)."""

    record: Record
    met: float
    fit: int


def kin(kb: KnowledgeBase, taxon: str) -> frozenset[str]:
    """Everything a record may be about and then speak of this taxon: itself, what stands above it, its groups.

    Short forms ("taxon:...", "group:..."); a cross has those of both parents.
    """
    found = kb.find("taxon", taxon)
    if found is None:
        return frozenset({f"group:{taxon}"})
    line = set(kb.lineage(taxon))
    for parent in found.parents:
        line |= set(kb.lineage(parent))
    groups = (g.id for g in kb.all("group") if line & set(g.members))
    return frozenset({f"taxon:{t}" for t in line} | {f"group:{g}" for g in groups})


def line_stems(words: Iterable[str]) -> tuple[str, ...]:
    """The stems of the folded words of a line, in its order; a word that has lost its g ("bleedin") has two."""
    return tuple(stem(x) for w in words for x in ((w, f"{w}g") if _may_lack_g(w) else (w,)))


def _may_lack_g(word: str) -> bool:
    return len(word) >= SHORTEST_DOING and word.endswith("in")


def met(record: Record, stems: Sequence[str], text: str) -> float:
    """How well the phrases of a record are met by a line: stems of the longest one, a little for each further."""
    best, count = 0, 0
    for phrase in record.words:
        if phrase[:3] not in text:
            continue
        wanted = [stem(w) for w in phrase.split()]
        if not all(w in stems for w in wanted):
            continue
        if not (ordered := _in_order(wanted, stems)) and not PERSONS.isdisjoint(wanted):
            continue
        best, count = max(best, len(wanted) - (0 if ordered else OUT_OF_ORDER)), count + 1
    return best + EXTRA * (count - 1) if count else 0.0


def _in_order(wanted: Sequence[str], stems: Sequence[str]) -> bool:
    """True where the stems wanted stand one behind the other, others between them or not."""
    rest = iter(stems)
    return all(w in rest for w in wanted)


def fit(record: Record, relations: Sequence[frozenset[str]], asked: frozenset[str]) -> int:
    """How a record fits the fishes asked about, given the ``kin`` of each; ``asked`` are their short forms."""
    if not record.about:
        return GENERAL
    about = set(record.about)
    if about & asked and len(relations) == 1:
        return ABOUT_FISH
    hits = sum(1 for one in relations if about & one)
    if not hits:
        return OTHERS
    return ABOUT_KIN if hits >= HALF * len(relations) else SOME_KIN


def weigh(kb: KnowledgeBase, kind: str, words: Sequence[str], taxa: Sequence[str]) -> tuple[Found, ...]:
    """Every record of a kind ("caution" or "practice") with how it is met and how it fits, best met first.

    ``taxa`` are ids of species and crosses; where none is given, a record about some fish fits as ``SOME_KIN``.
    """
    stems, text = line_stems(words), " ".join(words)
    relations = [kin(kb, t) for t in taxa]
    asked = frozenset(f"taxon:{t}" for t in taxa)
    out = []
    for record in kb.all(kind):
        how = fit(record, relations, asked) if taxa else GENERAL if not record.about else SOME_KIN
        out.append(Found(record, met(record, stems, text), how))
    return tuple(sorted(out, key=lambda f: (-f.met, -f.fit, f.record.id)))


def topics(found: Sequence[Found]) -> tuple[tuple[str, float], ...]:
    """The topics whose records are met, best first; a record that fits the fish counts a little more."""
    best: dict[str, float] = {}
    for f in found:
        if f.met > 0 and f.fit > OTHERS:
            best[f.record.topic] = max(best.get(f.record.topic, 0.0), f.met + 0.2 * f.fit)
    return tuple(sorted(best.items(), key=lambda kv: (-kv[1], kv[0])))


def strongest(kb: KnowledgeBase, kind: str, words: Sequence[str]) -> float:
    """How well the best met phrase of a kind of advice is met by a line, whatever fish it is about; 0 when none is.

    From 2 on a phrase of two words or more stands in the line: it asks for that kind of advice.
    """
    stems, text = line_stems(words), " ".join(words)
    return max((met(record, stems, text) for record in kb.all(kind)), default=0.0)
