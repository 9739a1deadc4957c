"""Tell two to eight taxa apart: characters by how well they separate, what is shared, what fools people (layer 3)."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from itertools import combinations
from typing import NamedTuple

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, Statement
from assistant.reasoning.evidence import Distribution, Scope, about, below, number_range, numbers
from assistant.reasoning.observer import apart, column_keys, kin_of, scored, taxon_distribution, told_shares
from assistant.text import key, singular

NAMED = 1.35
"""Weight of a character that the listed look-alike pair itself names as what settles it."""
WITHIN = 0.3
"""What a feature is worth of which one fish shows no more than what the other is told of."""
UNLIKE = 0.5
"""Weight of a character told of one fish's grown and of another's young, breeding or one sex only."""
ALONGSIDE = 0.5
"""Worth from which a second character of the same body part is told beside the first."""
BREEDING = "breeding"
"""Fish out of season are the ordinary ones: a statement on them speaks of any grown fish."""
ADULT = Scope(stage="adult")
"""People ask of grown fish; what the young show is told apart, as misleading."""
EASE: Mapping[str, float] = {"glance": 1.0, "hand": 0.92, "count": 0.78, "dead": 0.35}
COLOURED, OF_SOME, REMEMBERED = 0.9, 0.5, 0.8
"""What a row is worth as the first to look at that is a matter of colour, true of some fish only, or unchecked."""
DECIDES = 1.1
"""What it counts for the first to look at that the list of look-alikes says that it settles the pair."""
MEASURED = "ratio"
NEARLY = 0.7
"""A row that needs no counting leads when it is this firm beside the firmest."""
_BOUNDS = frozenset({"least", "most", "about"})
DENIALS = ("no-", "none", "absent")
SEPARATES = 0.3
"""Total variation distance from which a character counts as separating two taxa."""
SHARED = 0.2
"""Distance up to which two taxa count as alike in a character."""
USUAL = frozenset({"usually", "often"})
"""Frequency words of a number that not nearly all fish show."""
MOSTLY = 0.7
"""Share of a named umbrella from which one of its named parts is told in its place."""
SHOWN = 0.2
"""Share of fish from which a state is worth naming beside the commonest one."""
LOOKS: Mapping[str, frozenset[str]] = {
    "picture": frozenset({"glance"}), "hand": frozenset({"glance", "hand", "count"}),
    "lab": frozenset({"glance", "hand", "count", "dead"}),
}
"""What can be seen in a picture, on a fish in the hand, in a laboratory."""


class Told(NamedTuple):
    """What the base says of one character in one taxon: states with shares, or a number range with its unit."""

    taxon: str
    states: tuple[tuple[str, float], ...]
    numbers: tuple[float, float, float, float] | None
    unit: str
    statements: tuple[str, ...]
    inherited_from: str | None
    basis: str
    only: str = ""
    """Where only young, one sex or breeding fish are spoken of: a statement that says which."""
    bound: str = ""
    """Where all that is stated is a least, a greatest, a mean or a usual number: "least", "most", "about", "usual"."""


class ContrastRow(NamedTuple):
    """A character, how far it separates the taxa (0 to 1), its worth for the reader, and what is told of each."""

    character: str
    separation: float
    worth: float
    told: tuple[Told | None, ...]
    decides: bool = False
    """True where the list of look-alikes names the character as what settles the pair."""


class Misleading(NamedTuple):
    """A statement that can fool people about a character that separates (young, females, breeding males)."""

    character: str
    statement: str


class Contrast(NamedTuple):
    """The rows that separate, those that are shared, what misleads, and the crosses between the taxa."""

    taxa: tuple[str, ...]
    separating: tuple[ContrastRow, ...]
    shared: tuple[ContrastRow, ...]
    misleading: tuple[Misleading, ...]
    crosses: tuple[str, ...]


def contrast(kb: KnowledgeBase, taxa: Sequence[str], looks: Collection[str] = LOOKS["lab"]) -> Contrast:
    """The contrast of two to eight taxa over the characters that can be seen at ``looks`` (see ``LOOKS``)."""
    named = settled_by(kb, taxa)
    deciding = frozenset(c for c in told_of(kb, taxa) if decides(kb, c, named))
    characters = (kb.character(key) for key in told_of(kb, taxa))
    rows = [row for c in characters if c.look in looks and (row := contrast_row(kb, c, taxa))]
    rows = [row._replace(worth=row.worth * (NAMED if mentions(kb, row.character, named) else 1.0),
                         decides=row.character in deciding) for row in rows]
    rows.sort(key=lambda row: (-row.worth, row.character))
    separating = tuple(sorted(by_part(kb, [r for r in rows if r.separation >= SEPARATES]),
                              key=lambda row: standing(kb, row)))
    shared = tuple(r for r in rows if r.separation <= SHARED and all(r.told) and kb.character(r.character).is_stated)
    main = [r.character for r in separating[:8]]
    return Contrast(tuple(taxa), separating, shared, misleading(kb, taxa, main), crosses_between(kb, taxa))


def contrast_row(kb: KnowledgeBase, character: Character, taxa: Sequence[str]) -> ContrastRow | None:
    """One character over some taxa; None when fewer than two of them are told of."""
    if character.use != "identify":
        return None
    told = tuple(tell(kb, character, t) for t in taxa)
    if sum(t is not None for t in told) < 2:
        return None
    separation = separate(kb, character, taxa)
    if separation is None:
        return None
    narrowed = {bool(t.only) for t in told if t}
    trust = sum(_TRUST.get(t.basis, 0.8) for t in told if t) / sum(t is not None for t in told)
    trust *= 1.0 if len(narrowed) == 1 else UNLIKE
    trust *= WITHIN if _one_within_other(kb, told) else 1.0
    separation *= WITHIN if character.colouring and _denied_of_all_kin(kb, told) else 1.0
    certain = sum(t is not None for t in told) / len(told)
    worth = separation * EASE.get(character.look, 0.7) * trust * certain**0.5
    return ContrastRow(character.id, separation, worth, told)


def _one_within_other(kb: KnowledgeBase, told: Sequence[Told | None]) -> bool:
    """True for two fishes of which one is told of by a word that covers the other's ("blue", "wavy blue lines")."""
    if len(told) != 2 or any(t is None or len(t.states) != 1 for t in told):
        return False
    first, second = (set(below(kb, t.states[0][0])) for t in told if t is not None)
    return first != second and (first <= second or second <= first)


def _denied_of_all_kin(kb: KnowledgeBase, told: Sequence[Told | None]) -> bool:
    """True for two fishes of which one is told only by what its whole family lacks ("no ringed eyespot"); barbels or a
    saw-edged spine that it lacks are news all the same.
    """
    sides = [t for t in told if t is not None]
    if len(told) != 2 or len(sides) != 2 or bool(sides[0].inherited_from) == bool(sides[1].inherited_from):
        return False
    kin = next(t for t in sides if t.inherited_from)
    if kin.inherited_from is None or kb.taxon(kin.inherited_from).rank != "family":
        return False
    return bool(kin.states) and kin.states[0][0].partition(".")[2].startswith(DENIALS)


def firm_first(kb: KnowledgeBase, rows: Sequence[ContrastRow]) -> tuple[ContrastRow, ...]:
    """The rows with the one in front that is best looked at first: firm, and without counting where that is nearly
    as firm as anything.
    """
    if not rows:
        return ()
    firm = {r.character: firmness(kb, r) for r in rows}
    best = max(rows, key=lambda r: firm[r.character])
    simple = (r for r in rows if kb.character(r.character).look in _EASY and kb.character(r.character).kind != MEASURED)
    easy = max(simple, key=lambda r: firm[r.character], default=best)
    lead = easy if firm[easy.character] >= NEARLY * firm[best.character] else best
    return (lead, *(r for r in rows if r is not lead))


def firmness(kb: KnowledgeBase, row: ContrastRow) -> float:
    """How far a row can be relied on: its worth, less for colour, for what is true of some fish only, for gaps."""
    character = kb.character(row.character)
    value = row.worth * (COLOURED if character.colouring else 1.0) * (DECIDES if row.decides else 1.0)
    shares = [_most(character, t) for t in row.told if t is not None]
    value *= math.sqrt(math.sqrt(row.separation) if character.is_number else min(shares))
    value *= OF_SOME if any(t is not None and (t.only or t.bound in _BOUNDS) for t in row.told) else 1.0
    value *= REMEMBERED if any(t is not None and t.basis == "memory" for t in row.told) else 1.0
    return value * _pairs_apart(row) * (1.0 if all(row.told) else OF_SOME)


def _pairs_apart(row: ContrastRow) -> float:
    """The share of the pairs of three or more fishes that show different things, as most of them do; 1 for two."""
    pairs = [(a, b) for a, b in combinations(row.told, 2) if a is not None and b is not None]
    return sum(_differ(a, b) for a, b in pairs) / len(pairs) if len(pairs) > 1 else 1.0


def _differ(a: Told, b: Told) -> bool:
    if a.numbers and b.numbers:
        return a.numbers[1] > b.numbers[2] or b.numbers[1] > a.numbers[2]
    return {s for s, _ in a.states[:1]} != {s for s, _ in b.states[:1]}


def _most(character: Character, told: Told) -> float:
    """The share of fish that show what is told: of steps that follow on each other together, else of the commonest."""
    if not told.states:
        return 1.0
    shares = [share for _, share in told.states]
    return min(1.0, sum(shares)) if character.kind == "ordered" else shares[0]


def by_part(kb: KnowledgeBase, rows: Sequence[ContrastRow]) -> tuple[ContrastRow, ...]:
    """The rows so that the best two of a body part stand together, parts with several good characters first."""
    parts: dict[str, list[ContrastRow]] = {}
    for row in rows:
        found = kb.character(row.character)
        parts.setdefault(found.part or found.id, []).append(row)
    rank: dict[str, float] = {}
    for members in parts.values():
        together = 1.0
        front = [r for r in members[:2] if r is members[0] or r.worth >= ALONGSIDE]
        for row in front:
            together *= 1.0 - min(row.worth, 0.95)
        for place, row in enumerate(members):
            rank[row.character] = 1.0 - together - 0.001 * place if row in front else min(row.worth, 0.95)
    return tuple(sorted(rows, key=lambda row: (-rank[row.character], row.character)))


def settled_by(kb: KnowledgeBase, taxa: Sequence[str]) -> frozenset[str]:
    """The words in which listed look-alike pairs among the taxa say what settles them."""
    wanted = set(taxa)
    texts = [x.settles for t in taxa for x in kb.look_alikes(t) if x.other in wanted]
    return frozenset(singular(w) for text in texts for w in key(text).split() if len(w) > 2)


def standing(kb: KnowledgeBase, row: ContrastRow) -> int:
    """Where a row belongs: what the pair's own list names first, then what is read and easily seen, then the rest."""
    memory = any(t is not None and t.basis == "memory" for t in row.told)
    easy = kb.character(row.character).look in _EASY and row.separation >= CLEARLY
    if row.decides:
        return 1 if memory else 0
    return 1 if easy and not memory and all(row.told) else 2


def decides(kb: KnowledgeBase, character: str, words: frozenset[str]) -> bool:
    """True when every word of a name of the character, one with two or more, stands among those that settle a pair."""
    return bool(words) and any(len(name) > 1 and name <= words for name in _names(kb, character))


def mentions(kb: KnowledgeBase, character: str, words: frozenset[str]) -> bool:
    """True when the words name the part or feature of a character."""
    return bool(words) and any(name & words for name in _names(kb, character))


def _names(kb: KnowledgeBase, character: str) -> tuple[frozenset[str], ...]:
    """The words of each name of a character."""
    found = kb.character(character)
    return word_names(kb, character, (found.label, found.trade, *found.words))


def word_names(kb: KnowledgeBase, key_of: str, texts: Sequence[str]) -> tuple[frozenset[str], ...]:
    """The words of each name of a character or state, small ones left out."""
    return kb.derived(f"name words {key_of}", lambda _: tuple(
        frozenset(singular(w) for w in key(text).split() if len(w) > 2) for text in texts))


_EASY = frozenset({"glance", "hand"})
CLEARLY = 0.55
"""Separation from which a character that is read and easily seen goes before all that rests on memory."""
_TRUST: Mapping[str, float] = {"read": 1.0, "common-practice": 0.85, "memory": 0.8}


def separate(kb: KnowledgeBase, character: Character, taxa: Sequence[str]) -> float | None:
    """The mean over pairs of the total variation distance between what observers would report of the taxa."""
    if not scored(character):
        return _range_distance(kb, character, taxa)
    cells = [taxon_distribution(kb, t, character.id, ADULT) for t in taxa]
    told: list[Distribution | None] = [c for c in cells if c is not None]
    if len(told) < 2:
        return None
    keys = column_keys(kb, character, told)
    truths = [told_shares(keys, cell) for cell in told if cell is not None]
    kin = kin_of(kb, character, keys)
    pairs = [apart(character, a, b, kin) for a, b in combinations(truths, 2)]
    return sum(pairs) / len(pairs)


def _range_distance(kb: KnowledgeBase, character: Character, taxa: Sequence[str]) -> float | None:
    if not character.is_number:
        return None
    ranges = [(x[0], x[1]) for t in taxa if (x := numbers(kb, t, character.id))]
    if len(ranges) < 2:
        return None
    parts = []
    for (a, b), (c, d) in combinations(ranges, 2):
        overlap = max(0.0, min(b, d) - max(a, c))
        width = max(min(b - a, d - c), 1e-9)
        apart = 1.0 - min(1.0, overlap / width) if overlap or max(a, c) > min(b, d) else 1.0
        same = b - a < 1e-9 and d - c < 1e-9 and abs(a - c) < 1e-9
        parts.append(0.0 if same else apart * (1 - character.error))
    return sum(parts) / len(parts)


def tell(kb: KnowledgeBase, character: Character, taxon: str) -> Told | None:
    """What the base says of a character in a taxon, ready to be put into words; None when nothing is stated."""
    statements, whose = about(kb, taxon, character.id)
    if not statements and not kb.taxon(taxon).is_hybrid:
        return None
    if character.is_stated:
        found = taxon_distribution(kb, taxon, character.id, ADULT)
        if found is None:
            return None
        shown = shown_states(kb, found, statements)
        return Told(taxon, shown, None, "", _speaking(kb, statements, shown) or found.statements, whose, found.basis,
                    narrowed_by(statements))
    if not statements:
        return None
    best = sorted(statements, key=lambda s: (not s.preferred, s.scoped, s.basis != "read", s.id))
    if (numbers_of := joined(best)) is None:
        return None
    used = best[:1] if best[0].preferred else best
    return Told(taxon, (), numbers_of, best[0].unit, tuple(s.id for s in best), whose, best[0].basis, narrowed_by(best),
                _bound(used))


def tell_some(kb: KnowledgeBase, character: Character, taxon: str, who: Scope) -> Told | None:
    """What is told of a character in the fish of one sex or age or in breeding ones; None where nothing speaks of them
    alone.
    """
    statements, whose = about(kb, taxon, character.id)
    own = [s for s in statements if speaks_of(s, who)]
    if not own:
        return None
    ids, basis = tuple(s.id for s in own), own[0].basis
    if character.is_stated:
        found = taxon_distribution(kb, taxon, character.id, who)
        shown = shown_states(kb, found, own) if found is not None else ()
        return Told(taxon, shown, None, "", ids, whose, basis) if shown else None
    numbers_of = joined(own)
    return Told(taxon, (), numbers_of, own[0].unit, ids, whose, basis, "", _bound(own)) if numbers_of else None


def speaks_of(s: Statement, who: Scope) -> bool:
    """True where a statement speaks of just these fish: of the young, of one sex, of breeding ones.

    What is told of breeding fish, no sex named, is told of their males; young fish are those under some length, too.
    """
    if who.stage == "juvenile":
        return s.stage == "juvenile" or (s.max_length is not None and s.min_length is None)
    if s.stage == "juvenile" or (who.sex == "female" and s.sex != "female") or (who.sex and s.sex not in ("", who.sex)):
        return False
    return s.breeding == BREEDING or (not who.breeding and bool(s.sex)) if who.sex or who.breeding else False


def _bound(statements: Sequence[Statement]) -> str:
    """What all the statements give alone: "least" a lower bound, "most" an upper one, "about" a mean, "usual" a number
    that most fish show; else empty.
    """
    forms = {"least": "low", "most": "high", "about": "mean"}
    given = {tuple(n for n in ("low", "usual_low", "mean", "usual_high", "high") if getattr(s, n) is not None)
             for s in statements}
    if word := next((word for word, name in forms.items() if given == {(name,)}), ""):
        return word
    spans = {r for s in statements if (r := number_range(s)) is not None}
    one = len({x for r in spans for x in r}) == 1
    return "usual" if one and all(s.frequency in USUAL for s in statements) else ""


def of_some(s: Statement) -> bool:
    """True where a statement speaks of young fish, of one sex or of breeding fish, not of any grown fish."""
    return bool(s.stage == "juvenile" or s.sex or s.breeding == BREEDING or s.max_length)


def narrowed_by(statements: Sequence[Statement]) -> str:
    """The first statement where all of them speak of young fish, of one sex or of breeding fish only; else empty."""
    if not statements or not all(of_some(s) for s in statements):
        return ""
    grown = {s.sex for s in statements if s.stage != "juvenile" and s.breeding != BREEDING and not s.max_length}
    return "" if {"male", "female"} <= grown else statements[0].id


def shown_states(kb: KnowledgeBase, found: Distribution,
                 statements: Sequence[Statement]) -> tuple[tuple[str, float], ...]:
    """The states worth naming with their shares, commonest first; a named umbrella stands for its parts, unless one
    of them that is named as well makes up most of it.

    What no statement says is never named, whatever share is left to it; ``statements`` of none are those of a cross,
    whose states come from its parents.
    """
    named = {state: found.share(below(kb, state)) for s in statements for state in s.states} or dict(found.shares)
    covered = {leaf: len(below(kb, state)) for state in named for leaf in below(kb, state)}
    keep = {k: v for k, v in named.items() if len(below(kb, k)) >= max(covered[leaf] for leaf in below(kb, k))}
    told = {_mostly(kb, named, k) for k in keep}
    ranked = sorted(((k, named[k]) for k in told), key=lambda kv: (-kv[1], kv[0]))
    return tuple((k, v) for i, (k, v) in enumerate(ranked) if i == 0 or v >= SHOWN)


def _mostly(kb: KnowledgeBase, named: Mapping[str, float], state: str) -> str:
    """The finer state that makes up most of a named one, where there is such; else the state itself."""
    inside = set(below(kb, state))
    finer = [k for k in named if k != state and set(below(kb, k)) < inside and named[k] >= MOSTLY * named[state]
             and named[state] - named[k] < SHOWN]
    return min(finer, key=lambda k: (len(below(kb, k)), -named[k], k), default=state)


def joined(statements: Sequence[Statement]) -> tuple[float, float, float, float] | None:
    """One range for several number statements: the preferred one alone, else their common span."""
    ranges = [r for s in statements if (r := number_range(s)) is not None]
    if not ranges:
        return None
    if statements[0].preferred:
        return ranges[0]
    return (min(r[0] for r in ranges), min(r[1] for r in ranges), max(r[2] for r in ranges), max(r[3] for r in ranges))


def _speaking(kb: KnowledgeBase, statements: Sequence[Statement],
              shown: Sequence[tuple[str, float]]) -> tuple[str, ...]:
    told = {s for s, _ in shown}
    return tuple(s.id for s in statements if any(leaf in told for state in s.states for leaf in below(kb, state)))


def misleading(kb: KnowledgeBase, taxa: Sequence[str], characters: Sequence[str]) -> tuple[Misleading, ...]:
    """Statements about young, one sex or the breeding season in characters that otherwise separate."""
    out = []
    for character in characters:
        for taxon in taxa:
            for s in about(kb, taxon, character)[0]:
                if of_some(s):
                    out.append(Misleading(character, s.id))
    return tuple(out)


def crosses_between(kb: KnowledgeBase, taxa: Sequence[str]) -> tuple[str, ...]:
    """Crosses held in the base whose parents are both among the taxa."""
    wanted = set(taxa)
    found = {t for parent in taxa for t in kb.crosses_of(parent)}
    return tuple(t for t in sorted(found) if set(kb.taxon(t).parents) <= wanted and not kb.taxon(t).deprecated)


def told_of(kb: KnowledgeBase, taxa: Sequence[str]) -> tuple[str, ...]:
    """Ids of the characters of which something is stated of any of the taxa, their parents or what stands above."""
    own = {p for t in taxa for p in (t, *kb.taxon(t).parents)}
    return tuple(sorted({c for t in own for key in kb.lineage(t) for c in kb.told_of(key)}))
