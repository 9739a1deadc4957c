"""Whether the words of a line bear out a reading: by the noun they stand at, the fin and the place told (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from assistant.dialogue.reader.as_typed import literal
from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.spotting import Content, Hit
from assistant.dialogue.reader.tokens import Token
from assistant.model.stems import NEGATORS, NUMBERS, ORDERED
from assistant.text import word_set

if TYPE_CHECKING:
    from assistant.dialogue.reader.claims import Line

WHOLE, SIDE, COVERING = "whole-fish", "side", "body-covering"
FEW = 2
"""Words of a clause that says no more than a value, though a full stop parts it from its part."""
_AT = word_set("on in at under below behind through near across beneath over")
_ON = word_set("on in at near along under behind around upon to between of into from")
_MARKS = word_set("spot spots blotch blotches bar bars band bands stripe stripes dot dots smudge patch")


def borne_out(hit: Hit, line: Line) -> bool:
    """False for a reading of words that tell of something else."""
    return not (only_a_part_of_it(hit, line) or of_lateral_line(hit, line.content, line.tokens)
                or of_other_fin(hit, line) or contrary(hit, line) or said_of_other(hit, line)
                or toothed_spine(hit, line) or _names_a_place(hit, line))


def _names_a_place(hit: Hit, line: Line) -> bool:
    """True for a bare part read as missing that is only where something is missing, or is missing elsewhere."""
    first = line.content[hit.first].first
    before = [t.word for t in line.tokens[max(0, first - 2) : first]]
    how = line.tokens[first].word in _ARRAYS and before in _WITH_NO
    return hit.phrase.denies and (how or (all(p in line.nouns for p in hit.at) and lacks_elsewhere(hit, line)))


_ARRAYS, _WITH_NO = word_set("pattern order arrangement"), (["with", "no"], ["in", "no"])
"""What speckles may lack, which are there all the same ("speckles with no pattern")."""


def lacks_elsewhere(hit: Hit, line: Line) -> bool:
    """True where a bare denied part is a mere place, or is missing on another part ("no plates on the sides")."""
    return place_of_what_lacks(hit, line) or _told_on(hit, line, line.lexicon.kb.character(hit.phrase.character).part)


def another_sentence(hit: Hit, part: Hit, line: Line) -> bool:
    """True where a full stop parts a value from a part ("... of the spiny fin. Clear nick between")."""
    tokens, content = line.tokens, line.content
    return tokens[content[hit.first].first].sentence != tokens[content[part.first].first].sentence


def reaches_too_far(hit: Hit, part: Hit, line: Line) -> bool:
    """True for a value that is not said of a part some clauses before: it is a noun, stands right before or behind a
    noun of its own ("lips all wee bumps"), or in another sentence that says more.
    """
    if all(p in line.nouns for p in hit.at) or _next_word(line.content[hit.last].last, line) in _COLOUR:
        return True
    if _only_placed_on(part, line) and not any(p in line.nouns for p in hit.at):
        return True
    clause, single = line.clause(hit), len(set(hit.at)) == 1
    here = [p for p, c in enumerate(line.content) if c.clause == clause]
    own = {p for h in line.parts.get(hit.phrase.character, {}).get(clause, ()) for p in h.at} | set(hit.at)
    beside = (p for p in (hit.first - 1, hit.last + 1) if single and p in here)
    if any(p in line.nouns and p not in own for p in beside):
        return True
    return single and another_sentence(hit, part, line) and (
        len(here) > FEW or any(p in line.talk.walls for p in here))


def _only_placed_on(part: Hit, line: Line) -> bool:
    """True for a part that is only where a mark is told to be ("black spot on the back part of the dorsal")."""
    first = line.content[part.first].first
    own = [t.word for t in line.tokens[:first] if t.clause == line.tokens[first].clause]
    mark = bool(set(own) & _MARKS) and bool(set(own[-PLACED:]) & {"on", "of", "in", "at"})
    return mark or bool(set(own[-PLACED:]) & {"under", "behind", "below", "above", "near"})


PLACED = 2
"""Words before a part among which "on the" stands where something is told to be on it."""
_COLOUR = word_set("colour color coloured colored colors colours")


def describes_next(hit: Hit, line: Line) -> bool:
    """True for a lone word for the whole fish right before a noun for something else ("big brown saddles")."""
    behind = hit.last + 1
    if len(set(hit.at)) > 1 or line.lexicon.kb.character(hit.phrase.character).part != WHOLE:
        return False
    near = behind < len(line.content) and line.content[behind].first == line.content[hit.last].last + 1
    thing = near and behind in line.nouns and not line.tokens[line.content[behind].first].word.endswith("ed")
    return thing and line.content[behind].clause == line.clause(hit)


def only_a_part_of_it(hit: Hit, line: Line) -> bool:
    """True for words of which the next makes another thing ("big gill plate spot"), or the one before another measure
    ("half as tall as it is long"), and for a place told the other way round ("the back half" is not half the back).
    """
    tokens, content = line.tokens, line.content
    last, first = content[hit.last].last, content[hit.first].first
    after = tokens[last + 1 : last + 2]
    if (after and after[0].clause == tokens[last].clause and after[0].word in _MARKS and len(set(hit.at)) > 1
            and hit.last in line.nouns and tokens[last].word not in _MARKS):
        return True
    if len(set(hit.at)) == 1 and tokens[last].word == "clear" and _next_word(last, line) in _WHOLLY:
        return True
    before = [t.word for t in tokens[max(0, first - 2) : first]]
    if set(before) & _SHARES and "as" in before and not any(s in _SHARES_STEMS for s in hit.phrase.stems):
        return True
    words = [tokens[content[p].first].word for p in sorted(hit.at)]
    if hit.phrase.stems == ("way",):
        return "all" not in before
    if hit.phrase.stems == ("between",):
        return before[-1:] != ["in"] or bool(after and after[0].clause == tokens[last].clause)
    label = line.lexicon.kb.state(hit.phrase.id).label.split()
    if "front" in words and "front" in label and not literal(hit, line) and any(
            tokens[content[p].first].word == "front" and _next_word(content[p].last, line) in _FINS for p in hit.at):
        return True
    return hit.phrase.stems in (("half", "back"), ("back", "half")) and words[0] != hit.phrase.stems[0]


def _next_word(at: int, line: Line) -> str:
    """The next word of the clause; empty at its end."""
    after = line.tokens[at + 1 : at + 2]
    return after[0].word if after and after[0].clause == line.tokens[at].clause else ""


_WHOLLY = word_set("across through into past to down")
_SHARES, _SHARES_STEMS = word_set("half third quarter twice"), ("half", "third", "quart", "twic")


def contrary(hit: Hit, line: Line) -> bool:
    """True for a dark mark told with another colour right before it ("light bean spots in rows"), and for a blotch of
    the sides where only spots or dots are told.
    """
    found = line.lexicon.kb.state(hit.phrase.id)
    own = {line.tokens[i].word for p in hit.at for i in range(line.content[p].first, line.content[p].last + 1)}
    words = line.lexicon.kb.character(hit.phrase.character).words
    told = set(" ".join((found.label, *found.values, *found.phrases, *words)).split())
    if told & _LARGE and own & _SMALL and not own & _LARGE and not _SMALL & told:
        return True
    if any(plural and not line.content[p].plural and line.tokens[line.content[p].first].word == "fin"
           for p, plural in zip(hit.at, hit.phrase.plurals, strict=True)) and len(hit.at) <= FEW:
        return True
    first = line.content[hit.first].first
    if "dark" not in found.label.split() or line.tokens[first].word not in _SMALL | _LARGE | _MARKS:
        return False
    before = [t.word for t in line.tokens[max(0, first - 2) : first] if t.clause == line.tokens[first].clause]
    return bool(_NOT_DARK & set(before))


_SMALL = word_set("spot spots dot dots speck specks fleck flecks")
_LARGE = word_set("blotch blotches splotch splotches patch patches saddle saddles smudge smudges")
_NOT_DARK = word_set("light pale white whitish red orange pink yellow blue cream golden")


def said_of_other(hit: Hit, line: Line) -> bool:
    """True for a mark or a plain look of the side or the whole fish that another part is said to have: "head spotless",
    "chin and floor of the mouth are peppered black", "fins with a dark band".
    """
    if line.lexicon.kb.character(hit.phrase.character).part not in (SIDE, WHOLE) or not hit.first:
        return False
    before, tokens = hit.first - 1, line.tokens
    if before not in line.nouns or line.content[before].clause != line.clause(hit):
        return False
    parts = {line.lexicon.kb.character(c).part for c, by in line.parts.items()
             for h in by.get(line.clause(hit), ()) if before in h.at}
    if not parts or parts & {SIDE, WHOLE, "back"}:
        return False
    between = [t.word for t in tokens[line.content[before].last + 1 : line.content[hit.first].first]]
    lacks = hit.phrase.denies or hit.phrase.id.partition(".")[2].startswith("none")
    told = bool(_BEING & set(between)) or (lacks and not between and len(set(hit.at)) == 1)
    return told or (between[:1] == ["with"] and between[1:] in (["a"], ["an"]))


_BEING = word_set("is are was were")


def toothed_spine(hit: Hit, line: Line) -> bool:
    """True for teeth in the mouth where those of a spine or a keel are told ("the spine with big hooked teeth")."""
    at = [line.content[p].first for p in hit.at if line.tokens[line.content[p].first].word in _TOOTH]
    if not at or line.lexicon.kb.character(hit.phrase.character).part not in _MOUTH:
        return False
    clause, low = line.clause(hit), min(at)
    near = [t.word for t in line.tokens[max(0, low - SPINED) : low + 2] if t.clause == clause]
    return bool(_SPINES & set(near)) and not (NEGATORS | {"and", "n"}) & set(near[:-2])


SPINED = 9
"""Words before "teeth" among which stands what they are on."""
_TOOTH = word_set("teeth tooth toothed")
_SPINES = word_set("sticker stickers spine spines spike spikes saw keel")
_MOUTH = ("teeth", "mouth", "jaw", "jaws", "tongue")


def of_lateral_line(hit: Hit, content: Sequence[Content], tokens: Sequence[Token]) -> bool:
    """True for lines in the plural read as the one along the side ("eight lines down the side, whole")."""
    return hit.phrase.character.startswith("lateral-line") and any(
        tokens[content[p].first].word in _LINES for p in hit.at)


_LINES = word_set("lines stripes")


def holds_another(hit: Hit, content: Sequence[Content], tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a part cut in two by "with" ("long dorsal with 16 spines": the spines are not long); no count."""
    between = [t.word for t in tokens[content[hit.first].last + 1 : content[hit.last].first]]
    numbered = "with" in between and any(w.isdigit() or w in NUMBERS for w in between)
    return numbered and lexicon.kb.character(hit.phrase.id).is_stated


_FIRST, _LAST = word_set("first front spiny foremost"), word_set("second soft hind rear last")


def of_other_fin(hit: Hit, line: Line) -> bool:
    """True for a mark of the soft dorsal where the fin told is the first or spiny one, or the other way round."""
    character = hit.phrase.character
    kinds = [k for k in ("soft-dorsal", "spiny-dorsal") if character.startswith(k)]
    if not kinds:
        return False
    mine, other = (_LAST, _FIRST) if kinds == ["soft-dorsal"] else (_FIRST, _LAST)
    words = [t.word for t in line.tokens if t.clause == line.clause(hit)]
    fin = any(a in other and b in _FINS for a, b in pairwise(words)) or (words[-2:-1] == ["the"] and words[-1] in other)
    return fin and not mine & set(words)


_FINS = word_set("fin dorsal one sail top back fins dorsals")


def of_front_fin(hit: Hit, content: Sequence[Content], tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for the front of a fin read of the fin in front ("front fin dark"), where the base calls it otherwise."""
    front = next((content[p].last for p in hit.at if tokens[content[p].first].word == "front"), -1)
    if len(hit.at) < 2 or front < 0 or front + 1 >= len(tokens) or tokens[front + 1].word not in _FINS:
        return False
    called = (f"front {w}" for w in (tokens[front + 1].word, "dorsal", "dorsal fin"))
    return not any(e[1] == hit.phrase.id for words in called for e in lexicon.spoken(words))


def place_of_what_lacks(hit: Hit, line: Line) -> bool:
    """True for a part that is only where something is denied ("no spots on pecs or pelvics")."""
    first = line.content[hit.first].first
    clause = line.tokens[first].clause
    placed = False
    for i in range(first - 1, -1, -1):
        token = line.tokens[i]
        if token.clause != clause:
            return False
        if token.word in NEGATORS:
            lacking = {c.stem for c in line.content if i < c.first < first}
            own = {w.text for w in line.lexicon.stems(line.lexicon.kb.character(hit.phrase.character).label.split())}
            return placed and bool(lacking) and not lacking & own
        placed = placed or token.word in _ON
    return False


def told_elsewhere(hit: Hit, line: Line) -> bool:
    """True when marks of the side are said to be on another part ("black spots on the tail")."""
    mine = line.lexicon.kb.character(hit.phrase.character).part
    return (mine == SIDE or hit.phrase.character == COVERING) and _told_on(hit, line, mine)


def _told_on(hit: Hit, line: Line, mine: str) -> bool:
    """True when what is told is said to be on another part than its own."""
    if hit.last + 1 >= len(line.content):
        return False
    following = line.content[hit.last + 1]
    place = following if following.stem not in ORDERED else None
    if place is None and hit.last + 2 < len(line.content):
        place = line.content[hit.last + 2]
    if place is None or place.clause != line.clause(hit):
        return False
    words = {t.word for t in line.tokens[line.content[hit.last].last + 1 : place.first]}
    at = hit.last + 1 + (place is not following)
    parts = {
        line.lexicon.kb.character(c).part
        for c, by in line.parts.items()
        for h in by.get(place.clause, ())
        if at in h.at
    }
    elsewhere = bool(parts) and mine not in parts and not parts & {"back", WHOLE}
    return bool(words & _AT) and elsewhere and (mine not in (SIDE, WHOLE) or SIDE not in parts)


def done_by_other(hit: Hit, part: Hit, line: Line) -> bool:
    """True for a verb right behind another part before its own one ("nose sticks out over the mouth"), for a place told
    by the part behind it ("five spines ahead of the dorsal"), and for what a mark on it is ("big gill plate spot").
    """
    if hit.last > part.first:
        return False
    first = line.tokens[line.content[hit.first].first].word
    if len(set(hit.at)) == 1 and _next_word(line.content[part.last].last, line) in _MARKS and hit.last < part.first:
        return True
    near = hit.first - 1
    subject = near >= 0 and near in line.nouns and line.content[near].clause == line.clause(hit)
    ahead = first in _AHEAD or (first == "front" and _next_word(line.content[hit.first].last, line) == "of")
    return (subject and first in _VERBS) or (ahead and part.first == hit.last + 1 and len(set(hit.at)) == 1)


_VERBS = word_set("sticks juts projects hangs extends protrudes overhangs pokes")
_AHEAD = word_set("ahead behind above below")
FADING = word_set("fading fades faded shading")
"""Words behind which another colour than that of the part itself is told."""


def describes_other(hit: Hit, part: Hit, line: Line) -> bool:
    """True when the noun that follows a single describing word is not the part ("a big red spot on the flap")."""
    clause = line.clause(hit)
    for at in range(hit.last + 1, min(hit.last + 3, len(line.content))):
        if line.content[at].clause != clause or at in part.at:
            return False
        fin_end = at == hit.last + 1 and line.tokens[line.content[at].first].word in _ENDS and (
            bool({"fin", "fins"} & set(line.lexicon.kb.character(hit.phrase.character).label.split())))
        if at in line.nouns or fin_end:
            return True
    return False


_ENDS = word_set("tip tips edge edges rim rims base bases")
