"""The blocks of an identification: lead by verdict, candidates with grounds, doubts, cautions (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.observing import span_of
from assistant.dialogue.telling import place_names
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import speak
from assistant.iris import local
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Caution
from assistant.reasoning.evidence import about, below
from assistant.reasoning.observed import Candidate, Identification, statements_for
from assistant.text import join, sentence
from assistant.units import show_length, show_weight

MOST_NAMED = 3
WORTH = 0.05
"""Probability below which a further candidate is not named."""
GROUNDS = 4
MIXED = 0.15
"""Probability of each of two fishes from which a fish with marks of both may be their cross."""
LEANING = 0.6
"""Probability from which a fish that is not yet named for good leads the answer."""

MOST_STANDING = 2
"""Of the fishes that the asker named and that are not among the first, so many are told of."""


def shown(found: Identification) -> tuple[Candidate, ...]:
    """The candidates worth naming, two or three at most."""
    if found.verdict == "none-fits":
        return found.candidates[:2]
    first = found.candidates[0].probability if found.candidates else 0.0
    rest = [c for c in found.candidates[1:MOST_NAMED] if c.probability >= max(WORTH, 0.12 * first)]
    return (*found.candidates[:1], *rest)


def grounds(kb: KnowledgeBase, held: Held, candidate: Candidate, against: bool = False) -> list[str]:
    """What was seen that speaks for (or against) a candidate, in words."""
    ids = set(candidate.opposes if against else candidate.supports)
    out = []
    for seen in held.seen:
        if ids & set(statements_for(kb, candidate.taxon, seen.observation)):
            out.append(speak.seen_words(kb, seen.observation))
    return list(dict.fromkeys(out))


def opposing(kb: KnowledgeBase, held: Held, candidate: Candidate) -> list[str]:
    """What speaks against a candidate: what the base says instead of what was seen."""
    out = []
    for seen in held.seen:
        ids = set(statements_for(kb, candidate.taxon, seen.observation)) & set(candidate.opposes)
        if ids:
            out.append(speak.seen_words(kb, seen.observation))
    return list(dict.fromkeys(out))


def lead(kb: KnowledgeBase, held: Held, found: Identification) -> Block:
    """The first sentence, by the verdict."""
    named = shown(found)
    top = found.candidates[0]
    names = speak.fishes(kb, [c.taxon for c in named], "or")
    because = join(grounds(kb, held, top)[:GROUNDS])
    ids = speak.short_ids((*top.supports, *top.opposes)) or speak.short_ids(any_statement(kb, top.taxon))
    if found.verdict == "sure":
        return Block("lead", wording.lead_sure(speak.fish_both(kb, top.taxon), because), statements=ids)
    if found.verdict == "likely":
        return Block("lead", wording.lead_likely(speak.fish_both(kb, top.taxon), because), statements=ids)
    if found.verdict == "none-fits":
        return Block("lead", wording.lead_none(clash_words(kb, held, found)), statements=ids)
    if found.verdict == "between" and len(named) > 1:
        return Block(
            "lead", wording.lead_between(names), statements=speak.short_ids(s for c in named for s in c.supports) or ids
        )
    if found.verdict == "between" and top.probability >= LEANING:
        return Block("lead", wording.lead_leaning(speak.fish_both(kb, top.taxon), because), statements=ids)
    group = group_name(kb, found)
    kin = (f"taxon:{found.group}",) if group else ()
    return Block("lead", wording.lead_not_enough(names, group), statements=(*ids, *kin))


def any_statement(kb: KnowledgeBase, taxon: str) -> list[str]:
    """Some statement about a fish, its parents or its lineage, for a claim that rests on no single one."""
    keys = (taxon, *kb.taxon(taxon).parents, *kb.lineage(taxon))
    return [s.id for key in keys for s in kb.statements(key)[:1]][:1]


def group_name(kb: KnowledgeBase, found: Identification) -> str:
    """The genus or family that holds when no species does, as people say it; empty when it is the only kind of it."""
    if not found.group or found.group_probability < 0.9:
        return ""
    taxon = kb.taxon(found.group)
    return taxon.label if taxon.label.endswith("s") else wording.family_of(taxon.label)


def clash_words(kb: KnowledgeBase, held: Held, found: Identification) -> str:
    """The observations that the best candidate does not bear out."""
    return join(_clashing(kb, held, found))


def _clashing(kb: KnowledgeBase, held: Held, found: Identification) -> list[str]:
    return [speak.seen_words(kb, s.observation) for s in held.seen if s.observation.character in found.clashes][:3]


def clash_told(kb: KnowledgeBase, held: Held, found: Identification) -> str:
    """What of the marks seen goes together in no fish, else what speaks against the best that was not said of it."""
    top, clashing = found.candidates[0], _clashing(kb, held, found)
    if found.together:
        fits, against = grounds(kb, held, top)[:GROUNDS], opposing(kb, held, top)[:2]
        rest = [w for w in clashing if w in fits or w not in against]
        return wording.clash_with(speak.fish(kb, top.taxon), join(rest)) if rest else ""
    others = [w for s in held.seen if (w := speak.seen_words(kb, s.observation)) not in clashing]
    return wording.clash(join(clashing), join(others[:GROUNDS]))


def candidate_points(kb: KnowledgeBase, held: Held, found: Identification) -> list[Block]:
    """A point for each candidate worth naming."""
    out = []
    named = shown(found)
    if found.verdict == "sure" and len(named) == 1 and not named[0].opposes:
        return []
    for c in named:
        fits, against = grounds(kb, held, c)[:GROUNDS], opposing(kb, held, c)[:2]
        against = [a for a in against if a not in fits]
        ids = speak.short_ids((*c.supports, *c.opposes)) or speak.short_ids(any_statement(kb, c.taxon))
        text = wording.candidate(speak.fish(kb, c.taxon), wording.share(c.probability), join(fits), join(against))
        out.append(Block("point", text, statements=ids))
    return out


def guess_points(kb: KnowledgeBase, held: Held, found: Identification, guess: str) -> list[Block]:
    """How the fish that the asker named stands where others lead, and what some of its kind show of what was seen."""
    own = next((c for c in found.candidates if c.taxon == guess), None)
    against = opposing(kb, held, own) if own is not None else []
    out = standing_points(kb, held, found, (guess,))
    for seen in held.seen:
        what = speak.seen_words(kb, seen.observation)
        told = {leaf for state in seen.observation.states for leaf in below(kb, state)}
        showing = [s for s in about(kb, guess, seen.observation.character)[0]
                   if told & {leaf for x in s.states for leaf in below(kb, x)}]
        some = [s for s in showing if s.sex or s.breeding or s.stage]
        mostly = own is None or what in against or 2 * len(some) > len(showing)
        if some and seen.observation.seen and mostly:
            text = wording.of_some(speak.scope_words(some[0]), speak.fish(kb, guess), what)
            out.append(Block("point", text, statements=speak.short_ids(s.id for s in some)))
    return out


def standing_points(kb: KnowledgeBase, held: Held, found: Identification, named: Sequence[str]) -> list[Block]:
    """How each of some fishes that the asker named stands, where others are shown; the likeliest ones."""
    left = sorted({*named} - {c.taxon for c in shown(found)}, key=lambda t: (-found.posterior.get(t, 0.0), t))
    out = []
    for guess in left[:MOST_STANDING]:
        own = next((c for c in found.candidates if c.taxon == guess), None)
        fits = join(grounds(kb, held, own)[:GROUNDS] if own is not None else [])
        against = join(opposing(kb, held, own) if own is not None else [])
        text = wording.candidate(speak.fish(kb, guess), wording.share(found.posterior.get(guess, 0.0)), fits, against)
        ids = (*own.supports, *own.opposes) if own is not None else ()
        out.append(Block("point", text, statements=speak.short_ids(ids or any_statement(kb, guess))))
    return out


def unnamed_point(kb: KnowledgeBase, held: Held, candidate: Candidate) -> Block:
    """A fish that what was seen fits, though the asker named others."""
    text = wording.fits_unnamed(speak.fish(kb, candidate.taxon), join(grounds(kb, held, candidate)[:GROUNDS]))
    return Block("point", text, statements=speak.short_ids(candidate.supports))


def doubts(kb: KnowledgeBase, held: Held, found: Identification, guess: str = "") -> list[Block]:
    """Hybrids, clashes, sizes and places that give pause."""
    out: list[Block] = []
    top = found.candidates[0]
    if found.too_small and held.lengths:
        out.append(Block("doubt", wording.too_small(length_told(held)), claim=False))
    clashing = found.clashes and found.verdict != "none-fits" and len(held.seen) > 1
    if clashing and (text := clash_told(kb, held, found)):
        ids = speak.short_ids(top.opposes or top.supports) or speak.short_ids(any_statement(kb, top.taxon))
        out.append(Block("doubt", text, statements=ids))
    out += hybrid_doubts(kb, found)
    out += place_doubts(kb, held, guess or top.taxon)
    return out + size_doubts(kb, held, guess or top.taxon)


def hybrid_doubts(kb: KnowledgeBase, found: Identification) -> list[Block]:
    """A word on hybrids where one leads, is among the candidates, or the marks of two parents clash."""
    crosses = [c for c in shown(found) if kb.taxon(c.taxon).is_hybrid]
    if not crosses and (mixed := mixed_cross(kb, found)):
        ids = [s.id for s in kb.statements(mixed)][:3] or any_statement(kb, mixed)
        return [Block("doubt", wording.cross_possible(speak.fish(kb, mixed)), statements=speak.short_ids(ids))]
    if not crosses:
        return []
    first = crosses[0]
    text = (
        wording.hybrid_doubt() if first is found.candidates[0] else wording.cross_possible(speak.fish(kb, first.taxon))
    )
    ids = [s.id for s in kb.statements(first.taxon)][:3] or list(first.supports)[:3] or any_statement(kb, first.taxon)
    return [Block("doubt", text, statements=speak.short_ids(ids))]


def mixed_cross(kb: KnowledgeBase, found: Identification) -> str:
    """The cross of the two leading fishes, where what was seen speaks both for and against each of them."""
    pair = [c for c in shown(found)[:2] if c.supports and c.opposes and c.probability >= MIXED]
    if len(pair) < 2:
        return ""
    wanted = {c.taxon for c in pair}
    return next((x for x in kb.crosses_of(pair[0].taxon) if set(kb.taxon(x).parents) == wanted), "")


def place_doubts(kb: KnowledgeBase, held: Held, taxon: str) -> list[Block]:
    """A fish named or found where it is not expected, with the look-alikes to check."""
    found = not_expected(kb, taxon, held.places)
    if found is None:
        return []
    from assistant.dialogue.handlers.contrast import look_alikes

    others = [t for t, _ in look_alikes(kb, taxon) if not_expected(kb, t, held.places) is None]
    others.sort(key=lambda t: (not kb.taxon(t).is_hybrid, t))
    ids = found or tuple(f"range:{r.id}" for r in kb.ranges(taxon)[:4])
    crosses = [t for t in others if kb.taxon(t).is_hybrid][:1]
    plain = [t for t in others if not kb.taxon(t).is_hybrid][:2]
    text = wording.out_of_range(
        speak.fish(kb, taxon), place_names(kb, held.places), speak.fishes(kb, [*plain, *crosses], "or")
    )
    return [Block("doubt", text, statements=ids)]


def not_expected(kb: KnowledgeBase, taxon: str, places: Sequence[str]) -> tuple[str, ...] | None:
    """The range records that make a fish unexpected at a place (empty: merely unlisted); None where it may be."""
    from assistant.reasoning.place_prior import WELL_LISTED, expand_places, narrowest

    real = [p for p in places if (x := kb.place(p)) is not None and not x.invented]
    if not real or kb.taxon(taxon).is_hybrid:
        return None
    wanted = expand_places(kb, narrowest(kb, real))
    rows = [r for key in kb.lineage(taxon) if kb.taxon(key).is_species for r in kb.ranges(key)]
    here = [r for r in rows if r.place in wanted]
    if here:
        poor = all(r.status in ("absent", "extirpated", "vagrant") or r.area for r in here)
        return tuple(f"range:{r.id}" for r in here) if poor else None
    return () if len(rows) >= WELL_LISTED else None


def size_doubts(kb: KnowledgeBase, held: Held, taxon: str) -> list[Block]:
    """A fish longer or heavier than its kind is known to grow."""
    from assistant.reasoning.evidence import numbers
    from assistant.reasoning.size import HEAVIEST, size_range

    length, mass = span_of(held.lengths), span_of(held.weights)
    sizes = size_range(kb, taxon)
    if length is None or not sizes.largest or length[0] <= sizes.largest:
        top = numbers(kb, taxon, HEAVIEST) if mass is not None and kb.find("character", HEAVIEST) else None
        if mass is None or top is None or mass[0] <= top[1]:
            return []
        told, known = (show_weight(g, held.units or "us") for g in (mass[1], top[1]))
        text = wording.heavier_than_known(speak.fish(kb, taxon), told, known)
        return [Block("doubt", text, statements=speak.short_ids(top[2]))]
    text = wording.longer_than_known(
        speak.fish(kb, taxon), length_told(held), show_length(sizes.largest, held.units or "us")
    )
    return [Block("doubt", text, statements=speak.short_ids(sizes.largest_statements))]


def length_told(held: Held) -> str:
    """The length told of the catch, in the asker's unit with the other in brackets; empty where none was."""
    span = span_of(held.lengths)
    return show_length(span[1], held.units or "us") if span else ""


def grip_caution(kb: KnowledgeBase, taxa: Sequence[str]) -> list[Block]:
    """One short line of care where a fish that may be held has spines, teeth or a sting, the narrowest that fits."""
    kinds = {first for t in taxa for first in (kb.taxon(t).parents or (t,))}
    best: tuple[tuple[int, str], Caution] | None = None
    for caution in kb.all("caution"):
        if not caution.lead or "hold" not in caution.acts:
            continue
        sizes = [len(members) for a in caution.about if kinds & (members := set(kb.members(local(a))))]
        if sizes and (best is None or (min(sizes), caution.id) < best[0]):
            best = ((min(sizes), caution.id), caution)
    if best is None:
        return []
    return [Block("caution", sentence(best[1].text), statements=(f"caution:{best[1].id}",))]
