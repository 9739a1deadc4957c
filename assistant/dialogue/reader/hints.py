"""What names that stand for several fishes say of the catch (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.mentions import Decided
from assistant.dialogue.reader.reading import Mention
from assistant.reasoning.observed import Hint

_BUT = re.compile(r"['’]?s?,? (?:\w+ )?(?:but|except|only|cept|tho|though|yet)\b")
"""How a likeness goes on that tells right after it what is otherwise ("like a walleye but no white tip")."""


_TAKEN_FOR = re.compile(
    r"\b(?:took|mistook|pegged|figured|had (?:it|him|her|this|that) down)(?: it| him| her| this)? "
    r"(?:for|as)(?: an?)?(?: \w+)? $")
"""Words before a fish for which a catch was taken first ("what I took for a huge brookie")."""


def hints_of(decided: Decided, lexicon: Lexicon, text: str) -> tuple[Hint, ...]:
    """Group words, open names and likenesses as evidence."""
    out = []
    for m in decided.mentions:
        taxa = frozenset(s for i in m.ids for s in _species(i, lexicon))
        if m.kind == "likeness":
            negated = m.start in decided.denied
            but = bool(_BUT.match(text[m.end :].lower()) or _TAKEN_FOR.search(text[: m.start].lower()))
            out.append(Hint("group" if negated else "like", taxa, seen=not negated, word=m.words, loose=but))
        elif m.kind == "group" or len(m.ids) > 1:
            taxa |= _kinds_so_called(m, lexicon)
            strict = "strict-name" in lexicon.cues(m.words)
            out.append(Hint("group", taxa, word=lexicon.kind(m.words), strict=strict, loose=m.kind != "group"))
    return tuple(out)


def _kinds_so_called(mention: Mention, lexicon: Lexicon) -> frozenset[str]:
    """All of the group that has the word for its name, though in some place it means few of them ("trout" in Maine)."""
    groups = (e[1] for e in lexicon.spoken(mention.words) if e[0] == "group" and e[2] == "label")
    return frozenset(s for g in groups for s in _species(g, lexicon))


def _species(key: str, lexicon: Lexicon) -> tuple[str, ...]:
    found = lexicon.kb.find("taxon", key)
    if found is not None and found.is_hybrid:
        return (key,)
    return lexicon.kb.members(key)
