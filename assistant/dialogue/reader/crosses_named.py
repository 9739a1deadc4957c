"""Crosses told by their parents: "a x b", "half a half b", "an a b cross" (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.reader.tokens import Token
from assistant.text import word_set

_CROSS = word_set("x cross crossed times ×")
_CROSS_OF = word_set("cross crosses hybrid hybrids mix mixes")


def crossed(mentions: Sequence[Mention], tokens: Sequence[Token], lexicon: Lexicon) -> list[Mention]:
    """Two names joined by "x", or side by side before "cross", are a cross, where the base holds it."""
    out: list[Mention] = []
    for m in mentions:
        last = out[-1] if out else None
        if last and last.kind == "hybrid" and m.end and m.end <= last.end:
            continue
        if last and (end := _side_by_side(last, m, tokens, lexicon)):
            cross = m.ids[0] if m.kind == "hybrid" else cross_of(lexicon, last.ids[0], m.ids[0])
            out[-1] = Mention("hybrid", (cross,), f"{last.words} x {m.words}", last.start, end, last.exact and m.exact)
            continue
        if last and len(last.ids) == 1 and len(m.ids) == 1 and last.kind == m.kind == "taxon":
            between = [t.word for t in tokens if last.end <= t.start < m.start]
            cross = cross_of(lexicon, last.ids[0], m.ids[0])
            halves = between[:1] == ["half"] and any(t.word == "half" and t.end <= last.start for t in tokens)
            if cross and between and len(between) <= 3 and (halves or _CROSS & set(between)):
                out[-1] = Mention(
                    "hybrid", (cross,), f"{last.words} x {m.words}", last.start, m.end, last.exact and m.exact
                )
                continue
        out.append(m)
    return out


def _side_by_side(one: Mention, two: Mention, tokens: Sequence[Token], lexicon: Lexicon) -> int:
    """Where a cross ends that is told by its parents alone ("a bluegill green sunfish cross"); 0 where none is."""
    if one.kind != "taxon" or len(one.ids) != 1 or len(two.ids) != 1:
        return 0
    inside = [t for t in tokens if one.start <= t.start < two.end]
    apart = len({t.clause for t in inside}) > 1 and two.start - one.end > 1
    if not inside or apart or any(one.end <= t.start < two.start for t in inside):
        return 0
    if two.kind == "hybrid":
        named = inside[-1].word in _CROSS_OF and one.ids[0] in lexicon.kb.taxon(two.ids[0]).parents
        return two.end if named else 0
    behind = next((t for t in tokens if t.start >= two.end), None)
    if two.kind != "taxon" or behind is None or behind.word not in _CROSS_OF or behind.clause != inside[-1].clause:
        return 0
    return behind.end if cross_of(lexicon, one.ids[0], two.ids[0]) else 0


def cross_of(lexicon: Lexicon, a: str, b: str) -> str:
    """The id of the cross of two taxa; empty when the base does not hold it."""
    for first, second in ((a, b), (b, a)):
        found = lexicon.kb.find("taxon", f"{first}-x-{second}")
        if found is not None and not found.deprecated:
            return str(found.id)
    return ""
