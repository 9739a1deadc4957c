"""Things put right or taken back: "28 not 31", "I meant the anal fin", "scratch the red spot" (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.counts import plausible
from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.reader.spotting import Content, Hit
from assistant.dialogue.reader.tokens import Token
from assistant.model.stems import DROPPED, NUMBERS, Stem
from assistant.reasoning.observed import Observation
from assistant.text import key, unique, word_set

LONGEST = 5


class Change(NamedTuple):
    """The observations of the line with those taken back, and the characters that were put right."""

    seen: tuple[Seen, ...]
    characters: tuple[str, ...] = ()


def corrected(
    tokens: Sequence[Token],
    content: Sequence[Content],
    hits: Sequence[Hit],
    seen: Sequence[Seen],
    held: Held,
    lexicon: Lexicon,
) -> Change:
    """Apply what the line takes back or puts right to what the conversation holds."""
    if not tokens:
        return Change(tuple(seen))
    seen = _mended_at_once(tokens, seen, lexicon)
    if not held.seen:
        return Change(seen)
    if _cue(tokens, "retract", lexicon) and not _ends_in_number(tokens, held):
        back = _taken_back(content, hits, seen, held, lexicon)
        if back:
            after = _next_clause(tokens, "retract", lexicon)
            anew = [s for s in seen if not s.retract and (
                s.start >= after or (s.observation.seen and any(_replaces(s, b) for b in back)))]
            return Change((*back, *anew), unique(s.observation.character for s in back))
    correcting = _cue(tokens, "correct", lexicon) or _cue(tokens, "retract", lexicon)
    denied_number = _not_number(tokens)
    last_counted = held.seen[-1].observation.value is not None and not held.seen[-1].observation.asked
    if (correcting and last_counted) or (
            denied_number is not None and denied_number in {s.observation.value for s in held.seen}):
        seen = tuple(s for s in seen if not _answers_whole(s, tokens))
    opening_no = _opens_with_no(tokens)
    if not (correcting or opening_no or denied_number is not None):
        return Change(tuple(seen))
    out = list(_renumbered(tokens, content, seen, held, denied_number, lexicon) or seen)
    if correcting and (not out or _same_number(out, held)):
        out = list(_moved(content, held, lexicon)) or out
    out = [s for s in out if s.observation.seen or s.observation.value is None or s.observation.value != denied_number]
    changed = [s for s in out if not s.retract]
    for new in changed:
        for old in held.seen:
            gone = _replaces(new, old) or _counts_denied(new, old, lexicon)
            if gone and not any(o.retract and o.observation == old.observation for o in out):
                out.append(old._replace(retract=True))
    out.sort(key=lambda s: not s.retract)
    return Change(tuple(out), unique(s.observation.character for s in out if s.retract))


def _answers_whole(seen: Seen, tokens: Sequence[Token]) -> bool:
    """True for a count that the whole line was taken for, as an answer to what was asked ("my bad, three not six")."""
    return seen.observation.value is not None and (seen.start, seen.end) == (tokens[0].start, tokens[-1].end)


def _same_number(seen: Sequence[Seen], held: Held) -> bool:
    """True when a count is told again, of another feature."""
    told = {s.observation.value for s in held.seen if s.observation.value is not None}
    new = [s.observation.value for s in seen if not s.retract and s.observation.value is not None]
    return len(new) == 1 and new[0] in told


def _ends_in_number(tokens: Sequence[Token], held: Held) -> bool:
    """True for "scratch that, 7" after a count."""
    figures = _figures(tokens)
    return (
        bool(figures) and figures[-1][1] + 1 == len(tokens) and any(s.observation.value is not None for s in held.seen)
    )


def putting_right(tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True when the line corrects something said before."""
    return bool(tokens) and (
        _opens_with_no(tokens) or _cue(tokens, "correct", lexicon) or _not_number(tokens) is not None
    )


_NO = frozenset(("no", "nope", "nah", "naw"))
_SAYS_ANEW = word_set("it its it's the that this they i im wait not was sorry my there more actually just only mine")


def _opens_with_no(tokens: Sequence[Token]) -> bool:
    """True for a "no" by itself or before what is said anew ("no, the tail was square"), not for "no spots"."""
    if tokens[0].word not in _NO:
        return False
    after = tokens[1] if len(tokens) > 1 else None
    return after is None or after.clause != tokens[0].clause or after.word in _SAYS_ANEW or (
        NUMBERS.get(after.word, after.word).isdigit())


def _cue(tokens: Sequence[Token], cue: str, lexicon: Lexicon) -> bool:
    return any(
        cue in lexicon.cues(" ".join(t.word for t in tokens[i : i + n]))
        for n in range(1, LONGEST + 1)
        for i in range(len(tokens) - n + 1)
    )


def _mended_at_once(tokens: Sequence[Token], seen: Sequence[Seen], lexicon: Lexicon) -> tuple[Seen, ...]:
    """ "8 spines. no wait, 5": what follows a word of correction replaces what the line said of the feature before."""
    cue = _cue_at(tokens, "correct", lexicon)
    if cue is None:
        return tuple(seen)
    later = {s.observation.character for s in seen if s.start >= cue}
    kept = [s for s in seen if s.start >= cue or s.observation.character not in later]
    counted = [s for s in kept if s.observation.value is not None and s.end <= cue]
    figures = [(v, i) for v, i in _figures(tokens) if tokens[i].start >= cue]
    if counted and len(figures) == 1 and figures[0][1] + 1 == len(tokens):
        old = counted[-1]
        new = old._replace(observation=old.observation._replace(value=float(figures[0][0]), value_high=None))
        kept = [new if s is old else s for s in kept]
    return tuple(kept)


def _cue_at(tokens: Sequence[Token], cue: str, lexicon: Lexicon) -> int | None:
    """Where the first phrase of a cue family begins."""
    for i in range(len(tokens)):
        for n in range(1, LONGEST + 1):
            if i + n <= len(tokens) and cue in lexicon.cues(" ".join(t.word for t in tokens[i : i + n])):
                return tokens[i].start
    return None


def _next_clause(tokens: Sequence[Token], cue: str, lexicon: Lexicon) -> float:
    """Where the clause after that of a phrase of a cue family begins; past the end where there is none."""
    at = _cue_at(tokens, cue, lexicon)
    clause = next((t.clause for t in tokens if t.start == at), None)
    return next((t.start for t in tokens if clause is not None and t.clause > clause), float("inf"))


def _taken_back(
    content: Sequence[Content], hits: Sequence[Hit], seen: Sequence[Seen], held: Held, lexicon: Lexicon
) -> tuple[Seen, ...]:
    """The held observations that the line names: by the words they were told in, by state, by feature."""
    said = {c.stem for c in content}
    shared = [len(said & {s.text for s in lexicon.stems(key(old.words).split())}) for old in held.seen]
    if max(shared) > 0:
        return tuple(o._replace(retract=True) for o, n in zip(held.seen, shared, strict=True) if n == max(shared))
    for test in (_same_state, _same_character):
        back = tuple(old._replace(retract=True) for old in held.seen if any(test(s, old, lexicon) for s in seen))
        if back:
            return back
    named = {h.phrase.character for h in hits if h.phrase.kind == "character"}
    return tuple(o._replace(retract=True) for o in held.seen if o.observation.character in named)


def _same_state(new: Seen, old: Seen, lexicon: Lexicon) -> bool:
    """True when both speak of one state, or one of a state above the other."""
    return any(
        a in _upwards(b, lexicon) or b in _upwards(a, lexicon)
        for a in new.observation.states
        for b in old.observation.states
    )


def _upwards(state: str, lexicon: Lexicon) -> set[str]:
    out: set[str] = set()
    current: str | None = state
    while current and current not in out:
        out.add(current)
        current = lexicon.kb.state(current).broader
    return out


def _same_character(new: Seen, old: Seen, lexicon: Lexicon) -> bool:
    return new.observation.character == old.observation.character


def _replaces(new: Seen, old: Seen) -> bool:
    a, b = new.observation, old.observation
    return a.character == b.character and (a.states, a.value, a.value_high, a.seen) != (
        b.states,
        b.value,
        b.value_high,
        b.seen,
    )


def _counts_denied(new: Seen, old: Seen, lexicon: Lexicon) -> bool:
    """True for a count of what was said to be missing ("no stripes ... hang on, there's 6 stripes")."""
    counted, denied = new.observation, old.observation
    noun = lexicon.counted(counted.character) if counted.value and counted.seen else ""
    return bool(noun) and any(p.id in denied.states and p.denies for p in lexicon.phrases(noun))


def _figures(tokens: Sequence[Token]) -> list[tuple[int, int]]:
    out = []
    for i, token in enumerate(tokens):
        figure = NUMBERS.get(token.word, token.word)
        if figure.isdigit() and len(figure) < 4:
            out.append((int(figure), i))
    return out


def _not_number(tokens: Sequence[Token]) -> int | None:
    """The number denied in "28 not 31"."""
    for value, i in _figures(tokens):
        if i and tokens[i - 1].word in ("not", "wasnt", "isnt", "aint"):
            return value
    return None


def _renumbered(
    tokens: Sequence[Token],
    content: Sequence[Content],
    seen: Sequence[Seen],
    held: Held,
    denied: int | None,
    lexicon: Lexicon,
) -> tuple[Seen, ...]:
    """A bare number in a correction replaces the one that is denied, that of a place the line names ("it is ten on the
    back"), else the number last told.
    """
    counted = [s for s in held.seen if s.observation.value is not None]
    told = [(s.start, s.end) for s in seen]
    figures = [(v, i) for v, i in _figures(tokens)
               if v != denied and not any(a <= tokens[i].start < b for a, b in told)]
    if (
        not counted
        or not figures
        or any(s.observation.value is not None and s.observation.value != denied for s in seen)
    ):
        return ()
    wrong = [s for s in counted if denied is not None and s.observation.value == denied]
    value, i = figures[-1]
    said = {c.stem for c in content if c.clause == tokens[i].clause}
    named = {s: sum(x.text in said for x in _place_stems(s.observation.character, lexicon)) for s in counted}
    placed = [s for s in counted if 0 < named[s] == max(named.values())]
    old = (wrong or [s for s in placed if plausible(s.observation.character, value, value, lexicon)] or counted)[-1]
    new = Seen(
        Observation(old.observation.character, value=float(value)), tokens[i].word, tokens[i].start, tokens[i].end
    )
    kept = tuple(s for s in seen if s.observation.value is None)
    return (*kept, new, old._replace(retract=True))


def _place_stems(character: str, lexicon: Lexicon) -> list[Stem]:
    """The stems of everything a count is called, its noun aside ("back", "top", "dorsal")."""
    found = lexicon.kb.character(character)
    noun = {s.text for s in lexicon.stems(key(found.trade).split()[-1:])}
    words = [w for text in (found.label, *found.words) for w in key(text).split() if w not in DROPPED]
    return [s for s in lexicon.stems(words) if s.text not in noun]


def _moved(content: Sequence[Content], held: Held, lexicon: Lexicon) -> tuple[Seen, ...]:
    """ "I meant the anal fin": the count last told belongs to another part."""
    counted = [s for s in held.seen if s.observation.value is not None]
    if not counted:
        return ()
    old = counted[-1]
    low = int(old.observation.value or 0)
    high = int(old.observation.value_high or low)
    said = {c.stem for c in content}
    kind = lexicon.kb.character(old.observation.character).trade.split()[-1:]
    best = ("", 0)
    for c in lexicon.kb.characters:
        if c.kind == "count" and c.trade.split()[-1:] == kind and c.id != old.observation.character:
            shared = len(said & {s.text for s in lexicon.stems(key(c.label).split())})
            if shared > best[1] and plausible(c.id, low, high, lexicon):
                best = (c.id, shared)
    own = len(said & {s.text for s in _place_stems(old.observation.character, lexicon)})
    if own > best[1]:
        return (old,)
    if not best[0]:
        return ()
    return old._replace(observation=old.observation._replace(character=best[0])), old._replace(retract=True)
