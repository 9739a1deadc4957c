"""Fishes that a line wants out of a set made before: "all but the warmouth", "take the flier out" (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn

_FILLING = r"(?:(?:the|that|those|these|this|any|a|an|my|our|both|of|out|off|away|from|on|all)\W+)*"
_BEFORE = re.compile(
    r"(?:\b(?:drop|remove|without|minus|omit|skip|except|excepting|excluding|exclude|lose|toss|scrap|ditch|delete|"
    r"strike|scratch|cut|ban|bar|sans|less|no|not|nix|axe|rid of|apart from|other than|aside from|"
    r"(?:all|everything|everyone|anything) but|(?:do|does|did|would|will)(?:n'?t| not) (?:need|want|include|use|have)|"
    r"do without|cross(?:ed)? out|"
    r"forget(?: about)?|never ?mind|get rid of|done with|leave|take|throw|kick|pull|get|weed)\W+)" + _FILLING + r"$")
_TAKING = re.compile(r"\b(?:take|leave|throw|kick|pull|get|weed)\W+"
                     r"(?:the|that|those|these|this|any|a|an|my|our|both|\W)*$")
"""Words of taking that take nothing out by themselves: a word of away stands behind what they take."""
_AWAY = re.compile(r"^\W*(?:is |are |goes |go |should (?:be |go )?|can (?:be |go )?)?(?:out|off|away|aside|gone)\b")
_GONE = re.compile(r"^\W*(?:is |are |goes |go |should (?:be |go )|can (?:be |go )|has to |must )+(?:go |be )?"
                   r"(?:out|off|away|gone|dropped|left out|removed|go)\b")
_LINK = re.compile(r"^[\s,]*(?:and|or|n|&|nor|,)[\s,]*(?:the\s+)?$")


def left_out(turn: Turn, among: Sequence[str]) -> frozenset[str]:
    """Those of some fishes that the line wants taken out; empty where it takes out none or all, or names others."""
    text = turn.reading.text.lower().replace("’", "'")
    told = sorted(turn.reading.of("taxon", "hybrid", "group"), key=lambda m: m.start)
    out: set[str] = set()
    chain: list[Mention] = []
    for m in told:
        chain = [*chain, m] if chain and _LINK.match(text[chain[-1].end:m.start]) else [m]
        if _goes(text, chain):
            out.update(t for x in chain for t in (*x.ids, *species_of(turn.kb, x.ids)))
    named = {t for m in told for t in (m.ids if m.kind == "taxon" and len(m.ids) == 1 else ())}
    if not named <= set(among):
        return frozenset()
    found = frozenset(out & set(among))
    return found if len(found) < len(among) else frozenset()


_BESIDES = re.compile(r"\b(?:besides|other than|apart from|aside from|except(?: for)?|excepting|excluding)\W+"
                      + _FILLING + r"$")


def set_aside(turn: Turn) -> frozenset[str]:
    """The fishes that a question asks beyond ("who else besides trout"); empty where it names others as well."""
    text = turn.reading.text.lower()
    told = sorted(turn.reading.of("taxon", "hybrid", "group"), key=lambda m: m.start)
    chain: list[Mention] = []
    for m in told:
        if not (_BESIDES.search(text[:m.start]) or (chain and _LINK.match(text[chain[-1].end:m.start]))):
            return frozenset()
        chain.append(m)
    return frozenset(t for m in chain for t in (*m.ids, *species_of(turn.kb, m.ids)))


def _goes(text: str, chain: Sequence[Mention]) -> bool:
    """True where the words before or behind some names take them out."""
    before, behind = text[:chain[0].start], text[chain[-1].end:]
    if _GONE.match(behind):
        return True
    if _TAKING.search(before):
        return _AWAY.match(behind) is not None
    return _BEFORE.search(before) is not None
