"""A verdict told: the word, the reason with its rule and numbers, what it rests on and what else is demanded.

Layer 4. The values come from ``reasoning.verdict``; the wording from ``phrases_rules``; nothing here decides anything.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from datetime import date

from assistant.dialogue.answer import Asked, Block
from assistant.dialogue.rules import words
from assistant.dialogue.rules.reasons import JUST_ASK, Told, reason_text
from assistant.dialogue.wording import rules as say
from assistant.model.regulations import Rulebook
from assistant.reasoning.verdict import Act, Remark, Verdict, Why, Word
from assistant.text import unique

TOLD_DUTIES = frozenset({"report", "transport", "gear", "handling"})
"""Topics of duties that go with every verdict; bait and licences are told when they are asked for."""
LISTED = frozenset({Why.PROTECTED, Why.PROHIBITED})
"""Reasons of fishes that are protected or prohibited."""
SILENT = frozenset({Remark.NEVER_CARRY_ALIVE, Remark.ORDER_IN_FORCE, Remark.CONFLICT})
"""Remarks that are told in another place."""


def verdict_word(found: Sequence[Verdict]) -> str:
    """The verdict as one text: the word, or "keep, then release" where a sequence brings different ones."""
    said = [str(v.word) for v in found]
    return said[0] if len(set(said)) == 1 else ", then ".join(said)


def lead_text(told: Told) -> str:
    """The verdict and its reason; where only words are missing, what is asked comes first."""
    why = reason_text(told)
    if told.verdict.word is Word.UNKNOWN and told.verdict.reason.why in JUST_ASK:
        return why
    return say.verdict_lead(str(told.verdict.word), why, _act(told.verdict, told.step.count))


def _act(found: Verdict, count: int) -> str:
    """What to do, in short; for an open verdict what is still certain."""
    if found.word is not Word.UNKNOWN:
        return (say.ACT if count == 1 else say.ACT_MANY)[str(found.word)]
    if found.reason.why is Why.NO_LAWFUL_ACT:
        return say.NOTHING_CERTAIN
    return say.RELEASE_CERTAIN if Act.RELEASE in found.acts else say.NOT_KNOWN


def points(told: Sequence[Told], day_said: bool, clock: date, noted: Collection[str] = ()) -> list[Block]:
    """The blocks below the verdicts of one line, nothing said twice.

    Which rule gave way and what every angler must do is told once in a conversation (``noted``); what a listed fish
    demands is told each time.
    """
    rules = unique(r for one in told for r in one.verdict.rules)
    blocks = [Block("doubt", _rests_on(told, day_said, clock), statements=statements(rules), claim=bool(rules))]
    for one in told:
        blocks += [_block("point", t, one) for t in (_counts(one), _replaced(one), *_orders(one), *_remarks(one))
                   if t and not (t in noted and t == _replaced(one))]
    listed = any(o.reason.why in LISTED for one in told for o in one.verdict.outcomes)
    blocks += [b for b in _duties(told) if listed or b.text not in noted]
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


def step_words(told: Told, others: Sequence[Told]) -> str:
    """What sets one step of a sequence apart: fish, length; place and day where they are not those of all."""
    length = words.fish_length(told.step.length)
    day = words.day_words(told.verdict.day) if told.verdict.day is not None else ""
    place = told.place if any(o.place != told.place for o in others) else ""
    when = day if any(o.verdict.day != told.verdict.day for o in others) else ""
    return ", ".join(x for x in (f"{told.amount} {length}".strip(), place, when) if x)


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


def _counts(told: Told) -> str:
    """The counts of the day where the verdict hangs on something else."""
    if told.verdict.word is not Word.UNKNOWN or told.step.kept is None or not told.verdict.tallies:
        return ""
    found = [t for t in told.verdict.tallies if t.limit is not None and t.kind != "one-over"]
    return say.counts_so_far([words.tally_words(told.kb, told.book, t) for t in found]) if found else ""


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
    return [*out, *special(told.book, told.verdict.rules)]


def special(book: Rulebook, rules: Sequence[str]) -> list[str]:
    """Emergency orders and hours without fishing among some rules."""
    out = []
    for rule in (book.rules[r] for r in unique(rules) if r in book.rules):
        hours = [say.from_hour(h.starts, h.ends) for h in (book.hours[x] for x in rule.closed_hours)]
        tag = words.rule_tag(book, rule.id)
        if rule.layer == "emergency":
            until = rule.valid_through or rule.rescinded_on
            out.append(say.order(rule.order_number or tag, words.day_words(until) if until else "", hours))
        elif hours:
            out.append(say.no_fishing(hours, say.rule(tag)))
    return out


def _remarks(told: Told) -> list[str]:
    return [say.REMARK[str(remark)] for remark, _ in told.verdict.remarks if remark not in SILENT]


def _duties(all_told: Sequence[Told]) -> list[Block]:
    """What else the rules demand: one block, and one for each fish that only some of the candidates are."""
    always: dict[str, str] = {}
    depends: dict[str, dict[str, str]] = {}
    for told in all_told:
        listed = {
            o.reason.rule: o.taxon for o in told.verdict.outcomes if o.reason.why in LISTED
        }
        unsure = told.verdict.word is Word.UNKNOWN
        for duty, rule in told.verdict.obligations:
            record = told.kb.find("obligation", duty)
            if record is None or record.topic not in TOLD_DUTIES:
                continue
            text = say.obligation(record.text, say.rule(words.rule_tag(told.book, rule)))
            if listed and rule not in listed and record.topic == "transport":
                continue
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
    doubt: str,
    noted: Collection[str] = (),
    given: Sequence[str] = (),
) -> list[Block]:
    """What is always said: in full once, then (when it was ``noted`` in the conversation) in one line.

    ``given`` is what the angler told of the fish and the answer rests on.
    """
    sets = [book.rule_sets[s] for r in rules if r in book.rules for s in book.rules[r].rule_set if s in book.rule_sets]
    sets = sets or list(book.rule_sets.values())
    first, last = (words.day_words(d) if d else "" for d in year)
    note = (say.standing if all(s.invented for s in sets) else say.standing_own)(
        words.day_words(as_of) if as_of else "", first, last
    )
    if note in noted:
        short = say.standing_again(words.day_words(as_of) if as_of else "", all(s.invented for s in sets), doubt)
        return [Block("rule-note", short, statements=statements(rules), claim=False)]
    return [
        Block("rule-note", note, statements=statements(rules), claim=False),
        Block("rule-note", say.advice_note(doubt, given), claim=False),
    ]


def doubt_of(found: Sequence[Verdict], measured: bool) -> str:
    """What to do in doubt: put it back, unless it may be a fish that must not go back."""
    if any(o.reason.why is Why.PROHIBITED for v in found for o in v.outcomes):
        return say.DOUBT_PHONE
    return say.DOUBT_MEASURE if measured else say.DOUBT_BACK
