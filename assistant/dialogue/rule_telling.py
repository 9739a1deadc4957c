"""A verdict told: the word, the reason with its rule and numbers, what it rests on and what else is demanded.

Layer 4. The values come from ``reasoning.verdict``; the wording from ``phrases_rules``; nothing here decides anything.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date

from assistant.dialogue import phrases_rules as say
from assistant.dialogue import rule_words as words
from assistant.dialogue.answer import Asked, Block
from assistant.dialogue.catch_query import Step
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import OverCount, Rulebook
from assistant.reasoning.catch import UNSAID
from assistant.reasoning.counting import is_over
from assistant.reasoning.verdict import Act, Reason, Remark, Season, Tally, Verdict, Why, Word
from assistant.text import join, unique

TOLD_DUTIES = frozenset({"report", "transport", "gear", "handling"})
"""Topics of duties that go with every verdict; bait and licences are told when they are asked for."""
SILENT = frozenset({Remark.NEVER_CARRY_ALIVE, Remark.ORDER_IN_FORCE, Remark.CONFLICT})
"""Remarks that are told in another place."""
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


def verdict_word(found: Sequence[Verdict]) -> str:
    """The verdict as one text: the word, or "keep, then release" where a sequence brings different ones."""
    said = [str(v.word) for v in found]
    return said[0] if len(set(said)) == 1 else ", then ".join(said)


def reason_text(told: Told) -> str:
    """Why, in one sentence with its numbers and its rule."""
    make = _REASONS.get(told.verdict.reason.why)
    return make(told, told.verdict.reason) if make is not None else ""


def lead_text(told: Told) -> str:
    """The verdict and its reason; where only words are missing, what is asked comes first."""
    why = reason_text(told)
    if told.verdict.word is Word.UNKNOWN and told.verdict.reason.why in JUST_ASK:
        return why
    return say.verdict_lead(str(told.verdict.word), why, _act(told.verdict))


def _act(found: Verdict) -> str:
    """What to do, in short; for an open verdict what is still certain."""
    if found.word is not Word.UNKNOWN:
        return say.ACT[str(found.word)]
    if found.reason.why is Why.NO_LAWFUL_ACT:
        return say.NOTHING_CERTAIN
    return say.RELEASE_CERTAIN if Act.RELEASE in found.acts else say.NOT_KNOWN


def points(told: Sequence[Told], day_said: bool, clock: date) -> list[Block]:
    """The blocks below the verdicts of one line, nothing said twice."""
    rules = unique(r for one in told for r in one.verdict.rules)
    blocks = [Block("doubt", _rests_on(told, day_said, clock), statements=statements(rules), claim=bool(rules))]
    for one in told:
        blocks += [_block("point", t, one) for t in (_replaced(one), *_orders(one), *_remarks(one)) if t]
    blocks += _duties(told)
    kept: dict[str, Block] = {}
    for block in blocks:
        if block.text:
            kept.setdefault(block.text, block)
    return list(kept.values())


def _block(kind: str, text: str, told: Told) -> Block:
    return Block(kind, text, statements=statements(told.verdict.rules), claim=bool(told.verdict.rules))


def statements(rules: Sequence[str]) -> tuple[str, ...]:
    """Rule ids as short forms."""
    return tuple(f"rule:{r}" for r in rules)


def step_words(told: Told) -> str:
    """What sets one step of a sequence apart: fish, length, place and day."""
    length = words.fish_length(told.step.length)
    day = words.day_words(told.verdict.day) if told.verdict.day is not None else ""
    return ", ".join(x for x in (f"{told.fish} {length}".strip(), told.place, day) if x)


# reasons ----------------------------------------------------------------------------------------------------------


def _opens(season: Season | None) -> str:
    return words.day_words(season.next_open) if season is not None and season.next_open is not None else ""


def _taxon(told: Told, reason: Reason) -> str:
    """The candidate that the reason speaks of."""
    if not reason.taxon or (len(told.step.fish) == 1 and len(told.step.fish[0].taxa) != 1):
        return told.fish
    return words.fish_words(told.kb, (reason.taxon,))


def _may_keep(told: Told, reason: Reason) -> str:
    limits = _binding(told.verdict.tallies)
    if not limits:
        text = say.OPEN_NO_LIMIT
    elif told.step.kept is None:
        text = say.fewer_than([f"{t.limit} {words.counted(told.kb, told.book, t.name)}" for t in limits])
    else:
        text = say.room([words.tally_words(told.kb, told.book, t) for t in limits])
    length = words.fish_length(told.step.length)
    big = [words.over_words(x) for x in _over_counts(told)]
    return say.may_keep(told.fish, told.place, say.with_big(text, big) + told.tag(reason), length)


def _over_counts(told: Told) -> list[OverCount]:
    """Counts of large fish in which this fish would count."""
    gone = {r.rule for r in told.verdict.replaced if r.field == "length"}
    overs = [told.book.overs[x] for r in told.verdict.rules if r not in gone for x in told.book.rules[r].overs]
    return [x for x in overs if told.step.length != UNSAID and is_over(told.step.length, x)]


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
    others = [
        words.tally_words(told.kb, told.book, t)
        for t in told.verdict.tallies
        if t != tally and t.kind not in ("one-over", "possession") and t.limit is not None
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
    return say.release_only(_taxon(told, reason), told.place, last, _opens(season), told.tag(reason))


def _hours(told: Told, reason: Reason) -> tuple[str, str]:
    return reason.hours or ("", "")


def _outside(told: Told, reason: Reason) -> str:
    first, last = reason.span or (told.day, told.day)
    return say.outside_year(told.place, words.day_words(first), words.day_words(last), words.day_words(told.day))


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
    Why.CLOSED_SEASON: lambda t, r: say.closed_season(_taxon(t, r), t.place, _opens(r.season), t.tag(r)),
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
    Why.NO_RULE: lambda t, r: say.no_rule(_taxon(t, r), t.place, _may_go_back(t)),
    Why.OUTSIDE_RULE_YEAR: _outside,
    Why.NO_LAWFUL_ACT: _no_lawful,
    Why.NO_PLACE: lambda t, r: say.NO_PLACE,
    Why.SEVERAL_PLACES: lambda t, r: say.SEVERAL_PLACES,
    Why.NO_RULES_FOR_PLACE: lambda t, r: say.no_rules_for_place(t.place),
    Why.PRIVATE_WATER: lambda t, r: say.PRIVATE,
    Why.NO_FISH: lambda t, r: say.NO_FISH,
    Why.NO_DATE: lambda t, r: say.NO_DATE,
}
JUST_ASK = frozenset({Why.NO_PLACE, Why.SEVERAL_PLACES, Why.NO_FISH, Why.NO_DATE})
"""Reasons that only mean that something has not been told: the answer is the question."""


def _opens_water(reason: Reason) -> str:
    """The day after a closure of all fishing ends."""
    from datetime import timedelta

    last = reason.season.last if reason.season is not None else None
    return words.day_words(last + timedelta(days=1)) if last is not None else ""


# what it rests on ---------------------------------------------------------------------------------------------------


def _rests_on(all_told: Sequence[Told], day_said: bool, clock: date) -> str:
    parts: list[str] = []
    for told in all_told:
        found = told.verdict
        if found.day is None or not found.outcomes:
            continue
        parts += [] if told.step.any_fish else [say.fish_told(told.fish)]
        parts.append(say.on_day(words.day_words(found.day), day_said or found.day != clock))
        parts += _kept(told)
        parts += [say.ASSUMED[str(a)] for a in found.assumed]
    return say.rests_on(list(unique(parts))) if parts else ""


def _kept(told: Told) -> list[str]:
    """The fish kept, as they were counted."""
    if told.step.kept is None:
        return []
    today = sum(k.count for k in told.step.kept if k.today)
    stored = sum(k.count for k in told.step.kept if not k.today)
    return [say.kept(today)] + ([say.stored(stored)] if stored else [])


def _replaced(told: Told) -> str:
    """The special rule of the water, where it stands in place of a general one."""
    if told.verdict.word is Word.CLOSED:
        return ""
    fields = [(r.field, r.by, r.rule) for r in told.verdict.replaced if r.field in say.FIELD_OF]
    rows = [
        (say.FIELD_OF[field], words.rule_tag(told.book, by), words.rule_tag(told.book, weak), _was(told, field, weak))
        for field, by, weak in fields
    ]
    return say.replaced(list(dict.fromkeys(rows))[:2]) if rows else ""


def _was(told: Told, field: str, weak: str) -> str:
    """What the general rule says of the field."""
    rule = told.book.rules.get(weak)
    if rule is None or field not in ("bag", "length"):
        return ""
    if field == "bag":
        return "" if rule.daily is None else str(rule.daily)
    limits = [words.limit_words(told.book.lengths[x]) for x in rule.lengths]
    return ", ".join([*limits, *(words.over_words(told.book.overs[x]) for x in rule.overs)])


def _orders(told: Told) -> list[str]:
    out = [
        say.conflict(words.rule_tag(told.book, x.first), words.rule_tag(told.book, x.second), x.field)
        for x in told.verdict.conflicts[:1]
    ]
    for remark, rule in told.verdict.remarks:
        if remark is Remark.ORDER_IN_FORCE:
            order = told.book.rules[rule]
            until = order.valid_through or order.rescinded_on
            out.append(
                say.order(
                    order.order_number or words.rule_tag(told.book, rule), words.day_words(until) if until else ""
                )
            )
    return list(unique(out))


def _remarks(told: Told) -> list[str]:
    return [say.REMARK[str(remark)] for remark, _ in told.verdict.remarks if remark not in SILENT]


def _duties(all_told: Sequence[Told]) -> list[Block]:
    """What else the rules demand: one block, and one for each fish that only some of the candidates are."""
    always: dict[str, str] = {}
    depends: dict[str, dict[str, str]] = {}
    for told in all_told:
        listed = {
            o.reason.rule: o.taxon for o in told.verdict.outcomes if o.reason.why in (Why.PROTECTED, Why.PROHIBITED)
        }
        unsure = told.verdict.word is Word.UNKNOWN
        for duty, rule in told.verdict.obligations:
            record = told.kb.find("obligation", duty)
            if record is None or record.topic not in TOLD_DUTIES:
                continue
            text = say.obligation(record.text, say.rule(words.rule_tag(told.book, rule)))
            if unsure and rule in listed:
                depends.setdefault(words.name_of(told.kb, listed[rule]), {})[text] = rule
            else:
                always[text] = rule
    blocks = (
        [Block("point", say.obligations(list(always)), statements=statements(tuple(unique(always.values()))))]
        if always
        else []
    )
    return blocks + [
        Block("point", say.obligations_if(name, list(texts)), statements=statements(tuple(unique(texts.values()))))
        for name, texts in depends.items()
    ]


def question(found: Verdict) -> Asked | None:
    """The one question that would change the verdict."""
    ask = found.ask
    if ask is None:
        return None
    return Asked(say.ASK_KIND[str(ask)], say.ASK[str(ask)])


def standing(
    book: Rulebook,
    rules: Sequence[str],
    as_of: str,
    year: tuple[str, str],
    doubt: str = say.DOUBT_BACK,
) -> list[Block]:
    """What is always said."""
    sets = [book.rule_sets[s] for r in rules if r in book.rules for s in book.rules[r].rule_set if s in book.rule_sets]
    sets = sets or list(book.rule_sets.values())
    first, last = (words.day_words(d) if d else "" for d in year)
    note = (say.standing if all(s.invented for s in sets) else say.standing_own)(
        words.day_words(as_of) if as_of else "", first, last
    )
    return [
        Block("rule-note", note, statements=statements(rules), claim=False),
        Block("rule-note", say.advice_note(doubt), claim=False),
    ]


def doubt_of(found: Sequence[Verdict]) -> str:
    """What to do in doubt: put it back, unless it may be a fish that must not go back."""
    bad = any(o.reason.why is Why.PROHIBITED for v in found for o in v.outcomes)
    return say.DOUBT_PHONE if bad else say.DOUBT_BACK
