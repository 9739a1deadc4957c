"""Read a line of typed English: names, features, counts, measures, dates, places, answers, corrections (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from datetime import date
from itertools import pairwise
from typing import NamedTuple

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.alternatives import either, parts_in_full
from assistant.dialogue.reader.answers import Answered, read_answer
from assistant.dialogue.reader.claims import Line, Talk, nouns_of, ready
from assistant.dialogue.reader.company import held_company, with_company
from assistant.dialogue.reader.corrections import corrected, putting_right
from assistant.dialogue.reader.counts import count_claims, read_formula
from assistant.dialogue.reader.features import read_features
from assistant.dialogue.reader.glossed import terms_of
from assistant.dialogue.reader.hints import hints_of
from assistant.dialogue.reader.lexicon import Lexicon, lexicon_of
from assistant.dialogue.reader.measures import Setting, read_measures
from assistant.dialogue.reader.mentions import Decided, decide
from assistant.dialogue.reader.names_found import Named, find_names, names_place, names_water
from assistant.dialogue.reader.qualities import read_qualities
from assistant.dialogue.reader.ratios import read_ratios
from assistant.dialogue.reader.reading import LENGTH_DENIED, Measure, Mention, Reading, Seen
from assistant.dialogue.reader.rewording import in_full
from assistant.dialogue.reader.set_apart import set_apart
from assistant.dialogue.reader.spotting import Content, content_of, spot, undivided
from assistant.dialogue.reader.tokens import Token, clean, gibberish, mashed, tokenize, words_of
from assistant.dialogue.reader.when import When, read_when
from assistant.dialogue.reader.where import Where, read_where
from assistant.dialogue.scope import left_open, scopes_of
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import NUMBERS, typed_out
from assistant.text import key, unique, word_set
from assistant.units import MM

MOST_TOKENS = 300
SHORT = 3
"""A line of so few words that picks an offered answer says nothing else of the fish."""
MOST_MEANT = 11
"""A longer line does not speak of the part last told of by a pronoun alone."""
FEW_MORE = 5
"""A line of so few words after a list told by one feature may name another state of it ("and with four?")."""
_SELF_ASKED = re.compile(r"(?:^|[.,;:]\s*)(\w+(?: \w+){0,2})\?(?=\s*\w+(?:[ -]\w+){0,4}\s*(?:[.,;!]|$))")
"""A part with a question mark and, after it, a few words that answer it."""
_CALLED_A = re.compile(
    r"\b(?:call(?:s|ed)?|say(?:s|ing)?|said|swears|swore|insists|insisted|reckons|thinks|thought)"
    r"(?: (?:it|this|that|him|them|the fish))?(?:'s| is| was)? an? (\w+)(?=\s*(?:[,.;:?!]|$))", re.IGNORECASE)
MOST_SHOWN = 6
FIN = "fin"
_THAT_FIN = re.compile(r"\b(?:that|this|(?:that |the )same) fin\b", re.IGNORECASE)
_PRONOUNS = word_set("they it those these theyre thats that")
NUMBERED = frozenset({"count", "age", "time"})
"""Questions back whose answer is a bare number, but no length."""
Span = tuple[int, int]


class _Plain(NamedTuple):
    """What a line tells apart from the fish itself: day, fin formula, measures, names found, places."""

    when: When
    formula: tuple[Seen, ...]
    measures: tuple[Measure, ...]
    names: tuple[Named, ...]
    where: Where
    spans: tuple[Span, ...]


def read_line(kb: KnowledgeBase, text: str, held: Held, clock: date) -> Reading:
    """What one line says, given what the conversation holds and the day. Never raises, whatever is typed."""
    lexicon = lexicon_of(kb)
    typed = _with_g(_OF_AGE.sub("kids", _ASIDE.sub("", typed_out(clean(text)))), lexicon)
    typed = parts_in_full(in_full(typed, lexicon), lexicon)
    line = _called_in_full(_fin_meant(_answered_by_itself(typed, lexicon), held, lexicon), held, lexicon)
    tokens = tokenize(line)[:MOST_TOKENS]
    if gibberish(tokens, lexicon.known) or mashed(line, tokens, lexicon.known):
        return _noise(line, tokens, held, lexicon)
    plain = _plain(line, tokens, held, lexicon, clock)
    made, decided = _made_ready(tokens, plain, held, lexicon)
    features = read_features(made, count_claims(made, line))
    answered = read_answer(tokens, held, features, lexicon)
    mentions = _mentions(decided, plain.where.mentions, tokens, lexicon)
    told = () if answered.whole or (answered.seen and len(tokens) <= SHORT) else _unnamed(features, mentions, line, kb)
    seen = either(_in_order((*plain.formula, *told, *answered.seen)), line)
    change = corrected(tokens, made.content, made.hits, seen, held, lexicon)
    qualities = read_qualities(tokens, decided, lexicon)
    return Reading(
        text=line,
        words=words_of(tokens),
        mentions=mentions,
        seen=change.seen,
        hints=hints_of(decided, lexicon, text),
        measures=_kept(plain.measures, answered),
        counts=_bare_counts(tokens, seen),
        places=plain.where.places,
        water=plain.where.water,
        unknown_place=plain.where.unknown,
        date=plain.when.date,
        season=plain.when.season,
        sex=qualities.sex,
        stage=qualities.stage,
        breeding=qualities.breeding,
        size_word=qualities.size_word,
        answer=answered.answer,
        cues=qualities.cues | ({LENGTH_DENIED} if _denies_length(tokens, held) else set()),
        outside=decided.outside,
        question=_question(line, tokens),
        corrections=change.characters,
    )


_ASIDE = re.compile(
    r"(?<=\w)\s?[.,;!?-]+\s*(?:and )?(?:never ?mind|(?:i )?don'?t (?:care|need to know|ask me))(?: about)? "
    r"(?:where|how|what|when|who|why)\b[^.?!;]*[.?!]*$", re.IGNORECASE)
"""What a line says at its end that it does not ask ("what does it look like? never mind where he lives")."""


def _with_g(line: str, lexicon: Lexicon) -> str:
    """The line with the g of words that have lost it ("bleedin", "startin over"), where only the whole one is known."""

    def whole(found: re.Match[str]) -> str:
        word = found.group().lower()
        return f"{found.group()}g" if not lexicon.known(word) and lexicon.known(f"{word}g") else found.group()

    return _CUT_G.sub(whole, line)


_CUT_G = re.compile(r"\b[a-z]{3,}in\b(?!['’])", re.IGNORECASE)
_OF_AGE = re.compile(
    r"(?<=\bmy )\w+[\s-]*(?:yr|yrs|year|years|yo)[\s-]*olds?(?: (?:kid|son|daughter|boy|girl|child|grandson|niece))?\b|"
    r"(?<=\bfor )(?:a )?(?:\d+|[a-z]+)[\s-](?:yr|year|years)[\s-]olds\b|"
    r"(?<=\bfor )age[sd]? \d+(?:\s?(?:-|to|and)\s?\d+)?\b", re.IGNORECASE)
"""A child told by its age, which is no age of a fish ("my 5 yr old asks", "for seven-year-olds")."""


def _answered_by_itself(line: str, lexicon: Lexicon) -> str:
    """The line without the question mark behind a part of the fish that it goes on to tell of ("ear? all black")."""
    for found in _SELF_ASKED.finditer(line):
        if any(e[0] == "character" for e in lexicon.spoken(key(found[1]))):
            line = f"{line[:found.end(1)]} {line[found.end(1) + 1:]}"
    return line


def _fin_meant(line: str, held: Held, lexicon: Lexicon) -> str:
    """The line with "that fin" told by its name, where the fin last spoken of is meant."""
    found = _THAT_FIN.search(line)
    before = key(line[: found.start()]).split() if found is not None else []
    if found is None or not held.seen or any(w == FIN or lexicon.is_part(w) for w in before):
        return line
    parts = (lexicon.kb.character(s.observation.character).part for s in reversed(held.seen))
    name = next((" ".join(p.split("-")[-2:]) for p in parts if p.endswith(f"-{FIN}")), "")
    return f"{line[: found.start()]}the {name}{line[found.end() :]}" if name else line


def _called_in_full(line: str, held: Held, lexicon: Lexicon) -> str:
    """The line with a name cut short in full, where a fish in question bears it ("called it a speckled": trout)."""
    found = _CALLED_A.search(line)
    if found is None or any(e[0] in ("taxon", "hybrid", "group") for e in lexicon.spoken(key(found[1]))):
        return line
    for taxon in unique((*held.taxa, *held.shown))[:MOST_SHOWN]:
        if lexicon.kb.find("taxon", taxon) is None:
            continue
        head = key(lexicon.kb.taxon(taxon).label).split()[-1]
        if any(e[:2] == ("taxon", taxon) for e in lexicon.spoken(f"{key(found[1])} {head}")):
            return f"{line[: found.end(1)]} {head}{line[found.end(1) :]}"
    return line


def _noise(line: str, tokens: Sequence[Token], held: Held, lexicon: Lexicon) -> Reading:
    """A line without a word in it: noise, unless it answers the question asked back ("b", "7")."""
    answered = read_answer(tokens, held, (), lexicon) if tokens else Answered()
    told, question = answered.answer, "?" in line
    return Reading(line, words_of(tokens), seen=answered.seen, answer=told, question=question, noise=not told)


def _plain(line: str, tokens: Sequence[Token], held: Held, lexicon: Lexicon, clock: date) -> _Plain:
    when = read_when(line, tokens, lexicon, clock)
    found = with_company(tokens, find_names(tokens, lexicon, _waters(tokens, lexicon)), lexicon)
    answering = held.asked is not None and held.asked.kind not in ("which", "length", "place")
    found = held_company(tokens, found, (*held.taxa, *held.shown), lexicon, answering)
    ends, starts = {n.after for n in found}, {n.first for n in found}
    names = tuple(n for n in found if (not names_place(tokens, n, lexicon) or _set_against(tokens, n, ends, starts))
                  and not names_water(tokens, n, lexicon))
    where = read_where(tokens, lexicon, tuple(n.span for n in names))
    (formula, formula_spans), (ratios, ratio_spans) = read_formula(line, lexicon), read_ratios(line, lexicon)
    formula, formula_spans = (*formula, *ratios), (*formula_spans, *ratio_spans)
    measures = read_measures(_mask(line, (*when.spans, *formula_spans)), _setting(tokens, held, lexicon))
    used = [(m.start, m.end) for m in measures if not m.bare or m.own] + [(m.start, m.end) for m in where.mentions]
    return _Plain(when, formula, measures, names, where, (*when.spans, *formula_spans, *used))


def _set_against(tokens: Sequence[Token], named: Named, ends: Collection[int], starts: Collection[int]) -> bool:
    """True for "kentucky" in "green trout or kentucky": what is set against a fish is one."""
    words = [t.word for t in tokens]
    at = named.first - 1
    while at > 0 and words[at] in ("a", "an", "the"):
        at -= 1
    told_from = at < named.first - 1 and (words[max(at, 0)] in ("from", "than", "against", "beside", "alongside")
                                          or words[max(at - 1, 0) : at + 1] == ["next", "to"])
    at -= told_from and words[max(at, 0)] == "to"
    before = at in ends and (words[at] in _OR or told_from)
    after = words[named.after : named.after + 1]
    behind = bool(after) and after[0] in (*_OR, "from") and any(
        named.after + n in starts for n in (1, 2)
        if (n == 1 and after[0] != "from") or words[named.after + 1] in ("a", "an", "the"))
    return before or behind


_OR = ("or", "vs", "versus", "against", "beside")


def _made_ready(tokens: Sequence[Token], plain: _Plain, held: Held, lexicon: Lexicon) -> tuple[Line, Decided]:
    """The line ready for its features to be read, and which of the names found are names."""
    content = content_of(tokens, _tokens_in(tokens, plain.spans) | left_open(tokens), lexicon)
    hits = undivided(spot(content, lexicon), content, tokens, lexicon)
    places = plain.where.places or held.places
    decided = decide(tokens, plain.names, content, hits, places, lexicon, _asks_feature(held, tokens, lexicon))
    decided = set_apart(decided, tokens, lexicon)
    blocked = frozenset(_content_in(content, decided.strong))
    hits = tuple(h for h in hits if not blocked & set(h.at))
    scopes = scopes_of(tokens, content, nouns_of(hits, lexicon), lexicon)
    walls = frozenset(_content_in(content, decided.strong | _called(tokens, decided, lexicon)))
    return ready(tokens, content, hits, scopes, lexicon, _talk(tokens, held, decided, walls, lexicon)), decided


def _called(tokens: Sequence[Token], decided: Decided, lexicon: Lexicon) -> frozenset[int]:
    """The tokens of all that a fish is called or likened to, "fish" itself among them."""
    spans = [(m.start, m.end) for m in decided.mentions]
    named = (i for i, t in enumerate(tokens) for a, b in spans if a <= t.start < b)
    return frozenset(named) | {i for i, t in enumerate(tokens) if "fish-word" in lexicon.cues(t.word)}


def _talk(tokens: Sequence[Token], held: Held, decided: Decided, walls: frozenset[int], lexicon: Lexicon) -> Talk:
    """What the line is read against: the question asked back, what is being put right, the fishes spoken of."""
    expected: set[str] = set()
    if held.asked is not None and held.asked.kind == "character":
        expected.add(held.asked.character)
    if putting_right(tokens, lexicon):
        expected.update(s.observation.character for s in held.seen)
    expected.update(_meant(tokens, held, lexicon) or _compared(tokens, held, lexicon))
    if held.intent == "list" and held.seen and len(tokens) <= FEW_MORE:
        expected.add(held.seen[-1].observation.character)
    known = frozenset(c for c in expected if lexicon.kb.find("character", c) is not None)
    last = key(held.seen[-1].words).split() if held.seen else []
    taxa = (
        unique(i for m in decided.mentions for i in m.ids[:3] if lexicon.kb.find("taxon", i) is not None) or held.taxa
    )
    parents = unique(
        p for t in taxa if lexicon.kb.find("taxon", t) is not None for p in lexicon.kb.taxon(t).parents or (t,)
    )
    offered = (
        frozenset(c if "." in c else f"{held.asked.character}.{c}" for c, _ in held.asked.choices)
        if held.asked
        else frozenset()
    )
    return Talk(known, frozenset(s.text for s in lexicon.stems(last)), walls, parents[:6], offered)


def _meant(tokens: Sequence[Token], held: Held, lexicon: Lexicon) -> set[str]:
    """The features that "they were black" speaks of: those of the part last told of, if the line names no part."""
    words = words_of(tokens)
    if not held.seen or len(words) > MOST_MEANT or not _PRONOUNS & set(words):
        return set()
    if any(lexicon.is_part(w) for w in words):
        return set()
    last = held.seen[-1]
    content = content_of(tokenize(last.words), frozenset(), lexicon)
    parts = {h.phrase.id for h in spot(content, lexicon) if h.phrase.kind == "character"}
    stated = {c for c in parts if lexicon.on_fish(c) and lexicon.kb.character(c).is_stated}
    return {last.observation.character} | stated


def _compared(tokens: Sequence[Token], held: Held, lexicon: Lexicon) -> set[str]:
    """The features that "mine is plain black" speaks of after two fishes were set side by side by one part of them."""
    words = words_of(tokens)
    if held.intent != "contrast" or held.last is None or len(words) > MOST_MEANT or not _MINE & set(words) or any(
            lexicon.is_part(w) for w in words):
        return set()
    kb = lexicon.kb
    ids = (s.split(".")[1] for b in held.last.blocks[:1] for s in b.statements if s.startswith("st:") and "." in s)
    first = next((c for i in ids if (c := kb.find("character", i)) is not None), None)
    return set() if first is None else {
        c.id for c in kb.characters if c.part == first.part and c.is_stated and lexicon.on_fish(c.id)} | {first.id}


_MINE = word_set("mine mines mine's ours his hers counted")
"""Words for the asker's own fish, or for a look at it."""


def _setting(tokens: Sequence[Token], held: Held, lexicon: Lexicon) -> Setting:
    """How bare numbers are to be read: the unit in use, and whether the talk is of lengths."""
    asked = held.asked.kind if held.asked is not None else ""
    unit = next((m.unit for m in reversed(held.lengths) if m.unit in ("in", "cm", "mm", "ft", "m")), "")
    unit = unit or {"metric": "cm", "cm": "cm", "mm": "mm"}.get(held.units, "in")
    words = {t.word for t in tokens}
    another = bool(held.lengths) and (tokens[0].word in _OTHERWISE or "instead" in words)
    put_right = bool(held.lengths) and (bool(_PUT_RIGHT & words) or _like_last(tokens, held))
    told = (asked in NUMBERED and not another and not put_right) or bool(_KEPT & words)
    talk = asked == "length" or (asked != "character" and not told and bool(held.lengths) and len(tokens) <= 7)
    owned = held.intent in ("rules", "size") and bool(_OWNED & words) and len(tokens) <= SHORT_LINE
    laid = {t.word for i, t in enumerate(tokens) if [b.word for b in tokens[max(0, i - 2) : i]] not in _LIKENED}
    taped = (bool(_TAPED & laid) or owned) and asked != "character"
    talk = taped or _denies_length(tokens, held) or (
        (talk or _asks_weight(tokens, lexicon)) and not _names_count(tokens, lexicon))

    def is_place(word: str) -> bool:
        return any(e[0] == "place" for e in lexicon.spoken(word)) and len(word) > 2

    def is_fish(word: str) -> bool:
        return any(e[0] in ("taxon", "group") for e in lexicon.spoken(word))

    return Setting("in" if unit == "ft" else unit, talk, is_place, lexicon.is_part, is_fish)


def _like_last(tokens: Sequence[Token], held: Held) -> bool:
    """True for one number near the length last told, which no day's bag would hold ("make that 47" after 42 cm)."""
    numbers = [int(t.word) for t in tokens if t.word.isdigit()]
    last = held.lengths[-1].low / MM[held.lengths[-1].unit] if held.lengths else 0
    return len(numbers) == 1 and numbers[0] > MOST_KEPT and last / 2 < numbers[0] < 2 * last


def _denies_length(tokens: Sequence[Token], held: Held) -> bool:
    """True when the line denies the figure of a length told before ("27 not 17"), and none of a count."""
    denied = {t.word for before, t in pairwise(tokens) if before.word == "not" and t.word.isdigit()}
    counted = {str(int(s.observation.value)) for s in held.seen if s.observation.value is not None}
    return any((denied - counted) & set(re.findall(r"\d+", m.words)) for m in held.lengths)


def _asks_weight(tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a short line that asks what a fish weighs and tells one number, hardly a count ("19.5 bass, lbs?")."""
    numbers = [int(t.word) for i, t in enumerate(tokens)
               if t.word.isdigit() and not (i and tokens[i - 1].word.isdigit() and tokens[i - 1].end + 1 == t.start)]
    asked = any("weight" in lexicon.cues(t.word) for t in tokens)
    return asked and len(numbers) == 1 and FEWEST_INCHES < numbers[0] < MOST_INCHES


_OTHERWISE = word_set("or and what how had")
"""First words of a line that asks the same of another length ("or 33", "what if it was 50")."""
_KEPT = word_set("kept already")
"""Words that make a bare number one of fish."""
_TAPED = word_set("pinched taped tape remeasured measured measures ruler")
_LIKENED = (["as", "a"], ["like", "a"])
"""Words before a ruler that an edge is only as straight as."""
_OWNED = word_set("mine mines ours")
SHORT_LINE = 5
"""Words of a line that tells the length of one's own fish by a bare number ("mine is 17")."""
MOST_KEPT = 12
"""A bare number above this is hardly one of fish kept where it may be a length (common practice)."""
_PUT_RIGHT = word_set("wait actually oops sorry hang")
"""Words of a short line that puts right the length told before ("no wait its 18")."""
FEWEST_INCHES, MOST_INCHES = 5, 100


def _names_count(tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True when the line names something that is counted on a fish ("spiky ones on the back: 11")."""
    phrases = [" ".join(t.word for t in tokens[i : i + n]) for n in (1, 2, 3) for i in range(len(tokens) - n + 1)]
    found = (lexicon.kb.character(e[1]) for p in phrases for e in lexicon.spoken(p) if e[0] == "character")
    return any(c.kind == "count" and c.use == "identify" for c in found)


def _asks_feature(held: Held, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True when a fish is being described, so that words for a feature are no name ("small mouth"); or where one is
    spoken of and the line is but a word for a part of it ("eye?").
    """
    first = tokens[0].word if tokens else ""
    part = len(tokens) == 1 and bool(held.taxa) and lexicon.is_part(first) and not _kin(first, held, lexicon)
    told = bool(_HELPING & {t.word for t in tokens[-3:]})
    return part or told or bool(held.seen) or (held.asked is not None and held.asked.kind == "character")


def _kin(word: str, held: Held, lexicon: Lexicon) -> bool:
    """True for a plural that is also a kin of the fish spoken of, where its life is what is talked of ("gills?")."""
    kb, first = lexicon.kb, next((t for t in held.taxa if lexicon.kb.find("taxon", t) is not None), "")
    if held.intent not in _OF_LIFE or not first or not word.endswith("s"):
        return False
    return any(e[0] == "taxon" and kb.lineage(e[1])[-1] == kb.lineage(first)[-1] for e in lexicon.spoken(word))


_OF_LIFE = frozenset({"habitat", "size", "weight", "tackle", "range", "rules"})
_HELPING = word_set("help helps matter matters")
"""Words at the end of a line by which it tells something to go on ("long ear with a pale rim, does that help")."""


def _waters(tokens: Sequence[Token], lexicon: Lexicon) -> frozenset[int]:
    """The tokens of waters named by two words or more, which no name of a fish may take ("sallowgum lake bass")."""
    waters = [m for m in read_where(tokens, lexicon, ()).mentions if m.kind == "water" and " " in m.words]
    return frozenset(i for i, t in enumerate(tokens) for m in waters if m.start <= t.start < m.end)


def _mask(line: str, spans: Sequence[Span]) -> str:
    for start, end in spans:
        line = line[:start] + " " * (end - start) + line[end:]
    return line


def _tokens_in(tokens: Sequence[Token], spans: Sequence[Span]) -> frozenset[int]:
    return frozenset(i for i, t in enumerate(tokens) for a, b in spans if a <= t.start < b)


def _content_in(content: Sequence[Content], strong: frozenset[int]) -> set[int]:
    return {at for at, c in enumerate(content) if any(i in strong for i in range(c.first, c.last + 1))}


def _mentions(
    decided: Decided, places: Sequence[Mention], tokens: Sequence[Token], lexicon: Lexicon
) -> tuple[Mention, ...]:
    unknown = {tokens[i].start for i in left_open(tokens)}
    terms = [m for m in terms_of(tokens, decided, lexicon)
             if m.start not in unknown and not _of_place(m, places, tokens)]
    return tuple(sorted((*decided.mentions, *places, *terms), key=lambda m: (m.start, m.kind, m.ids)))


def _unnamed(
    features: Sequence[Seen], mentions: Sequence[Mention], line: str, kb: KnowledgeBase
) -> tuple[Seen, ...]:
    """The features told, without a word that is part of the name of a character ("scales" in "lateral line scales"),
    one that reaches into the name of another part ("pink on the belly" of "pink on the belly fins"), and a place on the
    fish where something is told to be ("spines on the bottom fin near the tail").
    """
    named = [m for m in mentions if m.kind == "character" and m.exact]
    places = {(m.start, m.end) for m in named if _ON_THE.search(line[: m.start].lower())}
    return tuple(s for s in features if (s.start, s.end) not in places and not any(
        m.start <= s.start and s.end <= m.end and s.end - s.start < m.end - m.start for m in named)
        and not any(s.start < m.start < s.end < m.end and (m.start, m.end) in places and _elsewhere(kb, s, m)
                    and not line[s.end :].startswith(" and ") for m in named))


def _elsewhere(kb: KnowledgeBase, seen: Seen, mention: Mention) -> bool:
    """True for a character named that is of another part than the colour seen."""
    found = kb.character(seen.observation.character)
    return found.colouring and all(kb.character(i).part != found.part for i in mention.ids)


_ON_THE = re.compile(r"\b(?:on|in) (?:the|its|his|her|that|this) $")


def _of_place(term: Mention, places: Sequence[Mention], tokens: Sequence[Token]) -> bool:
    """True for a side or a bank of a water: "side" right behind a place ("the Indiana side of the Ohio")."""
    at = next((i for i, t in enumerate(tokens) if t.start == term.start), 0)
    return term.words in _SIDES and any(m.kind == "place" and m.end == tokens[at - 1].end for m in places if at)


_SIDES = word_set("side sides bank banks end half")


def _kept(measures: Sequence[Measure], answered: Answered) -> tuple[Measure, ...]:
    return tuple(m for m in measures if not (m.bare and answered.counted))


def _bare_counts(tokens: Sequence[Token], seen: Sequence[Seen]) -> tuple[int, ...]:
    """Whole numbers of the line that no observation has used."""
    out = []
    for token in tokens:
        figure = NUMBERS.get(token.word, token.word)
        if figure.isdigit() and len(figure) < 7 and not any(s.start <= token.start < s.end for s in seen):
            out.append(int(figure))
    return tuple(out)


def _in_order(seen: Sequence[Seen]) -> tuple[Seen, ...]:
    kept: dict[tuple[object, ...], Seen] = {}
    for s in seen:
        o = s.observation
        kept.setdefault((o.character, o.states, o.value, o.value_high, o.seen), s)
    return tuple(sorted(kept.values(), key=lambda s: (s.start, s.observation.character)))


def _question(line: str, tokens: Sequence[Token]) -> bool:
    return "?" in line or (bool(tokens) and tokens[0].word in _ASKING)


_ASKING = word_set(
    "what whats which who whose where wheres when why how hows is are can could do does did will would should may"
)
