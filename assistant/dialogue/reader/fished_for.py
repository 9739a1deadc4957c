"""Everyday words that are fishes by what they do or what is done to them: "gills in my pond" (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.names_found import Named
from assistant.dialogue.reader.tokens import Token
from assistant.text import singular, unique, word_set

_MARKS = word_set("spots bars stripes specks")
"""Marks of a fish, which have a few verbs in common with fishes."""
WATERS = word_set("pond ponds lake tank pool creek river farm acre")
ARTICLES = word_set("a an the")
_ASKED_OF = word_set("do does did are will can where how when what catch catching")
_LYING = word_set("will are were do did can get go going run running stack stacked")
"""Verbs that marks may have as well as fishes ("bars run down the side")."""
_DENYING = word_set("wont dont cant")
_SEEKING = word_set(
    "for release releasing releases land landing catch catching caught target targeting dead live stunted "
    "keep keeping clean cleaning eat cook")
_FISHING = word_set("fish fishes fished fishing fishin bait lure lures jig jigs rig trip")
"""Words before "for" and a fish that has the name of a mark ("fishes for specks")."""
_FOR_WHAT = word_set(
    "in on at thru through under with for as when during after before from off today yesterday last this and but")
_GOT = word_set("caught catching landed got have had took kept keep keeping brought cleaned boated hooked")
_HAVING = word_set("got have had took")
"""Verbs that say of a fish what marks it has ("sides have several stripes")."""
_SOME = word_set("some few several couple many of lots bunch mess big bull small little lil dink nice fat dozen live")
"""Words that count or size the fishes that somebody got ("caught some gills")."""
_BAGGED = word_set("keep kept keeping bag limit bucket pail sack stringer cooler livewell legal")
"""Words of a line on fishes kept, in which a count that opens a clause is one of fishes ("7 gills, may he keep...")."""
_HOLDING = word_set(
    "bucket buckets cooler livewell stringer basket sack pail cage boat freezer mess limit school pondful")
"""What holds fishes, or is so many of them ("livewell full of gills", "a mess of gills")."""
_ORDINARY = word_set(
    "regular normal plain ordinary straight pond runt runty stunted dink dinky bull slab monster giant tiny puny")
"""Words that set fishes against their crosses ("do they outgrow regular gills"), or tell how they grow
("runt gills")."""
_PLACED = word_set("on in along near under over below above all behind at by")
_MAY = word_set("can could may should am are u i we")
_HAUNTS = word_set(
    "shallows weeds reeds pads dock docks brush lake river creek pond tank cove bay bed beds bank dam bridge")
_WHERE = word_set("i im he she we they in around round here there where and but when down up out over by on for too")
"""Words that may follow what people call a fish."""
_WEIGHED = word_set(
    "went weighed weighs measured measures taped spine stuck poked jabbed stung sting fillet fillets meat")
"""Words behind a name written apart by which it is a fish in the hand or on the table ("bull head spine")."""
_DOING = word_set(
    "wont dont will are were do did can cant bite bites biting bitin live spawn spawning get eat eating eatin hit "
    "bed nest feed school fight have has got always ever usually normally look grow hitting go going run running stack "
    "stacked suspend hold taste"
)


def is_meant(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a word that is the fish by what is said of it."""
    if named.first and tokens[named.first - 1].word in _ORDINARY and tokens[named.after - 1].word.endswith("s"):
        return True
    asked = is_subject(named, tokens, lexicon) or is_sought(named, tokens) or is_called(named, tokens, lexicon)
    hued = is_hued(named, tokens, lexicon)
    return asked or hued or is_placed(named, tokens, lexicon) or is_owner(named, tokens, lexicon) or is_owned(
        named, tokens)


def is_hued(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a colour that is one fish: in the plural where no part is coloured ("browns at dusk", not "blues and
    greens on the cheek"), or right behind a length or a weight and last of what is said ("15 in brown")."""
    word, clause = tokens[named.first].word, tokens[named.first].clause
    kinds = unique(e[1] for e in named.entries if e[0] == "taxon")
    if named.after - named.first > 1 or len(kinds) != 1 or lexicon.head(singular(word)) is None:
        return False
    said = [t.word for t in tokens if t.clause == clause]
    others = [w for w in said if w != word]
    if word.endswith("s"):
        return not named.first and not any(
            lexicon.is_part(w) or lexicon.names_part(w) or lexicon.head(singular(w)) is not None for w in others)
    before = [t.word for t in tokens[max(0, named.first - 2) : named.first] if t.clause == clause]
    last = named.after >= len(tokens) or tokens[named.after].clause != clause
    return last and len(before) == 2 and before[0][:1].isdigit() and before[1] in _MEASURED


def is_owned(named: Named, tokens: Sequence[Token]) -> bool:
    """True for fishes of the asker, their name written apart ("the meat of my blue gills"): nobody has such parts."""
    plural = named.split and tokens[named.after - 1].word.endswith("s")
    return plural and named.first > 0 and tokens[named.first - 1].word in ("my", "our")


def is_owner(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for one fish whose part is named right after it, with or without the apostrophe ("a blues throat")."""
    word = tokens[named.after - 1].word
    if not word.endswith("s") or word in _MARKS or not named.first or named.after >= len(tokens):
        return False
    following = tokens[named.after]
    one = tokens[named.first - 1].word in _OF_ONE and tokens[named.first - 1].clause == tokens[named.first].clause
    return one and following.clause == tokens[named.first].clause and lexicon.is_part(following.word)


_OF_ONE = word_set("a an this that each one")
"""Words that stand before a single fish, so that the s behind its name is no plural."""


def is_subject(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a fish of which something is asked or told ("specks wont bite", "how big do blues get"), not for a part
    of it told to be so ("eyes are red").

    A name written apart may be singular: "what does a red ear eat", "Small mouth went 2 lb".
    """
    word = tokens[named.after - 1].word
    if named.after >= len(tokens):
        return False
    following = tokens[named.after].word
    before = tokens[named.first - 1].word if named.first else ""
    article = named.after - named.first > 1 and before in ARTICLES
    if article:
        before = tokens[named.first - 2].word if named.first > 1 else ""
    sized = named.first - 1
    while word.endswith("s") and sized >= 0 and tokens[sized].word in _SIZED | ARTICLES:
        sized -= 1
        before = tokens[sized].word if sized >= 0 else ""
    if not word.endswith("s"):
        asked = article or (named.split and before in _ASKS)
        return (asked and following in _DOING and before in _ASKED_OF) or (
            named.split and not named.first and following in _WEIGHED)
    if following in _BEING and lexicon.is_part(word) and not _busy(tokens[named.after + 1 :]):
        return False
    if following == "got" and not named.split:
        return False
    doing = _DOING - _LYING if word in _MARKS else _DOING
    if word in _MARKS and following in _DENYING:
        return named.after + 1 < len(tokens) and tokens[named.after + 1].word in doing
    return following in doing and (not before or before in _ASKED_OF)


_SIZED = word_set("big good nice bigger biggest small little fat")
"""Words that size the fishes of which something is said ("where do the good gills go")."""
_BEING = word_set("are were")
_ASKS = word_set("do does did will")
"""Words right before the fish of a question ("when do small mouth spawn")."""


def _busy(rest: Sequence[Token]) -> bool:
    """True where a verb of doing comes next ("gills are biting")."""
    return bool(rest) and (rest[0].word.endswith(("ing", "in")) or rest[0].word in _DOING)


def is_called(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a word that people are said to call something, at the end of what is said or before the place
    ("they say speck", "what is a gill in ohio")."""
    clause = tokens[named.first].clause
    after = tokens[named.after : named.after + 1]
    if after and after[0].clause == clause and after[0].word not in _WHERE:
        return False
    before = [t.word for t in tokens[max(0, named.first - 4) : named.first] if t.clause == clause]
    return any("called-next" in lexicon.cues(" ".join(before[i:])) for i in range(len(before)))


def is_measured(named: Named, tokens: Sequence[Token]) -> bool:
    """True for a name of two words right behind a length or a weight ("18 inch small mouth", "3 lb large mouth")."""
    before = [t.word for t in tokens[max(0, named.first - 2) : named.first] if t.clause == tokens[named.first].clause]
    return named.after - named.first == 2 and before[1:2] != [] and before[1] in _MEASURED and before[0][:1].isdigit()


_MEASURED = word_set("inch incher inches in cm lb pound pounder lbs pounds")


def is_counted(named: Named, tokens: Sequence[Token]) -> bool:
    """True for a plural of which somebody got some, or asks how many may be kept ("caught 12 gills today"), or tells
    the lengths ("gills of 21 and 23 cm")."""
    if not tokens[named.after - 1].word.endswith("s") or not named.first:
        return False
    before = [t.word for t in tokens[: named.first]][::-1]
    following = [t.word for t in tokens[named.after : named.after + 4]]
    if before[:2] == ["many", "how"]:
        if following[:2] in (["a", "day"], ["per", "day"], ["each", "day"], ["a", "person"]):
            return True
        return bool(following) and following[0] in _MAY and (following[0] != "are" or "there" not in following)
    if before[:1] == ["of"] and ((before[1:2] == ["full"] and bool(_HOLDING & set(before))) or bool(
            _HOLDING & set(before[1:2]))):
        return True
    if following[:1] == ["of"] and "".join(following[1:2]).isdigit():
        return True
    counted = [i for i, w in enumerate(before[:3]) if w in _SOME or w.isdigit()]
    if counted[:1] != [0]:
        return False
    opening = len(counted) == sum(t.clause == tokens[named.first].clause for t in tokens[: named.first])
    if opening and _BAGGED & {t.word for t in tokens}:
        return True
    last = named.after >= len(tokens) or tokens[named.after].clause != tokens[named.first].clause
    having = _HAVING if tokens[named.after - 1].word in _MARKS and "of" not in before[:1] else frozenset()
    got = bool(set(before[len(counted) : len(counted) + 3]) & (_GOT - having))
    return (got and (last or following[0] in _FOR_WHAT)) or (
        len(before) == len(counted) and following[:1] in (["in"], ["on"], ["off"]) and bool(_HAUNTS & set(following)))


def is_placed(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a plural that a line begins with and that lives somewhere ("spots in california", "any blues in texas")
    or is fished for there ("specks off the bank at dark").
    """
    after = named.after
    if not tokens[after - 1].word.endswith("s"):
        return False
    beyond = [t.word for t in tokens[after : after + 5]]
    if not named.first and beyond[:1] and beyond[beyond[0] in _ARE] in _SPOTS and _HAUNTS & set(beyond):
        return True
    after += after < len(tokens) and tokens[after].word in _EVER
    if after + 1 >= len(tokens) or tokens[after].word not in ("in", "from"):
        return False
    if any(t.word not in _OPENING for t in tokens[: named.first]):
        return False
    names = (" ".join(t.word for t in tokens[after + 1 : after + 1 + size]) for size in (1, 2, 3))
    return any(e[0] == "place" for name in names for e in lexicon.spoken(name))


_SPOTS = word_set("off on at around under near by from below")
_ARE = word_set("are r were")
_EVER = word_set("always ever native naturally even")
_OPENING = word_set("any are is were was the there do does did so and what about how got get you")
"""Small words with which a line may begin that asks of a fish in a place."""


def heads_two(named: Named, tokens: Sequence[Token]) -> bool:
    """True for a plural that heads a line of which of two kinds it is ("specks, black or white")."""
    if named.first or named.after >= len(tokens) or not tokens[named.after - 1].word.endswith("s"):
        return False
    clause = tokens[named.after].clause
    following = [t.word for t in tokens[named.after : named.after + 4] if t.clause == clause]
    placed = tokens[named.after + 3].word in _PLACED if named.after + 3 < len(tokens) else False
    return clause != tokens[0].clause and len(following) > 2 and following[1] in ("or", "vs", "versus") and not placed


_BENEATH = word_set("under among between behind beneath against off over around onto")
"""Words before "the rocks" that are those of the bottom, not striped bass."""


def is_sought(named: Named, tokens: Sequence[Token]) -> bool:
    """True for a plural that somebody fishes for or keeps in a water ("bait for gills", "the gills in my pond")."""
    word = tokens[named.after - 1].word
    if not word.endswith("s") or not named.first:
        return False
    if word in _MARKS:
        return named.first > 1 and tokens[named.first - 1].word == "for" and tokens[named.first - 2].word in _FISHING
    following = [t.word for t in tokens[named.after : named.after + 4]]
    led = [t.word for t in tokens[max(0, named.first - 2) : named.first]]
    if following[:1] in (["in"], ["from"]) and WATERS & set(following):
        return not (led[-1:] == ["the"] and bool(_BENEATH & set(led)))
    clause = tokens[named.first].clause
    last = named.after >= len(tokens) or tokens[named.after].clause != clause or following[0] in _FOR_WHAT
    before = tokens[named.first - (2 if named.first > 1 and tokens[named.first - 1].word in _SOME else 1)].word
    return last and before in _SEEKING
