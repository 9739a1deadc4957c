"""Names of fishes that are only compared with, or denied (layer 4)."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.names_found import Named
from assistant.dialogue.reader.tokens import Token
from assistant.text import word_set


def likeness(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> tuple[bool, bool]:
    """Whether the name is only compared with, and whether it is denied."""
    clause = tokens[named.first].clause
    for size in range(min(6, named.first), 0, -1):
        before = tokens[named.first - size : named.first]
        if before[0].clause != clause:
            continue
        cues = {
            c
            for stop in range(size, max(0, size - 3), -1)
            for c in lexicon.cues(" ".join(t.word for t in before[:stop]))
            if stop == size or c == "like-before"
        }
        if "not-name" in cues:
            return False, True
        if "like-before" in cues:
            return not (_asked_of(named, tokens) or _asked_for(named, tokens) or _wished(named, tokens)), False
    after = tokens[named.after : named.after + 2]
    asked = tokens[0].word in _ASKING
    if after and not asked and after[0].clause == clause and "like-after" in lexicon.cues(after[0].word):
        if after[0].word == "like" and _does(named, tokens):
            return False, False
        return after[0].word != "like" or _looks_like(after, lexicon), False
    return False, False


def denied_with(named: Named, before: Sequence[Named], denied: Collection[int], tokens: Sequence[Token]) -> bool:
    """True for the name after "or" or "nor" behind a denied one ("not a bluegill or a pumpkinseed")."""
    if not before or tokens[before[-1].first].start not in denied:
        return False
    between = [t.word for t in tokens[before[-1].after : named.first] if t.word not in ("a", "an", "the")]
    same = tokens[before[-1].first].clause == tokens[named.first].clause
    return between == ["nor"] or (same and between == ["or"])


_ASKING = word_set("what whats how")
"""Words that open a question in which "like" ends it ("what are the females of the bowfin like")."""


def _like_at(words: Sequence[str]) -> int:
    """Where the last "like" stands; -1 where there is none."""
    return max((i for i, word in enumerate(words) if word == "like"), default=-1)


def _asked_of(named: Named, tokens: Sequence[Token]) -> bool:
    """True for "what is the tail like on a bowfin": the question is about the fish, which nothing is compared with."""
    before = [t.word for t in tokens[: named.first]]
    at = _like_at(before)
    if at < 1 or before[0] not in _ASKING or _HAVING & set(before[:at]):
        return False
    return before[at + 1 : at + 2] in (["on"], ["in"], ["of"], ["for"])


def _asked_for(named: Named, tokens: Sequence[Token]) -> bool:
    """True for "which other fish look like a walleye": its likes are asked for, and no fish of one's own is told of."""
    before = [t.word for t in tokens[: named.first]]
    return named.after == len(tokens) and before[0] in ("which", "what") and set(before) <= _ASKED_FOR


_ASKED_FOR = word_set(
    "which what else other fish fishes ones look looks most much just a an the lot alike like can could"
)
"""The words of a question for the likes of a fish."""


def _wished(named: Named, tokens: Sequence[Token]) -> bool:
    """True for "my kid would like a wild pumpkinseed": the fish is wanted, and nothing is compared with it."""
    before = [t.word for t in tokens[: named.first]]
    at = _like_at(before)
    return at > 0 and before[at - 1] in _WISHING


_WISHING = word_set("would wouldnt id wed youd theyd")
"""Words before "like" by which something is wanted."""


_HAVING = word_set("has have had with got shows caught fish")
"""Words before "like" by which some fish is told of ("what has a tail like on a bowfin")."""


def _does(named: Named, tokens: Sequence[Token]) -> bool:
    """True for "do bluegills like": the fish is asked what it likes."""
    before = [t for t in tokens[max(0, named.first - 2) : named.first] if t.word not in ("a", "an", "the", "most")]
    return bool(before) and before[-1].word in ("do", "does", "did", "would")


def _looks_like(after: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for "pike like" at the end of a clause or before a word for any fish; not for "longears like mud"."""
    return len(after) == 1 or after[1].clause != after[0].clause or "fish-word" in lexicon.cues(after[1].word)


def compared(named: Named, before: Sequence[Named], tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True when a question compares this fish with one named before it ("is a redear bigger than a bluegill")."""
    clause = tokens[named.first].clause
    start = next(i for i, token in enumerate(tokens) if token.clause == clause)
    asked = "asks-do" in lexicon.cues(tokens[start].word)
    named_before = [n for n in before if n.entries and tokens[n.first].clause == clause]
    return asked and any(n.first > start for n in named_before)
