"""Two states of one feature that a line leaves the choice of: "the tail was rounded or maybe square" (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.reading import Seen
from assistant.text import unique

_OR = re.compile(r"\bor\b", re.IGNORECASE)
_EITHER = re.compile(
    r"\b(?P<one>[a-z]{3,}(?: off| cut)?),? or (?P<two>[a-z]{3,}(?: off| cut)?) "
    r"(?P<part>tails?|fins?|snouts?|noses?|mouths?|lips?|heads?|bellys?|ears?|flaps?|body|bodies|back)\b",
    re.IGNORECASE)


def parts_in_full(line: str, lexicon: Lexicon) -> str:
    """The line with the part told with both of two words for it ("a squared off or round tail")."""

    def told(found: re.Match[str]) -> str:
        one, two, part = found["one"], found["two"], found["part"]
        shared = _features(f"{one} {part}".lower(), lexicon) & _features(f"{two} {part}".lower(), lexicon)
        return f"{one} {part}, or {two} {part}" if shared else found.group()

    return _EITHER.sub(told, line)


def _features(words: str, lexicon: Lexicon) -> set[str]:
    """The characters of which some words tell a state."""
    return {thing.split(".")[0] for kind, thing, _ in lexicon.spoken(words) if kind == "state"}


def either(seen: Sequence[Seen], line: str) -> tuple[Seen, ...]:
    """The observations with two states of one feature that an "or" stands between as one observation of either."""
    out: list[Seen] = []
    for new in seen:
        old = next((s for s in out if _left_open(s, new, line)), None)
        if old is None:
            out.append(new)
            continue
        both = old.observation._replace(states=unique((*old.observation.states, *new.observation.states)))
        out[out.index(old)] = old._replace(observation=both, end=max(old.end, new.end))
    return tuple(out)


def _left_open(old: Seen, new: Seen, line: str) -> bool:
    a, b = old.observation, new.observation
    if a.character != b.character or not (a.states and b.states and a.seen and b.seen) or old.retract or new.retract:
        return False
    told = line[min(old.start, new.start) : max(old.end, new.end)]
    return a.states != b.states and len(_OR.findall(told)) == 1 and not re.search(r"[.;?!]", told)
