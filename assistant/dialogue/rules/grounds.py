"""The rules behind an answer in their own terms: what each states, where, and how it stands to others (layer 4)."""

from __future__ import annotations

from datetime import date

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.rules import words
from assistant.dialogue.rules.context import book_of
from assistant.dialogue.wording import grounds as say
from assistant.dialogue.wording.surveys import bag, possession, sub_limit
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Rule, Rulebook, SeasonWindow
from assistant.reasoning.calendar import day_in_year
from assistant.text import join

MOST = 6


def rule_grounds(kb: KnowledgeBase, last: Answer) -> tuple[Block, ...]:
    """What the rules of an answer state, the binding one first; nothing where it rests on none."""
    book = book_of(kb)
    names = (short.removeprefix("rule:") for short in last.rules)
    rules = [book.rules[r] for r in names if r in book.rules]
    if not rules:
        return ()
    lead = Block("lead", say.lead(len(rules)), claim=False)
    return (lead, *(_point(kb, book, rule) for rule in rules[:MOST]))


def _point(kb: KnowledgeBase, book: Rulebook, rule: Rule) -> Block:
    parts = [*(season_of(book.seasons[s], rule) for s in rule.seasons if s in book.seasons), *numbers_of(book, rule)]
    if rule.under_age is not None:
        parts.append(say.under_age(rule.under_age))
    parts += [say.hours(book.hours[h].starts, book.hours[h].ends) for h in rule.closed_hours]
    duties = (kb.find("obligation", d) for d in rule.obligations)
    parts += [d.label for d in duties if d is not None]
    where = join([words.place_words(kb, p) for p in rule.places[:3]])
    text = say.rule(words.rule_tag(book, rule.id), rule.label, where, say.LAYER.get(rule.layer, rule.layer), parts)
    return Block("point", say.with_mode(text, say.MODE.get(rule.override, "")), statements=(f"rule:{rule.id}",))


def season_of(window: SeasonWindow, rule: Rule, mode: str = "") -> str:
    """A window with its days in the year in which the rule begins; ``mode`` for keeping that no bag allows."""
    mode = mode if mode and window.mode == "harvest" else window.mode
    year = date.fromisoformat(rule.valid_from).year
    first, last = day_in_year(window.opens, year), day_in_year(window.closes, year)
    if last < first:
        last = day_in_year(window.closes, year + 1)
    if (last - first).days >= 364:
        return say.all_year(say.SEASON[mode])
    return say.season(say.SEASON[mode], words.day_words(first), words.day_words(last))


def numbers_of(book: Rulebook, rule: Rule) -> list[str]:
    """What a rule states in numbers: bag, possession, limits within the bag, lengths."""
    parts = [] if rule.daily is None else [bag(rule.daily, bool(rule.aggregate))]
    if rule.no_daily_limit:
        parts.append(say.NO_LIMIT)
    if rule.possession is not None:
        parts.append(possession(rule.possession))
    parts += [sub_limit(book.sub_limits[s].count, book.sub_limits[s].label) for s in rule.sub_limits]
    parts += [words.limit_words(book.lengths[x]) for x in rule.lengths]
    return parts + [words.over_words(book.overs[x]) for x in rule.overs]
