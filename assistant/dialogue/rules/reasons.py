"""Why a verdict is what it is, in one sentence with its numbers, its rule and the field that binds (layer 4)."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from assistant.dialogue.rules import words
from assistant.dialogue.rules.catch_query import Step
from assistant.dialogue.wording import limits as limit_words
from assistant.dialogue.wording import rules as say
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Rulebook
from assistant.reasoning.catch import UNSAID
from assistant.reasoning.counting import is_over
from assistant.reasoning.verdict import Reason, Season, Tally, Verdict, Why
from assistant.text import join, unique

MOST_NAMES = 4
CROSSED = frozenset({"cross", "crosses", "hybrid", "hybrids"})


@dataclass(frozen=True, slots=True)
class Told:
    """What the telling of one verdict needs: the verdict, the step it answers, and the names to call things by."""

    kb: KnowledgeBase
    book: Rulebook
    verdict: Verdict
    step: Step

    @property
    def place(self) -> str:
        """The place in words."""
        return words.place_words(self.kb, self.step.places[0]) if self.step.places else say.THAT_WATER

    @property
    def at(self) -> str:
        """The place with its preposition."""
        return words.at_words(self.kb, self.step.places[0]) if self.step.places else say.THAT_WATER

    @property
    def day(self) -> date:
        """The day of the verdict; only asked for where there is one."""
        assert self.verdict.day is not None
        return self.verdict.day

    @property
    def length(self) -> str:
        """The length as said; "its length" stands in where none was."""
        return words.fish_length(self.step.length) or say.ITS_LENGTH

    @property
    def fish(self) -> str:
        """The fish as it was called."""
        return fish_called(self.kb, self.step)

    @property
    def amount(self) -> str:
        """The fish with how many of them are meant."""
        return limit_words.many(self.step.count, self.fish) if self.step.count > 1 else self.fish

    def tag(self, reason: Reason) -> str:
        """The binding rule and field."""
        if not reason.rule:
            return ""
        field = say.FIELD.get(
            reason.tally.kind if reason.tally and reason.field != "length" else reason.field, reason.field
        )
        return say.rule(words.rule_tag(self.book, reason.rule), field)


def fish_called(kb: KnowledgeBase, step: Step) -> str:
    """The fish of a step in words, alternatives joined with "or"."""
    if step.any_fish:
        return say.ANY_FISH
    names = unique(_called(kb, n.words, n.taxa) for n in step.fish)
    if len(names) > MOST_NAMES:
        return say.one_of_many(list(names[:MOST_NAMES]))
    return join(list(names), "or") or say.THIS_FISH


def _called(kb: KnowledgeBase, said: str, taxa: Sequence[str]) -> str:
    """One taxon by its label; a name that means several as it was said."""
    crossed = CROSSED & set(said.lower().split()) and len(taxa) == 1 and "-x-" not in taxa[0]
    return words.name_of(kb, taxa[0]) if len(taxa) == 1 and not crossed else said.lower()


def reason_text(told: Told) -> str:
    """Why, in one sentence with its numbers and its rule; of several candidates the one that forces it is named."""
    reason = told.verdict.reason
    make = _REASONS.get(reason.why)
    text = make(told, reason) if make is not None else ""
    by_taxon = {o.taxon: o.certain for o in told.verdict.outcomes}
    if reason.why in _OF_ONE and reason.taxon in by_taxon and len(set(by_taxon.values())) > 1:
        return say.as_it_may_be(words.name_of(told.kb, reason.taxon), text)
    return text


def _opens(season: Season | None) -> str:
    return words.day_words(season.next_open) if season is not None and season.next_open is not None else ""


def _taxon(told: Told, reason: Reason) -> str:
    """The candidate that the reason speaks of."""
    if not reason.taxon or (len(told.step.fish) == 1 and len(told.step.fish[0].taxa) != 1):
        return told.fish
    return words.fish_words(told.kb, (reason.taxon,))


def _unruled(told: Told, reason: Reason) -> str:
    """The candidate of which no rule speaks; the fish as it was called where no rule speaks of any it may be."""
    several = len({o.taxon for o in told.verdict.outcomes}) > 1
    if several and all(o.reason.why is reason.why for o in told.verdict.outcomes):
        return told.fish
    name = words.fish_words(told.kb, (reason.taxon,)) if reason.taxon else told.fish
    return say.which_it_may_be(name) if several else name


def _may_keep(told: Told, reason: Reason) -> str:
    limits = _binding(told.verdict.tallies)
    if not limits:
        text = say.OPEN_NO_LIMIT
    elif told.step.count > 1:
        with_these = [replace(t, have=t.have + 1, at_most=t.at_most + 1) for t in limits]
        counts = [words.tally_words(told.kb, told.book, t) for t in with_these]
        text = limit_words.filled(counts, told.step.kept is not None)
    elif told.step.kept is None:
        text = limit_words.fewer_than([f"{t.limit} {words.counted(told.kb, told.book, t.name)}" for t in limits])
    else:
        text = limit_words.room([words.tally_words(told.kb, told.book, t) for t in limits])
    length = words.fish_length(told.step.length)
    text = limit_words.with_big(text, _over_counts(told, True), _over_counts(told, None), told.step.length != UNSAID)
    return say.may_keep(told.amount, told.at, text + told.tag(reason), length)


def _over_counts(told: Told, sure: bool | None) -> list[str]:
    """Counts of large fish in which this fish would count (``sure``), or may count for all that is known (None)."""
    gone = {r.rule for r in told.verdict.replaced if r.field == "length"}
    overs = [told.book.overs[x] for r in told.verdict.rules if r not in gone for x in told.book.rules[r].overs]
    return list(unique(words.over_words(x) for x in overs if is_over(told.step.length, x) is sure))


def _binding(tallies: Sequence[Tally]) -> list[Tally]:
    """The counts of the day with a limit; of bags (of two sides, of two candidates) the one with least room."""
    found: dict[str, Tally] = {}
    for t in tallies:
        if t.limit is None or t.kind in ("one-over", "possession"):
            continue
        slot = t.kind if t.kind == "bag" else f"{t.kind} {t.name}"
        if slot not in found or t.left < found[slot].left:  # type: ignore[operator]
            found[slot] = t
    return list(found.values())


def _full(told: Told, reason: Reason) -> str:
    tally = reason.tally
    assert tally is not None and tally.limit is not None
    mixed = any(k.mixed for k in told.step.kept or ())
    others = [
        words.tally_words(told.kb, told.book, t)
        for t in told.verdict.tallies
        if t != tally and not mixed and t.kind not in ("one-over", "possession") and t.limit is not None
    ]
    count = words.tally_words(told.kb, told.book, tally)
    return say.full(tally.kind, count, join(others), tally.have - tally.limit, told.tag(reason))


def _limit(reason: Reason) -> str:
    if reason.length is not None:
        return words.limit_words(reason.length)
    return words.over_words(reason.over) if reason.over is not None else ""


def _one_over(told: Told, reason: Reason) -> str:
    have = reason.tally.have if reason.tally is not None else 0
    return say.one_over(told.length, _limit(reason), have, told.tag(reason))


def _release_only(told: Told, reason: Reason) -> str:
    season = reason.season
    short = (
        season is not None
        and season.first is not None
        and season.last is not None
        and (season.last - season.first).days < 364
    )
    last = words.day_words(season.last) if season is not None and season.last is not None and short else ""
    return say.release_only(_taxon(told, reason), told.at, last, _opens(season), told.tag(reason))


def _hours(told: Told, reason: Reason) -> tuple[str, str]:
    return reason.hours or ("", "")


def _outside(told: Told, reason: Reason) -> str:
    first, last = reason.span or (told.day, told.day)
    return say.outside_year(told.place, words.day_words(first), words.day_words(last), words.day_words(told.day),
                            told.day > last)


def _no_lawful(told: Told, reason: Reason) -> str:
    taxa = unique(o.taxon for o in told.verdict.outcomes)
    return say.no_lawful_act(words.fish_words(told.kb, taxa[:MOST_NAMES]))


def _may_go_back(told: Told) -> bool:
    """False when the fish may be one that must not be put back."""
    return not any(o.reason.why is Why.PROHIBITED for o in told.verdict.outcomes)


def _kept_unsure(told: Told, reason: Reason) -> str:
    if reason.over is not None and reason.tally is not None:
        return say.kept_unsure_over(
            reason.tally.have, reason.tally.at_most, words.over_words(reason.over), told.tag(reason)
        )
    count = words.tally_words(told.kb, told.book, reason.tally) if reason.tally is not None else ""
    return say.kept_unsure(count, told.tag(reason))


def _unsure_length(told: Told, reason: Reason) -> str:
    return say.length_unsure(told.length, _limit(reason), told.tag(reason))


_REASONS: dict[Why, Callable[[Told, Reason], str]] = {
    Why.MAY_KEEP: _may_keep,
    Why.PROTECTED: lambda t, r: say.protected(_taxon(t, r), t.tag(r)),
    Why.PROHIBITED: lambda t, r: say.prohibited(_taxon(t, r), t.tag(r)),
    Why.CLOSED_WATER: lambda t, r: say.closed_water(t.place, _opens_water(r), t.tag(r)),
    Why.CLOSED_SEASON: lambda t, r: say.closed_season(_taxon(t, r), t.at, _opens(r.season), t.tag(r)),
    Why.CLOSED_HOURS: lambda t, r: say.closed_hours(*_hours(t, r), t.tag(r)),
    Why.CLOSED_ICE: lambda t, r: say.closed_ice(_taxon(t, r), t.tag(r)),
    Why.NOT_FOR_THIS_ANGLER: lambda t, r: say.not_for_angler(t.place, r.under_age or 0, t.tag(r)),
    Why.RELEASE_ONLY: _release_only,
    Why.LENGTH: lambda t, r: say.wrong_length(t.length, _limit(r), t.tag(r)),
    Why.ONE_OVER: _one_over,
    Why.SUB_LIMIT: _full,
    Why.BAG: _full,
    Why.UMBRELLA: _full,
    Why.TOTAL_ACROSS_WATERS: _full,
    Why.POSSESSION: _full,
    Why.LENGTH_UNSURE: _unsure_length,
    Why.LENGTH_UNSAID: lambda t, r: say.length_unsaid(_limit(r), t.tag(r)),
    Why.LENGTH_METHOD: lambda t, r: say.length_method(_limit(r), t.tag(r)),
    Why.KEPT_UNSURE: _kept_unsure,
    Why.AGE_UNSAID: lambda t, r: say.age_unsaid(t.place, r.under_age or 0, t.tag(r)),
    Why.TIME_UNSAID: lambda t, r: say.time_unsaid(*_hours(t, r), t.tag(r)),
    Why.ICE_UNSAID: lambda t, r: say.ice_unsaid(_taxon(t, r), t.tag(r)),
    Why.NO_RULE: lambda t, r: say.no_rule(_unruled(t, r), t.place, _may_go_back(t)),
    Why.OUTSIDE_RULE_YEAR: _outside,
    Why.NO_LAWFUL_ACT: _no_lawful,
    Why.NO_PLACE: lambda t, r: say.no_place(t.fish if any(n.taxa for n in t.step.fish) else ""),
    Why.SEVERAL_PLACES: lambda t, r: say.SEVERAL_PLACES,
    Why.NO_RULES_FOR_PLACE: lambda t, r: say.no_rules_for_place(t.place),
    Why.PRIVATE_WATER: lambda t, r: say.PRIVATE,
    Why.NO_FISH: lambda t, r: say.NO_FISH,
    Why.NO_DATE: lambda t, r: say.NO_DATE,
}
_OF_ONE = frozenset({Why.LENGTH, Why.ONE_OVER, Why.SUB_LIMIT, Why.BAG, Why.LENGTH_UNSURE, Why.LENGTH_UNSAID})
"""Reasons whose sentence does not name the fish."""
JUST_ASK = frozenset({Why.NO_PLACE, Why.SEVERAL_PLACES, Why.NO_FISH, Why.NO_DATE})
"""Reasons that only mean that something has not been told: the answer is the question."""


def _opens_water(reason: Reason) -> str:
    """The day after a closure of all fishing ends."""
    last = reason.season.last if reason.season is not None else None
    return words.day_words(last + timedelta(days=1)) if last is not None else ""
