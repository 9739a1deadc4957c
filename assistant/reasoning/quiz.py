"""Quiz items made from statements, with wrong answers that really are wrong (layer 3).

A state is right for a fish when nearly all its fish show it, and wrong when no statement about the fish, for any age,
sex or season, allows it. What lies between is never asked. No feature of a fish is asked again before the others have
been, and those that were read go before those from memory. The same seed gives the same quiz.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, Term
from assistant.reasoning.contrast import ADULT, tell
from assistant.reasoning.evidence import about, below
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.selection import species_below
from assistant.reasoning.splits import loose_denials, recorded, usable

RIGHT = 0.8
"""Share of fish from which a state counts as right."""
NEARLY_ALL = 0.88
"""Share from which it is told without "usually"."""
LEFT_OVER = 0.12
"""Share that may be left for a state nobody named; more of it, and the state is not called wrong."""
SURE = 0.22
"""Observer's error up to which a character is fit for a quiz."""
CHOICES, LEAST = 4, 3
"""Choices of a question at most, and at least where there are as many fishes; two stand beside true and false alone."""
FEW_WORDS = 6
"""Words of a choice that children are offered at most."""
UNREAD = 0.5
"""By how many fishes less a fact from memory counts than one that was read."""
AGAIN = 2
"""How often a feature of a fish is asked again at most once all others have been, by other kinds of questions."""
FEATURES = 3
"""Features told of a described catch."""
KINDS = ("which-fish", "which-feature", "true-false", "catch", "term")


@dataclass(frozen=True, slots=True)
class Fact:
    """A state that is right for a fish, with the statements that say so."""

    taxon: str
    character: str
    state: str
    statements: tuple[str, ...]
    basis: str
    usual: bool = False
    """True where the state holds as a rule and not for nearly every fish."""


@dataclass(frozen=True, slots=True)
class Item:
    """A question: its kind, the fish and facts it is about, the choices (ids of taxa, states, terms; true and false).

    ``answer`` is the place of the right choice; ``tempting`` that of the wrong one most easily taken, with ``because``
    the facts that show it wrong.
    """

    kind: str
    taxon: str
    facts: tuple[Fact, ...]
    choices: tuple[str, ...]
    answer: int
    tempting: int | None
    because: tuple[Fact, ...]


@dataclass(frozen=True, slots=True)
class Quiz:
    """Items in their order, the fishes they draw on, and the seed."""

    taxa: tuple[str, ...]
    items: tuple[Item, ...]
    seed: int


class Pool:
    """What may be asked about some fishes at some looks; not ``firm`` where what few sources tell otherwise counts."""

    def __init__(self, kb: KnowledgeBase, taxa: Sequence[str], looks: Collection[str], plain: bool = False,
                 about: str = "", firm: bool = True) -> None:
        self.kb = kb
        self.plain = plain
        self.about = about
        self.taxa = tuple(taxa)
        self.characters = tuple(c for c in kb.characters if usable(c, looks) and c.error <= SURE
                                and (c.kind == "states" or (c.is_stated and not plain)))
        self.facts = tuple(f for t in self.taxa for c in self.characters if (f := right(kb, t, c, firm)) is not None)
        self._open: dict[tuple[str, str], frozenset[str] | None] = {}
        self.telling = tuple(f for f in self.facts if any(self.wrong(t, f.state) for t in self.taxa))
        """The facts that do not hold for every fish here; what all share teaches nobody to tell them apart."""
        self.least = min(LEAST, len(self.taxa))

    def wrong(self, taxon: str, state: str) -> bool:
        """True when the base says enough of a character of a fish to exclude a state, for any of its fish."""
        character = state.partition(".")[0]
        slot = (taxon, character)
        if slot not in self._open:
            self._open[slot] = possible(self.kb, taxon, character)
        allowed = self._open[slot]
        if allowed is None or allowed & frozenset(below(self.kb, state)):
            return False
        found = taxon_distribution(self.kb, taxon, character, ADULT)
        return found is not None and found.share(below(self.kb, state)) <= LEFT_OVER

    def mine(self) -> tuple[Fact, ...]:
        """The telling facts, of the one fish that it is about where it is about one."""
        return tuple(f for f in self.telling if f.taxon == self.about) if self.about else self.telling

    def terms(self) -> list[Term]:
        """The words of the body in what these fishes are told apart by; none that only stands in another of them."""
        terms = _terms_in(self.kb, {f.character for f in self.telling})
        parts = {part for t in terms for part in t.label.lower().split() if " " in t.label}
        return [t for t in terms if t.label.lower() not in parts]

    @cached_property
    def kindred(self) -> Sequence[str]:
        """States that fishes of the same families show as a rule, by character and state."""
        families = {self.kb.lineage(t)[-1] for t in self.taxa}
        species = sorted(s for f in families for s in species_below(self.kb, f))
        found = {f.state for s in species for c in self.characters if (f := right(self.kb, s, c)) is not None}
        return sorted(found)

    def of(self, taxon: str) -> list[Fact]:
        """The telling facts of one fish."""
        return [f for f in self.telling if f.taxon == taxon]

    def fact(self, taxon: str, character: str) -> Fact | None:
        """The fact of one fish and character."""
        return next((f for f in self.facts if f.taxon == taxon and f.character == character), None)


def _terms_in(kb: KnowledgeBase, characters: Collection[str]) -> list[Term]:
    """The words of the body that the names of some characters speak of."""
    names = [kb.character(c) for c in sorted(characters)]
    texts = " ".join(f" {c.label} {c.trade} " for c in names).lower()
    return [t for t in kb.all("term") if t.where and any(f" {w.lower()} " in texts for w in (t.label, *t.words))]


def right(kb: KnowledgeBase, taxon: str, character: Character, firm: bool = True) -> Fact | None:
    """The state that nearly all fish of a taxon show, if there is one; never of one sex, the young or a season.

    A ``firm`` one has no statement beside it that names another state.
    """
    told = tell(kb, character, taxon)
    if told is None or not told.states or told.states[0][1] < RIGHT or recorded(kb, taxon, character.id) is None:
        return None
    state = told.states[0][0]
    statements, _ = about(kb, taxon, character.id)
    others = {leaf for s in statements for x in s.states for leaf in below(kb, x)} - set(below(kb, state))
    if (others and firm) or not kb.state(state).clause or state in loose_denials(kb, character.id):
        return None
    return Fact(taxon, character.id, state, tuple(s.id for s in statements) or told.statements, told.basis,
                told.states[0][1] < NEARLY_ALL)


def possible(kb: KnowledgeBase, taxon: str, character: str) -> frozenset[str] | None:
    """The states that some statement allows for some fish of a taxon; None where nothing is stated.

    A cross may show what either parent shows, so that both must be told of.
    """
    own = [s for s in kb.statements(taxon) if s.character == character]
    told = [list(about(kb, key, character)[0]) for key in kb.taxon(taxon).parents or (taxon,)]
    if not all(told):
        return None
    loose = loose_denials(kb, character)
    out = {leaf for s in (*own, *(s for part in told for s in part)) for x in s.states for leaf in below(kb, x)}
    return frozenset(out) if out and not out & loose else None


def build_quiz(kb: KnowledgeBase, taxa: Sequence[str], count: int, seed: int, looks: Collection[str],
               kinds: Sequence[str] = KINDS, plain: bool = False, about: str = "") -> Quiz:
    """A quiz of up to ``count`` items; fewer where the base does not tell enough of these fishes.

    A ``plain`` one, for children, asks no measure that is only more or less and offers no long choices. All items of
    one ``about`` a fish ask of that fish; the others are only there to be taken for it.
    """
    rng = random.Random(seed)
    pool = Pool(kb, taxa, looks, plain, about)
    items: list[Item] = []
    used = _Asked()
    while len(items) < count and used.most <= AGAIN:
        made = [item for kind in kinds if (item := _MAKERS[kind](pool, rng, used)) is not None]
        used.most += all(item.kind == "term" for item in made)
        items += made
    return Quiz(pool.taxa, tuple(items[:count]), seed)


@dataclass
class _Asked:
    """What was asked: what is asked once, how often features of fishes were, and how often they may have been."""

    once: set[tuple[str, ...]] = field(default_factory=set)
    often: Counter[tuple[str, ...]] = field(default_factory=Counter)
    most: int = 0

    def note(self, taxon: str, facts: Sequence[Fact], *once: tuple[str, ...]) -> None:
        """Remember a question on some features of a fish."""
        self.once |= set(once)
        self.often.update(slot for f in facts for slot in ((taxon, f.character), (f.character,)))

    def open(self, taxon: str, character: str) -> bool:
        """True where a feature of a fish has not been asked too often yet."""
        return self.often[taxon, character] <= self.most

    def ordered(self, rng: random.Random, facts: Sequence[Fact]) -> list[Fact]:
        """Facts by chance, but the least asked first, and of those the ones that were read."""
        return sorted(_shuffled(rng, facts), key=lambda f: (self.often[f.taxon, f.character],
                                                            self.often[f.character,], f.basis == "memory"))


def _which_fish(pool: Pool, rng: random.Random, used: _Asked) -> Item | None:
    for fact in used.ordered(rng, pool.mine()):
        others = [t for t in pool.taxa if t != fact.taxon and pool.wrong(t, fact.state)]
        if (fact.state,) in used.once or len(others) < pool.least - 1 or not used.open(fact.taxon, fact.character):
            continue
        used.note(fact.taxon, [fact], (fact.state,))
        wrong = _nearest_first(pool, rng, fact.taxon, others)[: CHOICES - 1]
        return _item(rng, pool, "which-fish", fact, fact.taxon, wrong)
    return None


def _which_feature(pool: Pool, rng: random.Random, used: _Asked) -> Item | None:
    for fact in used.ordered(rng, pool.mine()):
        if (fact.taxon, fact.character) in used.once or not used.open(fact.taxon, fact.character):
            continue
        wrong = _wrong_states(pool, rng, fact)
        if pool.plain:
            wrong = [s for s in wrong if _short(pool.kb, s)] if _short(pool.kb, fact.state) else []
        if len(wrong) >= LEAST - 1:
            used.note(fact.taxon, [fact], (fact.taxon, fact.character))
            return _item(rng, pool, "which-feature", fact, fact.state, wrong[: CHOICES - 1])
    return None


def _short(kb: KnowledgeBase, state: str) -> bool:
    """True for a state told in few words."""
    found = kb.state(state)
    return len((found.clause or found.label).partition("|")[0].split()) <= FEW_WORDS


def _wrong_states(pool: Pool, rng: random.Random, fact: Fact) -> list[str]:
    """States that the fish cannot show: those of other fishes here, then those of their families; no two alike."""
    shown = [f.state for f in pool.facts if f.character == fact.character]
    rest = [s for s in pool.kindred if s.partition(".")[0] == fact.character]
    out: list[str] = []
    taken: set[str] = set(below(pool.kb, fact.state))
    for state in [*_shuffled(rng, sorted(set(shown))), *_shuffled(rng, rest)]:
        leaves = set(below(pool.kb, state))
        if not leaves & taken and pool.wrong(fact.taxon, state) and not _kin(pool.kb, state, [fact.state, *out]):
            taken |= leaves
            out.append(state)
    return out


def _kin(kb: KnowledgeBase, state: str, others: Sequence[str]) -> bool:
    """True when a state stands over or under one of the others, so that both could be called right."""
    lines = [set(_line(kb, s)) for s in others]
    return any(state in line for line in lines) or bool(set(others) & set(_line(kb, state)))


def _line(kb: KnowledgeBase, state: str) -> list[str]:
    out = [state]
    while (above := kb.state(out[-1]).broader) is not None:
        out.append(above)
    return out


def _true_false(pool: Pool, rng: random.Random, used: _Asked) -> Item | None:
    first, second = (_true, _false) if rng.random() < 0.5 else (_false, _true)
    return first(pool, rng, used) or second(pool, rng, used)


def _true(pool: Pool, rng: random.Random, used: _Asked) -> Item | None:
    for fact in used.ordered(rng, pool.mine()):
        if ("tf", fact.state) not in used.once and used.open(fact.taxon, fact.character):
            used.note(fact.taxon, [fact], ("tf", fact.state))
            return Item("true-false", fact.taxon, (fact,), ("true", "false"), 0, 1, ())
    return None


def _false(pool: Pool, rng: random.Random, used: _Asked) -> Item | None:
    facts = [f for f in pool.telling if f.taxon != pool.about and ("tf", f.state) not in used.once]
    for fact in used.ordered(rng, facts):
        victims = [t for t in ((pool.about,) if pool.about else pool.taxa) if used.open(t, fact.character)
                   and t != fact.taxon and pool.wrong(t, fact.state) and pool.fact(t, fact.character)]
        if victims:
            taxon = _nearest_first(pool, rng, fact.taxon, victims)[0]
            used.note(taxon, [fact], ("tf", fact.state))
            truth = pool.fact(taxon, fact.character)
            return Item("true-false", taxon, (fact,), ("true", "false"), 1, 0, (truth,) if truth else ())
    return None


def _catch(pool: Pool, rng: random.Random, used: _Asked) -> Item | None:
    """A fish described by features that together exclude every wrong choice."""
    for taxon in _shuffled(rng, (pool.about,) if pool.about else pool.taxa):
        others = [t for t in pool.taxa if t != taxon]
        telling = marks_of(pool, taxon, used.ordered(rng, pool.of(taxon)))
        wrong = [t for t in others if any(pool.wrong(t, f.state) for f in telling)]
        if ("catch", taxon) in used.once or len(telling) < 2 or len(wrong) < pool.least - 1:
            continue
        used.note(taxon, telling, ("catch", taxon))
        chosen = _nearest_first(pool, rng, taxon, wrong)[: CHOICES - 1]
        made = _item(rng, pool, "catch", telling[0], taxon, chosen)
        return Item(made.kind, taxon, tuple(telling), made.choices, made.answer, made.tempting,
                    _against(pool, made, telling))
    return None


def marks_of(pool: Pool, taxon: str, facts: Sequence[Fact], most: int = FEATURES) -> list[Fact]:
    """The facts that tell a fish from most of the others, one of each part of the body."""
    parts: dict[str, Fact] = {}
    for fact in facts:
        parts.setdefault(pool.kb.character(fact.character).part, fact)
    others = [t for t in pool.taxa if t != taxon]
    return sorted(parts.values(), key=lambda f: (-sum(pool.wrong(t, f.state) for t in others), f.state))[:most]


def setting_apart(pool: Pool, taxon: str, most: int) -> list[Fact]:
    """The facts that set a fish apart from the others, one of each part of the body, the most telling first.

    Each tells it from as many as may be of those that the facts before it left, and half of the others or more never
    share it; of equals one read goes before one from memory. There may be fewer than ``most`` of them, or none.
    """
    others = left = [t for t in pool.taxa if t != taxon]
    facts = [f for f in pool.of(taxon) if _excluded(pool, f, others) and 2 * _sharing(pool, f, others) < len(others)]
    out: list[Fact] = []
    while facts and len(out) < most:
        fact = max(facts, key=lambda f: (_worth(pool, f, left), _worth(pool, f, others), f.state))
        out.append(fact)
        left = [t for t in left if not pool.wrong(t, fact.state)] or others
        part = pool.kb.character(fact.character).part
        facts = [f for f in facts if pool.kb.character(f.character).part != part and _excluded(pool, f, left)]
    return out


def _excluded(pool: Pool, fact: Fact, others: Sequence[str]) -> int:
    """How many of some fishes a fact tells its fish from."""
    return sum(pool.wrong(t, fact.state) for t in others)


def _sharing(pool: Pool, fact: Fact, others: Sequence[str]) -> int:
    """How many of some fishes show as a rule what a fact says, or something that it takes in."""
    leaves = set(below(pool.kb, fact.state))
    return sum(f.taxon in others and not leaves.isdisjoint(below(pool.kb, f.state)) for f in pool.facts)


def _worth(pool: Pool, fact: Fact, others: Sequence[str]) -> float:
    """How many of some fishes a fact excludes beyond those that share it, a little less where it rests on memory."""
    return _excluded(pool, fact, others) - _sharing(pool, fact, others) - UNREAD * (fact.basis == "memory")


def _against(pool: Pool, item: Item, telling: Sequence[Fact]) -> tuple[Fact, ...]:
    if item.tempting is None:
        return ()
    wrong = item.choices[item.tempting]
    return tuple(f for t in telling if pool.wrong(wrong, t.state)
                 and (f := pool.fact(wrong, t.character)) is not None)[:1]


def _term(pool: Pool, rng: random.Random, used: _Asked) -> Item | None:
    """A word of the body and what it means; the other choices are words for other marks and parts of fishes."""
    terms = pool.terms()
    more = _terms_in(pool.kb, {c.id for c in pool.kb.characters if c.use == "identify"})
    for term in _shuffled(rng, terms):
        if ("term", term.id) in used.once:
            continue
        used.once.add(("term", term.id))
        named = {w for t in (term,) for w in f"{t.label} {t.plain}".lower().split()}
        others = [t.id for t in (*_shuffled(rng, terms), *_shuffled(rng, [t for t in more if t not in terms]))
                  if t.id != term.id and t.where != term.where
                  and not {t.label.lower(), *(w.lower() for w in t.words)} & {term.label.lower(),
                                                                              *(w.lower() for w in term.words)}
                  and not set(t.label.lower().split()) & named]
        fact = Fact("", "", term.id, (), "common-practice")
        return _item(rng, pool, "term", fact, term.id, others[: CHOICES - 1])
    return None


def _item(rng: random.Random, pool: Pool, kind: str, fact: Fact, good: str, wrong: Sequence[str]) -> Item:
    choices = _shuffled(rng, [good, *wrong])
    tempting = choices.index(wrong[0]) if wrong else None
    because: tuple[Fact, ...] = ()
    if kind == "which-fish" and wrong and (found := pool.fact(wrong[0], fact.character)) is not None:
        because = (found,)
    elif kind == "which-feature" and wrong:
        because = tuple(f for f in pool.facts if f.state == wrong[0])[:1]
    return Item(kind, fact.taxon, (fact,), tuple(choices), choices.index(good), tempting, because)


def _nearest_first(pool: Pool, rng: random.Random, taxon: str, others: Sequence[str]) -> list[str]:
    """Fishes most easily taken for a taxon first: listed look-alikes, then kin, then any."""
    kb = pool.kb
    alike = {x.other for x in kb.look_alikes(taxon)} | {t for t in others for x in kb.look_alikes(t)
                                                        if x.other == taxon}
    line = set(kb.lineage(taxon)[1:2])
    mixed = _shuffled(rng, others)
    return sorted(mixed, key=lambda t: (t not in alike, not line & set(kb.lineage(t))))


def _shuffled(rng: random.Random,
              items: Sequence[str] | Sequence[Fact] | Sequence[object]) -> list:  # type: ignore[type-arg]
    out = list(items)
    rng.shuffle(out)
    return out


_MAKERS = {"which-fish": _which_fish, "which-feature": _which_feature, "true-false": _true_false, "catch": _catch,
           "term": _term}
