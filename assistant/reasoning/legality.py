"""May it be kept? The verdict over every fish it may be and every place it may come from (layer 3).

The lawful acts of all candidates (and of both sides of a border, of all parts of a river) are intersected: what
is left is safe whichever of them it is. Nothing left, or anything unknown, is ``unknown``.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import chain

from assistant.model.regulations import Placement, Rulebook
from assistant.reasoning.catch import ANY_FISH, UNSAID, Catch
from assistant.reasoning.lawful import KEEP, outcomes
from assistant.reasoning.precedence import groups_at, stands_at
from assistant.reasoning.verdict import (
    NOT_KNOWN,
    Act,
    Ask,
    Assumed,
    Outcome,
    Reason,
    Remark,
    Tally,
    Verdict,
    Why,
    Word,
)


def verdict(catch: Catch, book: Rulebook) -> Verdict:
    """The verdict on one fish; never looser for a further candidate, a stricter rule or vaguer words."""
    missing = _missing(catch, book)
    if missing is not None or catch.day is None:
        return replace(missing or _without(Why.NO_DATE, Ask.DATE, catch))
    positions = positions_of(catch, book)
    candidates = unfolded(catch.candidates, positions, book)
    found = tuple(chain.from_iterable(
        outcomes(taxon, position, catch.day, catch, book) for taxon in candidates for position in positions))
    return _told(_combined(found), catch, candidates, positions, book)


def _without(why: Why, ask: Ask | None, catch: Catch) -> Verdict:
    return Verdict(Word.UNKNOWN, Reason(why, asks=ask), catch.day, catch.places, ask=ask)


def _missing(catch: Catch, book: Rulebook) -> Verdict | None:
    """What must be known before any rule can be looked up."""
    if catch.private:
        return _without(Why.PRIVATE_WATER, None, catch)
    if not catch.places:
        return _without(Why.NO_PLACE, Ask.PLACE, catch)
    if len(catch.places) > 1:
        return _without(Why.SEVERAL_PLACES, Ask.PLACE, catch)
    if not positions_of(catch, book):
        return _without(Why.NO_RULES_FOR_PLACE, None, catch)
    if not catch.candidates:
        return _without(Why.NO_FISH, Ask.FISH, catch)
    return None


def positions_of(catch: Catch, book: Rulebook) -> tuple[Placement, ...]:
    """Every placement of the catch: both sides or all parts where not told; beside a water, only its zone."""
    found = tuple(chain.from_iterable(book.positions(place) for place in catch.places))
    if catch.side:
        found = tuple(p for p in found if catch.side in (p.jurisdiction, p.zone, p.side, p.place)) or found
    if catch.away:
        found = tuple(replace(p, place="", part_of="", water_types=()) for p in found)
    return tuple(dict.fromkeys(found))


def unfolded(candidates: Iterable[str], positions: Sequence[Placement], book: Rulebook) -> tuple[str, ...]:
    """Candidates, a rule's own group, a genus or a family replaced by the members that rules there name."""
    groups = {m for g in groups_at(positions, book) for m in book.members[g]}
    own = {t for rule in book.rules.values() if any(stands_at(rule, p) for p in positions) for t in rule.taxa}
    found: list[str] = []
    for taxon in candidates:
        if taxon in book.groups:
            found.extend(sorted(book.members[taxon]))
            continue
        below = sorted(m for m in groups | own if taxon in book.lineage.above(m))
        found.extend(below or [taxon])
    return tuple(dict.fromkeys(found))


def _combined(found: tuple[Outcome, ...]) -> Verdict:
    unknown = next((o for o in found if o.reason.why in NOT_KNOWN or not o.certain), None)
    if unknown is not None:
        return Verdict(Word.UNKNOWN, unknown.reason, outcomes=found)
    certain = frozenset[Act].intersection(*(o.certain for o in found))
    possible = frozenset[Act].intersection(*(o.possible for o in found))
    if not possible:
        return Verdict(Word.UNKNOWN, Reason(Why.NO_LAWFUL_ACT, asks=Ask.FISH), outcomes=found)
    if certain != possible:
        unsure = next(o for o in found if o.certain != o.possible)
        return Verdict(Word.UNKNOWN, unsure.reason, acts=certain, outcomes=found)
    word = _word(certain, found)
    return Verdict(word, _binding_outcome(word, found).reason, acts=certain, outcomes=found)


def _word(acts: frozenset[Act], found: tuple[Outcome, ...]) -> Word:
    if acts == KEEP:
        return Word.KEEP
    if Act.KEEP_DEAD in acts:
        return Word.DO_NOT_RELEASE
    return Word.CLOSED if all(o.closed for o in found) else Word.RELEASE


def _binding_outcome(word: Word, found: tuple[Outcome, ...]) -> Outcome:
    """The outcome that forced the word: for keep the one with least room, else the first that forbids."""
    if word is Word.KEEP:
        return min(found, key=_room)
    forced = [o for o in found if Act.KEEP not in o.certain]
    not_closed = [o for o in forced if not o.closed]
    return (not_closed or forced)[0]


def _room(outcome: Outcome) -> int:
    left = [t.left for t in outcome.tallies if t.left is not None]
    return min(left, default=10**6)


def _binding_tally(told: Verdict) -> Tally | None:
    if told.reason.tally is not None:
        return told.reason.tally
    if told.word is not Word.KEEP:
        return None
    limited = [t for o in told.outcomes for t in o.tallies if t.left is not None and t.limit]
    return min(limited, key=lambda t: (t.left or 0, t.limit or 0), default=None)


def _told(
    told: Verdict, catch: Catch, candidates: tuple[str, ...], positions: tuple[Placement, ...],
    book: Rulebook,
) -> Verdict:
    """The verdict with all that has to be said beside it."""
    told = replace(told, binding=_binding_tally(told))
    found = told.outcomes
    if told.word is Word.DO_NOT_RELEASE or told.reason.why in (Why.NO_LAWFUL_ACT, *NOT_KNOWN):
        used = dict.fromkeys(rule for o in found for rule in o.rules)
    else:
        used = dict.fromkeys(chain((told.reason.rule,), (rule for o in found for rule in o.rules)))
    years = [o for o in found if o.as_of]
    return replace(
        told, day=catch.day, places=catch.places,
        tallies=tuple(dict.fromkeys(t for o in found for t in o.tallies)),
        assumed=_assumed(found, catch, candidates, positions),
        obligations=tuple(dict.fromkeys(d for o in found for d in o.obligations)),
        replaced=tuple(dict.fromkeys(r for o in found for r in o.replaced)),
        conflicts=tuple(dict.fromkeys(c for o in found for c in o.conflicts)),
        remarks=_remarks(told, catch, candidates, book), ask=_question(told, catch, candidates, positions),
        rules=tuple(rule for rule in used if rule),
        as_of=min((o.as_of for o in years), default=""),
        rule_year=(max((o.rule_year[0] for o in years), default=""),
                   min((o.rule_year[1] for o in years), default="")),
    )


def _assumed(
    found: tuple[Outcome, ...], catch: Catch, candidates: tuple[str, ...], positions: tuple[Placement, ...],
) -> tuple[Assumed, ...]:
    own = list(dict.fromkeys(a for o in found for a in o.assumed))
    if len(positions) > 1 and _differ(found):
        sides = len({p.jurisdiction for p in positions}) > 1
        own.append(Assumed.STRICTER_SIDE if sides else Assumed.STRICTER_PART)
    if candidates != catch.candidates:
        own.append(Assumed.GROUP_MEMBERS)
    if catch.length != UNSAID and any(o.reason.length or o.reason.over for o in found) and catch.length.exact:
        own.append(Assumed.TOTAL_LENGTH)
    return tuple(own)


def _differ(found: tuple[Outcome, ...]) -> bool:
    """Do the places disagree in what they allow or under which rules?"""
    by_place: dict[str, set[tuple[str, frozenset[Act], tuple[str, ...]]]] = {}
    for o in found:
        by_place.setdefault(o.position.id + o.position.jurisdiction, set()).add((o.taxon, o.certain, o.rules))
    return len({frozenset(v) for v in by_place.values()}) > 1


def _remarks(
    told: Verdict, catch: Catch, candidates: tuple[str, ...], book: Rulebook,
) -> tuple[tuple[Remark, str], ...]:
    found: list[tuple[Remark, str]] = []
    for outcome in told.outcomes:
        found += [(Remark.CONFLICT, c.first) for c in outcome.conflicts]
        used = (book.rules[r] for r in outcome.rules)
        found += [(Remark.ORDER_IN_FORCE, r.id) for r in used if r.layer == "emergency"]
        found += [(Remark.ONE_LIMIT, r) for r in outcome.rules if book.rules[r].border_regime == "joint-schedule"]
    goes_back = Act.KEEP not in told.acts and Act.RELEASE in told.acts
    if catch.dead and goes_back:
        found.append((Remark.DEAD_STILL_GOES_BACK, told.reason.rule))
    if catch.deep_hooked and goes_back:
        found.append((Remark.CUT_THE_LINE, told.reason.rule))
    if catch.tail_torn:
        found.append((Remark.MEASURED_AS_IT_IS, ""))
    if catch.away:
        found.append((Remark.NOT_COVERED_BY_WATER_RULE, ""))
    if len(candidates) > 1 and told.word is not Word.UNKNOWN and len({o.certain for o in told.outcomes}) == 1:
        found.append((Remark.NAME_NOT_NEEDED, told.reason.rule))
    if told.word is Word.DO_NOT_RELEASE and any(Act.KEEP in o.certain for o in told.outcomes):
        found.append((Remark.DEAD_SUITS_ALL, ""))
    if told.reason.why in (Why.NO_LAWFUL_ACT, Why.NO_RULE):
        found.append((Remark.NEVER_CARRY_ALIVE, ""))
    return tuple(dict.fromkeys(found))


def _question(
    told: Verdict, catch: Catch, candidates: tuple[str, ...], positions: tuple[Placement, ...],
) -> Ask | None:
    """The one question whose answer would change the word."""
    if told.reason.asks is not None:
        return told.reason.asks
    if told.word is Word.KEEP:
        return Ask.KEPT if catch.kept is None and told.binding is not None else None
    if told.word is Word.DO_NOT_RELEASE and catch.kept is None and any(Act.KEEP in o.certain for o in told.outcomes):
        return Ask.KEPT
    by_taxon = {o.taxon: o.certain for o in told.outcomes}
    if len(candidates) > 1 and len(set(by_taxon.values())) > 1:
        return Ask.FISH
    if len(positions) > 1 and len({o.certain for o in told.outcomes}) > 1:
        return Ask.SIDE if len({p.jurisdiction for p in positions}) > 1 else Ask.SEGMENT
    if candidates == (ANY_FISH,) and told.word is Word.UNKNOWN:
        return Ask.FISH
    return None
