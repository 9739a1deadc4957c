"""The rules of a place and day told without a fish in hand: what is open, how many, how long, from when (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from assistant.dialogue import phrases_rules as say
from assistant.dialogue import rule_words as words
from assistant.dialogue.answer import Block
from assistant.dialogue.catch_judge import meant
from assistant.dialogue.catch_query import Named
from assistant.dialogue.rule_telling import statements
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Rulebook
from assistant.reasoning.outlook import Line, Outlook, outlooks
from assistant.text import unique

MOST_LINES = 14


@dataclass(frozen=True, slots=True)
class Survey:
    """What was found: blocks, rules, the verdict word where every line gives the same, and what the standing note needs."""

    blocks: tuple[Block, ...]
    rules: tuple[str, ...]
    verdict: str | None
    as_of: str
    rule_year: tuple[str, str]


def survey(kb: KnowledgeBase, book: Rulebook, place: str, day: date, named: Sequence[Named]) -> Survey:
    """The rules at a place on a day, for the fishes named or for all that the rules there name."""
    here = book.positions(place)
    wanted = unique(t for n in named for m in meant(n, here, book) for t in _spread(m, book))
    found = outlooks(place, day, book, wanted)
    name = " / ".join(unique(_called(n, book, place) for n in named))
    where = words.place_words(kb, place)
    lead = Block("lead", say.outlook_lead(where, words.day_words(day), name), claim=False)
    blocks: list[Block] = []
    seen: list[tuple[Block, ...]] = []
    for outlook in found:
        lines = tuple(_at(kb, book, outlook, where, name, bool(named)))
        if lines in seen:
            continue
        seen.append(lines)
        if len(found) > 1 and outlook.position.place != place:
            blocks.append(Block("point", say.side_heading(words.place_words(kb, outlook.position.place)), claim=False))
        blocks += lines
    rules = unique(r for o in found for line in o.lines for r in line.rules) + unique(c for o in found for c in o.closures)
    held = [o for o in found if o.held]
    years = (max((o.rule_year[0] for o in held or found), default=""), min((o.rule_year[1] for o in held or found), default=""))
    return Survey((lead, *blocks), unique(rules), _verdict(found, bool(named)), min((o.as_of for o in found if o.as_of), default=""), years)


def _spread(name: str, book: Rulebook) -> tuple[str, ...]:
    """A group of the rules by its members; a genus or family by those of its fish that the rules name."""
    if name in book.groups:
        return tuple(sorted(book.members[name]))
    own = {t for r in book.rules.values() for t in r.taxa} | {t for m in book.members.values() for t in m}
    below = tuple(sorted(m for m in own if name in book.lineage.above(m)))
    return below or (name,)


def _called(named: Named, book: Rulebook, place: str) -> str:
    return named.words.lower()


def _verdict(found: Sequence[Outlook], asked: bool) -> str | None:
    """"closed" or "release" where nothing else holds for what was asked; "unknown" where nothing is held."""
    if not any(o.held for o in found):
        return "unknown"
    lines = [line for o in found for line in o.lines]
    if not asked:
        return None
    if not lines:
        return "unknown"
    modes = {line.listed or line.season.mode for line in lines}
    return {"closed": "closed", "catch-and-release": "release", "protected": "release", "prohibited": "do-not-release"}.get(
        modes.pop()) if len(modes) == 1 else None


def _at(kb: KnowledgeBase, book: Rulebook, outlook: Outlook, where: str, name: str, asked: bool) -> list[Block]:
    if not outlook.held:
        first, last = (words.day_words(d) for d in outlook.rule_year) if outlook.rule_year[0] else ("", "")
        return [Block("point", say.not_held(where, words.day_words(outlook.day), first, last), claim=False)]
    lines = [_block(kb, book, line, outlook.day) for line in outlook.lines]
    blocks = list(unique(lines))[:MOST_LINES]  # type: ignore[type-var]
    if asked and not lines:
        blocks = [Block("point", say.nothing_named(name, where), claim=False)]
    if outlook.under_age is not None:
        blocks.insert(0, Block("point", say.under_age(outlook.under_age), claim=False))
    if not asked:
        blocks += [_closure(kb, book, c, outlook.day) for c in outlook.closures]
    return [*blocks, *_duties(kb, book, outlook)]


def _block(kb: KnowledgeBase, book: Rulebook, line: Line, day: date) -> Block:
    name = words.counted(kb, book, line.group) if line.group else words.fish_words(kb, line.taxa)
    if line.group and len(line.taxa) < len(book.members[line.group]) and len(line.taxa) == 1:
        name = words.name_of(kb, line.taxa[0])
    tag = say.rules(words.tags(book, line.rules))
    if line.listed:
        return Block("point", say.outlook_line(_capital(name), [say.LISTED[line.listed]], tag), statements=statements(line.rules))
    parts = [words.season_words(line.season, day), *_numbers(kb, book, line)]
    return Block("point", say.outlook_line(_capital(name), parts, tag), statements=statements(line.rules))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _numbers(kb: KnowledgeBase, book: Rulebook, line: Line) -> list[str]:
    """Bag, possession, limits within and above it, and lengths."""
    if line.no_limit:
        parts = [say.STATED_NO_LIMIT]
    elif line.daily is None:
        parts = [say.NO_BAG]
    elif line.daily == 0:
        return [say.NONE_KEPT]
    else:
        together = bool(line.group) and len(book.members[line.group]) > 1
        parts = [say.bag(line.daily, together)]
        if line.possession is not None:
            parts.append(say.possession(line.possession))
    for sub in line.sub_limits:
        parts.append(say.sub_limit(book.sub_limits[sub].count, book.sub_limits[sub].label))
    parts += [say.shared(b.count, words.counted(kb, book, b.name)) for b in line.shared if b.count is not None]
    return parts + [words.limit_words(x) for x in line.lengths] + [words.over_words(x) for x in line.overs]


def _closure(kb: KnowledgeBase, book: Rulebook, rule: str, day: date) -> Block:
    return Block("point", say.closures(say.rule(words.rule_tag(book, rule))), statements=statements((rule,)))


def _duties(kb: KnowledgeBase, book: Rulebook, outlook: Outlook) -> list[Block]:
    texts, rules = [], []
    for duty, rule in outlook.duties:
        record = kb.find("obligation", duty)
        if record is not None:
            texts.append(say.obligation(record.text, say.rule(words.rule_tag(book, rule))))
            rules.append(rule)
    return [Block("point", say.obligations(list(unique(texts))), statements=statements(rules))] if texts else []
