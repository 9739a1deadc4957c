"""Names cut short that their company completes: "chain or redfin pickerel", "sockeye, chum and pink" (layer 4).

A word that stands beside a named fish, joined to it or set off by a comma, may be the first part of a name whose last
word is the neighbour's ("spotted" beside "largemouth bass" is a spotted bass). The last words tried are the one typed,
those of the neighbour's English name and, where the two are set against each other, that of its family.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from assistant.dialogue.reader.fished_for import ARTICLES, WATERS, heads_two
from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.names_found import Named
from assistant.dialogue.reader.tokens import Token
from assistant.text import key, singular, unique, word_set

_JOINING = word_set(
    "and or r vs versus against n from v not than as be between x cross crossed with half beside alongside")
_AGAINST = word_set("or r vs versus against from v than not x cross crossed half beside alongside")
_CROSSING = word_set("cross crossing crossin crossed crossbreed breed breeding breedin")
_TWO_WAYS = word_set("from or vs versus v r")
"""Words that set two kinds of a group named elsewhere in the line against each other ("crappies: black from white")."""
_ASKED_WHICH = word_set("it its it's this that mine one tell if whether them called split telling between")
_KINDS = word_set("which kind kinds sort type types")
_SMALL_TALK = word_set("just old young big small little plain real regular baby good ol maybe only other")
_ENDING = word_set("one ones kind kinds too either guy fella feller fellow cross crosses hybrid hybrids mix")
_FILLING = word_set(
    "and or the a an what about how v vs versus one ones then ok so which to compare with for is not no i mean meant "
    "now same s n look looks kind type sort guy fella feller fellow length lenght size long big weight "
    "would go weigh inch in cm lb just only inches centimeter centimetre centimeters centimetres metric mm lbs pound "
    "pounds ounce ounces oz kg kilo kilos gram grams please pls its his her their relative relatives cousin cousins "
    "kin brother sister cousin's other")
_PARTING = word_set("when if in by on at where while because since without after before during once w with cause")
"""Words that begin something else said of the fishes ("black bullhead from brown when all I can do is feel")."""
_CALLING = word_set(
    "call calls called said says say claims claimed insists swears swear thinks think thought reckons reckon named")
_PEOPLE = word_set(
    "folk folks people anglers fishermen friends buddies guys cousins relatives neighbors neighbours kin")
_ITS_NAME = word_set("it its it's that this him them a an the is was to be")
_ASKING = word_set(
    "and n or v vs versus about one ones guy fella feller fellow mean meant compare kind look looks like same just "
    "only")
MOST_HELD, MOST_AT_ONCE = 8, 2
"""A longer line is not read as a word beside the fishes spoken of before."""


def with_company(tokens: Sequence[Token], found: Sequence[Named], lexicon: Lexicon) -> list[Named]:
    """The names found, with those that are cut short beside them."""
    out = _told_apart(tokens, [n for n in found if not _names_people(n, tokens, lexicon)], lexicon)
    before = out
    out = _two_of_group(tokens, out, lexicon)
    whole = [n for n in out if not tells_of_part(n, tokens, lexicon)]
    waiting = sorted((n for n in whole if n.entries and (heads_two(n, tokens) or not _is_look(n, tokens, lexicon))),
                     key=lambda n: _is_part(n, tokens, lexicon))
    completed = {n.span for n in out if n not in before}
    while waiting:
        named = waiting.pop(0)
        if named not in out:
            continue
        for step in (-1, 1):
            beside = _beside(tokens, named, step, out, lexicon)
            made = _made(tokens, beside, _last_words(named, tokens, lexicon, _against(tokens, named, step)), lexicon)
            if made is not None and made.span not in completed and not _is_coloured(made, tokens, lexicon):
                completed.add(made.span)
                full = any(n.span == made.span and {e[1] for e in n.entries} == {e[1] for e in made.entries}
                            for n in out if not n.cut and not _is_part(n, tokens, lexicon))
                loose = step > 0 and not sorted_out(tokens) and not full and _is_noun_of(named, made, tokens)
                spare = named.span if loose else made.span
                out = [n for n in out if n.span not in (made.span, spare)]
                out.append(made)
                waiting.insert(0, made)
    kinds = unique(singular(tokens[n.after - 1].word) for n in found if _of_group(n))
    row = {n.span: n for n in (*_in_row(tokens, out, kinds, lexicon), *_row_heads(tokens, out))}
    return sorted([*(n for n in out if n.span not in row), *row.values()], key=lambda n: n.first)


def _is_coloured(made: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a colour behind a fish's name of which it is told where it lies ("sunfish, green on top")."""
    behind = tokens[made.after : made.after + 1]
    return (lexicon.head(tokens[made.first].word) in lexicon.tints and bool(behind)
            and behind[0].clause == tokens[made.first].clause and behind[0].word in _LYING_ON)


_LYING_ON = word_set("on above below under underneath over all along down through toward towards with")


def _in_row(
    tokens: Sequence[Token], found: Sequence[Named], kinds: Iterable[str], lexicon: Lexicon
) -> list[Named]:
    """Look words by themselves beside lone names of the kinds of a group named in the line ("trout: brook, brown")."""
    alone = {tokens[n.first].clause for n in found
             if n.after - n.first == 1 and not _of_group(n) and not _is_look(n, tokens, lexicon)}
    sizes = Counter(t.clause for t in tokens if t.word not in _JOINING)
    lone = (i for i, t in enumerate(tokens)
            if t.word not in _JOINING and sizes[t.clause] == 1 and t.clause not in alone)
    kinds, made = tuple(kinds), []
    for i in lone:
        if any(sizes[c] == 1 and c in alone for c in _next_to(tokens[i].clause)):
            made.append(_made(tokens, i, kinds, lexicon))
        elif near := [n for n in found if n.entries and not _of_group(n) and _across_comma(tokens, n, i)]:
            nouns = unique(w for n in near for w in _last_words(n, tokens, lexicon, wide=True))
            made.append(_made(tokens, i, (*kinds, *nouns), lexicon) if len(near) > 1 else None)
    return [n._replace(listed=True) for n in made if n is not None and any(e[2] == "accepted" for e in n.entries)]


def _row_heads(tokens: Sequence[Token], found: Sequence[Named]) -> list[Named]:
    """Names cut short that a row ends in full behind a comma ("black, brown or yellow bullhead")."""
    heads: list[Named] = []
    for at, whole in enumerate(sorted(found, key=lambda n: n.first)):
        noun = singular(tokens[whole.after - 1].word)
        joined = whole.first > 0 and tokens[whole.first - 1].word in _IN_A_ROW
        if whole.cut or whole.after - whole.first < 2 or not joined:
            continue
        start = whole.first
        for named in reversed(sorted(found, key=lambda n: n.first)[:at]):
            between = tokens[named.after : start]
            if not (named.cut and named.phrase.endswith(f" {noun}") and all(t.word in _IN_A_ROW for t in between)):
                break
            start = named.first
            if tokens[start].clause != tokens[whole.first].clause:
                heads.append(named._replace(listed=True))
    return heads


_IN_A_ROW = word_set("and or n vs versus nor")


def _across_comma(tokens: Sequence[Token], named: Named, at: int) -> bool:
    """True for a name that ends right before the clause of a token, or begins right behind it."""
    before = named.after == at and tokens[named.first].clause == tokens[at].clause - 1
    return before or (named.first == at + 1 and tokens[named.first].clause == tokens[at].clause + 1)


def _next_to(clause: int) -> tuple[int, int]:
    return clause - 1, clause + 1


def held_company(
    tokens: Sequence[Token], found: Sequence[Named], taxa: Iterable[str], lexicon: Lexicon, answering: bool = False
) -> list[Named]:
    """The names found, or in "and the white?" the one that the fishes spoken of before (``taxa``) make of a word.

    Where the line may answer what was asked of a mark (``answering``), only a word that somebody calls the fish by.
    """
    known = [t for t in taxa if lexicon.kb.find("taxon", t)]
    found = _by_first_word(tokens, found, known, lexicon)
    rest = _called(tokens, lexicon)
    if not rest and (not answering or tokens[0].word in _AGAINST):
        rest = [i for i, t in enumerate(tokens) if t.word not in _FILLING and not t.word.isdigit()]
    words = {t.word for t in tokens}
    if not 1 <= len(rest) <= MOST_AT_ONCE or len(tokens) > MOST_HELD or not words & (_ASKING | _CALLING) or any(
            n.first not in rest and not _is_part(n, tokens, lexicon) for n in found):
        return list(found)
    nouns = unique(w for words in (_label_words, _family_words) for t in known for w in words(t, lexicon))
    made = [_made(tokens, at, nouns, lexicon) for at in rest]
    full = [n for n in made if n is not None and all(e[2] == "accepted" for e in n.entries)]
    if len(full) < len(rest):
        return list(found)
    spans = {n.span for n in full}
    return [*(n for n in found if n.span not in spans), *full]


def _by_first_word(
    tokens: Sequence[Token], found: Sequence[Named], known: Sequence[str], lexicon: Lexicon
) -> list[Named]:
    """The names found, with the fishes spoken of that are called by the first word of their names ("are whites
    bigger" after the crappies)."""
    firsts = {i: one for i, t in enumerate(tokens) if (one := singular(t.word)) != t.word and not lexicon.is_part(one)}
    if not firsts or not known:
        return list(found)
    out, kinds = list(found), {s for t in known for s in (t, *lexicon.kb.members(t))}
    nouns = unique(w for t in sorted(kinds) for w in _label_words(t, lexicon))
    for at, first in firsts.items():
        made = _made(tokens, at, nouns, lexicon)
        if made is not None and made.phrase.startswith(f"{first} ") and all(
                e[1] in kinds and e[2] == "accepted" for e in made.entries):
            out = [*(n for n in out if n.span != made.span), made]
    return sorted(out, key=lambda n: n.first)


def _called(tokens: Sequence[Token], lexicon: Lexicon) -> list[int]:
    """The word that somebody is told to have called the fish ("my buddy called it black")."""
    for at, token in enumerate(tokens):
        if token.word in _CALLING:
            after = next((i for i in range(at + 1, len(tokens)) if tokens[i].word not in _ITS_NAME), None)
            if after is not None and tokens[after].clause == token.clause and _ends(tokens, after + 1, lexicon):
                return [after]
    return []


def sorted_out(tokens: Sequence[Token]) -> bool:
    """True for a line that asks which of some fishes are of a kind ("which of these is a char: brook, brown")."""
    return tokens[0].word == "which" and len(tokens) > 1 and tokens[1].word == "of"


def _is_noun_of(named: Named, made: Named, tokens: Sequence[Token]) -> bool:
    """True for a loose name that is but the last word of those told after it ("perch, white or yellow")."""
    loose = len({e[1] for e in named.entries}) > 1 or any(e[0] == "group" for e in named.entries)
    if loose and heads_two(named, tokens):
        return True
    noun = singular(tokens[named.after - 1].word)
    return loose and named.after - named.first == 1 and made.phrase.endswith(f" {noun}")


def _told_apart(tokens: Sequence[Token], found: Sequence[Named], lexicon: Lexicon) -> list[Named]:
    """The names found; one that is the first word of several is that of its company ("longnose" beside a gar)."""
    nouns = unique(w for n in found if n.after - n.first > 1 for w in _last_words(n, tokens, lexicon, wide=False))
    if _KINDS & {t.word for t in tokens}:
        of_groups = (singular(tokens[n.after - 1].word) for n in found if any(e[0] == "group" for e in n.entries))
        nouns = unique([*nouns, *of_groups])
    out = []
    for named in found:
        part = _is_part(named, tokens, lexicon) and not _is_look(named, tokens, lexicon)
        made = _made(tokens, named.first, nouns, lexicon) if part else None
        out.append(named if made is None else made)
    return out


def _two_of_group(tokens: Sequence[Token], found: Sequence[Named], lexicon: Lexicon) -> list[Named]:
    """The names found, with the two kinds of a group named before them that are told apart by their first words."""
    groups = [n for n in found if _of_group(n)]
    for at in range(1, len(tokens) - 1):
        if tokens[at].word not in _TWO_WAYS or not _ends(tokens, at + 2, lexicon) or (
                tokens[at].word != "from" and tokens[at - 2 : at - 1] and tokens[at - 2].word not in _ASKED_WHICH
                and not _headed(tokens, at - 1, groups) and not _asked_last(tokens, at, groups)):
            continue
        nouns = unique(w for n in groups if n.after < at for w in _last_words(n, tokens, lexicon, wide=False))
        made = [m for m in (_made(tokens, at - 1, nouns, lexicon), _made(tokens, at + 1, nouns, lexicon))
                if m is not None and all(e[2] == "accepted" for e in m.entries)]
        if len(made) == 2 and made[0].entries != made[1].entries:
            spans = {m.span for m in made}
            rest = [n for n in found if n.span not in spans and not (_of_group(n) and n.after < at)]
            return sorted([*rest, *made], key=lambda n: n.first)
    return list(found)


def _headed(tokens: Sequence[Token], at: int, groups: Sequence[Named]) -> bool:
    """True for words behind a group's name that heads a question ("bullhead question: brown or black")."""
    return any(g.first == 0 and all(t.word in _HEADING for t in tokens[g.after : at]) and g.after < at for g in groups)


def _asked_last(tokens: Sequence[Token], at: int, groups: Sequence[Named]) -> bool:
    """True for two kinds that end a line begun with their group ("bullhead, dark whiskers, black or brown")."""
    alone = tokens[at - 2].clause != tokens[at - 1].clause
    return alone and at + 2 == len(tokens) and any(g.first <= 1 for g in groups)


_HEADING = word_set("question questions quick help id here so time again")
"""Words between a group and two of its kinds that say no more than that something is asked."""


def _is_part(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a single word that is only the first of a fish's English name."""
    word = singular(tokens[named.first].word)
    labels = [key(lexicon.kb.taxon(e[1]).label).split() for e in named.entries if e[0] == "taxon"]
    return named.after - named.first == 1 and bool(labels) and all(w[0] == word and len(w) > 1 for w in labels)


def _names_people(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for "northern" in "what do northern folks call it": the first word of a fish's name that tells of people."""
    after = tokens[named.after : named.after + 1]
    return _is_part(named, tokens, lexicon) and bool(after) and after[0].word in _PEOPLE and (
        after[0].clause == tokens[named.first].clause)


_SORT_OF = word_set("kinda kind of like type sized size style shaped sort ish")


def tells_of_part(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for "bass" in "bass kinda mouth": a kind of fish whose part it is like, not one of a row of kinds."""
    if not _of_group(named):
        return False
    clause = tokens[named.first].clause
    behind = next((t for t in tokens[named.after : named.after + 4] if t.word not in _SORT_OF), None)
    return behind is not None and behind.clause == clause and lexicon.is_part(singular(behind.word))


def _of_group(named: Named) -> bool:
    """True for a name of a whole group, which needs no completing ("bullhead" beside a madtom)."""
    return any(e[0] == "group" for e in named.entries)


def _is_look(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a single word that says what a fish looks like before it names one ("blue", "white")."""
    word = tokens[named.first].word
    return named.after - named.first == 1 and (lexicon.head(word) is not None or "weak-name" in lexicon.cues(word))


def _beside(
    tokens: Sequence[Token], named: Named, step: int, out: Sequence[Named], lexicon: Lexicon
) -> int | None:
    """The token next to a name that may be a name cut short; None where none can be."""
    at = named.first - 1 if step < 0 else named.after
    joined = False
    between = ARTICLES | _SMALL_TALK
    for joining in ((False, True) if step < 0 else (True, False)):
        while 0 <= at < len(tokens) and (_joins(tokens, at) if joining else tokens[at].word in between):
            joined = joined or joining
            at += step
    at = _past_calling(tokens, at, step)
    if not 0 <= at < len(tokens):
        return None
    edge = named.first if step < 0 else named.after - 1
    if step < 0 and at and tokens[at - 1].word in _BEING and tokens[at - 1].clause != tokens[edge].clause:
        return None
    if not joined and (tokens[at].clause == tokens[edge].clause or tokens[at].sentence != tokens[edge].sentence):
        return None
    if any(n.first <= at < n.after and (n.after - n.first > 1 or _of_group(n)) for n in out):
        return None
    if not joined and lexicon.is_part(tokens[at].word):
        return None
    if step > 0 and tokens[at - 1].word in _HAVING and [t.word for t in tokens[at + 1 : at + 2]] in _PLACING:
        return None
    return at if step < 0 or _ends(tokens, at + 1, lexicon) else None


_HAVING, _PLACING = word_set("with w"), (["on"], ["along"], ["down"], ["round"], ["around"])
"""Words between a fish and a colour of it, and behind that colour ("bass with white on the tail")."""
_BEING = word_set("was were is are looked seemed")
"""Words before a look that is told of a part, not cut short of a name ("the spots were blue, sunfish ...")."""


def _past_calling(tokens: Sequence[Token], at: int, step: int) -> int:
    """The token behind (or before) the few words by which somebody calls a fish otherwise ("..., i say white")."""
    if step > 0:
        said = next((i for i in range(at, min(at + MOST_SAYING, len(tokens))) if tokens[i].word in _CALLING), None)
        if said is None or any(tokens[i].clause != tokens[said].clause for i in range(at, said)):
            return at
        after = next((i for i in range(said + 1, len(tokens)) if tokens[i].word not in _ITS_NAME), len(tokens))
        return after if after == said + 1 or tokens[after - 1].word in ARTICLES else at
    back = at
    while back >= 0 and tokens[back].word in _ITS_NAME:
        back -= 1
    if back < 0 or tokens[back].word not in _CALLING:
        return at
    before = (i for i in range(back - 1, max(-1, back - MOST_SAYING) - 1, -1)
              if i >= 0 and tokens[i].clause != tokens[back].clause)
    return next(before, at)


MOST_SAYING = 4
"""Words before which somebody who calls a fish otherwise has said so ("the other guy here says ...")."""


def _joins(tokens: Sequence[Token], at: int) -> bool:
    """True for a word that sets names beside or against each other; "of" only in "instead of", "to" in "next to"."""
    word = tokens[at].word
    paired = (tokens[at - 1].word if at else "", word) in _PAIRS
    leads = (word, tokens[at + 1].word if at + 1 < len(tokens) else "") in _PAIRS
    return word in _JOINING or word == "instead" or paired or leads


_PAIRS = frozenset({("instead", "of"), ("next", "to"), ("compared", "to"), ("compared", "with")})


def _ends(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> bool:
    """True where nothing that the word before could qualify follows."""
    return (at >= len(tokens) or tokens[at].clause != tokens[at - 1].clause
            or tokens[at].word in _JOINING | _ENDING | _PARTING or "trailing" in lexicon.cues(tokens[at].word))


def _against(tokens: Sequence[Token], named: Named, step: int) -> bool:
    before = tokens[max(0, named.first - 3) : named.first]
    near = before if step < 0 else tokens[named.after : named.after + 2]
    return any(t.word in _AGAINST for t in near) or any(t.word in _CROSSING for t in before)


def _last_words(named: Named, tokens: Sequence[Token], lexicon: Lexicon, wide: bool) -> tuple[str, ...]:
    typed = [singular(tokens[named.after - 1].word)]
    taxa = unique(e[1] for e in named.entries if e[0] == "taxon" and e[2] != "ambiguous")
    taxa = taxa or unique(e[1] for e in named.entries if e[0] == "taxon")
    groups = (lexicon.kb.find("group", e[1]) for e in named.entries if e[0] == "group")
    kinds = [singular(key(g.label).split()[-1]) for g in groups if g is not None]
    if len(taxa) > 1:
        shared = unique(w for t in taxa for w in _label_words(t, lexicon))
        return unique([*typed, *kinds, *(shared if len(shared) == 1 else ())])
    words = [w for t in taxa for w in _label_words(t, lexicon)]
    family = [w for t in taxa if wide for w in _family_words(t, lexicon)]
    return unique([*typed, *words, *family, *kinds])


def _label_words(taxon: str, lexicon: Lexicon) -> Iterator[str]:
    found = lexicon.kb.taxon(taxon)
    if found.is_species or found.rank == "genus":
        yield singular(key(found.label).split()[-1])


def _family_words(taxon: str, lexicon: Lexicon) -> Iterator[str]:
    """The kind of fish in the label of its family ("sunfish family")."""
    label = key(lexicon.kb.taxon(lexicon.kb.lineage(taxon)[-1]).label).split()
    if len(label) > 1 and label[-1] == "family":
        yield label[-2]


def _made(tokens: Sequence[Token], at: int | None, nouns: Iterable[str], lexicon: Lexicon) -> Named | None:
    """The name that the token makes with one of these last words, an accepted one before others."""
    if at is None or (tokens[at].word in WATERS and at and tokens[at - 1].word in ARTICLES):
        return None
    single = singular(tokens[at].word)
    head = None if tokens[at].word.endswith("ish") else lexicon.head(tokens[at].word)
    found: list[Named] = []
    for word in unique([tokens[at].word, *([head] if head else []), single, f"{single}ed", f"{single}{single[-1:]}ed"]):
        for noun in nouns:
            phrase = f"{word} {noun}"
            entries = tuple(e for e in lexicon.spoken(phrase)
                            if e[0] == "taxon" and e[2] != "ambiguous" and not lexicon.kb.taxon(e[1]).is_hybrid)
            if word != noun and entries:
                found.append(Named(at, at + 1, entries, phrase=phrase, cut=True))
    accepted = [n for n in found if any(e[2] == "accepted" for e in n.entries)]
    return next(iter([*accepted, *found]), None)
