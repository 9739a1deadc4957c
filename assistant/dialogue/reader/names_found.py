"""Names of fishes in typed text: as written, split, joined, plural, misspelt; and fishes the base lacks (layer 4)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from assistant.dialogue.reader.lexicon import KIND, Entry, Lexicon
from assistant.dialogue.reader.tokens import Token
from assistant.model.spelling import distance
from assistant.text import singular, unique, word_set

APART_TWICE = 4
"""Words of a name that is written apart twice ("red ear sun fish")."""
LONGEST = 6
KINDS = ("taxon", "group")
FULL = ("accepted", "scientific")
"""Names that mean one fish however they are written."""
SHORT_LATIN = 6
"""A misspelt word is not mended to a scientific word of so few letters ("chena" is a river, no Channa)."""
OUTSIDE = "outside-fish"
"""The cue family of fishes that are not of these waters."""
AT_SEA = "at-sea"
"""The cue family of words by which a line speaks of the sea: a nickname that is also a sea fish then means that."""
SEA_WORDS = 3
"""Words in the longest of them."""
AND = "and"
NO_FISH = "no-fish"
"""The cue family of things whose names begin like the name of a fish ("dollar bill")."""


class Named(NamedTuple):
    """A stretch of tokens that names a fish or a group: what the words stand for, and how they were matched.

    Without entries it is a fish from elsewhere (``outside``), or a thing that is no fish at all. ``cut`` when only a
    part of the name is typed, and its neighbours tell the rest; ``listed`` when it stands in a row of such.
    """

    first: int
    after: int
    entries: tuple[Entry, ...]
    exact: bool = True
    split: bool = False
    outside: bool = False
    phrase: str = ""
    cut: bool = False
    listed: bool = False

    @property
    def span(self) -> tuple[int, int]:
        """The token positions it covers."""
        return self.first, self.after


def find_names(tokens: Sequence[Token], lexicon: Lexicon, blocked: frozenset[int] = frozenset()) -> tuple[Named, ...]:
    """Everything that is called by a name, longest first from the left, then misspelt names among what is left.

    Tokens in ``blocked`` belong to something else, as to the name of a water.
    """
    found: list[Named] = []
    at = 0
    sea = _at_sea(tokens, lexicon)
    while at < len(tokens):
        named = None if at in blocked else _longest_at(tokens, at, lexicon, sea)
        if named:
            found.append(named)
        at = named.after if named else at + 1
    found = _with_misspelt(tokens, found, lexicon)
    return tuple(_strangers(tokens, _merged(found, tokens, lexicon), lexicon))


def _merged(found: list[Named], tokens: Sequence[Token], lexicon: Lexicon) -> list[Named]:
    """A name with the word for its kind is one name ("bluegill sunfish", "laker trout", "achigan small mouth")."""
    out: list[Named] = []
    for named in found:
        last = out[-1] if out else None
        beside = last and last.after == named.first and together(tokens, last.first, named.after - last.first)
        if last and beside and not _in_full(named) and _kind_of(named, last, lexicon):
            out[-1] = Named(last.first, named.after, named.entries, named.exact, named.split)
        elif last and beside and not lexicon.is_part(tokens[named.first].word) and _kind_of(last, named, lexicon):
            out[-1] = Named(last.first, named.after, last.entries, last.exact, last.split)
        else:
            out.append(named)
    return out


def _in_full(named: Named) -> bool:
    """True for a name that needs no word for its kind."""
    return any(e[2] in FULL for e in named.entries)


def _kind_of(named: Named, kind: Named, lexicon: Lexicon) -> bool:
    if not named.entries or not kind.entries:
        return False
    species = {e[1] for e in named.entries if e[0] == "taxon" and e[2] != "ambiguous"}
    groups = [e[1] for e in kind.entries if e[0] == "group" or not lexicon.kb.taxon(e[1]).is_species]
    wide = {m for g in groups for m in lexicon.kb.members(g)}
    return bool(species) and species <= wide and not (species & {e[1] for e in kind.entries if e[2] == "accepted"})


def _at_sea(tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a line that speaks of the sea ("off the beach")."""
    runs = (tokens[i : i + size] for size in range(1, SEA_WORDS + 1) for i in range(len(tokens) - size + 1))
    return any(AT_SEA in lexicon.cues(" ".join(t.word for t in run)) for run in runs)


def _longest_at(tokens: Sequence[Token], at: int, lexicon: Lexicon, sea: bool) -> Named | None:
    loose = ("ambiguous", "vernacular") if sea else ("ambiguous",)
    for size in range(min(LONGEST, len(tokens) - at), 0, -1):
        if not together(tokens, at, size):
            continue
        words = [t.word for t in tokens[at : at + size]]
        for number, phrase in enumerate(_variants(words, lexicon)):
            entries = lexicon.spoken(phrase)
            kept = tuple(e for e in entries if e[0] in KINDS)
            outside = any(e[0] == "cue" and e[1] == f"cue-{OUTSIDE}" for e in entries)
            if any(e[0] == "cue" and e[1] == f"cue-{NO_FISH}" for e in entries):
                return Named(at, at + size, ())
            if outside and number < 2 and all(e[2] in loose for e in kept):
                return Named(at, at + size, (), outside=True)
            if kept and all(e[0] == "group" for e in kept) and _two_kinds(words, lexicon):
                continue
            if kept:
                return Named(
                    at,
                    at + size,
                    _with_singular(kept, words, number, lexicon),
                    split=size > 1 and number > 0,
                    phrase=phrase,
                )
    return None


def _two_kinds(words: Sequence[str], lexicon: Lexicon) -> bool:
    """True for two kinds joined by "and", each named in full, that are also called so as one ("walleye and sauger")."""
    at = words.index(AND) if AND in words else 0
    sides = (" ".join(words[:at]), " ".join(words[at + 1 :])) if at else ()
    meant = [{e[1] for e in lexicon.spoken(side) if e[0] == "taxon" and e[2] == "accepted"} for side in sides]
    return bool(meant) and all(len(ids) == 1 for ids in meant) and meant[0] != meant[1]


def _with_singular(entries: tuple[Entry, ...], words: list[str], number: int, lexicon: Lexicon) -> tuple[Entry, ...]:
    """The entries of a name as typed, with those of its singular ("rock basses" are rock bass).

    A loose name written apart stands for all that it does when written as one word ("stump knocker").
    """
    last = singular(words[-1])
    if len(words) > 1 and all(e[2] == "ambiguous" for e in entries):
        joined = (e for e in lexicon.spoken("".join([*words[:-1], last])) if e[0] in KINDS)
        entries = tuple(sorted({*entries, *joined}))
    if number or last == words[-1]:
        return entries
    more = (e for e in lexicon.spoken(" ".join([*words[:-1], last])) if e[0] in KINDS)
    return tuple(sorted({*entries, *more}))


def _variants(words: list[str], lexicon: Lexicon) -> Iterator[str]:
    """The ways in which some words may be spelt in the base: as they are, singular, joined, parted."""
    phrase = " ".join(words)
    yield phrase
    last = singular(words[-1])
    if last != words[-1]:
        yield " ".join([*words[:-1], last])
    if len(words) == 1:
        for known in (words[0], last):
            yield from lexicon.joined(known)
        if last.endswith("ish") and len(last) > 6:
            return
    elif len(words) <= 4 and all(len(w) > 2 for w in words):
        for i in range(len(words) - 1):
            yield " ".join([*words[:i], words[i] + words[i + 1], *words[i + 2 :]])
            if last != words[-1]:
                tail = [*words[:-1], last]
                yield " ".join([*tail[:i], tail[i] + tail[i + 1], *tail[i + 2 :]])
        if len(words) == 2:
            yield from lexicon.joined(words[0] + words[1])
        if len(words) == APART_TWICE:
            yield f"{words[0]}{words[1]} {words[2]}{last}"
    if len(words) > 1:
        kinds = [c.removeprefix(KIND) for c in lexicon.cues(words[-1]) if c.startswith(KIND)]
        yield from (" ".join([*words[:-1], kind]) for kind in kinds)
        heads = [h if (h := lexicon.head(w)) and _close(w, h) else w for w in words]
        if heads != words:
            yield " ".join(heads)


def _close(word: str, head: str) -> bool:
    """True for a colour or the like spelt as it is spoken ("yella"), or by its consonants ("blk")."""
    near = distance(word, head, 2) < 2 or (word[:3] == head[:3] and distance(word, head, 3) < 3)
    return near or (len(word) > 2 and not _VOWELS & set(word) and word[0] == head[0] and _within(word, head))


_VOWELS = frozenset("aeiouy")


def _within(short: str, word: str) -> bool:
    """True where the letters of the one stand in the other in their order."""
    letters = iter(word)
    return all(letter in letters for letter in short)


def together(tokens: Sequence[Token], at: int, size: int) -> bool:
    """True when no punctuation parts the tokens, the dot of an abbreviation ("L. gibbosus") aside."""
    last = tokens[at]
    for token in tokens[at + 1 : at + size]:
        if token.clause != last.clause and not (len(last.word) == 1 and token.start - last.end <= 2):
            return False
        last = token
    return True


def _with_misspelt(tokens: Sequence[Token], found: list[Named], lexicon: Lexicon) -> list[Named]:
    covered = {i for n in found for i in range(n.first, n.after)}
    beside = {i for n in found if n.after - n.first == 1 and not n.outside for i in (n.first - 1, n.first, n.after)}
    out = list(found)
    for at, token in enumerate(tokens):
        strange = at not in covered and not lexicon.known(token.word) and not lexicon.cues(token.word)
        if len(token.word) < 3 or not (strange or at in beside):
            continue
        if not strange:
            longer = _mended_pair(tokens, at, lexicon)
            if longer:
                out = [n for n in out if n.after <= longer.first or n.first >= longer.after] + [longer]
            continue
        if _compound_of_strangers(token.word, lexicon):
            continue
        mended = _mended_name(tokens, at, lexicon)
        if mended:
            out = [n for n in out if n.after <= mended.first or n.first >= mended.after]
            out.append(mended)
            covered.update(range(mended.first, mended.after))
    return sorted(out, key=lambda n: n.first)


def _mended_name(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> Named | None:
    """The longest name that a misspelt word makes with its neighbours; several readings are kept together."""
    word = tokens[at].word
    choices = lexicon.mend(word) or lexicon.mend(singular(word))
    loose = lexicon.close_words(word) if len(word) == 3 or not choices else ()
    for size in range(4, 0, -1):
        if size == 1:
            choices = tuple(c for c in choices if "weak-name" not in lexicon.cues(c))
        if size == 1 and (len(word) < 5 or not choices):
            return None
        for first in range(max(0, at - size + 1), min(at, len(tokens) - size) + 1):
            if not together(tokens, first, size):
                continue
            entries: list[Entry] = []
            phrases: list[str] = []
            for choice in choices or (loose if size > 1 else ()):
                words = [choice if i == at else t.word for i, t in enumerate(tokens[first : first + size], first)]
                phrase, kept = _first_entries(words, lexicon)
                phrases += [phrase] if kept else []
                entries += kept
            if entries:
                meant = phrases[0] if len(set(phrases)) == 1 else ""
                return Named(first, first + size, tuple(sorted(set(entries))), exact=False, phrase=meant)
    return None


def _mended_pair(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> Named | None:
    """A two-word name with a slip in this word, where the other word alone was taken for a name ("chanel cat")."""
    for first in (at - 1, at):
        other = first if first != at else at + 1
        if first < 0 or first + 2 > len(tokens) or not together(tokens, first, 2):
            continue
        pair = (tokens[other].word, tokens[at].word)
        if lexicon.spoken(f"{tokens[first].word} {tokens[first + 1].word}"):
            continue
        if not any(e[0] in KINDS for w in pair for e in lexicon.spoken(w)) or len(tokens[at].word) < 5:
            continue
        for choice in lexicon.mend_other(tokens[at].word):
            words = [choice if i == at else tokens[i].word for i in (first, first + 1)]
            phrase, entries = _first_entries(words, lexicon)
            if entries:
                return Named(first, first + 2, tuple(sorted(set(entries))), exact=False, phrase=phrase)
    return None


def _first_entries(words: list[str], lexicon: Lexicon) -> tuple[str, list[Entry]]:
    """The first spelling of some words that names fishes, and what it stands for."""
    short = len(words) == 1 and len(words[0]) <= SHORT_LATIN
    for phrase in _variants(words, lexicon):
        kept = [e for e in lexicon.spoken(phrase) if e[0] in KINDS and not (short and e[2] == "scientific")]
        if kept:
            return phrase, kept
    return "", []


def _compound_of_strangers(word: str, lexicon: Lexicon) -> bool:
    """True for an invented compound: a word of the base and another animal ("bluegull")."""
    return any(lexicon.spoken(word[:i]) and "animal" in lexicon.cues(word[i:]) for i in range(3, len(word) - 2))


def _strangers(tokens: Sequence[Token], found: list[Named], lexicon: Lexicon) -> list[Named]:
    """Fishes the base lacks: an unheard-of fish, a strange compound before a fish word, a strange species."""
    covered = {i for n in found for i in range(n.first, n.after)}
    out: list[Named] = []
    for named in found:
        strange = named.first - 1
        last = out[-1] if out else None
        if named.outside and last and last.after == named.first and _qualifies(last, tokens):
            out[-1] = Named(last.first, named.after, (), outside=True)
        elif (
            strange >= 0
            and strange not in covered
            and not named.outside
            and named.after - named.first == 1
            and tokens[strange].clause == tokens[named.first].clause
            and _strange_compound(tokens[strange].word, lexicon)
        ):
            out.append(Named(strange, named.after, (), outside=True))
        elif _genus(named, lexicon) and (meant := _meant_epithet(named, tokens, lexicon)):
            entry: Entry = ("taxon", meant, "scientific")
            out.append(Named(named.first, named.after + 1, (entry,), exact=False))
        elif _genus(named, lexicon) and _strange_epithet(tokens, named.after, lexicon, covered):
            out.append(Named(named.first, named.after + 1, (), outside=True))
        else:
            out.append(named)
    for i, token in enumerate(tokens):
        if i in covered:
            continue
        if _unheard_fish(token.word, lexicon):
            out.append(Named(i, i + 1, (), outside=True))
        elif _strange_binomial(tokens, i, lexicon, covered):
            out.append(Named(i, i + 2, (), outside=True))
    return sorted(out, key=lambda n: n.first)


def _qualifies(named: Named, tokens: Sequence[Token]) -> bool:
    """True for a single word right before the name of a fish from elsewhere ("goldeneye tang")."""
    return named.after - named.first == 1 and together(tokens, named.first, 2)


def _unheard_fish(word: str, lexicon: Lexicon) -> bool:
    if lexicon.known(word) or lexicon.cues(word):
        return False
    return (word.endswith("fish") and len(word) > 6) or _compound_of_strangers(word, lexicon)


def _strange_compound(word: str, lexicon: Lexicon) -> bool:
    """True for a made-up word that ends in a part of a fish ("snagglefin")."""
    if len(word) < 6 or lexicon.known(word) or lexicon.cues(word):
        return False
    if any(lexicon.names_part(word[-size:]) for size in (3, 4, 5) if len(word) - size > 2):
        return True
    return any(lexicon.known(word[:i]) and lexicon.known(word[i:]) for i in range(4, len(word) - 3))


def _genus(named: Named, lexicon: Lexicon) -> bool:
    taxa = unique(e[1] for e in named.entries if e[0] == "taxon" and e[2] == "scientific")
    return len(taxa) == 1 and lexicon.kb.taxon(taxa[0]).rank == "genus" and named.after - named.first == 1


def _meant_epithet(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> str:
    """The one species of a genus whose epithet the word behind it is nearly ("Lepomis cyanella"); empty for none."""
    genus = next(e[1] for e in named.entries)
    if named.after >= len(tokens) or tokens[named.after].clause != tokens[named.first].clause:
        return ""
    word, near = tokens[named.after].word, []
    for taxon in lexicon.kb.members(genus):
        *_, epithet = lexicon.kb.taxon(taxon).scientific.lower().split()
        if len(word) >= SHORTEST_EPITHET and word[:4] == epithet[:4] and distance(word, epithet, 3) < 3:
            near.append(taxon)
    return near[0] if len(near) == 1 else ""


SHORTEST_EPITHET = 6
"""Letters of the shortest word that is taken for a misspelt epithet."""
_LATIN = ("us", "is", "um", "ens", "ii", "ea", "ulea", "ata", "osa", "ides", "oides", "ina", "ica", "ensis")


def _strange_epithet(tokens: Sequence[Token], at: int, lexicon: Lexicon, covered: set[int]) -> bool:
    if at >= len(tokens) or at in covered or tokens[at].clause != tokens[at - 1].clause:
        return False
    word = tokens[at].word
    return len(word) > 4 and not lexicon.known(word) and word.endswith(_LATIN)


def _strange_binomial(tokens: Sequence[Token], at: int, lexicon: Lexicon, covered: set[int]) -> bool:
    """True for a capital and two unknown words with Latin endings ("Fundulus diaphanus")."""
    if at + 1 >= len(tokens) or not together(tokens, at, 2):
        return False
    genus, epithet = tokens[at], tokens[at + 1]
    latin = genus.typed[:1].isupper() and epithet.typed.islower() and genus.word.endswith(_GENUS)
    return latin and len(genus.word) > 4 and not lexicon.known(genus.word) and _strange_epithet(
        tokens, at + 1, lexicon, covered)


_GENUS = ("us", "is", "a", "ys", "on", "es", "ax", "um", "ops", "ion")
_WATERS = word_set("lake creek river pond reservoir stream bayou slough")
_AT = word_set("in at from on near off to of around the")
_PARTS = word_set("northern southern eastern western")
LONGEST_CODE = 3
"""Letters of the longest code of a place ("OR")."""


def names_water(tokens: Sequence[Token], named: Named, lexicon: Lexicon) -> bool:
    """True for a fish in the name or kind of a water ("in Bass Lake", "from a trout stream", "lake lanier")."""
    if not named.exact and named.first and named.after - named.first == 1 and tokens[named.first - 1].word in _WATERS:
        return True
    if named.after >= len(tokens) or tokens[named.after].word not in _WATERS:
        return False
    clause = tokens[named.after].clause
    if clause != tokens[named.first].clause or (named.after + 1 < len(tokens)
                                               and tokens[named.after + 1].clause == clause
                                               and tokens[named.after + 1].word in ("trout", "sturgeon", "whitefish",
                                                                                  "herring", "carpsucker")):
        return False
    if any(e[0] == "place" for size in (2, 3)
           for e in lexicon.spoken(" ".join(t.word for t in tokens[named.after : named.after + size]))):
        return False
    before = [t.word for t in tokens[max(0, named.first - 3) : named.first] if t.clause == clause]
    alone = sum(t.clause == clause for t in tokens) == named.after - named.first + 1 < len(tokens)
    return bool(_AT & set(before)) or alone


def _place_follows(tokens: Sequence[Token], named: Named, lexicon: Lexicon) -> bool:
    behind = [t.word for t in tokens[named.after : named.after + 3] if t.clause == tokens[named.first].clause]
    names = (" ".join(behind[:size]) for size in (1, 2, 3))
    return any(e[0] == "place" for name in names if len(name) > LONGEST_CODE for e in lexicon.spoken(name))


def names_place(tokens: Sequence[Token], named: Named, lexicon: Lexicon) -> bool:
    """True when a single word that some call a fish is the name of a place ("kentucky", "in the Coosa"), or tells
    what part of one ("northern Ontario").
    """
    if named.after - named.first > 1 or named.outside:
        return False
    if tokens[named.first].word in _PARTS and _place_follows(tokens, named, lexicon):
        return True
    if _one_of_a_name(tokens, named):
        return False
    before = " ".join(t.word for t in tokens[max(0, named.first - 2) : named.after])
    if "river-name" in lexicon.cues(before):
        return True
    return len(tokens[named.first].word) > 3 and any(
        e[0] == "place" and e[2] in ("label", "nicknames") for e in lexicon.spoken(tokens[named.first].word)
    )


def _one_of_a_name(tokens: Sequence[Token], named: Named) -> bool:
    """True for one fish called by a place's name at the end of what is said ("turns out it's a kentucky")."""
    behind = tokens[named.after : named.after + 1]
    ends = not behind or behind[0].clause != tokens[named.first].clause or behind[0].word in ("on", "in", "off", "from")
    return ends and named.first > 0 and tokens[named.first - 1].word in ("a", "an")


def opens_term(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a word that is one of the glossary with the word behind it ("gill arch", "gill raker")."""
    word, *behind = (t.word for t in tokens[named.first : named.after + 1])
    return any(e[0] == "term" for w in behind for x in (w, singular(w)) for e in lexicon.spoken(f"{word} {x}"))
