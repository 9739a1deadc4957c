"""Which found names are names, which are features, which are only comparisons; and the hints they give (layer 4)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from assistant.dialogue.reader.company import sorted_out, tells_of_part
from assistant.dialogue.reader.crosses_named import crossed
from assistant.dialogue.reader.fished_for import WATERS, heads_two, is_counted, is_meant, is_measured
from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.likeness import compared, denied_with, likeness
from assistant.dialogue.reader.names_found import Named, opens_term
from assistant.dialogue.reader.on_fish import ITS, any_coloured_fish, of_the_fish
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.reader.spotting import Content, Hit
from assistant.dialogue.reader.tokens import Token
from assistant.model.stems import DROPPED
from assistant.reasoning.names import meaning_of
from assistant.text import key, singular, word_set

_HAS = word_set("has had have with w got its his her the showing shows wearing")
_AGAINST = word_set("vs versus against or r and n x from v cross crossed than not")
_FROM = word_set("from around behind near through across under below past beneath toward towards")
_ALSO = word_set("and n plus with")


class Decided(NamedTuple):
    """The mentions of fishes, the tokens that names own, fishes that are outside, and denied mentions."""

    mentions: tuple[Mention, ...]
    strong: frozenset[int]
    outside: tuple[str, ...]
    denied: frozenset[int] = frozenset()


def decide(
    tokens: Sequence[Token],
    names: Sequence[Named],
    content: Sequence[Content],
    hits: Sequence[Hit],
    places: Sequence[str],
    lexicon: Lexicon,
    describing: bool = False,
) -> Decided:
    """Sort the found names out; ``describing`` when a feature was asked for."""
    mentions: list[Mention] = []
    strong: set[int] = set()
    outside: list[str] = []
    denied: set[int] = set()
    found = _found(content, hits)
    for number, named in enumerate(names):
        words = " ".join(t.word for t in tokens[named.first : named.after])
        if not named.entries and not named.outside:
            strong.update(range(named.first, named.after))
            continue
        if named.outside:
            if _compared(named, found, tokens, lexicon):
                continue
            outside.append(words)
            strong.update(range(named.first, named.after))
            continue
        beside = named.cut or _beside_name(named, names[max(0, number - 1) : number + 2], tokens, lexicon)
        plain = describing and not beside and _describes(named, tokens, lexicon)
        several = named.split or len({e[1] for e in named.entries}) > 1
        before = names[number - 1].entries if number else ()
        told = bool(before) and (several or any(e[0] == "group" for e in before))
        if not _surely_fish(named, tokens) and (plain or _is_feature(named, beside, found, tokens, lexicon, told)):
            left = _group_left(named, tokens, lexicon)
            if left is None:
                continue
            named, words = left, tokens[left.first].word
        meaning = meaning_of(lexicon.kb, named.entries, named.phrase or words, places,
                             _loose((words, named.phrase), lexicon))
        like, negated = likeness(named, tokens, lexicon)
        if negated := negated or denied_with(named, names[:number], denied, tokens):
            denied.add(tokens[named.first].start)
        like = like and not compared(named, names[:number], tokens, lexicon)
        kind = "likeness" if like or negated else meaning.kind
        mentions.append(
            Mention(
                kind,
                meaning.ids,
                words,
                tokens[named.first].start,
                tokens[named.after - 1].end,
                named.exact,
                meaning.ambiguous,
            )
        )
        if not like or named.after - named.first > 1 or _stemmed(named, tokens, content, found, lexicon):
            strong.update(range(named.first, named.after))
    named_so = crossed(_by_kin(mentions, lexicon), tokens, lexicon)
    return Decided(tuple(named_so), frozenset(strong), tuple(outside), frozenset(denied))


def _loose(spellings: Sequence[str], lexicon: Lexicon) -> bool:
    """True for an accepted name, typed so or misspelt, that is widely used of other fishes too."""
    return any("loose-name" in lexicon.cues(words) for words in spellings)


def _surely_fish(named: Named, tokens: Sequence[Token]) -> bool:
    """True for a name that stands in a row of kinds, heads two kinds, or is counted."""
    row = named.listed or (named.cut and sorted_out(tokens))
    return row or heads_two(named, tokens) or is_counted(named, tokens) or is_measured(named, tokens)


def _worrying(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for marks in skin or flesh, written as two words, that run together would be a name ("black spots")."""
    return named.split and "marks-worry" in lexicon.cues(" ".join(t.word for t in tokens[named.first : named.after]))


def _is_feature(
    named: Named, beside: bool, found: _Found, tokens: Sequence[Token], lexicon: Lexicon, told: bool = False
) -> bool:
    """True when words that could be a name describe the fish instead ("it has a red ear", "gill cover").

    ``told`` when a fish has been named before them ("rock bass, red eye").
    """
    own = {found.by_token[i] for i in range(named.first, named.after) if i in found.by_token}
    single = named.after - named.first == 1
    name_like = single or named.split or _two_plain_words(named, tokens, lexicon)
    tint = _coloured(named, tokens, lexicon) and not beside
    described = any(not own & set(h.at) for h in found.alone)
    here = [h for h in found.at.get(min(own), ()) if not _asked_apart(h, found, tokens)] if own else []
    like_it = any(own < set(h.at) for h in here) and tells_of_part(named, tokens, lexicon)
    if tint or like_it or (single and opens_term(named, tokens, lexicon)) or _worrying(named, tokens, lexicon):
        return True
    if of_the_fish(named, tokens, lexicon, told, described):
        return True
    meant = (name_like and is_meant(named, tokens, lexicon)) or (single and _one_of_kind(named, tokens, lexicon))
    if meant or (named.split and not _of_looks(named, tokens, lexicon)):
        return False
    if not own and not beside and single and "weak-name" in lexicon.cues(tokens[named.first].word):
        return _weak_alone(named, tokens)
    if not own or beside:
        return False
    following = tokens[named.after].word if named.after < len(tokens) else ""
    if single and named.first == 0 and following == "in" and WATERS & {t.word for t in tokens[named.after :][:7]}:
        return False
    owner = following in _OWNING and any(e[0] == "group" for e in named.entries)
    if owner and not lexicon.is_part(tokens[named.after - 1].word):
        return False
    if single and _guessed(named, tokens, lexicon):
        return False
    if _always_fish(named, tokens, lexicon):
        return _colour_follows(named, tokens, lexicon)
    longer = any(own < set(h.at) and (h.phrase.kind == "character" or h.phrase.alone) and _of_one_piece(h, lexicon)
                 for h in here)
    short = all(e[2] == "short" for e in named.entries)
    if short and "common-word" in lexicon.cues(tokens[named.first].word):
        return True
    if short and len(tokens) > 6:
        return not set(_before(named, tokens)[:1]) & {"a", "an", "the", "for", "my", "of"}
    if single:
        return _word_is_feature(named, longer, tokens, lexicon)
    loose = named.split or all(e[2] in ("vernacular", "ambiguous") for e in named.entries)
    if loose and tokens[named.after - 1].word == "fish" and len(tokens) > 3 and not named.outside:
        return not _kind_apart(named, tokens, lexicon) and lexicon.head(tokens[named.first].word) is not None
    if not (named.split or _two_plain_words(named, tokens, lexicon)):
        return False
    if not (longer or any(own == set(h.at) and h.phrase.kind == "state" and not h.phrase.denies for h in here)):
        return False
    before = _before(named, tokens)
    if longer or told or (_HAS | _ADVERBS) & set(before) or _noun_follows(named, tokens, lexicon):
        return True
    listed = before[:1] in (["a"], ["an"]) and bool((_ALSO | _FROM) & set(before[1:]))
    return described and (listed or before[:1] not in (["a"], ["an"], ["this"], ["that"]))


def _kind_apart(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a name whose kind is written as two words ("green sun fish"); a "round white fish" is none."""
    kind = tokens[named.after - 2].word
    return (named.after - named.first > 2 and lexicon.head(kind) is None
            and any(e[0] == "group" for e in lexicon.spoken(kind + tokens[named.after - 1].word)))


def _word_is_feature(named: Named, longer: bool, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """Whether a single word that could be a name describes the fish; ``longer`` when it is part of a longer phrase."""
    word = tokens[named.first].word
    loose = all(e[0] == "group" or e[2] == "ambiguous" for e in named.entries)
    if loose and lexicon.is_part(word):
        return not ("strict-name" in lexicon.cues(word) and _heads(named, tokens, lexicon))
    if "weak-name" in lexicon.cues(word):
        return _weak_alone(named, tokens)
    return longer or (_weak(named, tokens, lexicon) and len(tokens) > 2)


def _asked_apart(hit: Hit, found: _Found, tokens: Sequence[Token]) -> bool:
    """True for a phrase that a question cuts in two ("on bass do you pinch the tail" tells of no tail of a bass)."""
    own = [i for i, n in found.by_token.items() if n in hit.at]
    return bool(_ASKER & {t.word for t in tokens[min(own) : max(own)]})


_ASKER = word_set("you i we ya")


def _one_of_kind(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for "a redeye" or "redeye, ...": two words written as one, told as a fish, not as what it has."""
    token = tokens[named.first]
    article = named.first > 0 and tokens[named.first - 1].word in ("a", "an")
    alone = len(tokens) > 1 and sum(t.clause == token.clause for t in tokens) == 1
    return (article or alone) and not _HAS & set(_before(named, tokens)) and any(lexicon.joined(token.word))


def _of_looks(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True where a word of a name is a colour or a part of a fish; "shell cracker" holds neither."""
    words = {w for t in tokens[named.first : named.after] for w in (t.word, singular(t.word))}
    return any(lexicon.head(w) is not None or lexicon.is_part(w) or lexicon.names_part(w) for w in words)


def _weak_alone(named: Named, tokens: Sequence[Token]) -> bool:
    """True for an everyday word in a line that gives it no article and does not say that it is what was meant."""
    subject = not named.first and tokens[1:] and tokens[1].word in _WITH
    clause = tokens[named.first].clause
    ends = all(t.clause != clause for t in tokens[named.after : named.after + 1])
    if ends and named.first and tokens[named.first].word.endswith("s") and all(
            t.word in _ADDING for t in tokens[: named.first]):
        return False
    return len(tokens) > 1 and not subject and not (len(tokens) < 5 and set(_before(named, tokens)[:1]) & _NAMING)


_ADDING = word_set("and n or what how about now then so ok")
"""Words before a plural that is one more fish ("and pinks, how do they differ")."""
_NAMING = word_set("a an meant mean")
_WITH = word_set("with w that having")
"""Words behind the fish that a line begins with ("perch with orange fins")."""
_OWNING = word_set("have has got are were")
"""Words after the name of a group that make it the subject of the line."""


def _group_left(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> Named | None:
    """The group word at the end of a name that only describes ("olive green bass" is a bass)."""
    last = tokens[named.after - 1].word
    if named.after - named.first < 2 or not _coloured(named, tokens, lexicon) or lexicon.is_part(last):
        return None
    entries = tuple(e for e in lexicon.spoken(last) if e[0] in ("group", "taxon"))
    return named._replace(first=named.after - 1, entries=entries, phrase="") if entries else None


def _coloured(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a colour and a noun after one more word for a colour ("olive green bass", "bright green fish"), and for
    a shape and a noun ("a two-inch round sunfish")."""
    if any_coloured_fish(named, tokens, lexicon):
        return True
    if named.after - named.first != 2 or named.first == 0 or lexicon.head(tokens[named.first].word) is None:
        return False
    before = tokens[named.first - 1]
    shade = lexicon.head(before.word) in lexicon.tints or before.word in _SHADES
    return shade and before.word != "plain" and before.clause == tokens[named.first].clause


def _of_one_piece(hit: Hit, lexicon: Lexicon) -> bool:
    """True for a feature of the fish, or words on its life that stand together ("trout stream")."""
    return lexicon.on_fish(hit.phrase.id.partition(".")[0]) or max(hit.at) - min(hit.at) < len(hit.at)


def _heads(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a word that is a part as well as a group and here the fish itself ("big sucker, 15 in")."""
    before = _before(named, tokens)
    if (_HAS | _FORMING) & set(before) or (before and lexicon.is_part(before[0])):
        return False
    following = tokens[named.after] if named.after < len(tokens) else None
    if following is None or following.clause != tokens[named.first].clause:
        return True
    return not (lexicon.names_part(following.word) or following.word in _SHAPED)


def _always_fish(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a single word that is hardly ever used of anything but a fish, unless it is a part as well."""
    word = tokens[named.first].word
    return named.after - named.first == 1 and "strict-name" in lexicon.cues(word) and not lexicon.is_part(word)


def _colour_follows(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True before a word for a colour or a part ("salmon pink", "salmon coloured", "salmon belly")."""
    if named.after >= len(tokens) or tokens[named.after].clause != tokens[named.first].clause:
        return False
    word = tokens[named.after].word
    counted = any(s.text in lexicon.count_nouns for s in lexicon.stems([word]))
    tint = lexicon.head(tokens[named.first].word) is not None
    sized = any(c.startswith((*_OF_THE_FISH, _SORTING)) for c in lexicon.cues(word))
    coloured = lexicon.head(word) in lexicon.tints and not counted and not sized
    return coloured or word in _COLOURED or (tint and lexicon.names_part(word))


def _guessed(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a word that ends its clause after a phrase by which names are offered ("could be a spot tho")."""
    clause = tokens[named.first].clause
    rest = [t.word for t in tokens[named.after :] if t.clause == clause]
    if any("trailing" not in lexicon.cues(w) for w in rest):
        return False
    before = [t.word for t in tokens[max(0, named.first - 4) : named.first] if t.clause == clause]
    article = before[-1:] in (["a"], ["an"])
    word = tokens[named.first].word
    if before[-1:] == ["this"] and any(c.startswith("season-") for c in lexicon.cues(word)):
        return False
    its_part = bool((ITS | {"the"}) & set(before[-1:])) and lexicon.is_part(word)
    if not article and (its_part or lexicon.head(word) is not None):
        return False
    before = before[:-1] if article else before
    if "weak-name" in lexicon.cues(word) and (before[-1:] == ["or"] or (before[-1:] == ["it"] and not article)):
        return False
    return any("names-next" in lexicon.cues(" ".join(before[i:])) for i in range(len(before)))


def _stemmed(
    named: Named, tokens: Sequence[Token], content: Sequence[Content], found: _Found, lexicon: Lexicon
) -> bool:
    """True for a name that a feature is read in only by its stem ("striper" tells of no stripe, "eel" of an eel)."""
    at = found.by_token.get(named.first)
    word = tokens[named.first].word
    return at is not None and content[at].stem != singular(word) and lexicon.head(word) is None


def _compared(named: Named, found: _Found, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True when a fish from elsewhere is only part of a description ("a tail like a shark")."""
    own = {found.by_token[i] for i in range(named.first, named.after) if i in found.by_token}
    described = any(own < set(h.at) for p in sorted(own) for h in found.at.get(p, ()))
    return described or any(likeness(named, tokens, lexicon))


class _Found(NamedTuple):
    """The hits of a line by content position, those of phrases that stand alone, and content positions by token."""

    at: Mapping[int, Sequence[Hit]]
    alone: Sequence[Hit]
    by_token: Mapping[int, int]


def _found(content: Sequence[Content], hits: Sequence[Hit]) -> _Found:
    at: dict[int, list[Hit]] = {}
    for hit in hits:
        for position in set(hit.at):
            at.setdefault(position, []).append(hit)
    alone = [h for h in hits if h.phrase.kind == "state" and h.phrase.alone]
    return _Found(at, alone, {i: n for n, c in enumerate(content) for i in range(c.first, c.last + 1)})


def _describes(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for two words that are a feature as well as a name, with no article before them ("small mouth"); for a part
    that is all of the line.
    """
    if len(tokens) == 1 and lexicon.is_part(tokens[0].word):
        return True
    if not (named.split or _two_plain_words(named, tokens, lexicon)) or not lexicon.is_part(
        tokens[named.after - 1].word
    ):
        return False
    before = _before(named, tokens)
    return not {"a", "an"} & set(before) or bool(_HAS & set(before))


def _noun_follows(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True when the words stand before a noun of a description ("a red cut throat mark")."""
    if named.after >= len(tokens) or tokens[named.after].clause != tokens[named.first].clause:
        return False
    word = tokens[named.after].word
    return word == "fish" or lexicon.is_part(word) or (lexicon.head(word) in _MARKS)


def _before(named: Named, tokens: Sequence[Token]) -> list[str]:
    """The words just before a name, small ones and adverbs passed over, the nearest first."""
    out: list[str] = []
    for i in range(named.first - 1, max(-1, named.first - 5), -1):
        if tokens[i].clause != tokens[named.first].clause:
            break
        out.append(tokens[i].word)
        if tokens[i].word not in DROPPED and tokens[i].word not in _ADVERBS:
            break
    return out


_MARKS = word_set("spot spots bar bars stripe stripes speck specks streak edge")
_COLOURED = word_set("coloured colored colour color tinted")
_FORMING = word_set("into form forming like to by into joined fused its")
_SHAPED = word_set("shaped like type kind style under below")
_SORTING = "contrast"
"""The cue of words for telling fishes from each other ("apart"), which are no words for a look."""
_OF_THE_FISH = ("sex-", "stage-", "size-")
"""How the cues begin of words for a fish as a whole ("female", "young", "big"), which are no colours."""
_SHADES = word_set("bright dark pale light dull deep shiny")
_SMALL_TALK = word_set("just a an only maybe baby young little small some plain regular")
"""Words that may stand between two fishes set against each other ("or just a baby long ear")."""
_ADVERBS = word_set("all very so really super kinda sorta totally all mostly bright dark pale solid")


def _weak(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a single word that is a colour, a mark or a part as often as a name."""
    if named.after - named.first > 1:
        return False
    word = tokens[named.first].word
    return lexicon.head(word) is not None or lexicon.is_part(word) or "weak-name" in lexicon.cues(word)


def _two_plain_words(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    return named.after - named.first == 2 and lexicon.is_part(tokens[named.after - 1].word)


def _beside_name(named: Named, names: Sequence[Named], tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True when only a joining word, or a comma between plain names, parts it from another name ("red ear or gill")."""
    for other in names:
        if other is named or not other.entries or _both_plain(named, other, tokens, lexicon):
            continue
        if _weak(named, tokens, lexicon) and _place_follows(named, tokens):
            continue
        first, second = (other, named) if other.after <= named.first else (named, other)
        gap = tokens[first.after : second.first]
        if not _noun_follows(second, tokens, lexicon):
            gap = [t for t in gap if t.word not in _SMALL_TALK]
        out_of = len(gap) == 2 and gap[0].word == "from" and _weak(second, tokens, lexicon)
        denied = any(t.word == "not" for t in gap) and _weak(second, tokens, lexicon)
        if len(gap) <= 2 and any(t.word in _AGAINST for t in gap) and not (out_of or denied):
            return True
        plain = _two_plain_words(named, tokens, lexicon) and not named.split
        short = not _weak(named, tokens, lexicon) and (len(tokens) <= 4 or named.after - named.first != 2) and not plain
        if not gap and short and tokens[second.first].clause != tokens[first.after - 1].clause:
            return True
    return False


def _place_follows(named: Named, tokens: Sequence[Token]) -> bool:
    """True before a word that says where on the fish a mark is ("bluegill and spots on its side")."""
    clause = tokens[named.first].clause
    return named.after < len(tokens) and tokens[named.after].clause == clause and tokens[named.after].word in _LYING_ON


_LYING_ON = word_set("on all down along over near behind by across")


def _both_plain(a: Named, b: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for two colours or marks side by side, hardly two fishes ("red and blue", "red eye and vertical bars")."""
    if not all(_weak(n, tokens, lexicon) or _two_plain_words(n, tokens, lexicon) for n in (a, b)):
        return False
    first, second = sorted((a, b), key=lambda n: n.first)
    if not (_weak(a, tokens, lexicon) or _weak(b, tokens, lexicon)):
        gap = tuple(t.word for t in tokens[first.after : second.first])
        return gap in (("and", "a"), ("and", "an")) and not _SORTED & {t.word for t in tokens}
    if _offered_of_kin(first, second, tokens, lexicon):
        return False
    described = second.first - first.after > 1 and _weak(second, tokens, lexicon)
    return described or len(tokens) > 5 or all(lexicon.is_part(tokens[n.after - 1].word) for n in (a, b))


MOST_OFFERED = 4
_SORTED = word_set("tell difference between compare vs versus apart or both same cross which from what's whats")
"""Words of a line that sets two fishes side by side, not of two features of one ("a red eye and a big mouth")."""


def _offered_of_kin(first: Named, second: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for two fishes of one genus that are set against each other in few words ("silver or king, small ones")."""
    clause = tokens[first.first].clause
    if tokens[second.first].clause != clause or sum(t.clause == clause for t in tokens) > MOST_OFFERED:
        return False
    kin = [{lexicon.kb.lineage(e[1])[1] for e in n.entries if e[0] == "taxon" and len(lexicon.kb.lineage(e[1])) > 1}
           for n in (first, second)]
    offered = any(t.word in _OFFERING for t in tokens[first.after : second.first])
    return offered and bool(kin[0] & kin[1])


_OFFERING = word_set("or r vs versus v")


def _by_kin(mentions: Sequence[Mention], lexicon: Lexicon) -> list[Mention]:
    """The mentions; a loose name beside fishes of one genus is the fish of that genus properly called so ("white
    perch" beside the white bass).
    """
    kb = lexicon.kb
    clear = {m.ids[0] for m in mentions
             if m.kind in ("taxon", "likeness") and len(m.ids) == 1 and kb.find("taxon", m.ids[0])}
    genera = {kb.lineage(t)[1:2] for t in clear}
    out = []
    for m in mentions:
        own = [t for t in m.ids if m.ambiguous and key(kb.taxon(t).label) == m.words] if m.kind == "taxon" else []
        alike = len(own) == 1 and not clear & set(m.ids) and kb.lineage(own[0])[1:2] in genera
        out.append(m._replace(ids=tuple(own), ambiguous=False) if alike else m)
    return out
